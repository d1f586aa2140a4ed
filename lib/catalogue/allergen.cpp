#include "catalogue/allergen.hpp"

namespace samebase::catalogue {

namespace {

constexpr std::array<std::string_view, allergen_count> names{
    "gluten", "wheat",    "crustacean", "egg",    "fish",     "milk",      "mollusc", "peanut",
    "sesame", "soy",      "lupin",      "celery", "mustard",  "sulphites", "almond",  "brazil-nut",
    "cashew", "hazelnut", "macadamia",  "pecan",  "pine-nut", "pistachio", "walnut"};

}  // namespace

std::string_view name(Allergen allergen) {
    return names[static_cast<std::size_t>(allergen)];
}

std::optional<Allergen> read_allergen(std::string_view text) {
    for (std::size_t i = 0; i < names.size(); ++i) {
        if (names[i] == text) return static_cast<Allergen>(i);
    }
    return std::nullopt;
}

std::vector<Allergen> AllergenSet::members() const {
    std::vector<Allergen> found;
    for (std::size_t i = 0; i < allergen_count; ++i) {
        if (has(static_cast<Allergen>(i))) found.push_back(static_cast<Allergen>(i));
    }
    return found;
}

std::string in_words(AllergenSet set) {
    std::string words;
    for (const Allergen allergen : set.members()) words.append(words.empty() ? "" : ", ").append(name(allergen));
    return words;
}

}  // namespace samebase::catalogue
