// What is put on the shopping list by hand, what goes off it, and what comes onto it because it was used up.
#include <fmt/format.h>

#include <algorithm>
#include <map>
#include <set>

#include "kitchen/changes.hpp"
#include "kitchen/detail/draft.hpp"

namespace samebase::kitchen {

using stock::Column;
using stock::Lot;
using stock::LotNumber;

namespace {

const Listed* on_list(const Kitchen& kitchen, const std::string& words) {
    const auto& listed = kitchen.household.listed;
    const auto found =
        std::find_if(listed.begin(), listed.end(), [&](const Listed& row) { return row.words == words; });
    return found == listed.end() ? nullptr : &*found;
}

std::string told(const Listed& row) {
    return row.count > 0 ? fmt::format("{} {}", row.count, row.words) : row.words;
}

Change begun(const At& at) {
    Change change;
    change.command = "list";
    change.day = at.day;
    return change;
}

/// What an ordinary household has in the house and buys again when the last of it is gone: not what is bought fresh
/// for a meal, which the plan puts on the list.
bool bought_again(const Kitchen& kitchen, catalogue::IngredientId id) {
    const auto& thing = kitchen.catalogue()[id];
    const auto& crisper = thing.keeps[static_cast<std::size_t>(catalogue::Keep::crisper)];
    if (crisper.said == catalogue::Keeping::Said::time) return false;  // fruit and vegetables
    return thing.everyday && thing.kind != catalogue::Kind::cooked && !kitchen.household.staples[id.index()] &&
           !sells(TripFor::fresh, thing);
}

}  // namespace

Change list_add(const At& at, std::span<const Listed> things) {
    Change change = begun(at);
    std::vector<std::string> parts;
    for (const Listed& thing : things) {
        const Listed* known = on_list(at.kitchen, thing.words);
        Listed row = thing;
        if (known != nullptr && row.count == 0) row.count = known->count;
        parts.push_back(told(row));
        if (known != nullptr && *known == row) continue;
        if (known != nullptr) change.list.push_back({false, *known});
        change.list.push_back({true, std::move(row)});
    }
    change.line = "on the list: " + detail::joined(parts);
    return change;
}

basics::Result<Change> list_drop(const At& at, std::span<const std::string> words) {
    Change change = begun(at);
    std::vector<std::string> parts;
    for (const std::string& word : words) {
        const Listed* known = on_list(at.kitchen, word);
        if (known == nullptr) return basics::problem(word, "is not on the list", "something on the list");
        change.list.push_back({false, *known});
        parts.push_back(told(*known));
    }
    change.line = "off the list: " + detail::joined(parts);
    return change;
}

namespace detail {

void list_used_up(const At& at, Change& change) {
    std::set<catalogue::IngredientId> taken;
    std::map<LotNumber, Lot> after;
    for (const Lot& lot : at.kitchen.lots) after.emplace(lot.number, lot);
    for (const stock::Entry& entry : change.entries) {
        after[entry.after.number] = entry.after;
        const bool gone = entry.column == Column::used || entry.column == Column::lost;
        if (gone && bought_again(at.kitchen, entry.after.ingredient)) taken.insert(entry.after.ingredient);
    }
    for (const auto& [number, lot] : after) {
        if (lot.there()) taken.erase(lot.ingredient);
    }
    std::vector<std::string> parts;
    for (const auto id : taken) {
        const std::string& name = at.kitchen.catalogue()[id].name;
        if (on_list(at.kitchen, name) != nullptr) continue;
        change.list.push_back({true, {name, id, 0}});
        parts.push_back(name);
    }
    if (!parts.empty()) change.notes.push_back("used up, and on the list: " + joined(parts));
}

void off_the_list(const At& at, catalogue::IngredientId id, Change& change) {
    for (const Listed& row : at.kitchen.household.listed) {
        const ListEdit edit{false, row};
        const bool there = std::find(change.list.begin(), change.list.end(), edit) != change.list.end();
        if (row.ingredient == id && !there) change.list.push_back(edit);
    }
}

}  // namespace detail

}  // namespace samebase::kitchen
