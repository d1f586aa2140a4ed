// The demo kitchen on the day that it is written around: what every workload runs on.
#pragma once

#include <memory>

#include "basics/day.hpp"
#include "basics/problem.hpp"
#include "kitchen/kitchen.hpp"

namespace samebase::benchmarks {

struct Demo {
    kitchen::Kitchen kitchen;
    basics::Day today;
};

/// The shipped catalogue, stand-ins, bases and dishes, read from their documents.
[[nodiscard]] basics::Result<std::shared_ptr<const kitchen::Knowledge>> load_knowledge();

/// The demo's household, stock, plan and history on top of it, read from their documents.
[[nodiscard]] basics::Result<Demo> load_demo(std::shared_ptr<const kitchen::Knowledge> knowledge);

}  // namespace samebase::benchmarks
