// What is put on the shopping list by hand, and what of it was bought.
#pragma once

#include <string>
#include <vector>

#include "amounts.hpp"
#include "ledger.hpp"

namespace samebase::cli {

/// "2 bread, dishwashing liquid": what is the name of food, without a slip, is that food; the rest is no food.
[[nodiscard]] tl::expected<kitchen::Change, Failure> put_on_list(const kitchen::At& at, const std::string& words);

/// By a name, or a part of one.
[[nodiscard]] tl::expected<kitchen::Change, Failure> take_off_list(const kitchen::At& at, const std::string& words);

/// What was said with `list --got`.
struct GotOfList {
    std::string only;    ///< "milk @ 4.65, bread": these alone; empty: all
    std::string not_it;  ///< "carrot, milk": all but these
    std::string prices;  ///< "milk 4.65, bread 3.20": what was paid for some of them
    std::string paid;    ///< for all of it
};
[[nodiscard]] tl::expected<kitchen::Change, Failure> got_of_list(const kitchen::At& at, const store::State& facts,
                                                                 const GotOfList& said, Answers& answers);

}  // namespace samebase::cli
