// Is a file sound, and does everything in it follow from its entries?
#pragma once

#include <SQLiteCpp/SQLiteCpp.h>

#include <string>

#include "basics/problem.hpp"
#include "store/store.hpp"

namespace samebase::store::detail {

/// Checks, in this order: SQLite's own integrity and foreign keys; the seal of every command; every lot, the plan, the
/// history and the facts, recomputed from the rows that made them. Linear in the ledger. Within a transaction.
[[nodiscard]] basics::Result<Checked> check(SQLite::Database& db, const std::string& file);

}  // namespace samebase::store::detail
