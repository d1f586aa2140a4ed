#include "exchange/detail/element.hpp"

#include <fmt/format.h>

#include <algorithm>
#include <utility>

#include "catalogue/names.hpp"
#include "exchange/detail/path.hpp"

namespace samebase::exchange::detail {

namespace {

bool is_id(std::string_view text) {
    const auto allowed = [](char c) { return (c >= 'a' && c <= 'z') || (c >= '0' && c <= '9') || c == '-'; };
    return !text.empty() && text.front() != '-' && text.back() != '-' && std::all_of(text.begin(), text.end(), allowed);
}

constexpr std::size_t longest_shown = 60;

/// Shortened between two characters, with what is not printable written as JSON writes it, so that a message is one
/// line of UTF-8 whatever the document holds.
std::string printable(std::string_view text) {
    std::size_t length = std::min(text.size(), longest_shown);
    while (length > 0 && length < text.size() && (static_cast<unsigned char>(text[length]) & 0xC0U) == 0x80U) --length;
    const nlohmann::json start = std::string(text.substr(0, length));
    const std::string quoted = start.dump(-1, ' ', false, nlohmann::json::error_handler_t::replace);
    return quoted.substr(1, quoted.size() - 2) + (length < text.size() ? "..." : "");
}

std::string shown_text(std::string_view text) {
    return fmt::format("'{}'", printable(text));
}

}  // namespace

std::string Element::where() const {
    const std::string path = pointer_to(*document_, value_);
    return fmt::format("{}, {}", *file_, path.empty() ? "/" : path);
}

bool Element::enough() const {
    return problems_->size() >= most_problems;
}

void Element::wrong(std::string found, std::string expected, std::optional<std::string> hint) const {
    if (enough()) return;
    problems_->push_back({where(), std::move(found), std::move(expected), std::move(hint)});
}

std::string Element::shown() const {
    if (value_->is_object()) return "an object";
    if (value_->is_array()) return "a list";
    if (value_->is_string()) return shown_text(value_->get_ref<const std::string&>());
    return value_->dump();
}

bool Element::object(std::initializer_list<std::string_view> keys) const {
    if (!value_->is_object()) {
        wrong(shown(), "an object");
        return false;
    }
    for (const auto& [key, child] : value_->items()) {
        if (enough()) break;
        if (std::find(keys.begin(), keys.end(), key) != keys.end()) continue;
        std::vector<std::string> known(keys.begin(), keys.end());
        wrong(fmt::format("unknown key {}", shown_text(key)), fmt::format("one of: {}", fmt::join(known, ", ")),
              did_you_mean(key, known));
    }
    return true;
}

std::optional<Element> Element::find(std::string_view key) const {
    if (!value_->is_object()) return std::nullopt;
    const auto found = value_->find(key);
    if (found == value_->end()) return std::nullopt;
    return Element{*found, *this};
}

std::optional<Element> Element::need(std::string_view key) const {
    auto found = find(key);
    if (!found) wrong(fmt::format("no '{}'", key), fmt::format("the key '{}'", key));
    return found;
}

std::vector<Element> Element::list() const {
    std::vector<Element> result;
    if (!value_->is_array()) {
        wrong(shown(), "a list");
        return result;
    }
    result.reserve(value_->size());
    for (std::size_t i = 0; i < value_->size(); ++i) result.push_back(Element{(*value_)[i], *this});
    return result;
}

std::vector<Element> Element::list(std::string_view key) const {
    const auto found = find(key);
    return found ? found->list() : std::vector<Element>{};
}

std::vector<std::pair<std::string, Element>> Element::members() const {
    std::vector<std::pair<std::string, Element>> result;
    if (!value_->is_object()) {
        wrong(shown(), "an object");
        return result;
    }
    for (const auto& [key, child] : value_->items()) result.emplace_back(key, Element{child, *this});
    return result;
}

std::string Element::text() const {
    if (value_->is_string()) return value_->get<std::string>();
    wrong(shown(), "text");
    return {};
}

std::string Element::text(std::string_view key) const {
    const auto found = need(key);
    if (!found) return {};
    std::string result = found->text();
    if (found->value().is_string() && result.empty()) found->wrong("empty text", "some text");
    return result;
}

std::optional<std::string> Element::optional_text(std::string_view key) const {
    const auto found = find(key);
    if (!found || found->is_null()) return std::nullopt;
    return found->text();
}

std::string Element::id(std::string_view key) const {
    const auto found = need(key);
    if (!found) return {};
    std::string result = found->text();
    if (found->value().is_string() && !is_id(result)) {
        found->wrong(found->shown(), "an identifier: lower case letters, digits and hyphens");
    }
    return result;
}

std::int64_t Element::integer(std::int64_t least, std::int64_t most) const {
    if (value_->is_number_integer()) {
        const bool large =
            value_->is_number_unsigned() &&
            value_->get<std::uint64_t>() > static_cast<std::uint64_t>(std::numeric_limits<std::int64_t>::max());
        if (!large) {
            const auto result = value_->get<std::int64_t>();
            if (result >= least && result <= most) return result;
        }
    }
    wrong(shown(), fmt::format("a whole number from {} to {}", least, most));
    return std::clamp<std::int64_t>(1, least, most);
}

std::optional<std::int64_t> Element::optional_integer(std::string_view key, std::int64_t least,
                                                      std::int64_t most) const {
    const auto found = find(key);
    if (!found || found->is_null()) return std::nullopt;
    return found->integer(least, most);
}

double Element::number(double least, double most) const {
    if (value_->is_number()) {
        const auto result = value_->get<double>();
        if (result >= least && result <= most) return result;
    }
    wrong(shown(), fmt::format("a number from {} to {}", least, most));
    return least;
}

std::optional<double> Element::optional_number(std::string_view key, double least, double most) const {
    const auto found = find(key);
    if (!found || found->is_null()) return std::nullopt;
    return found->number(least, most);
}

bool Element::boolean(std::string_view key, bool otherwise) const {
    const auto found = find(key);
    if (!found || found->is_null()) return otherwise;
    if (found->value().is_boolean()) return found->value().get<bool>();
    found->wrong(found->shown(), "true or false");
    return otherwise;
}

std::optional<std::string> did_you_mean(std::string_view word, const std::vector<std::string>& known) {
    if (word.size() > longest_shown) return std::nullopt;
    const std::vector<std::string_view> words(known.begin(), known.end());
    const auto nearest = catalogue::nearest(word, words);
    if (!nearest) return std::nullopt;
    return fmt::format("did you mean '{}'?", *nearest);
}

}  // namespace samebase::exchange::detail
