// samebase recipe DISH: how to cook it, for us, that day.
#include "ask/recipe.hpp"

#include <nlohmann/json.hpp>

#include "commands.hpp"
#include "ledger.hpp"
#include "meaning.hpp"
#include "recipe.hpp"
#include "show/recipe.hpp"
#include "swaps.hpp"

namespace samebase::cli {

namespace {

struct Arguments {
    std::vector<std::string> dish;
    std::string day;
    std::optional<int> serves;
    int left = 0;
    bool lunch = false;
    std::vector<std::string> with;
};

/// The dish that is named, else the dinner planned for that day.
tl::expected<cookbook::DishId, Failure> dish_of(const Arguments& arguments, const kitchen::Kitchen& kitchen,
                                                basics::Day day) {
    if (!arguments.dish.empty()) return dish_meant(kitchen, joined(arguments.dish));
    const auto meal = arguments.lunch ? kitchen::Meal::lunch : kitchen::Meal::dinner;
    for (const kitchen::Plan* plan : {&kitchen.plan, &kitchen.done}) {
        if (const auto* planned = kitchen::planned(*plan, day, meal)) return planned->dish;
    }
    return failure(not_understood, {{"recipe", fmt::format("nothing is planned {}", show::on_day(day, day)),
                                     "the name of a dish", "'samebase dishes' lists what there is"}});
}

Outcome run(const Arguments& arguments, const Context& context) {
    const auto today = context.today();
    if (!today) return tl::make_unexpected(today.error());
    const auto kitchen = context.kitchen();
    if (!kitchen) return tl::make_unexpected(kitchen.error());
    ask::RecipeQuestion question;
    question.day = *today;
    if (!arguments.day.empty()) {
        const auto day = day_meant(arguments.day, *today, "--day");
        if (!day) return tl::make_unexpected(day.error());
        question.day = *day;
    }
    const auto dish = dish_of(arguments, *kitchen, question.day);
    if (!dish) return tl::make_unexpected(dish.error());
    question.dish = *dish;
    question.serves = arguments.serves;
    question.left = arguments.left;
    if (arguments.lunch) question.meal = kitchen::Meal::lunch;
    auto swaps =
        read_swaps(joined(arguments.with), *kitchen, *dish, std::int64_t{1000} * kitchen->cookbook()[*dish].serves);
    if (!swaps) return tl::make_unexpected(swaps.error());
    question.swaps = std::move(swaps->swaps);
    return show_recipe(context, *kitchen, *today, question);
}

}  // namespace

Outcome show_recipe(const Context& context, const kitchen::Kitchen& kitchen, basics::Day today,
                    const ask::RecipeQuestion& question) {
    const auto answer = ask::ask_recipe(kitchen, today, question);
    if (!answer) return failure(not_understood, answer.error());
    context.answer([&](const show::Manner& manner) { return show::text(*answer, kitchen, today, manner); },
                   [&] { return show::json(*answer, kitchen); });
    return answered;
}

void add_recipe(CLI::App& app, Chosen& chosen) {
    auto* command = app.add_subcommand("recipe", "how to cook it for those who eat: recipe meat loaf --serves 6");
    auto arguments = std::make_shared<Arguments>();
    command->add_option("dish", arguments->dish, "the dish (else what is planned)");
    command->add_option("--day", arguments->day, "the day it is for (else today)");
    command->add_option("--serves", arguments->serves, "serves to cook (else for those who are home)")
        ->check(CLI::Range(1, 1000));
    command->add_option("--left", arguments->left, "extra serves on purpose, for lunches")->check(CLI::Range(0, 100));
    command->add_flag("--lunch", arguments->lunch, "for lunch");
    add_with(*command, arguments->with);
    run_with(*command, chosen, arguments, run);
}

}  // namespace samebase::cli
