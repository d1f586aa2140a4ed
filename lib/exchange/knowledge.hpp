// What is known before any household comes into it: the catalogue, stand-ins, bases and dishes, read from folders of
// documents as data/README.md describes them.
#pragma once

#include <filesystem>
#include <memory>
#include <span>
#include <vector>

#include "basics/problem.hpp"
#include "kitchen/kitchen.hpp"

namespace samebase::exchange {

/// Reads the folders one after the other: the shipped data, then what a kitchen adds (its own `catalogue`, `stand_ins`,
/// `bases` and `dishes` folders). Every problem of every document is reported, in three looks: what is no JSON; then
/// families and ingredients; then what names them. Identifiers may occur once over all documents.
[[nodiscard]] basics::Result<std::shared_ptr<const kitchen::Knowledge>> load_knowledge(
    std::span<const std::filesystem::path> folders);

}  // namespace samebase::exchange
