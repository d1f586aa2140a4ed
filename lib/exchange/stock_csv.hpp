// Stock as a table for spreadsheets: CSV by RFC 4180 (through libcsv), UTF-8, a line a lot under a line of names.
//
//     lot, ingredient, label, dish, place, amount, packs, state, arrived, since, opened_on, thaw, thawed_on,
//     printed_use_by, use_by, best_by, paid_minor, note
//
// Things are named by identifier, days are ISO 8601, amounts as a cook writes them, packs with semicolons between.
// A cell that a spreadsheet would take for a formula (it begins with = + - @) has an apostrophe before it, which
// reading takes away again. label, use_by and best_by are for people: reading leaves them out and works them out anew.
#pragma once

#include <span>
#include <string>

#include "basics/problem.hpp"
#include "exchange/household.hpp"

namespace samebase::exchange {

[[nodiscard]] std::string write_stock_csv(std::span<const stock::Lot> lots, const kitchen::Kitchen& kitchen);

/// The columns may stand in any order, and those that are not needed be absent: ingredient, place, and amount or packs
/// are. A lot without a number is numbered by its line, one without a day arrives on `today`. Problems name line and
/// column.
[[nodiscard]] basics::Result<std::vector<stock::Lot>> read_stock_csv(const std::string& text, const std::string& name,
                                                                     const kitchen::Knowledge& knowledge,
                                                                     const kitchen::Household& household,
                                                                     basics::Day today);

}  // namespace samebase::exchange
