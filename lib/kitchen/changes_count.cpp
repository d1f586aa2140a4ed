#include <fmt/format.h>

#include <algorithm>

#include "basics/exact.hpp"
#include "catalogue/hand.hpp"
#include "kitchen/changes.hpp"
#include "kitchen/detail/draft.hpp"
#include "measure/written.hpp"

namespace samebase::kitchen {

using detail::Draft;
using stock::Column;
using stock::Kind;
using stock::Lot;
using stock::LotNumber;

namespace {

const std::string counted_reason = "counted";

/// What there is of one thing in one place, over its lots.
std::string total(const Draft& draft, const std::vector<LotNumber>& lots) {
    std::optional<Lot> sum;
    std::int64_t packs = 0;
    bool all_packed = true;
    for (const LotNumber number : lots) {
        const Lot& lot = draft.lot(number);
        if (!lot.there()) continue;
        if (lot.rough && lots.size() == 1) return std::string{measure::name(*lot.rough)};
        if (lot.rough) continue;
        packs += stock::pack_count(lot);
        all_packed = all_packed && !lot.packs.empty();
        if (sum) {
            sum->amount += lot.amount;
        } else {
            sum = lot;
        }
    }
    if (!sum) return "nothing";
    sum->packs.clear();
    std::string amount = describe(draft.kitchen(), *sum);
    if (!all_packed || packs == 0) return amount;
    return fmt::format("{} ({})", catalogue::packs_in_hand(packs), amount);
}

void clear_rough(Draft& draft, LotNumber number) {
    Lot after = draft.lot(number);
    after.rough.reset();
    draft.enter(Kind::lost, Column::lost, after, 0, counted_reason);
}

void lose_all(Draft& draft, LotNumber number) {
    draft.take(Kind::lost, Column::lost, number, draft.lot(number).amount.value(), counted_reason);
}

/// Present, and left out of sums: the oldest lot stands for all of it.
void count_rough(Draft& draft, const std::vector<LotNumber>& lots, const Lot& fresh, measure::Rough rough) {
    if (!lots.empty() && draft.lot(lots.front()).rough == rough && lots.size() == 1) return;
    Lot after = lots.empty() ? fresh : draft.lot(lots.front());
    const std::int64_t amount = after.amount.value();
    after.amount = {after.amount.dimension(), 0};
    after.packs.clear();
    after.part_of = 0;
    after.rough = rough;
    const std::string reason = fmt::format("counted as '{}'", measure::name(rough));
    if (lots.empty()) {
        draft.enter(Kind::found, Column::found, after, 0, reason);
    } else {
        draft.enter(Kind::lost, Column::lost, after, -amount, reason);
        std::for_each(std::next(lots.begin()), lots.end(), [&](LotNumber number) { lose_all(draft, number); });
    }
}

void correct_amount(Draft& draft, const std::vector<LotNumber>& lots, std::int64_t known, std::int64_t counted) {
    for (const LotNumber number : lots) {
        if (known <= counted) break;
        const std::int64_t gone = std::min(known - counted, draft.lot(number).amount.value());
        if (gone > 0) draft.take(Kind::lost, Column::lost, number, gone, counted_reason);
        known -= gone;
    }
    if (known < counted) {
        Lot after = draft.lot(lots.front());
        after.rough.reset();
        stock::put(after, counted - known);
        draft.enter(Kind::found, Column::found, after, counted - known, counted_reason);
    }
}

/// All lots are in packs.
void correct_packs(Draft& draft, const std::vector<LotNumber>& lots, std::int64_t known, std::int64_t counted,
                   std::int64_t whole) {
    for (const LotNumber number : lots) {
        if (known <= counted) break;
        const std::int64_t gone = std::min(known - counted, stock::pack_count(draft.lot(number)));
        const std::int64_t weight = stock::weight_of_packs(draft.lot(number), gone);
        if (weight > 0) draft.take(Kind::lost, Column::lost, number, weight, counted_reason);
        known -= gone;
    }
    const auto more = [&](LotNumber number, std::int64_t packs) {
        Lot after = draft.lot(number);
        const std::int64_t before = after.amount.value();
        after.rough.reset();
        stock::put_packs(after, packs, whole);
        draft.enter(Kind::found, Column::found, after, after.amount.value() - before, counted_reason);
        known += packs;
    };
    for (const LotNumber number : lots) {  // part packs turn out to be fuller
        if (known >= counted) return;
        const std::int64_t missing = (1000 - stock::pack_count(draft.lot(number)) % 1000) % 1000;
        if (missing > 0) more(number, std::min(missing, counted - known));
    }
    if (known < counted) more(lots.front(), counted - known);
}

/// What is loose, or one lot in other packs, is in `counted` thousandths of packs of the weight `whole`.
void pack_again(Draft& draft, const std::vector<LotNumber>& lots, std::int64_t counted, std::int64_t whole) {
    constexpr std::int64_t one = 1000;
    for (const LotNumber number : lots) {
        Lot after = draft.lot(number);
        const std::int64_t amount = after.amount.value();
        if (after.rough || amount <= 0 || whole <= 0) continue;
        if (amount % whole == 0) {
            after.packs.assign(static_cast<std::size_t>(amount / whole), whole);
        } else if (lots.size() == 1 && counted % one == 0 && amount >= counted / one) {
            after.packs = stock::even_packs(amount, counted / one);
        } else {
            continue;
        }
        after.part_of = 0;
        if (after != draft.lot(number)) draft.enter(Kind::found, Column::found, after, 0, "counted in packs");
    }
}

/// Whether all of it is past its best and of no danger: what is more than that was bought since.
bool past_its_best(const Draft& draft, const std::vector<LotNumber>& lots) {
    return !lots.empty() && std::all_of(lots.begin(), lots.end(), [&](LotNumber number) {
        const Lot& lot = draft.lot(number);
        return !lot.use_by && lot.best_by && *lot.best_by < draft.day();
    });
}

basics::Result<void> count_one(Draft& draft, stock::PlaceId place, const CountedItem& item) {
    const auto& thing = draft.ingredient(item.ingredient);
    std::vector<LotNumber> lots = draft.find({{}, item.ingredient, item.dish, place});
    Counted counted{item.ingredient, item.dish, total(draft, lots), {}};
    const Quantity& quantity = item.quantity;
    if (quantity.all()) return basics::problem(thing.name, "no amount", "how much there is");
    if ((quantity.amount && quantity.amount->value() < 0) || (quantity.packs && *quantity.packs < 0)) {
        return basics::problem(thing.name, "less than nothing", "an amount of 0 or more");
    }
    if (quantity.rough) {
        count_rough(draft, lots, lots.empty() ? draft.arrive(item.ingredient, item.dish, place) : Lot{},
                    *quantity.rough);
    } else if (quantity.amount.value_or(measure::Amount{}).value() == 0 && quantity.packs.value_or(0) == 0) {
        for (const LotNumber number : lots) lose_all(draft, number);
    } else {
        const auto weighed = [&](LotNumber number) { return !draft.lot(number).rough; };
        std::vector<LotNumber> exact = lots;
        std::stable_partition(exact.begin(), exact.end(), weighed);
        const auto rough = std::find_if_not(exact.begin(), exact.end(), weighed);
        // What is weighed now stands for the rough ones too.
        const auto spare = rough == exact.begin() && rough != exact.end() ? std::next(rough) : rough;
        for (auto lot = spare; lot != exact.end(); ++lot) clear_rough(draft, *lot);
        exact.erase(spare, exact.end());
        std::int64_t known = 0;
        std::int64_t known_packs = 0;
        for (const LotNumber number : exact) {
            known += draft.lot(number).amount.value();
            known_packs += stock::pack_count(draft.lot(number));
        }
        const bool loose = std::any_of(exact.begin(), exact.end(), [&](LotNumber number) {
            return draft.lot(number).packs.empty() && !draft.lot(number).rough;
        });
        std::int64_t whole = 0;
        if (quantity.packs && !quantity.amount) {
            const auto size = detail::pack_size(draft, item.ingredient, item.pack, exact);
            if (!size) return tl::make_unexpected(size.error());
            whole = *size;
        }
        const bool by_packs = whole > 0 && !loose;
        const std::int64_t there =
            whole > 0 ? basics::fits(basics::scale(*quantity.packs, whole, 1000)) : quantity.amount->value();
        if (past_its_best(draft, exact) && (by_packs ? *quantity.packs > known_packs : there > known)) {
            for (const LotNumber number : exact) lose_all(draft, number);
            exact.clear();
        }
        const bool said = quantity.packs.value_or(0) >= 1000 && (item.pack || quantity.amount);
        const bool other = exact.size() == 1 && whole > 0 && stock::whole_pack(draft.lot(exact.front())) != whole &&
                           known_packs != *quantity.packs;
        if (exact.empty()) {
            Lot fresh = draft.arrive(item.ingredient, item.dish, place);
            if (whole > 0) {
                stock::put_packs(fresh, *quantity.packs, whole);
            } else {
                fresh.amount = *quantity.amount;
                if (quantity.packs && *quantity.packs >= 1000 && fresh.amount.value() >= *quantity.packs / 1000) {
                    fresh.packs = stock::even_packs(fresh.amount.value(), *quantity.packs / 1000);
                }
            }
            draft.enter(Kind::found, Column::found, fresh, fresh.amount.value(), counted_reason);
            lots.push_back(fresh.number);
        } else if (by_packs && !(said && other)) {
            correct_packs(draft, exact, known_packs, *quantity.packs, whole);
        } else {
            correct_amount(draft, exact, known, there);
            const std::int64_t each =
                whole > 0 ? whole : there / std::max<std::int64_t>(1, quantity.packs.value_or(0) / 1000);
            if (said && (loose || other)) pack_again(draft, exact, *quantity.packs, each);
        }
    }
    if (lots.empty() && !draft.change().entries.empty()) {
        const Lot& last = draft.change().entries.back().after;
        if (last.ingredient == item.ingredient) lots.push_back(last.number);
    }
    counted.is = total(draft, lots);
    draft.change().counted.push_back(std::move(counted));
    return {};
}

}  // namespace

basics::Result<Change> count(const At& at, stock::PlaceId place, std::span<const CountedItem> things, bool all) {
    Draft draft(at, "count");
    if (place.index() >= at.kitchen.household.places.size()) return basics::problem("", "no such place", "a place");
    for (std::size_t i = 0; i < things.size(); ++i) {
        for (std::size_t j = 0; j < i; ++j) {
            const bool clash = things[i].ingredient == things[j].ingredient &&
                               (!things[i].dish || !things[j].dish || things[i].dish == things[j].dish);
            if (clash) {
                return basics::problem(draft.ingredient(things[i].ingredient).name, "counted twice", "one count of it",
                                       "add the two up");
            }
        }
        if (auto done = count_one(draft, place, things[i]); !done) return tl::make_unexpected(done.error());
    }
    if (all) {
        for (const LotNumber number : draft.find({{}, {}, {}, place})) {
            const Lot lot = draft.lot(number);
            const bool named = std::any_of(things.begin(), things.end(), [&](const CountedItem& item) {
                return item.ingredient == lot.ingredient && (!item.dish || item.dish == lot.dish);
            });
            if (named) continue;
            draft.change().counted.push_back({lot.ingredient, lot.dish, describe(at.kitchen, lot), "nothing"});
            lose_all(draft, number);
        }
    }
    std::vector<std::string> parts;
    for (const Counted& counted : draft.change().counted) {
        const std::string name = label(at.kitchen, counted.ingredient, counted.dish);
        parts.push_back(counted.was == counted.is ? fmt::format("{} {}", counted.is, name)
                                                  : fmt::format("{} {} -> {}", name, counted.was, counted.is));
    }
    draft.change().line = fmt::format("counted {}: {}", at.kitchen.place(place).name, detail::joined(parts));
    detail::list_used_up(at, draft.change());
    return draft.change();
}

}  // namespace samebase::kitchen
