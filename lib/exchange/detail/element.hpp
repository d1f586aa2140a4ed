// One value of a JSON document with its place in it. Reading notes every problem with its path, what was found and what
// was expected, and goes on, so that one look finds them all; what could not be read has a harmless stand-in value.
#pragma once

#include <cstdint>
#include <initializer_list>
#include <limits>
#include <nlohmann/json.hpp>
#include <optional>
#include <string>
#include <string_view>
#include <vector>

#include "basics/problem.hpp"

namespace samebase::exchange::detail {

inline constexpr std::size_t most_problems = 1000;

class Element {
  public:
    /// The whole document. The caller guarantees that the value, the name and the problems outlive every element.
    Element(const nlohmann::json& document, const std::string& file, basics::Problems& problems)
        : document_(&document), value_(&document), file_(&file), problems_(&problems) {}

    [[nodiscard]] const nlohmann::json& value() const { return *value_; }
    /// "kitchen.json, /places/2/kind": the path is looked for when it is asked for, which costs a walk over the
    /// document.
    [[nodiscard]] std::string where() const;
    /// Whether no more problems are noted, so that looking for the nearest known word is of no use.
    [[nodiscard]] bool enough() const;
    /// Notes a problem. After `most_problems` no more are noted.
    void wrong(std::string found, std::string expected, std::optional<std::string> hint = std::nullopt) const;

    /// Whether it is an object; its keys that are not known are problems, with the nearest known key.
    bool object(std::initializer_list<std::string_view> keys) const;

    /// The value of a key; nothing where it is absent. Null is a value.
    [[nodiscard]] std::optional<Element> find(std::string_view key) const;
    [[nodiscard]] std::optional<Element> need(std::string_view key) const;  ///< absent: a problem

    /// The elements of an array; anything else is a problem.
    [[nodiscard]] std::vector<Element> list() const;
    [[nodiscard]] std::vector<Element> list(std::string_view key) const;  ///< absent: empty
    [[nodiscard]] std::vector<std::pair<std::string, Element>> members() const;

    [[nodiscard]] std::string text() const;
    [[nodiscard]] std::string text(std::string_view key) const;                          ///< needed
    [[nodiscard]] std::optional<std::string> optional_text(std::string_view key) const;  ///< null counts as absent
    [[nodiscard]] std::string id(std::string_view key) const;  ///< needed: lower-case words joined by hyphens
    [[nodiscard]] std::int64_t integer(std::int64_t least, std::int64_t most) const;
    [[nodiscard]] std::optional<std::int64_t> optional_integer(std::string_view key, std::int64_t least,
                                                               std::int64_t most) const;
    [[nodiscard]] double number(double least, double most) const;
    [[nodiscard]] std::optional<double> optional_number(std::string_view key, double least, double most) const;
    [[nodiscard]] bool boolean(std::string_view key, bool otherwise) const;
    [[nodiscard]] bool is_null() const { return value_->is_null(); }

    /// What stands there, shortened, for a message: 'frige', 3, an object.
    [[nodiscard]] std::string shown() const;

  private:
    Element(const nlohmann::json& value, const Element& parent) : Element(parent) { value_ = &value; }

    const nlohmann::json* document_;
    const nlohmann::json* value_;
    const std::string* file_;
    basics::Problems* problems_;
};

/// "did you mean 'fridge'?", where one of the known words is near.
[[nodiscard]] std::optional<std::string> did_you_mean(std::string_view word, const std::vector<std::string>& known);

}  // namespace samebase::exchange::detail
