#include <algorithm>
#include <utility>

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
    for (const kitchen::Fact& fact : state.facts) {
        if (fact.kind == kitchen::Fact::Kind::out) kitchen.household.staples_out[fact.ingredient.index()] = true;
        if (fact.kind != kitchen::Fact::Kind::price || fact.amount <= 0) continue;
        auto& prices = kitchen.household.prices;
        std::erase_if(prices, [&](const kitchen::Price& price) { return price.ingredient == fact.ingredient; });
        prices.push_back({fact.ingredient, {kitchen.catalogue()[fact.ingredient].dimension, fact.amount}, fact.money});
    }
    return kitchen;
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

basics::Result<Done> carry_out(Store& store, const std::shared_ptr<const kitchen::Knowledge>& knowledge,
                               const kitchen::Household& household, basics::Day day, const Compute& compute,
                               const Since& since) {
    while (true) {
        auto state = store.read(*knowledge, household, since);
        if (!state) return tl::make_unexpected(state.error());
        State facts;
        facts.revision = state->revision;
        facts.next_lot = state->next_lot;
        facts.facts = state->facts;
        facts.forgotten = state->forgotten;
        facts.shopped_on = state->shopped_on;
        Done done{kitchen_of(knowledge, household, std::move(*state)), {}, {}};
        auto change = compute({done.before, day, facts.next_lot}, facts);
        if (!change) return tl::make_unexpected(change.error());
        done.change = std::move(*change);
        if (done.change.empty()) return done;
        auto written = store.write(done.change, *knowledge, household, facts.revision);
        if (!written) return tl::make_unexpected(written.error());
        if (written->stale && !written->outdated) continue;
        done.written = std::move(*written);
        return done;
    }
}

}  // namespace samebase::store
