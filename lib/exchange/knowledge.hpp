// What is known before any household comes into it: the catalogue, stand-ins, bases and dishes, read from folders of
// documents as data/README.md describes them.
#pragma once

#include <filesystem>
#include <memory>
#include <span>
#include <string>
#include <vector>

#include "basics/problem.hpp"
#include "kitchen/kitchen.hpp"

namespace samebase::exchange {

/// A document as it is going to be: read in place of the one on the disk, or beside them where there is none.
struct Draft {
    std::filesystem::path path;  ///< in one of a folder's own folders: "kitchen/dishes/imported.json"
    std::string text;
};

/// Reads the folders one after the other: the shipped data, then what a kitchen adds (its own `catalogue`, `stand_ins`,
/// `bases` and `dishes` folders). Every problem of every document is reported, in three looks: what is no JSON; then
/// families and ingredients; then what names them. Identifiers may occur once over all documents.
[[nodiscard]] basics::Result<std::shared_ptr<const kitchen::Knowledge>> load_knowledge(
    std::span<const std::filesystem::path> folders, const Draft* draft = nullptr);

}  // namespace samebase::exchange
