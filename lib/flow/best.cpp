#include <algorithm>
#include <utility>

#include "flow/component.hpp"
#include "flow/detail/search.hpp"

namespace samebase::flow {

namespace {

/// Beyond so many combinations another way is quicker.
constexpr std::int64_t most_tried_quickly = 400;
constexpr std::int64_t most_tried = 4'000;

/// With more units to decide of than this, an integer programme may take minutes where packs are nearly alike.
constexpr std::ptrdiff_t most_programmed = 8;

bool few_to_decide(const Component& component) {
    return std::count_if(component.units.begin(), component.units.end(), [](const Unit& unit) {
               return unit.thaw_days > 0 || unit.opened_days >= 0;
           }) <= most_programmed;
}

}  // namespace

Outcome best(const Component& component, Effort effort) {
    if (detail::nothing_to_decide(component)) return carry_out(component, {});
    Outcome by_rule = carry_out(component, detail::by_rule(component));
    const Value value = by_rule.value(component);
    const Value bound = detail::bound(component);
    if (value <= bound) return by_rule;
    const auto most = effort == Effort::quick ? most_tried_quickly : most_tried;
    if (auto tried = detail::by_trying(component, most)) {
        return tried->value(component) < value ? std::move(*tried) : std::move(by_rule);
    }
    by_rule.proved = false;
    if (effort == Effort::quick) return by_rule;
    std::optional<detail::Programmed> programmed;
    if (few_to_decide(component)) {
        const bool meets_most = value.unmet == bound.unmet;
        programmed = detail::by_programme(component, meets_most ? value.unmet : std::vector<std::int64_t>{});
    }
    if (!programmed) {
        Outcome exchanged = detail::by_exchanging(component, by_rule.decisions);
        exchanged.proved = exchanged.value(component) <= bound;
        return exchanged;
    }
    Outcome by_programme = carry_out(component, programmed->decisions);
    Outcome& better = by_programme.value(component) <= value ? by_programme : by_rule;
    better.proved = programmed->proved;
    return std::move(better);
}

}  // namespace samebase::flow
