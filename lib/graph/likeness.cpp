#include "graph/likeness.hpp"

#include <algorithm>
#include <boost/graph/adjacency_list.hpp>
#include <boost/graph/successive_shortest_path_nonnegative_weights.hpp>
#include <cmath>
#include <numeric>

#include "basics/exact.hpp"

namespace samebase::graph {

namespace {

using Traits = boost::adjacency_list_traits<boost::vecS, boost::vecS, boost::directedS>;
struct Arc;
using Network = boost::adjacency_list<boost::vecS, boost::vecS, boost::directedS, boost::no_property, Arc>;
struct Arc {
    std::int64_t capacity = 0;
    std::int64_t residual = 0;
    std::int64_t cost = 0;
    Traits::edge_descriptor reverse;
};

void add_arc(Network& network, std::size_t from, std::size_t to, std::int64_t capacity, std::int64_t cost) {
    const auto there = boost::add_edge(from, to, Arc{capacity, 0, cost, {}}, network).first;
    const auto back = boost::add_edge(to, from, Arc{0, 0, -cost, there}, network).first;
    network[there].reverse = back;
}

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

/// A transport problem of its own: no value lies between its supplies and demands and those of another group.
struct Group {
    std::vector<std::int64_t> supply;
    std::vector<std::int64_t> demand;
    std::vector<Ppm> value;  ///< by supply, then demand

    [[nodiscard]] bool is_star() const { return supply.size() == 1 || demand.size() == 1; }
};

/// The groups into which a problem falls. What has no value for anyone is in none of them.
std::vector<Group> groups(std::span<const std::int64_t> supply, std::span<const std::int64_t> demand,
                          std::span<const Ppm> value) {
    std::vector<Group> result;
    std::vector<bool> taken(supply.size(), false);
    std::vector<bool> wanted(demand.size(), false);
    std::vector<std::size_t> rows;
    std::vector<std::size_t> columns;
    const auto worth = [&](std::size_t i, std::size_t j) { return value[i * demand.size() + j]; };
    for (std::size_t first = 0; first < supply.size(); ++first) {
        if (taken[first]) continue;
        taken[first] = true;
        rows.assign(1, first);
        columns.clear();
        for (std::size_t r = 0; r < rows.size(); ++r) {
            for (std::size_t j = 0; j < demand.size(); ++j) {
                if (wanted[j] || worth(rows[r], j) <= 0) continue;
                wanted[j] = true;
                columns.push_back(j);
                for (std::size_t i = 0; i < supply.size(); ++i) {
                    if (taken[i] || worth(i, j) <= 0) continue;
                    taken[i] = true;
                    rows.push_back(i);
                }
            }
        }
        if (columns.empty()) continue;
        Group& group = result.emplace_back();
        for (const std::size_t i : rows) group.supply.push_back(supply[i]);
        for (const std::size_t j : columns) group.demand.push_back(demand[j]);
        for (const std::size_t i : rows) {
            for (const std::size_t j : columns) group.value.push_back(worth(i, j));
        }
    }
    return result;
}

/// One supply or one demand: the dearest first.
std::int64_t carried_in_star(const Group& group) {
    const bool one_supply = group.supply.size() == 1;
    const std::vector<std::int64_t>& others = one_supply ? group.demand : group.supply;
    std::int64_t left = one_supply ? group.supply.front() : group.demand.front();
    std::vector<std::size_t> order(others.size());
    std::iota(order.begin(), order.end(), std::size_t{0});
    std::sort(order.begin(), order.end(), [&](std::size_t a, std::size_t b) {
        return std::pair(-group.value[a], a) < std::pair(-group.value[b], b);
    });
    std::int64_t result = 0;
    for (const std::size_t i : order) {
        const std::int64_t moved = std::min(left, others[i]);
        result += moved * group.value[i];
        left -= moved;
    }
    return result;
}

std::int64_t carried_in_network(const Group& group) {
    const Ppm best = *std::max_element(group.value.begin(), group.value.end());
    const std::size_t supplies = group.supply.size();
    const std::size_t demands = group.demand.size();
    const std::size_t source = supplies + demands;
    const std::size_t sink = source + 1;
    Network network(sink + 1);
    for (std::size_t i = 0; i < supplies; ++i) {
        add_arc(network, source, i, group.supply[i], 0);
        for (std::size_t j = 0; j < demands; ++j) {
            // Carrying for nothing and not carrying come to the same, so every arc may stay.
            add_arc(network, i, supplies + j, std::min(group.supply[i], group.demand[j]),
                    best - group.value[i * demands + j]);
        }
    }
    for (std::size_t j = 0; j < demands; ++j) add_arc(network, supplies + j, sink, group.demand[j], 0);
    boost::successive_shortest_path_nonnegative_weights(network, source, sink,
                                                        boost::capacity_map(boost::get(&Arc::capacity, network))
                                                            .residual_capacity_map(boost::get(&Arc::residual, network))
                                                            .weight_map(boost::get(&Arc::cost, network))
                                                            .reverse_edge_map(boost::get(&Arc::reverse, network)));
    std::int64_t result = 0;
    for (const auto& edge : boost::make_iterator_range(boost::edges(network))) {
        const auto from = boost::source(edge, network);
        const auto to = boost::target(edge, network);
        if (from >= supplies || to < supplies || to >= source) continue;
        result += (network[edge].capacity - network[edge].residual) * group.value[from * demands + (to - supplies)];
    }
    return result;
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

std::int64_t most_carried(std::span<const std::int64_t> supply, std::span<const std::int64_t> demand,
                          std::span<const Ppm> value) {
    std::int64_t result = 0;
    for (const Group& group : groups(supply, demand, value)) {
        result += group.is_star() ? carried_in_star(group) : carried_in_network(group);
    }
    return result;
}

Ppm likeness(const Profile& a, const Profile& b, const BaseGraph& graph) {
    const std::int64_t larger = std::max(total(a), total(b));
    if (larger == 0) return 0;
    const Remainder rest = without_common(a, b);
    const std::int64_t both = 2 * rest.carried * one + carried(rest, graph, true) + carried(rest, graph, false);
    return basics::fits(basics::scale(both, 1, 2 * larger));
}

}  // namespace samebase::graph
