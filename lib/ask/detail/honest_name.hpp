// What a dish is called once something stands in for what its name says.
#pragma once

#include <span>
#include <string>

#include "flow/parts.hpp"
#include "kitchen/kitchen.hpp"

namespace samebase::ask::detail {

/// The dish's name; where it names what is replaced and nothing in the dish is called that any more, what stands in is
/// named there instead: "spiced lamb pizza with cucumber and parsley". A seasoning counts only after "with": a curry
/// stays a curry.
[[nodiscard]] std::string honest_name(const kitchen::Kitchen& kitchen, cookbook::DishId dish,
                                      std::span<const flow::StandInUse> stand_ins);

}  // namespace samebase::ask::detail
