// What a cook types: things with amounts, and the names of dishes and places. The first byte chooses what is done with
// the things.
#include "amounts.hpp"
#include "fuzz/readers.hpp"
#include "show/terminal.hpp"

namespace samebase::fuzz {

namespace {

/// A problem quotes what was typed, whatever bytes that was; they are made fit for a terminal when they are printed.
template <class T>
void look(const tl::expected<T, cli::Failure>& read) {
    if (read) return;
    basics::Problems shown = read.error().problems;
    for (basics::Problem& problem : shown) {
        for (std::string* text : {&problem.where, &problem.found, &problem.expected})
            *text = show::fit_for_terminal(*text);
        if (problem.hint) problem.hint = show::fit_for_terminal(*problem.hint);
    }
    must_be_whole(shown);
}

}  // namespace

void read_words(const std::string& text) {
    if (text.empty()) return;
    constexpr unsigned doings = 7;
    const auto doing = static_cast<cli::Doing>(static_cast<unsigned char>(text.front()) % doings);
    const std::string words = text.substr(1);
    const kitchen::At at{demo(), today(), 1000};
    cli::Answers answers;
    const auto things = cli::read_things(at, {}, words, std::nullopt, doing, answers);
    look(things);
    if (things) {
        for (const kitchen::Item& item : cli::items_of(*things, std::nullopt)) {
            must(!item.quantity.amount || item.quantity.amount->value() >= 0, "no amount is below 0");
        }
    }
    look(cli::meant(demo(), words));
    look(cli::dish_meant(demo(), words));
    look(cli::place_meant(demo(), words));
    look(cli::span_meant(words, today(), "words"));
    look(cli::read_money(words, "AUD", "words"));
    look(cli::read_serves(words, "words"));
    look(cli::remark({words}, "words"));
}

}  // namespace samebase::fuzz
