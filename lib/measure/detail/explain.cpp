#include "measure/detail/explain.hpp"

#include <utility>

#include "measure/detail/plain.hpp"

namespace samebase::measure::detail {

using basics::problem;

basics::Result<std::string> plain_or_problem(std::string_view text, std::size_t longest, std::string_view like) {
    const std::string expected(like);
    if (text.size() > longest) {
        return problem({}, quoted(text) + " is " + std::to_string(text.size()) + " bytes long",
                       expected + ", in at most " + std::to_string(longest) + " bytes");
    }
    auto made = plain(text);
    if (!made) {
        const bool nul = made.error() == Unreadable::nul;
        return problem({}, quoted(text) + (nul ? " holds a NUL byte" : " is not UTF-8"), expected + ", in UTF-8");
    }
    if (made->empty()) return problem({}, "nothing is written", expected);
    return std::move(*made);
}

tl::unexpected<basics::Problems> explain(LeadFault fault, std::string_view text) {
    const std::string quote = quoted(text);
    switch (fault) {
        case LeadFault::zero_denominator:
            return problem({}, quote + " divides by zero", "a fraction whose lower number is at least 1");
        case LeadFault::too_many_digits:
            return problem({}, quote + " has too many digits", "a number of at most 18 digits");
        case LeadFault::decimal_comma:
            return problem({}, quote + " has a comma that parts no thousands", "a decimal point, as in '1.5'");
        case LeadFault::too_large:
            return problem({}, quote + " is too large", "at most 1000000000 kg, 1000000000 L or 1000000000000 pieces");
        case LeadFault::below_nothing:
            return problem({}, quote + " is below nothing", "an amount of 0 or more");
        case LeadFault::range_backwards:
            return problem({}, quote + " runs backwards", "a range with its smaller end first");
        case LeadFault::units_differ:
            return problem({}, quote + " mixes units that do not go together", "one unit, or two of the same kind");
        case LeadFault::absent:
            break;
    }
    return problem({}, quote + " is not an amount", std::string(like_an_amount));
}

}  // namespace samebase::measure::detail
