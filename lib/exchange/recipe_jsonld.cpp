#include "exchange/recipe_jsonld.hpp"

#include <fmt/format.h>
#include <utf8proc.h>

#include <algorithm>
#include <array>
#include <cctype>
#include <charconv>
#include <cstdlib>
#include <memory>
#include <nlohmann/json.hpp>
#include <utility>

#include "catalogue/names.hpp"
#include "exchange/detail/documents.hpp"
#include "exchange/detail/duration.hpp"
#include "measure/line.hpp"

namespace samebase::exchange {

namespace {

using catalogue::Catalogue;
using catalogue::IngredientId;
using catalogue::Role;
using nlohmann::json;

constexpr int most_levels_looked_at = 20;
constexpr int most_serves = 1000;

/// "Recipe", "schema:Recipe" and "https://schema.org/Recipe" are one type.
bool is_named(const json& type, std::string_view name) {
    if (type.is_array())
        return std::any_of(type.begin(), type.end(), [&](const json& t) { return t.is_string() && is_named(t, name); });
    if (!type.is_string()) return false;
    const std::string_view text = type.get_ref<const std::string&>();
    return text == name || (text.ends_with(name) &&
                            (text[text.size() - name.size() - 1] == '/' || text[text.size() - name.size() - 1] == ':'));
}

bool is_a(const json& value, std::string_view name) {
    return value.is_object() && value.contains("@type") && is_named(value["@type"], name);
}

void find_recipes(const json& value, int level, std::vector<const json*>& found) {
    if (level > most_levels_looked_at) return;
    if (is_a(value, "Recipe")) {
        found.push_back(&value);
    } else if (value.is_array()) {
        for (const json& child : value) find_recipes(child, level + 1, found);
    } else if (value.is_object()) {
        for (const char* key : {"@graph", "mainEntity"}) {
            if (value.contains(key)) find_recipes(value[key], level + 1, found);
        }
    }
}

/// Runs of white space as one space, none at the ends.
std::string tidy(std::string_view text) {
    std::string result;
    for (const char c : text) {
        const bool space = std::isspace(static_cast<unsigned char>(c)) != 0;
        if (!space) {
            result += c;
        } else if (!result.empty() && result.back() != ' ') {
            result += ' ';
        }
    }
    if (!result.empty() && result.back() == ' ') result.pop_back();
    return result;
}

/// A text, or a number as a text; "" for anything else.
std::string text_of(const json& value) {
    if (value.is_string()) return tidy(value.get_ref<const std::string&>());
    if (value.is_number()) return value.dump();
    return {};
}

std::string text_of(const json& object, const char* key) {
    return object.is_object() && object.contains(key) ? text_of(object[key]) : std::string{};
}

/// What stands there, for a note.
std::string shown(const json& value) {
    basics::Problems unused;
    const std::string name;
    return detail::Element(value, name, unused).shown();
}

/// A value as a list: an array's elements, or the one value.
std::vector<const json*> listed(const json& object, const char* key) {
    std::vector<const json*> result;
    if (!object.contains(key)) return result;
    const json& value = object[key];
    if (!value.is_array()) return {&value};
    for (const json& child : value) result.push_back(&child);
    return result;
}

/// The name in lower case without accents, its words joined by hyphens.
std::string slug(const std::string& name) {
    utf8proc_uint8_t* mapped = nullptr;
    const auto size = utf8proc_map(
        reinterpret_cast<const utf8proc_uint8_t*>(name.data()), static_cast<utf8proc_ssize_t>(name.size()), &mapped,
        static_cast<utf8proc_option_t>(UTF8PROC_DECOMPOSE | UTF8PROC_STRIPMARK | UTF8PROC_CASEFOLD));
    const std::unique_ptr<utf8proc_uint8_t, decltype(&std::free)> owner(mapped, &std::free);
    std::string result;
    for (utf8proc_ssize_t i = 0; i < size; ++i) {
        const char c = static_cast<char>(mapped[i]);
        if ((c >= 'a' && c <= 'z') || (c >= '0' && c <= '9')) {
            result += c;
        } else if (c != '\'' && !result.empty() && result.back() != '-') {
            result += '-';
        }
    }
    while (!result.empty() && result.back() == '-') result.pop_back();
    return result.empty() ? "recipe" : result;
}

std::string free_id(const std::string& name, const std::vector<RecipeDraft>& before,
                    const cookbook::Cookbook& cookbook) {
    const std::string wanted = slug(name);
    const auto taken = [&](const std::string& id) {
        return cookbook.dish(id) ||
               std::any_of(before.begin(), before.end(), [&](const RecipeDraft& d) { return d.dish.id == id; });
    };
    std::string id = wanted;
    for (int i = 2; taken(id); ++i) id = fmt::format("{}-{}", wanted, i);
    return id;
}

/// A number of serves: 4, "4", "4 servings", "serves 4 to 6" (the lower), "makes 4 portions". Of "1 loaf" or "24
/// biscuits" nobody knows.
std::optional<int> read_serves(std::string_view text) {
    static constexpr std::array<std::string_view, 13> serving{"serve",    "serves", "serving", "servings", "portion",
                                                              "portions", "people", "person",  "persons",  "makes",
                                                              "for",      "to",     "about"};
    if (!text.empty() && text.front() == '-') return std::nullopt;
    std::optional<int> result;
    bool alone = true;
    bool serves = false;
    while (!text.empty()) {
        const char c = text.front();
        if (c >= '0' && c <= '9') {
            int value = 0;
            const auto [end, error] = std::from_chars(text.data(), text.data() + text.size(), value);
            if (error != std::errc{} || value < 1 || value > most_serves) return std::nullopt;
            text.remove_prefix(static_cast<std::size_t>(end - text.data()));
            if (!text.empty() && (text.front() == '.' || text.front() == '/')) return std::nullopt;
            result = result ? std::min(*result, value) : value;
        } else if (std::isalpha(static_cast<unsigned char>(c)) != 0) {
            std::string word;
            while (!text.empty() && std::isalpha(static_cast<unsigned char>(text.front())) != 0) {
                word += static_cast<char>(std::tolower(static_cast<unsigned char>(text.front())));
                text.remove_prefix(1);
            }
            const auto at = std::find(serving.begin(), serving.end(), word);
            if (at == serving.end()) return std::nullopt;
            serves |= at - serving.begin() < 9;
            alone = false;
        } else if (c == ' ' || c == '-' || c == ':' || c == '.' || c == '(' || c == ')' ||
                   static_cast<unsigned char>(c) >= 0x80U) {
            text.remove_prefix(1);
        } else {
            return std::nullopt;
        }
    }
    return alone || serves ? result : std::nullopt;
}

/// A draft in the making, with what it is read from.
struct Reading {
    const json& recipe;
    const kitchen::Knowledge& knowledge;
    const catalogue::NameIndex& names;
    measure::MeasureSet set;
    RecipeDraft draft;

    void note(std::string where, std::string found, std::string expected) {
        draft.notes.push_back({std::move(where), std::move(found), std::move(expected), std::nullopt});
    }
};

void read_yield(Reading& reading) {
    reading.draft.dish.serves = 0;
    const auto said = listed(reading.recipe, "recipeYield");
    for (const json* value : said) {
        const std::string text = value->is_object()
                                     ? fmt::format("{} {}", text_of(*value, "value"), text_of(*value, "unitText"))
                                     : text_of(*value);
        if (const auto serves = read_serves(text)) {
            reading.draft.dish.serves = *serves;
            return;
        }
    }
    reading.note("recipeYield", said.empty() ? "nothing is said" : shown(*said.front()),
                 "for how many, such as '4 servings'");
}

std::optional<int> read_time(Reading& reading, const char* key) {
    if (!reading.recipe.contains(key) || reading.recipe[key].is_null()) return std::nullopt;
    const auto minutes = detail::read_duration(text_of(reading.recipe[key]));
    if (!minutes) reading.note(key, shown(reading.recipe[key]), "an ISO 8601 duration such as 'PT1H30M'");
    return minutes;
}

void read_times(Reading& reading) {
    const auto total = read_time(reading, "totalTime");
    const auto preparing = read_time(reading, "prepTime");
    const auto cooking = read_time(reading, "cookTime");
    auto& dish = reading.draft.dish;
    dish.minutes = total.value_or(preparing.value_or(0) + cooking.value_or(0));
    dish.hands_on = std::min(preparing.value_or(dish.minutes), dish.minutes);
    if (!total && !preparing && !cooking)
        reading.note("totalTime", "no time is known", "how long it takes, such as 'PT1H30M'");
}

/// Codes for units of UN/ECE Recommendation 20. G21 for a cup is in schema.org's own example; the others from memory.
std::optional<std::string_view> unit_of_code(std::string_view code) {
    static constexpr std::array<std::pair<std::string_view, std::string_view>, 12> codes{{{"G21", "cup"},
                                                                                          {"G24", "tablespoon"},
                                                                                          {"G25", "teaspoon"},
                                                                                          {"GRM", "g"},
                                                                                          {"KGM", "kg"},
                                                                                          {"MGM", "mg"},
                                                                                          {"MLT", "mL"},
                                                                                          {"CLT", "cL"},
                                                                                          {"DLT", "dL"},
                                                                                          {"LTR", "L"},
                                                                                          {"ONZ", "oz"},
                                                                                          {"LBR", "lb"}}};
    if (code.empty() || code == "C62") return std::string_view{};  // one piece
    const auto found = std::find_if(codes.begin(), codes.end(), [&](const auto& c) { return c.first == code; });
    return found == codes.end() ? std::nullopt : std::optional(found->second);
}

/// A line as text, or a PropertyValue as the line that a cook would write; a reason where that cannot be.
tl::expected<std::string, std::string> line_text(const json& value) {
    if (value.is_string()) return text_of(value);
    if (!value.is_object()) return tl::make_unexpected("neither a text nor a PropertyValue");
    const auto unit = unit_of_code(text_of(value, "unitCode"));
    if (!unit) return tl::make_unexpected(fmt::format("the unit code {} is not known", shown(value["unitCode"])));
    const std::string written = unit->empty() ? text_of(value, "unitText") : std::string(*unit);
    return tidy(fmt::format("{} {} {}", text_of(value, "value"), written, text_of(value, "name")));
}

/// The amount of all of it, as written and in the ingredient's own dimension; a reason where there is none.
tl::expected<std::pair<measure::Amount, std::string>, std::string> amount_of(const measure::WrittenLine& line,
                                                                             const catalogue::Ingredient& thing) {
    if (!line.amount) return tl::make_unexpected("no amount is written");
    if (!std::holds_alternative<measure::Amount>(line.amount->amount))
        return tl::make_unexpected("the amount is only rough");
    measure::Written written = *line.amount;
    const auto count = std::get<measure::Amount>(written.amount);
    if (line.each && std::holds_alternative<measure::Amount>(line.each->amount) &&
        count.dimension() == measure::Dimension::pieces) {
        const auto all = measure::scaled(std::get<measure::Amount>(line.each->amount), count.value(), 1000);
        if (!all) return tl::make_unexpected("the amount is too large");
        written = {*all, std::nullopt, {}};
    }
    if (written.counted == "serve" && !thing.in_serves) return tl::make_unexpected("it is not counted in serves");
    const auto amount = detail::in_own_dimension(written, thing);
    if (!amount) return tl::make_unexpected(amount.error().front().found);
    if (amount->value() <= 0) return tl::make_unexpected("the amount is nothing");
    if (detail::too_large(*amount, thing)) return tl::make_unexpected("the amount is too large");
    const std::string text = measure::write(std::get<measure::Amount>(written.amount));
    return std::pair{*amount, written.counted.empty() ? text : fmt::format("{} {}", text, written.counted)};
}

std::vector<std::string> names_of(const std::vector<catalogue::Found>& found) {
    std::vector<std::string> result;
    for (const auto& f : found) result.push_back(f.name);
    return result;
}

std::size_t word_count(std::string_view text) {
    std::size_t count = 0;
    bool inside = false;
    for (const char c : text) {
        const bool between = c == ' ' || c == '-';
        count += !between && !inside ? 1U : 0U;
        inside = !between;
    }
    return count;
}

/// The line up to its first comma, without what is in brackets.
std::string head_of(std::string_view text) {
    std::string result;
    int depth = 0;
    for (const char c : text) {
        if (c == ',') break;
        if (c == '(') ++depth;
        if (depth == 0) result += c;
        if (c == ')' && depth > 0) --depth;
    }
    return tidy(result);
}

/// Whether a word stands among the words of a text, in whatever case.
bool has_word(std::string_view text, std::string_view word) {
    const auto same = [](char a, char b) {
        return std::tolower(static_cast<unsigned char>(a)) == std::tolower(static_cast<unsigned char>(b));
    };
    const auto ends = [](char c) { return c == ' ' || c == ','; };
    for (auto at = text.begin(); at != text.end();) {
        const auto end = std::find_if(at, text.end(), ends);
        if (std::equal(at, end, word.begin(), word.end(), same)) return true;
        at = std::find_if_not(end, text.end(), ends);
    }
    return false;
}

/// What the line means. Words that describe may be a part of a name ("ground coriander", "cold ham", "peas in pod"): so
/// first the longest end of the line's head that is a whole name, then the words that reading the line took for the
/// name.
catalogue::Match meaning(const measure::WrittenLine& line, const catalogue::NameIndex& names) {
    const std::string head = head_of(line.original);
    for (std::size_t at = 0; at != std::string::npos; at = head.find(' ', at)) {
        if (at > 0) ++at;
        const std::string_view words = std::string_view(head).substr(at);
        const std::string_view first = words.substr(0, words.find(' '));
        if (words == line.name || !(has_word(line.preparation, first) || has_word(line.name, first))) continue;
        catalogue::Match match = names.find(words);
        if (match.found.size() != 1 || match.found.front().distance != 0) continue;
        if (word_count(match.found.front().name) == word_count(words)) return match;
    }
    return names.find(line.name);
}

DraftLine read_line(const json& value, Reading& reading) {
    const Catalogue& catalogue = reading.knowledge.catalogue;
    DraftLine result;
    const auto text = line_text(value);
    result.text = text ? *text : shown(value);
    if (!text) {
        result.reason = text.error();
        return result;
    }
    const auto line = measure::read_line(*text, reading.set);
    if (!line) {
        result.reason = line.error().front().found;
        return result;
    }
    const catalogue::Match match = meaning(*line, reading.names);
    if (match.found.size() != 1) {
        result.reason = match.found.empty() ? fmt::format("no ingredient is called '{}'", line->name)
                                            : fmt::format("'{}' may mean several ingredients", line->name);
        result.nearest = names_of(match.found.empty() ? match.nearest : match.found);
        return result;
    }
    const IngredientId id{match.found.front().key};
    result.ingredient = id;
    auto amount = amount_of(*line, catalogue[id]);
    if (!amount) {
        result.reason = std::move(amount.error());
        return result;
    }
    result.in_dish = true;
    cookbook::DishIngredient& ingredient = reading.draft.dish.ingredients.emplace_back();
    ingredient.ingredient = id;
    ingredient.amount = amount->first;
    ingredient.written = std::move(amount->second);
    ingredient.role = proposed_role(id, catalogue);
    ingredient.preparation = line->preparation;
    return result;
}

/// Steps of a text, a HowToStep, a HowToSection (its name before its first step) or a list of these.
void read_steps(const json& value, int level, std::vector<std::string>& steps) {
    if (level > most_levels_looked_at) return;
    if (value.is_string()) {
        std::string_view rest = value.get_ref<const std::string&>();
        while (!rest.empty()) {
            const auto end = rest.find('\n');
            if (std::string step = tidy(rest.substr(0, end)); !step.empty()) steps.push_back(std::move(step));
            rest = end == std::string_view::npos ? std::string_view{} : rest.substr(end + 1);
        }
    } else if (value.is_array()) {
        for (const json& child : value) read_steps(child, level + 1, steps);
    } else if (value.is_object()) {
        if (!value.contains("itemListElement")) {
            const std::string text = text_of(value, "text");
            if (std::string step = text.empty() ? text_of(value, "name") : text; !step.empty())
                steps.push_back(std::move(step));
            return;
        }
        const std::size_t before = steps.size();
        read_steps(value["itemListElement"], level + 1, steps);
        const std::string name = text_of(value, "name");
        if (!name.empty() && steps.size() > before && is_a(value, "HowToSection"))
            steps[before] = fmt::format("{}: {}", name, steps[before]);
    }
}

RecipeDraft read_recipe(const json& recipe, const kitchen::Knowledge& knowledge, const catalogue::NameIndex& names,
                        measure::MeasureSet set) {
    Reading reading{recipe, knowledge, names, set, {}};
    reading.draft.dish.name = text_of(recipe, "name");
    if (reading.draft.dish.name.empty()) reading.note("name", "nothing is said", "the name of the dish");
    read_yield(reading);
    read_times(reading);
    for (const char* key : {"recipeIngredient", "ingredients"}) {
        if (!reading.draft.lines.empty()) break;
        for (const json* value : listed(recipe, key)) reading.draft.lines.push_back(read_line(*value, reading));
    }
    if (reading.draft.lines.empty())
        reading.note("recipeIngredient", "nothing is said", "the ingredients, a line each");
    if (recipe.contains("recipeInstructions")) read_steps(recipe["recipeInstructions"], 0, reading.draft.dish.method);
    if (reading.draft.dish.method.empty()) reading.note("recipeInstructions", "nothing is said", "how it is made");
    return std::move(reading.draft);
}

catalogue::NameIndex index_of(const Catalogue& catalogue) {
    catalogue::NameIndex names;
    for (std::uint32_t i = 0; i < catalogue.ingredients().size(); ++i) {
        const catalogue::Ingredient& thing = catalogue.ingredients()[i];
        names.add(i, 0, thing.name);
        names.add(i, 0, thing.id);
        for (const std::string& other : thing.also) names.add(i, 0, other);
    }
    names.finish();
    return names;
}

std::string written_line(const cookbook::DishIngredient& line, const Catalogue& catalogue) {
    std::string text = fmt::format("{} {}", line.written, catalogue[line.ingredient].name);
    if (!line.preparation.empty()) text += fmt::format(", {}", line.preparation);
    if (line.optional) text += " (optional)";
    return text;
}

}  // namespace

Role proposed_role(IngredientId id, const Catalogue& catalogue) {
    struct Rule {
        std::string_view family;
        Role role;
    };
    static constexpr std::array<Rule, 35> rules{{
        {"meat", Role::main},
        {"seafood", Role::main},
        {"pulses", Role::main},
        {"tofu-and-tempeh", Role::main},
        {"leftovers", Role::main},
        {"starches", Role::starch},
        {"potatoes", Role::starch},
        {"pastry", Role::starch},
        {"all-eggs", Role::binder},
        {"starch-thickeners", Role::binder},
        {"gelling", Role::binder},
        {"dairy", Role::sauce},
        {"plant-milks", Role::sauce},
        {"coconut-milks", Role::sauce},
        {"made-liquids", Role::sauce},
        {"made-sauces", Role::sauce},
        {"cooking-wines", Role::sauce},
        {"tomato-products", Role::sauce},
        {"seasonings", Role::seasoning},
        {"herbs", Role::seasoning},
        {"spices", Role::seasoning},
        {"fresh-aromatics", Role::seasoning},
        {"dried-aromatics", Role::seasoning},
        {"salts", Role::seasoning},
        {"condiments", Role::seasoning},
        {"acids", Role::seasoning},
        {"fruit-juice", Role::seasoning},
        {"fats", Role::seasoning},
        {"sweeteners", Role::seasoning},
        {"chocolate", Role::seasoning},
        {"leavening", Role::seasoning},
        {"cheese", Role::topping},
        {"nuts", Role::topping},
        {"peanut-foods", Role::topping},
        {"seeds", Role::topping},
    }};
    for (const catalogue::FamilyId family : catalogue.ancestors(id)) {
        const auto found =
            std::find_if(rules.begin(), rules.end(), [&](const Rule& r) { return r.family == catalogue[family].id; });
        if (found != rules.end()) return found->role;
    }
    return Role::body;
}

basics::Result<std::vector<RecipeDraft>> read_recipes(const json& document, const kitchen::Knowledge& knowledge,
                                                      measure::MeasureSet set) {
    std::vector<const json*> recipes;
    find_recipes(document, 0, recipes);
    if (recipes.empty()) {
        return basics::problem(
            "/", "no recipe",
            "an object whose \"@type\" is \"Recipe\" (schema.org), alone, in an array or under \"@graph\"");
    }
    const catalogue::NameIndex names = index_of(knowledge.catalogue);
    std::vector<RecipeDraft> drafts;
    for (const json* recipe : recipes) {
        RecipeDraft draft = read_recipe(*recipe, knowledge, names, set);
        draft.dish.id = free_id(draft.dish.name, drafts, knowledge.cookbook);
        drafts.push_back(std::move(draft));
    }
    return drafts;
}

json write_recipe(const cookbook::Dish& dish, const Catalogue& catalogue) {
    json recipe{{"@context", "https://schema.org"}, {"@type", "Recipe"}, {"identifier", dish.id}, {"name", dish.name}};
    recipe["recipeYield"] = fmt::format("{} serving{}", dish.serves, dish.serves == 1 ? "" : "s");
    recipe["totalTime"] = detail::write_duration(dish.minutes);
    recipe["prepTime"] = detail::write_duration(std::min(dish.hands_on, dish.minutes));
    recipe["cookTime"] = detail::write_duration(std::max(dish.minutes - dish.hands_on, 0));
    json categories = json::array();
    if (dish.dinner) categories.push_back("dinner");
    if (dish.lunch) categories.push_back("lunch");
    recipe["recipeCategory"] = std::move(categories);
    recipe["keywords"] = fmt::format("{}", fmt::join(dish.kinds, ", "));
    recipe["recipeIngredient"] = json::array();
    for (const auto& line : dish.ingredients) recipe["recipeIngredient"].push_back(written_line(line, catalogue));
    recipe["recipeInstructions"] = json::array();
    for (const std::string& step : dish.method) {
        recipe["recipeInstructions"].push_back(json::object({{"@type", "HowToStep"}, {"text", step}}));
    }
    return recipe;
}

}  // namespace samebase::exchange
