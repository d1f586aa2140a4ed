// Files as whole texts, and JSON documents read from them.
#pragma once

#include <filesystem>
#include <nlohmann/json_fwd.hpp>
#include <string>

#include "basics/problem.hpp"

namespace samebase::exchange {

/// The whole file. A Problem where it is absent, cannot be read, or is over 256 MiB.
[[nodiscard]] basics::Result<std::string> read_file(const std::filesystem::path& path);

/// Writes beside the file and renames, so that it is the old or the new one and never between.
[[nodiscard]] basics::Result<void> write_file(const std::filesystem::path& path, const std::string& text);

/// A JSON text; a Problem that names line and column where it is not one. `name` stands for the file in messages.
[[nodiscard]] basics::Result<nlohmann::json> parse(const std::string& text, const std::string& name);

/// All *.json files of a folder in the order of their names; none where the folder is absent.
[[nodiscard]] std::vector<std::filesystem::path> documents_in(const std::filesystem::path& folder);

}  // namespace samebase::exchange
