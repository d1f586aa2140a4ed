#include "graph/base_graph.hpp"

#include <algorithm>
#include <boost/graph/compressed_sparse_row_graph.hpp>
#include <boost/graph/dijkstra_shortest_paths.hpp>
#include <cmath>
#include <functional>
#include <iterator>
#include <mutex>
#include <tuple>
#include <utility>

#include "basics/exact.hpp"
#include "graph/detail/steps.hpp"

namespace samebase::graph {

namespace {

using catalogue::IngredientId;
using catalogue::Role;

using Graph = boost::compressed_sparse_row_graph<boost::directedS, boost::no_property, detail::Step, boost::no_property,
                                                 std::uint32_t, std::uint32_t>;
using Row = std::vector<std::int32_t>;
constexpr std::int32_t unreachable = BaseGraph::no_path;
constexpr double millionths = 1e6;

Graph forward_graph(const std::vector<detail::Step>& steps, std::uint32_t vertices) {
    std::vector<std::pair<std::uint32_t, std::uint32_t>> ends;
    ends.reserve(steps.size());
    for (const detail::Step& step : steps) ends.emplace_back(step.from, step.to);
    return {boost::edges_are_sorted, ends.begin(), ends.end(), steps.begin(), vertices};
}

Graph backward_graph(std::vector<detail::Step> steps, std::uint32_t vertices) {
    for (detail::Step& step : steps) std::swap(step.from, step.to);
    // They come in the order of their other ends, which stays.
    return forward_graph(detail::by_first_end(steps, vertices), vertices);
}

/// Thrown inside one search and caught there: Boost's visitors have no other way to stop early.
struct FarEnough {};

class StopBeyond : public boost::dijkstra_visitor<> {
  public:
    StopBeyond(const Row& row, std::int32_t limit) : row_(&row), limit_(limit) {}
    template <class Vertex, class G>
    void examine_vertex(Vertex vertex, const G&) const {
        if ((*row_)[vertex] > limit_) throw FarEnough{};
    }

  private:
    const Row* row_;
    std::int32_t limit_;
};

/// Costs from one vertex; those above the limit are not to be relied on.
Row search(const Graph& graph, std::uint32_t from, std::int32_t limit) {
    Row row(boost::num_vertices(graph), unreachable);
    const auto index = boost::get(boost::vertex_index, graph);
    std::vector<boost::default_color_type> colours(row.size());
    try {
        boost::dijkstra_shortest_paths(
            graph, from, boost::dummy_property_map(), boost::make_iterator_property_map(row.begin(), index),
            boost::get(&detail::Step::cost, graph), index, std::less<>(), boost::closed_plus<std::int32_t>(unreachable),
            unreachable, std::int32_t{0}, StopBeyond(row, limit),
            boost::make_iterator_property_map(colours.begin(), index));
    } catch (const FarEnough&) {
        return row;
    }
    return row;
}

}  // namespace

Cost cost_of(double fit) {
    constexpr Cost dearest = BaseGraph::no_path - 1;
    // The logarithm of nothing is no number that could be rounded: every path is good enough then.
    if (!(fit > 0)) return dearest;
    return std::clamp<Cost>(std::llround(-std::log(fit) * millionths), 1, dearest);
}

double fit_of(Cost cost) {
    return std::exp(-static_cast<double>(cost) / millionths);
}

namespace {

/// The steps and the graphs that they make, with the rows that were asked for.
struct Compiled {
    Compiled(const catalogue::Catalogue& the_catalogue, const std::vector<Statement>& the_statements,
             const Parameters& parameters)
        : statements(the_statements),
          steps(detail::steps_from(the_catalogue, statements, parameters)),
          ingredient_vertices(static_cast<std::uint32_t>(the_catalogue.ingredients().size() * catalogue::role_count)),
          vertices(ingredient_vertices + static_cast<std::uint32_t>(steps.mixtures.size())),
          forward(forward_graph(steps.steps, vertices)),
          backward(backward_graph(steps.steps, vertices)),
          forward_rows(ingredient_vertices),
          backward_rows(ingredient_vertices),
          stand_ins(ingredient_vertices) {}

    const Row& row(const Graph& graph, std::vector<std::unique_ptr<Row>>& rows, std::uint32_t from) {
        if (!rows[from]) rows[from] = std::make_unique<Row>(search(graph, from, unreachable));
        return *rows[from];
    }

    /// What to use at a vertex that the search has reached, with the ratio along the cheapest path. Of equally cheap
    /// last steps the one from the lowest vertex, which is the first identifier, is on the path.
    StandIn found(const Row& row, std::uint32_t source, std::uint32_t target) const {
        StandIn result;
        result.cost = row[target];
        Ppm ratio = one;
        std::int32_t last = detail::change_of_role;
        for (std::uint32_t at = target; at != source;) {
            const auto [first, end] = boost::out_edges(at, backward);
            const auto step = std::find_if(first, end, [&](const auto& edge) {
                const auto before = row[boost::target(edge, backward)];
                return before != unreachable && before + backward[edge].cost == row[at];
            });
            const detail::Step& taken = backward[*step];
            ratio = basics::fits(basics::scale(ratio, taken.ratio, one));
            if (last < 0) last = taken.statement;
            if (taken.statement >= 0) {
                const Statement& statement = statements[static_cast<std::size_t>(taken.statement)];
                result.adds_minutes = std::max(result.adds_minutes, statement.adds_minutes);
            }
            at = boost::target(*step, backward);
        }
        if (last >= 0) result.note = statements[static_cast<std::size_t>(last)].note;
        result.use = used_at(target, ratio);
        return result;
    }

    /// What a statement about the two says, however near another way is.
    std::optional<StandIn> stated(std::uint32_t source, std::uint32_t target) const {
        const auto [first, end] = boost::out_edges(target, backward);
        const auto step = std::find_if(first, end, [&](const auto& edge) {
            return boost::target(edge, backward) == source && backward[edge].statement >= 0;
        });
        if (step == end) return std::nullopt;
        const detail::Step& taken = backward[*step];
        const Statement& statement = statements[static_cast<std::size_t>(taken.statement)];
        StandIn result;
        result.cost = taken.cost;
        result.adds_minutes = statement.adds_minutes;
        result.note = statement.note;
        result.use = used_at(target, taken.ratio);
        return result;
    }

    std::vector<std::pair<IngredientId, Ppm>> used_at(std::uint32_t target, Ppm ratio) const {
        if (target < ingredient_vertices) {
            return {{IngredientId{target / static_cast<std::uint32_t>(catalogue::role_count)}, ratio}};
        }
        std::vector<std::pair<IngredientId, Ppm>> use;
        const auto& mixture =
            statements[static_cast<std::size_t>(steps.mixtures[target - ingredient_vertices].statement)];
        for (const Part& part : mixture.parts) {
            use.emplace_back(std::get<IngredientId>(part.of), basics::fits(basics::scale(part.ratio, ratio, one)));
        }
        return use;
    }

    const std::vector<Statement>& statements;
    detail::Steps steps;
    std::uint32_t ingredient_vertices;
    std::uint32_t vertices;
    Graph forward;
    Graph backward;
    std::mutex mutex;  ///< guards the rows and the stand-ins
    std::vector<std::unique_ptr<Row>> forward_rows;
    std::vector<std::unique_ptr<Row>> backward_rows;
    std::vector<std::unique_ptr<std::vector<StandIn>>> stand_ins;  ///< by vertex: at the parameters' least fit
};

}  // namespace

struct BaseGraph::Inside {
    Inside(const catalogue::Catalogue& the_catalogue, std::vector<Statement> the_statements,
           const Parameters& the_parameters)
        : catalogue(&the_catalogue), statements(std::move(the_statements)), parameters(the_parameters) {}

    /// Made when first asked for: many commands ask for no stand-in.
    Compiled& compiled() {
        std::call_once(once, [this] { made = std::make_unique<Compiled>(*catalogue, statements, parameters); });
        return *made;
    }

    const catalogue::Catalogue* catalogue;
    std::vector<Statement> statements;
    Parameters parameters;
    std::once_flag once;
    std::unique_ptr<Compiled> made;
};

BaseGraph::BaseGraph(const catalogue::Catalogue& catalogue, std::vector<Statement> statements,
                     const Parameters& parameters)
    : inside_(std::make_unique<Inside>(catalogue, std::move(statements), parameters)) {}
BaseGraph::BaseGraph(BaseGraph&&) noexcept = default;
BaseGraph& BaseGraph::operator=(BaseGraph&&) noexcept = default;
BaseGraph::~BaseGraph() = default;

std::optional<Cost> BaseGraph::cost(Node from, Node to) const {
    if (from == to) return 0;
    const std::int32_t cost = costs_from(from)[position(to)];
    if (cost == no_path) return std::nullopt;
    return cost;
}

std::span<const std::int32_t> BaseGraph::costs_from(Node node) const {
    Compiled& in = inside_->compiled();
    const std::lock_guard lock(in.mutex);
    return in.row(in.forward, in.forward_rows, detail::vertex(node.ingredient, node.role));
}

std::span<const std::int32_t> BaseGraph::costs_to(Node node) const {
    Compiled& in = inside_->compiled();
    const std::lock_guard lock(in.mutex);
    return in.row(in.backward, in.backward_rows, detail::vertex(node.ingredient, node.role));
}

std::vector<StandIn> BaseGraph::all_stand_ins(Node node, Cost most) const {
    const Compiled& in = inside_->compiled();
    const auto limit = static_cast<std::int32_t>(most);
    const auto source = detail::vertex(node.ingredient, node.role);
    const Row row = search(in.forward, source, limit);
    std::vector<StandIn> found;
    // What must be cooked through takes the place of what is ready to eat only where a statement about the two says so,
    // since its note tells to cook it: a way over others would lose that.
    const auto raw = [&](IngredientId id) {
        const catalogue::Ingredient& thing = (*inside_->catalogue)[id];
        return thing.cook_to && thing.kind != catalogue::Kind::cooked;
    };
    const auto goes_in_raw = [&](const StandIn& stand_in) {
        return !raw(node.ingredient) &&
               std::any_of(stand_in.use.begin(), stand_in.use.end(), [&](const auto& part) { return raw(part.first); });
    };
    const auto consider = [&](std::uint32_t target) {
        if (target == source || row[target] > limit) return;
        StandIn stand_in = in.found(row, source, target);
        if (goes_in_raw(stand_in)) {
            auto said = in.stated(source, target);
            if (!said || said->cost > most) return;
            stand_in = std::move(*said);
        }
        for (const auto& [used, ratio] : stand_in.use) {
            if (used == node.ingredient) return;
            if (stand_in.use.size() == 1 && forbidden(node.ingredient, used, node.role)) return;
        }
        found.push_back(std::move(stand_in));
    };
    for (std::uint32_t i = 0; i < inside_->catalogue->ingredients().size(); ++i)
        consider(detail::vertex(IngredientId{i}, node.role));
    for (std::uint32_t i = 0; i < in.steps.mixtures.size(); ++i) {
        if (in.steps.mixtures[i].role == node.role) consider(in.ingredient_vertices + i);
    }
    std::stable_sort(found.begin(), found.end(), [](const StandIn& a, const StandIn& b) {
        return std::tie(a.cost, a.use, a.note) < std::tie(b.cost, b.use, b.note);
    });
    return found;
}

std::vector<StandIn> BaseGraph::stand_ins(Node node, double least_fit, catalogue::AllergenSet avoid) const {
    const Cost most = cost_of(least_fit);
    const Cost usual = cost_of(inside_->parameters.least_fit);
    std::vector<StandIn> result;
    const auto keep = [&](const std::vector<StandIn>& list) {
        std::copy_if(list.begin(), list.end(), std::back_inserter(result), [&](const StandIn& stand_in) {
            return stand_in.cost <= most &&
                   std::all_of(stand_in.use.begin(), stand_in.use.end(), [&](const auto& part) {
                       return (*inside_->catalogue)[part.first].counted_allergens().shared_with(avoid).empty();
                   });
        });
    };
    if (most > usual) {
        keep(all_stand_ins(node, most));
        return result;
    }
    Compiled& in = inside_->compiled();
    const std::lock_guard lock(in.mutex);
    auto& kept = in.stand_ins[detail::vertex(node.ingredient, node.role)];
    if (!kept) kept = std::make_unique<std::vector<StandIn>>(all_stand_ins(node, usual));
    keep(*kept);
    return result;
}

bool BaseGraph::forbidden(IngredientId replaced, IngredientId used, Role role) const {
    const auto& pairs = inside_->compiled().steps.forbidden;
    const auto found = std::lower_bound(pairs.begin(), pairs.end(), std::pair{replaced, used},
                                        [](const detail::Forbidden& pair, const auto& key) {
                                            return std::pair{pair.replaced, pair.used} < key;
                                        });
    return found != pairs.end() && found->replaced == replaced && found->used == used &&
           catalogue::has(found->roles, role);
}

const Parameters& BaseGraph::parameters() const {
    return inside_->parameters;
}

std::span<const Statement> BaseGraph::statements() const {
    return inside_->statements;
}

std::size_t BaseGraph::step_count() const {
    return inside_->compiled().steps.steps.size();
}

std::optional<std::string> BaseGraph::check() const {
    for (const detail::Step& step : inside_->compiled().steps.steps) {
        if (step.cost <= 0) return "a step costs nothing";
        if (step.ratio <= 0) return "a step has a ratio that is not above 0";
        if (step.from >= inside_->compiled().ingredient_vertices) return "a step leaves a mixture";
        if (step.to >= inside_->compiled().vertices) return "a step ends nowhere";
    }
    return std::nullopt;
}

}  // namespace samebase::graph
