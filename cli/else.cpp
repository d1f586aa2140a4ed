// samebase else WHAT: what else can I make from this?
#include "ask/else.hpp"

#include <fmt/format.h>

#include <algorithm>
#include <nlohmann/json.hpp>

#include "flow/cooking.hpp"
#include "ledger.hpp"
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
    int take = 0;
    bool buy = false;
    show::Manner manner;
    How how;
};

/// The one thing of an index that goes by just these words.
std::optional<std::uint32_t> whole(catalogue::NameIndex& index, const std::string& words) {
    index.finish();
    const auto match = index.find(words);
    if (!match.whole || match.found.size() != 1) return std::nullopt;
    return match.found.front().key;
}

std::optional<catalogue::FamilyId> family_called(const catalogue::Catalogue& catalogue, const std::string& words) {
    catalogue::NameIndex index;
    std::uint32_t key = 0;
    for (const auto& family : catalogue.families()) index.add(key++, 0, family.name);
    const auto found = whole(index, words);
    return found ? std::optional(catalogue::FamilyId{*found}) : std::nullopt;
}

/// Raw meat and fish that have the word in their name: for "chicken" the pieces, the mince and the whole bird.
std::vector<catalogue::Of> meat_called(const catalogue::Catalogue& catalogue, const std::string& word) {
    std::vector<catalogue::Of> list;
    const auto offal = catalogue.family("offal");
    for (const char* kind : {"meat", "seafood"}) {
        const auto family = catalogue.family(kind);
        if (!family) continue;
        for (const auto id : catalogue.members(*family)) {
            const auto& thing = catalogue[id];
            if (thing.kind != catalogue::Kind::raw || (offal && catalogue.belongs(id, *offal))) continue;
            const std::string name = " " + thing.name + " ";
            if (name.find(" " + word + " ") != std::string::npos) list.emplace_back(id);
        }
    }
    return list;
}

std::string kind_called(const cookbook::Cookbook& cookbook, const std::string& words) {
    std::vector<std::string> kinds;
    for (const auto& dish : cookbook.dishes()) {
        if (dish.dinner) kinds.insert(kinds.end(), dish.kinds.begin(), dish.kinds.end());
    }
    std::sort(kinds.begin(), kinds.end());
    kinds.erase(std::unique(kinds.begin(), kinds.end()), kinds.end());
    catalogue::NameIndex index;
    for (std::uint32_t key = 0; key < kinds.size(); ++key) index.add(key, 0, kinds[key]);
    const auto found = whole(index, words);
    return found ? kinds[*found] : "";
}

/// A cook's general word: a family (pasta), all that goes by it (chicken), a kind of dish (soup). False: it is none.
bool take_general_word(const kitchen::Kitchen& kitchen, const std::string& words, ask::ElseQuestion& question) {
    const auto& things = kitchen.catalogue().ingredients();
    if (std::any_of(things.begin(), things.end(), [&](const auto& thing) { return thing.name == words; })) return false;
    if (const auto family = family_called(kitchen.catalogue(), words)) {
        question.using_ = *family;
        return true;
    }
    question.kind = kind_called(kitchen.cookbook(), words);
    if (!question.kind.empty()) return true;
    auto meat = meat_called(kitchen.catalogue(), words);
    if (meat.size() < 2) return false;
    question.using_ = meat.front();
    question.also.assign(meat.begin() + 1, meat.end());
    question.word = words;
    return true;
}

tl::expected<ask::ElseQuestion, Failure> question(const Arguments& arguments, const kitchen::Kitchen& kitchen,
                                                  basics::Day today) {
    ask::ElseQuestion question{
        .day = today, .using_ = {}, .lot = {}, .instead_of = {}, .serves = arguments.serves, .left = arguments.left};
    if (!arguments.day.empty()) {
        const auto day = day_meant(arguments.day, today, "--day");
        if (!day) return tl::make_unexpected(day.error());
        question.day = *day;
    }
    question.from_stock = !arguments.buy && arguments.why_not.empty();
    if (arguments.what.empty() || take_general_word(kitchen, joined(arguments.what), question)) return question;
    const auto what = meant(kitchen, joined(arguments.what));
    if (!what) return tl::make_unexpected(what.error());
    if (const auto* ingredient = std::get_if<catalogue::IngredientId>(&*what)) question.using_ = *ingredient;
    if (const auto* family = std::get_if<catalogue::FamilyId>(&*what)) question.using_ = *family;
    if (const auto* dish = std::get_if<cookbook::DishId>(&*what)) question.instead_of = *dish;
    if (const auto* lot = std::get_if<stock::LotNumber>(&*what)) question.lot = *lot;
    return question;
}

/// The dish of that number in the answer becomes the dinner.
Outcome take(const Arguments& arguments, const Context& context) {
    const auto compute = [&](const kitchen::At& at, const store::State&) -> tl::expected<kitchen::Change, Failure> {
        const auto asked = question(arguments, at.kitchen, at.day);
        if (!asked) return tl::make_unexpected(asked.error());
        const auto answer = ask::ask_else(at.kitchen, at.day, *asked);
        if (!answer) return failure(not_understood, answer.error());
        const auto count = answer->alternatives.size();
        if (static_cast<std::size_t>(arguments.take) > count) {
            return failure(not_understood, {{"--take",
                                             fmt::format("{}", arguments.take),
                                             fmt::format("a number of the list, from 1 to {}", count),
                                             {}}});
        }
        const ask::Alternative& taken = answer->alternatives[static_cast<std::size_t>(arguments.take) - 1];
        auto change = understood(kitchen::set_meal(
            at, {.day = asked->day,
                 .meal = kitchen::Meal::dinner,
                 .dish = taken.dish,
                 .ready_meal = taken.ready_meal,
                 .serves = asked->serves,
                 .left = asked->left,
                 .swaps = flow::as_swaps(taken.stand_ins, taken.scaled, taken.cooking.serves_thousandths)}));
        if (change) change->notes = show::lines(taken, at.kitchen);
        return change;
    };
    const auto agree = [](const kitchen::Kitchen&, const kitchen::Change& change) -> std::optional<std::string> {
        return fmt::format("{}. Do it?", show::capitalised(change.line));
    };
    return carry_out(context, arguments.how, compute, agree);
}

Outcome run(const Arguments& arguments, const Context& context) {
    if (arguments.take > 0) return take(arguments, context);
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
    auto* command = app.add_subcommand(
        "else", "what else can I make from this mince? (an ingredient, a family, a kind of dish, a dish or a lot)");
    auto arguments = std::make_shared<Arguments>();
    command->add_option("what", arguments->what, "what to use; nothing: the main ingredient of what is planned");
    command->add_option("--day", arguments->day, "the day of the dinner (else today)");
    command->add_option("--serves", arguments->serves, "serves to cook (else as many as are home)")
        ->check(CLI::Range(1, 1000));
    command->add_option("--left", arguments->left, "extra serves on purpose, for lunches")->check(CLI::Range(0, 100));
    command->add_option("--why-not", arguments->why_not, "what rules a dish out, or holds it down")->type_name("DISH");
    command->add_option("--take", arguments->take, "plan the dish of that number in the list")
        ->check(CLI::Range(1, 1000));
    command->add_flag("--buy", arguments->buy, "also what needs a trip to the shop before its day");
    add_dry_run(*command, arguments->how);
    add_yes(*command, arguments->how);
    command->add_flag("--why", arguments->manner.why, "every line of every sum");
    command->add_flag("--all", arguments->manner.all, "every dish");
    run_with(*command, chosen, arguments, run);
}

}  // namespace samebase::cli
