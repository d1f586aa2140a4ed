#include "graph/detail/steps.hpp"

#include <algorithm>
#include <limits>
#include <numeric>
#include <string_view>
#include <tuple>
#include <utility>

#include "basics/exact.hpp"

namespace samebase::graph::detail {

namespace {

using catalogue::Catalogue;
using catalogue::FamilyId;
using catalogue::IngredientId;
using catalogue::Of;
using catalogue::Role;

constexpr int far_away = std::numeric_limits<int>::max();

/// What is said of one ordered pair in one role, as far as it has been read.
struct Said {
    int distance = far_away;  ///< steps up both families; 0 where the pair is named
    std::int32_t cost = 0;
    std::int32_t ratio = 0;
    std::int32_t statement = siblings_of_a_family;
    int never_distance = far_away;
};

using SaidInRoles = std::array<Said, catalogue::role_count>;

/// Reads everything that is said of one ingredient's replacement.
class Reader {
  public:
    Reader(const Catalogue& catalogue, const std::vector<Statement>& statements)
        : catalogue_(catalogue),
          statements_(statements),
          said_(catalogue.ingredients().size()),
          by_ingredient_(catalogue.ingredients().size()),
          by_family_(catalogue.families().size()) {
        for (std::size_t i = 0; i < statements.size(); ++i) {
            const Statement& statement = statements[i];
            if (statement.parts.size() != 1) continue;
            file(statement.replaces, {static_cast<std::int32_t>(i), false});
            if (statement.both_ways) file(statement.parts.front().of, {static_cast<std::int32_t>(i), true});
        }
    }

    void read(IngredientId from, Steps& out) {
        touched_.clear();
        for (const Entry& entry : by_ingredient_[from.index()]) take(from, entry, 0);
        int up = 1;
        for (const FamilyId family : catalogue_.ancestors(from)) {
            for (const Entry& entry : by_family_[family.index()]) take(from, entry, up);
            siblings(from, family, up);
            ++up;
        }
        emit(from, out);
    }

  private:
    struct Entry {
        std::int32_t statement;
        bool reversed;
    };

    void file(const Of& of, Entry entry) {
        if (const auto* ingredient = std::get_if<IngredientId>(&of)) {
            by_ingredient_[ingredient->index()].push_back(entry);
        } else {
            by_family_[std::get<FamilyId>(of).index()].push_back(entry);
        }
    }

    void take(IngredientId from, const Entry& entry, int up) {
        const Statement& statement = statements_[static_cast<std::size_t>(entry.statement)];
        const Part& part = statement.parts.front();
        const Of& target = entry.reversed ? statement.replaces : part.of;
        const auto ratio = entry.reversed ? basics::fits(basics::scale(one, one, part.ratio)) : part.ratio;
        Said said{.distance = up, .cost = 0, .ratio = static_cast<std::int32_t>(ratio), .statement = entry.statement};
        if (!statement.never) said.cost = static_cast<std::int32_t>(cost_of(statement.fit));
        if (const auto* ingredient = std::get_if<IngredientId>(&target)) {
            note(from, *ingredient, statement, said);
            return;
        }
        const FamilyId family = std::get<FamilyId>(target);
        for (const IngredientId member : catalogue_.members(family)) {
            Said here = said;
            here.distance += steps_up(member, family);
            note(from, member, statement, here);
        }
    }

    int steps_up(IngredientId member, FamilyId family) const {
        const auto above = catalogue_.ancestors(member);
        return static_cast<int>(std::find(above.begin(), above.end(), family) - above.begin()) + 1;
    }

    void note(IngredientId from, IngredientId to, const Statement& statement, const Said& said) {
        if (from == to) return;
        for (const Role role : catalogue::all_roles) {
            if (!catalogue::has(statement.roles, role)) continue;
            if (statement.never) {
                Said& so_far = at(to)[static_cast<std::size_t>(role)];
                so_far.never_distance = std::min(so_far.never_distance, said.distance);
            } else {
                better(at(to)[static_cast<std::size_t>(role)], said);
            }
        }
    }

    void siblings(IngredientId from, FamilyId family, int up) {
        const auto& fit = catalogue_[family].siblings;
        if (!fit) return;
        const Said said{.cost = static_cast<std::int32_t>(cost_of(*fit)),
                        .ratio = static_cast<std::int32_t>(one),
                        .statement = siblings_of_a_family};
        for (const IngredientId member : catalogue_.members(family)) {
            if (member == from) continue;
            Said here = said;
            here.distance = up + steps_up(member, family);
            for (Said& so_far : at(member)) better(so_far, here);
        }
    }

    SaidInRoles& at(IngredientId to) {
        SaidInRoles& here = said_[to.index()];
        if (std::all_of(here.begin(), here.end(),
                        [](const Said& s) { return s.distance == far_away && s.never_distance == far_away; })) {
            touched_.push_back(to);
        }
        return here;
    }

    /// The nearer statement; of two equally near the better fit, then the one that uses less, then the first by its
    /// note, then the one that takes longer: never the order in which they are given.
    void better(Said& so_far, const Said& said) const {
        const auto key = [&](const Said& s) {
            return std::tuple(s.distance, s.cost, s.ratio, note_of(s), -minutes_of(s));
        };
        if (key(said) >= key(so_far)) return;
        const int never = so_far.never_distance;
        so_far = said;
        so_far.never_distance = never;
    }

    std::string_view note_of(const Said& said) const {
        return said.statement < 0 ? std::string_view() : statements_[static_cast<std::size_t>(said.statement)].note;
    }

    int minutes_of(const Said& said) const {
        return said.statement < 0 ? 0 : statements_[static_cast<std::size_t>(said.statement)].adds_minutes;
    }

    void emit(IngredientId from, Steps& out) {
        std::sort(touched_.begin(), touched_.end());
        touched_.erase(std::unique(touched_.begin(), touched_.end()), touched_.end());
        for (const IngredientId to : touched_) {
            Forbidden forbidden{from, to, 0};
            for (const Role role : catalogue::all_roles) {
                const Said& said = said_[to.index()][static_cast<std::size_t>(role)];
                if (said.never_distance != far_away && said.never_distance <= said.distance) {
                    forbidden.roles |= catalogue::only(role);
                }
                if (said.distance == far_away) continue;
                out.steps.push_back({vertex(from, role), vertex(to, role), said.cost, said.ratio, said.statement});
            }
            if (forbidden.roles != 0) out.forbidden.push_back(forbidden);
            said_[to.index()] = SaidInRoles{};
        }
    }

    const Catalogue& catalogue_;
    const std::vector<Statement>& statements_;
    std::vector<SaidInRoles> said_;
    std::vector<IngredientId> touched_;
    std::vector<std::vector<Entry>> by_ingredient_;
    std::vector<std::vector<Entry>> by_family_;
};

void add_mixtures(const Catalogue& catalogue, const std::vector<Statement>& statements, Steps& out) {
    const auto first = static_cast<std::uint32_t>(catalogue.ingredients().size() * catalogue::role_count);
    for (std::size_t i = 0; i < statements.size(); ++i) {
        const Statement& statement = statements[i];
        if (statement.parts.size() < 2 || statement.never) continue;
        for (const Role role : catalogue::all_roles) {
            if (!catalogue::has(statement.roles, role)) continue;
            const auto mixture = first + static_cast<std::uint32_t>(out.mixtures.size());
            out.mixtures.push_back({static_cast<std::int32_t>(i), role});
            out.steps.push_back({vertex(std::get<IngredientId>(statement.replaces), role), mixture,
                                 static_cast<std::int32_t>(cost_of(statement.fit)), static_cast<std::int32_t>(one),
                                 static_cast<std::int32_t>(i)});
        }
    }
}

void add_role_changes(const Catalogue& catalogue, const Parameters& parameters, Steps& out) {
    const auto cost = static_cast<std::int32_t>(cost_of(parameters.role_change));
    for (std::uint32_t i = 0; i < catalogue.ingredients().size(); ++i) {
        for (const Role from : catalogue::all_roles) {
            for (const Role to : catalogue::all_roles) {
                if (from == to) continue;
                out.steps.push_back({vertex(IngredientId{i}, from), vertex(IngredientId{i}, to), cost,
                                     static_cast<std::int32_t>(one), change_of_role});
            }
        }
    }
}

}  // namespace

Steps steps_from(const Catalogue& catalogue, const std::vector<Statement>& statements, const Parameters& parameters) {
    Steps out;
    Reader reader(catalogue, statements);
    for (std::uint32_t i = 0; i < catalogue.ingredients().size(); ++i) reader.read(IngredientId{i}, out);
    add_mixtures(catalogue, statements, out);
    add_role_changes(catalogue, parameters, out);
    // By the second end, then stably by the first: two counting sorts, linear in the steps.
    const auto vertices =
        static_cast<std::uint32_t>(catalogue.ingredients().size() * catalogue::role_count + out.mixtures.size());
    for (Step& step : out.steps) std::swap(step.from, step.to);
    out.steps = by_first_end(out.steps, vertices);
    for (Step& step : out.steps) std::swap(step.from, step.to);
    out.steps = by_first_end(out.steps, vertices);
    return out;
}

std::vector<Step> by_first_end(const std::vector<Step>& steps, std::uint32_t vertices) {
    std::vector<std::uint32_t> next(std::size_t{vertices} + 1, 0);
    for (const Step& step : steps) ++next[step.from + 1];
    std::partial_sum(next.begin(), next.end(), next.begin());
    std::vector<Step> sorted(steps.size());
    for (const Step& step : steps) sorted[next[step.from]++] = step;
    return sorted;
}

}  // namespace samebase::graph::detail
