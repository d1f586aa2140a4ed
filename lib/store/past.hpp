// The ledger as questions look back on it.
#pragma once

#include "kitchen/kitchen.hpp"
#include "kitchen/past.hpp"
#include "store/rows.hpp"

namespace samebase::store {

/// Linear in the ledger. Ingredients that the catalogue no longer has are left out. What a ledger began with was not
/// bought.
[[nodiscard]] kitchen::Past past_of(const Document& ledger, const kitchen::Knowledge& knowledge);

}  // namespace samebase::store
