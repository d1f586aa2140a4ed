#include "exchange/recipe.hpp"

#include <fmt/format.h>

#include <algorithm>
#include <array>
#include <iterator>
#include <nlohmann/json.hpp>
#include <string_view>
#include <utility>

#include "exchange/detail/page.hpp"
#include "exchange/detail/plain_recipe.hpp"
#include "exchange/detail/recipe_parts.hpp"
#include "exchange/file.hpp"

namespace samebase::exchange {

namespace {

using nlohmann::json;

constexpr std::size_t most_broken_blocks = 10;

/// "Recipe", or with the address of schema.org before it.
bool names_recipe(const json& type) {
    if (!type.is_string()) return false;
    std::string_view text = type.get_ref<const std::string&>();
    for (const std::string_view head : {"https://schema.org/", "http://schema.org/", "schema:"}) {
        if (text.starts_with(head)) text.remove_prefix(head.size());
    }
    return text == "Recipe";
}

bool is_recipe(const json& value) {
    const auto type = value.find("@type");
    if (type == value.end()) return false;
    return names_recipe(*type) || (type->is_array() && std::any_of(type->begin(), type->end(), names_recipe));
}

/// Every recipe in the document. A document nests at most `most_levels` deep.
void gather(const json& value, std::vector<const json*>& found) {
    if (value.is_array()) {
        for (const json& one : value) gather(one, found);
    } else if (value.is_object() && is_recipe(value)) {
        found.push_back(&value);
    } else if (value.is_object()) {
        for (const char* key : {"@graph", "mainEntity", "itemListElement", "item"}) {
            if (const auto inner = value.find(key); inner != value.end()) gather(*inner, found);
        }
    }
}

const json* first_of(const json& value, std::initializer_list<const char*> keys) {
    for (const char* key : keys) {
        if (const auto found = value.find(key); found != value.end() && !found->is_null()) return &*found;
    }
    return nullptr;
}

void read_name(const json& value, Recipe& recipe) {
    const json* name = first_of(value, {"name"});
    const std::string where = recipe.place + ", name";
    const std::string hint = "say --name NAME";
    if (name == nullptr) {
        recipe.of_name.push_back({recipe.place, "no name", "a name", hint});
        return;
    }
    const auto text = detail::written_text(*name);
    const std::string plain = text ? detail::plain_text(*text) : "";
    if (!text || plain.empty() || plain.size() > longest_name) {
        recipe.of_name.push_back(
            {where, detail::shown(*name), fmt::format("text of at most {} bytes", longest_name), hint});
        return;
    }
    recipe.name = plain;
}

/// Category and keywords: texts, or texts with commas, or lists of these. Only a help: what is wrong in it is passed
/// over.
void read_about(const json& value, Recipe& recipe) {
    for (const char* key : {"recipeCategory", "keywords"}) {
        const json* at = first_of(value, {key});
        if (at == nullptr) continue;
        const json list = at->is_array() ? *at : json::array({*at});
        for (const json& one : list) {
            const auto text = detail::written_text(one);
            if (text && text->size() <= longest_step) recipe.about.push_back(detail::plain_text(*text));
        }
    }
}

Recipe read_recipe(const json& value, std::string place) {
    Recipe recipe;
    recipe.place = std::move(place);
    read_name(value, recipe);
    if (const json* lines = first_of(value, {"recipeIngredient", "ingredients"}); lines != nullptr) {
        detail::read_ingredients(*lines, recipe);
    } else {
        recipe.of_rest.push_back({recipe.place, "no recipeIngredient", "the lines of the ingredients", std::nullopt});
    }
    detail::read_yield(value, recipe);
    detail::read_times(value, recipe);
    read_about(value, recipe);
    if (const json* method = first_of(value, {"recipeInstructions"}); method != nullptr) {
        detail::read_method(*method, recipe);
    } else {
        recipe.of_rest.push_back({recipe.place, "no recipeInstructions", "at least one step", std::nullopt});
    }
    return recipe;
}

/// The problems of a block with the lines and columns of the page.
basics::Problems broken(const detail::Block& block, const std::string& name) {
    const std::string in_place =
        fmt::format("{}{}{}", std::string(block.line - 1, '\n'), std::string(block.column - 1, ' '), block.text);
    const auto again = parse(in_place, name);
    return again ? basics::Problems{} : again.error();
}

/// The documents in the text: the text itself, or the blocks of a page that are JSON; of the others the problems.
std::vector<json> documents_in_text(const std::string& text, const std::string& name, basics::Problems& problems) {
    constexpr std::string_view mark = "\xEF\xBB\xBF";
    const std::string_view all = std::string_view(text).substr(text.starts_with(mark) ? mark.size() : 0);
    const auto first = all.find_first_not_of(" \t\r\n");
    std::vector<json> documents;
    if (first != std::string_view::npos && (all[first] == '{' || all[first] == '[')) {
        auto document = parse(std::string(all), name);
        if (document) {
            documents.push_back(std::move(*document));
        } else {
            problems = document.error();
        }
        return documents;
    }
    const auto blocks = detail::linked_data_blocks(all);
    if (blocks.empty()) {
        problems.push_back({name, "neither JSON nor a page with linked data",
                            "a JSON document, or a page with <script type=\"application/ld+json\">", std::nullopt});
    }
    for (const detail::Block& block : blocks) {
        auto document = parse(std::string(block.text), name);
        if (document) {
            documents.push_back(std::move(*document));
        } else if (problems.size() < most_broken_blocks) {
            const auto more = broken(block, name);
            problems.insert(problems.end(), more.begin(), more.end());
        }
    }
    return documents;
}

}  // namespace

basics::Result<Recipes> read_recipes(const std::string& text, const std::string& name) {
    basics::Problems problems;
    constexpr std::string_view mark = "\xEF\xBB\xBF";
    const std::string_view all = std::string_view(text).substr(text.starts_with(mark) ? mark.size() : 0);
    const auto first = all.find_first_not_of(" \t\r\n");
    const bool structured = first != std::string_view::npos && (all[first] == '{' || all[first] == '[');
    if (!structured && detail::linked_data_blocks(all).empty()) {
        if (auto recipe = detail::read_plain_recipe(all, name)) return Recipes{{std::move(*recipe)}, {}};
    }
    const auto documents = documents_in_text(text, name, problems);
    std::vector<const json*> found;
    for (const json& document : documents) gather(document, found);
    if (found.empty()) {
        if (problems.empty()) {
            problems.push_back({name, "no recipe", "something with \"@type\": \"Recipe\" (schema.org)", std::nullopt});
        }
        return tl::make_unexpected(std::move(problems));
    }
    Recipes result{{}, std::move(problems)};
    for (const json* value : found) {
        result.recipes.push_back(read_recipe(*value, fmt::format("{}, recipe {}", name, result.recipes.size() + 1)));
    }
    return result;
}

}  // namespace samebase::exchange
