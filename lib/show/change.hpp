// What a command did, or would do, to the kitchen: a line for the cook, and every entry as JSON.
#pragma once

#include <nlohmann/json_fwd.hpp>
#include <string>
#include <vector>

#include "kitchen/changes.hpp"
#include "show/words.hpp"

namespace samebase::show {

struct Changed {
    const kitchen::Kitchen& before;
    const kitchen::Change& change;
    std::vector<stock::Entry> entries;  ///< as they were written: with their numbers
    bool dry_run = false;               ///< nothing was written
};

/// One sentence; for a count a table of what was and is; then the notes, a line each.
[[nodiscard]] std::string text(const Changed& changed);
[[nodiscard]] nlohmann::ordered_json json(const Changed& changed);

/// What a count found, a line each: "beef mince: 14 packs (7.07 kg) -> 13 packs (6.58 kg)". Things that agree are left
/// out.
[[nodiscard]] std::string differences(const kitchen::Kitchen& kitchen, const kitchen::Change& change);

/// The days of a text, written "2026-12-04", as a cook says them: "Fri 4 Dec".
[[nodiscard]] std::string with_days(const std::string& text, basics::Day today);

}  // namespace samebase::show
