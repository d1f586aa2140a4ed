#include <fmt/format.h>

#include <algorithm>

#include "kitchen/shelf.hpp"
#include "show/detail/packs_words.hpp"
#include "show/detail/parts.hpp"
#include "show/detail/recipe_words.hpp"
#include "show/detail/sheet_words.hpp"
#include "show/sheets.hpp"

namespace samebase::show {

namespace {

using ask::LunchKind;

std::string lunch_words(const ask::Lunch& lunch, const kitchen::Kitchen& kitchen) {
    if (!lunch.dish) return "bought";
    const stock::Lot* lot = kitchen.lot(lunch.from_lot);
    const std::string& name = kitchen.cookbook()[lot != nullptr && lot->dish ? *lot->dish : *lunch.dish].name;
    if (lunch.kind == LunchKind::cooked) return name;
    if (lunch.made) return fmt::format("{}, of dinner on {}", name, basics::short_day(*lunch.made));
    const bool frozen = lunch.kind == LunchKind::frozen_pack || (lot != nullptr && lot->state == stock::State::frozen);
    return name + (frozen ? ", from the freezer" : ", left over");
}

SheetCell lunch_cell(const ask::LunchesAnswer& answer, basics::Day day, std::size_t person,
                     const kitchen::Kitchen& kitchen) {
    SheetCell cell;
    for (const ask::LunchStanding& seat : answer.standing) {
        if (seat.day == day && seat.person == person)
            cell.text = kitchen.cookbook()[seat.dish].name + (seat.ready_meal ? ", from the freezer" : "");
    }
    for (const ask::Lunch& lunch : answer.lunches) {
        if (lunch.day == day && lunch.person == person) cell.text = lunch_words(lunch, kitchen);
    }
    return cell;
}

void add_list(Sheet& sheet, SheetList list) {
    if (!list.items.empty()) sheet.parts.emplace_back(std::move(list));
}

SheetRow ingredient_row(const ask::RecipeLine& line, const cookbook::Dish& dish, const kitchen::Kitchen& kitchen,
                        basics::Day today, bool optional) {
    const cookbook::DishIngredient& written = dish.ingredients[line.line];
    SheetCell how{written.preparation, detail::line_remarks(line, kitchen, today)};
    if (optional) how.notes.insert(how.notes.begin(), "if you like");
    return {kitchen.catalogue()[line.ingredient].name,
            {SheetCell{detail::line_amount(line, written, kitchen)}, std::move(how)}};
}

}  // namespace

Sheet lunches_sheet(const ask::LunchesAnswer& answer, const kitchen::Kitchen& kitchen) {
    SheetTable table{"", {"Day"}, {}};
    table.named = true;
    for (const kitchen::Person& person : kitchen.household.people) table.columns.push_back(person.name);
    for (basics::Day day = answer.span.first; day <= answer.span.last; day += basics::days{1}) {
        SheetRow row{basics::short_day(day), {}};
        for (std::size_t i = 0; i < kitchen.household.people.size(); ++i)
            row.cells.push_back(lunch_cell(answer, day, i, kitchen));
        table.rows.push_back(std::move(row));
    }
    Sheet sheet{"lunches", "Lunches, " + detail::span_words(answer.span), "", {std::move(table)}, "", true};
    SheetList larger{"Cook larger, for lunch", {}};
    for (const ask::LunchLarger& one : answer.larger)
        larger.items.push_back(fmt::format("{}: {}, {} more", basics::short_day(one.day),
                                           kitchen.cookbook()[one.dish].name, counted(one.more, "serve")));
    add_list(sheet, std::move(larger));
    SheetList out{"Take out of the freezer", {}};
    for (const flow::ThawMove& move : answer.take_out)
        out.items.push_back(fmt::format("{}: {}", basics::short_day(move.day), detail::take_out_words(move, kitchen)));
    add_list(sheet, std::move(out));
    SheetList buy{"Buy", {}};
    for (const flow::Purchase& one : answer.to_buy) buy.items.push_back(detail::purchase_words(one, kitchen));
    add_list(sheet, std::move(buy));
    add_list(sheet, {"Mind", answer.cautions});
    return sheet;
}

Sheet list_sheet(const ask::ListAnswer& answer, const kitchen::Kitchen& kitchen) {
    Sheet sheet{"list", "Shopping list", "", {}, ""};
    if (!answer.trip) {
        sheet.lead = "The household has no shopping days: samebase household trip sat";
        return sheet;
    }
    sheet.dense = true;
    const std::string& currency = kitchen.household.currency;
    sheet.title = fmt::format("Shopping on {}", basics::short_day(*answer.trip));
    sheet.lead = answer.items.empty() && answer.others.empty()
                     ? "Nothing to buy."
                     : fmt::format("About {}.", about_money(answer.total, currency));
    std::string shelf;
    for (const ask::ListItem& item : answer.items) {
        const std::string here{kitchen::shelf(kitchen.catalogue(), item.ingredient)};
        if (here != shelf)
            sheet.parts.emplace_back(SheetTable{capitalised(here), {"What", "Got", "About", "Paid"}, {}});
        shelf = here;
        SheetCell got{"", {}, 1};
        if (item.to_freeze) got.notes.emplace_back("to freeze");
        if (item.garnish) got.notes.emplace_back("garnish");
        if (item.ran_out) got.notes.emplace_back("ran out");
        std::get<SheetTable>(sheet.parts.back())
            .rows.push_back({detail::packs_words(item.ingredient, item.packs, item.amount, kitchen),
                             {std::move(got), SheetCell{money(item.price, currency)}, SheetCell{"", {}, 0, true}}});
    }
    add_list(sheet, {"Not food", detail::by_hand_words(answer.others)});
    add_list(sheet, {"Not sold on that trip", detail::by_hand_words(answer.later)});
    return sheet;
}

Sheet recipe_sheet(const ask::RecipeAnswer& answer, const kitchen::Kitchen& kitchen, basics::Day today) {
    const cookbook::Dish& dish = kitchen.cookbook()[answer.question.dish];
    Sheet sheet{
        "recipe", capitalised(dish.name), capitalised(detail::recipe_head(answer, kitchen, today)) + ".", {}, ""};
    if (!answer.refused.empty()) add_list(sheet, {"Not for everyone at the table", answer.refused});
    SheetTable table{"", {"What", "How much", "How"}, {}};
    for (const ask::RecipeLine& line : answer.lines)
        table.rows.push_back(ingredient_row(line, dish, kitchen, today, false));
    for (const ask::RecipeLine& line : answer.optional)
        table.rows.push_back(ingredient_row(line, dish, kitchen, today, true));
    sheet.parts.emplace_back(std::move(table));
    for (const ask::RecipeApart& apart : answer.apart) {
        SheetTable own{detail::apart_words(apart), {"What", "How much", "How"}, {}};
        for (const ask::RecipeLine& line : apart.lines)
            own.rows.push_back(ingredient_row(line, dish, kitchen, today, false));
        sheet.parts.emplace_back(std::move(own));
    }
    add_list(sheet, {"Method", dish.method, true});
    std::vector<std::string> mind = answer.cautions;
    if (std::string left = detail::leftovers_words(answer, dish); !left.empty()) mind.push_back(std::move(left));
    mind.emplace_back(advice);
    add_list(sheet, {"Mind", std::move(mind)});
    return sheet;
}

}  // namespace samebase::show
