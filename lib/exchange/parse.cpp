#include <fmt/format.h>

#include <algorithm>
#include <nlohmann/json.hpp>
#include <string_view>
#include <utility>

#include "exchange/detail/path.hpp"
#include "exchange/file.hpp"

namespace samebase::exchange {

namespace {

using nlohmann::json;

constexpr std::size_t most_twice = 100;
constexpr std::string_view like_json = "a JSON document (RFC 8259)";

/// "line 3, column 14" of a byte, both counted from 1, the column in characters of UTF-8.
std::string line_and_column(std::string_view text, std::size_t byte) {
    const std::string_view before = text.substr(0, std::min(byte > 0 ? byte - 1 : 0, text.size()));
    const auto line = std::count(before.begin(), before.end(), '\n') + 1;
    const auto last = before.rfind('\n');
    const std::string_view in_line = last == std::string_view::npos ? before : before.substr(last + 1);
    const auto column = std::count_if(in_line.begin(), in_line.end(), [](char c) {
        return (static_cast<unsigned char>(c) & 0xC0U) != 0x80U;  // the first byte of a character
    });
    return fmt::format("line {}, column {}", line, column + 1);
}

/// Builds the document from what the parser sees, and notes what the parser lets pass: too many levels, a key twice.
class Builder final : public nlohmann::json_sax<json> {
  public:
    Builder(std::string_view text, const std::string& name) : text_(text), name_(name) {}

    [[nodiscard]] basics::Result<json> take(bool parsed) {
        if (parsed && problems_.empty()) return std::move(root_);
        return tl::make_unexpected(std::move(problems_));
    }

    bool null() override { return add(json()) != nullptr; }
    bool boolean(bool value) override { return add(json(value)) != nullptr; }
    bool number_integer(number_integer_t value) override { return add(json(value)) != nullptr; }
    bool number_unsigned(number_unsigned_t value) override { return add(json(value)) != nullptr; }
    bool number_float(number_float_t value, const string_t& /*written*/) override {
        return add(json(value)) != nullptr;
    }
    bool string(string_t& value) override { return add(json(std::move(value))) != nullptr; }
    bool binary(binary_t& value) override { return add(json(std::move(value))) != nullptr; }
    bool start_object(std::size_t /*elements*/) override { return open(json::object()); }
    bool start_array(std::size_t /*elements*/) override { return open(json::array()); }
    bool end_object() override { return close(); }
    bool end_array() override { return close(); }
    bool key(string_t& key) override {
        const auto [at, fresh] = levels_.back()->emplace(std::move(key), json());
        slot_ = &*at;
        if (!fresh && problems_.size() < most_twice) {
            problems_.push_back({fmt::format("{}, {}", name_, detail::pointer_to(root_, slot_)),
                                 "this key twice in one object", "keys that occur once", std::nullopt});
        }
        return true;
    }
    bool parse_error(std::size_t position, const std::string& /*token*/, const json::exception& error) override {
        const bool range = dynamic_cast<const json::out_of_range*>(&error) != nullptr;
        const bool ended = position > text_.size();
        problems_.assign(1, {fmt::format("{}, {}", name_, line_and_column(text_, position)),
                             range   ? "the number that ends here is out of range"
                             : ended ? "the document ends too early"
                                     : "this is not JSON",
                             std::string(like_json), std::nullopt});
        return false;
    }

  private:
    json* add(json value) {
        if (levels_.empty()) {
            root_ = std::move(value);
            return &root_;
        }
        if (levels_.back()->is_array()) {
            levels_.back()->push_back(std::move(value));
            return &levels_.back()->back();
        }
        *slot_ = std::move(value);
        return slot_;
    }
    bool open(json value) {
        if (levels_.size() >= most_levels) {
            problems_.assign(1, {name_, fmt::format("more than {} levels of lists and objects", most_levels),
                                 "a document that nests a few levels deep", std::nullopt});
            return false;
        }
        levels_.push_back(add(std::move(value)));
        return true;
    }
    bool close() {
        levels_.pop_back();
        return true;
    }

    std::string_view text_;
    const std::string& name_;
    json root_;
    std::vector<json*> levels_;  ///< the lists and objects that are open
    json* slot_ = nullptr;       ///< where the value of the last key goes
    basics::Problems problems_;
};

}  // namespace

basics::Result<json> parse(const std::string& text, const std::string& name) {
    if (const auto nul = text.find('\0'); nul != std::string::npos) {  // the parser would take it for the end
        return basics::problem(fmt::format("{}, {}", name, line_and_column(text, nul + 1)), "a NUL byte",
                               std::string(like_json));
    }
    Builder builder(text, name);
    const bool parsed = json::sax_parse(text, &builder);
    return builder.take(parsed);
}

}  // namespace samebase::exchange
