#include <algorithm>
#include <set>

#include "basics/exact.hpp"
#include "flow/detail/search.hpp"

namespace samebase::flow::detail {

namespace {

/// One thing to decide, of one unit or of several that are alike: `options` in turn put into the decisions.
struct Choice {
    enum class What : std::uint8_t { thaw, open, buy };
    What what = What::thaw;
    std::vector<std::size_t> indices;       ///< units, or the slot of the offer
    std::vector<std::vector<int>> options;  ///< by index a day, -1 for not; or a number of packs
    int opened_day = -1;                    ///< of packs that are bought
};

/// Whether so many units with so many options each, in one order only, are more ways than can be tried.
bool too_many_ways(std::size_t units, std::size_t options, std::int64_t most) {
    std::int64_t ways = 1;
    for (std::size_t i = 1; i <= units; ++i) {
        ways = ways * static_cast<std::int64_t>(options - 1 + i) / static_cast<std::int64_t>(i);
        if (ways > most) return true;
    }
    return false;
}

/// Every way to give so many units one of the values each, in the order of the values.
std::vector<std::vector<int>> in_one_order(const std::vector<int>& values, std::size_t units) {
    std::vector<std::vector<int>> ways;
    std::vector<std::size_t> at(units, 0);
    while (true) {
        auto& way = ways.emplace_back();
        for (const std::size_t i : at) way.push_back(values[i]);
        std::size_t last = units;
        while (last > 0 && at[last - 1] + 1 == values.size()) --last;
        if (last == 0) return ways;
        const std::size_t next = at[last - 1] + 1;
        std::fill(at.begin() + static_cast<std::ptrdiff_t>(last) - 1, at.end(), next);
    }
}

class Choices {
  public:
    Choices(const Component& component, std::int64_t most) : component_(component), most_(most) {
        for (const Want& want : component.wants) days_.insert(day_of(want.slot));
        for (std::size_t u = 0; u < component.units.size();) u += add_alike(u);
        if (component.offer) add_offer(*component.offer);
    }

    /// Their number; nothing where there are more than `most`.
    [[nodiscard]] std::optional<std::int64_t> combinations() const {
        if (too_many_) return std::nullopt;
        std::int64_t product = 1;
        for (const Choice& choice : choices_) {
            product *= static_cast<std::int64_t>(choice.options.size());
            if (product > most_) return std::nullopt;
        }
        return product;
    }

    [[nodiscard]] Decisions combination(std::int64_t number) const {
        Decisions decisions;
        decisions.ready_day.assign(component_.units.size(), -1);
        decisions.opened_day.assign(component_.units.size(), -1);
        if (component_.offer) decisions.packs.assign(component_.offer->slots.size(), 0);
        for (const Choice& choice : choices_) {
            const auto size = static_cast<std::int64_t>(choice.options.size());
            const auto& values = choice.options[static_cast<std::size_t>(number % size)];
            number /= size;
            for (std::size_t i = 0; i < values.size(); ++i) decide(choice, i, values[i], decisions);
        }
        return decisions;
    }

  private:
    void decide(const Choice& choice, std::size_t at, int value, Decisions& decisions) const {
        if (choice.what == Choice::What::thaw) {
            decisions.ready_day[choice.indices[at]] = value;
        } else if (choice.what == Choice::What::open) {
            decisions.opened_day[choice.indices[at]] = value;
        } else {
            decisions.packs[choice.indices[at]] += value;
            if (component_.offer->opened_days < 0) return;
            decisions.bought_opened_day.insert(decisions.bought_opened_day.end(), static_cast<std::size_t>(value),
                                               choice.opened_day);
        }
    }

    /// A choice for a unit and those that follow and are like it; returns how many they are.
    std::size_t add_alike(std::size_t first) {
        const Unit& unit = component_.units[first];
        std::size_t end = first + 1;
        while (end < component_.units.size() && component_.units[end] == unit) ++end;
        const auto values = choices_of(component_, unit);
        if (values.empty()) return end - first;
        if (too_many_ways(end - first, values.size(), most_)) {
            too_many_ = true;
            return end - first;
        }
        Choice choice{unit.thaw_days > 0 ? Choice::What::thaw : Choice::What::open, {}, {}};
        for (std::size_t i = first; i < end; ++i) choice.indices.push_back(i);
        choice.options = in_one_order(values, end - first);
        choices_.push_back(std::move(choice));
        return end - first;
    }

    void add_offer(const Offer& offer) {
        for (std::size_t i = 0; i < offer.slots.size(); ++i) {
            const Slot from = offer.slots[i];
            const Slot to = offer.keeps_days < 0 ? never : dinner_of(day_of(from) + offer.keeps_days);
            if (offer.opened_days < 0) {
                add_packs(i, from, to, -1);
                continue;
            }
            for (const int day : days_) {
                if (dinner_of(day) < from || lunch_of(day) > to) continue;
                add_packs(i, std::max(from, lunch_of(day)), std::min(to, dinner_of(day + offer.opened_days)), day);
            }
        }
    }

    /// No more packs than what is wanted in their time could empty.
    void add_packs(std::size_t slot, Slot from, Slot to, int opened_day) {
        std::int64_t wanted = 0;
        for (const Want& want : component_.wants) wanted += want.slot >= from && want.slot <= to ? want.amount : 0;
        const auto most = basics::scale_up(wanted, 1, component_.offer->pack);
        if (most > most_) {
            too_many_ = true;
            return;
        }
        Choice choice{Choice::What::buy, {slot}, {}, opened_day};
        for (int packs = 0; packs <= most; ++packs) choice.options.push_back({packs});
        choices_.push_back(std::move(choice));
    }

    const Component& component_;
    std::int64_t most_;
    bool too_many_ = false;
    std::set<int> days_;
    std::vector<Choice> choices_;
};

}  // namespace

std::vector<int> choices_of(const Component& component, const Unit& unit) {
    if (unit.thaw_days <= 0 && unit.opened_days < 0) return {};
    std::set<int> days;
    for (const Want& want : component.wants) days.insert(day_of(want.slot));
    std::vector<int> values{-1};
    for (const int day : days) {
        if (dinner_of(day) < unit.first || lunch_of(day) > unit.last) continue;
        if (unit.thaw_days > 0 && day < unit.thaw_days && !(day == 0 && unit.cold_water)) continue;
        values.push_back(day);
    }
    return values;
}

std::optional<Outcome> by_trying(const Component& component, std::int64_t most) {
    const Choices choices(component, most);
    const auto count = choices.combinations();
    if (!count) return std::nullopt;
    std::optional<Outcome> best;
    std::optional<Value> least;
    for (std::int64_t i = 0; i < *count; ++i) {
        Outcome outcome = carry_out(component, choices.combination(i));
        Value value = outcome.value(component);
        if (least && *least <= value) continue;
        least = std::move(value);
        best = std::move(outcome);
    }
    return best;
}

}  // namespace samebase::flow::detail
