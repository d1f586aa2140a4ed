// Small worlds: a catalogue and its statements written as text, one thing a line, in any order.
//
//   family citrus in fruit siblings 0.8      a family; its parent and the fit of siblings may be left out
//   thing lemon in citrus with milk egg      an ingredient and the allergens that it contains; "with anything": not
//                                            known
//   thing bacon in meat cook 75              one that is cooked to 75 degrees
//   for lemon use lime x 1.2 fit 0.9         a stand-in, 1.2 used for 1; "x 1" may be left out
//   for lemon use lime fit 0.9 as sauce seasoning both ways said sharp longer 20
//                                            in those roles only, also the other way, with a note of one word, and 20
//                                            minutes more
//   for buttermilk use milk x 0.9 + lemon x 0.1 fit 0.8     a mixture
//   for lemon never orange as topping        forbidden in answers
//
// What is written wrongly throws, which fails the test.
#pragma once

#include <algorithm>
#include <cmath>
#include <map>
#include <optional>
#include <sstream>
#include <stdexcept>
#include <string>
#include <string_view>
#include <utility>
#include <vector>

#include "catalogue/allergen.hpp"
#include "catalogue/catalogue.hpp"
#include "graph/base_graph.hpp"
#include "graph/stand_in.hpp"

namespace samebase::tests {

inline void need(bool well_written) {
    if (!well_written) throw std::invalid_argument("a small world is written wrongly");
}

struct SmallWorld {
    catalogue::Catalogue catalogue;
    std::vector<graph::Statement> statements;

    [[nodiscard]] catalogue::IngredientId thing(std::string_view id) const {
        const auto found = catalogue.ingredient(id);
        need(found.has_value());
        return *found;
    }
    [[nodiscard]] graph::Node node(std::string_view id, catalogue::Role role = catalogue::Role::main) const {
        return {thing(id), role};
    }
    /// The graph points into this world, which must outlive it.
    [[nodiscard]] graph::BaseGraph graph(const graph::Parameters& parameters = {}) const {
        return {catalogue, statements, parameters};
    }
};

/// "lime 1.2 | milk 0.9 + lemon 0.1": what is proposed, best first, with ratios to three places at most.
inline std::string written(const std::vector<graph::StandIn>& stand_ins, const catalogue::Catalogue& catalogue) {
    std::ostringstream out;
    out.precision(3);
    const char* between = "";
    for (const graph::StandIn& stand_in : stand_ins) {
        out << between;
        between = " | ";
        const char* plus = "";
        for (const auto& [used, ratio] : stand_in.use) {
            out << plus << catalogue[used].id << ' ' << static_cast<double>(ratio) / 1e6;
            plus = " + ";
        }
    }
    return out.str();
}

class SmallWorldReader {
  public:
    [[nodiscard]] static SmallWorld read(const std::string& text) {
        SmallWorldReader reader;
        reader.lines(text);
        std::vector<catalogue::Family> families;
        std::vector<catalogue::Ingredient> things;
        for (const auto& [id, words] : reader.families_) families.push_back(reader.family(id, words));
        for (const auto& [id, words] : reader.things_) things.push_back(reader.thing(id, words));
        SmallWorld world{{std::move(families), std::move(things)}, {}};
        need(!world.catalogue.check().has_value());
        for (const Words& words : reader.said_) world.statements.push_back(statement(words, world.catalogue));
        return world;
    }

  private:
    using Words = std::vector<std::string>;

    void lines(const std::string& text) {
        std::istringstream in(text);
        for (std::string line; std::getline(in, line);) {
            std::istringstream cut(line);
            Words words;
            for (std::string word; cut >> word;) words.push_back(word);
            if (words.empty()) continue;
            need(words.size() > 1);
            if (words[0] == "family") {
                families_[words[1]] = words;
            } else if (words[0] == "thing") {
                things_[words[1]] = words;
            } else {
                need(words[0] == "for");
                said_.push_back(words);
            }
        }
    }

    /// The word behind another; empty where that is not there.
    static std::string behind(const Words& words, std::string_view key) {
        const auto found = std::find(words.begin(), words.end(), key);
        if (found == words.end()) return {};
        need(found + 1 != words.end());
        return *(found + 1);
    }

    /// The words between one word and the next of the others.
    static Words between(const Words& words, std::string_view key, const Words& ends) {
        auto at = std::find(words.begin(), words.end(), key);
        if (at == words.end()) return {};
        const auto stop = std::find_first_of(++at, words.end(), ends.begin(), ends.end());
        return {at, stop};
    }

    [[nodiscard]] catalogue::FamilyId family_id(const std::string& id) const {
        const auto found = families_.find(id);
        need(found != families_.end());
        return {static_cast<std::uint32_t>(std::distance(families_.begin(), found))};
    }

    [[nodiscard]] catalogue::Family family(const std::string& id, const Words& words) const {
        catalogue::Family family;
        family.id = family.name = id;
        if (const auto parent = behind(words, "in"); !parent.empty()) family.parent = family_id(parent);
        if (const auto fit = behind(words, "siblings"); !fit.empty()) family.siblings = std::stod(fit);
        return family;
    }

    [[nodiscard]] catalogue::Ingredient thing(const std::string& id, const Words& words) const {
        catalogue::Ingredient thing;
        thing.id = thing.name = id;
        thing.family = family_id(behind(words, "in"));
        if (const auto degrees = behind(words, "cook"); !degrees.empty()) thing.cook_to = std::stoi(degrees);
        catalogue::AllergenSet contains;
        const Words with = between(words, "with", {});
        for (const std::string& word : with) {
            if (word == "anything") return thing;
            const auto allergen = catalogue::read_allergen(word);
            need(allergen.has_value());
            contains.add(*allergen);
        }
        thing.allergens = contains;
        return thing;
    }

    static graph::Statement statement(const Words& words, const catalogue::Catalogue& catalogue) {
        const auto of = [&](const std::string& id) {
            const auto found = catalogue.ingredient_or_family(id);
            need(found.has_value());
            return *found;
        };
        graph::Statement result{.replaces = of(words[1]), .parts = {}, .note = behind(words, "said")};
        if (const auto forbidden = behind(words, "never"); !forbidden.empty()) {
            result.never = true;
            result.parts.push_back({of(forbidden)});
        }
        const Words use = between(words, "use", {"fit", "as", "both", "said", "longer"});
        for (std::size_t i = 0; i < use.size(); ++i) {
            if (use[i] == "x") {
                result.parts.back().ratio = std::llround(std::stod(use[++i]) * 1e6);
            } else if (use[i] != "+") {
                result.parts.push_back({of(use[i])});
            }
        }
        if (const auto fit = behind(words, "fit"); !fit.empty()) result.fit = std::stod(fit);
        if (const Words roles = between(words, "as", {"both", "said", "longer"}); !roles.empty()) {
            result.roles = 0;
            for (const std::string& word : roles) {
                const auto role = catalogue::read_role(word);
                need(role.has_value());
                result.roles |= catalogue::only(*role);
            }
        }
        result.both_ways = behind(words, "both") == "ways";
        if (const auto minutes = behind(words, "longer"); !minutes.empty()) result.adds_minutes = std::stoi(minutes);
        need(!result.parts.empty());
        return result;
    }

    std::map<std::string, Words> families_;
    std::map<std::string, Words> things_;
    std::vector<Words> said_;
};

inline SmallWorld small_world(const std::string& text) {
    return SmallWorldReader::read(text);
}

}  // namespace samebase::tests
