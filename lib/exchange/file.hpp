// Files as whole texts, and JSON documents read from them.
#pragma once

#include <cstddef>
#include <filesystem>
#include <nlohmann/json_fwd.hpp>
#include <string>
#include <vector>

#include "basics/problem.hpp"

namespace samebase::exchange {

/// The whole file. A Problem where it is absent, cannot be read, or is over 64 MiB, or is no plain file.
[[nodiscard]] basics::Result<std::string> read_file(const std::filesystem::path& path);

/// Writes beside the file and renames, so that it is the old or the new one and never between, whatever stops it. The
/// new one has the permissions of the old one. What a writer that was killed has left beside the file goes.
[[nodiscard]] basics::Result<void> write_file(const std::filesystem::path& path, const std::string& text);

/// Nobody else has the same folder locked, in this process or another, until this is gone. A lock goes with its
/// process, and leaves no file.
class FolderLock {
  public:
    FolderLock(FolderLock&& other) noexcept;
    FolderLock& operator=(FolderLock&&) = delete;
    ~FolderLock();

  private:
    friend basics::Result<FolderLock> lock_folder(const std::filesystem::path& folder);
    explicit FolderLock(int descriptor) : descriptor_(descriptor) {}
    int descriptor_;
};

/// Waits until the folder is free. For whoever reads a document, changes it and writes it anew.
[[nodiscard]] basics::Result<FolderLock> lock_folder(const std::filesystem::path& folder);

/// A JSON document nests at most this deep: what walks over one may recurse.
inline constexpr std::size_t most_levels = 100;

/// A JSON text (RFC 8259); a Problem that names line and column where it is not one, or its path where a key stands
/// twice in one object. A column counts characters. `name` stands for the file in messages.
[[nodiscard]] basics::Result<nlohmann::json> parse(const std::string& text, const std::string& name);

/// All *.json files of a folder in the order of their names; none where the folder is absent; a Problem where it cannot
/// be listed.
[[nodiscard]] basics::Result<std::vector<std::filesystem::path>> documents_in(const std::filesystem::path& folder);

}  // namespace samebase::exchange
