// samebase count PLACE: 14 mince, 5 fish, some parsley. A stocktake in one line.
#include <fmt/format.h>

#include <algorithm>

#include "amounts.hpp"
#include "ledger.hpp"
#include "show/change.hpp"

namespace samebase::cli {

namespace {

struct Arguments {
    std::vector<std::string> what;
    bool all = false;
    How how;
};

struct Line {
    std::string place;
    std::string things;
};

/// The place before the last colon; without one, the words before the first that begins an amount.
Line split(const std::vector<std::string>& words) {
    const std::string line = joined(words);
    if (const auto colon = line.rfind(':'); colon != std::string::npos)
        return {line.substr(0, colon), line.substr(colon + 1)};
    const auto begins = [](const std::string& word) {
        return word.find_first_of("0123456789") == 0 || word == "some" || word == "low" || word == "lots" ||
               word == "half" || word == "no";
    };
    const auto at = std::find_if(words.begin(), words.end(), begins);
    return {joined({words.begin(), at}), joined({at, words.end()})};
}

tl::expected<kitchen::Change, Failure> compute(const Arguments& arguments, const kitchen::At& at,
                                               const store::State& facts, Answers& packs) {
    if (arguments.what.empty()) {
        return failure(not_understood,
                       {{"count", "nothing is named", "a place and what is there: 'count fridge: 12 eggs, 2 L milk'",
                         std::nullopt}});
    }
    const Line line = split(arguments.what);
    const auto place = place_meant(at.kitchen, line.place);
    if (!place) return tl::make_unexpected(place.error());
    std::vector<kitchen::CountedItem> items;
    if (!split_at_commas(line.things).empty() || !arguments.all) {
        const auto things = read_things(at, facts, line.things, *place, Doing::counting, packs);
        if (!things) return tl::make_unexpected(things.error());
        for (const Wanted& wanted : *things) {
            if (wanted.thing.lot)
                return failure(not_understood,
                               {{wanted.said.text, "one lot", "all that is there of something", std::nullopt}});
            if (wanted.quantity.all())
                return failure(not_understood,
                               {{wanted.said.text, "no amount", "how much there is: '14 mince'", std::nullopt}});
            items.push_back({wanted.thing.ingredient, wanted.thing.dish, wanted.quantity, wanted.pack});
        }
    }
    auto change = understood(kitchen::count(at, *place, items, arguments.all));
    if (!change || change->empty()) return change;
    for (auto& edit : packs.learned()) change->facts.push_back(edit);
    return change;
}

Outcome run(const Arguments& arguments, const Context& context) {
    Answers packs;
    const auto question = [](const kitchen::Kitchen& before,
                             const kitchen::Change& change) -> std::optional<std::string> {
        return fmt::format("Was -> is:\n{}Is that right?", show::differences(before, change));
    };
    return carry_out(
        context, arguments.how,
        [&](const kitchen::At& at, const store::State& facts) { return compute(arguments, at, facts, packs); },
        question);
}

}  // namespace

void add_count(CLI::App& app, Chosen& chosen) {
    auto* command = app.add_subcommand(
        "count", "a stocktake in one line: count near freezer: 14 mince, 5 white fish, 13.5 lamb mince, some parsley");
    auto arguments = std::make_shared<Arguments>();
    command->add_option("what", arguments->what, "the place, a colon, and what is there; a part pack is 13.5");
    command->add_flag("--all", arguments->all, "what is not named in that place is gone");
    add_yes(*command, arguments->how);
    add_dry_run(*command, arguments->how);
    run_with(*command, chosen, arguments, run);
}

}  // namespace samebase::cli
