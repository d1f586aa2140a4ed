#include "basics/problem.hpp"

#include <utility>

namespace samebase::basics {

tl::unexpected<Problems> problem(std::string where, std::string found, std::string expected,
                                 std::optional<std::string> hint) {
    return tl::make_unexpected(
        Problems{Problem{std::move(where), std::move(found), std::move(expected), std::move(hint)}});
}

std::string to_text(const Problem& problem) {
    std::string text = problem.where.empty() ? problem.found : problem.where + ": " + problem.found;
    if (!problem.expected.empty()) text += "; expected " + problem.expected;
    if (problem.hint) text += "; " + *problem.hint;
    return text;
}

}  // namespace samebase::basics
