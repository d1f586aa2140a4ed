// What reaches a terminal, and what does not.
#include "show/terminal.hpp"

#include <catch2/catch.hpp>

using samebase::show::Escapes;
using samebase::show::fit_for_terminal;
using samebase::show::is_plain_line;

TEST_CASE("control characters of a name do not reach the terminal, and its letters do") {
    CHECK(fit_for_terminal("beef \x1B[2Jmince\a") == "beef \xEF\xBF\xBD[2Jmince\xEF\xBF\xBD");
    CHECK(fit_for_terminal("back\b\r\x7F") == "back\xEF\xBF\xBD\xEF\xBF\xBD\xEF\xBF\xBD");
    CHECK(fit_for_terminal(std::string_view("a\0b", 3)) ==
          "a\xEF\xBF\xBD"
          "b");
    // C1: the 8-bit form of ESC [.
    CHECK(fit_for_terminal("\xC2\x9B"
                           "31m") ==
          "\xEF\xBF\xBD"
          "31m");
    CHECK(fit_for_terminal("cr\xC3\xA8me fra\xC3\xAE"
                           "che, \xE9\xA3\xAF \xF0\x9F\x8D\x9E\n") ==
          "cr\xC3\xA8me fra\xC3\xAE"
          "che, \xE9\xA3\xAF \xF0\x9F\x8D\x9E\n");
    CHECK(fit_for_terminal("a\tb\n") == "a b\n");
}

TEST_CASE("a bidirectional control turns no line around") {
    CHECK(fit_for_terminal("free of \xE2\x80\xAEneulg") == "free of \xEF\xBF\xBDneulg");
    CHECK(fit_for_terminal("\xE2\x81\xA6x\xE2\x81\xA9") == "\xEF\xBF\xBDx\xEF\xBF\xBD");
}

TEST_CASE("bytes that are no UTF-8 are replaced one by one") {
    CHECK(fit_for_terminal("a\xFF\xC3") == "a\xEF\xBF\xBD\xEF\xBF\xBD");
    // Overlong: ESC in three bytes.
    CHECK(fit_for_terminal("\xE0\x80\x9B").find('\x1B') == std::string::npos);
}

TEST_CASE("our own colours stay on a terminal, and nothing else of an escape does") {
    CHECK(fit_for_terminal("\x1B[1;31mlate\x1B[0m", Escapes::colours) == "\x1B[1;31mlate\x1B[0m");
    CHECK(fit_for_terminal("\x1B[31mlate", Escapes::none) == "\xEF\xBF\xBD[31mlate");
    CHECK(fit_for_terminal("\x1B[2J", Escapes::colours) == "\xEF\xBF\xBD[2J");
    CHECK(fit_for_terminal("\x1B]0;title\a", Escapes::colours) == "\xEF\xBF\xBD]0;title\xEF\xBF\xBD");
    CHECK(fit_for_terminal("\x1B[8mhidden", Escapes::colours) == "\xEF\xBF\xBD[8mhidden");
    CHECK(fit_for_terminal("\x1B[1", Escapes::colours) == "\xEF\xBF\xBD[1");
}

TEST_CASE("a plain line is UTF-8 without overlong forms, surrogates and controls") {
    CHECK(is_plain_line("cr\xC3\xA8me"));
    CHECK(is_plain_line(""));
    CHECK_FALSE(is_plain_line("\xE0\x80\xAF"));      // "/" in three bytes
    CHECK_FALSE(is_plain_line("\xF0\x80\x80\xAF"));  // in four
    CHECK_FALSE(is_plain_line("\xC0\xAF"));
    CHECK_FALSE(is_plain_line("\xED\xA0\x80"));      // half of a surrogate pair
    CHECK_FALSE(is_plain_line("\xF4\x90\x80\x80"));  // beyond U+10FFFF
    CHECK_FALSE(is_plain_line("two\nlines"));
    CHECK_FALSE(is_plain_line("\x7F"));
    CHECK_FALSE(is_plain_line("cut\xC3"));
}
