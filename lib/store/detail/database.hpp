// Opening the file, and turning what SQLite throws into Problems.
#pragma once

#include <SQLiteCpp/SQLiteCpp.h>

#include <chrono>
#include <filesystem>
#include <memory>
#include <string>
#include <thread>
#include <type_traits>

#include "basics/problem.hpp"

namespace samebase::store::detail {

/// How long a command waits for others before it gives up, in all and between two looks.
inline constexpr std::chrono::seconds patience{60};
inline constexpr std::chrono::milliseconds pause{3};

/// The Problem that an error of SQLite is, for people.
[[nodiscard]] basics::Problems explained(const SQLite::Exception& error, const std::string& file);
/// Somebody else is writing: worth trying again.
[[nodiscard]] bool busy(const SQLite::Exception& error);

/// What `work` returns, a Result; tried again while others hold the file; whatever is thrown becomes a Problem.
template <class Work>
std::invoke_result_t<Work> guarded(const std::string& file, Work work) {
    const auto until = std::chrono::steady_clock::now() + patience;
    while (true) {
        try {
            return work();
        } catch (const SQLite::Exception& error) {
            if (!busy(error) || std::chrono::steady_clock::now() >= until)
                return tl::make_unexpected(explained(error, file));
        } catch (const std::exception& error) {
            return basics::problem(file, error.what(), "a file that can be read and written");
        }
        std::this_thread::sleep_for(pause);
    }
}

/// The file with the present layout. Its head is looked at first: what is no file of ours is left as it is.
[[nodiscard]] basics::Result<std::unique_ptr<SQLite::Database>> open_to_write(const std::filesystem::path& file);
/// The same for reading only; an empty ledger in memory where there is no file.
[[nodiscard]] basics::Result<std::unique_ptr<SQLite::Database>> open_to_read(const std::filesystem::path& file);

}  // namespace samebase::store::detail
