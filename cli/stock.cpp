// samebase stock: what have I got?
#include "show/stock.hpp"

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
    show::StockAnswer answer{*today, {}, {}, {}};
    if (!words.empty()) {
        const auto place = place_meant(*kitchen, joined(words));
        if (!place) return tl::make_unexpected(place.error());
        answer.place = *place;
    }
    for (const auto& lot : kitchen->lots) {
        if (!answer.place || lot.place == *answer.place) answer.lots.push_back(&lot);
    }
    for (const auto& danger : ask::ask_tonight(*kitchen, *today).use_first) {
        // What will be left over of something that is still to be thawed or opened does not make it urgent now.
        const auto* lot = kitchen->lot(danger.lot);
        if (lot != nullptr && lot->eat_by() && *lot->eat_by() <= danger.by) answer.use_first.insert(danger.lot);
    }
    context.answer([&](const show::Manner& manner) { return show::text(answer, *kitchen, manner); },
                   [&] { return show::json(answer, *kitchen); });
    return answered;
}

}  // namespace

void add_stock(CLI::App& app, Chosen& chosen) {
    auto* command = app.add_subcommand("stock", "what have I got? by place, with what is to be used first");
    auto words = std::make_shared<std::vector<std::string>>();
    command->add_option("place", *words, "one place only")->type_name("PLACE");
    run_with(*command, chosen, words, run);
}

}  // namespace samebase::cli
