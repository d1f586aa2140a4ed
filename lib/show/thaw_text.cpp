#include <fmt/format.h>

#include <algorithm>

#include "catalogue/hand.hpp"
#include "show/balance.hpp"
#include "show/detail/thawing.hpp"
#include "show/thaw.hpp"

namespace samebase::show {

namespace detail {

std::string packs_words(const kitchen::Kitchen& kitchen, catalogue::IngredientId id, std::int64_t quantity, int packs) {
    const auto& thing = kitchen.catalogue()[id];
    if (thing.in_serves || packs == 0) return catalogue::weighed({thing.dimension, quantity}, thing);
    return show::packs(packs);
}

std::string meal_words(const kitchen::Kitchen& kitchen, std::optional<cookbook::DishId> dish, kitchen::Meal meal,
                       basics::Day on, basics::Day today) {
    if (!dish) return fmt::format("everyday use {}", on_day(on, today));
    const std::string& name = kitchen.cookbook()[*dish].name;
    const bool lunch = meal == kitchen::Meal::lunch;
    const std::string near = near_day(on, today);
    if (near.find(' ') != std::string::npos)
        return fmt::format("{}{} {}", name, lunch ? ", lunch" : "", on_day(on, today));
    return fmt::format("{}'s {}{}", near, lunch ? "lunch, " : "", name);
}

std::string about(int minutes) {
    constexpr int half_an_hour = 30;
    const int halves = std::max(2, (minutes + half_an_hour - 1) / half_an_hour);
    if (halves == 2) return "about an hour";
    return fmt::format("about {}{} hours", halves / 2, halves % 2 == 0 ? "" : " 1/2");
}

std::string command(const ask::TooLate& late, const kitchen::Kitchen& kitchen) {
    using Instead = ask::TooLate::Instead;
    switch (late.instead) {
        case Instead::cold_water:
            return "samebase thaw --done";
        case Instead::microwave:
            return fmt::format("samebase moved {} of lot {} --to fridge --thaw microwave", show::packs(late.packs),
                               late.lot);
        case Instead::mend:
            return show::command(*late.mend, kitchen);
        case Instead::other_dish:
            break;
    }
    if (late.meal == kitchen::Meal::lunch) return fmt::format("samebase swap {} DISH --lunch", basics::iso(late.day));
    const auto& thing = kitchen.catalogue()[late.ingredient];
    const std::string what = late.dish ? kitchen.cookbook()[*late.dish].name : thing.name;
    return fmt::format("samebase else {} --day {}", shell(what), basics::iso(late.day));
}

std::string words(const ask::TooLate& late, const kitchen::Kitchen& kitchen, basics::Day today) {
    using Instead = ask::TooLate::Instead;
    const std::string how = command(late, kitchen);
    switch (late.instead) {
        case Instead::cold_water:
            return fmt::format("thaw it in cold water {} and cook it at once", day(late.day, today));
        case Instead::microwave:
            return fmt::format(
                "thaw it in the microwave and {} at once: {}",
                kitchen.catalogue()[late.ingredient].kind == catalogue::Kind::cooked ? "heat it through" : "cook it",
                how);
        case Instead::mend:
            return show::words(*late.mend, kitchen, today);
        case Instead::other_dish:
            break;
    }
    return fmt::format("look for another dish: {}", how);
}

}  // namespace detail

namespace {

constexpr std::size_t most_days = 5;
constexpr std::size_t most_frozen = 4;

struct Page {
    const kitchen::Kitchen& kitchen;
    basics::Day today;

    [[nodiscard]] std::string name(const flow::ThawMove& move) const {
        const stock::Lot* lot = kitchen.lot(move.lot);
        return kitchen::label(kitchen, move.ingredient, lot != nullptr ? lot->dish : std::nullopt);
    }
};

std::vector<const ask::TakeOut*> on(const ask::ThawAnswer& answer, basics::Day day) {
    std::vector<const ask::TakeOut*> list;
    for (const auto& out : answer.moves) {
        if (out.move.day == day) list.push_back(&out);
    }
    return list;
}

/// "2 things are too late for the fridge. "
std::string too_late(const ask::ThawAnswer& answer) {
    const auto count = std::count_if(answer.late.begin(), answer.late.end(), [](const ask::TooLate& late) {
        return late.instead != ask::TooLate::Instead::cold_water;
    });
    if (count == 0) return "";
    return count == 1 ? "One thing is too late for the fridge. "
                      : fmt::format("{} things are too late for the fridge. ", count);
}

std::string sentence(const ask::ThawAnswer& answer, const Page& page) {
    const bool one_day = answer.span.last == page.today;
    const std::string until = one_day ? "" : fmt::format(" up to {}", day(answer.span.last, page.today));
    if (answer.moves.empty()) return fmt::format("{}Nothing is to be taken out to thaw{}.", too_late(answer), until);
    const auto today = on(answer, page.today);
    const std::size_t later = answer.moves.size() - today.size();
    if (today.empty()) {
        const auto& first = answer.moves.front().move;
        const std::string all =
            answer.moves.size() == 1 ? "nothing else" : fmt::format("{} things", answer.moves.size());
        return fmt::format("{}Nothing to take out today. First {} {}; {}{}.", too_late(answer), page.name(first),
                           on_day(first.day, page.today), all, until);
    }
    std::vector<std::string> words;
    for (const auto* out : today) {
        const auto& move = out->move;
        words.push_back(fmt::format("{}, {}", page.name(move),
                                    detail::packs_words(page.kitchen, move.ingredient, move.amount, move.packs)));
    }
    constexpr std::size_t most_named = 2;
    const std::string what =
        words.size() > most_named ? fmt::format("{} things", words.size()) : fmt::format("{}", fmt::join(words, "; "));
    std::string more = fmt::format(" {} more things{}.", later, until);
    if (later == 1) more = fmt::format(" One more thing{}.", until);
    if (later == 0) more = one_day ? "" : fmt::format(" Nothing more{}.", until);
    return fmt::format("{}Take out today: {}.{}", too_late(answer), what, more);
}

std::string row(const ask::TakeOut& out, const Page& page) {
    const auto& move = out.move;
    const std::string how =
        move.method == stock::ThawMethod::fridge
            ? fmt::format("{} by {}",
                          page.kitchen.catalogue()[move.ingredient].kind == catalogue::Kind::raw ? "cook" : "use",
                          near_day(move.cook_by, page.today))
            : fmt::format("too late for the fridge: in cold water {}, cook at once", detail::about(out.minutes));
    return fmt::format("{}, {}, from the {}: for {}; {}", page.name(move),
                       detail::packs_words(page.kitchen, move.ingredient, move.amount, move.packs),
                       page.kitchen.place(move.from).name,
                       detail::meal_words(page.kitchen, move.for_dish, move.for_meal, move.for_day, page.today), how);
}

void days(const ask::ThawAnswer& answer, const Page& page, const Manner& manner, std::string& out) {
    std::vector<basics::Day> all;
    for (const auto& move : answer.moves) {
        if (all.empty() || all.back() != move.move.day) all.push_back(move.move.day);
    }
    const std::size_t shown = manner.all ? all.size() : std::min(all.size(), most_days);
    for (std::size_t i = 0; i < shown; ++i) {
        out += capitalised(day(all[i], page.today)) + "\n";
        for (const auto* move : on(answer, all[i])) out += wrapped("  " + row(*move, page), 4) + "\n";
    }
    if (shown < all.size())
        out += fmt::format("{} more {}: --all\n", all.size() - shown, all.size() - shown == 1 ? "day" : "days");
}

void late(const ask::ThawAnswer& answer, const Page& page, std::string& out) {
    bool head = false;
    for (const auto& late : answer.late) {
        if (late.instead == ask::TooLate::Instead::cold_water) continue;
        if (!head) out += "Too late for the fridge\n";
        head = true;
        const auto& thing = page.kitchen.catalogue()[late.ingredient];
        out += wrapped(fmt::format("  {} for {}", named({thing.dimension, late.amount}, late.ingredient, page.kitchen),
                                   detail::meal_words(page.kitchen, late.dish, late.meal, late.day, page.today)),
                       4) +
               "\n";
        out += wrapped(fmt::format("    - {}", detail::words(late, page.kitchen, page.today)), 6) + "\n";
    }
}

void from_frozen(const ask::ThawAnswer& answer, const Page& page, const Manner& manner, std::string& out) {
    std::vector<std::string> words;
    std::vector<catalogue::IngredientId> seen;
    for (const auto& use : answer.from_frozen) {
        if (std::find(seen.begin(), seen.end(), use.ingredient) != seen.end()) continue;
        seen.push_back(use.ingredient);
        words.push_back(
            fmt::format("{} ({})", page.kitchen.catalogue()[use.ingredient].name, day(use.day, page.today)));
    }
    if (words.empty()) return;
    const std::size_t shown = manner.all ? words.size() : std::min(words.size(), most_frozen);
    const std::string more = shown < words.size() ? fmt::format(", and {} more: --all", words.size() - shown) : ".";
    words.resize(shown);
    out += wrapped(fmt::format("From frozen, without thawing: {}{}", fmt::join(words, ", "), more), 2) + "\n";
}

/// The rules in a line; each with its source with --all.
void rules(const ask::ThawAnswer& answer, const Manner& manner, std::string& out) {
    if (manner.all) {
        for (const std::string& caution : answer.cautions) out += wrapped("! " + caution, 2) + "\n";
    } else if (!answer.moves.empty()) {
        out += wrapped(
                   "! Never on the bench: 24 hours in the fridge for every 1.8 kg. What was thawed is frozen again "
                   "only once it is cooked.",
                   2) +
               "\n";
    }
    if (!answer.moves.empty() || !answer.late.empty()) out += fmt::format("{}\n", advice);
}

}  // namespace

std::string text(const ask::ThawAnswer& answer, const kitchen::Kitchen& kitchen, basics::Day today,
                 const Manner& manner) {
    const Page page{kitchen, today};
    std::string out = wrapped(sentence(answer, page)) + "\n";
    days(answer, page, manner, out);
    late(answer, page, out);
    from_frozen(answer, page, manner, out);
    if (!answer.fridge && !answer.moves.empty()) out += "! There is no fridge among the places to thaw in.\n";
    rules(answer, manner, out);
    return out;
}

}  // namespace samebase::show
