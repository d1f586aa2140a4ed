// A chain of commands in which the next one follows from the ledger's revision alone: whoever runs it, from wherever it
// was broken off, writes the same ledger.
#pragma once

#include "basics/problem.hpp"
#include "stock/entry.hpp"
#include "store/store.hpp"

namespace samebase::tests {

/// Writes the next command, every tenth one an undo; its number.
[[nodiscard]] basics::Result<stock::CommandNumber> next_of_chain(store::Store& store);

/// What the ledger holds after that many commands of it.
[[nodiscard]] store::Document after(const store::Document& whole, stock::CommandNumber commands);

}  // namespace samebase::tests
