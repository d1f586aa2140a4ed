#include "ask/swap.hpp"

#include <fmt/format.h>

#include <algorithm>

#include "ask/detail/at_table.hpp"

namespace samebase::ask {

namespace {

basics::Result<kitchen::Change> change_of(const kitchen::At& at, const SwapQuestion& question) {
    for (const auto day : {question.row.day, question.other.value_or(question.row.day)}) {
        if (day < at.day)
            return basics::problem("swap", basics::iso(day), fmt::format("a day from {} on", basics::iso(at.day)));
    }
    for (const kitchen::Planned& done : at.kitchen.done) {
        const bool meant = done.day == question.row.day || done.day == question.other;
        if (!meant || done.meal != question.row.meal || done.meal == kitchen::Meal::lunch) continue;
        return basics::problem("swap", fmt::format("dinner on {} has been had", basics::short_day(done.day)),
                               "a day that is still to come", "'samebase undo' takes a meal back that was not cooked");
    }
    if (question.nothing) {
        auto change = kitchen::set_plan(at, {question.row.day, question.row.day}, question.row.meal, {}, "swap");
        if (change)
            change->line = fmt::format("{} on {}: open", name(question.row.meal), basics::short_day(question.row.day));
        return change;
    }
    if (question.other) return kitchen::swap_days(at, question.row.day, *question.other, question.row.meal);
    const kitchen::Planned& row = question.row;
    if (row.ready_meal && !row.swaps.empty())
        return basics::problem("swap", "a ready meal with something in place of something",
                               "one or the other: it is as it was cooked");
    const auto* there = kitchen::planned(at.kitchen.plan, row.day, row.meal, row.dish);
    const bool as_planned = there != nullptr && !there->ready_meal && !row.ready_meal && !row.serves && row.left == 0;
    if (as_planned && !row.swaps.empty()) return kitchen::set_swaps(at, *there, kitchen::both(row.swaps, there->swaps));
    return kitchen::set_meal(at, row);
}

/// "gluten-free sausages in place of beef sausages, for everyone: someone at the table avoids what they hold".
std::string for_everyone(const kitchen::Kitchen& kitchen, const flow::LineSwap& swap) {
    std::vector<std::string> names;
    for (const auto& [id, amount] : swap.use) names.push_back(kitchen.catalogue()[id].name);
    return fmt::format("{} in place of {}, for everyone: someone at the table avoids what is in it.",
                       fmt::join(names, " and "), kitchen.catalogue()[swap.of].name);
}

/// Refuses what someone there must not have and nothing helps. What must be replaced for all is planned so. Returns
/// what those at the table must know.
basics::Result<std::vector<std::string>> set_the_table(const kitchen::At& at, kitchen::Change& change) {
    kitchen::Kitchen changed = at.kitchen;
    kitchen::apply(changed, change);
    std::vector<std::string> cautions;
    for (kitchen::PlanEdit& edit : change.plan) {
        if (!edit.adds) continue;
        const std::string when = basics::short_day(edit.row.day);
        const auto tell = [&](const std::string& caution) { cautions.push_back(fmt::format("{}: {}", when, caution)); };
        detail::AtTable table = detail::at_table(changed, edit.row);
        if (!table.refused.empty()) {
            return basics::problem(fmt::format("{} on {}", at.kitchen.cookbook()[edit.row.dish].name, when),
                                   table.refused.front(), "a dish that everyone at the table may have");
        }
        if (!table.swaps.empty()) {
            for (const flow::LineSwap& swap : table.swaps) tell(for_everyone(at.kitchen, swap));
            edit.row.swaps = kitchen::both(table.swaps, edit.row.swaps);
            table = detail::at_table(changed, edit.row);
        }
        for (const std::string& caution : table.cautions) tell(caution);
    }
    return cautions;
}

/// What is in the first and not in the second.
template <class Thing, class Same>
std::vector<Thing> without(const std::vector<Thing>& first, const std::vector<Thing>& second, const Same& same) {
    std::vector<Thing> result;
    for (const Thing& thing : first) {
        const bool there =
            std::any_of(second.begin(), second.end(), [&](const Thing& other) { return same(thing, other); });
        if (!there) result.push_back(thing);
    }
    return result;
}

/// To whoever takes it out, one pack of a lot is as good as another.
bool same_move(const flow::ThawMove& a, const flow::ThawMove& b) {
    return a.lot == b.lot && a.day == b.day && a.packs == b.packs && a.for_day == b.for_day && a.for_meal == b.for_meal;
}

}  // namespace

basics::Result<SwapAnswer> ask_swap(const kitchen::At& at, const SwapQuestion& question) {
    auto change = change_of(at, question);
    if (!change) return tl::make_unexpected(change.error());
    auto cautions = set_the_table(at, *change);
    if (!cautions) return tl::make_unexpected(cautions.error());
    SwapAnswer answer;
    answer.cautions = std::move(*cautions);
    kitchen::Kitchen changed = at.kitchen;
    kitchen::apply(changed, *change);
    const auto last =
        std::max({flow::horizon(at.kitchen, at.day), question.row.day, question.other.value_or(question.row.day)});
    const flow::Balancer balancer(at.kitchen, {at.day, last});
    const flow::Balance before = balancer.balance(balancer.planned());
    std::vector<flow::Cooking> cookings;
    for (const kitchen::Planned& row : changed.plan) {
        if (before.span.contains(row.day)) cookings.push_back(flow::cook(changed, row));
    }
    const flow::Balance after = balancer.rebalance(before, std::move(cookings));
    const auto found_before = flow::findings(at.kitchen, before);
    const auto found_after = flow::findings(changed, after);
    const auto same = [](const flow::Finding& a, const flow::Finding& b) { return a == b; };
    answer.change = std::move(*change);
    answer.before = before.totals;
    answer.after = after.totals;
    answer.gone = without(found_before, found_after, same);
    answer.fresh = without(found_after, found_before, same);
    const auto moves_before = flow::thaw_moves(at.kitchen, before);
    const auto moves_after = flow::thaw_moves(changed, after);
    answer.thaw = without(moves_after, moves_before, same_move);
    answer.unthaw = without(moves_before, moves_after, same_move);
    return answer;
}

}  // namespace samebase::ask
