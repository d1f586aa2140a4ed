// samebase got: things arrive.
#include <fmt/format.h>

#include <numeric>

#include "amounts.hpp"
#include "ledger.hpp"
#include "show/words.hpp"

namespace samebase::cli {

namespace {

struct Arguments {
    std::vector<std::string> what;
    std::vector<std::string> in;
    std::string paid;
    std::string use_by;
    std::vector<std::string> note;
    How how;
};

/// What was paid for all, shared by what things usually cost; the last takes what is left over.
tl::expected<void, Failure> share_payment(const kitchen::Kitchen& kitchen, basics::Money paid,
                                          std::vector<kitchen::Got>& things) {
    if (things.size() == 1) {
        things.front().paid = paid;
        return {};
    }
    std::vector<std::int64_t> usual;
    for (const auto& got : things) {
        const auto& thing = kitchen.catalogue()[got.ingredient];
        std::int64_t amount = got.quantity.amount ? got.quantity.amount->value() : 0;
        if (!got.quantity.amount && got.quantity.packs) {
            const auto pack = got.pack ? *got.pack : thing.pack ? thing.pack->amount : measure::Amount{};
            amount = basics::scale(*got.quantity.packs, pack.value(), 1000).value_or(0);
        }
        const auto price = kitchen::price(kitchen, got.ingredient, amount);
        if (!price || price->minor <= 0) {
            return failure(not_understood,
                           {{"--paid", fmt::format("nothing is known of the price of {}", thing.name),
                             "things whose share of the payment is known", "enter it in a line of its own"}});
        }
        usual.push_back(price->minor);
    }
    const std::int64_t sum = std::accumulate(usual.begin(), usual.end(), std::int64_t{0});
    basics::Money rest = paid;
    for (std::size_t i = 0; i < things.size(); ++i) {
        things[i].paid = i + 1 == things.size() ? rest : basics::share_of(paid, usual[i], sum);
        rest -= *things[i].paid;
    }
    return {};
}

tl::expected<kitchen::Change, Failure> compute(const Arguments& arguments, const kitchen::At& at,
                                               const store::State& facts, PackSizes& packs) {
    std::optional<stock::PlaceId> place;
    if (!arguments.in.empty()) {
        const auto said = place_meant(at.kitchen, joined(arguments.in));
        if (!said) return tl::make_unexpected(said.error());
        place = *said;
    }
    const auto things = read_things(at, facts, joined(arguments.what), place, Things::For::buying, packs);
    if (!things) return tl::make_unexpected(things.error());
    std::optional<basics::Day> use_by;
    if (!arguments.use_by.empty()) {
        const auto day = day_meant(arguments.use_by, at.day, "--use-by");
        if (!day) return tl::make_unexpected(day.error());
        use_by = *day;
    }
    const auto note = remark(arguments.note, "--note");
    if (!note) return tl::make_unexpected(note.error());
    std::vector<kitchen::Got> list;
    for (const Wanted& wanted : *things) {
        if (wanted.quantity.all()) {
            return failure(not_understood,
                           {{wanted.said.text, "no amount", "how much, as in '2 kg beef mince'", std::nullopt}});
        }
        const auto where = place ? place : kitchen::usual_place(at.kitchen, wanted.thing.ingredient);
        if (!where)
            return failure(files_unsound, {{"kitchen.json, /places", "there is no place to keep anything",
                                            "at least one place", std::nullopt}});
        list.push_back(
            {wanted.thing.ingredient, wanted.quantity, *where, wanted.pack, use_by, std::nullopt, std::nullopt, *note});
    }
    if (!arguments.paid.empty()) {
        const auto paid = read_money(arguments.paid, at.kitchen.household.currency, "--paid");
        if (!paid) return tl::make_unexpected(paid.error());
        if (const auto shared = share_payment(at.kitchen, *paid, list); !shared)
            return tl::make_unexpected(shared.error());
    }
    auto change = understood(kitchen::got(at, list));
    if (!change || arguments.paid.empty() || list.size() == 1) return change;
    std::vector<std::string> shares;
    shares.reserve(list.size());
    for (const auto& got : list) {
        shares.push_back(fmt::format("{} for {}", show::money(*got.paid, at.kitchen.household.currency),
                                     at.kitchen.catalogue()[got.ingredient].name));
    }
    change->notes.push_back("what was paid is shared by the usual prices: " + show::listed(shares));
    return change;
}

Outcome run(const Arguments& arguments, const Context& context) {
    PackSizes packs;
    return carry_out(context, arguments.how, [&](const kitchen::At& at, const store::State& facts) {
        return compute(arguments, at, facts, packs);
    });
}

}  // namespace

void add_got(CLI::App& app, Chosen& chosen) {
    auto* command =
        app.add_subcommand("got", "things arrived: got 2 kg beef mince, 3 cabbages --in far freezer --paid 14.50");
    auto arguments = std::make_shared<Arguments>();
    command->add_option("what", arguments->what, "amounts and names, with commas between things");
    command->add_option("--in", arguments->in, "where it goes (else where such things usually are)")
        ->type_name("PLACE");
    command->add_option("--paid", arguments->paid, "for all of it")->type_name("MONEY");
    command->add_option("--use-by", arguments->use_by, "the use-by that is printed on it")->type_name("DAY");
    command->add_option("--note", arguments->note, "a remark")->type_name("WORDS");
    add_dry_run(*command, arguments->how);
    run_with(*command, chosen, arguments, run);
}

}  // namespace samebase::cli
