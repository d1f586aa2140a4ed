// samebase prices: the price book.
#include "show/prices.hpp"

#include <nlohmann/json.hpp>

#include "ask/prices.hpp"
#include "commands.hpp"
#include "looking_back.hpp"
#include "meaning.hpp"

namespace samebase::cli {

namespace {

struct Arguments {
    std::vector<std::string> words;
    show::Manner manner;
};

/// One thing; none said: all.
tl::expected<std::vector<catalogue::IngredientId>, Failure> things_meant(const kitchen::Kitchen& kitchen,
                                                                         const std::string& words) {
    std::vector<catalogue::IngredientId> things;
    if (words.empty()) return things;
    const auto thing = Things(kitchen, std::nullopt, Doing::buying).meant(words);
    if (!thing) return tl::make_unexpected(thing.error());
    things.push_back(thing->ingredient);
    return things;
}

Outcome run(const Arguments& arguments, const Context& context) {
    const auto today = context.today();
    if (!today) return tl::make_unexpected(today.error());
    const auto back = look_back(context);
    if (!back) return tl::make_unexpected(back.error());
    const auto only = things_meant(back->kitchen, joined(arguments.words));
    if (!only) return tl::make_unexpected(only.error());
    const auto things = ask::ask_prices(back->kitchen, back->past, *only);
    context.answer([&](const show::Manner& manner) { return show::text(things, back->kitchen, *today, manner); },
                   [&] { return show::json(things, back->kitchen); }, arguments.manner);
    return answered;
}

}  // namespace

void add_prices(CLI::App& app, Chosen& chosen) {
    auto* command = app.add_subcommand("prices", "what things cost, as you have paid for them: prices, prices milk");
    auto arguments = std::make_shared<Arguments>();
    command->add_option("thing", arguments->words, "one thing, in full");
    command->add_flag("--all", arguments->manner.all, "every row");
    run_with(*command, chosen, arguments, run);
}

}  // namespace samebase::cli
