// Random small worlds: a few families that may nest, a few things, and a few statements of every sort about them,
// written as the text that small_world reads, so that a failing world can be read and kept.
#pragma once

#include <fmt/format.h>
#include <rapidcheck.h>

#include <string>
#include <utility>
#include <vector>

#include "support/small_world.hpp"

namespace samebase::tests {

struct WorldText {
    std::string things;
    std::vector<std::string> statements;

    [[nodiscard]] SmallWorld world() const {
        std::string text = things;
        for (const std::string& statement : statements) text += statement + "\n";
        return small_world(text);
    }
};

inline void showValue(const WorldText& text, std::ostream& out) {
    out << text.things;
    for (const std::string& statement : text.statements) out << statement << '\n';
}

namespace generated {

/// Fits that meet often, so that ties come up, and some that do not.
inline std::string fit() {
    return *rc::gen::elementOf(
        std::vector<std::string>{"0.9", "0.8", "0.8", "0.64", "0.5", "0.5", "0.25", "0.31", "0.77", "0.02"});
}

inline std::string roles() {
    return *rc::gen::elementOf(std::vector<std::string>{"", "", "", " as main", " as sauce", " as main sauce side"});
}

inline std::string ratio() {
    return *rc::gen::elementOf(std::vector<std::string>{"", " x 1.25", " x 0.5", " x 2"});
}

inline std::string statement(const std::vector<std::string>& things, const std::vector<std::string>& anything) {
    const int sort = *rc::gen::inRange(0, 10);
    if (sort == 0) {
        const auto replaced = *rc::gen::elementOf(things);
        const auto one = *rc::gen::elementOf(things);
        const auto other = *rc::gen::elementOf(things);
        return fmt::format("for {} use {}{} + {}{} fit {}{}", replaced, one, ratio(), other, ratio(), fit(), roles());
    }
    const auto replaced = *rc::gen::elementOf(anything);
    const auto used = *rc::gen::elementOf(anything);
    const std::string both = *rc::gen::arbitrary<bool>() ? " both ways" : "";
    if (sort <= 2) return fmt::format("for {} never {}{}{}", replaced, used, roles(), both);
    return fmt::format("for {} use {}{} fit {}{}{}", replaced, used, ratio(), fit(), roles(), both);
}

}  // namespace generated

inline rc::Gen<WorldText> world_text() {
    return rc::gen::exec([] {
        WorldText text;
        std::vector<std::string> families;
        std::vector<std::string> anything;
        // A parent's fit is never above its child's: the deeper, the better.
        const std::vector<std::string> by_depth{"0.3", "0.55", "0.8", "0.9"};
        std::vector<std::size_t> depth;
        const int family_count = *rc::gen::inRange(1, 5);
        for (int i = 0; i < family_count; ++i) {
            const auto parent = static_cast<std::size_t>(*rc::gen::inRange(-1, i) + 1);
            depth.push_back(parent == 0 ? 0 : depth[parent - 1] + 1);
            families.push_back(fmt::format("f{}", i));
            text.things += "family " + families.back();
            if (parent > 0) text.things += " in " + families[parent - 1];
            if (*rc::gen::inRange(0, 3) != 0) text.things += " siblings " + by_depth[depth.back()];
            text.things += "\n";
        }
        std::vector<std::string> things;
        const int thing_count = *rc::gen::inRange(2, 7);
        const std::vector<std::string> contents{"", "", " with milk", " with egg milk", " with anything"};
        for (int i = 0; i < thing_count; ++i) {
            things.push_back(fmt::format("{}", static_cast<char>('p' + i)));
            const auto contains = *rc::gen::elementOf(contents);
            text.things += "thing " + things.back() + " in " + *rc::gen::elementOf(families) + contains + "\n";
        }
        anything = things;
        anything.insert(anything.end(), families.begin(), families.end());
        const int statement_count = *rc::gen::inRange(0, 9);
        for (int i = 0; i < statement_count; ++i) {
            auto statement = generated::statement(things, anything);
            if (*rc::gen::arbitrary<bool>()) statement += fmt::format(" said note{}", i);
            text.statements.push_back(std::move(statement));
        }
        return text;
    });
}

/// Every node of a world.
inline std::vector<graph::Node> all_nodes(const SmallWorld& world) {
    std::vector<graph::Node> nodes;
    for (std::uint32_t i = 0; i < world.catalogue.ingredients().size(); ++i) {
        for (const auto role : catalogue::all_roles) nodes.push_back({{i}, role});
    }
    return nodes;
}

}  // namespace samebase::tests
