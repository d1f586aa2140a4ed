#include "show/detail/packs_words.hpp"

#include <fmt/format.h>

#include "show/words.hpp"

namespace samebase::show::detail {

namespace {

std::string many(const std::string& pack, int count) {
    if (count == 1) return pack;
    if (pack.ends_with("ch") || pack.ends_with('x') || pack.ends_with('s')) return pack + "es";
    if (pack.ends_with("loaf")) return pack.substr(0, pack.size() - 1) + "ves";
    return pack.find(' ') == std::string::npos ? pack + "s" : pack;
}

}  // namespace

std::string packs_words(catalogue::IngredientId id, int packs, const measure::Amount& amount,
                        const kitchen::Kitchen& kitchen) {
    const auto& thing = kitchen.catalogue()[id];
    if (packs == 0 || !thing.pack) return thing.name;
    if (thing.pack->name == "loose") return fmt::format("{} {}", thing.name, show::amount(amount, thing));
    if (thing.pack->name == "each") return fmt::format("{} {}", thing.name, packs);
    return fmt::format("{} {} {}", thing.name, packs, many(thing.pack->name, packs));
}

std::vector<std::string> by_hand_words(const std::vector<kitchen::Listed>& rows) {
    std::vector<std::string> words;
    for (const kitchen::Listed& row : rows)
        words.push_back(row.count > 0 ? fmt::format("{} {}", row.count, row.words) : row.words);
    return words;
}

}  // namespace samebase::show::detail
