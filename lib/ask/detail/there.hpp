// How much of a thing there is at a meal, and how much of that is in danger.
#pragma once

#include <cstdint>

#include "flow/balance.hpp"

namespace samebase::ask::detail {

/// What of an ingredient can be used at a slot, whatever else the plan wants.
[[nodiscard]] std::int64_t available_at(const flow::Component& component, flow::Slot slot);

/// Of what can be used there, how much is tossed, or is used there and would be tossed else.
[[nodiscard]] std::int64_t in_danger_at(const flow::Part& part, flow::Slot slot);

}  // namespace samebase::ask::detail
