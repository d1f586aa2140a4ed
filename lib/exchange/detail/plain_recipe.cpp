#include "exchange/detail/plain_recipe.hpp"

#include <fmt/format.h>

#include <algorithm>
#include <array>
#include <charconv>
#include <nlohmann/json.hpp>
#include <vector>

#include "exchange/detail/page.hpp"
#include "exchange/detail/recipe_ingredient.hpp"
#include "exchange/detail/recipe_parts.hpp"

namespace samebase::exchange::detail {

namespace {

using Lines = std::vector<std::string>;

constexpr std::size_t longest_title = 200;

std::string trimmed(std::string_view text) {
    constexpr std::string_view blank = " \t\r\f\v";
    const auto first = text.find_first_not_of(blank);
    if (first == std::string_view::npos) return "";
    return std::string(text.substr(first, text.find_last_not_of(blank) - first + 1));
}

Lines lines_of(std::string_view text) {
    Lines lines;
    while (!text.empty()) {
        const auto end = std::min(text.find('\n'), text.size());
        lines.push_back(trimmed(text.substr(0, end)));
        text.remove_prefix(std::min(end + 1, text.size()));
    }
    return lines;
}

/// Without "- ", "* ", "• " before it.
std::string without_bullet(const std::string& line) {
    for (const std::string_view bullet : {"- ", "* ", "\u2022", "\u2013 "}) {
        if (line.starts_with(bullet)) return trimmed(std::string_view(line).substr(bullet.size()));
    }
    return line;
}

/// Where the text behind "1." or "2)" begins; 0 where there is no such number.
std::size_t behind_number(const std::string& line) {
    const auto digits = line.find_first_not_of("0123456789");
    constexpr std::size_t most_digits = 3;
    if (digits == 0 || digits == std::string::npos || digits > most_digits) return 0;
    return line[digits] == '.' || line[digits] == ')' ? digits + 1 : 0;
}

enum class Heading : std::uint8_t { none, ingredients, method };

Heading heading(const std::string& line) {
    std::string word = lower(line);
    while (!word.empty() && (word.back() == ':' || word.back() == '#' || word.back() == '*')) word.pop_back();
    const auto first = std::min(word.find_first_not_of("#* "), word.size());
    word.erase(0, first);
    if (word == "ingredients") return Heading::ingredients;
    constexpr std::array<std::string_view, 5> methods{"method", "directions", "instructions", "steps", "preparation"};
    return std::find(methods.begin(), methods.end(), word) != methods.end() ? Heading::method : Heading::none;
}

/// "1 hour 10 minutes", "45 min": the minutes of a line that says a time; 0 where it says none.
int minutes_in(const std::string& line) {
    int minutes = 0;
    const Lines words = words_of(line);
    for (std::size_t i = 0; i + 1 < words.size(); ++i) {
        int number = 0;
        const char* end = words[i].data() + words[i].size();
        const auto read = std::from_chars(words[i].data(), end, number);
        constexpr int most_hours = 48;
        if (read.ec != std::errc{} || read.ptr != end || number < 0 || number > most_hours * 60) continue;
        if (words[i + 1].starts_with("hour") || words[i + 1] == "h") minutes += std::min(number, most_hours) * 60;
        if (words[i + 1].starts_with("min")) minutes += number;
    }
    return minutes;
}

/// A short line that says serves or a time and nothing else: it has no amount of anything to eat.
bool says_yield(const std::string& line) {
    const std::string small = lower(line);
    constexpr std::array<std::string_view, 9> starts{"serves", "servings", "makes", "yield", "time",
                                                     "takes",  "total",    "prep",  "cook"};
    if (std::any_of(starts.begin(), starts.end(), [&](std::string_view start) { return small.starts_with(start); }))
        return true;
    return minutes_in(line) > 0 || small.ends_with("servings") || small.ends_with("serves") ||
           small.ends_with("people");
}

struct Parts {
    std::string title;
    Lines about;
    Lines ingredients;
    std::vector<Lines> method;  ///< paragraphs
};

Parts parts_of(const Lines& lines) {
    Parts parts;
    Heading now = Heading::none;
    bool blank = false;  // since the last line
    for (const std::string& line : lines) {
        if (line.empty()) {
            blank = true;
            continue;
        }
        const Heading said = heading(line);
        if (parts.title.empty()) {
            parts.title = line;
        } else if (said != Heading::none) {
            now = said;
        } else if (now != Heading::method && parts.ingredients.empty() && says_yield(line)) {
            parts.about.push_back(line);
        } else if (now == Heading::method || (now == Heading::none && blank && !parts.ingredients.empty())) {
            if (blank || parts.method.empty()) parts.method.emplace_back();
            parts.method.back().push_back(line);
            now = Heading::method;
        } else {
            parts.ingredients.push_back(without_bullet(line));
        }
        blank = false;
    }
    return parts;
}

Lines steps_of(const std::vector<Lines>& paragraphs) {
    const bool numbered = std::any_of(paragraphs.begin(), paragraphs.end(), [](const Lines& lines) {
        return std::any_of(lines.begin(), lines.end(), [](const auto& line) { return behind_number(line) > 0; });
    });
    Lines steps;
    for (const Lines& paragraph : paragraphs) {
        bool first = true;
        for (const std::string& line : paragraph) {
            const std::size_t behind = behind_number(line);
            const bool begins = numbered ? behind > 0 || steps.empty() : first || paragraphs.size() == 1;
            const std::string text = without_bullet(trimmed(std::string_view(line).substr(behind)));
            if (begins) {
                steps.push_back(text);
            } else {
                steps.back() += " " + text;
            }
            first = false;
        }
    }
    return steps;
}

}  // namespace

std::optional<Recipe> read_plain_recipe(std::string_view text, const std::string& name) {
    if (text.find('\0') != std::string_view::npos || text.starts_with('<')) return std::nullopt;
    Parts parts = parts_of(lines_of(text));
    const Lines steps = steps_of(parts.method);
    if (parts.ingredients.empty() || steps.empty()) return std::nullopt;
    while (parts.title.starts_with('#')) parts.title.erase(0, 1);
    parts.title = plain_text(trimmed(parts.title));
    Recipe recipe;
    recipe.place = name;
    if (parts.title.empty() || parts.title.size() > longest_title) {
        recipe.of_name.push_back({name + ", line 1", "no title",
                                  fmt::format("a title of at most {} bytes", longest_title), "say --name NAME"});
    }
    recipe.name = parts.title;
    nlohmann::json yield = nlohmann::json::object();
    for (const std::string& line : parts.about) {
        if (serves_in(line)) yield["recipeYield"] = line;
        if (const int minutes = minutes_in(line); minutes > 0) yield["totalTime"] = fmt::format("PT{}M", minutes);
    }
    read_yield(yield, recipe);
    read_times(yield, recipe);
    read_ingredients(parts.ingredients, recipe);
    read_method(steps, recipe);
    return recipe;
}

}  // namespace samebase::exchange::detail
