// What wants do to one item: the quick answer to "what does this choice cost", some hundred thousand times a second. It
// goes by the same rules as the balance (flow/component.hpp) without its search: wants are met in the order of time, by
// what is open or thawed first, then by what ends first; what is missing is bought in whole packs on the last trip
// before it.
#pragma once

#include <cstdint>
#include <span>
#include <vector>

#include "menu/problem.hpp"

namespace samebase::menu {

/// What an item comes to. Money in thousandths.
struct Supplied {
    Worth spent = 0;
    Worth tossed = 0;
    Worth tossed_of_stock = 0;  ///< of that, what is in stock today
    Worth kept = 0;             ///< the price of what is good at the end, in full
    std::int64_t missing = 0;   ///< what is not there and no trip brings

    [[nodiscard]] Worth worth(const Item& item) const { return kept * item.kept_thousandths / 1000 - spent - tossed; }
};

/// Meets wants from a copy of what is there. Reused, so that nothing is allocated from run to run.
class Supply {
  public:
    /// `wants` in the order of time.
    Supplied run(const Item& item, std::span<const flow::Want> wants);

    /// After run(): what is left, in no order.
    [[nodiscard]] const std::vector<Batch>& left() const { return left_; }

  private:
    [[nodiscard]] int best_at(flow::Slot time) const;
    std::int64_t buy(const Item& item, flow::Slot time, std::int64_t amount, Supplied& result);

    std::vector<Batch> left_;
};

/// An item with what the wants of a component leave of its stock and of what is bought for them. What they open or thaw
/// is there from then on.
[[nodiscard]] Item left_by_wants(const flow::Component& component, int kept_thousandths);

}  // namespace samebase::menu
