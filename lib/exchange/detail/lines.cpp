#include "exchange/detail/lines.hpp"

#include <algorithm>
#include <nlohmann/json.hpp>
#include <string>

namespace samebase::exchange::detail {

namespace {

/// Steps over a JSON text; each function begins at a value, or at white space before it.
class Scanner {
  public:
    explicit Scanner(std::string_view text) : text_(text) {}

    [[nodiscard]] std::size_t position() const { return at_; }

    void space() {
        while (at_ < text_.size() && std::string_view(" \t\r\n,:").find(text_[at_]) != std::string_view::npos) ++at_;
    }

    /// A string as it is written, with its quotes.
    std::string_view quoted() {
        const std::size_t first = at_++;
        while (at_ < text_.size() && text_[at_] != '"') at_ += text_[at_] == '\\' ? 2 : 1;
        at_ = std::min(at_ + 1, text_.size());
        return text_.substr(first, at_ - first);
    }

    /// Over a whole value, whatever is in it.
    void skip() {
        std::size_t depth = 0;
        do {
            space();
            if (at_ >= text_.size()) return;
            const char c = text_[at_];
            if (c == '"') {
                quoted();
            } else if (c == '{' || c == '[') {
                ++depth, ++at_;
            } else if (c == '}' || c == ']') {
                --depth, ++at_;
            } else {
                while (at_ < text_.size() && std::string_view(" \t\r\n,:]}").find(text_[at_]) == std::string_view::npos)
                    ++at_;
            }
        } while (depth > 0);
    }

    /// To the value of a key, or of an index; false, and where it was, without one.
    bool enter(std::string_view step) {
        space();
        const std::size_t back = at_;
        const bool object = at_ < text_.size() && text_[at_] == '{';
        if (!object && (at_ >= text_.size() || text_[at_] != '[')) return false;
        ++at_;
        for (std::size_t index = 0;; ++index) {
            space();
            if (at_ >= text_.size() || text_[at_] == '}' || text_[at_] == ']') break;
            std::string name = std::to_string(index);
            if (object) {
                const auto key = nlohmann::json::parse(quoted(), nullptr, false);
                name = key.is_string() ? key.get<std::string>() : "";
                space();
            }
            if (name == step) return true;
            skip();
        }
        at_ = back;
        return false;
    }

  private:
    std::string_view text_;
    std::size_t at_ = 0;
};

}  // namespace

std::size_t line_of(std::string_view text, std::string_view path) {
    Scanner scanner(text);
    scanner.space();
    while (path.size() > 1) {
        path.remove_prefix(1);
        const std::string_view step = path.substr(0, path.find('/'));
        path.remove_prefix(step.size());
        if (!scanner.enter(step)) break;
    }
    const std::string_view before = text.substr(0, scanner.position());
    return static_cast<std::size_t>(std::count(before.begin(), before.end(), '\n')) + 1;
}

}  // namespace samebase::exchange::detail
