#include "stock/packs.hpp"

#include <algorithm>
#include <cassert>
#include <functional>
#include <iterator>
#include <numeric>

#include "basics/exact.hpp"

namespace samebase::stock {

namespace {

constexpr std::int64_t one_pack = 1000;

std::int64_t share(std::int64_t value, std::int64_t part, std::int64_t whole) {
    return basics::fits(basics::scale(value, part, whole));
}

/// The thousandths of a pack that the part pack is: 1 to 999.
std::int64_t part_count(const Lot& lot) {
    return std::clamp<std::int64_t>(share(lot.packs.back(), one_pack, lot.part_of), 1, one_pack - 1);
}

void add_amount(Lot& lot, std::int64_t value) {
    lot.amount += measure::Amount{lot.amount.dimension(), value};
}

}  // namespace

std::int64_t pack_count(const Lot& lot) {
    const auto packs = static_cast<std::int64_t>(lot.packs.size()) * one_pack;
    return lot.part_of == 0 || lot.packs.empty() ? packs : packs - one_pack + part_count(lot);
}

std::int64_t weight_of_packs(const Lot& lot, std::int64_t count) {
    assert(0 <= count && count <= pack_count(lot));
    std::int64_t weight = 0;
    std::int64_t here = lot.part_of == 0 || lot.packs.empty() ? one_pack : part_count(lot);
    for (auto pack = lot.packs.rbegin(); pack != lot.packs.rend() && count > 0; ++pack, here = one_pack) {
        weight += count >= here ? *pack : share(*pack, count, here);
        count -= std::min(count, here);
    }
    return weight;
}

std::int64_t whole_packs_for(const Lot& lot, std::int64_t value) {
    if (lot.packs.empty()) return value;
    std::int64_t weight = 0;
    for (auto pack = lot.packs.rbegin(); pack != lot.packs.rend() && weight < value; ++pack) weight += *pack;
    return weight;
}

std::int64_t whole_pack(const Lot& lot) {
    const auto largest = std::max_element(lot.packs.begin(), lot.packs.end());
    return largest == lot.packs.end() ? 0 : std::max(*largest, lot.part_of);
}

void take(Lot& lot, std::int64_t value) {
    assert(0 <= value && value <= lot.amount.value());
    add_amount(lot, -value);
    while (value > 0 && !lot.packs.empty()) {
        std::int64_t& last = lot.packs.back();
        if (last <= value) {
            value -= last;
            lot.packs.pop_back();
            lot.part_of = 0;
        } else {
            if (lot.part_of == 0) lot.part_of = last;
            last -= value;
            value = 0;
        }
    }
}

Lot split(Lot& lot, std::int64_t value) {
    Lot part = lot;
    part.number = 0;
    part.amount = {lot.amount.dimension(), value};
    part.packs.clear();
    part.part_of = 0;
    std::int64_t left = value;
    std::int64_t cut_from = lot.part_of;
    for (auto pack = lot.packs.rbegin(); pack != lot.packs.rend() && left > 0; ++pack) {
        const std::int64_t here = std::min(*pack, left);
        part.packs.push_back(here);
        if (here < *pack || cut_from != 0) {  // at most the first and the last: the part pack, and the pack that is cut
            part.part_of = std::max({part.part_of, *pack, cut_from});
        }
        left -= here;
        cut_from = 0;
    }
    if (part.part_of != 0) {
        // Only the last pack may be a part: the smallest goes there, and what was cut from others stays a pack as it
        // is.
        std::stable_sort(part.packs.begin(), part.packs.end(), std::greater<>{});
        if (part.part_of <= part.packs.back()) part.part_of = 0;
    }
    take(lot, value);
    return part;
}

Lot split_packs(Lot& lot, std::span<const std::int64_t> weights) {
    const std::int64_t value = std::accumulate(weights.begin(), weights.end(), std::int64_t{0});
    if (lot.packs.empty()) return split(lot, value);
    Lot part = lot;
    part.number = 0;
    part.amount = {lot.amount.dimension(), value};
    part.packs.clear();
    part.part_of = 0;
    for (const std::int64_t weight : weights) {
        const auto pack = std::find(lot.packs.rbegin(), lot.packs.rend(), weight);
        assert(pack != lot.packs.rend());
        if (pack == lot.packs.rbegin() && lot.part_of != 0) {
            part.part_of = lot.part_of;
            lot.part_of = 0;
            part.packs.push_back(weight);
        } else {
            part.packs.insert(part.packs.end() - (part.part_of != 0 ? 1 : 0), weight);
        }
        lot.packs.erase(std::prev(pack.base()));
    }
    add_amount(lot, -value);
    return part;
}

void put(Lot& lot, std::int64_t value) {
    assert(value > 0);
    add_amount(lot, value);
    if (lot.packs.empty()) return;
    if (lot.part_of != 0) {
        const std::int64_t fill = std::min(value, lot.part_of - lot.packs.back());
        lot.packs.back() += fill;
        value -= fill;
        if (lot.packs.back() == lot.part_of) lot.part_of = 0;
    }
    if (value > 0) lot.packs.push_back(value);
}

void put_packs(Lot& lot, std::int64_t count, std::int64_t whole) {
    assert(count > 0 && whole > 0 && (!lot.packs.empty() || lot.amount.value() == 0));
    if (lot.part_of != 0) {
        const std::int64_t gap = one_pack - part_count(lot);
        const std::int64_t missing = lot.part_of - lot.packs.back();
        const std::int64_t fill = count >= gap ? missing : share(missing, count, gap);
        lot.packs.back() += fill;
        add_amount(lot, fill);
        if (lot.packs.back() == lot.part_of) lot.part_of = 0;
        count -= std::min(count, gap);
    }
    for (; count >= one_pack; count -= one_pack) {
        lot.packs.push_back(whole);
        add_amount(lot, whole);
    }
    if (const std::int64_t part = share(whole, count, one_pack); count > 0 && part > 0) {
        lot.packs.push_back(part);
        add_amount(lot, part);
        if (part < whole) lot.part_of = whole;
    }
}

std::vector<std::int64_t> even_packs(std::int64_t total, std::int64_t count) {
    assert(count >= 1 && count <= total);
    std::vector<std::int64_t> packs(static_cast<std::size_t>(count), total / count);
    for (std::int64_t i = 0; i < total % count; ++i) ++packs[static_cast<std::size_t>(i)];
    return packs;
}

}  // namespace samebase::stock
