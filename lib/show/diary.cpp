#include "show/diary.hpp"

#include <fmt/format.h>

#include <algorithm>
#include <set>
#include <tuple>

#include "kitchen/changes.hpp"
#include "show/detail/sheet_words.hpp"
#include "show/detail/thawing.hpp"
#include "show/terminal.hpp"

namespace samebase::show {

namespace {

using kitchen::DiaryEntry;
using Kind = DiaryEntry::Kind;

std::string place_id(const kitchen::Kitchen& kitchen, stock::PlaceId place) {
    std::string id;
    for (const char c : kitchen.place(place).id) {
        const bool plain = (c >= 'a' && c <= 'z') || (c >= '0' && c <= '9');
        id += plain ? c : '-';
    }
    return id;
}

class Diary {
  public:
    Diary(const kitchen::Kitchen& kitchen, basics::Span span) : kitchen_(kitchen), span_(span) {}

    void meals(const ask::MenuDay& day, const std::vector<ask::MenuMeal>& meals, Kind kind) {
        std::size_t number = 0;
        for (const ask::MenuMeal& meal : meals) {
            ++number;
            if (meal.had) continue;
            std::vector<std::string> notes;
            if (kind == Kind::dinner && !day.eaters.empty()) notes.push_back("For " + listed(day.eaters) + ".");
            if (day.guests > 0 && kind == Kind::dinner) notes.push_back(counted(day.guests, "guest") + ".");
            if (!meal.swaps.empty()) notes.push_back("With " + kitchen::describe(kitchen_, meal.swaps) + ".");
            add(kind, day.day, number == 1 ? "" : fmt::format("{}", number),
                fmt::format("{}: {}{}", kind == Kind::dinner ? "Dinner" : "Lunch", kitchen_.cookbook()[meal.dish].name,
                            meal.ready_meal ? " from the freezer" : ""),
                notes);
        }
    }

    void take_out(const ask::ThawAnswer& thaw, basics::Day day) {
        std::vector<std::string> things;
        std::vector<std::string> notes;
        for (const ask::TakeOut& out : thaw.moves) {
            if (out.move.day != day) continue;
            things.push_back(kitchen_.catalogue()[out.move.ingredient].name);
            notes.push_back(detail::take_out_words(out.move, kitchen_) + ".");
        }
        if (!things.empty()) add(Kind::take_out, day, "", "Take out: " + listed(things), notes, true);
    }

    void bring(const ask::Walk& walk) {
        std::vector<std::string> things;
        std::vector<std::string> notes;
        for (const ask::Carried& one : walk.brings) {
            const std::string& name = kitchen_.catalogue()[one.ingredient].name;
            if (std::find(things.begin(), things.end(), name) == things.end()) things.push_back(name);
            notes.push_back(fmt::format("{}, {}, for {}.", name,
                                        detail::packs_words(kitchen_, one.ingredient, one.amount, one.packs),
                                        basics::short_day(one.for_day)));
        }
        add(Kind::carry, walk.day, place_id(kitchen_, walk.from),
            fmt::format("Bring from the {}: {}", kitchen_.place(walk.from).name, listed(things)), notes, true);
    }

    void use_by() {
        std::set<std::pair<basics::Day, std::string>> things;
        for (const stock::Lot& lot : kitchen_.lots) {
            if (lot.use_by && lot.there() && lot.state != stock::State::frozen)
                things.emplace(*lot.use_by, kitchen::label(kitchen_, lot.ingredient, lot.dish));
        }
        for (auto at = things.begin(); at != things.end();) {
            const basics::Day day = at->first;
            std::vector<std::string> names;
            for (; at != things.end() && at->first == day; ++at) names.push_back(at->second);
            add(Kind::use_by, day, "", "Use by today: " + listed(names), {});
        }
    }

    void add(Kind kind, basics::Day day, std::string which, const std::string& title,
             const std::vector<std::string>& notes, bool in_the_morning = false) {
        if (!span_.contains(day)) return;
        std::string note;
        for (const std::string& line : notes) note += (note.empty() ? "" : "\n") + line;
        entries_.push_back(
            {kind, day, std::move(which), fit_for_terminal(title), fit_for_terminal(note), in_the_morning});
    }

    [[nodiscard]] std::vector<DiaryEntry> in_order() && {
        std::stable_sort(entries_.begin(), entries_.end(), [](const DiaryEntry& a, const DiaryEntry& b) {
            return std::tie(a.day, a.kind) < std::tie(b.day, b.kind);
        });
        return std::move(entries_);
    }

  private:
    const kitchen::Kitchen& kitchen_;
    basics::Span span_;
    std::vector<DiaryEntry> entries_;
};

}  // namespace

std::vector<DiaryEntry> diary(const ask::Menu& menu, const ask::ThawAnswer& thaw, const ask::CarryAnswer& carry,
                              const kitchen::Kitchen& kitchen, basics::Day today) {
    Diary diary(kitchen, {std::max(menu.span.first, today), menu.span.last});
    for (const ask::MenuDay& day : menu.days) {
        diary.meals(day, day.dinners, Kind::dinner);
        diary.meals(day, day.lunches, Kind::lunch);
        diary.take_out(thaw, day.day);
        if (day.shopping) diary.add(Kind::trip, day.day, "", "Shopping trip", {});
    }
    for (const ask::Walk& walk : carry.walks) diary.bring(walk);
    diary.use_by();
    return std::move(diary).in_order();
}

}  // namespace samebase::show
