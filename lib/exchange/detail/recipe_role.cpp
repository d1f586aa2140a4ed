#include "exchange/detail/recipe_role.hpp"

#include <algorithm>
#include <numeric>

#include "exchange/detail/documents.hpp"
#include "exchange/detail/recipe_ingredient.hpp"

namespace samebase::exchange::detail {

namespace {

using catalogue::IngredientId;
using catalogue::Role;

/// The word in the singular, roughly: both sides are treated alike.
std::string one_of(std::string word) {
    if (word.size() > 4 && word.ends_with("ies")) return word.substr(0, word.size() - 3) + "y";
    if (word.size() > 3 && word.ends_with('s') && !word.ends_with("ss")) word.pop_back();
    return word;
}

/// " meat loaf with roast potato ": words in the singular with a space on each side.
std::string spaced_words(const std::string& text) {
    std::string plain = text;
    std::replace(plain.begin(), plain.end(), '-', ' ');
    std::string result = " ";
    for (const std::string& word : words_of(plain)) {
        result += one_of(word);
        result += ' ';
    }
    return result;
}

template <class Counts>
std::optional<Role> most(const Counts& counts) {
    const auto top = std::max_element(counts.begin(), counts.end());
    if (*top == 0) return std::nullopt;
    return static_cast<Role>(top - counts.begin());
}

}  // namespace

Roles::Roles(const kitchen::Knowledge& knowledge)
    : catalogue_(&knowledge.catalogue), counts_(knowledge.catalogue.ingredients().size(), Counts{}) {
    for (const auto& dish : knowledge.cookbook.dishes()) {
        for (const auto& line : dish.ingredients) {
            ++counts_[line.ingredient.index()][static_cast<std::size_t>(line.role)];
        }
    }
}

Roles::Guess Roles::of(IngredientId id) const {
    if (const auto role = most(counts_[id.index()])) return {*role, "most dishes with it"};
    for (const auto family : catalogue_->ancestors(id)) {
        Counts sum{};
        for (const auto member : catalogue_->members(family)) {
            for (std::size_t r = 0; r < sum.size(); ++r) sum[r] += counts_[member.index()][r];
        }
        if (const auto role = most(sum)) return {*role, "most dishes with its family"};
    }
    return {Role::body, "no dish has the like"};
}

void need_a_main(std::vector<DishLine>& lines, const catalogue::Catalogue& catalogue) {
    const auto is_main = [](const DishLine& line) { return line.ingredient && line.role == Role::main; };
    if (std::any_of(lines.begin(), lines.end(), is_main)) return;
    const auto weight = [&](const DishLine& line) {
        const auto mass = catalogue::weight(line.amount, catalogue[*line.ingredient]);
        return mass ? mass->value : 0;
    };
    DishLine* heaviest = nullptr;
    for (const bool carrying : {true, false}) {
        for (DishLine& line : lines) {
            const bool carries = line.role == Role::body || line.role == Role::starch || line.role == Role::binder;
            if (!line.ingredient || line.role_from == "asked" || carries != carrying) continue;
            if (heaviest == nullptr || weight(line) > weight(*heaviest)) heaviest = &line;
        }
        if (heaviest != nullptr) break;
    }
    if (heaviest == nullptr) return;
    heaviest->role = Role::main;
    heaviest->role_from = "nothing else is main, and it is the heaviest";
}

std::vector<std::string> kinds_named(const std::vector<std::string>& texts) {
    std::vector<std::string> result;
    std::string all;
    for (const std::string& text : texts) all += spaced_words(text);
    for (const std::string& kind : dish_kinds()) {
        if (all.find(spaced_words(kind)) != std::string::npos) result.push_back(kind);
    }
    return result;
}

std::vector<std::string> kind_on(cookbook::BaseId base, const cookbook::Cookbook& cookbook) {
    const auto& kinds = dish_kinds();
    std::vector<int> counts(kinds.size(), 0);
    for (const auto dish : cookbook.on(base)) {
        for (const std::string& kind : cookbook[dish].kinds) {
            ++counts[static_cast<std::size_t>(std::find(kinds.begin(), kinds.end(), kind) - kinds.begin())];
        }
    }
    const auto top = std::max_element(counts.begin(), counts.end());
    if (*top == 0) return {};
    return {kinds[static_cast<std::size_t>(top - counts.begin())]};
}

}  // namespace samebase::exchange::detail
