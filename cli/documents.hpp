// The documents of a kitchen's folder that commands change, kitchen.json first: their texts, and how a change gets into
// its place whatever stops the program.
#pragma once

#include <filesystem>
#include <optional>
#include <string>

#include "basics/problem.hpp"
#include "kitchen/kitchen.hpp"
#include "store/store.hpp"

namespace samebase::cli {

/// The text of a document; nothing where there is no such file.
[[nodiscard]] basics::Result<std::optional<std::string>> text_of(const std::filesystem::path& folder,
                                                                 const std::string& path);

/// Puts every document that a command has written in its place. What somebody changed by hand in the meantime stays.
[[nodiscard]] basics::Result<void> land(const std::filesystem::path& folder, store::Store& store);

/// The same for whatever a command that was stopped has left; nothing is written where nothing was left.
[[nodiscard]] basics::Result<void> settle(const std::filesystem::path& folder);

/// The text from which that change is taken back, where it is `now`; a Problem where somebody changed by hand what the
/// command had changed.
[[nodiscard]] basics::Result<std::optional<std::string>> taken_back(const store::DocumentRow& change,
                                                                    const std::optional<std::string>& now);

/// The household of that text of kitchen.json.
[[nodiscard]] basics::Result<kitchen::Household> sound_household(const std::string& text,
                                                                 const kitchen::Knowledge& knowledge);

}  // namespace samebase::cli
