#include "flow/component.hpp"
#include "flow/detail/search.hpp"

namespace samebase::flow {

Outcome best(const Component& component) {
    if (detail::nothing_to_decide(component)) return carry_out(component, {});
    Outcome by_rule = carry_out(component, detail::by_rule(component));
    const Value value = by_rule.value(component);
    if (value <= detail::bound(component)) return by_rule;
    by_rule.proved = false;
    const auto programmed = detail::by_programme(component);
    if (!programmed) return by_rule;
    Outcome by_programme = carry_out(component, programmed->decisions);
    Outcome& better = by_programme.value(component) <= value ? by_programme : by_rule;
    better.proved = programmed->proved;
    return better;
}

}  // namespace samebase::flow
