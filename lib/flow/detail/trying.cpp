#include <algorithm>
#include <set>

#include "basics/exact.hpp"
#include "flow/detail/search.hpp"

namespace samebase::flow::detail {

namespace {

/// One thing to decide: `options` values in turn put into the decisions.
struct Choice {
    enum class What : std::uint8_t { thaw, open, buy };
    What what = What::thaw;
    std::size_t index = 0;     ///< unit, or slot of the offer
    std::vector<int> options;  ///< days with -1 for not; or numbers of packs
    int opened_day = -1;       ///< of packs that are bought
};

class Choices {
  public:
    explicit Choices(const Component& component) : component_(component) {
        for (const Want& want : component.wants) days_.insert(day_of(want.slot));
        for (std::size_t u = 0; u < component.units.size(); ++u) add_unit(component.units[u], u);
        if (component.offer) add_offer(*component.offer);
    }

    /// Their number; `most` + 1 where it is more than that.
    [[nodiscard]] std::int64_t combinations(std::int64_t most) const {
        std::int64_t product = 1;
        for (const Choice& choice : choices_) {
            product *= static_cast<std::int64_t>(choice.options.size());
            if (product > most) return most + 1;
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
            const int value = choice.options[static_cast<std::size_t>(number % size)];
            number /= size;
            if (choice.what == Choice::What::thaw) {
                decisions.ready_day[choice.index] = value;
            } else if (choice.what == Choice::What::open) {
                decisions.opened_day[choice.index] = value;
            } else {
                decisions.packs[choice.index] += value;
                if (component_.offer->opened_days >= 0) {
                    decisions.bought_opened_day.insert(decisions.bought_opened_day.end(),
                                                       static_cast<std::size_t>(value), choice.opened_day);
                }
            }
        }
        return decisions;
    }

  private:
    void add_unit(const Unit& unit, std::size_t index) {
        if (unit.thaw_days <= 0 && unit.opened_days < 0) return;
        Choice choice{unit.thaw_days > 0 ? Choice::What::thaw : Choice::What::open, index, {-1}};
        for (const int day : days_) {
            if (dinner_of(day) < unit.first || lunch_of(day) > unit.last) continue;
            if (unit.thaw_days > 0 && day < unit.thaw_days && !(day == 0 && unit.cold_water)) continue;
            choice.options.push_back(day);
        }
        choices_.push_back(std::move(choice));
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
        Choice choice{Choice::What::buy, slot, {}, opened_day};
        for (int packs = 0; packs <= std::min<std::int64_t>(most, most_packs); ++packs) choice.options.push_back(packs);
        if (most > most_packs) choice.options.resize(too_many);
        choices_.push_back(std::move(choice));
    }

    static constexpr std::int64_t most_packs = 50;
    static constexpr std::size_t too_many = 1'000'000;

    const Component& component_;
    std::set<int> days_;
    std::vector<Choice> choices_;
};

}  // namespace

std::optional<Outcome> by_trying(const Component& component, std::int64_t most) {
    const Choices choices(component);
    const auto count = choices.combinations(most);
    if (count > most) return std::nullopt;
    std::optional<Outcome> best;
    std::optional<Value> least;
    for (std::int64_t i = 0; i < count; ++i) {
        Outcome outcome = carry_out(component, choices.combination(i));
        Value value = outcome.value(component);
        if (least && *least <= value) continue;
        least = std::move(value);
        best = std::move(outcome);
    }
    return best;
}

}  // namespace samebase::flow::detail
