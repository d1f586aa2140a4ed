// What a command, or the undoing of one, adds to the tables.
#pragma once

#include <SQLiteCpp/SQLiteCpp.h>

#include <optional>

#include "kitchen/changes.hpp"
#include "store/detail/names.hpp"
#include "store/rows.hpp"

namespace samebase::store::detail {

/// The rows of a change, numbered behind what is there. A fact that holds already, or did not hold, makes no row.
[[nodiscard]] Document rows_of(SQLite::Database& db, const Names& names, const kitchen::Change& change);

/// The last command that is neither an undo nor undone.
[[nodiscard]] std::optional<CommandRow> to_undo(SQLite::Database& db);

/// The rows that take the last command back: its own in reverse, each lot as it stood before.
/// Documents become what they were, or what `documents` says.
[[nodiscard]] Document reverse(SQLite::Database& db, const CommandRow& command, basics::Day today,
                               const std::vector<kitchen::DocumentEdit>& documents);

/// All rows.
[[nodiscard]] Document everything(SQLite::Database& db);

}  // namespace samebase::store::detail
