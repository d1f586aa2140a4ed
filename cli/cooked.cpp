// samebase cooked DISH: eats its ingredients and makes its leftovers.
#include <fmt/format.h>

#include <algorithm>

#include "amounts.hpp"
#include "basics/exact.hpp"
#include "ledger.hpp"
#include "meaning.hpp"
#include "swaps.hpp"

namespace samebase::cli {

namespace {

struct Arguments {
    std::vector<std::string> dish;
    std::string serves;
    std::string left;
    std::string freeze;
    std::vector<std::string> in;
    std::vector<std::string> with;
    std::vector<std::string> used;
    std::string day;
    bool lunch = false;
    How how;
};

tl::expected<std::optional<std::int64_t>, Failure> optional_serves(const std::string& text, const std::string& where) {
    if (text.empty()) return std::optional<std::int64_t>();
    if (text == "0") return std::optional<std::int64_t>(0);
    return read_serves(text, where).map([](std::int64_t serves) { return std::optional(serves); });
}

/// How many serves are cooked, and how many of them are eaten: by those at home, where nothing is said.
tl::expected<void, Failure> set_serves(const Arguments& arguments, const kitchen::At& at, kitchen::Cooked& cooked) {
    const auto serves = optional_serves(arguments.serves, "--serves");
    if (!serves) return tl::make_unexpected(serves.error());
    const auto left = optional_serves(arguments.left, "--left");
    if (!left) return tl::make_unexpected(left.error());
    const auto freeze = optional_serves(arguments.freeze, "--freeze");
    if (!freeze) return tl::make_unexpected(freeze.error());
    const std::int64_t at_home = kitchen::serves_wanted(at.kitchen, at.day, cooked.meal);
    const auto* planned = kitchen::planned(at.kitchen.plan, at.day, cooked.meal, cooked.dish);
    cooked.freeze = freeze->value_or(0);
    const std::int64_t kept =
        left->value_or(planned != nullptr && !*serves ? std::int64_t{1000} * planned->left : 0) + cooked.freeze;
    if (*serves) {
        cooked.serves = **serves;
        const bool keeps = at.kitchen.cookbook()[cooked.dish].leaves.has_value();
        cooked.eaten = *left || !keeps ? cooked.serves - kept : std::min(at_home, cooked.serves - kept);
    } else {
        cooked.eaten = planned != nullptr && planned->serves ? std::int64_t{1000} * *planned->serves : at_home;
        cooked.serves = cooked.eaten + kept;
    }
    if (*serves && cooked.serves <= 0) {
        return failure(not_understood, {{"--serves", fmt::format("'{}'", arguments.serves),
                                         "a number of serves above 0", std::nullopt}});
    }
    if (cooked.serves <= 0) {
        return failure(not_understood, {{at.kitchen.cookbook()[cooked.dish].name, "nobody is home to eat it today",
                                         "--serves N", std::nullopt}});
    }
    if (cooked.eaten < 0) {
        return failure(not_understood, {{"--serves", fmt::format("'{}'", arguments.serves),
                                         "no fewer than are left and frozen", std::nullopt}});
    }
    return {};
}

tl::expected<void, Failure> set_places(const Arguments& arguments, const kitchen::At& at, kitchen::Cooked& cooked) {
    using stock::PlaceKind;
    cooked.freezer = kitchen::place_of(at.kitchen.household, {PlaceKind::near_freezer, PlaceKind::far_freezer});
    auto leftovers = kitchen::place_of(
        at.kitchen.household,
        {PlaceKind::fridge, PlaceKind::near_freezer, PlaceKind::far_freezer, PlaceKind::crisper, PlaceKind::pantry});
    if (!arguments.in.empty()) {
        const auto said = place_meant(at.kitchen, joined(arguments.in));
        if (!said) return tl::make_unexpected(said.error());
        const bool freezes = stock::freezes(at.kitchen.place(*said).kind);
        if (freezes) cooked.freezer = *said;
        if (!freezes || cooked.freeze == 0) leftovers = *said;
    }
    if (!leftovers)
        return failure(files_unsound, {{"kitchen.json, /places", "there is no place to keep anything",
                                        "at least one place", std::nullopt}});
    cooked.leftovers = *leftovers;
    return {};
}

/// What really went in, as "1.5 kg mince, 2 onions".
tl::expected<std::vector<kitchen::Needed>, Failure> read_used(const std::string& text, const kitchen::At& at,
                                                              const store::State& facts) {
    std::vector<kitchen::Needed> used;
    if (text.empty()) return used;
    PackSizes sizes;
    const auto things = read_things(at, facts, text, std::nullopt, Things::For::stock, sizes);
    if (!things) return tl::make_unexpected(things.error());
    for (const Wanted& wanted : *things) {
        const auto& thing = at.kitchen.catalogue()[wanted.thing.ingredient];
        std::optional<std::int64_t> amount;
        if (wanted.quantity.amount) {
            amount = wanted.quantity.amount->value();
        } else if (wanted.quantity.packs) {
            const auto size = wanted.pack ? wanted.pack : thing.pack ? std::optional(thing.pack->amount) : std::nullopt;
            if (size) amount = basics::scale(size->value(), *wanted.quantity.packs, 1000);
        }
        if (!amount) {
            return failure(not_understood, {{"--used",
                                             fmt::format("'{}'", wanted.said.text),
                                             fmt::format("how much {}, as in '500 g {}'", thing.name, thing.name),
                                             {}}});
        }
        used.push_back({wanted.thing.ingredient, *amount});
    }
    return used;
}

/// A meal of the plan as it was cooked, or a night without cooking.
tl::expected<kitchen::Change, Failure> compute_meal(const Arguments& arguments, const kitchen::At& at,
                                                    const store::State& facts, cookbook::DishId dish,
                                                    kitchen::Meal meal) {
    if (at.kitchen.cookbook()[dish].ingredients.empty()) {
        const std::vector<kitchen::Had> had{{at.day, meal, dish}};
        kitchen::Change change = kitchen::remember(at, had);
        change.command = "cooked";
        change.line = fmt::format("{} for {}", at.kitchen.cookbook()[dish].name, name(meal));
        return change;
    }
    kitchen::Cooked cooked;
    cooked.dish = dish;
    cooked.meal = meal;
    if (const auto set = set_serves(arguments, at, cooked); !set) return tl::make_unexpected(set.error());
    if (const auto set = set_places(arguments, at, cooked); !set) return tl::make_unexpected(set.error());
    auto swaps = read_swaps(joined(arguments.with), at.kitchen, dish, cooked.serves);
    if (!swaps) return tl::make_unexpected(swaps.error());
    cooked.swaps = std::move(swaps->swaps);
    auto used = read_used(joined(arguments.used), at, facts);
    if (!used) return tl::make_unexpected(used.error());
    cooked.used = std::move(*used);
    if (const auto* planned = kitchen::planned(at.kitchen.plan, at.day, meal, dish)) {
        cooked.swaps = kitchen::both(cooked.swaps, planned->swaps);
        cooked.ready_meal = planned->ready_meal;
    }
    if (cooked.ready_meal) cooked.eaten = cooked.serves;
    auto change = understood(kitchen::cooked(at, cooked));
    if (change) change->notes.insert(change->notes.begin(), swaps->notes.begin(), swaps->notes.end());
    return change;
}

/// Everything that is planned for the day and not yet in the history: lunches, then dinner.
tl::expected<kitchen::Change, Failure> compute_day(const Arguments& arguments, const kitchen::At& at,
                                                   const store::State& facts) {
    std::vector<kitchen::Planned> rows;
    for (const kitchen::Planned& row : at.kitchen.plan) {
        const bool meant = !arguments.lunch || row.meal == kitchen::Meal::lunch;
        if (row.day == at.day && meant) rows.push_back(row);
    }
    if (rows.empty()) {
        const bool done = std::any_of(at.kitchen.done.begin(), at.kitchen.done.end(),
                                      [&](const kitchen::Planned& row) { return row.day == at.day; });
        return failure(
            not_understood,
            {{"cooked", done ? "what is planned for the day is cooked already" : "nothing is planned for the day",
              "a dish, as in 'cooked meat loaf'", std::nullopt}});
    }
    kitchen::Kitchen kitchen = at.kitchen;
    kitchen::At now{kitchen, at.day, at.next_lot};
    std::optional<kitchen::Change> all;
    Arguments plain = arguments;  // serves and leftovers are said of the dinner
    if (!arguments.lunch) plain.serves = plain.left = plain.freeze = "";
    for (const kitchen::Planned& row : rows) {
        auto change =
            compute_meal(row.meal == kitchen::Meal::lunch ? plain : arguments, now, facts, row.dish, row.meal);
        if (!change) return change;
        now.next_lot = kitchen::next_lot(now, *change);
        kitchen::apply(kitchen, *change);
        all = all ? kitchen::one_after_other(std::move(*all), std::move(*change)) : std::move(*change);
    }
    return std::move(*all);
}

tl::expected<kitchen::Change, Failure> compute(const Arguments& arguments, const kitchen::At& today,
                                               const store::State& facts) {
    basics::Day day = today.day;
    if (!arguments.day.empty()) {
        const auto said = day_meant(arguments.day, today.day, "--day");
        if (!said) return tl::make_unexpected(said.error());
        day = *said;
        if (day > today.day) {
            return failure(not_understood, {{"--day", fmt::format("{} has not come yet", basics::iso(day)),
                                             "today or a day before", std::nullopt}});
        }
    }
    const kitchen::At at{today.kitchen, day, today.next_lot};
    if (arguments.dish.empty()) return compute_day(arguments, at, facts);
    const auto dish = dish_meant(at.kitchen, joined(arguments.dish));
    if (!dish) return tl::make_unexpected(dish.error());
    const bool planned_lunch = kitchen::planned(at.kitchen.plan, at.day, kitchen::Meal::lunch, *dish) != nullptr;
    const bool lunch = arguments.lunch || planned_lunch || !at.kitchen.cookbook()[*dish].dinner;
    return compute_meal(arguments, at, facts, *dish, lunch ? kitchen::Meal::lunch : kitchen::Meal::dinner);
}

Outcome run(const Arguments& arguments, const Context& context) {
    return carry_out(context, arguments.how,
                     [&](const kitchen::At& at, const store::State& facts) { return compute(arguments, at, facts); });
}

}  // namespace

void add_cooked(CLI::App& app, Chosen& chosen) {
    auto* command = app.add_subcommand("cooked", "what was cooked: as planned today, or cooked meat loaf --left 2");
    auto arguments = std::make_shared<Arguments>();
    command->add_option("dish", arguments->dish, "the dish (else every meal planned for the day)");
    command->add_option("--serves", arguments->serves,
                        "serves cooked (else for those at home today, and what is left and frozen)");
    command->add_option("--left", arguments->left, "serves left over");
    command->add_option("--freeze", arguments->freeze, "serves frozen as a ready meal");
    command->add_option("--in", arguments->in, "where the leftovers go, or in which freezer")->type_name("PLACE");
    add_with(*command, arguments->with);
    command->add_option("--used", arguments->used, "what really went in: --used 1.5 kg mince")->type_name("AMOUNT");
    command->add_option("--day", arguments->day, "the day it was cooked (else today)");
    command->add_flag("--lunch", arguments->lunch, "for lunch (else for dinner, where it is a dinner)");
    add_dry_run(*command, arguments->how);
    run_with(*command, chosen, arguments, run);
}

}  // namespace samebase::cli
