// samebase list: what to buy on the next trip, and that it was bought.
#include "ask/list.hpp"

#include <fmt/format.h>

#include <nlohmann/json.hpp>

#include "ask/buy_ahead.hpp"
#include "commands.hpp"
#include "list.hpp"
#include "meaning.hpp"
#include "show/buy_ahead.hpp"
#include "show/list.hpp"

namespace samebase::cli {

namespace {

struct Arguments {
    std::vector<std::string> words;
    bool got = false;
    bool year = false;
    std::vector<std::string> but_not;
    std::vector<std::string> prices;
    std::string paid;
    show::Manner manner;
    How how;
};

/// The words after the first.
std::string rest(const std::vector<std::string>& words) {
    return words.size() < 2 ? "" : joined({words.begin() + 1, words.end()});
}

Outcome by_hand(const Arguments& arguments, const Context& context, bool adds) {
    const std::string words = rest(arguments.words);
    return carry_out(context, arguments.how, [&](const kitchen::At& at, const store::State&) {
        return adds ? put_on_list(at, words) : take_off_list(at, words);
    });
}

Outcome got(const Arguments& arguments, const Context& context) {
    const GotOfList said{joined(arguments.words), joined(arguments.but_not), joined(arguments.prices), arguments.paid};
    Answers answers;
    return carry_out(context, arguments.how, [&](const kitchen::At& at, const store::State& facts) {
        return got_of_list(at, facts, said, answers);
    });
}

Outcome show_list(const Arguments& arguments, const Context& context) {
    const auto today = context.today();
    if (!today) return tl::make_unexpected(today.error());
    const auto kitchen = context.kitchen();
    if (!kitchen) return tl::make_unexpected(kitchen.error());
    const auto answer = ask::ask_list(*kitchen, *today);
    context.answer([&](const show::Manner& manner) { return show::text(answer, *kitchen, *today, manner); },
                   [&] { return show::json(answer, *kitchen); }, arguments.manner);
    return answered;
}

/// What to buy on the trips of a span, a year from today or as it is said.
Outcome buy_ahead(const Arguments& arguments, const Context& context) {
    constexpr basics::days a_year{364};
    const auto today = context.today();
    if (!today) return tl::make_unexpected(today.error());
    basics::Span span{*today, *today + a_year};
    if (!arguments.words.empty()) {
        const auto said = span_meant(joined(arguments.words), *today, "list");
        if (!said) return tl::make_unexpected(said.error());
        if (said->last < *today)
            return failure(not_understood, {{"list", "these days have passed", "days to come", std::nullopt}});
        span.last = said->last;  // what is bought before it counts too
    }
    const auto kitchen = context.kitchen();
    if (!kitchen) return tl::make_unexpected(kitchen.error());
    const auto answer = ask::ask_buy_ahead(*kitchen, span);
    context.answer([&](const show::Manner& manner) { return show::text(answer, *kitchen, *today, manner); },
                   [&] { return show::json(answer, *kitchen); }, arguments.manner);
    return answered;
}

Outcome run(const Arguments& arguments, const Context& context) {
    if (arguments.got && arguments.year)
        return failure(not_understood, {{"list", "--got with --year", "one of the two", std::nullopt}});
    if (arguments.got) return got(arguments, context);
    const bool of_got = !arguments.but_not.empty() || !arguments.prices.empty() || !arguments.paid.empty();
    if (of_got) return failure(not_understood, {{"list", "--not, --prices or --paid without --got", "--got", {}}});
    if (!arguments.words.empty() && arguments.words.front() == "add") return by_hand(arguments, context, true);
    if (!arguments.words.empty() && arguments.words.front() == "drop") return by_hand(arguments, context, false);
    if (arguments.how.dry_run) return nothing_to_write(arguments.how, "--got");
    if (arguments.year || !arguments.words.empty()) return buy_ahead(arguments, context);
    return show_list(arguments, context);
}

}  // namespace

void add_list(CLI::App& app, Chosen& chosen) {
    auto* command = app.add_subcommand(
        "list", "what to buy on the next trip; list add 2 bread, list drop bread; list --got when it is bought");
    auto arguments = std::make_shared<Arguments>();
    command->add_option("words", arguments->words, "add or drop, and what; a span; after --got: only what was bought");
    command->add_flag("--why", arguments->manner.why, "a line each, with what it is for");
    command->add_flag("--year", arguments->year,
                      "what to buy on which trip, a year ahead; or name a span: list december");
    command->add_flag("--all", arguments->manner.all, "with --year or a span: every trip in full");
    command->add_flag("--got", arguments->got, "it was bought, all or what is named: --got milk @ 4.65, bread");
    command->add_option("--not", arguments->but_not, "with --got: all but these")->type_name("THINGS");
    command->add_option("--prices", arguments->prices, "with --got: what some of it cost")->type_name("PRICES");
    command->add_option("--paid", arguments->paid, "with --got: for all of it")->type_name("MONEY");
    add_dry_run(*command, arguments->how);
    run_with(*command, chosen, arguments, run);
}

}  // namespace samebase::cli
