// What the tests of the store share: a folder of their own, the whole state of a kitchen as one comparable value, and a
// way to run commands on it.
#pragma once

#include <catch2/catch.hpp>
#include <cstdlib>
#include <filesystem>
#include <fstream>
#include <iterator>
#include <string>

#include "store/store.hpp"
#include "support/ledger_world.hpp"
#include "support/random_commands.hpp"

namespace samebase::tests {

/// A new folder, removed with everything in it at the end.
class Folder {
  public:
    explicit Folder(const std::string& name = "kitchen") {
        std::string pattern = (std::filesystem::temp_directory_path() / "samebase-XXXXXX").string();
        root_ = ::mkdtemp(pattern.data());
        path_ = root_ / name;
        std::filesystem::create_directories(path_);
    }
    Folder(const Folder&) = delete;
    Folder& operator=(const Folder&) = delete;
    ~Folder() {
        std::error_code error;
        std::filesystem::permissions(path_, std::filesystem::perms::owner_all, error);
        std::filesystem::remove_all(root_, error);
    }
    [[nodiscard]] const std::filesystem::path& path() const { return path_; }
    [[nodiscard]] std::filesystem::path file() const { return store::file_in(path_); }

  private:
    std::filesystem::path root_;
    std::filesystem::path path_;
};

inline std::string bytes_of(const std::filesystem::path& file) {
    std::ifstream stream(file, std::ios::binary);
    return {std::istreambuf_iterator<char>(stream), std::istreambuf_iterator<char>()};
}

inline void write_bytes(const std::filesystem::path& file, const std::string& bytes) {
    std::ofstream(file, std::ios::binary | std::ios::trunc) << bytes;
}

/// The value of a Result that has to hold.
template <class T>
T expect(basics::Result<T> result) {
    INFO((result ? "" : basics::to_text(result.error().front())));
    REQUIRE(result.has_value());
    return std::move(*result);
}

inline void expect(const basics::Result<void>& result) {
    INFO((result ? "" : basics::to_text(result.error().front())));
    REQUIRE(result.has_value());
}

template <class T>
std::string problem_of(const basics::Result<T>& result) {
    REQUIRE_FALSE(result.has_value());
    return basics::to_text(result.error().front());
}

inline store::Store open(const std::filesystem::path& file, store::Mode mode = store::Mode::write) {
    return expect(store::Store::open(file, mode));
}

inline store::State state_of(store::Store& store) {
    const LedgerWorld& world = ledger_world();
    return expect(store.read(*world.knowledge, world.household));
}

/// Runs one command against the store, again while others write in between; nothing where it is refused.
inline std::optional<store::Done> run(store::Store& store, basics::Day day, std::uint64_t seed) {
    const LedgerWorld& world = ledger_world();
    auto done = store::carry_out(store, world.knowledge, world.household, day,
                                 [&](const kitchen::At& at, const store::State&) { return random_command(at, seed); });
    if (!done) return std::nullopt;
    return std::move(*done);
}

}  // namespace samebase::tests
