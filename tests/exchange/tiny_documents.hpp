// A tiny but whole set of documents: two people, three places, six ingredients, three dishes. Every kind of key that a
// document may have stands in it at least once.
#pragma once

#include <filesystem>
#include <memory>
#include <nlohmann/json.hpp>
#include <string>
#include <string_view>
#include <vector>

#include "basics/problem.hpp"
#include "exchange/household.hpp"
#include "kitchen/kitchen.hpp"

namespace samebase::tests {

/// A folder of its own that goes when this goes.
class Folder {
  public:
    Folder();
    Folder(const Folder&) = delete;
    Folder& operator=(const Folder&) = delete;
    ~Folder();
    [[nodiscard]] const std::filesystem::path& path() const { return path_; }
    void write(const std::string& name, std::string_view text) const;

  private:
    std::filesystem::path path_;
};

/// One document: where it lies, and what is in it.
struct TinyDocument {
    std::string name;
    nlohmann::json value;
};

struct Read {
    std::shared_ptr<const kitchen::Knowledge> knowledge;
    kitchen::Household household;
    exchange::Stock stock;
};

/// The documents in the order in which they are read: families, ingredients, stand-ins, bases, dishes, kitchen.json,
/// stock.json.
class TinyDocuments {
  public:
    TinyDocuments();

    [[nodiscard]] nlohmann::json& operator[](std::string_view name);
    [[nodiscard]] std::vector<TinyDocument>& all() { return documents_; }

    /// Reads all of them: the catalogue and the cookbook from files in a folder, then the kitchen's two documents.
    /// Stops after the first of the three that has problems.
    [[nodiscard]] basics::Result<Read> read() const;
    /// As lines of text; none where everything reads.
    [[nodiscard]] std::vector<std::string> problems() const;

  private:
    std::vector<TinyDocument> documents_;
};

/// What is said once the value at that place of a tiny document is another, or is gone.
[[nodiscard]] std::vector<std::string> said(std::string_view document, const std::string& pointer,
                                            nlohmann::json value);
[[nodiscard]] std::vector<std::string> without(std::string_view document, const std::string& pointer);

[[nodiscard]] std::vector<std::string> lines(const basics::Problems& problems);

}  // namespace samebase::tests
