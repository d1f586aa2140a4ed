// samebase else WHAT: what else can I make from this?
#include "ask/else.hpp"

#include <nlohmann/json.hpp>

#include "commands.hpp"
#include "meaning.hpp"
#include "show/else.hpp"

namespace samebase::cli {

namespace {

struct Arguments {
    std::vector<std::string> what;
    std::string day;
    std::optional<int> serves;
    int left = 0;
    std::string why_not;
    show::Manner manner;
};

tl::expected<ask::ElseQuestion, Failure> question(const Arguments& arguments, const kitchen::Kitchen& kitchen,
                                                  basics::Day today) {
    ask::ElseQuestion question{
        .day = today, .using_ = {}, .lot = {}, .instead_of = {}, .serves = arguments.serves, .left = arguments.left};
    if (!arguments.day.empty()) {
        const auto day = day_meant(arguments.day, today, "--day");
        if (!day) return tl::make_unexpected(day.error());
        question.day = *day;
    }
    if (arguments.what.empty()) return question;
    const auto what = meant(kitchen, joined(arguments.what));
    if (!what) return tl::make_unexpected(what.error());
    if (const auto* ingredient = std::get_if<catalogue::IngredientId>(&*what)) question.using_ = *ingredient;
    if (const auto* family = std::get_if<catalogue::FamilyId>(&*what)) question.using_ = *family;
    if (const auto* dish = std::get_if<cookbook::DishId>(&*what)) question.instead_of = *dish;
    if (const auto* lot = std::get_if<stock::LotNumber>(&*what)) question.lot = *lot;
    return question;
}

Outcome run(const Arguments& arguments, const Context& context) {
    const auto today = context.today();
    if (!today) return tl::make_unexpected(today.error());
    const auto kitchen = context.kitchen();
    if (!kitchen) return tl::make_unexpected(kitchen.error());
    const auto asked = question(arguments, *kitchen, *today);
    if (!asked) return tl::make_unexpected(asked.error());
    if (!arguments.why_not.empty()) {
        const auto dish = dish_meant(*kitchen, arguments.why_not);
        if (!dish) return tl::make_unexpected(dish.error());
        const auto reason = ask::why_not(*kitchen, *today, *asked, *dish);
        if (!reason) return failure(not_understood, reason.error());
        context.answer([&](const show::Manner&) { return show::text(*reason, *kitchen, *today); },
                       [&] { return show::json(*reason, *kitchen); });
        return answered;
    }
    const auto answer = ask::ask_else(*kitchen, *today, *asked);
    if (!answer) return failure(not_understood, answer.error());
    context.answer([&](const show::Manner& manner) { return show::text(*answer, *kitchen, *today, manner); },
                   [&] { return show::json(*answer, *kitchen); }, arguments.manner);
    return answered;
}

}  // namespace

void add_else(CLI::App& app, Chosen& chosen) {
    auto* command =
        app.add_subcommand("else", "what else can I make from this mince? (an ingredient, a family, a dish or a lot)");
    auto arguments = std::make_shared<Arguments>();
    command->add_option("what", arguments->what, "what to use; nothing: the main ingredient of what is planned");
    command->add_option("--day", arguments->day, "the day of the dinner (else today)");
    command->add_option("--serves", arguments->serves, "serves to cook (else as many as are home)")
        ->check(CLI::Range(1, 1000));
    command->add_option("--left", arguments->left, "extra serves on purpose, for lunches")->check(CLI::Range(0, 100));
    command->add_option("--why-not", arguments->why_not, "what rules a dish out, or holds it down")->type_name("DISH");
    command->add_flag("--why", arguments->manner.why, "every line of every sum");
    command->add_flag("--all", arguments->manner.all, "every dish");
    command->callback([arguments, &chosen] {
        chosen.run = [arguments](const Context& context) { return run(*arguments, context); };
    });
}

}  // namespace samebase::cli
