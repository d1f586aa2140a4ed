// The whole kitchen as one JSON document: the household as it is written, the kitchen's own data documents, and the
// ledger with everything that ever happened. What is written out and read in again is written out as the same text.
//
//     {"samebase": 1, "kitchen": {...}, "own": [{"path": "dishes/ours.json", "document": {...}}],
//      "ledger": {"commands": [...], "lots": [...], "entries": [...], "plan": [...], "history": [...], "facts": [...]}}
//
// A row of the ledger takes one line; what is nothing, or as it usually is, is left out of it.
#pragma once

#include <nlohmann/json.hpp>
#include <string>
#include <vector>

#include "basics/problem.hpp"
#include "store/rows.hpp"

namespace samebase::exchange {

/// A document of the kitchen's own catalogue, stand_ins, bases or dishes folder.
struct OwnDocument {
    std::string path;  ///< "dishes/ours.json"
    nlohmann::ordered_json document;
};

struct Whole {                       // NOLINT(bugprone-exception-escape): of moving its JSON, which asserts only
    nlohmann::ordered_json kitchen;  ///< kitchen.json, its keys in their order
    std::vector<OwnDocument> own;    ///< in the order of paths
    store::Document ledger;
};

[[nodiscard]] std::string write_whole(const Whole& whole);

/// Every problem of the form is reported: `name` stands for the document. What the household and the ledger say is not
/// looked at here, but rows are numbered without a gap, and paths lead nowhere else.
[[nodiscard]] basics::Result<Whole> read_whole(const std::string& text, const std::string& name);

/// The folders that a kitchen may have of its own.
[[nodiscard]] const std::vector<std::string>& own_folders();

}  // namespace samebase::exchange
