// What `got` and `list --got` share: a thing that was bought, where it goes and what was paid for it.
#pragma once

#include <optional>
#include <string>
#include <vector>

#include "amounts.hpp"
#include "kitchen/changes.hpp"

namespace samebase::cli {

/// What was said to be bought; its place is `said`, a freezer if it was said to be frozen, else where such things
/// usually are. A price that is far from the usual one is remarked on in the notes.
[[nodiscard]] tl::expected<kitchen::Got, Failure> bought(const kitchen::Kitchen& kitchen, const Wanted& wanted,
                                                         std::optional<stock::PlaceId> said,
                                                         std::vector<std::string>& notes);

/// What was paid for all, less what was said of single things, shared among the rest by what they usually cost; the
/// last takes what is left over. Nothing where `paid` is empty.
[[nodiscard]] tl::expected<void, Failure> share_payment(const kitchen::Kitchen& kitchen, const std::string& paid,
                                                        std::vector<kitchen::Got>& things,
                                                        std::vector<std::string>& notes);

}  // namespace samebase::cli
