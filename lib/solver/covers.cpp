#include "solver/covers.hpp"

#include <algorithm>
#include <cmath>
#include <cstddef>
#include <functional>
#include <map>
#include <optional>

namespace samebase::solver {

namespace {

constexpr double tolerance = 1e-4;

std::int64_t units_for(std::int64_t amount, std::int64_t unit) {
    return (amount + unit - 1) / unit;
}

/// A group in a cover: its options that want at least so much.
struct Member {
    std::size_t group = 0;
    std::int64_t least = 0;
};

/// What the members want together, and how many units short of the whole cover the values leave it.
struct Partial {
    double missing = 0;
    std::int64_t amount = 0;
    std::vector<Member> members;
};

/// How much of a group's choice wants at least so much, most first.
std::vector<std::pair<std::int64_t, double>> chosen_at_least(const std::vector<RoomInUnits::Want>& group,
                                                             const std::vector<double>& values) {
    std::map<std::int64_t, double, std::greater<>> chosen;
    for (const auto& want : group) {
        const double value = values[static_cast<std::size_t>(want.column)];
        if (value > 0) chosen[want.amount] += value;
    }
    std::vector<std::pair<std::int64_t, double>> result;
    result.reserve(chosen.size());
    double sum = 0;
    for (const auto& [amount, value] : chosen) result.emplace_back(amount, sum += value);
    return result;
}

/// Those that no other beats in both.
void keep_the_best(std::vector<Partial>& all) {
    std::sort(all.begin(), all.end(), [](const Partial& a, const Partial& b) {
        return a.missing != b.missing ? a.missing < b.missing : a.amount > b.amount;
    });
    std::int64_t most = -1;
    std::erase_if(all, [&](const Partial& one) {
        if (one.amount <= most) return true;
        most = one.amount;
        return false;
    });
}

/// The members that want `needed` together with the least missing, below `limit`.
std::optional<Partial> least_missing(const RoomInUnits& row, const std::vector<double>& values, std::int64_t needed,
                                     double limit) {
    std::vector<Partial> best(1);
    for (std::size_t g = 0; g < row.groups.size(); ++g) {
        std::vector<Partial> next = best;
        for (const auto& [amount, chosen] : chosen_at_least(row.groups[g], values)) {
            const double missing = std::max(0.0, 1 - chosen) * static_cast<double>(units_for(amount, row.unit));
            for (const Partial& before : best) {
                if (before.missing + missing >= limit) continue;
                Partial with = before;
                with.missing += missing;
                with.amount = std::min(needed, with.amount + amount);
                with.members.push_back({g, amount});
                next.push_back(std::move(with));
            }
        }
        keep_the_best(next);
        best = std::move(next);
    }
    const auto enough = std::find_if(best.begin(), best.end(), [&](const Partial& p) { return p.amount >= needed; });
    return enough == best.end() ? std::nullopt : std::optional(*enough);
}

/// Lets as many options as can be into the members, while they want enough together.
void widen(const RoomInUnits& row, std::int64_t needed, std::vector<Member>& members) {
    std::int64_t spare = -needed;
    for (const Member& member : members) spare += member.least;
    for (Member& member : members) {
        std::int64_t least = member.least;
        for (const auto& want : row.groups[member.group]) {
            if (want.amount >= member.least - spare &&
                units_for(want.amount, row.unit) == units_for(member.least, row.unit))
                least = std::min(least, want.amount);
        }
        spare -= member.least - least;
        member.least = least;
    }
}

/// sum over members of units_for(least) x (chosen - 1)  <=  units - k
Row cover(const RoomInUnits& row, const std::vector<Member>& members, std::int64_t k) {
    Row cut{{}, -unbounded, -static_cast<double>(k)};
    for (const Member& member : members) {
        const auto factor = static_cast<double>(units_for(member.least, row.unit));
        for (const auto& want : row.groups[member.group]) {
            if (want.amount >= member.least) cut.terms.emplace_back(want.column, factor);
        }
        cut.upper += factor;
    }
    cut.terms.emplace_back(row.units, -1.0);
    return cut;
}

}  // namespace

std::vector<Row> covers(const std::vector<RoomInUnits>& rows, const std::vector<double>& values) {
    std::vector<Row> cuts;
    for (const RoomInUnits& row : rows) {
        const double units = values[static_cast<std::size_t>(row.units)];
        const auto k = static_cast<std::int64_t>(std::floor(units + tolerance)) + 1;
        const std::int64_t needed = row.room + (k - 1) * row.unit + 1;
        auto found = least_missing(row, values, needed, static_cast<double>(k) - units - tolerance);
        if (!found) continue;
        widen(row, needed, found->members);
        cuts.push_back(cover(row, found->members, k));
    }
    return cuts;
}

}  // namespace samebase::solver
