// samebase stock: what have I got?
#include "stock.hpp"

#include <nlohmann/json.hpp>

#include "ask/tonight.hpp"
#include "commands.hpp"
#include "ledger.hpp"
#include "meaning.hpp"

namespace samebase::cli {

namespace {

Outcome run(const std::vector<std::string>& words, const Context& context) {
    const auto today = context.today();
    if (!today) return tl::make_unexpected(today.error());
    const auto kitchen = context.kitchen();
    if (!kitchen) return tl::make_unexpected(kitchen.error());
    const auto answer = stock_answer(*kitchen, *today, joined(words));
    if (!answer) return tl::make_unexpected(answer.error());
    context.answer([&](const show::Manner& manner) { return show::text(*answer, *kitchen, manner); },
                   [&] { return show::json(*answer, *kitchen); });
    return answered;
}

}  // namespace

tl::expected<show::StockAnswer, Failure> stock_answer(const kitchen::Kitchen& kitchen, basics::Day today,
                                                      const std::string& place) {
    show::StockAnswer answer{today, {}, {}, {}};
    if (!place.empty()) {
        const auto meant = place_meant(kitchen, place);
        if (!meant) return tl::make_unexpected(meant.error());
        answer.place = *meant;
    }
    for (const auto& lot : kitchen.lots) {
        if (!answer.place || lot.place == *answer.place) answer.lots.push_back(&lot);
    }
    for (const auto& danger : ask::ask_tonight(kitchen, today).use_first) {
        if (ask::in_danger_now(danger, kitchen)) answer.use_first.insert(danger.lot);
    }
    return answer;
}

void add_stock(CLI::App& app, Chosen& chosen) {
    auto* command = app.add_subcommand("stock", "what have I got? by place, with what is to be used first");
    auto words = std::make_shared<std::vector<std::string>>();
    command->add_option("place", *words, "one place only")->type_name("PLACE");
    run_with(*command, chosen, words, run);
}

}  // namespace samebase::cli
