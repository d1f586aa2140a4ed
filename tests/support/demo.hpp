// The shipped demo kitchen, read once for all tests of a program, and words for asking it.
#pragma once

#include <algorithm>
#include <catch2/catch.hpp>
#include <filesystem>
#include <iostream>
#include <memory>
#include <nlohmann/json.hpp>
#include <string>
#include <string_view>

#include "exchange/file.hpp"
#include "exchange/household.hpp"
#include "exchange/knowledge.hpp"
#include "kitchen/kitchen.hpp"

namespace samebase::tests {

/// The day around which the demo kitchen is written.
inline const basics::Day demo_day = *basics::read_iso_day("2026-11-25");

template <class T>
T read_or_end(basics::Result<T> result) {
    if (!result) {
        for (const auto& problem : result.error()) std::cerr << basics::to_text(problem) << '\n';
        std::abort();
    }
    return std::move(*result);
}

/// What is known, from a folder that is laid out as data/ is.
inline std::shared_ptr<const kitchen::Knowledge> knowledge_in(const std::filesystem::path& folder) {
    return read_or_end(exchange::load_knowledge({&folder, 1}));
}

inline const nlohmann::json& demo_document(const std::string& name) {
    const auto read = [](const std::string& file) {
        const auto text = read_or_end(exchange::read_file(SAMEBASE_SOURCE_DIR "/data/demo/" + file));
        return read_or_end(exchange::parse(text, file));
    };
    static const nlohmann::json household = read("kitchen.json");
    static const nlohmann::json stock = read("stock.json");
    return name == "kitchen.json" ? household : stock;
}

/// A kitchen of the demo household with that stock document.
inline kitchen::Kitchen demo_with(const std::shared_ptr<const kitchen::Knowledge>& knowledge,
                                  const nlohmann::json& stock_document) {
    kitchen::Kitchen kitchen;
    kitchen.knowledge = knowledge;
    kitchen.household =
        read_or_end(exchange::read_household(demo_document("kitchen.json"), "kitchen.json", *knowledge));
    auto stock =
        read_or_end(exchange::read_stock(stock_document, "stock.json", *knowledge, kitchen.household, basics::days{0}));
    kitchen.lots = std::move(stock.lots);
    kitchen.plan = std::move(stock.plan);
    kitchen.history = std::move(stock.history);
    return kitchen;
}

inline const kitchen::Kitchen& demo() {
    static const kitchen::Kitchen kitchen =
        demo_with(knowledge_in(SAMEBASE_SOURCE_DIR "/data"), demo_document("stock.json"));
    return kitchen;
}

inline catalogue::IngredientId thing(std::string_view id) {
    const auto found = demo().catalogue().ingredient(id);
    INFO("ingredient " << id);
    REQUIRE(found);
    return *found;
}

inline cookbook::DishId dish(std::string_view id) {
    const auto found = demo().cookbook().dish(id);
    INFO("dish " << id);
    REQUIRE(found);
    return *found;
}

}  // namespace samebase::tests
