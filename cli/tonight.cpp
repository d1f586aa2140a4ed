// samebase tonight: what is for dinner, what do I take out, what must be used?
#include "ask/tonight.hpp"

#include <nlohmann/json.hpp>

#include "ask/thaw.hpp"
#include "commands.hpp"
#include "ledger.hpp"
#include "recipe.hpp"
#include "show/tonight.hpp"
#include "thaw.hpp"

namespace samebase::cli {

namespace {

struct Arguments {
    show::Manner manner;
    bool recipe = false;
    bool done = false;
};

Outcome recipe(const Context& context, const kitchen::Kitchen& kitchen, basics::Day today) {
    const auto* planned = kitchen::planned(kitchen.plan, today, kitchen::Meal::dinner);
    if (planned == nullptr) {
        return failure(not_understood, {{"tonight --recipe", "nothing is planned for tonight", "a planned dinner",
                                         "'samebase recipe DISH' shows any other"}});
    }
    ask::RecipeQuestion question;
    question.dish = planned->dish;
    question.day = today;
    return show_recipe(context, kitchen, today, question);
}

Outcome run(const Arguments& arguments, const Context& context) {
    const auto today = context.today();
    if (!today) return tl::make_unexpected(today.error());
    const auto kitchen = context.kitchen();
    if (!kitchen) return tl::make_unexpected(kitchen.error());
    if (arguments.recipe) return recipe(context, *kitchen, *today);
    const auto answer = ask::ask_tonight(*kitchen, *today);
    const auto thaw = ask::ask_thaw(*kitchen, *today, {*today, flow::horizon(*kitchen, *today)});
    if (!thaw) return failure(not_understood, thaw.error());
    const bool enters = arguments.done && !answer.take_out.empty();
    if (!(enters && context.wants_json())) {
        context.answer([&](const show::Manner& how) { return show::text(answer, *thaw, *kitchen, how); },
                       [&] { return show::json(answer, *kitchen); }, arguments.manner);
    }
    return enters ? take_out(context, {}, "") : Outcome(answered);
}

}  // namespace

void add_tonight(CLI::App& app, Chosen& chosen) {
    auto* command = app.add_subcommand(
        "tonight", "what is for dinner, what do I take out, what must be used? (also with no command)");
    auto arguments = std::make_shared<Arguments>();
    command->add_flag("--all", arguments->manner.all, "every row");
    command->add_flag("--done", arguments->done, "what is to be taken out now is taken out: enter it");
    command->add_flag("--recipe", arguments->recipe, "how to cook tonight's dinner");
    run_with(*command, chosen, arguments, run);
}

}  // namespace samebase::cli
