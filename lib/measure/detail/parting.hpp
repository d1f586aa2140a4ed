// An ingredient line as it is taken apart, and the first step: its amount, unit and sizes.
#pragma once

#include <cstddef>
#include <string>
#include <string_view>
#include <vector>

#include "measure/detail/lead.hpp"
#include "measure/line.hpp"

namespace samebase::measure::detail {

/// `at` moves through the plain text; what is neither name nor amount gathers in `asides`, in the order of the line.
struct Parting {
    std::string_view text;
    MeasureSet set;
    std::size_t at = 0;
    std::size_t end = 0;  ///< of the text that is not yet taken
    WrittenLine line;
    std::vector<std::string> asides;

    void aside(std::string_view words) {
        while (!words.empty() && words.front() == ' ') words.remove_prefix(1);
        while (!words.empty() && words.back() == ' ') words.remove_suffix(1);
        if (!words.empty()) asides.emplace_back(words);
    }
    void take(const Lead& lead) {
        line.amount = lead.written;
        line.unit = lead.unit;
        aside(lead.manner);
        at = lead.end;
    }
};

/// Takes the amount, the unit and the sizes of one from the front of the text, or the amount from its end. What is left
/// between `at` and `end` is the name and its preparation. Returns the last word of what was taken from the front, ""
/// where nothing was.
[[nodiscard]] basics::Result<std::string_view> take_quantity(Parting& parting);

}  // namespace samebase::measure::detail
