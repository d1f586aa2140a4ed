// Tables written as text, so that published figures stand in a test as they stand in their source: a line is a row, its
// cells parted by bars; a line that begins with "@ " names the source of the rows below it; "#" begins a remark.
#pragma once

#include <cstddef>
#include <cstdlib>
#include <string>
#include <string_view>
#include <vector>

namespace samebase::tests {

inline std::string trimmed(std::string_view text) {
    const auto first = text.find_first_not_of(" \t");
    if (first == std::string_view::npos) return {};
    return std::string(text.substr(first, text.find_last_not_of(" \t") - first + 1));
}

inline std::vector<std::string> split(std::string_view text, char at) {
    std::vector<std::string> parts;
    while (true) {
        const auto end = text.find(at);
        parts.push_back(trimmed(text.substr(0, end)));
        if (end == std::string_view::npos) return parts;
        text.remove_prefix(end + 1);
    }
}

/// The words of a cell; none where it is empty.
inline std::vector<std::string> words(std::string_view text) {
    std::vector<std::string> result;
    for (std::string& word : split(text, ' ')) {
        if (!word.empty()) result.push_back(std::move(word));
    }
    return result;
}

struct Row {
    std::vector<std::string> cells;
    std::string source;

    /// A cell; empty where the row is shorter.
    [[nodiscard]] const std::string& operator[](std::size_t cell) const {
        static const std::string none;
        return cell < cells.size() ? cells[cell] : none;
    }
    [[nodiscard]] double number(std::size_t cell) const { return std::strtod((*this)[cell].c_str(), nullptr); }
};

inline std::vector<Row> read_table(std::string_view text) {
    std::vector<Row> rows;
    std::string source;
    for (const std::string& line : split(text, '\n')) {
        if (line.empty() || line.front() == '#') continue;
        if (line.rfind("@ ", 0) == 0) {
            source = line.substr(2);
        } else {
            rows.push_back({split(line, '|'), source});
        }
    }
    return rows;
}

}  // namespace samebase::tests
