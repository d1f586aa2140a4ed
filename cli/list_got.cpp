#include <fmt/format.h>

#include <algorithm>

#include "ask/list.hpp"
#include "bought.hpp"
#include "list.hpp"

namespace samebase::cli {

namespace {

using ask::ListItem;

/// What is frozen goes to a freezer, the rest where it usually is.
std::optional<stock::PlaceId> freezer_for(const kitchen::Kitchen& kitchen, const ListItem& item) {
    using stock::PlaceKind;
    if (!item.to_freeze) return std::nullopt;
    return kitchen::place_of(kitchen.household, {PlaceKind::near_freezer, PlaceKind::far_freezer});
}

/// Ticks things off the list.
class Ticking {
  public:
    Ticking(const kitchen::At& at, const store::State& facts, Answers& answers)
        : at_(at), facts_(facts), answers_(answers), list_(ask::ask_list(at.kitchen, at.day)) {}

    /// These alone; a thing that is not on the list came home with the rest.
    tl::expected<void, Failure> only(const std::string& words) {
        for (const std::string& text : split_at_commas(words)) {
            if (const auto* row = other(text)) {
                others_.push_back(*row);
                continue;
            }
            auto wanted = read_things(at_, facts_, text, std::nullopt, Doing::buying, answers_);
            if (!wanted) return tl::make_unexpected(wanted.error());
            if (auto added = add(std::move(wanted->front())); !added) return added;
        }
        return {};
    }

    tl::expected<void, Failure> all_but(const std::string& words) {
        const auto skipped = left_out(words);
        if (!skipped) return tl::make_unexpected(skipped.error());
        for (const ListItem& item : list_.items) {
            if (std::find(skipped->begin(), skipped->end(), item.ingredient) != skipped->end()) continue;
            Wanted wanted;
            wanted.thing.ingredient = item.ingredient;
            if (auto added = add(std::move(wanted)); !added) return added;
        }
        return {};
    }

    /// What was paid for some of what was bought.
    tl::expected<void, Failure> price(const std::string& words) {
        basics::Problems problems;
        for (const std::string& text : split_at_commas(words)) {
            const auto read = read_things(at_, facts_, text, std::nullopt, Doing::buying, answers_);
            if (!read) return tl::make_unexpected(read.error());
            const Wanted& said = read->front();
            const auto there = std::find_if(wanted_.begin(), wanted_.end(), [&](const Wanted& w) {
                return w.thing.ingredient == said.thing.ingredient;
            });
            const bool priced = said.beside.each || said.beside.total || said.beside.rate;
            if (!priced) problems.push_back({text, "no price", "a price, as in 'milk @ 4.65'", std::nullopt});
            if (there == wanted_.end()) problems.push_back({text, "was not bought", "something on the list", {}});
            if (there != wanted_.end()) there->beside = said.beside;
        }
        if (!problems.empty()) return failure(not_understood, std::move(problems));
        return {};
    }

    tl::expected<kitchen::Change, Failure> change(const std::string& paid) {
        std::vector<kitchen::Got> things;
        std::vector<std::string> notes;
        for (const Wanted& wanted : wanted_) {
            if (wanted.quantity.all()) continue;  // nobody knows how it is sold: it is there again
            const auto* item = item_of(wanted.thing.ingredient);
            auto got =
                bought(at_.kitchen, wanted, item == nullptr ? std::nullopt : freezer_for(at_.kitchen, *item), notes);
            if (!got) return tl::make_unexpected(got.error());
            things.push_back(std::move(*got));
        }
        if (const auto shared = share_payment(at_.kitchen, paid, things, notes); !shared)
            return tl::make_unexpected(shared.error());
        auto change = understood(kitchen::got(at_, things));
        if (!change) return change;
        tick_off(*change);
        if (change->empty())
            return failure(not_understood, {{"list", "nothing is on the list", "something to buy", std::nullopt}});
        change->command = "list";
        change->notes.insert(change->notes.end(), notes.begin(), notes.end());
        return change;
    }

  private:
    [[nodiscard]] const ListItem* item_of(catalogue::IngredientId id) const {
        const auto found = std::find_if(list_.items.begin(), list_.items.end(),
                                        [&](const ListItem& item) { return item.ingredient == id; });
        return found == list_.items.end() ? nullptr : &*found;
    }

    /// What is no food, by its words; a price beside it is not kept.
    [[nodiscard]] const kitchen::Listed* other(std::string text) const {
        if (!take_beside(text, at_.kitchen.household.currency, at_.day)) return nullptr;
        const auto said = read_said(text, at_.kitchen.household.measures);
        const auto found = std::find_if(list_.others.begin(), list_.others.end(), [&](const kitchen::Listed& row) {
            return row.words == text || (said && row.words == said->name);
        });
        return found == list_.others.end() ? nullptr : &*found;
    }

    /// As many as are on the list where no amount was said.
    tl::expected<void, Failure> add(Wanted wanted) {
        const auto* item = item_of(wanted.thing.ingredient);
        if (wanted.quantity.all() && item == nullptr) {
            const std::string& name = at_.kitchen.catalogue()[wanted.thing.ingredient].name;
            return failure(not_understood,
                           {{name, "is not on the list", "something on the list, or how much of it", {}}});
        }
        if (wanted.quantity.all() && item->packs > 0) {
            wanted.quantity.packs = std::int64_t{1000} * item->packs;
            wanted.pack = measure::Amount{item->amount.dimension(), item->amount.value() / item->packs};
        }
        wanted_.push_back(std::move(wanted));
        return {};
    }

    /// What stays on the list; what is no food among it is left in `list_` no longer.
    tl::expected<std::vector<catalogue::IngredientId>, Failure> left_out(const std::string& words) {
        std::vector<catalogue::IngredientId> few;
        for (const ListItem& item : list_.items) few.push_back(item.ingredient);
        std::vector<catalogue::IngredientId> skipped;
        others_ = list_.others;
        for (const std::string& text : split_at_commas(words)) {
            if (const auto* row = other(text)) {
                std::erase(others_, *row);
                continue;
            }
            const auto one = one_of_meant(at_.kitchen, few, text, "on the list");
            if (!one) return tl::make_unexpected(one.error());
            skipped.push_back(*one);
        }
        return skipped;
    }

    void tick_off(kitchen::Change& change) const {
        for (const Wanted& wanted : wanted_) {
            const auto id = wanted.thing.ingredient;
            if (!wanted.quantity.all()) continue;
            if (at_.kitchen.household.staples_out[id.index()])
                change.facts.push_back({false, {kitchen::Fact::Kind::out, id, 0, {}}});
        }
        std::vector<std::string> words;
        for (const kitchen::Listed& row : others_) {
            change.list.push_back({false, row});
            words.push_back(row.words);
        }
        if (words.empty()) return;
        const std::string line = fmt::format("bought, and no food: {}", fmt::join(words, ", "));
        if (change.entries.empty()) {
            change.line = line;
        } else {
            change.notes.push_back(line);
        }
    }

    const kitchen::At& at_;
    const store::State& facts_;
    Answers& answers_;
    ask::ListAnswer list_;
    std::vector<Wanted> wanted_;
    std::vector<kitchen::Listed> others_;
};

}  // namespace

tl::expected<kitchen::Change, Failure> got_of_list(const kitchen::At& at, const store::State& facts,
                                                   const GotOfList& said, Answers& answers) {
    Ticking ticking(at, facts, answers);
    if (!said.only.empty() && !said.not_it.empty())
        return failure(not_understood, {{"--not", "beside things that are named", "one of the two", std::nullopt}});
    const auto chosen = said.only.empty() ? ticking.all_but(said.not_it) : ticking.only(said.only);
    if (!chosen) return tl::make_unexpected(chosen.error());
    if (const auto priced = ticking.price(said.prices); !priced) return tl::make_unexpected(priced.error());
    return ticking.change(said.paid);
}

}  // namespace samebase::cli
