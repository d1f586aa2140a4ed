#include "exchange/file.hpp"

#include <fmt/format.h>
#include <unistd.h>

#include <algorithm>
#include <fstream>
#include <nlohmann/json.hpp>
#include <sstream>
#include <system_error>
#include <utility>

namespace samebase::exchange {

namespace fs = std::filesystem;

namespace {

constexpr std::uintmax_t most_bytes = 256ULL * 1024 * 1024;

/// "line 3, column 14" of a byte, counted from 1.
std::string line_and_column(const std::string& text, std::size_t byte) {
    const auto end = text.begin() + static_cast<std::ptrdiff_t>(std::min(byte > 0 ? byte - 1 : 0, text.size()));
    const auto line = std::count(text.begin(), end, '\n') + 1;
    const auto last = text.rfind('\n', static_cast<std::size_t>(end - text.begin()) - (end == text.begin() ? 0 : 1));
    const auto start = last == std::string::npos || end == text.begin() ? 0 : last + 1;
    return fmt::format("line {}, column {}", line, static_cast<std::size_t>(end - text.begin()) - start + 1);
}

}  // namespace

basics::Result<std::string> read_file(const fs::path& path) {
    std::error_code error;
    const auto size = fs::file_size(path, error);
    if (error) return basics::problem(path.string(), error.message(), "a file that can be read");
    if (size > most_bytes) return basics::problem(path.string(), "over 256 MiB", "a document of at most 256 MiB");
    std::ifstream stream(path, std::ios::binary);
    std::string text(size, '\0');
    stream.read(text.data(), static_cast<std::streamsize>(size));
    if (!stream) return basics::problem(path.string(), "it could not be read to its end", "a file that can be read");
    return text;
}

basics::Result<void> write_file(const fs::path& path, const std::string& text) {
    const fs::path beside = path.string() + fmt::format(".new-{}", ::getpid());
    std::error_code error;
    {
        std::ofstream stream(beside, std::ios::binary | std::ios::trunc);
        stream.write(text.data(), static_cast<std::streamsize>(text.size()));
        stream.flush();
        if (!stream) {
            fs::remove(beside, error);
            return basics::problem(path.string(), "it could not be written", "a folder that can be written to, with room left");
        }
    }
    fs::rename(beside, path, error);
    if (!error) return {};
    const std::string reason = error.message();
    fs::remove(beside, error);
    return basics::problem(path.string(), reason, "a file that can be replaced");
}

basics::Result<nlohmann::json> parse(const std::string& text, const std::string& name) {
    try {
        return nlohmann::json::parse(text);
    } catch (const nlohmann::json::parse_error& error) {
        const bool ended = error.byte > text.size();
        return basics::problem(fmt::format("{}, {}", name, line_and_column(text, error.byte)),
                               ended ? "the document ends too early" : "this is not JSON", "a JSON document (RFC 8259)");
    } catch (const nlohmann::json::exception&) {
        return basics::problem(name, "a number that is out of range", "a JSON document (RFC 8259)");
    }
}

std::vector<fs::path> documents_in(const fs::path& folder) {
    std::vector<fs::path> found;
    std::error_code error;
    for (const auto& entry : fs::directory_iterator(folder, error)) {
        if (entry.path().extension() == ".json") found.push_back(entry.path());
    }
    std::sort(found.begin(), found.end());
    return found;
}

}  // namespace samebase::exchange
