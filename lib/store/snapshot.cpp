#include <algorithm>
#include <utility>

#include "kitchen/standing.hpp"
#include "store/store.hpp"

namespace samebase::store {

kitchen::Kitchen kitchen_of(std::shared_ptr<const kitchen::Knowledge> knowledge, kitchen::Household household,
                            State state) {
    kitchen::Kitchen kitchen;
    kitchen.knowledge = std::move(knowledge);
    kitchen.household = std::move(household);
    kitchen.lots = std::move(state.lots);
    kitchen.plan = std::move(state.plan);
    kitchen.history = std::move(state.history);
    kitchen.household.shopped_on = state.shopped_on;
    kitchen.household.listed = std::move(state.listed);
    for (const kitchen::Fact& fact : state.facts) {
        if (fact.kind == kitchen::Fact::Kind::out) kitchen.household.staples_out[fact.ingredient.index()] = true;
        if (fact.kind != kitchen::Fact::Kind::price || fact.amount <= 0) continue;
        auto& prices = kitchen.household.prices;
        std::erase_if(prices, [&](const kitchen::Price& price) { return price.ingredient == fact.ingredient; });
        prices.push_back({fact.ingredient, {kitchen.catalogue()[fact.ingredient].dimension, fact.amount}, fact.money});
    }
    kitchen::settle(kitchen);
    return kitchen;
}

Present present(std::shared_ptr<const kitchen::Knowledge> knowledge, kitchen::Household household, State state,
                basics::Day day) {
    const auto since = state.uses_from;
    Present present;
    present.next_lot = state.next_lot;
    present.kitchen = kitchen_of(std::move(knowledge), std::move(household), std::move(state));
    present.standing = kitchen::standing_uses({present.kitchen, day, present.next_lot}, since);
    for (const kitchen::Change& change : present.standing) {
        present.next_lot = kitchen::next_lot({present.kitchen, change.day, present.next_lot}, change);
        kitchen::apply(present.kitchen, change);
    }
    return present;
}

std::optional<measure::Amount> remembered_pack(const State& state, const catalogue::Catalogue& catalogue,
                                               catalogue::IngredientId ingredient) {
    for (const kitchen::Fact& fact : state.facts) {
        if (fact.kind == kitchen::Fact::Kind::pack && fact.ingredient == ingredient) {
            return measure::Amount{catalogue[ingredient].dimension, fact.amount};
        }
    }
    return std::nullopt;
}

namespace {

/// Writes what nobody has to say. As written last; `command` is the revision after it.
basics::Result<Written> write_standing(Store& store, const std::vector<kitchen::Change>& standing,
                                       const kitchen::Knowledge& knowledge, const kitchen::Household& household,
                                       Revision revision) {
    Written last;
    last.command = revision;
    for (const kitchen::Change& change : standing) {
        auto written = store.write(change, knowledge, household, last.command);
        if (!written || written->stale || written->outdated) return written;
        last = std::move(*written);
    }
    return last;
}

}  // namespace

basics::Result<Done> carry_out(Store& store, const std::shared_ptr<const kitchen::Knowledge>& knowledge,
                               const kitchen::Household& household, basics::Day day, const Compute& compute,
                               const Since& since) {
    while (true) {
        auto state = store.read(*knowledge, household, since);
        if (!state) return tl::make_unexpected(state.error());
        State facts;
        facts.revision = state->revision;
        facts.facts = state->facts;
        facts.forgotten = state->forgotten;
        facts.shopped_on = state->shopped_on;
        Present now = present(knowledge, household, std::move(*state), day);
        facts.next_lot = now.next_lot;
        Done done{std::move(now.kitchen), {}, {}};
        auto change = compute({done.before, day, facts.next_lot}, facts);
        if (!change) return tl::make_unexpected(change.error());
        done.change = std::move(*change);
        if (done.change.empty()) return done;
        auto written = write_standing(store, now.standing, *knowledge, household, facts.revision);
        if (written && !written->stale && !written->outdated)
            written = store.write(done.change, *knowledge, household, written->command);
        if (!written) return tl::make_unexpected(written.error());
        if (written->stale && !written->outdated) continue;
        done.written = std::move(*written);
        return done;
    }
}

}  // namespace samebase::store
