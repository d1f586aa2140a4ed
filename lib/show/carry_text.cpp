#include <fmt/format.h>

#include <algorithm>

#include "show/carry.hpp"
#include "show/detail/thawing.hpp"

namespace samebase::show {

namespace {

constexpr std::size_t most_rows = 12;  // of a walk
constexpr std::int64_t ml_per_litre = 1000;

std::string litres(std::int64_t ml) {
    if (ml == 0) return "no room";
    return fmt::format("{} L", std::max<std::int64_t>(1, (ml + ml_per_litre / 2) / ml_per_litre));
}

std::string times(std::size_t count) {
    if (count == 1) return "once";
    if (count == 2) return "twice";
    return fmt::format("{} times", count);
}

/// All packs of a walk; what is loose counts as one.
int packs_of(const ask::Walk& walk) {
    int sum = 0;
    for (const auto& carried : walk.brings) sum += std::max(1, carried.packs);
    return sum;
}

/// "Walk to the engine shed twice, Tue 1 Dec and Mon 14 Dec": a part for each far freezer, in the order of first walks.
std::string walking(const ask::CarryAnswer& answer, const kitchen::Kitchen& kitchen, basics::Day today) {
    constexpr std::size_t most_days = 4;
    std::vector<stock::PlaceId> places;
    for (const auto& walk : answer.walks) {
        if (std::find(places.begin(), places.end(), walk.from) == places.end()) places.push_back(walk.from);
    }
    std::vector<std::string> parts;
    for (const auto place : places) {
        std::vector<std::string> days;
        for (const auto& walk : answer.walks) {
            if (walk.from == place) days.push_back(day(walk.day, today));
        }
        const std::string when =
            days.size() > most_days ? fmt::format("from {} to {}", days.front(), days.back()) : listed(days);
        parts.push_back(fmt::format("to the {} {}, {}", kitchen.place(place).name, times(days.size()), when));
    }
    return fmt::format("Walk {}", fmt::join(parts, ", and "));
}

std::string how_good(const ask::CarryAnswer& answer) {
    if (answer.proved_best()) return "Proved fewest.";
    return fmt::format("At least {} walk{} needed.", answer.bound, answer.bound == 1 ? " is" : "s are");
}

std::string sentence(const ask::CarryAnswer& answer, const kitchen::Kitchen& kitchen, basics::Day today) {
    if (answer.walks.empty()) {
        if (!answer.notes.empty()) return answer.notes.front();
        return fmt::format("Nothing is to be brought in from the far freezers, {} to {}.",
                           day(answer.span.first, today), day(answer.span.last, today));
    }
    int count = 0;
    std::int64_t room = 0;
    for (const auto& walk : answer.walks) {
        count += packs_of(walk);
        for (const auto& carried : walk.brings) room += carried.room_ml;
    }
    return fmt::format("{}: {}, {}. {}", walking(answer, kitchen, today), packs(count), litres(room), how_good(answer));
}

/// One lot on one walk, for whatever meals.
struct LotRow {
    const ask::Carried* first = nullptr;
    std::int64_t amount = 0;
    int packs = 0;
    std::int64_t room_ml = 0;
    std::size_t meals = 0;
};

std::vector<LotRow> rows_of(const ask::Walk& walk, bool straight) {
    std::vector<LotRow> rows;
    for (const auto& carried : walk.brings) {
        if (carried.straight != straight) continue;
        if (rows.empty() || rows.back().first->lot != carried.lot) rows.push_back({&carried});
        LotRow& row = rows.back();
        row.amount += carried.amount;
        row.packs += carried.packs;
        row.room_ml += carried.room_ml;
        ++row.meals;
    }
    return rows;
}

std::string words(const LotRow& row, const kitchen::Kitchen& kitchen, basics::Day today) {
    const auto& first = *row.first;
    const std::string use = detail::meal_words(kitchen, first.for_dish, first.for_meal, first.for_day, today);
    const std::string more = row.meals > 1 ? fmt::format(" and {} more", row.meals - 1) : "";
    return fmt::format("{}, {}, for {}{}", kitchen::label(kitchen, first.ingredient, first.cooked_as),
                       detail::packs_words(kitchen, first.ingredient, row.amount, row.packs), use, more);
}

void lots(const std::vector<LotRow>& rows, const kitchen::Kitchen& kitchen, basics::Day today, const Manner& manner,
          std::string& out) {
    const std::size_t shown = manner.all ? rows.size() : std::min(rows.size(), most_rows);
    for (std::size_t i = 0; i < shown; ++i) out += wrapped("  " + words(rows[i], kitchen, today), 4) + "\n";
    if (shown < rows.size()) out += fmt::format("  {} more: --all\n", rows.size() - shown);
}

void walk_words(const ask::Walk& walk, const kitchen::Kitchen& kitchen, basics::Day today, const Manner& manner,
                std::string& out) {
    out += wrapped(fmt::format("{}, {}: {}{}", capitalised(day(walk.day, today)), kitchen.place(walk.from).name,
                               packs(packs_of(walk)), walk.room_ml() > 0 ? ", " + litres(walk.room_ml()) : ""),
                   2) +
           "\n";
    lots(rows_of(walk, false), kitchen, today, manner, out);
    const auto straight = rows_of(walk, true);
    const bool thaws =
        std::any_of(straight.begin(), straight.end(), [](const LotRow& row) { return row.first->thaws; });
    if (!straight.empty()) out += thaws ? "  Straight to the fridge to thaw\n" : "  Straight into the pan, frozen\n";
    lots(straight, kitchen, today, manner, out);
}

}  // namespace

std::string text(const ask::CarryAnswer& answer, const kitchen::Kitchen& kitchen, basics::Day today,
                 const Manner& manner) {
    std::string out = wrapped(sentence(answer, kitchen, today)) + "\n";
    if (answer.walks.empty()) return out;
    for (const std::string& note : answer.notes) out += wrapped(note) + "\n";
    for (const auto& walk : answer.walks) walk_words(walk, kitchen, today, manner, out);
    if (answer.near && answer.room_ml) {
        out += wrapped(fmt::format("The {} is fullest {}: {} of its {} L.", kitchen.place(*answer.near).name,
                                   on_day(answer.fullest, today), (answer.fullest_ml + ml_per_litre - 1) / ml_per_litre,
                                   *answer.room_ml / ml_per_litre)) +
               "\n";
    } else if (answer.near) {
        out += wrapped(fmt::format("The room of the {} is not known: nothing says whether all of it fits.",
                                   kitchen.place(*answer.near).name)) +
               "\n";
    }
    if (manner.why)
        out += wrapped(fmt::format("Filling up and walking as late as can be: {} walks; no plan has fewer than {}.",
                                   answer.by_rule, answer.bound)) +
               "\n";
    out += wrapped("Carry it quickly: it stays frozen hard. Once it is done: the same with --done") + "\n";
    return out;
}

}  // namespace samebase::show
