// samebase tonight: what is for dinner, what do I take out, what must be used?
#include "ask/tonight.hpp"

#include <nlohmann/json.hpp>

#include "ask/thaw.hpp"
#include "commands.hpp"
#include "show/tonight.hpp"

namespace samebase::cli {

namespace {

Outcome run(const show::Manner& manner, const Context& context) {
    const auto today = context.today();
    if (!today) return tl::make_unexpected(today.error());
    const auto kitchen = context.kitchen();
    if (!kitchen) return tl::make_unexpected(kitchen.error());
    const auto answer = ask::ask_tonight(*kitchen, *today);
    const auto thaw = ask::ask_thaw(*kitchen, *today, {*today, flow::horizon(*kitchen, *today)});
    if (!thaw) return failure(not_understood, thaw.error());
    context.answer([&](const show::Manner& how) { return show::text(answer, *thaw, *kitchen, how); },
                   [&] { return show::json(answer, *kitchen); }, manner);
    return answered;
}

}  // namespace

void add_tonight(CLI::App& app, Chosen& chosen) {
    auto* command = app.add_subcommand(
        "tonight", "what is for dinner, what do I take out, what must be used? (also with no command)");
    auto manner = std::make_shared<show::Manner>();
    command->add_flag("--all", manner->all, "every row");
    const auto choose = [manner, &chosen] {
        chosen.run = [manner](const Context& context) { return run(*manner, context); };
    };
    command->callback(choose);
}

}  // namespace samebase::cli
