// samebase lookback: what was had, spent and tossed; and when something was had last.
#include "ask/lookback.hpp"

#include <fmt/format.h>

#include <nlohmann/json.hpp>

#include "commands.hpp"
#include "looking_back.hpp"
#include "meaning.hpp"
#include "show/lookback.hpp"

namespace samebase::cli {

namespace {

struct Arguments {
    std::vector<std::string> words;
    show::Manner manner;
};

/// From the first thing that is remembered.
basics::Day beginning(const LookedBack& back, basics::Day today) {
    basics::Day first = today;
    if (!back.kitchen.history.empty()) first = std::min(first, back.kitchen.history.front().day);
    if (!back.past.bought.empty()) first = std::min(first, back.past.bought.front().day);
    return first;
}

/// The last twelve months, all, or a span up to today: "november" is the last one.
std::optional<basics::Span> span_said(const std::string& text, const LookedBack& back, basics::Day today) {
    constexpr basics::days a_year{365};
    const basics::Day first = beginning(back, today);
    if (text.empty()) return basics::Span{std::max(first, today - a_year), today};
    if (text == "all") return basics::Span{first, today};
    auto span = basics::read_span(text, today);
    if (span && span->first > today) span = basics::read_span(text, today - a_year);
    if (!span || span->first > today) return std::nullopt;
    span->last = std::min(span->last, today);
    return span;
}

/// What has these words for its whole name, without a slip; nothing where that is none, or several.
template <class Things>
std::optional<std::uint32_t> named(const Things& things, const std::string& words) {
    catalogue::NameIndex index;
    std::uint32_t key = 0;
    for (const auto& one : things) index.add(key++, 0, one.name);
    index.finish();
    const auto match = index.find(words);
    const bool clear = match.whole && match.found.size() == 1 && match.found.front().distance == 0;
    return clear ? std::optional(match.found.front().key) : std::nullopt;
}

/// Every ingredient that has the word in its name.
std::vector<catalogue::IngredientId> with_word(const kitchen::Kitchen& kitchen, const std::string& word) {
    std::vector<catalogue::IngredientId> things;
    std::uint32_t key = 0;
    for (const auto& thing : kitchen.catalogue().ingredients()) {
        const catalogue::IngredientId id{key++};
        if ((" " + thing.name + " ").find(" " + word + " ") != std::string::npos) things.push_back(id);
    }
    return things;
}

/// A dish or a base by its name, a family, an ingredient, or all that have the word in their name.
tl::expected<ask::WhenOf, Failure> when_of(const kitchen::Kitchen& kitchen, const std::string& words) {
    if (const auto dish = named(kitchen.cookbook().dishes(), words)) return ask::WhenOf{cookbook::DishId{*dish}};
    if (const auto family = named(kitchen.catalogue().families(), words))
        return ask::WhenOf{catalogue::FamilyId{*family}};
    if (const auto base = named(kitchen.cookbook().bases(), words)) return ask::WhenOf{cookbook::BaseId{*base}};
    if (const auto thing = named(kitchen.catalogue().ingredients(), words))
        return ask::WhenOf{ask::AnyOf{words, {catalogue::IngredientId{*thing}}}};
    if (auto things = with_word(kitchen, words); !things.empty())
        return ask::WhenOf{ask::AnyOf{words, std::move(things)}};
    const auto one = meant(kitchen, words);
    if (!one) return tl::make_unexpected(one.error());
    if (const auto* family = std::get_if<catalogue::FamilyId>(&*one)) return ask::WhenOf{*family};
    if (const auto* dish = std::get_if<cookbook::DishId>(&*one)) return ask::WhenOf{*dish};
    const auto* lot = std::get_if<stock::LotNumber>(&*one);
    const auto id = lot != nullptr ? kitchen.lot(*lot)->ingredient : std::get<catalogue::IngredientId>(*one);
    return ask::WhenOf{ask::AnyOf{kitchen.catalogue()[id].name, {id}}};
}

Outcome run(const Arguments& arguments, const Context& context) {
    const auto today = context.today();
    if (!today) return tl::make_unexpected(today.error());
    const auto back = look_back(context);
    if (!back) return tl::make_unexpected(back.error());
    const kitchen::Kitchen& kitchen = back->kitchen;
    const std::string words = joined(arguments.words);
    if (const auto span = span_said(words, *back, *today)) {
        const auto answer = ask::ask_lookback(kitchen, back->past, *today, *span);
        context.answer([&](const show::Manner& manner) { return show::text(answer, kitchen, *today, manner); },
                       [&] { return show::json(answer, kitchen); }, arguments.manner);
        return answered;
    }
    const auto of = when_of(kitchen, words);
    if (!of) return tl::make_unexpected(of.error());
    const auto answer = ask::ask_when(kitchen, *today, *of);
    context.answer([&](const show::Manner& manner) { return show::text(answer, kitchen, *today, manner); },
                   [&] { return show::json(answer, kitchen); }, arguments.manner);
    return answered;
}

}  // namespace

void add_lookback(CLI::App& app, Chosen& chosen) {
    auto* command = app.add_subcommand(
        "lookback", "what was had, spent and tossed: lookback, lookback 2026; when we last had it: lookback lamb");
    auto arguments = std::make_shared<Arguments>();
    command->add_option("words", arguments->words, "a month, a year, or a dish, a base, an ingredient or a family");
    command->add_flag("--all", arguments->manner.all, "every row");
    run_with(*command, chosen, arguments, run);
}

}  // namespace samebase::cli
