// Dynamic lot sizing: when to buy how many packs of one thing, so that everything that is wanted over a span of periods
// is there in time, for the least cost. Plain numbers; a period is a day, or whatever the caller counts in.
//
// Wagner and Whitin (Management Science 5, 1958) with whole packs and keeping times: with either of these their
// property, that one buys only when nothing is left, no longer holds. The method is a forward dynamic programme over
// what is in stock, by when it ends.
#pragma once

#include <cstdint>
#include <optional>
#include <span>
#include <string>
#include <vector>

namespace samebase::flow {

/// A size in which the thing is sold.
struct PackSize {
    std::int64_t amount = 1;         ///< above 0
    std::vector<std::int64_t> cost;  ///< of one pack by period; at least 0

    friend bool operator==(const PackSize&, const PackSize&) = default;
};

/// What is there at the beginning, as one closed pack.
struct OpeningStock {
    std::int64_t amount = 0;
    int last = 0;  ///< the last period that it may be used in

    friend bool operator==(const OpeningStock&, const OpeningStock&) = default;
};

/// Invariants, checked by check(): the lists by period have one entry each; packs hold something; nothing is negative.
struct LotSizing {
    std::vector<std::int64_t> demand;  ///< by period
    std::vector<std::optional<std::int64_t>>
        setup;  ///< by period, of buying anything then; nothing: it cannot be bought
    std::vector<PackSize> packs;
    int keeps = -1;   ///< periods after that of buying; below 0: to the end
    int opened = -1;  ///< periods after that of opening, within `keeps`; below 0: as long as closed
    std::vector<OpeningStock> stock;
    std::int64_t hold = 0;      ///< a unit that is used, by period from buying it; of what is not used, to the last one
    std::int64_t shortage = 0;  ///< a unit that is wanted and not there: dearer than buying a pack for it

    friend bool operator==(const LotSizing&, const LotSizing&) = default;
};

struct LotPlan {
    std::vector<std::vector<int>> packs;  ///< by period, by size
    std::int64_t cost = 0;                ///< all that the problem counts
    std::int64_t bound = 0;               ///< no plan costs less
    std::int64_t short_of = 0;            ///< units that are wanted and not there

    [[nodiscard]] bool proved() const { return cost == bound; }
};

[[nodiscard]] std::optional<std::string> check(const LotSizing& problem);

/// What these purchases come to: an opened pack is used before another is opened, and of closed ones that which ends
/// first. Nothing of it lasts longer in any other order.
[[nodiscard]] LotPlan carry_out(const LotSizing& problem, std::vector<std::vector<int>> packs);

/// The best plan, of equal ones that which buys later. Exact while there are at most `most_states` ways for the stock
/// to be in any one period; beyond that the cheapest of them go on, and the bound is that of goods that keep to the
/// end, or nothing. Costs periods x states x packs.
[[nodiscard]] LotPlan best_lots(const LotSizing& problem, std::size_t most_states = 4000);

}  // namespace samebase::flow
