#include "exchange/file.hpp"

#include <fcntl.h>
#include <fmt/format.h>
#include <sys/file.h>
#include <unistd.h>

#include <algorithm>
#include <cerrno>
#include <charconv>
#include <csignal>
#include <fstream>
#include <string_view>
#include <system_error>
#include <utility>

namespace samebase::exchange {

namespace fs = std::filesystem;

namespace {

constexpr std::uintmax_t most_bytes = 64ULL * 1024 * 1024;

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

/// What a name is followed by while it is being written.
constexpr std::string_view being_written = ".new-";

/// Removes "FILE.new-PID" where no process has that number any more.
void clear_abandoned(const fs::path& path) {
    const std::string head = path.filename().string() + std::string(being_written);
    const fs::path folder = path.has_parent_path() ? path.parent_path() : fs::path(".");
    std::error_code error;
    std::vector<fs::path> abandoned;
    for (fs::directory_iterator at(folder, error), end; !error && at != end; at.increment(error)) {
        const std::string name = at->path().filename().string();
        if (!name.starts_with(head)) continue;
        pid_t process = 0;
        const char* last = name.data() + name.size();
        const auto [stop, failed] = std::from_chars(name.data() + head.size(), last, process);
        const bool gone = process > 0 && ::kill(process, 0) != 0 && errno == ESRCH;
        if (failed == std::errc{} && stop == last && gone) abandoned.push_back(at->path());
    }
    for (const fs::path& one : abandoned) fs::remove(one, error);
}

/// A name that was changed is on the disk only once its folder is.
void sync_folder(const fs::path& path) {
    const fs::path folder = path.has_parent_path() ? path.parent_path() : fs::path(".");
    const int number = ::open(folder.c_str(), O_RDONLY | O_DIRECTORY | O_CLOEXEC);
    if (number < 0) return;
    ::fsync(number);
    ::close(number);
}

}  // namespace

basics::Result<std::string> read_file(const fs::path& path) {
    std::error_code error;
    if (fs::exists(path, error) && !fs::is_directory(path, error) && !fs::is_regular_file(path, error))
        return basics::problem(path.string(), "no plain file", "a file that can be read");
    const auto size = fs::file_size(path, error);
    if (error) return basics::problem(path.string(), error.message(), "a file that can be read");
    if (size > most_bytes)
        return basics::problem(path.string(), fmt::format("{} MiB", size / 1024 / 1024),
                               "a document of at most 64 MiB");
    std::ifstream stream(path, std::ios::binary);
    std::string text(size, '\0');
    stream.read(text.data(), static_cast<std::streamsize>(size));
    if (!stream) return basics::problem(path.string(), "it could not be read to its end", "a file that can be read");
    return text;
}

basics::Result<void> write_file(const fs::path& path, const std::string& text) {
    const fs::path beside = path.string() + fmt::format("{}{}", being_written, ::getpid());
    std::error_code error;
    clear_abandoned(path);
    if (const std::error_code failed = Descriptor(beside).write(text)) {
        const std::string reason = failed.message();
        fs::remove(beside, error);
        return basics::problem(path.string(), reason, "a folder that can be written to, with room left");
    }
    // Who may read the old one may read the new one, and nobody else.
    const fs::perms old = fs::status(path, error).permissions();
    if (!error && old != fs::perms::unknown) fs::permissions(beside, old, error);
    fs::rename(beside, path, error);
    if (!error) {
        sync_folder(path);
        return {};
    }
    const std::string reason = error.message();
    fs::remove(beside, error);
    return basics::problem(path.string(), reason, "a file that can be replaced");
}

FolderLock::FolderLock(FolderLock&& other) noexcept : descriptor_(std::exchange(other.descriptor_, -1)) {}

FolderLock::~FolderLock() {
    if (descriptor_ >= 0) ::close(descriptor_);
}

basics::Result<FolderLock> lock_folder(const fs::path& folder) {
    const auto failed = [&] {
        return basics::problem(folder.string(), std::error_code(errno, std::generic_category()).message(),
                               "a folder that can be read and locked");
    };
    const int descriptor = ::open(folder.c_str(), O_RDONLY | O_DIRECTORY | O_CLOEXEC);
    if (descriptor < 0) return failed();
    FolderLock lock(descriptor);
    while (::flock(descriptor, LOCK_EX) != 0) {
        if (errno != EINTR) return failed();
    }
    return lock;
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
