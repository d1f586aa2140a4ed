// What happened, newest first.
#pragma once

#include <cstdint>
#include <nlohmann/json_fwd.hpp>
#include <optional>
#include <string>
#include <vector>

#include "basics/day.hpp"

namespace samebase::show {

struct LogRow {
    std::int64_t number = 0;
    basics::Day day;
    std::string command;
    std::string line;
    std::optional<std::int64_t> undoes;
    std::optional<std::int64_t> undone_by;
};

[[nodiscard]] std::string text(const std::vector<LogRow>& rows);
[[nodiscard]] nlohmann::ordered_json json(const std::vector<LogRow>& rows);

}  // namespace samebase::show
