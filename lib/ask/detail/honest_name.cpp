#include "ask/detail/honest_name.hpp"

#include <fmt/format.h>

#include <algorithm>
#include <cctype>
#include <set>
#include <sstream>

namespace samebase::ask::detail {

namespace {

using catalogue::IngredientId;
using flow::StandInUse;

/// In small letters, without what stands after it, in the singular: "Tomatoes," is "tomato".
std::string folded(std::string word) {
    std::erase_if(word, [](unsigned char c) { return c < 0x80 && std::isalnum(c) == 0 && c != '-'; });
    std::transform(word.begin(), word.end(), word.begin(),
                   [](unsigned char c) { return static_cast<char>(std::tolower(c)); });
    const auto ends = [&](std::string_view end) { return word.size() > end.size() + 2 && word.ends_with(end); };
    if (ends("ies")) return word.substr(0, word.size() - 3) + "y";
    if (ends("oes") || ends("shes") || ends("ches")) return word.substr(0, word.size() - 2);
    if (ends("s") && !ends("ss") && !ends("us")) return word.substr(0, word.size() - 1);
    return word;
}

std::vector<std::string> words_of(const std::string& text) {
    std::istringstream in(text);
    std::vector<std::string> words;
    for (std::string word; in >> word;) words.push_back(std::move(word));
    return words;
}

void add_words(const std::string& text, std::set<std::string>& words) {
    for (const std::string& word : words_of(text)) words.insert(folded(word));
}

/// Both with a space between, and a word that ends the one and begins the other only once: "spiced chicken" and
/// "chicken thigh" are "spiced chicken thigh".
std::string followed_by(std::string name, const std::string& next) {
    if (name.empty()) return next;
    const std::string first = next.substr(0, next.find(' '));
    const auto last = name.rfind(' ');
    const std::string end = last == std::string::npos ? name : name.substr(last + 1);
    if (end == first) return name + next.substr(first.size());
    return name + " " + next;
}

class Namer {
  public:
    Namer(const kitchen::Kitchen& kitchen, const cookbook::Dish& dish, std::span<const StandInUse> stand_ins)
        : kitchen_(kitchen), dish_(dish), stand_ins_(stand_ins) {
        for (const auto& line : dish.ingredients) {
            const bool replaced = std::any_of(stand_ins.begin(), stand_ins.end(),
                                              [&](const auto& use) { return use.replaced == line.ingredient; });
            if (!replaced) add_names(line.ingredient, still_said_);
        }
        for (const StandInUse& use : stand_ins) {
            for (const auto& part : use.use) add_names(part.first, still_said_);
        }
        // What sort of dish it is stays so, whatever is in it.
        for (const char* plain : {"with", "and", "of", "in", "on", "a", "the", "for", "or", "one"})
            still_said_.insert(plain);
        for (const std::string& kind : dish.kinds) still_said_.insert(folded(kind));
    }

    [[nodiscard]] std::string name() const {
        std::string name;
        const StandInUse* last = nullptr;
        bool accompanies = false;
        for (const std::string& word : words_of(dish_.name)) {
            accompanies = accompanies || word == "with";
            const StandInUse* lost = lost_by(folded(word), accompanies);
            const bool comma = word.ends_with(',');
            if (lost != nullptr && lost == last) {
                if (comma) name += ',';
                continue;
            }
            const std::string next = lost == nullptr ? word : what_stands_in(*lost) + (comma ? "," : "");
            name = followed_by(std::move(name), next);
            last = lost;
        }
        return name;
    }

  private:
    void add_names(IngredientId id, std::set<std::string>& words) const {
        const auto& thing = kitchen_.catalogue()[id];
        add_words(thing.name, words);
        for (const std::string& other : thing.also) add_words(other, words);
        for (const catalogue::FamilyId family : kitchen_.catalogue().ancestors(id))
            add_words(kitchen_.catalogue()[family].name, words);
    }

    /// The stand-in that takes that word from the dish; nothing where the word is still true.
    [[nodiscard]] const StandInUse* lost_by(const std::string& word, bool accompanies) const {
        if (still_said_.count(word) != 0) return nullptr;
        const auto found = std::find_if(stand_ins_.begin(), stand_ins_.end(), [&](const StandInUse& use) {
            if (use.role == catalogue::Role::seasoning && !accompanies) return false;
            std::set<std::string> words;
            add_words(kitchen_.catalogue()[use.replaced].name, words);
            return words.count(word) != 0;
        });
        return found == stand_ins_.end() ? nullptr : &*found;
    }

    [[nodiscard]] std::string what_stands_in(const StandInUse& use) const {
        std::vector<std::string> names;
        for (const auto& part : use.use) names.push_back(kitchen_.catalogue()[part.first].name);
        return fmt::to_string(fmt::join(names, " and "));
    }

    const kitchen::Kitchen& kitchen_;
    const cookbook::Dish& dish_;
    std::span<const StandInUse> stand_ins_;
    std::set<std::string> still_said_;
};

}  // namespace

std::string honest_name(const kitchen::Kitchen& kitchen, cookbook::DishId dish, std::span<const StandInUse> stand_ins) {
    const cookbook::Dish& called = kitchen.cookbook()[dish];
    return stand_ins.empty() ? called.name : Namer(kitchen, called, stand_ins).name();
}

}  // namespace samebase::ask::detail
