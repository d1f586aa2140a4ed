// The shipped data, read once for all tests of a program.
#pragma once

#include <catch2/catch.hpp>
#include <cstdlib>
#include <filesystem>
#include <iostream>
#include <memory>
#include <string>
#include <string_view>
#include <vector>

#include "exchange/knowledge.hpp"

namespace samebase::tests {

/// Everything under data/. Ends the program with every problem found where it cannot be read.
inline const kitchen::Knowledge& shipped() {
    static const std::shared_ptr<const kitchen::Knowledge> knowledge = [] {
        const std::filesystem::path folder{SAMEBASE_SOURCE_DIR "/data"};
        auto read = exchange::load_knowledge({&folder, 1});
        if (!read) {
            for (const auto& problem : read.error()) std::cerr << basics::to_text(problem) << '\n';
            std::abort();
        }
        return *read;
    }();
    return *knowledge;
}

inline const catalogue::Catalogue& shipped_catalogue() {
    return shipped().catalogue;
}

inline catalogue::IngredientId shipped_ingredient(std::string_view id) {
    const auto found = shipped().catalogue.ingredient(id);
    INFO("ingredient " << id);
    REQUIRE(found);
    return *found;
}

/// The ingredient of that identifier, or all members of the family of that identifier.
inline std::vector<catalogue::IngredientId> shipped_members(std::string_view id) {
    if (const auto one = shipped().catalogue.ingredient(id)) return {*one};
    const auto family = shipped().catalogue.family(id);
    INFO("ingredient or family " << id);
    REQUIRE(family);
    const auto members = shipped().catalogue.members(*family);
    REQUIRE(!members.empty());
    return {members.begin(), members.end()};
}

inline catalogue::Keeping keeping(catalogue::IngredientId id, catalogue::Keep where) {
    return shipped().catalogue[id].keeps[static_cast<std::size_t>(where)];
}

}  // namespace samebase::tests
