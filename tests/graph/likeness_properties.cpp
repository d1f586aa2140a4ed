// Laws of likeness and of transport, against oracles that try everything.
#include <rapidcheck/catch.h>

#include <algorithm>
#include <catch2/catch.hpp>
#include <cmath>
#include <cstdlib>
#include <map>
#include <numeric>
#include <vector>

#include "graph/generated_worlds.hpp"
#include "graph/likeness.hpp"
#include "graph/transport.hpp"
#include "support/transport_oracle.hpp"

using namespace samebase::graph;
using namespace samebase::tests;

namespace {

std::int64_t total(const Profile& profile) {
    return std::accumulate(profile.begin(), profile.end(), std::int64_t{0},
                           [](std::int64_t sum, const Weighted& w) { return sum + w.weight; });
}

Ppm value(const BaseGraph& graph, Node from, Node to) {
    const auto cost = graph.cost(from, to);
    return cost ? std::llround(fit_of(*cost) * 1e6) : 0;
}

/// A few nodes with weights; the nodes come from few things and roles, so that two profiles share some.
Profile some_profile(const SmallWorld& world, std::size_t most_nodes, std::int64_t most_weight) {
    std::map<Node, std::int64_t> weights;
    const auto count = *rc::gen::inRange<std::size_t>(1, most_nodes + 1);
    for (std::size_t i = 0; i < count; ++i) {
        const auto thing =
            *rc::gen::inRange<std::uint32_t>(0, static_cast<std::uint32_t>(world.catalogue.ingredients().size()));
        const auto role =
            *rc::gen::elementOf(std::vector{samebase::catalogue::Role::main, samebase::catalogue::Role::sauce});
        weights[{{thing}, role}] = *rc::gen::inRange<std::int64_t>(1, most_weight + 1);
    }
    Profile profile;
    for (const auto& [node, weight] : weights) profile.push_back({node, weight});
    return profile;
}

struct Problem {
    std::vector<std::int64_t> supply;
    std::vector<std::int64_t> demand;
    std::vector<std::int64_t> value;
};

/// All mass of both profiles, what stands on the same node too.
Problem whole(const Profile& a, const Profile& b, const BaseGraph& graph) {
    Problem problem;
    for (const Weighted& w : a) problem.supply.push_back(w.weight);
    for (const Weighted& w : b) problem.demand.push_back(w.weight);
    for (const Weighted& from : a) {
        for (const Weighted& to : b) problem.value.push_back(value(graph, from.node, to.node));
    }
    return problem;
}

std::int64_t most_carried(const Problem& problem) {
    return samebase::graph::most_carried(problem.supply, problem.demand, problem.value);
}

/// Twice the larger total: what the sum of both directions is divided by.
double divisor(const Profile& a, const Profile& b) {
    return 2.0 * static_cast<double>(std::max(total(a), total(b)));
}

/// Fits are rounded to parts per million before they are carried, half a part up or down. To put identical mass first
/// exchanges two carried units (a to x, x to b) for two others (x to x, a to b): three rounded fits, so that a unit of
/// identical mass loses at most 1 part in each direction, being whole; and a likeness, which is rounded once more, at
/// most 1 part.
constexpr Ppm rounding = 1;

}  // namespace

TEST_CASE("laws of likeness") {
    rc::prop("1 with itself, symmetric, within 0 and 1", [] {
        const SmallWorld world = (*world_text()).world();
        const BaseGraph graph = world.graph();
        const Profile a = some_profile(world, 6, 100'000);
        const Profile b = some_profile(world, 6, 100'000);
        RC_ASSERT(likeness(a, a, graph) == one);
        const Ppm like = likeness(a, b, graph);
        RC_ASSERT(likeness(b, a, graph) == like);
        RC_ASSERT(like >= 0);
        RC_ASSERT(like <= one);
    });

    rc::prop("multiplying all weights changes nothing", [] {
        const SmallWorld world = (*world_text()).world();
        const BaseGraph graph = world.graph();
        Profile a = some_profile(world, 5, 1000);
        Profile b = some_profile(world, 5, 1000);
        const Ppm before = likeness(a, b, graph);
        const auto times = *rc::gen::inRange<std::int64_t>(2, 1000);
        for (Profile* profile : {&a, &b}) {
            for (Weighted& w : *profile) w.weight *= times;
        }
        RC_ASSERT(likeness(a, b, graph) == before);
    });

    rc::prop("carrying identical mass first loses nothing but rounding", [] {
        const SmallWorld world = (*world_text()).world();
        const BaseGraph graph = world.graph();
        const Profile a = some_profile(world, 6, 1000);
        const Profile b = some_profile(world, 6, 1000);
        const std::int64_t both = most_carried(whole(a, b, graph)) + most_carried(whole(b, a, graph));
        const double best = static_cast<double>(both) / divisor(a, b);
        const auto like = static_cast<double>(likeness(a, b, graph));
        RC_ASSERT(like <= best + 0.5);
        RC_ASSERT(like >= best - 0.5 - static_cast<double>(rounding));
    });

    rc::prop("it is the best of all ways to carry, tried one by one", [] {
        const SmallWorld world = (*world_text()).world();
        const BaseGraph graph = world.graph();
        const Profile a = some_profile(world, 3, 3);
        const Profile b = some_profile(world, 3, 3);
        const Problem there = whole(a, b, graph);
        const Problem back = whole(b, a, graph);
        const std::int64_t both = EveryTransport(there.supply, there.demand, there.value).most() +
                                  EveryTransport(back.supply, back.demand, back.value).most();
        const double best = static_cast<double>(both) / divisor(a, b);
        const auto like = static_cast<double>(likeness(a, b, graph));
        RC_ASSERT(like <= best + 0.5);
        RC_ASSERT(like >= best - 0.5 - static_cast<double>(rounding));
    });

    rc::prop("it does not fall when an ingredient gives way to one that fits each of the other's no less", [] {
        const SmallWorld world = (*world_text()).world();
        const BaseGraph graph = world.graph();
        const Profile b = some_profile(world, 4, 1000);
        const Profile a = some_profile(world, 4, 1000);
        const Ppm before = likeness(a, b, graph);
        const auto no_lower = [&](Node better, Node worse) {
            return std::all_of(b.begin(), b.end(), [&](const Weighted& w) {
                return value(graph, better, w.node) >= value(graph, worse, w.node) &&
                       value(graph, w.node, better) >= value(graph, w.node, worse);
            });
        };
        int exchanged = 0;
        for (std::size_t i = 0; i < a.size(); ++i) {
            for (const Node other : all_nodes(world)) {
                const bool there = std::any_of(a.begin(), a.end(), [&](const Weighted& w) { return w.node == other; });
                if (there || !no_lower(other, a[i].node)) continue;
                Profile changed = a;
                changed[i].node = other;
                std::sort(changed.begin(), changed.end(), [](const auto& x, const auto& y) { return x.node < y.node; });
                RC_ASSERT(likeness(changed, b, graph) >= before - rounding);
                ++exchanged;
            }
        }
        RC_CLASSIFY(exchanged > 0);
    });
}

TEST_CASE("laws of transport") {
    const auto amounts = [](std::size_t most, std::int64_t units) {
        const auto count = *rc::gen::inRange<std::size_t>(1, most + 1);
        return *rc::gen::container<std::vector<std::int64_t>>(count, rc::gen::inRange<std::int64_t>(0, units + 1));
    };

    rc::prop("nothing carries more than trying everything does", [&] {
        Problem problem{amounts(3, 3), amounts(3, 3), {}};
        problem.value = *rc::gen::container<std::vector<std::int64_t>>(problem.supply.size() * problem.demand.size(),
                                                                       rc::gen::inRange<std::int64_t>(0, 12));
        RC_ASSERT(most_carried(problem) == EveryTransport(problem.supply, problem.demand, problem.value).most());
    });

    // On a line, and with equal totals, the least cost is the sum of absolute cumulative differences: a standard
    // result.
    rc::prop("on a line the cost is the sum of absolute cumulative differences", [&] {
        const auto places = *rc::gen::inRange<std::size_t>(2, 12);
        auto a = *rc::gen::container<std::vector<std::int64_t>>(places, rc::gen::inRange<std::int64_t>(0, 50));
        auto b = *rc::gen::container<std::vector<std::int64_t>>(places, rc::gen::inRange<std::int64_t>(0, 50));
        const auto sum = [](const auto& of) { return std::accumulate(of.begin(), of.end(), std::int64_t{0}); };
        (sum(a) < sum(b) ? a : b).back() += std::abs(sum(a) - sum(b));
        Problem problem{a, b, {}};
        std::int64_t expected = 0;
        std::int64_t ahead = 0;
        const auto farthest = static_cast<std::int64_t>(places) - 1;
        for (std::int64_t i = 0; i <= farthest; ++i) {
            ahead += a[static_cast<std::size_t>(i)] - b[static_cast<std::size_t>(i)];
            expected += std::abs(ahead);
            for (std::int64_t j = 0; j <= farthest; ++j) problem.value.push_back(farthest - std::abs(i - j));
        }
        RC_ASSERT(farthest * sum(a) - most_carried(problem) == expected);
    });
}
