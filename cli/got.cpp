// samebase got: things arrive.
#include <fmt/format.h>

#include <algorithm>
#include <cmath>

#include "amounts.hpp"
#include "basics/exact.hpp"
#include "ledger.hpp"
#include "show/words.hpp"

namespace samebase::cli {

namespace {

struct Arguments {
    std::vector<std::string> what;
    std::vector<std::string> in;
    std::string paid;
    std::vector<std::string> use_by;
    std::vector<std::string> note;
    How how;
};

/// How much of it that is, in its own dimension; 0 where that is not known.
std::int64_t amount_of(const kitchen::Kitchen& kitchen, const kitchen::Got& got) {
    const auto& thing = kitchen.catalogue()[got.ingredient];
    if (got.quantity.amount) return got.quantity.amount->value();
    if (!got.quantity.packs) return 0;
    const auto pack = got.pack ? *got.pack : thing.pack ? thing.pack->amount : measure::Amount{};
    return basics::scale(*got.quantity.packs, pack.value(), 1000).value_or(0);
}

/// Which of two prices is the nearer to the usual one; the first where they are alike, or nothing is usual.
basics::Money likelier(basics::Money first, basics::Money second, std::optional<basics::Money> usual) {
    if (!usual || usual->minor <= 0 || first.minor <= 0 || second.minor <= 0) return first;
    const auto far = [&](basics::Money price) {
        return std::abs(std::log(static_cast<double>(price.minor) / static_cast<double>(usual->minor)));
    };
    return far(first) > far(second) + std::log(3) ? second : first;
}

/// What was paid for all of one thing, as it was said beside it: "@" is the price of each that was counted, and of all
/// that was measured.
tl::expected<std::optional<basics::Money>, Failure> paid_for(const kitchen::Kitchen& kitchen, const Wanted& wanted,
                                                             std::int64_t amount) {
    const Beside& beside = wanted.beside;
    if (beside.total) return std::optional(*beside.total);
    const auto& thing = kitchen.catalogue()[wanted.thing.ingredient];
    if (beside.rate) {
        const auto of = catalogue::in_own_dimension(beside.of, thing);
        if (!of) return failure(not_understood, of.error());
        return std::optional(basics::share_of(*beside.rate, amount, of->value()));
    }
    if (!beside.each) return std::optional<basics::Money>();
    const auto* count = std::get_if<measure::Amount>(&wanted.said.amount->amount);
    if (count == nullptr || count->dimension() != measure::Dimension::pieces) return std::optional(*beside.each);
    const basics::Money all = basics::share_of(*beside.each, count->value(), 1000);
    if (beside.said_each) return std::optional(all);
    return std::optional(likelier(all, *beside.each, kitchen::price(kitchen, wanted.thing.ingredient, amount)));
}

/// A price that is far from what such things usually cost is remarked on.
void remark_on(const kitchen::Kitchen& kitchen, const std::string& what, basics::Money paid, basics::Money usual,
               std::vector<std::string>& notes) {
    constexpr std::int64_t far = 3;
    if (usual.minor <= 0 || (paid.minor <= far * usual.minor && far * paid.minor >= usual.minor)) return;
    const std::string& currency = kitchen.household.currency;
    notes.push_back(fmt::format("{} for {} is far from the usual {}: 'samebase undo' takes it back",
                                show::money(paid, currency), what, show::money(usual, currency)));
}

/// What was paid for all, less what was said of single things, shared among the rest by what they usually cost; the
/// last takes what is left over.
tl::expected<void, Failure> share_payment(const kitchen::Kitchen& kitchen, basics::Money paid,
                                          std::vector<kitchen::Got>& things, std::vector<std::string>& notes) {
    std::vector<std::pair<kitchen::Got*, std::int64_t>> open;
    basics::Money rest = paid;
    std::int64_t sum = 0;
    for (auto& got : things) {
        if (got.paid) {
            rest -= *got.paid;
            continue;
        }
        const auto price = kitchen::price(kitchen, got.ingredient, amount_of(kitchen, got));
        if (things.size() > 1 && (!price || price->minor <= 0)) {
            const std::string& name = kitchen.catalogue()[got.ingredient].name;
            return failure(not_understood, {{"--paid", fmt::format("nothing is known of the price of {}", name),
                                             "things whose share of the payment is known",
                                             fmt::format("say its price: '{} @ 4.65'", name)}});
        }
        open.emplace_back(&got, price ? price->minor : 0);
        sum += open.back().second;
    }
    if (rest.minor < 0 || (open.empty() && rest.minor != 0)) {
        return failure(
            not_understood,
            {{"--paid",
              fmt::format("the prices that were said do not go with {}", show::money(paid, kitchen.household.currency)),
              "at least their sum, or no --paid", std::nullopt}});
    }
    remark_on(kitchen, open.size() == 1 ? kitchen.catalogue()[open.front().first->ingredient].name : "all of that",
              rest, {sum}, notes);
    basics::Money left = rest;
    for (std::size_t i = 0; i < open.size(); ++i) {
        open[i].first->paid = i + 1 == open.size() ? left : basics::share_of(rest, open[i].second, sum);
        open[i].first->paid_is_share = open.size() > 1;
        left -= *open[i].first->paid;
    }
    return {};
}

/// Where it goes: where it was said, a freezer if it was said to be frozen, else where such things usually are.
tl::expected<stock::PlaceId, Failure> place_for(const kitchen::Kitchen& kitchen, const Wanted& wanted,
                                                std::optional<stock::PlaceId> said) {
    if (said) return *said;
    const auto& places = kitchen.household.places;
    if (wanted.frozen) {
        for (const auto kind : {stock::PlaceKind::near_freezer, stock::PlaceKind::far_freezer}) {
            for (std::uint32_t i = 0; i < places.size(); ++i) {
                if (places[i].kind == kind) return stock::PlaceId{i};
            }
        }
    }
    if (const auto usual = kitchen::usual_place(kitchen, wanted.thing.ingredient)) return *usual;
    return failure(files_unsound, {{"kitchen.json, /places", "there is no place to keep anything", "at least one place",
                                    std::nullopt}});
}

/// What is the same for all of the line.
struct ForAll {
    std::optional<stock::PlaceId> place;
    std::optional<basics::Day> use_by;
    std::string note;
};

tl::expected<ForAll, Failure> for_all(const Arguments& arguments, const kitchen::At& at) {
    ForAll all;
    if (!arguments.in.empty()) {
        const auto said = place_meant(at.kitchen, joined(arguments.in));
        if (!said) return tl::make_unexpected(said.error());
        all.place = *said;
    }
    if (!arguments.use_by.empty()) {
        const auto day = day_meant(joined(arguments.use_by), at.day, "--use-by");
        if (!day) return tl::make_unexpected(day.error());
        all.use_by = *day;
    }
    auto note = remark(arguments.note, "--note");
    if (!note) return tl::make_unexpected(note.error());
    all.note = std::move(*note);
    return all;
}

tl::expected<kitchen::Change, Failure> compute(const Arguments& arguments, const kitchen::At& at,
                                               const store::State& facts, Answers& answers) {
    const auto all = for_all(arguments, at);
    if (!all) return tl::make_unexpected(all.error());
    const auto things = read_things(at, facts, joined(arguments.what), all->place, Doing::buying, answers);
    if (!things) return tl::make_unexpected(things.error());
    std::vector<kitchen::Got> list;
    std::vector<std::string> notes;
    for (const Wanted& wanted : *things) {
        if (wanted.quantity.all()) {
            return failure(not_understood,
                           {{wanted.said.text, "no amount", "how much, as in '2 kg beef mince'", std::nullopt}});
        }
        const auto where = place_for(at.kitchen, wanted, all->place);
        if (!where) return tl::make_unexpected(where.error());
        kitchen::Got got{wanted.thing.ingredient,
                         wanted.quantity,
                         *where,
                         wanted.pack,
                         wanted.beside.use_by ? wanted.beside.use_by : all->use_by,
                         std::nullopt,
                         std::nullopt,
                         all->note};
        const std::int64_t amount = amount_of(at.kitchen, got);
        const auto paid = paid_for(at.kitchen, wanted, amount);
        if (!paid) return tl::make_unexpected(paid.error());
        got.paid = *paid;
        const auto usual = kitchen::price(at.kitchen, got.ingredient, amount);
        if (got.paid && usual)
            remark_on(at.kitchen, at.kitchen.catalogue()[got.ingredient].name, *got.paid, *usual, notes);
        list.push_back(std::move(got));
    }
    if (!arguments.paid.empty()) {
        const auto paid = read_money(arguments.paid, at.kitchen.household.currency, "--paid");
        if (!paid) return tl::make_unexpected(paid.error());
        if (const auto shared = share_payment(at.kitchen, *paid, list, notes); !shared)
            return tl::make_unexpected(shared.error());
    }
    auto change = understood(kitchen::got(at, list));
    if (!change) return change;
    change->notes.insert(change->notes.end(), notes.begin(), notes.end());
    const bool shared = std::any_of(list.begin(), list.end(), [](const auto& got) { return got.paid_is_share; });
    if (shared) change->notes.emplace_back("what was paid is shared by the usual prices, which stay as they are");
    return change;
}

Outcome run(const Arguments& arguments, const Context& context) {
    Answers answers;
    return carry_out(context, arguments.how, [&](const kitchen::At& at, const store::State& facts) {
        return compute(arguments, at, facts, answers);
    });
}

}  // namespace

void add_got(CLI::App& app, Chosen& chosen) {
    auto* command = app.add_subcommand(
        "got", "things arrived: got 2 kg beef mince @ 9/kg, 3 cabbages @ 4.65, 300 g ham use by 30 dec");
    auto arguments = std::make_shared<Arguments>();
    command->add_option("what", arguments->what,
                        "amounts and names, with commas between things; a price each, '@ 4.65' or '@ 9/kg'");
    command->add_option("--in", arguments->in, "where it goes (else where such things usually are)")
        ->type_name("PLACE");
    command->add_option("--paid", arguments->paid, "for all of it")->type_name("MONEY");
    command->add_option("--use-by", arguments->use_by, "the use-by that is printed on it")->type_name("DAY");
    command->add_option("--note", arguments->note, "a remark")->type_name("WORDS");
    add_dry_run(*command, arguments->how);
    run_with(*command, chosen, arguments, run);
}

}  // namespace samebase::cli
