#include "amounts.hpp"

#include <fmt/format.h>

#include <algorithm>
#include <array>
#include <sstream>

#include "show/words.hpp"

namespace samebase::cli {

namespace {

using measure::Amount;
using measure::Dimension;
using measure::Written;
using Words = std::vector<std::string>;

/// The words, with the sign between two figures as a word of its own: "4x500g" is "4 x 500g".
Words words_of(const std::string& text) {
    Words words;
    std::istringstream stream(text);
    for (std::string word; stream >> word;) {
        const auto sign = word.find_first_of("xX*");
        const auto digit = [&](std::size_t i) { return i < word.size() && word[i] >= '0' && word[i] <= '9'; };
        if (sign != std::string::npos && sign > 0 && digit(sign - 1) && digit(sign + 1)) {
            words.push_back(word.substr(0, sign));
            words.emplace_back("x");
            word.erase(0, sign + 1);
        }
        words.push_back(word);
    }
    return words;
}

std::string part(const Words& words, std::size_t from, std::size_t to) {
    return joined({words.begin() + static_cast<std::ptrdiff_t>(from), words.begin() + static_cast<std::ptrdiff_t>(to)});
}

/// The longest run of words from `from` on, before `end`, that is an amount; how many they are, 0 where there is none.
std::size_t longest_amount(const Words& words, std::size_t from, std::size_t end, measure::MeasureSet set,
                           Written& into) {
    constexpr std::size_t most = 8;
    for (std::size_t to = std::min(end, from + most); to > from; --to) {
        if (auto read = measure::read_amount(part(words, from, to), set)) {
            into = std::move(*read);
            return to - from;
        }
    }
    return 0;
}

bool is_weight(const Written& written) {
    const auto* amount = std::get_if<Amount>(&written.amount);
    return amount != nullptr && amount->dimension() != Dimension::pieces;
}

bool is_count(const std::optional<Written>& written) {
    return written && std::holds_alternative<Amount>(written->amount) && !is_weight(*written);
}

/// After the amount: "of 500 g", "x 500 g", "weighing 7.3 kg", "(7.3 kg)", or after a weight "in 14 packs".
std::size_t read_sizes(Words& words, std::size_t at, measure::MeasureSet set, Said& said) {
    if (at + 1 >= words.size()) return at;
    Written written;
    if (words[at].front() == '(') {
        std::size_t close = at;
        while (close < words.size() && words[close].back() != ')') ++close;
        if (close == words.size()) return at;
        std::string inside = part(words, at, close + 1);
        const auto read = measure::read_amount(inside.substr(1, inside.size() - 2), set);
        if (!read || !is_weight(*read) || !is_count(said.amount)) return at;
        said.total = std::get<Amount>(read->amount);
        return close + 1;
    }
    const std::string& word = words[at];
    const std::size_t count = longest_amount(words, at + 1, words.size(), set, written);
    if (count == 0) return at;
    if (is_count(said.amount) && is_weight(written)) {
        if (word == "of" || word == "x" || word == "×") said.each = std::get<Amount>(written.amount);
        if (word == "weighing") said.total = std::get<Amount>(written.amount);
        return said.each || said.total ? at + 1 + count : at;
    }
    if (word == "in" && said.amount && is_weight(*said.amount) && is_container(written.counted)) {
        said.total = std::get<Amount>(said.amount->amount);
        said.amount = std::move(written);
        return at + 1 + count;
    }
    return at;
}

/// "all the bananas", "the rest of the yoghurt": how many words that is, 0 where it is not so.
std::size_t words_of_all(const Words& words) {
    const auto is = [&](std::size_t i, std::string_view word) { return i < words.size() && words[i] == word; };
    std::size_t at = is(0, "the") ? 1 : 0;
    if (!is(at, "all") && !is(at, "rest") && !is(at, "last") && !(at == 1 && is(at, "lot"))) return 0;
    ++at;
    if (is(at, "of")) ++at;
    if (is(at, "the") || is(at, "my")) ++at;
    return at < words.size() ? at : 0;
}

/// "2 kg bag of potatoes", "a 500 g tray of mince": one pack of that weight. How many words that is, 0 where it is not.
std::size_t read_one_of_size(const Words& words, measure::MeasureSet set, Said& said) {
    const std::size_t from = !words.empty() && (words[0] == "a" || words[0] == "an" || words[0] == "one") ? 1 : 0;
    for (std::size_t to = from + 1; to <= from + 2 && to + 1 < words.size(); ++to) {
        const auto weight = measure::read_amount(part(words, from, to), set);
        const auto container = measure::read_amount("1 " + words[to], set);
        if (!weight || !is_weight(*weight) || !container || !is_container(container->counted)) continue;
        said.amount = *container;
        said.each = std::get<Amount>(weight->amount);
        return to + 1;
    }
    return 0;
}

tl::unexpected<Failure> not_read(const std::string& text, basics::Problems problems) {
    for (auto& problem : problems) problem.where = text;
    return failure(not_understood, std::move(problems));
}

/// The amount that the words begin with, and what stands with it; how many words that is.
tl::expected<std::size_t, Failure> read_lead(Words& words, const std::string& text, measure::MeasureSet set,
                                             Said& said) {
    const auto is = [&](std::size_t i, std::string_view word) { return i < words.size() && words[i] == word; };
    if (const auto all = words_of_all(words); all > 0) {
        said.all = true;
        return all;
    }
    if (is(0, "lot") && words.size() == 2) return 0;
    if (const auto one = read_one_of_size(words, set, said); one > 0) return one;
    Written written;
    const bool times = is(1, "x") || is(1, "X") || is(1, "×");
    if (const auto count = longest_amount(words, 0, times ? 1 : words.size(), set, written); count > 0) {
        said.amount = std::move(written);
        return read_sizes(words, count, set, said);
    }
    if (is(0, "no") && words.size() > 1) {
        said.amount = Written{Amount{Dimension::pieces, 0}, {}, {}};
        return 1;
    }
    if (is(0, "a") || is(0, "an")) {
        said.amount = Written{Amount{Dimension::pieces, 1000}, {}, {}};
        return 1;
    }
    if (!words.empty() && words[0].find_first_of("-0123456789") == 0) {
        if (auto read = measure::read_amount(words[0], set); !read) return not_read(text, std::move(read.error()));
    }
    return 0;
}

}  // namespace

bool is_container(const std::string& word) {
    constexpr std::array<std::string_view, 18> containers{"bag",    "block",  "bottle", "box",  "bunch", "can",
                                                          "carton", "head",   "jar",    "loaf", "net",   "pack",
                                                          "pot",    "punnet", "tin",    "tray", "tub",   "tube"};
    return std::find(containers.begin(), containers.end(), word) != containers.end();
}

tl::expected<Said, Failure> read_said(const std::string& text, measure::MeasureSet set) {
    Words words = words_of(text);
    Said said;
    said.text = text;
    const auto lead = read_lead(words, text, set, said);
    if (!lead) return tl::make_unexpected(lead.error());
    std::size_t at = *lead;
    // "12 rolls": what they are counted in is what they are.
    Written number;
    if (is_count(said.amount) && at == words.size() && at > 1 &&
        longest_amount(words, 0, at - 1, set, number) == at - 1) {
        said.amount = std::move(number);
        --at;
    }
    if (said.amount && said.amount->upper) {
        return failure(not_understood, {{text, "is a range", "one amount", std::nullopt}});
    }
    if (at > 0 && at + 1 < words.size() && words[at] == "of") ++at;
    said.name = part(words, std::min(at, words.size()), words.size());
    if (said.name.empty())
        return failure(not_understood,
                       {{text, "does not say what of", "an amount and a name: 2 kg beef mince", std::nullopt}});
    return said;
}

tl::expected<basics::Money, Failure> read_money(const std::string& text, const std::string& currency,
                                                const std::string& where) {
    const std::size_t digits = show::money({}, currency).find('.') == std::string::npos ? 0 : 2;
    const auto wrong = [&] {
        const std::string example = digits == 0 ? "1450" : "14.50";
        return failure(not_understood,
                       {{where, fmt::format("'{}'", text), fmt::format("money such as {}", example), std::nullopt}});
    };
    std::string figures = text;
    if (!figures.empty() && figures.front() == '$') figures.erase(0, 1);
    const auto point = std::min(figures.find('.'), figures.size());
    const std::size_t after = point == figures.size() ? 0 : figures.size() - point - 1;
    if (after > digits || (point < figures.size() && after == 0)) return wrong();
    if (point < figures.size()) figures.erase(point, 1);
    figures.append(digits - after, '0');
    if (figures.size() <= digits || figures.size() > 11) return wrong();
    std::int64_t minor = 0;
    for (const char c : figures) {
        if (c < '0' || c > '9') return wrong();
        minor = minor * 10 + (c - '0');
    }
    return basics::Money{minor};
}

tl::expected<std::int64_t, Failure> read_serves(const std::string& text, const std::string& where) {
    const auto read = measure::read_amount(text, measure::MeasureSet::australian_metric);
    constexpr std::int64_t most = 1'000'000;
    if (read && !read->upper && is_count(*read) && (read->counted.empty() || read->counted == "serve")) {
        const std::int64_t value = std::get<Amount>(read->amount).value();
        if (value > 0 && value <= most) return value;
    }
    return failure(not_understood,
                   {{where, fmt::format("'{}'", text), "a number of serves above 0, at most 1000", std::nullopt}});
}

}  // namespace samebase::cli
