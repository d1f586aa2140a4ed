// What goes into a dish in place of what it asks for, as a cook says it: "pork mince for beef mince, nothing for
// celery".
#pragma once

#include <CLI/App.hpp>
#include <string>
#include <vector>

#include "context.hpp"
#include "kitchen/kitchen.hpp"

namespace samebase::cli {

/// What --with says, and what the cook has to know of it: "no known amount of X for Y: weight for weight".
struct ReadSwaps {
    std::vector<kitchen::LineSwap> swaps;
    std::vector<std::string> notes;
};

/// Of the option --with, for so many serves in thousandths (above 0): "turkey mince for beef mince", "300 g lentils +
/// 100 g carrot for beef mince", "nothing for celery", with commas between. Where no amount is said it is that of the
/// best known stand-in of just these parts in any order; else the parts share the work equally, each at its known
/// ratio, and weight for weight where none is known, which is noted. Failures: what is no ingredient of the dish, or is
/// said twice.
[[nodiscard]] tl::expected<ReadSwaps, Failure> read_swaps(const std::string& text, const kitchen::Kitchen& kitchen,
                                                          cookbook::DishId dish, std::int64_t serves);

/// The option.
void add_with(CLI::App& command, std::vector<std::string>& with);

}  // namespace samebase::cli
