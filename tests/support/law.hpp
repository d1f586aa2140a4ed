// Laws under rapidcheck that cost too much for a hundred tries.
#pragma once

#include <rapidcheck.h>

#include <algorithm>
#include <catch2/catch.hpp>
#include <sstream>

namespace samebase::tests {

/// A law that is tried so many times, without shrinking what fails; the seed is printed, and RC_PARAMS sets it. Where
/// RC_PARAMS asks for more than rapidcheck's usual hundred cases, this is tried more often by the same factor.
template <class Law>
void holds(int times, Law law) {
    rc::detail::TestParams params = rc::detail::configuration().testParams;
    constexpr int usual = 100;
    params.maxSuccess = times * std::max(usual, params.maxSuccess) / usual;
    params.disableShrinking = true;
    const auto result = rc::detail::checkTestable(law, rc::detail::TestMetadata{}, params);
    std::ostringstream words;
    rc::detail::printResultMessage(result, words);
    INFO(words.str() << "\nseed " << params.seed << ", kept by RC_PARAMS=seed=" << params.seed);
    CHECK(result.template is<rc::detail::SuccessResult>());
}

}  // namespace samebase::tests
