#include "recipe_report.hpp"

#include <fmt/format.h>

#include <algorithm>

#include "show/words.hpp"

namespace samebase::cli {

namespace {

using exchange::DishLine;
using exchange::RecipeDish;
using show::Json;

bool replaces(const RecipeReport& report, const RecipeDish& dish) {
    const auto& ids = report.addition.replaced;
    return std::find(ids.begin(), ids.end(), dish.id) != ids.end();
}

std::string and_listed(const Json& words) {
    std::vector<std::string> all;
    for (const Json& word : words) all.push_back(word.get<std::string>());
    return show::listed(all);
}

std::string head(const RecipeReport& report, const RecipeDish& dish) {
    const Json& d = dish.document;
    return fmt::format(
        "{}: serves {}, {} minutes, {} of them hands-on; {}; kind {}; {}{}.", show::capitalised(dish.name),
        d["serves"].get<int>(), d["minutes"].get<int>(), d["hands_on"].get<int>(), and_listed(d["meals"]),
        and_listed(d["kinds"]),
        d["base"].is_null() ? std::string("on no base") : fmt::format("on the base {}", d["base"].get<std::string>()),
        replaces(report, dish) ? fmt::format("; in place of the dish {}", dish.id) : std::string());
}

/// "1 cup (250 mL) milk, sauce; warmed [as asked]"
std::string read_as(const DishLine& line, const catalogue::Catalogue& catalogue) {
    if (!line.ingredient) return fmt::format("left out: {}", line.left_out);
    const auto& thing = catalogue[*line.ingredient];
    const std::string own = show::amount(line.amount, thing);
    std::string result =
        fmt::format("{}{} {}, {}", line.as_written, own == line.as_written ? std::string() : fmt::format(" ({})", own),
                    thing.name, name(line.role));
    if (!line.preparation.empty()) result += fmt::format("; {}", line.preparation);
    std::vector<std::string> notes = line.notes;
    if (line.role_from != "most dishes with it") notes.push_back(fmt::format("role: {}", line.role_from));
    if (line.optional) notes.emplace_back("optional");
    for (const std::string& note : notes) result += fmt::format(" [{}]", note);
    return result;
}

bool left_out_as_asked(const RecipeReport& report) {
    return std::any_of(report.dishes.begin(), report.dishes.end(), [](const RecipeDish& dish) {
        return std::any_of(dish.lines.begin(), dish.lines.end(),
                           [](const DishLine& line) { return line.left_out == "as asked"; });
    });
}

std::vector<std::string> cautions(const RecipeReport& report) {
    std::vector<std::string> result;
    for (const auto& problem : report.passed_over) {
        result.push_back(fmt::format("Passed over in the page: {}.", basics::to_text(problem)));
    }
    result.push_back(fmt::format("Allergens are counted from the ingredients as read above{}; read the labels.",
                                 left_out_as_asked(report) ? ", not from what was left out as asked" : ""));
    return result;
}

Json line_json(const DishLine& line, const catalogue::Catalogue& catalogue) {
    const bool in = line.ingredient.has_value();
    const auto* thing = in ? &catalogue[*line.ingredient] : nullptr;
    return {{"where", line.place},
            {"written", line.written},
            {"left_out", in ? Json(nullptr) : Json(line.left_out)},
            {"ingredient", in ? Json(thing->id) : Json(nullptr)},
            {"label", in ? Json(thing->name) : Json(nullptr)},
            {"amount", in ? show::json_amount(line.amount, *thing) : Json(nullptr)},
            {"as_written", in ? Json(line.as_written) : Json(nullptr)},
            {"role", in ? Json(std::string(name(line.role))) : Json(nullptr)},
            {"role_from", in ? Json(line.role_from) : Json(nullptr)},
            {"preparation", line.preparation},
            {"optional", line.optional},
            {"notes", line.notes}};
}

}  // namespace

std::string text(const RecipeReport& report) {
    std::string out;
    for (const RecipeDish& dish : report.dishes) {
        out += show::wrapped(head(report, dish)) + "\n";
        for (const DishLine& line : dish.lines) {
            out += show::wrapped(fmt::format("  {}", line.written), 4) + "\n";
            out += show::wrapped(fmt::format("    -> {}", read_as(line, report.knowledge.catalogue)), 7) + "\n";
        }
    }
    out += show::wrapped(
               "A role is what the ingredient mostly is in the cookbook, else what its family is; "
               "--role 'WORDS=ROLE' says another.") +
           "\n";
    out += show::wrapped(
               "What uneaten serves become, and whether they freeze, is not said by a recipe: --leaves "
               "'leftover curry' and --freezes say it.") +
           "\n";
    for (const std::string& caution : cautions(report)) out += show::wrapped(fmt::format("! {}", caution), 2) + "\n";
    return out;
}

std::string last_line(const RecipeReport& report) {
    const std::string file = report.addition.draft.path.string();
    if (report.dry_run) return fmt::format("Nothing is written; it would be into {}.\n", file);
    return fmt::format("Written into {}.\n", file);
}

Json json(const RecipeReport& report) {
    Json dishes = Json::array();
    for (const RecipeDish& dish : report.dishes) {
        Json lines = Json::array();
        for (const DishLine& line : dish.lines) lines.push_back(line_json(line, report.knowledge.catalogue));
        const Json& d = dish.document;
        dishes.push_back({{"where", dish.place},
                          {"dish", dish.id},
                          {"label", dish.name},
                          {"replaces", replaces(report, dish)},
                          {"base", d["base"]},
                          {"meals", d["meals"]},
                          {"kinds", d["kinds"]},
                          {"serves", d["serves"]},
                          {"minutes", d["minutes"]},
                          {"hands_on", d["hands_on"]},
                          {"lines", std::move(lines)},
                          {"method", d["method"]}});
    }
    return {{"file", report.addition.draft.path.string()},
            {"dry_run", report.dry_run},
            {"dishes", std::move(dishes)},
            {"cautions", cautions(report)}};
}

}  // namespace samebase::cli
