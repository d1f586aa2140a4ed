#include "kitchen/shelf.hpp"

#include <algorithm>
#include <array>

namespace samebase::kitchen {

namespace {

/// Shelves with the outermost families that stand there.
struct Shelf {
    std::string_view name;
    std::array<std::string_view, 5> families;
};
constexpr std::array<Shelf, 9> shelves{
    {{"vegetables", {"vegetables"}},
     {"fruit", {"fruit"}},
     {"meat", {"meat"}},
     {"fish", {"seafood"}},
     {"dairy and eggs", {"dairy", "all-eggs", "fats", "plant-milks", "tofu-and-tempeh"}},
     {"frozen", {"frozen-savouries", "frozen-desserts", "garlic-breads"}},
     {"bread", {"bread", "breads"}},
     {"tins and dry goods", {}},
     {not_food, {}}}};
constexpr std::size_t vegetables = 0;
constexpr std::size_t bread = 6;
constexpr std::size_t everything_else = 7;

bool stands_there(std::size_t shelf, const std::string& family) {
    const auto& families = shelves[shelf].families;
    return std::find(families.begin(), families.end(), family) != families.end();
}

std::size_t position(const catalogue::Catalogue& catalogue, catalogue::IngredientId id) {
    const auto ancestors = catalogue.ancestors(id);
    for (const catalogue::FamilyId family : ancestors) {
        if (stands_there(bread, catalogue[family].id)) return bread;
    }
    // What comes in tins stands with the tins, whatever is in them.
    const auto& thing = catalogue[id];
    const auto& pack = thing.pack;
    if (pack && (pack->name == "tin" || pack->name == "can" || pack->name == "jar")) return everything_else;
    for (std::size_t i = 0; i < everything_else; ++i) {
        if (stands_there(i, catalogue[ancestors.back()].id)) return i;
    }
    // Fresh herbs lie with the vegetables.
    const auto& crisper = thing.keeps[static_cast<std::size_t>(catalogue::Keep::crisper)];
    return crisper.said == catalogue::Keeping::Said::time ? vegetables : everything_else;
}

}  // namespace

const std::vector<std::string>& shelf_names() {
    static const std::vector<std::string> names = [] {
        std::vector<std::string> list;
        for (const Shelf& shelf : shelves) list.emplace_back(shelf.name);
        return list;
    }();
    return names;
}

const std::string& shelf(const catalogue::Catalogue& catalogue, catalogue::IngredientId id) {
    return shelf_names()[position(catalogue, id)];
}

std::vector<std::string> walk(const Household& household) {
    std::vector<std::string> order = household.shelves;
    for (const std::string& name : shelf_names()) {
        if (std::find(order.begin(), order.end(), name) == order.end()) order.push_back(name);
    }
    return order;
}

}  // namespace samebase::kitchen
