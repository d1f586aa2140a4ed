// The two documents of a kitchen: the household (kitchen.json), and its stock, plan and history (stock.json, and the
// part of a whole export). data/README.md says how they are written.
#pragma once

#include <nlohmann/json_fwd.hpp>
#include <string>
#include <vector>

#include "basics/problem.hpp"
#include "kitchen/kitchen.hpp"

namespace samebase::exchange {

/// Reads the household. `name` stands for the document in messages; what is wrong with a person tells the name as well.
[[nodiscard]] basics::Result<kitchen::Household> read_household(const nlohmann::json& document, const std::string& name,
                                                                const kitchen::Knowledge& knowledge);

/// The same of a text; problems tell its lines too: "kitchen.json, line 12, /people/3/dislikes/0 (Dan): ...".
[[nodiscard]] basics::Result<kitchen::Household> read_household_text(const std::string& text, const std::string& name,
                                                                     const kitchen::Knowledge& knowledge);

struct Stock {
    std::vector<stock::Lot> lots;
    kitchen::Plan plan;
    std::vector<kitchen::Had> history;
};

/// Reads lots, plan and history. Every date is moved by `shift` (the demo kitchen is written around a day of its own).
[[nodiscard]] basics::Result<Stock> read_stock(const nlohmann::json& document, const std::string& name,
                                               const kitchen::Knowledge& knowledge, const kitchen::Household& household,
                                               basics::days shift);

/// The document with every date moved by `shift`, and every weekday with them, so that what fell on one day still does:
/// for the demo kitchen. Without recursion.
[[nodiscard]] nlohmann::json moved(nlohmann::json document, basics::days shift);

}  // namespace samebase::exchange
