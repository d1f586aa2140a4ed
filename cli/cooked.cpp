// samebase cooked DISH: eats its ingredients and makes its leftovers.
#include <fmt/format.h>

#include <algorithm>

#include "amounts.hpp"
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

tl::expected<kitchen::Change, Failure> compute(const Arguments& arguments, const kitchen::At& at) {
    if (arguments.dish.empty())
        return failure(not_understood,
                       {{"cooked", "no dish is named", "a dish, as in 'cooked meat loaf'", std::nullopt}});
    const auto dish = dish_meant(at.kitchen, joined(arguments.dish));
    if (!dish) return tl::make_unexpected(dish.error());
    kitchen::Cooked cooked;
    cooked.dish = *dish;
    const bool planned_lunch = kitchen::planned(at.kitchen.plan, at.day, kitchen::Meal::lunch, *dish) != nullptr;
    if (arguments.lunch || planned_lunch || !at.kitchen.cookbook()[*dish].dinner) cooked.meal = kitchen::Meal::lunch;
    if (const auto set = set_serves(arguments, at, cooked); !set) return tl::make_unexpected(set.error());
    if (const auto set = set_places(arguments, at, cooked); !set) return tl::make_unexpected(set.error());
    auto swaps = read_swaps(joined(arguments.with), at.kitchen, *dish, cooked.serves);
    if (!swaps) return tl::make_unexpected(swaps.error());
    cooked.swaps = std::move(swaps->swaps);
    if (const auto* planned = kitchen::planned(at.kitchen.plan, at.day, cooked.meal, *dish))
        cooked.swaps = kitchen::both(cooked.swaps, planned->swaps);
    auto change = understood(kitchen::cooked(at, cooked));
    if (change) change->notes.insert(change->notes.begin(), swaps->notes.begin(), swaps->notes.end());
    return change;
}

Outcome run(const Arguments& arguments, const Context& context) {
    return carry_out(context, arguments.how,
                     [&](const kitchen::At& at, const store::State&) { return compute(arguments, at); });
}

}  // namespace

void add_cooked(CLI::App& app, Chosen& chosen) {
    auto* command = app.add_subcommand("cooked", "a dish was cooked: cooked meat loaf --left 2 --freeze 3");
    auto arguments = std::make_shared<Arguments>();
    command->add_option("dish", arguments->dish, "the dish");
    command->add_option("--serves", arguments->serves,
                        "serves cooked (else for those at home today, and what is left and frozen)");
    command->add_option("--left", arguments->left, "serves left over");
    command->add_option("--freeze", arguments->freeze, "serves frozen as a ready meal");
    command->add_option("--in", arguments->in, "where the leftovers go, or in which freezer")->type_name("PLACE");
    add_with(*command, arguments->with);
    command->add_flag("--lunch", arguments->lunch, "for lunch (else for dinner, where it is a dinner)");
    add_dry_run(*command, arguments->how);
    run_with(*command, chosen, arguments, run);
}

}  // namespace samebase::cli
