// How the families are made. An ingredient has a code of the National Nutrient Database for Standard Reference (SR),
// whose first two of five digits say its food group, and a description in parts, the general first: "CHEESE,CHEDDAR".
// So a family for each first two parts stands in one for the first part, and that in one for the group. Codes above
// group 22 say no group (43274 is a cream cheese, 23580 beef): such an ingredient goes to the group in which its first
// part is most often. Where that part is nowhere else, a food code of eight digits goes by its own first two digits,
// and any other code to a group for the rest.
#include "outside/survey_foods.hpp"

#include <algorithm>
#include <cctype>
#include <cmath>
#include <cstdlib>
#include <map>
#include <random>
#include <sstream>
#include <string>
#include <utility>

namespace samebase::tests {

namespace {

using catalogue::FamilyId;
using catalogue::IngredientId;

constexpr int last_group = 22;
constexpr std::uint32_t split_seed = 2003;

std::vector<std::string> split(const std::string& text, char at) {
    std::vector<std::string> parts;
    std::istringstream in(text);
    for (std::string part; std::getline(in, part, at);) parts.push_back(part);
    return parts;
}

/// "Potatoes (white) " to "POTATO": what stands before a remark, in capitals, without the s of a plural; short forms
/// spelt out.
std::string plain(std::string part) {
    for (char& c : part) c = static_cast<char>(std::toupper(static_cast<unsigned char>(c)));
    part.erase(0, part.find_first_not_of(' '));
    for (const char* remark : {"(", "; ", " OR ", "  "}) {
        const auto at = part.find(remark);
        if (at != std::string::npos && at > 0) part.erase(at);
    }
    part.erase(part.find_last_not_of(' ') + 1);
    if (part.size() > 3 && part.back() == 'S' && part[part.size() - 2] != 'S') part.pop_back();
    static const std::map<std::string, std::string> short_forms{
        {"CHICK", "CHICKEN"}, {"BF", "BEEF"}, {"POTATOE", "POTATO"}, {"TOMATOE", "TOMATO"}};
    const auto found = short_forms.find(part);
    return found == short_forms.end() ? part : found->second;
}

struct Described {
    std::string head;  ///< first part
    std::string kind;  ///< first two parts
    std::string group;
};

/// The SR group of a food code, by the survey's own grouping: milk 11 is dairy 01, beef 21 is beef 13, and so on.
std::string group_of_food_code(const std::string& code) {
    static const std::map<std::string, std::string> groups{
        {"11", "01"}, {"12", "01"}, {"13", "19"}, {"14", "01"}, {"21", "13"}, {"22", "10"}, {"24", "05"}, {"25", "07"},
        {"26", "15"}, {"27", "22"}, {"28", "06"}, {"41", "16"}, {"51", "18"}, {"52", "18"}, {"53", "18"}, {"54", "18"},
        {"55", "18"}, {"56", "20"}, {"58", "22"}, {"61", "09"}, {"63", "09"}, {"64", "09"}, {"72", "11"}, {"74", "11"},
        {"75", "11"}, {"81", "04"}, {"82", "04"}, {"83", "04"}, {"91", "19"}, {"92", "14"}, {"93", "14"}, {"94", "14"}};
    const auto found = groups.find(code.substr(0, 2));
    return found == groups.end() ? "other" : found->second;
}

void find_groups(std::map<std::string, Described>& ingredients) {
    const auto says_group = [](const std::string& code) {
        return code.size() == 5 && std::atoi(code.substr(0, 2).c_str()) <= last_group;  // NOLINT(cert-err34-c): digits
    };
    std::map<std::string, std::map<std::string, int>> groups_of_head;
    for (auto& [code, described] : ingredients) {
        if (!says_group(code)) continue;
        described.group = code.substr(0, 2);
        ++groups_of_head[described.head][described.group];
    }
    for (auto& [code, described] : ingredients) {
        if (!described.group.empty()) continue;
        const auto found = groups_of_head.find(described.head);
        if (found != groups_of_head.end()) {
            described.group =
                std::max_element(found->second.begin(), found->second.end(), [](const auto& a, const auto& b) {
                    return a.second < b.second;
                })->first;
        } else {
            described.group = code.size() > 5 ? group_of_food_code(code) : "other";
        }
    }
}

catalogue::Catalogue make_catalogue(const std::map<std::string, Described>& described, const SurveyFits& fits) {
    struct Stated {
        std::string parent;
        double siblings = 0;
    };
    std::map<std::string, Stated> stated;
    const auto head_of = [](const Described& d) { return "group " + d.group + ' ' + d.head; };
    const auto kind_of = [](const Described& d) { return "group " + d.group + ' ' + d.kind; };
    for (const auto& [code, d] : described) {
        stated["group " + d.group] = {"", fits.group};
        stated[head_of(d)] = {"group " + d.group, fits.head};
        stated[kind_of(d)] = {head_of(d), fits.kind};
    }
    const auto id_of = [&](const std::string& id) {
        return FamilyId{static_cast<std::uint32_t>(std::distance(stated.begin(), stated.find(id)))};
    };
    std::vector<catalogue::Family> families;
    for (const auto& [id, family] : stated) {
        families.emplace_back();
        families.back().id = families.back().name = id;
        families.back().siblings = family.siblings;
        if (!family.parent.empty()) families.back().parent = id_of(family.parent);
    }
    std::vector<catalogue::Ingredient> ingredients;
    for (const auto& [code, d] : described) {
        ingredients.emplace_back();
        ingredients.back().id = ingredients.back().name = code;
        ingredients.back().family = id_of(kind_of(d));
    }
    return {std::move(families), std::move(ingredients)};
}

}  // namespace

std::filesystem::path survey_path() {
    const char* named = std::getenv("SAMEBASE_OUTSIDE_DATA");
    const auto folder = named != nullptr ? std::filesystem::path(named)
                                         : std::filesystem::path(SAMEBASE_SOURCE_DIR).parent_path() / "shared" / "data";
    return folder / "dish_compositions" / "dishes.tsv";
}

Survey read_survey(std::istream& file, const SurveyFits& fits) {
    std::map<std::string, Described> described;
    std::map<std::string, std::map<std::string, double>> grams;  // by food, then by ingredient
    std::string line;
    std::getline(file, line);  // the header
    while (std::getline(file, line)) {
        const auto cells = split(line, '\t');
        for (const std::string& part : split(cells.at(2), '|')) {
            const auto colon = part.find(':');
            const auto second = part.find(':', colon + 1);
            std::string code = part.substr(0, colon);
            if (code.size() < 5) code.insert(0, 5 - code.size(), '0');
            auto words = split(part.substr(second + 1), ',');
            words.resize(std::max<std::size_t>(words.size(), 2));
            const std::string head = plain(words[0]);
            described.emplace(code, Described{head, head + ',' + plain(words[1]), {}});
            grams[cells[0]][code] += std::stod(part.substr(colon + 1, second - colon - 1));
        }
    }
    find_groups(described);
    Survey survey{make_catalogue(described, fits), {}};
    std::vector<cookbook::Dish> foods;
    for (const auto& [code, parts] : grams) {
        foods.emplace_back();
        foods.back().id = code;
        for (const auto& [ingredient, weight] : parts) {
            foods.back().ingredients.emplace_back();
            foods.back().ingredients.back().ingredient = *survey.catalogue.ingredient(ingredient);
            foods.back().ingredients.back().amount =
                measure::Mass{std::max<std::int64_t>(1, std::llround(weight * 1000))};
        }
    }
    survey.foods = cookbook::Cookbook({}, std::move(foods));
    return survey;
}

std::vector<bool> second_half_of(const cookbook::Cookbook& foods) {
    std::map<std::string_view, std::vector<std::size_t>> groups;
    for (std::size_t i = 0; i < foods.dishes().size(); ++i) groups[food_group(foods.dishes()[i])].push_back(i);
    std::mt19937 random(split_seed);  // NOLINT(cert-msc51-cpp): the same halves every time
    std::vector<bool> in_second(foods.dishes().size());
    bool second = false;
    for (auto& [group, members] : groups) {
        for (std::size_t left = members.size(); left > 1; --left)
            std::swap(members[left - 1], members[random() % left]);
        for (const std::size_t member : members) {
            in_second[member] = second;
            second = !second;
        }
    }
    return in_second;
}

}  // namespace samebase::tests
