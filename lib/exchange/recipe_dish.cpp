#include "exchange/recipe_dish.hpp"

#include <fmt/format.h>
#include <utf8proc.h>

#include <algorithm>
#include <cstdlib>
#include <memory>
#include <set>
#include <string_view>

#include "exchange/detail/documents.hpp"
#include "exchange/detail/recipe_ingredient.hpp"
#include "exchange/detail/recipe_role.hpp"
#include "measure/line.hpp"

namespace samebase::exchange {

namespace {

using catalogue::IngredientId;
using Json = nlohmann::ordered_json;
using Lines = std::vector<std::string>;

/// What the dishes of all recipes are made with; what the cook said that picked a line is ticked off.
struct Bench {
    const RecipeWords& words;
    bool only;  ///< one recipe: what the cook says goes before what it says
    const kitchen::Knowledge& knowledge;
    detail::Names names;
    detail::Roles roles;
    std::set<std::string> used;  ///< "--as olive oil"
    basics::Problems problems;
    std::vector<LineQuestion> questions;  ///< of the lines that are not clear
};

/// A recipe's line taken apart; a heading and what cannot be read have no `read`.
struct Taken {
    const RecipeLine* line;
    std::optional<measure::WrittenLine> read;
    basics::Problems unread;
    std::string text;  ///< in lower case, as are its words and its name
    Lines words;
    std::string name;
};

/// In quotes that a shell takes: with an apostrophe inside, double ones.
std::string in_quotes(std::string_view text) {
    const char quote = text.find('\'') == std::string_view::npos ? '\'' : '"';
    return fmt::format("{}{}{}", quote, text, quote);
}

/// At most 60 bytes of a line for a message, cut between characters.
std::string short_line(std::string_view text) {
    constexpr std::size_t longest = 60;
    if (text.size() <= longest) return in_quotes(text);
    std::size_t end = longest;
    while (end > 0 && (static_cast<unsigned char>(text[end]) & 0xC0U) == 0x80U) --end;
    return in_quotes(fmt::format("{}...", text.substr(0, end)));
}

bool is_heading(const std::string& text) {
    return text.ends_with(':');
}

/// Letters and figures of ASCII in lower case, accents left out, everything else a hyphen; an apostrophe nothing.
std::string identifier_of(const std::string& name) {
    constexpr auto options = static_cast<utf8proc_option_t>(UTF8PROC_DECOMPOSE | UTF8PROC_COMPAT | UTF8PROC_STRIPMARK |
                                                            UTF8PROC_CASEFOLD | UTF8PROC_STABLE);
    utf8proc_uint8_t* folded = nullptr;
    const auto* bytes = reinterpret_cast<const utf8proc_uint8_t*>(name.data());  // NOLINT: utf8proc reads bytes
    const auto size = utf8proc_map(bytes, static_cast<utf8proc_ssize_t>(name.size()), &folded, options);
    const std::unique_ptr<utf8proc_uint8_t, decltype(&std::free)> owner(folded, &std::free);
    std::string id;
    for (utf8proc_ssize_t i = 0; i < size; ++i) {
        const char c = static_cast<char>(folded[i]);
        if ((c >= 'a' && c <= 'z') || (c >= '0' && c <= '9')) {
            id += c;
        } else if (c != '\'' && static_cast<unsigned char>(c) < 0x80U && !id.empty() && id.back() != '-') {
            id += '-';
        }
    }
    while (!id.empty() && id.back() == '-') id.pop_back();
    return id;
}

/// The lines that words pick, as recipe_dish.hpp says; several only where they have the very name.
std::vector<std::size_t> picked(const std::string& words, const std::vector<Taken>& lines) {
    const std::string wanted = detail::lower(words);
    std::vector<std::size_t> exact;
    std::vector<std::size_t> within;
    const Lines wanted_words = detail::words_of(words);
    for (std::size_t i = 0; i < lines.size(); ++i) {
        if (lines[i].text == wanted || (!wanted.empty() && lines[i].name == wanted)) exact.push_back(i);
        const Lines& have = lines[i].words;
        if (std::search(have.begin(), have.end(), wanted_words.begin(), wanted_words.end()) != have.end()) {
            within.push_back(i);
        }
    }
    if (!exact.empty()) return exact;
    return within.size() == 1 && !wanted_words.empty() ? within : std::vector<std::size_t>{};
}

/// What the cook said of each line: [line], nullptr where nothing. The last of several counts.
std::vector<const std::string*> said_of(const RecipeWords::Pairs& pairs, const char* option,
                                        const std::vector<Taken>& lines, Bench& bench) {
    std::vector<const std::string*> result(lines.size(), nullptr);
    for (const auto& [words, what] : pairs) {
        for (const std::size_t i : picked(words, lines)) {
            result[i] = &what;
            bench.used.insert(fmt::format("{} {}", option, words));
        }
    }
    return result;
}

std::string nearest_of(const detail::Called& called) {
    std::string result;
    for (const std::string& name : called.nearest) {
        result += fmt::format("{}{}", result.empty() ? "" : ", ", in_quotes(name));
    }
    return result;
}

/// The name with what stands before it: "garlic-infused oil".
std::string whole_name(const measure::WrittenLine& line) {
    return line.before.empty() ? line.name : fmt::format("{} {}", line.before, line.name);
}

/// Words that pick this line and no other: what stands before its name with the name, the name, or all of it.
std::string handle(const Taken& line, const std::vector<Taken>& lines) {
    const auto& read = *line.read;
    for (const std::string& words : {whole_name(read), read.name}) {
        const auto found = picked(words, lines);
        if (found.size() == 1 && lines[found.front()].line == line.line) return words;
    }
    return line.line->text;
}

/// What to say where a line's ingredient is not clear.
basics::Problem unclear(const Taken& line, const detail::Called& called, const std::vector<Taken>& lines) {
    const std::string whole = whole_name(*line.read);
    const std::string first = called.nearest.empty() ? "INGREDIENT" : called.nearest.front();
    const std::string words = handle(line, lines);
    return {line.line->place,
            called.several
                ? fmt::format("{}: {} may be {}", short_line(line.line->text), in_quotes(whole), nearest_of(called))
                : fmt::format("{}: nothing is called {}", short_line(line.line->text), in_quotes(whole)),
            "the name of an ingredient",
            fmt::format("{}say --as {}, or --skip {}",
                        called.several ? "" : fmt::format("the nearest: {}; ", nearest_of(called)),
                        in_quotes(fmt::format("{}={}", words, first)), in_quotes(words))};
}

bool says_optional(const measure::WrittenLine& line) {
    const Lines words = detail::words_of(line.preparation);
    return std::find(words.begin(), words.end(), "optional") != words.end();
}

/// Everything that the cook said of one line, and the others.
struct SaidOf {
    const std::vector<Taken>& lines;
    const std::string* as;
    const std::string* role;
    const std::string* amount;
};

std::optional<detail::Called> called_as(const Taken& line, const measure::WrittenLine& read, const SaidOf& said,
                                        Bench& bench) {
    if (said.as == nullptr) {
        detail::Called called = bench.names.of(read);
        if (called.ingredient) return called;
        const std::string wanted = detail::lower(whole_name(read));
        if (const auto before = bench.words.remembered.find(wanted); before != bench.words.remembered.end()) {
            detail::Called again = bench.names.called(before->second);
            again.said_before = true;
            if (again.ingredient) return again;
        }
        bench.problems.push_back(unclear(line, called, said.lines));
        const LineQuestion question{line.line->text, handle(line, said.lines), wanted, called.nearest};
        const auto& asked = bench.questions;
        if (std::find(asked.begin(), asked.end(), question) == asked.end()) bench.questions.push_back(question);
        return std::nullopt;
    }
    detail::Called called = bench.names.called(*said.as);
    if (called.ingredient) return called;
    bench.problems.push_back(
        {fmt::format("{}, --as", line.line->place),
         called.several ? fmt::format("{} may be {}", in_quotes(*said.as), nearest_of(called))
                        : fmt::format("nothing is called {}", in_quotes(*said.as)),
         "the name of an ingredient",
         called.several ? std::nullopt : std::optional(fmt::format("the nearest: {}", nearest_of(called)))});
    return std::nullopt;
}

std::optional<detail::DishAmount> amount_as(const Taken& line, const measure::WrittenLine& read, IngredientId id,
                                            const SaidOf& said, Bench& bench) {
    const auto& catalogue = bench.knowledge.catalogue;
    const auto set = bench.words.measures;
    auto amount = said.amount != nullptr ? detail::amount_said(*said.amount, id, catalogue, set)
                                         : detail::amount_in(read, id, catalogue, set);
    if (amount) return *amount;
    for (const auto& problem : amount.error()) {
        if (said.amount != nullptr) {
            bench.problems.push_back(
                {fmt::format("{}, --amount", line.line->place), problem.found, problem.expected, problem.hint});
            continue;
        }
        bench.problems.push_back(
            {line.line->place,
             fmt::format("{}: for {} {}", short_line(line.line->text), in_quotes(catalogue[id].name), problem.found),
             problem.expected,
             fmt::format("say --amount {}", in_quotes(fmt::format("{}=100 g", handle(line, said.lines))))});
    }
    return std::nullopt;
}

void take_line(const Taken& line, const measure::WrittenLine& read, const SaidOf& said, Bench& bench,
               std::vector<DishLine>& lines) {
    const auto called = called_as(line, read, said, bench);
    const auto amount = called ? amount_as(line, read, *called->ingredient, said, bench) : std::nullopt;
    const auto role = said.role == nullptr ? std::nullopt : catalogue::read_role(*said.role);
    if (said.role != nullptr && !role) {
        const auto known = detail::names_of<catalogue::Role>(catalogue::role_count);
        bench.problems.push_back({fmt::format("{}, --role", line.line->place), in_quotes(*said.role),
                                  fmt::format("one of: {}", fmt::join(known, ", ")),
                                  detail::did_you_mean(*said.role, known)});
    }
    if (!called || !amount) return;
    const auto guess = bench.roles.of(*called->ingredient);
    DishLine result{line.line->place,
                    line.line->text,
                    called->ingredient,
                    {},
                    amount->amount,
                    amount->written,
                    role.value_or(guess.role),
                    role ? "asked" : guess.from,
                    read.preparation,
                    says_optional(read),
                    {}};
    if (said.as != nullptr) result.notes.push_back(fmt::format("as asked for {}", in_quotes(whole_name(read))));
    if (called->said_before) result.notes.push_back(fmt::format("as said for {}", in_quotes(whole_name(read))));
    if (!called->slip_of.empty()) result.notes.push_back(fmt::format("a slip of {}", in_quotes(called->slip_of)));
    if (!amount->note.empty()) result.notes.push_back(amount->note);
    lines.push_back(std::move(result));
}

DishLine left_out(const Taken& line, const char* why) {
    DishLine result;
    result.place = line.line->place;
    result.written = line.line->text;
    result.left_out = why;
    return result;
}

std::vector<Taken> taken_apart(const Recipe& recipe, measure::MeasureSet set) {
    std::vector<Taken> taken;
    for (const RecipeLine& line : recipe.lines) {
        Taken one{&line, std::nullopt, {}, detail::lower(line.text), detail::words_of(line.text), {}};
        if (!is_heading(line.text)) {
            auto read = measure::read_line(line.text, set);
            if (read) {
                one.name = detail::lower(read->name);
                one.read = std::move(*read);
            } else {
                one.unread = read.error();
            }
        }
        taken.push_back(std::move(one));
    }
    return taken;
}

std::vector<DishLine> lines_of(const Recipe& recipe, Bench& bench) {
    const std::vector<Taken> taken = taken_apart(recipe, bench.words.measures);
    RecipeWords::Pairs skips;
    for (const std::string& words : bench.words.skip) skips.emplace_back(words, "");
    const auto skip = said_of(skips, "--skip", taken, bench);
    const auto as = said_of(bench.words.as, "--as", taken, bench);
    const auto roles = said_of(bench.words.roles, "--role", taken, bench);
    const auto amounts = said_of(bench.words.amounts, "--amount", taken, bench);
    std::vector<DishLine> lines;
    for (std::size_t i = 0; i < taken.size(); ++i) {
        const Taken& line = taken[i];
        if (skip[i] != nullptr) {
            lines.push_back(left_out(line, "as asked"));
        } else if (!line.read && line.unread.empty()) {
            lines.push_back(left_out(line, "a heading"));
        } else if (!line.read) {
            for (const auto& problem : line.unread) {
                bench.problems.push_back({line.line->place, problem.found, problem.expected,
                                          "say --skip and some words that only this line has"});
            }
        } else if (as[i] == nullptr && detail::is_water(line.read->name)) {
            lines.push_back(left_out(line, "water"));
        } else {
            const SaidOf said{taken, as[i], roles[i], amounts[i]};
            const auto both = as[i] == nullptr ? bench.names.two_things(*line.read, bench.words.measures)
                                               : std::vector<measure::WrittenLine>{};
            if (both.empty()) take_line(line, *line.read, said, bench, lines);
            for (const auto& one : both) take_line(line, one, said, bench, lines);
        }
    }
    return lines;
}

std::vector<std::string> kinds_of(const Recipe& recipe, const std::string& name, std::optional<cookbook::BaseId> base,
                                  Bench& bench) {
    std::vector<std::string> kinds;
    const std::string known = fmt::format("one of: {}", fmt::join(detail::dish_kinds(), ", "));
    for (const std::string& said : bench.words.kinds) {
        if (!detail::read_dish_kind(said)) {
            bench.problems.push_back(
                {"--kind", in_quotes(said), known, detail::did_you_mean(said, detail::dish_kinds())});
        } else if (std::find(kinds.begin(), kinds.end(), said) == kinds.end()) {
            kinds.push_back(said);
        }
    }
    if (!bench.words.kinds.empty()) return kinds;
    std::vector<std::string> texts = recipe.about;
    texts.push_back(name);
    kinds = detail::kinds_named(texts);
    if (kinds.empty() && base) kinds = detail::kind_on(*base, bench.knowledge.cookbook);
    if (kinds.empty()) {
        bench.problems.push_back({recipe.place, "no kind of dish in its name, category or keywords", known,
                                  "say --kind KIND; a standing night asks for one"});
    }
    return kinds;
}

std::optional<cookbook::BaseId> base_of(const Recipe& recipe, const std::vector<DishLine>& lines, bool whole,
                                        Bench& bench) {
    if (!bench.words.base) return std::nullopt;
    const auto& cookbook = bench.knowledge.cookbook;
    const auto& catalogue = bench.knowledge.catalogue;
    const auto base = cookbook.base(*bench.words.base);
    if (!base) {
        std::vector<std::string> known;
        for (const auto& b : cookbook.bases()) known.push_back(b.id);
        bench.problems.push_back({"--base", in_quotes(*bench.words.base), "the identifier of a base",
                                  detail::did_you_mean(*bench.words.base, known)});
        return std::nullopt;
    }
    for (const auto& need : cookbook[*base].needs) {
        const auto meets = [&](const DishLine& line) {
            return line.ingredient && catalogue.is(*line.ingredient, need.of);
        };
        if (!whole || std::any_of(lines.begin(), lines.end(), meets)) continue;
        bench.problems.push_back({recipe.place, fmt::format("nothing in it is {}", in_quotes(catalogue.name(need.of))),
                                  fmt::format("what the base {} needs", *bench.words.base), "another --base, or none"});
    }
    return base;
}

/// What uneaten serves of the dish become, as the cook said: a leftover of the catalogue.
std::optional<IngredientId> leaves_of(Bench& bench) {
    if (!bench.words.leaves) return std::nullopt;
    const detail::Called called = bench.names.called(*bench.words.leaves);
    const auto& catalogue = bench.knowledge.catalogue;
    if (called.ingredient && catalogue[*called.ingredient].kind == catalogue::Kind::cooked) return called.ingredient;
    bench.problems.push_back(
        {"--leaves",
         called.ingredient ? fmt::format("{} is no leftover", in_quotes(*bench.words.leaves))
                           : fmt::format("nothing is called {}", in_quotes(*bench.words.leaves)),
         "the name of a leftover, as in 'leftover curry'",
         called.nearest.empty() ? std::nullopt : std::optional(fmt::format("the nearest: {}", nearest_of(called)))});
    return std::nullopt;
}

Json line_json(const DishLine& line, const catalogue::Catalogue& catalogue) {
    Json json = {
        {"of", catalogue[*line.ingredient].id}, {"amount", line.as_written}, {"role", std::string(name(line.role))}};
    if (!line.preparation.empty()) json["prep"] = line.preparation;
    if (line.optional) json["optional"] = true;
    return json;
}

/// Takes over a part's problems where the cook has not said it.
void report(const basics::Problems& problems, bool said, Bench& bench) {
    if (!said) bench.problems.insert(bench.problems.end(), problems.begin(), problems.end());
}

RecipeDish dish_of(const Recipe& recipe, Bench& bench) {
    const RecipeWords& words = bench.words;
    const std::size_t before = bench.problems.size();
    report(recipe.of_name, words.name.has_value(), bench);
    report(recipe.of_rest, false, bench);
    report(recipe.of_yield, words.serves.has_value(), bench);
    report(recipe.of_times, words.minutes.has_value(), bench);
    RecipeDish dish{recipe.place, {}, words.name.value_or(recipe.name), {}, {}};
    dish.id = identifier_of(dish.name);
    if (dish.id.empty() && !dish.name.empty()) {
        bench.problems.push_back(
            {recipe.place + ", name", in_quotes(dish.name), "a name with a letter or a figure", "say --name NAME"});
    }
    const std::size_t before_lines = bench.problems.size();
    dish.lines = lines_of(recipe, bench);
    const bool whole = bench.problems.size() == before_lines;
    const auto is_in = [](const DishLine& line) { return line.ingredient.has_value(); };
    if (whole && !recipe.lines.empty() && std::none_of(dish.lines.begin(), dish.lines.end(), is_in)) {
        bench.problems.push_back({recipe.place, "no line is left", "at least one ingredient", std::nullopt});
    }
    const auto base = base_of(recipe, dish.lines, whole, bench);
    const auto kinds = kinds_of(recipe, dish.name, base, bench);
    const auto leaves = leaves_of(bench);
    if (bench.problems.size() > before) return dish;
    detail::need_a_main(dish.lines, bench.knowledge.catalogue);
    const auto settled = [&](const std::optional<int>& said, const std::optional<int>& told) {
        return said && (bench.only || !told) ? *said : *told;
    };
    const int minutes = settled(words.minutes, recipe.minutes);
    Json meals = Json::array();
    if (words.dinner) meals.push_back("dinner");
    if (words.lunch) meals.push_back("lunch");
    dish.document = {{"id", dish.id},
                     {"name", dish.name},
                     {"base", base ? Json(*words.base) : Json(nullptr)},
                     {"meals", std::move(meals)},
                     {"kinds", kinds},
                     {"serves", settled(words.serves, recipe.serves)},
                     {"minutes", minutes},
                     {"hands_on", std::min({recipe.hands_on.value_or(minutes), minutes, 1440})},
                     {"leaves", leaves ? Json(bench.knowledge.catalogue[*leaves].id) : Json(nullptr)},
                     {"freezes", words.freezes}};
    if (words.measures != measure::MeasureSet::australian_metric) {
        dish.document["measures"] = std::string(name(words.measures));
    }
    dish.document["ingredients"] = Json::array();
    for (const DishLine& line : dish.lines) {
        if (line.ingredient) dish.document["ingredients"].push_back(line_json(line, bench.knowledge.catalogue));
    }
    dish.document["method"] = recipe.method;
    return dish;
}

/// What the cook said that picked no line of any recipe.
void report_unused(const RecipeWords::Pairs& pairs, const char* option, Bench& bench) {
    for (const auto& [words, what] : pairs) {
        if (bench.used.contains(fmt::format("{} {}", option, words))) continue;
        bench.problems.push_back({option, fmt::format("{} picks no line", in_quotes(words)),
                                  "the ingredient of a line, or words that stand in one line only", std::nullopt});
    }
}

}  // namespace

std::vector<LineQuestion> unclear_lines(std::span<const Recipe> recipes, const RecipeWords& words,
                                        const kitchen::Knowledge& knowledge) {
    Bench bench{
        words, recipes.size() == 1, knowledge, detail::Names(knowledge.catalogue), detail::Roles(knowledge), {}, {},
        {}};
    for (const Recipe& recipe : recipes) static_cast<void>(lines_of(recipe, bench));
    return std::move(bench.questions);
}

std::optional<IngredientId> ingredient_called(const std::string& name, const kitchen::Knowledge& knowledge) {
    const auto called = detail::Names(knowledge.catalogue).called(name);
    return called.slip_of.empty() ? called.ingredient : std::nullopt;
}

basics::Result<std::vector<RecipeDish>> dishes_of(std::span<const Recipe> recipes, const RecipeWords& words,
                                                  const kitchen::Knowledge& knowledge) {
    Bench bench{
        words, recipes.size() == 1, knowledge, detail::Names(knowledge.catalogue), detail::Roles(knowledge), {}, {},
        {}};
    std::vector<RecipeDish> dishes;
    for (const Recipe& recipe : recipes) dishes.push_back(dish_of(recipe, bench));
    RecipeWords::Pairs skips;
    for (const std::string& skip : words.skip) skips.emplace_back(skip, "");
    report_unused(skips, "--skip", bench);
    report_unused(words.as, "--as", bench);
    report_unused(words.roles, "--role", bench);
    report_unused(words.amounts, "--amount", bench);
    if (bench.problems.empty()) return dishes;
    basics::Problems once;  // what two recipes have alike is said once
    for (auto& problem : bench.problems) {
        if (std::find(once.begin(), once.end(), problem) == once.end()) once.push_back(std::move(problem));
    }
    return tl::make_unexpected(std::move(once));
}

}  // namespace samebase::exchange
