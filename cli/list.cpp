// samebase list: what to buy on the next trip, and that it was bought.
#include "ask/list.hpp"

#include <fmt/format.h>

#include <nlohmann/json.hpp>

#include "commands.hpp"
#include "ledger.hpp"
#include "meaning.hpp"
#include "show/list.hpp"

namespace samebase::cli {

namespace {

struct Arguments {
    bool got = false;
    std::vector<std::string> but_not;
    show::Manner manner;
    How how;
};

/// Those of the list that were not bought.
tl::expected<std::vector<catalogue::IngredientId>, Failure> left_out(const Arguments& arguments,
                                                                     const kitchen::Kitchen& kitchen,
                                                                     const ask::ListAnswer& answer) {
    std::vector<catalogue::IngredientId> few;
    for (const ask::ListItem& item : answer.items) few.push_back(item.ingredient);
    std::vector<catalogue::IngredientId> list;
    for (const std::string& words : split_at_commas(joined(arguments.but_not))) {
        const auto one = one_of_meant(kitchen, few, words, "on the list");
        if (!one) return tl::make_unexpected(one.error());
        list.push_back(*one);
    }
    return list;
}

/// What is frozen goes to the near freezer, the rest where it usually is.
std::optional<stock::PlaceId> place_for(const kitchen::Kitchen& kitchen, const ask::ListItem& item) {
    using stock::PlaceKind;
    if (item.to_freeze) {
        if (const auto freezer =
                kitchen::place_of(kitchen.household, {PlaceKind::near_freezer, PlaceKind::far_freezer}))
            return freezer;
    }
    return kitchen::usual_place(kitchen, item.ingredient);
}

tl::expected<kitchen::Change, Failure> bought(const Arguments& arguments, const kitchen::At& at) {
    const auto answer = ask::ask_list(at.kitchen, at.day);
    const auto skipped = left_out(arguments, at.kitchen, answer);
    if (!skipped) return tl::make_unexpected(skipped.error());
    std::vector<kitchen::Got> things;
    for (const ask::ListItem& item : answer.items) {
        if (std::find(skipped->begin(), skipped->end(), item.ingredient) != skipped->end()) continue;
        const auto place = place_for(at.kitchen, item);
        if (!place) {
            return failure(files_unsound,
                           {{"kitchen.json, /places", "there is no place to keep anything", "at least one place", {}}});
        }
        kitchen::Got got;
        got.ingredient = item.ingredient;
        got.quantity.packs = std::int64_t{1000} * item.packs;
        got.pack = measure::Amount{item.amount.dimension(), item.amount.value() / item.packs};
        got.place = *place;
        things.push_back(std::move(got));
    }
    if (things.empty())
        return failure(not_understood, {{"list", "nothing is on the list", "something to buy", std::nullopt}});
    return understood(kitchen::got(at, things));
}

Outcome run(const Arguments& arguments, const Context& context) {
    if (arguments.got) {
        return carry_out(context, arguments.how,
                         [&](const kitchen::At& at, const store::State&) { return bought(arguments, at); });
    }
    if (!arguments.but_not.empty())
        return failure(not_understood, {{"list", "--not without --got", "both, or neither", std::nullopt}});
    if (arguments.how.dry_run) return nothing_to_write(arguments.how, "--got");
    const auto today = context.today();
    if (!today) return tl::make_unexpected(today.error());
    const auto kitchen = context.kitchen();
    if (!kitchen) return tl::make_unexpected(kitchen.error());
    const auto answer = ask::ask_list(*kitchen, *today);
    context.answer([&](const show::Manner& manner) { return show::text(answer, *kitchen, *today, manner); },
                   [&] { return show::json(answer, *kitchen); }, arguments.manner);
    return answered;
}

}  // namespace

void add_list(CLI::App& app, Chosen& chosen) {
    auto* command = app.add_subcommand("list", "what to buy on the next trip; and when it is bought: list --got");
    auto arguments = std::make_shared<Arguments>();
    command->add_flag("--why", arguments->manner.why, "a line each, with what it is for");
    command->add_flag("--got", arguments->got, "it was bought: everything goes into stock");
    command->add_option("--not", arguments->but_not, "with --got: all but these")->type_name("THINGS");
    add_dry_run(*command, arguments->how);
    run_with(*command, chosen, arguments, run);
}

}  // namespace samebase::cli
