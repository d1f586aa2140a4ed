#include "flow/told.hpp"

#include <algorithm>
#include <numeric>
#include <tuple>

namespace samebase::flow {

namespace {

using Kind = Finding::Kind;

bool wanted(const Finding& finding) {
    return finding.kind == Kind::short_of || finding.kind == Kind::not_thawed;
}

/// What should have been eaten before today is one thing with what ends today.
bool same_thing(const Finding& a, const Finding& b, basics::Day today) {
    if (a.kind != b.kind) return false;
    if (a.kind == Kind::no_room) return a.place == b.place;
    if (a.ingredient != b.ingredient) return false;
    if (a.kind == Kind::past_use_by) return true;
    if (std::max(a.day, today) != std::max(b.day, today)) return false;
    return wanted(a) ? a.meal == b.meal && a.dish == b.dish : (a.lot == 0) == (b.lot == 0);
}

/// All things, each once, in the order of the first finding about it.
std::vector<Told> things(std::span<const Finding> findings, basics::Day today) {
    std::vector<Told> all;
    for (std::size_t i = 0; i < findings.size(); ++i) {
        const auto known = std::find_if(all.begin(), all.end(),
                                        [&](const Told& told) { return same_thing(told.finding, findings[i], today); });
        if (known == all.end()) {
            all.push_back({findings[i], {i}});
        } else {
            known->of.push_back(i);
        }
    }
    for (Told& told : all) {
        std::stable_sort(told.of.begin(), told.of.end(),
                         [&](std::size_t a, std::size_t b) { return findings[a].price > findings[b].price; });
        Finding sum = findings[told.of.front()];
        if (sum.kind != Kind::no_room) {
            sum.amount = 0;
            sum.price = {};
        }
        for (const std::size_t i : told.of) {
            sum.day = std::min(sum.day, findings[i].day);
            if (sum.kind == Kind::no_room) continue;
            sum.amount += findings[i].amount;
            sum.price += findings[i].price;
        }
        told.finding = sum;
    }
    return all;
}

bool can_hurt(const Finding& finding) {
    return finding.kind == Kind::past_use_by;
}

/// Milligrams of a line as it is written; nothing where the catalogue does not know.
std::optional<std::int64_t> weight(const kitchen::Kitchen& kitchen, const cookbook::DishIngredient& line) {
    const auto mass = catalogue::weight(line.amount, kitchen.catalogue()[line.ingredient]);
    return mass ? std::optional<std::int64_t>(mass->value) : std::nullopt;
}

/// Whether the dish is not the dish without so much of it.
bool carries(const kitchen::Kitchen& kitchen, const Finding& finding) {
    using catalogue::Role;
    constexpr std::int64_t least_part = 10;    // of the dish by weight
    constexpr std::int64_t least_lacking = 4;  // of what it wants of it
    std::int64_t all = 0;
    std::int64_t of_it = 0;
    std::int64_t wanted_of_it = 0;
    bool known = true;
    bool role = false;
    for (const auto& line : kitchen.cookbook()[*finding.dish].ingredients) {
        const auto grams = weight(kitchen, line);
        all += grams.value_or(0);
        if (line.ingredient != finding.ingredient || line.optional) continue;
        role = role || line.role == Role::main || line.role == Role::body || line.role == Role::starch;
        known = known && grams.has_value();
        of_it += grams.value_or(0);
        wanted_of_it += line.amount.value();
    }
    const bool much = finding.amount * least_lacking >= wanted_of_it;
    return role && much && (!known || of_it * least_part >= all);
}

}  // namespace

bool stops_a_meal(const kitchen::Kitchen& kitchen, const Finding& finding) {
    if (finding.kind == Kind::no_room || finding.kind == Kind::not_thawed) return true;
    return finding.kind == Kind::short_of && finding.dish && carries(kitchen, finding);
}

Telling tell(const kitchen::Kitchen& kitchen, basics::Day today, std::span<const Finding> findings, std::size_t most,
             basics::Money from) {
    auto all = things(findings, today);
    std::vector<std::size_t> order(all.size());
    std::iota(order.begin(), order.end(), std::size_t{0});
    const auto must = [&](std::size_t i) { return can_hurt(all[i].finding) || stops_a_meal(kitchen, all[i].finding); };
    const auto rank = [&](std::size_t i) {
        const Finding& finding = all[i].finding;
        return std::tuple(!must(i), !wanted(finding), finding.day > today + basics::days{1}, -finding.price.minor, i);
    };
    std::sort(order.begin(), order.end(), [&](std::size_t a, std::size_t b) { return rank(a) < rank(b); });
    std::vector<bool> chosen(all.size(), false);
    std::size_t count = 0;
    for (const std::size_t i : order) {
        if (!must(i) && (count >= most || all[i].finding.price < from)) continue;
        chosen[i] = true;
        ++count;
    }
    Telling telling;
    for (std::size_t i = 0; i < all.size(); ++i) {
        if (chosen[i]) {
            telling.told.push_back(std::move(all[i]));
        } else {
            ++telling.small;
            telling.small_price += all[i].finding.price;
        }
    }
    return telling;
}

}  // namespace samebase::flow
