// Packs: what a lot is counted in. A lot's packs have true weights; the last may be what is left of a larger one.
// Counts are in thousandths of a pack, so that 13 and a half packs are 13,500. Things are taken from the back: the part
// pack first, then whole ones. Everything keeps the sum of the packs equal to the lot's amount. The cost is linear in
// the packs.
#pragma once

#include <cstdint>
#include <span>
#include <vector>

#include "stock/lot.hpp"

namespace samebase::stock {

/// How many packs there are, in thousandths; 0 where the lot is loose.
[[nodiscard]] std::int64_t pack_count(const Lot& lot);

/// What the next `count` thousandths of packs to be taken weigh. `count` is from 0 to pack_count(lot).
[[nodiscard]] std::int64_t weight_of_packs(const Lot& lot, std::int64_t count);

/// The least weight of whole packs (a part pack counts as one) that is at least `value`; of a loose lot, the value
/// itself.
[[nodiscard]] std::int64_t whole_packs_for(const Lot& lot, std::int64_t value);

/// What the largest pack weighs, or weighed when it was whole; 0 where the lot is loose.
[[nodiscard]] std::int64_t whole_pack(const Lot& lot);

/// Takes that much away. `value` is from 0 to the lot's amount.
void take(Lot& lot, std::int64_t value);

/// Takes that much away as a lot of its own, alike but for its number, which is 0.
[[nodiscard]] Lot split(Lot& lot, std::int64_t value);

/// Takes these packs away as a lot of its own, alike but for its number, which is 0. Each weight is that of a pack of
/// the lot, as often as it is said; of a loose lot, their sum is split off.
[[nodiscard]] Lot split_packs(Lot& lot, std::span<const std::int64_t> weights);

/// Adds that much, above 0: a part pack is filled first, and what is more makes one more pack.
void put(Lot& lot, std::int64_t value);

/// Adds that many thousandths of packs, above 0: the part pack is filled up first; then whole packs of the weight
/// `whole`, above 0, and a part pack. The lot is in packs or empty.
void put_packs(Lot& lot, std::int64_t count, std::int64_t whole);

/// `count` packs that weigh `total` together, as equal as whole numbers can be, the heavier first. `count` is from 1 to
/// `total`.
[[nodiscard]] std::vector<std::int64_t> even_packs(std::int64_t total, std::int64_t count);

}  // namespace samebase::stock
