#include "bought.hpp"

#include <fmt/format.h>

#include <algorithm>
#include <cmath>

#include "basics/exact.hpp"
#include "show/words.hpp"

namespace samebase::cli {

namespace {

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
    if (!wanted.said.amount) {  // so many packs as were on the list
        const basics::Money all = basics::share_of(*beside.each, wanted.quantity.packs.value_or(1000), 1000);
        if (beside.said_each) return std::optional(all);
        return std::optional(likelier(all, *beside.each, kitchen::price(kitchen, wanted.thing.ingredient, amount)));
    }
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

}  // namespace

tl::expected<void, Failure> share_payment(const kitchen::Kitchen& kitchen, const std::string& paid,
                                          std::vector<kitchen::Got>& things, std::vector<std::string>& notes) {
    if (paid.empty()) return {};
    const auto all = read_money(paid, kitchen.household.currency, "--paid");
    if (!all) return tl::make_unexpected(all.error());
    std::vector<std::pair<kitchen::Got*, std::int64_t>> open;
    basics::Money rest = *all;
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
              fmt::format("the prices that were said do not go with {}", show::money(*all, kitchen.household.currency)),
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
    if (open.size() > 1) notes.emplace_back("what was paid is shared by the usual prices, which stay as they are");
    return {};
}

namespace {

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

}  // namespace

tl::expected<kitchen::Got, Failure> bought(const kitchen::Kitchen& kitchen, const Wanted& wanted,
                                           std::optional<stock::PlaceId> said, std::vector<std::string>& notes) {
    const auto where = place_for(kitchen, wanted, said);
    if (!where) return tl::make_unexpected(where.error());
    kitchen::Got got;
    got.ingredient = wanted.thing.ingredient;
    got.quantity = wanted.quantity;
    got.place = *where;
    got.pack = wanted.pack;
    got.use_by = wanted.beside.use_by;
    const std::int64_t amount = amount_of(kitchen, got);
    const auto paid = paid_for(kitchen, wanted, amount);
    if (!paid) return tl::make_unexpected(paid.error());
    got.paid = *paid;
    const auto usual = kitchen::price(kitchen, got.ingredient, amount);
    if (got.paid && usual) remark_on(kitchen, kitchen.catalogue()[got.ingredient].name, *got.paid, *usual, notes);
    return got;
}

}  // namespace samebase::cli
