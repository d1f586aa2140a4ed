// Laws of one ingredient over days.
#include <rapidcheck/catch.h>

#include <algorithm>
#include <catch2/catch.hpp>
#include <numeric>

#include "flow/component.hpp"
#include "flow/detail/search.hpp"
#include "support/random_component.hpp"

using namespace samebase;
using namespace samebase::flow;
using tests::Figures;

namespace {

std::uint64_t any_number() {
    return *rc::gen::inRange<std::uint64_t>(0, 1'000'000'000);
}

Component any_component(Figures figures, const tests::Allowed& allowed = {}) {
    const Component component = tests::random_component(any_number(), figures, allowed);
    RC_LOG() << tests::to_text(component);
    return component;
}

/// A law on ten components a case: a hundred cases are soon done.
template <class Law>
void prop(const char* name, Law law) {
    rc::prop(name, [law] {
        for (int i = 0; i < 10; ++i) law();
    });
}

constexpr tests::Allowed fixed{.opening = false, .thawing = false, .buying = false};

/// What any order of use comes to: `order` says by want which unit is looked at first, second, ...
struct Issued {
    std::vector<std::int64_t> unmet;  ///< by day
    std::int64_t tossed = 0;
    std::int64_t price = 0;
};

Issued issue(const Component& component, tests::Random& random) {
    Issued issued{std::vector<std::int64_t>(static_cast<std::size_t>(component.days), 0)};
    std::vector<std::int64_t> left;
    for (const Unit& unit : component.units) left.push_back(unit.amount);
    std::vector<std::size_t> order(left.size());
    std::iota(order.begin(), order.end(), 0U);
    for (const Want& want : component.wants) {
        for (std::size_t i = order.size(); i > 1; --i) {
            std::swap(order[i - 1], order[static_cast<std::size_t>(random.within(0, static_cast<int>(i) - 1))]);
        }
        std::int64_t open = want.amount;
        for (const std::size_t i : order) {
            if (want.slot < component.units[i].first || want.slot > component.units[i].last) continue;
            const auto take = std::min(open, left[i]);
            left[i] -= take;
            open -= take;
        }
        issued.unmet[static_cast<std::size_t>(day_of(want.slot))] += open;
    }
    for (std::size_t i = 0; i < left.size(); ++i) {
        const Unit& unit = component.units[i];
        if (unit.last > dinner_of(component.days - 1)) continue;
        issued.tossed += left[i];
        issued.price += unit.price.minor / (unit.amount / 50'000) * (left[i] / 50'000);
    }
    return issued;
}

std::int64_t tossed_amount(const Outcome& outcome) {
    return std::accumulate(outcome.fates.begin(), outcome.fates.end(), std::int64_t{0},
                           [](std::int64_t sum, const Fate& fate) { return sum + fate.tossed; });
}

/// used + tossed + left is what there was, of every unit; met + unmet is what was asked, of every want; prices add up.
void check_ledger(const Component& component, const Outcome& outcome) {
    std::vector<std::int64_t> used(outcome.fates.size(), 0);
    std::vector<std::int64_t> met(component.wants.size(), 0);
    for (const Use& use : outcome.uses) {
        used[static_cast<std::size_t>(use.unit)] += use.amount;
        met[static_cast<std::size_t>(use.want)] += use.amount;
    }
    RC_ASSERT(outcome.fates.size() >= component.units.size());
    std::int64_t paid = 0;
    std::int64_t tossed = 0;
    std::int64_t kept = 0;
    for (std::size_t i = 0; i < outcome.fates.size(); ++i) {
        const Fate& fate = outcome.fates[i];
        RC_ASSERT(fate.bought == (i >= component.units.size()));
        if (!fate.bought) RC_ASSERT((fate.unit == component.units[i]));
        RC_ASSERT(used[i] == fate.used);
        RC_ASSERT(used[i] + fate.tossed + fate.left() == fate.unit.amount);
        RC_ASSERT((fate.tossed >= 0 && fate.left() >= 0));
        RC_ASSERT((fate.tossed == 0 || fate.left() == 0));
        paid += fate.bought ? fate.unit.price.minor : 0;
        tossed += basics::share_of(fate.unit.price, fate.tossed, fate.unit.amount).minor;
        kept += basics::share_of(fate.unit.price, fate.left(), fate.unit.amount).minor;
    }
    RC_ASSERT(outcome.spent.minor == paid);
    RC_ASSERT(outcome.tossed.minor == tossed);
    RC_ASSERT(outcome.kept.minor == kept);
    for (std::size_t w = 0; w < met.size(); ++w) RC_ASSERT(met[w] + outcome.unmet[w] == component.wants[w].amount);
}

}  // namespace

TEST_CASE("whatever is decided, every amount adds up") {
    prop("best and quick", [] {
        const Component component = any_component(*rc::gen::element(Figures::even, Figures::uneven));
        for (const Effort effort : {Effort::exact, Effort::quick}) {
            const Outcome outcome = best(component, effort);
            RC_ASSERT(check(component, outcome).value_or("sound") == "sound");
            check_ledger(component, outcome);
        }
    });
    prop("decisions at random", [] {
        const Component component = any_component(Figures::uneven);
        Decisions decisions = detail::by_rule(component);
        for (int& day : decisions.ready_day) day = *rc::gen::inRange(-1, component.days);
        for (int& day : decisions.opened_day) day = *rc::gen::inRange(-1, component.days);
        check_ledger(component, carry_out(component, decisions));
    });
}

TEST_CASE("the bound is never above what is reached, and quick is never better than exact") {
    prop("bound, exact, quick", [] {
        const Component component = any_component(Figures::even);
        const Outcome exact = best(component);
        const Value value = exact.value(component);
        RC_ASSERT((detail::bound(component) <= value));
        const Outcome quick = best(component, Effort::quick);
        RC_ASSERT((value <= quick.value(component)));
        if (quick.proved) RC_ASSERT((value == quick.value(component)));
        RC_ASSERT((best(component).decisions == exact.decisions));
    });
}

TEST_CASE("a unit more never raises what is unmet, and never costs more than it is worth") {
    prop("one more", [] {
        const Component component = any_component(Figures::even);
        tests::Random random(any_number());
        Component more = component;
        more.units.push_back(
            tests::random_unit(random, Figures::even, {}, component.days, *rc::gen::arbitrary<bool>()));
        more.units.back().lot = 99;
        RC_LOG() << "with " << tests::to_text(more);
        const Value before = best(component).value(component);
        const Value after = best(more).value(more);
        RC_ASSERT((after.unmet <= before.unmet));
        if (after.unmet == before.unmet) {
            // At worst it is tossed whole.
            RC_ASSERT((after.cost <= before.cost + more.units.back().price));
        }
    });
}

TEST_CASE("a want more never lowers what is unmet") {
    prop("one more want", [] {
        const Component component = any_component(Figures::even);
        if (component.wants.empty()) return;
        Component fewer = component;
        fewer.wants.erase(fewer.wants.begin() + *rc::gen::inRange<std::ptrdiff_t>(0, std::ssize(fewer.wants)));
        RC_ASSERT((best(fewer).value(fewer).unmet <= best(component).value(component).unmet));
    });
}

TEST_CASE("with nothing to decide, first expired, first out meets as much and tosses as little as any order of use") {
    prop("random orders", [] {
        const Component component = any_component(Figures::even, fixed);
        const Outcome outcome = best(component);
        const Value value = outcome.value(component);
        tests::Random random(any_number());
        for (int tries = 0; tries < 20; ++tries) {
            const Issued issued = issue(component, random);
            // Of every day together with all before it, no more is unmet.
            std::int64_t ours = 0;
            std::int64_t theirs = 0;
            for (std::size_t day = 0; day < issued.unmet.size(); ++day) {
                ours += value.unmet[day];
                theirs += issued.unmet[day];
                RC_ASSERT(ours <= theirs);
            }
            RC_ASSERT(tossed_amount(outcome) <= issued.tossed);
            RC_ASSERT(outcome.tossed.minor <= issued.price);
        }
    });
}

TEST_CASE("amounts and prices in other units give the same answer") {
    prop("scaled", [] {
        const Component component = any_component(Figures::even);
        const auto by = *rc::gen::inRange<std::int64_t>(2, 1000);
        Component scaled = component;
        for (Unit& unit : scaled.units) unit.amount *= by;
        for (Want& want : scaled.wants) want.amount *= by;
        if (scaled.offer) scaled.offer->pack *= by;
        Value value = best(component).value(component);
        for (auto& amount : value.unmet) amount *= by;
        RC_ASSERT((best(scaled).value(scaled) == value));
    });
}
