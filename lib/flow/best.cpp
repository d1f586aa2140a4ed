#include <utility>

#include "flow/component.hpp"
#include "flow/detail/search.hpp"

namespace samebase::flow {

namespace {

/// Beyond so many combinations the integer programme is the quicker way.
constexpr std::int64_t most_tried = 400;

}  // namespace

Outcome best(const Component& component, Effort effort) {
    if (detail::nothing_to_decide(component)) return carry_out(component, {});
    Outcome by_rule = carry_out(component, detail::by_rule(component));
    const Value value = by_rule.value(component);
    const Value bound = detail::bound(component);
    if (value <= bound) return by_rule;
    if (auto tried = detail::by_trying(component, most_tried)) {
        return tried->value(component) < value ? std::move(*tried) : std::move(by_rule);
    }
    by_rule.proved = false;
    if (effort == Effort::quick) return by_rule;
    const bool meets_most = value.unmet == bound.unmet;
    const auto programmed = detail::by_programme(component, meets_most ? value.unmet : std::vector<std::int64_t>{});
    if (!programmed) return by_rule;
    Outcome by_programme = carry_out(component, programmed->decisions);
    Outcome& better = by_programme.value(component) <= value ? by_programme : by_rule;
    better.proved = programmed->proved;
    return std::move(better);
}

}  // namespace samebase::flow
