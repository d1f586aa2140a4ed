// What the judges of plans take out of a freezer at a time.
#pragma once

#include <algorithm>
#include <cstdint>
#include <vector>

#include "catalogue/catalogue.hpp"
#include "stock/lot.hpp"

namespace samebase::tests {

/// The packs of a frozen lot, serve by serve where it has none but is counted in serves; what is cooked from frozen is
/// one heap, or serves.
inline std::vector<std::int64_t> frozen_packs(const stock::Lot& lot, const catalogue::Ingredient& thing) {
    if (!lot.packs.empty() && thing.thaw != catalogue::Thaw::from_frozen) return lot.packs;
    if (!thing.in_serves) return {lot.amount.value()};
    std::vector<std::int64_t> serves;
    for (auto left = lot.amount.value(); left > 0; left -= 1000) serves.push_back(std::min<std::int64_t>(1000, left));
    return serves;
}

}  // namespace samebase::tests
