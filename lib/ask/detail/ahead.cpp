#include "ask/detail/ahead.hpp"

#include <fmt/format.h>

namespace samebase::ask::detail {

basics::Result<void> ends_ahead(const std::string& question, basics::Span span, basics::Day today) {
    constexpr basics::days longest{731};
    const std::string found = fmt::format("the span ends on {}", basics::iso(span.last));
    if (span.last < today)
        return basics::problem(question, found, fmt::format("a span that ends on {} or later", basics::iso(today)));
    if (span.last > today + longest)
        return basics::problem(question, found, fmt::format("a span that ends by {}", basics::iso(today + longest)));
    return {};
}

}  // namespace samebase::ask::detail
