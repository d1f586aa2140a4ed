#include "exchange/detail/recipe_parts.hpp"

#include <fmt/format.h>

#include <algorithm>
#include <array>
#include <cmath>
#include <string_view>

#include "exchange/detail/duration.hpp"
#include "exchange/detail/element.hpp"
#include "exchange/detail/page.hpp"

namespace samebase::exchange::detail {

namespace {

using nlohmann::json;

constexpr std::string_view by_hand_minutes = "or say --minutes N";

/// Codes of UN/CEFACT Recommendation 20 that recipes use, as a cook writes them. From memory, but for G21, which the
/// example of schema.org has for a cup.
struct Code {
    std::string_view code;
    std::string_view unit;
};
constexpr std::array codes{Code{"GRM", "g"},  Code{"KGM", "kg"},  Code{"MGM", "mg"},   Code{"ONZ", "oz"},
                           Code{"LBR", "lb"}, Code{"MLT", "mL"},  Code{"CLT", "cL"},   Code{"DLT", "dL"},
                           Code{"LTR", "L"},  Code{"G21", "cup"}, Code{"G24", "tbsp"}, Code{"G25", "tsp"},
                           Code{"C62", ""},   Code{"H87", ""},    Code{"EA", ""}};

const json* member(const json& object, const char* key) {
    if (!object.is_object()) return nullptr;
    const auto found = object.find(key);
    return found == object.end() || found->is_null() ? nullptr : &*found;
}

/// A text or a number as text.
std::optional<std::string> text_or_number(const json& value) {
    if (value.is_number_integer()) return fmt::format("{}", value.get<std::int64_t>());
    if (value.is_number()) return fmt::format("{}", value.get<double>());
    return written_text(value);
}

/// "3/4 cup sugar" of {"value": "3/4", "unitCode": "G21", "name": "sugar"}; nothing, and a reason where it has one of
/// its own, where it says less.
std::optional<std::string> line_of(const json& value, std::string& wrong) {
    if (!value.is_object()) return std::nullopt;
    const json* name = member(value, "name");
    const auto named = name == nullptr ? std::nullopt : written_text(*name);
    if (!named) {
        wrong = "an object without a name";
        return std::nullopt;
    }
    std::string unit;
    if (const json* text = member(value, "unitText"); text != nullptr) {
        unit = written_text(*text).value_or("");
    } else if (const json* code = member(value, "unitCode"); code != nullptr) {
        const std::string written = written_text(*code).value_or("");
        const auto* known = std::find_if(codes.begin(), codes.end(), [&](const Code& c) { return c.code == written; });
        if (known == codes.end()) {
            wrong = fmt::format("the unit code {}", shown(*code));
            return std::nullopt;
        }
        unit = known->unit;
    }
    const json* amount = member(value, "value");
    const std::string much = amount == nullptr ? "" : text_or_number(*amount).value_or("");
    return fmt::format("{} {} {}", much, unit, *named);
}

bool is_digit(char c) {
    return c >= '0' && c <= '9';
}

/// Words and numbers in lower case, and "-" for any dash.
std::vector<std::string> tokens(const std::string& text) {
    std::vector<std::string> result;
    bool word = false;
    for (std::size_t at = 0; at < text.size(); ++at) {
        const char c = text[at] >= 'A' && text[at] <= 'Z' ? static_cast<char>(text[at] - 'A' + 'a') : text[at];
        const bool dash = c == '-' || text.compare(at, 3, "\u2013") == 0 || text.compare(at, 3, "\u2014") == 0;
        const bool inside = (c >= 'a' && c <= 'z') || is_digit(c) || c == '.' || c == '/';
        if (dash) {
            result.emplace_back("-");
            at += c == '-' ? 0 : 2;
        } else if (inside) {
            const bool joins = word && is_digit(result.back().front()) == (is_digit(c) || c == '.' || c == '/');
            if (!joins) result.emplace_back();
            result.back() += c;
        }
        word = inside;
    }
    return result;
}

std::optional<int> whole_number(const std::string& token) {
    if (token.empty() || token.size() > 4 || !std::all_of(token.begin(), token.end(), is_digit)) return std::nullopt;
    const int number = std::stoi(token);
    return number >= 1 && number <= 1000 ? std::optional(number) : std::nullopt;
}

bool counts_eaters(const std::string& word) {
    constexpr std::array<std::string_view, 9> words{"serve",    "serves", "serving", "servings", "portion",
                                                    "portions", "person", "persons", "people"};
    return std::find(words.begin(), words.end(), word) != words.end();
}

/// The forms of one yield, each as text.
void gather(const json& value, std::vector<std::string>& texts, bool& wrong, int depth = 0) {
    if (value.is_array() && depth == 0) {
        for (const json& one : value) gather(one, texts, wrong, 1);
    } else if (const auto text = text_or_number(value)) {
        texts.push_back(plain_text(*text));
    } else if (const json* number = member(value, "value"); number != nullptr && text_or_number(*number)) {
        const json* unit = member(value, "unitText");
        const std::string unit_text = unit == nullptr ? "" : written_text(*unit).value_or("");
        texts.push_back(plain_text(fmt::format("{} {}", *text_or_number(*number), unit_text)));
    } else {
        wrong = true;
    }
}

/// A time in minutes; nothing where it is absent or wrong.
std::optional<int> time_of(const json& recipe_value, const char* key, Recipe& recipe) {
    const json* value = member(recipe_value, key);
    if (value == nullptr) return std::nullopt;
    const auto wrong = [&](std::string expected, const std::string& hint) {
        recipe.of_times.push_back(
            {fmt::format("{}, {}", recipe.place, key), shown(*value), std::move(expected),
             hint.empty() ? std::string(by_hand_minutes) : fmt::format("{}, {}", hint, by_hand_minutes)});
        return std::nullopt;
    };
    const auto text = written_text(*value);
    if (!text) return wrong("a duration by ISO 8601, such as PT45M or PT1H30M", "");
    const std::string plain = plain_text(*text);
    if (plain.empty()) return std::nullopt;
    const auto minutes = read_duration(plain);
    if (!minutes) return wrong(minutes.error().expected, minutes.error().hint);
    return *minutes;
}

void add_step(std::string text, std::string& section, Recipe& recipe) {
    if (text.empty()) return;
    if (!section.empty()) text = fmt::format("{}{} {}", section, section.back() == ':' ? "" : ":", text);
    section.clear();
    recipe.method.push_back(std::move(text));
}

void steps_in(const json& value, std::string& section, Recipe& recipe) {
    if (recipe.method.size() > most_recipe_lines) return;
    if (const auto text = written_text(value)) {
        for (std::string& line : plain_lines(*text)) add_step(std::move(line), section, recipe);
    } else if (value.is_array()) {
        for (const json& one : value) steps_in(one, section, recipe);
    } else if (const json* list = member(value, "itemListElement"); list != nullptr) {
        const json* name = member(value, "name");
        std::string inner = name == nullptr ? "" : plain_text(written_text(*name).value_or(""));
        steps_in(*list, inner.empty() ? section : inner, recipe);
    } else if (const json* item = member(value, "item"); item != nullptr) {
        steps_in(*item, section, recipe);
    } else if (const json* text_at = member(value, "text"); text_at != nullptr) {
        steps_in(*text_at, section, recipe);
    } else if (const json* name = member(value, "name"); name != nullptr) {
        steps_in(*name, section, recipe);
    } else {
        recipe.of_rest.push_back({recipe.place + ", recipeInstructions", shown(value),
                                  "text, a HowToStep with text, or a HowToSection", std::nullopt});
    }
}

}  // namespace

std::optional<std::string> written_text(const json& value) {
    if (value.is_string()) return value.get<std::string>();
    if (const json* inner = member(value, "@value"); inner != nullptr && inner->is_string()) {
        return inner->get<std::string>();
    }
    return std::nullopt;
}

std::string shown(const json& value) {
    basics::Problems none;
    const std::string file;
    return Element(value, file, none).shown();
}

void read_ingredients(const json& value, Recipe& recipe) {
    std::size_t number = 0;
    const auto add = [&](std::string text) {
        ++number;
        if (!text.empty()) recipe.lines.push_back({fmt::format("{}, line {}", recipe.place, number), std::move(text)});
    };
    const auto wrong = [&](const std::string& where, std::string found) {
        recipe.of_rest.push_back({where, std::move(found), "text, or a PropertyValue with a name", std::nullopt});
    };
    if (const auto text = written_text(value)) {
        for (std::string& line : plain_lines(*text)) add(std::move(line));
    } else if (!value.is_array()) {
        wrong(recipe.place + ", recipeIngredient", shown(value));
    } else {
        for (const json& one : value) {
            if (number == most_recipe_lines) break;
            std::string reason = shown(one);
            const auto line = written_text(one) ? written_text(one) : line_of(one, reason);
            if (line) {
                add(plain_text(*line));
            } else {
                ++number;
                wrong(fmt::format("{}, line {}", recipe.place, number), reason);
            }
        }
    }
    const std::size_t all = value.is_array() ? value.size() : recipe.lines.size();
    if (all > most_recipe_lines) {
        recipe.of_rest.push_back({recipe.place + ", recipeIngredient", fmt::format("{} lines", all),
                                  fmt::format("at most {}", most_recipe_lines), std::nullopt});
    } else if (recipe.lines.empty() && recipe.of_rest.empty()) {
        recipe.of_rest.push_back(
            {recipe.place, "no ingredients", "at least one line under recipeIngredient", std::nullopt});
    }
}

std::optional<int> bare_serves(const std::string& yield) {
    return whole_number(yield.ends_with(".0") ? yield.substr(0, yield.size() - 2) : yield);
}

std::optional<int> serves_in(const std::string& yield) {
    if (yield.size() > 1000) return std::nullopt;
    if (const auto bare = bare_serves(yield)) return bare;
    const auto words = tokens(yield);
    const auto number = [&](std::size_t at) { return at < words.size() ? whole_number(words[at]) : std::nullopt; };
    for (std::size_t i = 0; i < words.size(); ++i) {
        if (!counts_eaters(words[i])) continue;
        if (i > 0 && number(i - 1)) {
            const bool range = i > 2 && (words[i - 2] == "-" || words[i - 2] == "to" || words[i - 2] == "or");
            return range && number(i - 3) ? number(i - 3) : number(i - 1);
        }
        if (number(i + 1)) return number(i + 1);
    }
    return std::nullopt;
}

void read_yield(const json& recipe_value, Recipe& recipe) {
    const json* value = member(recipe_value, "recipeYield");
    if (value == nullptr) value = member(recipe_value, "yield");
    const std::string where = recipe.place + ", recipeYield";
    const std::string hint = "say --serves N";
    if (value == nullptr) {
        recipe.of_yield.push_back({recipe.place, "no recipeYield", "how many it serves", hint});
        return;
    }
    std::vector<std::string> texts;
    bool wrong = false;
    gather(*value, texts, wrong);
    if (wrong) {
        recipe.of_yield.push_back({where, shown(*value), "a number, or text such as '4 servings'", hint});
        return;
    }
    bool other = false;  // a number of something else, "12 muffins": then a number alone need not be of serves
    for (const std::string& text : texts) {
        recipe.yield += fmt::format("{}{}", recipe.yield.empty() ? "" : ", ", text);
        const auto told = serves_in(text);
        if (told && !bare_serves(text) && !recipe.serves) recipe.serves = told;
        other = other || (!told && !text.empty());
    }
    for (const std::string& text : texts) {
        if (!recipe.serves && !other) recipe.serves = bare_serves(text);
    }
    if (recipe.serves) return;
    recipe.of_yield.push_back(
        {where, shown(recipe.yield), "a number from 1 to 1000 of serves, servings, portions or people", hint});
}

void read_times(const json& recipe_value, Recipe& recipe) {
    const auto total = time_of(recipe_value, "totalTime", recipe);
    const auto prep = time_of(recipe_value, "prepTime", recipe);
    const auto cook = time_of(recipe_value, "cookTime", recipe);
    const int parts = prep.value_or(0) + cook.value_or(0);
    const int longest = std::max(prep.value_or(0), cook.value_or(0));
    const int minutes = total.value_or(0) > 0 ? *total : parts;
    if (!recipe.of_times.empty()) return;
    if (minutes == 0) {
        recipe.of_times.push_back(
            {recipe.place, "no totalTime, prepTime or cookTime", "how long it takes", "say --minutes N"});
    } else if (minutes < longest || minutes > most_minutes) {
        recipe.of_times.push_back({recipe.place + (total.value_or(0) > 0 ? ", totalTime" : ""),
                                   fmt::format("{} minutes in all, {} of them at one go", minutes, longest),
                                   fmt::format("at least that, and at most {}", most_minutes),
                                   std::string(by_hand_minutes)});
    } else {
        recipe.minutes = minutes;
        if (prep.value_or(0) > 0) recipe.hands_on = std::min(*prep, 1440);
    }
}

void read_method(const json& value, Recipe& recipe) {
    std::string section;
    const std::size_t before = recipe.of_rest.size();
    steps_in(value, section, recipe);
    const std::string where = recipe.place + ", recipeInstructions";
    if (recipe.method.size() > most_recipe_lines) {
        recipe.of_rest.push_back({where, fmt::format("more than {} steps", most_recipe_lines), "fewer", std::nullopt});
    }
    for (std::size_t i = 0; i < recipe.method.size(); ++i) {
        if (recipe.method[i].size() <= longest_step) continue;
        recipe.of_rest.push_back({where, fmt::format("step {} is {} bytes long", i + 1, recipe.method[i].size()),
                                  fmt::format("at most {} bytes", longest_step), std::nullopt});
    }
    if (recipe.method.empty() && recipe.of_rest.size() == before) {
        recipe.of_rest.push_back({where, "no step", "at least one", std::nullopt});
    }
}

}  // namespace samebase::exchange::detail
