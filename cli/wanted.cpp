// A line of things, each with its amount; and what the cook is asked about it on a terminal.
#include <fmt/format.h>

#include <algorithm>

#include "amounts.hpp"
#include "ledger.hpp"
#include "stock/packs.hpp"

namespace samebase::cli {

namespace {

using measure::Amount;
using measure::Dimension;

/// What the largest pack of it weighs that is in stock, there or anywhere; 0 where there is none.
std::int64_t pack_in_stock(const kitchen::Kitchen& kitchen, const Thing& thing, std::optional<stock::PlaceId> place) {
    std::int64_t largest = 0;
    for (const auto& lot : kitchen.lots) {
        if (lot.ingredient == thing.ingredient && (!place || lot.place == *place))
            largest = std::max(largest, stock::whole_pack(lot));
    }
    return largest;
}

tl::expected<Amount, Failure> own_amount(const Amount& amount, const catalogue::Ingredient& what,
                                         const std::string& text) {
    auto own = catalogue::in_own_dimension(amount, what);
    if (own) return *own;
    for (auto& problem : own.error()) problem.where = text;
    return failure(not_understood, std::move(own.error()));
}

/// What somebody eats where no amount is said: one piece, two slices of bread, a small tub; of leftovers all.
tl::expected<kitchen::Quantity, Failure> one_helping(const kitchen::Kitchen& kitchen, const Thing& thing,
                                                     const Said& said) {
    constexpr std::int64_t small = 250'000;  // mg or uL: what one person finishes
    constexpr std::int64_t one = 1000;
    const auto& what = kitchen.catalogue()[thing.ingredient];
    kitchen::Quantity quantity;
    if (what.in_serves || thing.lot) return quantity;
    std::int64_t there = 0;
    for (const auto& lot : kitchen.lots) there += lot.ingredient == thing.ingredient ? lot.amount.value() : 0;
    if (there == 0) return quantity;  // there is none, and the ledger says so
    const bool plural = said.name.ends_with('s') && !said.name.ends_with("ss") && !said.name.ends_with("us");
    const bool piece = what.dimension == Dimension::pieces || what.conversion.mg_per_piece;
    if (piece && !plural) {
        const bool bread = what.piece_mg.contains("slice") && what.piece_mg.contains("loaf");
        auto amount = own_amount({Dimension::pieces, bread ? 2 * one : one}, what, said.text);
        if (!amount) return tl::make_unexpected(amount.error());
        quantity.amount = *amount;
        return quantity;
    }
    if (there <= small && what.dimension != Dimension::pieces) return quantity;
    return failure(not_understood, {{said.text, "does not say how much",
                                     fmt::format("an amount, or 'all the {}'", said.name), std::nullopt}});
}

/// What was not said by a name is asked about where it would be gone.
tl::expected<Taken, Failure> sure(const kitchen::Kitchen& kitchen, Taken taken, const Said& said, Doing doing,
                                  Answers& answers) {
    if (taken.exact || !destroys(doing)) return taken;
    const std::string label = kitchen::label(kitchen, taken.thing.ingredient, taken.thing.dish);
    const auto chosen = answers.chosen(fmt::format("{}: is that what you mean?", said.name), {label});
    if (chosen) return taken;
    return failure(not_understood, {{said.name, "is not clear enough", "the name of what is there",
                                     fmt::format("the nearest: '{}'", label)}});
}

/// One thing of a line.
class Reader {
  public:
    Reader(const kitchen::At& at, const store::State& facts, std::optional<stock::PlaceId> place, Doing doing,
           Answers& answers)
        : at_(at), facts_(facts), place_(place), doing_(doing), answers_(answers), things_(at.kitchen, place, doing) {}

    tl::expected<Wanted, Failure> read(std::string text) const {
        const auto& household = at_.kitchen.household;
        Beside beside;
        if (doing_ == Doing::buying) {
            auto taken = take_beside(text, household.currency, at_.day);
            if (!taken) return tl::make_unexpected(taken.error());
            beside = *taken;
        }
        auto said = read_said(text, household.measures);
        if (!said) return tl::make_unexpected(said.error());
        auto taken = things_.taken(said->name, said->counted());
        if (!taken && said->each && said->counted() == "can") taken = things_.taken(said->name);
        if (taken) taken = sure(at_.kitchen, *taken, *said, doing_, answers_);
        if (!taken) return tl::make_unexpected(taken.error());
        said->size = taken->size;
        const Thing& thing = taken->thing;
        const bool helping = doing_ == Doing::eating && !said->amount && !said->all;
        auto quantity = helping ? one_helping(at_.kitchen, thing, *said)
                                : quantity_of(at_.kitchen, thing, *said, place_, doing_, &answers_);
        if (!quantity) return tl::make_unexpected(quantity.error());
        std::optional<Amount> pack;
        if (quantity->packs && !quantity->amount) {
            auto size = answers_.size_for(at_, facts_, thing, *said, doing_, place_);
            if (!size) return tl::make_unexpected(size.error());
            pack = *size;
        }
        const bool frozen = taken->frozen;
        return Wanted{thing, std::move(*said), *quantity, pack, beside, frozen};
    }

  private:
    const kitchen::At& at_;
    const store::State& facts_;
    std::optional<stock::PlaceId> place_;
    Doing doing_;
    Answers& answers_;
    Things things_;
};

}  // namespace

tl::expected<std::optional<Amount>, Failure> Answers::size_for(const kitchen::At& at, const store::State& facts,
                                                               const Thing& thing, const Said& said, Doing doing,
                                                               std::optional<stock::PlaceId> place) {
    const bool in_stock_counts = doing != Doing::buying;
    const auto& what = at.kitchen.catalogue()[thing.ingredient];
    if (said.each) {
        auto own = own_amount(*said.each, what, said.text);
        if (!own) return tl::make_unexpected(own.error());
        if (own->value() > 0) asked_[thing.ingredient] = *own;
        return std::optional(*own);
    }
    if (const auto known = asked_.find(thing.ingredient); known != asked_.end()) return std::optional(known->second);
    const std::int64_t in_stock = pack_in_stock(at.kitchen, thing, std::nullopt);
    // Packs that are there weigh what they weigh.
    if (in_stock_counts && pack_in_stock(at.kitchen, thing, place) > 0) return std::optional<Amount>();
    if (const auto remembered = store::remembered_pack(facts, at.kitchen.catalogue(), thing.ingredient))
        return std::optional(*remembered);
    if (in_stock_counts && in_stock > 0) return std::optional(Amount{what.dimension, in_stock});
    if (what.pack || what.in_serves) return std::optional<Amount>();
    if (in_stock > 0) return std::optional(Amount{what.dimension, in_stock});
    if (!on_terminal()) {
        return failure(not_understood,
                       {{said.text, fmt::format("nobody has said how large a pack of {} is", what.name), "a pack size",
                         fmt::format("say it once and it is remembered: '2 packs of 500 g {}'", what.name)}});
    }
    while (true) {
        const auto line = ask(fmt::format("How large is one pack of {} (500 g, 1 L, 6)?", what.name));
        if (!line)
            return failure(not_understood,
                           {{said.text, "the size of a pack was not said", "a pack size", std::nullopt}});
        const auto read = measure::read_amount(*line, at.kitchen.household.measures);
        const auto* amount = read ? std::get_if<Amount>(&read->amount) : nullptr;
        const auto own =
            amount != nullptr ? catalogue::in_own_dimension(*amount, what) : basics::Result<Amount>(Amount{});
        if (!own || own->value() <= 0) continue;
        asked_[thing.ingredient] = *own;
        return std::optional(*own);
    }
}

std::vector<kitchen::FactEdit> Answers::learned() const {
    std::vector<kitchen::FactEdit> edits;
    for (const auto& [ingredient, amount] : asked_) {
        edits.push_back({true, {kitchen::Fact::Kind::pack, ingredient, amount.value(), {}}});
    }
    return edits;
}

std::optional<std::size_t> Answers::chosen(const std::string& question, const std::vector<std::string>& among) {
    if (const auto known = chosen_.find(question); known != chosen_.end()) return known->second;
    if (!on_terminal()) return std::nullopt;
    std::optional<std::size_t> answer;
    if (among.size() == 1) {
        if (agreed(fmt::format("{} {}.", question, among.front()))) answer = 0;
    } else {
        std::string all = question;
        for (std::size_t i = 0; i < among.size(); ++i) all += fmt::format(" [{}] {}", i + 1, among[i]);
        const auto line = ask(all);
        for (std::size_t i = 0; line && i < among.size(); ++i) {
            if (*line == std::to_string(i + 1)) answer = i;
        }
    }
    chosen_[question] = answer;
    return answer;
}

tl::expected<std::vector<Wanted>, Failure> read_things(const kitchen::At& at, const store::State& facts,
                                                       const std::string& line, std::optional<stock::PlaceId> place,
                                                       Doing doing, Answers& answers) {
    const auto parts = split_at_commas(line);
    if (parts.empty())
        return failure(not_understood,
                       {{"arguments", "nothing is named", "what, as in '2 kg beef mince, 3 cabbages'", std::nullopt}});
    const Reader reader(at, facts, place, doing, answers);
    std::vector<Wanted> result;
    basics::Problems problems;
    for (const std::string& text : parts) {
        auto wanted = reader.read(text);
        if (wanted) {
            result.push_back(std::move(*wanted));
        } else {
            problems.insert(problems.end(), wanted.error().problems.begin(), wanted.error().problems.end());
        }
    }
    if (!problems.empty()) return failure(not_understood, std::move(problems));
    return result;
}

std::vector<kitchen::Item> items_of(const std::vector<Wanted>& things, std::optional<stock::PlaceId> from) {
    std::vector<kitchen::Item> items;
    for (const Wanted& wanted : things) {
        kitchen::What what{wanted.thing.lot, wanted.thing.ingredient, wanted.thing.dish, from};
        items.push_back({what, wanted.quantity, wanted.pack});
    }
    return items;
}

}  // namespace samebase::cli
