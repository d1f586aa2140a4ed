// Another dish on a day, or two days exchanged: what it does to the rest of the week, before it is done.
#pragma once

#include <optional>
#include <string>
#include <vector>

#include "basics/problem.hpp"
#include "flow/findings.hpp"
#include "flow/thaw.hpp"
#include "kitchen/changes.hpp"

namespace samebase::ask {

struct SwapQuestion {
    /// What is to be planned; with `other`, only its day and meal count. Where that dish is planned there already, its
    /// swaps add to those planned; without any it is planned as it is written.
    kitchen::Planned row;
    std::optional<basics::Day> other;  ///< the day that it changes places with
    bool nothing = false;              ///< the meal becomes open; only its day and meal count
};

struct SwapAnswer {
    kitchen::Change change;  ///< of the plan
    flow::Totals before;     ///< up to the horizon, or the later day of the swap
    flow::Totals after;
    std::vector<flow::Finding> gone;     ///< found before, and no more
    std::vector<flow::Finding> fresh;    ///< found only now
    std::vector<flow::ThawMove> thaw;    ///< to be taken out now, and was not before
    std::vector<flow::ThawMove> unthaw;  ///< to be taken out before, and no more
    std::vector<std::string> cautions;
};

/// Problems: a day before today, a day or dish that cannot be planned, nothing planned on either day, and what someone
/// at the table must not have, and a dinner that has been had. Costs two exact balances.
[[nodiscard]] basics::Result<SwapAnswer> ask_swap(const kitchen::At& at, const SwapQuestion& question);

}  // namespace samebase::ask
