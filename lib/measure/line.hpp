// Written ingredient lines: "2 large cloves garlic, finely chopped". A reader by rule: an amount, a unit, the words
// that name the ingredient, and the rest, which says how it is prepared or described. Nothing of the line is lost but
// brackets and commas.
#pragma once

#include <optional>
#include <string>
#include <string_view>

#include "basics/problem.hpp"
#include "measure/measure_set.hpp"
#include "measure/written.hpp"

namespace samebase::measure {

struct WrittenLine {
    std::optional<Written> amount;  ///< nothing where the line has none ("salt to taste"); sticks of butter are a mass
    std::optional<Written> each;    ///< the size of one, as in "2 (400 g) cans" or "1 4-pound chicken"
    std::string unit;         ///< the normalised singular unit or count word ("cup", "clove"), "" where there is none
    std::string name;         ///< "garlic"; never empty
    std::string preparation;  ///< "large, finely chopped", in the order of the line
    std::string before;       ///< what of the preparation stands before the name: "large"
    std::string original;     ///< the line as it was given

    friend bool operator==(const WrittenLine&, const WrittenLine&) = default;
};

/// A line is written in at most this many bytes.
inline constexpr std::size_t longest_line = 4000;

/// Reads one line; linear in its length. Of "chicken or vegetable stock" it takes the first, "chicken stock". The
/// Problem has no `where`: the caller knows that.
[[nodiscard]] basics::Result<WrittenLine> read_line(std::string_view text, MeasureSet set);

}  // namespace samebase::measure
