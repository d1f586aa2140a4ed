#include "graph/likeness.hpp"

#include <algorithm>
#include <cmath>
#include <numeric>

#include "basics/exact.hpp"
#include "graph/transport.hpp"

namespace samebase::graph {

namespace {

std::int64_t total(const Profile& profile) {
    return std::accumulate(profile.begin(), profile.end(), std::int64_t{0},
                           [](std::int64_t sum, const Weighted& w) { return sum + w.weight; });
}

struct Remainder {
    std::int64_t carried = 0;  ///< identical mass, weight units
    Profile a;
    Profile b;
};

/// Takes away the mass that stands on the same node in both.
Remainder without_common(const Profile& a, const Profile& b) {
    Remainder rest;
    auto i = a.begin();
    auto j = b.begin();
    while (i != a.end() || j != b.end()) {
        if (j == b.end() || (i != a.end() && i->node < j->node)) {
            rest.a.push_back(*i++);
        } else if (i == a.end() || j->node < i->node) {
            rest.b.push_back(*j++);
        } else {
            const auto common = std::min(i->weight, j->weight);
            rest.carried += common;
            if (i->weight > common) rest.a.push_back({i->node, i->weight - common});
            if (j->weight > common) rest.b.push_back({j->node, j->weight - common});
            ++i;
            ++j;
        }
    }
    return rest;
}

Ppm value_of(std::int32_t cost) {
    return cost == BaseGraph::no_path ? 0 : std::llround(fit_of(cost) * static_cast<double>(one));
}

/// The value carried from `rest.a` to `rest.b`, in weight units x parts per million; `towards_b` says in which
/// direction fits are read. Rows of the base graph are asked from a's side only, so that many b's share them.
std::int64_t carried(const Remainder& rest, const BaseGraph& graph, bool towards_b) {
    std::vector<std::int64_t> supply;
    std::vector<std::int64_t> demand;
    std::vector<Ppm> value;
    supply.reserve(rest.a.size());
    demand.reserve(rest.b.size());
    value.reserve(rest.a.size() * rest.b.size());
    for (const Weighted& w : rest.a) supply.push_back(w.weight);
    for (const Weighted& w : rest.b) demand.push_back(w.weight);
    for (const Weighted& of_a : rest.a) {
        const auto costs = towards_b ? graph.costs_from(of_a.node) : graph.costs_to(of_a.node);
        for (const Weighted& of_b : rest.b) value.push_back(value_of(costs[BaseGraph::position(of_b.node)]));
    }
    return most_carried(supply, demand, value);
}

}  // namespace

std::vector<double> telling(const cookbook::Cookbook& cookbook, const catalogue::Catalogue& catalogue,
                            const Parameters& parameters) {
    std::vector<int> dishes_with(catalogue.ingredients().size(), 0);
    for (const cookbook::Dish& dish : cookbook.dishes()) {
        std::vector<catalogue::IngredientId> used;
        for (const auto& line : dish.ingredients) used.push_back(line.ingredient);
        std::sort(used.begin(), used.end());
        used.erase(std::unique(used.begin(), used.end()), used.end());
        for (const auto id : used) ++dishes_with[id.index()];
    }
    std::vector<double> result;
    result.reserve(dishes_with.size());
    const auto dishes = static_cast<double>(cookbook.dishes().size());
    for (const int count : dishes_with)
        result.push_back(parameters.telling_floor + std::log((dishes + 1) / (count + 1)));
    return result;
}

Profile profile(const cookbook::Dish& dish, const catalogue::Catalogue& catalogue, std::span<const double> telling,
                const Parameters& parameters) {
    const auto grams = [&](const cookbook::DishIngredient& line) {
        const auto mass = catalogue::weight(line.amount, catalogue[line.ingredient]);
        return mass ? static_cast<double>(mass->value) / 1000 : parameters.unknown_grams;
    };
    double sum = 0;
    for (const auto& line : dish.ingredients) sum += grams(line);
    Profile result;
    for (const auto& line : dish.ingredients) {
        const double weight = parameters.role_weight[static_cast<std::size_t>(line.role)] *
                              telling[line.ingredient.index()] * std::pow(grams(line) / sum, parameters.share_power);
        result.push_back({{line.ingredient, line.role}, std::max<std::int64_t>(1, std::llround(weight * 1e4))});
    }
    std::sort(result.begin(), result.end(), [](const Weighted& x, const Weighted& y) { return x.node < y.node; });
    Profile merged;
    for (const Weighted& w : result) {
        if (!merged.empty() && merged.back().node == w.node) {
            merged.back().weight += w.weight;
        } else {
            merged.push_back(w);
        }
    }
    return merged;
}

Ppm likeness(const Profile& a, const Profile& b, const BaseGraph& graph) {
    const std::int64_t larger = std::max(total(a), total(b));
    if (larger == 0) return 0;
    const Remainder rest = without_common(a, b);
    const std::int64_t both = 2 * rest.carried * one + carried(rest, graph, true) + carried(rest, graph, false);
    return basics::fits(basics::scale(both, 1, 2 * larger));
}

}  // namespace samebase::graph
