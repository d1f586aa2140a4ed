#include "exchange/file.hpp"

#include <fcntl.h>
#include <fmt/format.h>
#include <unistd.h>

#include <algorithm>
#include <cerrno>
#include <fstream>
#include <string_view>
#include <system_error>

namespace samebase::exchange {

namespace fs = std::filesystem;

namespace {

constexpr std::uintmax_t most_bytes = 256ULL * 1024 * 1024;

/// A file that is being written; closed at the end of its scope.
class Descriptor {
  public:
    explicit Descriptor(const fs::path& path)
        : number_(::open(path.c_str(), O_WRONLY | O_CREAT | O_TRUNC | O_CLOEXEC, 0666)) {}
    Descriptor(const Descriptor&) = delete;
    Descriptor& operator=(const Descriptor&) = delete;
    ~Descriptor() {
        if (number_ >= 0) ::close(number_);
    }

    /// Writes all of it and waits until it is on the disk; the reason where that failed.
    [[nodiscard]] std::error_code write(std::string_view text) const {
        while (number_ >= 0 && !text.empty()) {
            const ssize_t written = ::write(number_, text.data(), text.size());
            if (written < 0 && errno == EINTR) continue;
            if (written < 0) break;
            text.remove_prefix(static_cast<std::size_t>(written));
        }
        const bool whole = number_ >= 0 && text.empty() && ::fsync(number_) == 0;
        return whole ? std::error_code{} : std::error_code(errno, std::generic_category());
    }

  private:
    int number_;
};

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
    if (const std::error_code failed = Descriptor(beside).write(text)) {
        const std::string reason = failed.message();
        fs::remove(beside, error);
        return basics::problem(path.string(), reason, "a folder that can be written to, with room left");
    }
    // Who may read the old one may read the new one, and nobody else.
    const fs::perms old = fs::status(path, error).permissions();
    if (!error && old != fs::perms::unknown) fs::permissions(beside, old, error);
    fs::rename(beside, path, error);
    if (!error) return {};
    const std::string reason = error.message();
    fs::remove(beside, error);
    return basics::problem(path.string(), reason, "a file that can be replaced");
}

basics::Result<std::vector<fs::path>> documents_in(const fs::path& folder) {
    std::vector<fs::path> found;
    std::error_code error;
    if (fs::status(folder, error).type() == fs::file_type::not_found) return found;
    for (fs::directory_iterator at(folder, error), end; !error && at != end; at.increment(error)) {
        if (at->path().extension() == ".json") found.push_back(at->path());
    }
    if (error) return basics::problem(folder.string(), error.message(), "a folder that can be read");
    std::sort(found.begin(), found.end());
    return found;
}

}  // namespace samebase::exchange
