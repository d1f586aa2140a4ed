#include "flow/hand_out.hpp"

#include <algorithm>
#include <boost/graph/adjacency_list.hpp>
#include <boost/graph/successive_shortest_path_nonnegative_weights.hpp>

namespace samebase::flow {

namespace {

using Traits = boost::adjacency_list_traits<boost::vecS, boost::vecS, boost::directedS>;

struct Pipe {
    std::int64_t capacity = 0;
    std::int64_t residual = 0;
    std::int64_t cost = 0;
    Traits::edge_descriptor back;
};

using Network = boost::adjacency_list<boost::vecS, boost::vecS, boost::directedS, boost::no_property, Pipe>;

/// More than the costs of all pairs of a thousand slots together.
constexpr std::int64_t goes_without = 4'000'000'000'000'000;

Traits::edge_descriptor connect(Network& network, std::size_t from, std::size_t to, std::int64_t capacity,
                                std::int64_t cost) {
    const auto there = boost::add_edge(from, to, Pipe{capacity, 0, cost, {}}, network).first;
    const auto back = boost::add_edge(to, from, Pipe{0, 0, -cost, there}, network).first;
    network[there].back = back;
    return there;
}

}  // namespace

std::vector<int> hand_out(std::span<const int> serves, std::size_t slots, std::span<const Suits> suits) {
    const std::size_t well = serves.size() + slots;
    const std::size_t drain = well + 1;
    Network network(drain + 1);
    // Every slot that is served has one pair: to add one sum to the cost of all pairs changes no choice.
    std::int64_t least = 0;
    for (const Suits& pair : suits) least = std::min(least, pair.cost);
    // The library adds up the distances of all vertices, and those that cannot be reached would overflow: so that every
    // vertex can be at all times, a source without serves is fed but leads nowhere, and a slot can go without, which
    // costs more than all else together and leaves room for one more than the slot takes.
    for (std::size_t source = 0; source < serves.size(); ++source)
        connect(network, well, source, std::max(serves[source], 1), 0);
    std::vector<Traits::edge_descriptor> pairs;
    for (const Suits& pair : suits) {
        const auto source = static_cast<std::size_t>(pair.source);
        const std::size_t slot = serves.size() + static_cast<std::size_t>(pair.slot);
        pairs.push_back(connect(network, source, slot, serves[source] > 0 ? 1 : 0, pair.cost - least));
    }
    for (std::size_t slot = 0; slot < slots; ++slot) {
        connect(network, well, serves.size() + slot, 2, goes_without);
        connect(network, serves.size() + slot, drain, 1, 0);
    }
    boost::successive_shortest_path_nonnegative_weights(network, well, drain,
                                                        boost::capacity_map(boost::get(&Pipe::capacity, network))
                                                            .residual_capacity_map(boost::get(&Pipe::residual, network))
                                                            .weight_map(boost::get(&Pipe::cost, network))
                                                            .reverse_edge_map(boost::get(&Pipe::back, network)));
    std::vector<int> given(slots, -1);
    for (std::size_t i = 0; i < suits.size(); ++i) {
        const Pipe& pipe = network[pairs[i]];
        if (pipe.capacity > pipe.residual) given[static_cast<std::size_t>(suits[i].slot)] = suits[i].source;
    }
    return given;
}

}  // namespace samebase::flow
