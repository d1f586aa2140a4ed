// What stands beside a thing that was bought: a price, a printed use-by.
#include <fmt/format.h>

#include <algorithm>
#include <array>
#include <sstream>

#include "amounts.hpp"

namespace samebase::cli {

namespace {

using Words = std::vector<std::string>;

/// Reads and takes out of the words; keeps the first failure.
class Taking {
  public:
    Taking(std::string text, std::string currency, basics::Day today)
        : text_(std::move(text)), currency_(std::move(currency)), today_(today) {
        std::istringstream stream(text_);
        for (std::string word; stream >> word;) words_.push_back(word);
    }

    tl::expected<Beside, Failure> take(std::string& rest) {
        use_by();
        price();
        if (failed_) return tl::make_unexpected(*failed_);
        rest = joined(words_);
        return beside_;
    }

  private:
    [[nodiscard]] bool is(std::size_t i, std::string_view word) const { return i < words_.size() && words_[i] == word; }
    void erase(std::size_t from, std::size_t to) {
        words_.erase(words_.begin() + static_cast<std::ptrdiff_t>(from),
                     words_.begin() + static_cast<std::ptrdiff_t>(to));
    }
    void fail(std::string found, std::string expected) {
        if (!failed_) failed_ = Failure{not_understood, {{text_, std::move(found), std::move(expected), std::nullopt}}};
    }

    /// "use by 12 dec", "use-by tue 12 dec 2026".
    void use_by() {
        for (std::size_t i = 0; i < words_.size(); ++i) {
            const std::size_t after = is(i, "use-by") || is(i, "expires") ? i + 1
                                      : is(i, "use") && is(i + 1, "by")   ? i + 2
                                                                          : 0;
            if (after == 0) continue;
            constexpr std::size_t most = 4;
            for (std::size_t to = std::min(words_.size(), after + most); to > after; --to) {
                const Words day(words_.begin() + static_cast<std::ptrdiff_t>(after),
                                words_.begin() + static_cast<std::ptrdiff_t>(to));
                beside_.use_by = basics::read_day(joined(day), today_);
                if (!beside_.use_by) continue;
                erase(i, to);
                return;
            }
            return fail("no day after 'use by'", "a day, as in 'use by 12 dec'");
        }
    }

    /// "@ 4.65", "@ 4.65 each", "@ 18/kg", "@ 18 per kg", "for 4.65", "$4.65", and 4.65 at the end.
    void price() {
        for (std::size_t i = 0; i < words_.size(); ++i) {
            std::string& word = words_[i];
            if (word.front() == '@') {
                if (word == "@") {
                    if (i + 1 >= words_.size()) return fail("no price after '@'", "a price, as in '@ 4.65'");
                    erase(i, i + 1);
                } else {
                    word.erase(0, 1);
                }
                return at(i, beside_.each);
            }
            if (is(i, "for") && i + 1 < words_.size() && money(words_[i + 1])) {
                beside_.total = money(words_[i + 1]);
                return erase(i, i + 2);
            }
            if (word.front() == '$') {
                if (i > 0 && is(i - 1, "for")) {
                    --i;
                    erase(i, i + 1);
                }
                return at(i, beside_.total);
            }
        }
        constexpr std::size_t cents = 3;  // ".65"
        if (words_.size() < 2) return;
        const std::string& last = words_.back();
        const bool to_the_cent = last.size() > cents && last[last.size() - cents] == '.';
        if (!to_the_cent || !money(last)) return;
        beside_.total = money(last);
        words_.pop_back();
    }

    [[nodiscard]] std::optional<basics::Money> money(const std::string& text) const {
        const auto read = read_money(text, currency_, "");
        return read ? std::optional(*read) : std::nullopt;
    }

    /// The price that stands at `i`, with its "/kg" or "each"; `plain`: what it is without them.
    void at(std::size_t i, std::optional<basics::Money>& plain) {
        const std::string word = words_[i];
        const auto slash = std::min(word.find('/'), word.size());
        const auto read = money(word.substr(0, slash));
        if (!read) return fail(fmt::format("'{}'", word), "a price such as 4.65, or 18/kg");
        std::size_t to = i + 1;
        std::string of = slash < word.size() ? word.substr(slash + 1) : "";
        if (of.empty() && (is(to, "per") || is(to, "a")) && to + 1 < words_.size()) {
            of = words_[to + 1];
            to += 2;
        } else if (of.empty() && (is(to, "each") || is(to, "ea"))) {
            of = "each";
            ++to;
        }
        erase(i, to);
        if (of.empty()) {
            plain = *read;
        } else if (of == "each" || of == "ea") {
            beside_.each = *read;
            beside_.said_each = true;
        } else {
            const bool figure = of.front() >= '0' && of.front() <= '9';
            const auto amount = measure::read_amount(figure ? of : "1 " + of, measure::MeasureSet::australian_metric);
            const auto* exact = amount ? std::get_if<measure::Amount>(&amount->amount) : nullptr;
            if (exact == nullptr || exact->value() <= 0)
                return fail(fmt::format("'{}'", word), "a price such as 18/kg");
            beside_.rate = *read;
            beside_.of = *exact;
        }
    }

    std::string text_;
    std::string currency_;
    basics::Day today_;
    Words words_;
    Beside beside_;
    std::optional<Failure> failed_;
};

}  // namespace

tl::expected<Beside, Failure> take_beside(std::string& text, const std::string& currency, basics::Day today) {
    return Taking(text, currency, today).take(text);
}

}  // namespace samebase::cli
