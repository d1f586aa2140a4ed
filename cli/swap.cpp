// samebase swap: another dish on a day, or two days exchanged, after showing what that does to the rest of the week.
#include "ask/swap.hpp"

#include <fmt/format.h>

#include "flow/cooking.hpp"
#include "ledger.hpp"
#include "meaning.hpp"
#include "show/balance.hpp"
#include "swaps.hpp"

namespace samebase::cli {

namespace {

struct Arguments {
    std::string day;
    std::vector<std::string> what;
    int serves = 0;
    int left = 0;
    std::vector<std::string> with;
    bool lunch = false;
    bool ready = false;
    How how;
};

/// "leftovers" and "out" are nights without cooking; anything else is a dish.
tl::expected<cookbook::DishId, Failure> night_or_dish(const kitchen::Kitchen& kitchen, const std::string& words) {
    const auto night = words == "leftovers"                      ? kitchen.cookbook().dish("leftovers-night")
                       : words == "out" || words == "eating out" ? kitchen.cookbook().dish("eating-out")
                                                                 : std::nullopt;
    return night ? tl::expected<cookbook::DishId, Failure>(*night) : dish_meant(kitchen, words);
}

/// Notes are added to what the cook has to know.
tl::expected<ask::SwapQuestion, Failure> question(const Arguments& arguments, const kitchen::At& at,
                                                  std::vector<std::string>& notes) {
    ask::SwapQuestion question;
    const auto day = day_meant(arguments.day, at.day, "swap");
    if (!day) return tl::make_unexpected(day.error());
    question.row.day = *day;
    question.row.meal = arguments.lunch ? kitchen::Meal::lunch : kitchen::Meal::dinner;
    const std::string words = joined(arguments.what);
    if (const auto other = basics::read_day(words, at.day)) {
        question.other = *other;
        return question;
    }
    question.nothing = words == "nothing";
    if (question.nothing) return question;
    const auto dish = night_or_dish(at.kitchen, words);
    if (!dish) return tl::make_unexpected(dish.error());
    question.row.dish = *dish;
    question.row.ready_meal = arguments.ready;
    if (arguments.serves > 0) question.row.serves = arguments.serves;
    question.row.left = arguments.left;
    const auto cooked = flow::cook(at.kitchen, question.row).serves_thousandths;
    const auto written = std::int64_t{1000} * at.kitchen.cookbook()[*dish].serves;
    auto swaps = read_swaps(joined(arguments.with), at.kitchen, *dish, cooked > 0 ? cooked : written);
    if (!swaps) return tl::make_unexpected(swaps.error());
    question.row.swaps = std::move(swaps->swaps);
    notes = std::move(swaps->notes);
    return question;
}

Outcome run(const Arguments& arguments, const Context& context) {
    const auto compute = [&](const kitchen::At& at, const store::State&) -> tl::expected<kitchen::Change, Failure> {
        std::vector<std::string> notes;
        const auto asked = question(arguments, at, notes);
        if (!asked) return tl::make_unexpected(asked.error());
        auto answer = ask::ask_swap(at, *asked);
        if (!answer) return failure(not_understood, answer.error());
        answer->change.notes = show::lines(*answer, at.kitchen, at.day);
        answer->change.notes.insert(answer->change.notes.begin(), notes.begin(), notes.end());
        return std::move(answer->change);
    };
    const auto agree = [](const kitchen::Kitchen&, const kitchen::Change& change) -> std::optional<std::string> {
        std::string text = show::capitalised(change.line);
        text.push_back('\n');
        for (const std::string& note : change.notes) text += fmt::format("{}\n", show::wrapped("  " + note, 4));
        return text + "Do it?";
    };
    return carry_out(context, arguments.how, compute, agree);
}

}  // namespace

void add_swap(CLI::App& app, Chosen& chosen) {
    auto* command = app.add_subcommand("swap", "another dish on a day, or two days exchanged: swap fri meat loaf");
    auto arguments = std::make_shared<Arguments>();
    command->add_option("day", arguments->day, "the day of the meal")->required();
    command->add_option("what", arguments->what, "the dish, the other day, or: leftovers, out, nothing")->required();
    command->add_option("--serves", arguments->serves, "serves to cook (else as many as are home)")
        ->check(CLI::Range(1, 1000));
    command->add_option("--left", arguments->left, "extra serves on purpose, for lunches")->check(CLI::Range(0, 100));
    add_with(*command, arguments->with);
    command->add_flag("--lunch", arguments->lunch, "the lunch of that day (else the dinner)");
    command->add_flag("--ready", arguments->ready, "a ready meal of the dish, from the freezer");
    add_dry_run(*command, arguments->how);
    add_yes(*command, arguments->how);
    run_with(*command, chosen, arguments, run);
}

}  // namespace samebase::cli
