// samebase sheet: pages to look at, to hang up and to pass on.
#include <fmt/format.h>

#include <array>
#include <nlohmann/json.hpp>

#include "ask/carry.hpp"
#include "commands.hpp"
#include "exchange/calendar.hpp"
#include "ledger.hpp"
#include "lunches.hpp"
#include "meaning.hpp"
#include "output.hpp"
#include "page_file.hpp"
#include "show/diary.hpp"
#include "show/json.hpp"
#include "show/sheets.hpp"
#include "stock.hpp"

namespace samebase::cli {

namespace {

struct Arguments {
    std::vector<std::string> words;
    std::string html;
    std::string ics;
    bool markdown = false;
    bool share = false;
    bool names = false;
};

using Made = tl::expected<show::Sheet, Failure>;

struct Question {
    const kitchen::Kitchen& kitchen;
    basics::Day today;
    std::string words;  ///< what follows the kind
    const Arguments& arguments;
};

/// The days of a week or a month, as they are said.
tl::expected<basics::Span, Failure> week_meant(const std::string& words, basics::Day today) {
    constexpr basics::days to_last{6};
    if (words.empty()) return basics::Span{today, today + to_last};
    const auto day = day_meant(words, today, "sheet week");
    if (!day) return tl::make_unexpected(day.error());
    return basics::Span{*day, *day + to_last};
}

tl::expected<basics::Span, Failure> month_meant(const std::string& words, basics::Day today) {
    if (!words.empty()) return span_meant(words, today, "sheet month");
    const std::chrono::year_month_day now{today};
    return basics::Span{basics::Day{now.year() / now.month() / 1},
                        basics::Day{now.year() / now.month() / std::chrono::last}};
}

/// What is planned over a span, and what is taken out of freezers in it: for the days after it too.
struct Planned {
    ask::Menu menu;
    ask::ThawAnswer thaw;
};

tl::expected<Planned, Failure> planned(const Question& question, const basics::Span& span) {
    constexpr basics::days ahead{3};
    auto menu = ask::ask_menu(question.kitchen, span);
    if (!menu) return failure(not_understood, menu.error());
    auto thaw = ask::ask_thaw(question.kitchen, question.today, {span.first, span.last + ahead});
    if (!thaw) return failure(not_understood, thaw.error());
    return Planned{std::move(*menu), std::move(*thaw)};
}

Made week(const Question& question) {
    const auto span = week_meant(question.words, question.today);
    if (!span) return tl::make_unexpected(span.error());
    const auto plan = planned(question, *span);
    if (!plan) return tl::make_unexpected(plan.error());
    if (!question.arguments.share && !question.arguments.markdown)
        return show::week_sheet(plan->menu, plan->thaw, question.kitchen);
    return show::shared_week_sheet(plan->menu, plan->thaw, question.kitchen,
                                   question.arguments.names ? show::Naming::everybody : show::Naming::nobody);
}

Made month(const Question& question) {
    const auto span = month_meant(question.words, question.today);
    if (!span) return tl::make_unexpected(span.error());
    const auto menu = ask::ask_menu(question.kitchen, *span);
    if (!menu) return failure(not_understood, menu.error());
    return show::month_sheet(*menu, question.kitchen, question.today);
}

/// The calendar of a week or a month.
tl::expected<std::vector<kitchen::DiaryEntry>, Failure> diary(const Question& question, bool of_month) {
    const auto span =
        of_month ? month_meant(question.words, question.today) : week_meant(question.words, question.today);
    if (!span) return tl::make_unexpected(span.error());
    const auto plan = planned(question, *span);
    if (!plan) return tl::make_unexpected(plan.error());
    const auto carry = ask::ask_carry(question.kitchen, question.today, {*span, std::nullopt, 100});
    if (!carry) return failure(not_understood, carry.error());
    return show::diary(plan->menu, plan->thaw, *carry, question.kitchen, question.today);
}

Made stock(const Question& question) {
    const auto answer = stock_answer(question.kitchen, question.today, question.words);
    if (!answer) return tl::make_unexpected(answer.error());
    return show::stock_sheet(*answer, question.kitchen);
}

Made first(const Question& question) {
    return show::first_sheet(ask::ask_tonight(question.kitchen, question.today), question.kitchen);
}

Made lunches(const Question& question) {
    const auto answer = lunches_answer({}, question.kitchen, question.today);
    if (!answer) return tl::make_unexpected(answer.error());
    return show::lunches_sheet(*answer, question.kitchen);
}

Made list(const Question& question) {
    return show::list_sheet(ask::ask_list(question.kitchen, question.today), question.kitchen);
}

Made recipe(const Question& question) {
    ask::RecipeQuestion asked;
    asked.day = question.today;
    if (question.words.empty()) {
        return failure(not_understood, {{"sheet recipe", "no dish", "the name of a dish: sheet recipe meat loaf",
                                         "'samebase dishes' lists what there is"}});
    }
    const auto dish = dish_meant(question.kitchen, question.words);
    if (!dish) return tl::make_unexpected(dish.error());
    asked.dish = *dish;
    const auto answer = ask::ask_recipe(question.kitchen, question.today, asked);
    if (!answer) return failure(not_understood, answer.error());
    return show::recipe_sheet(*answer, question.kitchen, question.today);
}

struct Kind {
    std::string_view name;
    Made (*make)(const Question& question);
    bool takes_words;
    bool in_all;
};
constexpr std::array<Kind, 7> kinds{{{"week", week, true, true},
                                     {"month", month, true, true},
                                     {"first", first, false, true},
                                     {"lunches", lunches, false, true},
                                     {"list", list, false, true},
                                     {"stock", stock, true, true},
                                     {"recipe", recipe, true, false}}};

std::string kind_names() {
    std::string names;
    for (const Kind& kind : kinds) names += std::string(kind.name) + ", ";
    return names + "all";
}

std::string kind_of(const Arguments& arguments) {
    return arguments.words.empty() ? "week" : arguments.words.front();
}

std::string rest_of(const Arguments& arguments) {
    return arguments.words.empty() ? "" : joined({arguments.words.begin() + 1, arguments.words.end()});
}

tl::expected<std::vector<show::Sheet>, Failure> sheets(const Arguments& arguments, const kitchen::Kitchen& kitchen,
                                                       basics::Day today) {
    const std::string wanted = kind_of(arguments);
    const Question question{kitchen, today, rest_of(arguments), arguments};
    const bool all = wanted == "all";
    std::vector<show::Sheet> made;
    for (const Kind& kind : kinds) {
        if (kind.name != wanted && !(all && kind.in_all)) continue;
        if (!question.words.empty() && (all || !kind.takes_words)) {
            return failure(not_understood,
                           {{"sheet " + wanted, fmt::format("'{}'", question.words), "nothing more", std::nullopt}});
        }
        auto sheet = kind.make(question);
        if (!sheet) return tl::make_unexpected(sheet.error());
        made.push_back(std::move(*sheet));
    }
    if (made.empty())
        return failure(not_understood, {{"sheet", fmt::format("'{}'", wanted), kind_names(), std::nullopt}});
    return made;
}

/// Options that do not go with what is asked for.
std::optional<Failure> misfit(const Arguments& arguments) {
    const bool is_week = kind_of(arguments) == "week";
    const bool shared = arguments.share || arguments.markdown;
    if (arguments.share && !is_week)
        return Failure{not_understood, {{"--share", "not of this sheet", "sheet week --share", std::nullopt}}};
    if (arguments.names && !(shared && is_week))
        return Failure{not_understood, {{"--names", "nothing to pass on", "sheet week --share --names", std::nullopt}}};
    if (arguments.markdown && !arguments.html.empty())
        return Failure{not_understood, {{"--markdown", "with --html", "one of them", std::nullopt}}};
    if (!arguments.ics.empty() && !is_week && kind_of(arguments) != "month")
        return Failure{not_understood, {{"--ics", "not of this sheet", "sheet week or sheet month", std::nullopt}}};
    if (!arguments.ics.empty() && (shared || !arguments.html.empty()))
        return Failure{not_understood, {{"--ics", "with --html, --markdown or --share", "one of them", std::nullopt}}};
    return std::nullopt;
}

/// Standard output in place of a file.
constexpr std::string_view printed = "-";

tl::expected<void, Failure> write(const std::string& file, const std::string& text, std::string_view mark) {
    if (file == printed) return {};
    return write_page(file, text, mark);
}

Outcome calendar(const Arguments& arguments, const Context& context, const kitchen::Kitchen& kitchen,
                 basics::Day today) {
    const auto entries = diary({kitchen, today, rest_of(arguments), arguments}, kind_of(arguments) == "month");
    if (!entries) return tl::make_unexpected(entries.error());
    const std::string text = exchange::write_calendar(*entries, kitchen.household.name, today);
    if (arguments.ics == printed && !context.wants_json()) {
        print_document(text);
        return answered;
    }
    if (auto written = write(arguments.ics, text, exchange::calendar_product); !written)
        return tl::make_unexpected(written.error());
    const std::string count = fmt::format("{} {}", entries->size(), entries->size() == 1 ? "entry" : "entries");
    context.answer(
        [&](const show::Manner&) {
            return fmt::format("{} in {}: open it with your calendar.\n", count, arguments.ics);
        },
        [&] {
            return show::Json{{"file", arguments.ics}, {"sheets", show::Json::array()}, {"entries", entries->size()}};
        });
    return answered;
}

std::string page_title(const std::vector<show::Sheet>& sheets, const kitchen::Kitchen& kitchen, basics::Day today) {
    if (sheets.size() == 1) return sheets.front().title;
    const std::string date = basics::short_day(today);
    return kitchen.household.name.empty() ? "Sheets of " + date : fmt::format("{}, {}", kitchen.household.name, date);
}

Outcome run(const Arguments& arguments, const Context& context) {
    if (auto wrong = misfit(arguments)) return tl::make_unexpected(std::move(*wrong));
    const auto today = context.today();
    if (!today) return tl::make_unexpected(today.error());
    const auto kitchen = context.kitchen();
    if (!kitchen) return tl::make_unexpected(kitchen.error());
    if (!arguments.ics.empty()) return calendar(arguments, context, *kitchen, *today);
    const auto made = sheets(arguments, *kitchen, *today);
    if (!made) return tl::make_unexpected(made.error());
    const auto page = [&] { return show::html(*made, page_title(*made, *kitchen, *today)); };
    if (arguments.html == printed && !context.wants_json()) {
        print_document(page());
        return answered;
    }
    if (!arguments.html.empty()) {
        if (auto written = write(arguments.html, page(), show::html_mark); !written)
            return tl::make_unexpected(written.error());
    }
    context.answer(
        [&](const show::Manner&) {
            if (!arguments.html.empty()) return fmt::format("Look at {}, or print it.\n", arguments.html);
            std::string out;
            for (const show::Sheet& sheet : *made)
                out += (out.empty() ? "" : "\n") + (arguments.markdown ? show::markdown(sheet) : show::text(sheet));
            return out;
        },
        [&] {
            return show::Json{{"file", arguments.html.empty() ? show::Json(nullptr) : show::Json(arguments.html)},
                              {"sheets", show::json(*made)},
                              {"entries", nullptr}};
        });
    return answered;
}

}  // namespace

void add_sheet(CLI::App& app, Chosen& chosen) {
    auto* command = app.add_subcommand("sheet", "a page to hang up or pass on: sheet week --html week.html");
    auto arguments = std::make_shared<Arguments>();
    command->add_option("sheet", arguments->words,
                        kind_names() + " (week where none is said); recipe DISH, stock PLACE");
    command->add_option("--html", arguments->html, "as a page for paper and phone, into this file ('-' prints it)")
        ->type_name("FILE");
    command->add_option("--ics", arguments->ics, "week or month as a calendar: meals, thawing, trips, use-by days")
        ->type_name("FILE");
    command->add_flag("--markdown", arguments->markdown, "in Markdown; the week as it is passed on");
    command->add_flag("--share", arguments->share,
                      "the week to pass on: dinners, what to thaw, what was swapped; no names");
    command->add_flag("--names", arguments->names, "with the names of those at home");
    run_with(*command, chosen, arguments, run);
}

}  // namespace samebase::cli
