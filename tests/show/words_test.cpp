// Words and figures as answers show them.
#include "show/words.hpp"

#include <fmt/format.h>
#include <rapidcheck.h>
#include <rapidcheck/catch.h>

#include <catch2/catch.hpp>
#include <limits>
#include <sstream>

using namespace samebase;
using basics::Money;

namespace {

std::vector<std::string> lines_of(const std::string& text) {
    std::vector<std::string> lines;
    std::istringstream in(text);
    for (std::string line; std::getline(in, line);) lines.push_back(line);
    return lines;
}

std::vector<std::string> words_of(const std::string& text) {
    std::vector<std::string> words;
    std::istringstream in(text);
    for (std::string word; in >> word;) words.push_back(word);
    return words;
}

std::string any_word() {
    const auto letters = *rc::gen::resize(
        30, rc::gen::nonEmpty(rc::gen::container<std::vector<std::string>>(
                rc::gen::elementOf(std::vector<std::string>{"a", "b", "-", "7", "é", "½", "€", "…"}))));
    std::string word;
    for (const auto& letter : letters) word += letter;
    return word;
}

}  // namespace

TEST_CASE("wrapped lines are no longer than the width, and say the same words") {
    rc::prop("for any words, single spaces, any width and indent", [] {
        const auto count = *rc::gen::inRange(0, 40);
        const auto lead = *rc::gen::inRange<std::size_t>(0, 6);
        std::string text(lead, ' ');
        for (int i = 0; i < count; ++i) text += fmt::format("{}{}", i > 0 ? " " : "", any_word());
        const auto width = *rc::gen::inRange<std::size_t>(1, 100);
        const auto indent = *rc::gen::inRange<std::size_t>(0, 8);
        const std::string result = show::wrapped(text, indent, width);
        RC_ASSERT(words_of(result) == words_of(text));
        const auto lines = lines_of(result);
        for (std::size_t i = 0; i < lines.size(); ++i) {
            const auto words = words_of(lines[i]);
            const std::size_t start = i == 0 ? lead : indent;
            if (count > 0) RC_ASSERT(lines[i].back() != ' ');
            RC_ASSERT(lines[i].find_first_not_of(' ') == (words.empty() ? std::string::npos : start));
            RC_ASSERT(lines[i].find("  ", start) == std::string::npos);
            RC_ASSERT((show::length(lines[i]) <= width || words.size() <= 1));
            // A line is broken only where the next word would not have fitted.
            if (i + 1 < lines.size())
                RC_ASSERT(show::length(lines[i]) + 1 + show::length(words_of(lines[i + 1]).front()) > width);
        }
    });
}

TEST_CASE("wrapping keeps what fits, and breaks at spaces") {
    CHECK(show::wrapped("").empty());
    CHECK(show::wrapped("  short line", 4, 80) == "  short line");
    CHECK(show::wrapped("one two three", 2, 7) == "one two\n  three");
    CHECK(show::wrapped("one two three", 2, 8) == "one two\n  three");
    CHECK(show::wrapped("antidisestablishment is long", 0, 5) == "antidisestablishment\nis\nlong");
    CHECK(show::wrapped("café au lait", 0, 7) == "café au\nlait");
}

TEST_CASE("fitted text has exactly its width, in characters") {
    CHECK(show::fitted("onion", 8) == "onion   ");
    CHECK(show::fitted("onion", 5) == "onion");
    CHECK(show::fitted("onions", 5) == "onio…");
    CHECK(show::fitted("crème brûlée", 6) == "crème…");
    CHECK(show::fitted("", 3) == "   ");
    CHECK(show::fitted("onion", 1) == "…");
    rc::prop("for any words", [] {
        const auto text = fmt::format("{} {}", any_word(), any_word());
        const auto width = *rc::gen::inRange<std::size_t>(1, 70);
        RC_ASSERT(show::length(show::fitted(text, width)) == width);
    });
}

TEST_CASE("money has its currency's sign and digits") {
    CHECK(show::money(Money{385}, "AUD") == "$3.85");
    CHECK(show::money(Money{-40}, "AUD") == "-$0.40");
    CHECK(show::money(Money{0}, "GBP") == "£0.00");
    CHECK(show::money(Money{123456}, "EUR") == "€1234.56");
    CHECK(show::money(Money{350}, "JPY") == "¥350");
    CHECK(show::money(Money{385}, "CHF") == "3.85 CHF");
    CHECK(show::money(Money{-5}, "XTS") == "-0.05 XTS");
    CHECK(show::money(Money{std::numeric_limits<std::int64_t>::min()}, "AUD") == "-$92233720368547758.08");
    CHECK(show::signed_money(Money{385}, "AUD") == "+$3.85");
    CHECK(show::signed_money(Money{0}, "AUD") == "$0.00");
    CHECK(show::signed_money(Money{-40}, "AUD") == "-$0.40");
}

TEST_CASE("days near today are named by it") {
    const auto today = *basics::read_iso_day("2026-12-03");
    CHECK(show::day(today, today) == "today");
    CHECK(show::day(today + basics::days{1}, today) == "tomorrow");
    CHECK(show::day(today + basics::days{2}, today) == "Sat 5 Dec");
    CHECK(show::day(today - basics::days{1}, today) == "Wed 2 Dec");
}

TEST_CASE("serves are whole or half") {
    CHECK(show::serves(4000) == "4");
    CHECK(show::serves(4100) == "4");
    CHECK(show::serves(500) == "1/2");
    CHECK(show::serves(12'000) == "12");
    CHECK(show::serves(12'500) == "12 1/2");
}

TEST_CASE("money that decides nothing has no cents") {
    CHECK(show::about_money(Money{1383}, "AUD") == "$14");
    CHECK(show::about_money(Money{1350}, "AUD") == "$14");
    CHECK(show::about_money(Money{-1383}, "AUD") == "-$14");
    CHECK(show::about_money(Money{500}, "AUD") == "$5");
    CHECK(show::about_money(Money{450}, "AUD") == "$4.50");
    CHECK(show::about_money(Money{300}, "AUD") == "$3");
    CHECK(show::about_money(Money{350}, "JPY") == "¥350");
}

TEST_CASE("days of this week are told by their names, also as whose they are") {
    const auto today = *basics::read_iso_day("2026-12-03");
    CHECK(show::near_day(today, today) == "today");
    CHECK(show::near_day(today + basics::days{2}, today) == "Saturday");
    CHECK(show::near_day(today + basics::days{6}, today) == "Wednesday");
    CHECK(show::near_day(today + basics::days{7}, today) == "Thu 10 Dec");
    CHECK(show::near_day(today - basics::days{1}, today) == "Wed 2 Dec");
    CHECK(show::of_day(today + basics::days{1}, today) == "tomorrow's");
}

TEST_CASE("what is counted stands in the number that it needs") {
    CHECK(show::packs(1) == "1 pack");
    CHECK(show::counted(2, "bunch") == "2 bunches");
    CHECK(show::counted(3, "box") == "3 boxes");
    CHECK(show::counted(2, "loaf") == "2 loaves");
    CHECK(show::counted(2, "bag") == "2 bags");
    CHECK(show::counted(2, "pack of five") == "2 packs of five");
}

TEST_CASE("colour is set only where the manner has it, and takes no room in a line") {
    show::Manner manner;
    CHECK(show::in_colour("Eat today", show::Colour::red, manner) == "Eat today");
    manner.colour = true;
    const std::string red = show::in_colour("Eat today", show::Colour::red, manner);
    CHECK(red == "\x1b[31mEat today\x1b[0m");
    CHECK(show::length(red) == 9);
    CHECK(show::wrapped(red + " milk", 2, 14) == red + " milk");
}

TEST_CASE("lines are broken for the screen that there is, at least forty characters") {
    CHECK(show::screen_width() == show::usual_width);
    show::set_screen_width(60);
    CHECK(show::wrapped(std::string(30, 'a') + " " + std::string(30, 'b')).find('\n') == 30);
    show::set_screen_width(10);
    CHECK(show::screen_width() == 40);
    show::set_screen_width(show::usual_width);
}

TEST_CASE("lists are read as a sentence") {
    CHECK(show::listed({}).empty());
    CHECK(show::listed({"a"}) == "a");
    CHECK(show::listed({"a", "b"}) == "a and b");
    CHECK(show::listed({"a", "b", "c"}) == "a, b and c");
    CHECK(show::capitalised("onion") == "Onion");
    CHECK(show::capitalised("").empty());
}

TEST_CASE("a day in a sentence has no on where it has a word of its own") {
    const basics::Day today = *basics::read_iso_day("2026-11-25");
    CHECK(show::on_day(today, today) == "today");
    CHECK(show::on_day(today + basics::days{1}, today) == "tomorrow");
    CHECK(show::on_day(today + basics::days{2}, today) == "on Fri 27 Nov");
    CHECK(show::on_day(today - basics::days{1}, today) == "on Tue 24 Nov");
}
