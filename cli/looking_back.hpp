// The kitchen with all of its history, and what its ledger remembers.
#pragma once

#include "kitchen/past.hpp"
#include "ledger.hpp"

namespace samebase::cli {

struct LookedBack {
    kitchen::Kitchen kitchen;
    kitchen::Past past;
};
[[nodiscard]] tl::expected<LookedBack, Failure> look_back(const Context& context);

}  // namespace samebase::cli
