#include "kitchen/detail/draft.hpp"

#include <fmt/format.h>

#include <algorithm>
#include <array>
#include <tuple>
#include <utility>

#include "basics/exact.hpp"
#include "catalogue/hand.hpp"
#include "measure/written.hpp"
#include "stock/opening.hpp"

namespace samebase::kitchen::detail {

namespace {

using Said = catalogue::Keeping::Said;

const catalogue::Keeping& keeping(const catalogue::Ingredient& ingredient, catalogue::Keep keep) {
    return ingredient.keeps[static_cast<std::size_t>(keep)];
}

bool perishable(const catalogue::Ingredient& ingredient) {
    const catalogue::Keeping& fridge = keeping(ingredient, catalogue::Keep::fridge);
    return fridge.said == Said::time && fridge.time.limit == catalogue::Limit::use_by;
}

/// What is begun when a portion is taken: how much is opened at once, and how much of that is taken; 0 where nothing
/// is.
struct Begun {
    std::int64_t unit = 0;
    std::int64_t over = 0;
};

Begun begin(const Draft& draft, const Portion& portion) {
    const Lot& lot = draft.lot(portion.lot);
    const auto& thing = draft.ingredient(lot.ingredient);
    const catalogue::Keeping& once_open = keeping(thing, catalogue::Keep::opened);
    if (lot.opened_on || lot.rough || thing.in_serves || once_open.said != Said::time || portion.value <= 0 ||
        portion.value >= lot.amount.value()) {
        return {};
    }
    // Of what is counted only a piece that is cut is begun.
    if (thing.dimension == measure::Dimension::pieces) return {1000, portion.value % 1000};
    if (stock::in_small_pieces(thing)) return {};
    if (!lot.packs.empty()) {
        std::int64_t before = 0;
        auto pack = lot.packs.rbegin();
        for (; before + *pack < portion.value; ++pack) before += *pack;
        return before + *pack == portion.value ? Begun{} : Begun{*pack, portion.value - before};
    }
    if (once_open.time.limit == catalogue::Limit::use_by) return {lot.amount.value(), portion.value};
    return {};
}

}  // namespace

Draft::Draft(const At& at, std::string command) : at_(at), next_lot_(at.next_lot) {
    for (const Lot& lot : at.kitchen.lots) lots_.emplace_hint(lots_.end(), lot.number, lot);
    change_.command = std::move(command);
    change_.day = at.day;
}

std::vector<LotNumber> Draft::find(const What& what) const {
    std::vector<LotNumber> found;
    for (const auto& [number, lot] : lots_) {
        if (!lot.there() || (what.lot && *what.lot != number)) continue;
        if (what.ingredient && *what.ingredient != lot.ingredient) continue;
        if (what.dish && what.dish != lot.dish) continue;
        if (what.from && *what.from != lot.place) continue;
        found.push_back(number);
    }
    std::stable_sort(found.begin(), found.end(),
                     [&](LotNumber a, LotNumber b) { return lot(a).arrived < lot(b).arrived; });
    return found;
}

Lot Draft::arrive(catalogue::IngredientId id, std::optional<cookbook::DishId> dish, stock::PlaceId place) {
    Lot lot;
    lot.number = next_number();
    lot.ingredient = id;
    lot.dish = dish;
    lot.place = place;
    lot.amount = {ingredient(id).dimension, 0};
    lot.state = stock::freezes(kitchen().place(place).kind) ? stock::State::frozen : stock::State::fresh;
    lot.arrived = day();
    lot.since = day();
    set_dates(lot);
    return lot;
}

void Draft::set_dates(Lot& lot) const {
    stock::set_dates(lot, ingredient(lot.ingredient), kitchen().place(lot.place).kind);
}

void Draft::enter(Kind kind, Column column, const Lot& after, std::int64_t delta, const std::string& reason) {
    stock::Entry entry;
    entry.kind = kind;
    entry.column = column;
    entry.day = day();
    entry.place = after.place;
    entry.delta = delta;
    entry.reason = reason;
    entry.after = after;
    lots_[after.number] = after;
    change_.entries.push_back(std::move(entry));
}

void Draft::take(Kind kind, Column column, LotNumber number, std::int64_t value, const std::string& reason) {
    Lot after = lot(number);
    stock::take(after, value);
    if (after.amount.is_zero()) after.rough.reset();
    enter(kind, column, after, -value, reason);
}

std::int64_t Draft::find_more(LotNumber number, std::int64_t value, const std::string& reason, std::int64_t packs) {
    Lot after = lot(number);
    const std::int64_t before = after.amount.value();
    after.rough.reset();
    if (packs > 0 && (before == 0 || !after.packs.empty())) {
        stock::put_packs(after, packs, basics::fits(basics::scale(value, 1000, packs)));
    } else {
        stock::put(after, value);
    }
    value = after.amount.value() - before;
    enter(Kind::found, Column::found, after, value, reason);
    note_found(after, value);
    return value;
}

void Draft::note_found(const Lot& lot, std::int64_t value) {
    const auto& thing = ingredient(lot.ingredient);
    const std::string name = label(kitchen(), lot.ingredient, lot.dish);
    found_.push_back(name == thing.name ? catalogue::in_hand_named({thing.dimension, value}, thing) : told(lot, value));
    if (found_.size() == 1) {
        found_note_ = change_.notes.size();
        note("");
    }
    change_.notes[found_note_] =
        found_.size() == 1 ? fmt::format("{} more than was known: recorded as found", found_.front())
                           : fmt::format("more than was known, recorded as found: {}", fmt::join(found_, ", "));
}

std::string Draft::told(const Lot& like, std::int64_t value) const {
    const auto& thing = ingredient(like.ingredient);
    const std::string name = label(kitchen(), like.ingredient, like.dish);
    const measure::Amount amount{thing.dimension, value};
    if (name == thing.name) return catalogue::weighed_named(amount, thing);
    return fmt::format("{} {}", catalogue::weighed(amount, thing), name);
}

basics::Result<std::vector<Portion>> Draft::choose(const std::vector<LotNumber>& lots, const Item& item, bool whole) {
    std::vector<Portion> portions;
    if (item.quantity.rough) {
        return basics::problem("", fmt::format("'{}'", measure::name(*item.quantity.rough)),
                               "an amount, or no amount for all");
    }
    if (item.quantity.all()) {
        for (const LotNumber number : lots) portions.push_back({number, lot(number).amount.value()});
        if (portions.empty()) {
            return basics::problem("", "there is none", "something that is in stock", "'samebase stock' lists it");
        }
        return portions;
    }
    if (lots.empty() && !item.what.ingredient) {
        return basics::problem("", "there is none", "something that is in stock", "'samebase stock' lists it");
    }
    const auto id = lots.empty() ? *item.what.ingredient : lot(lots.front()).ingredient;
    std::int64_t short_by = 0;
    std::int64_t packs = 0;
    if (item.quantity.packs) {
        packs = *item.quantity.packs;
        const std::int64_t asked = packs;
        for (const LotNumber number : lots) {
            if (packs == 0) break;
            const Lot& here = lot(number);
            if (here.rough) continue;
            if (!here.packs.empty()) {
                const std::int64_t some = std::min(packs, stock::pack_count(here));
                portions.push_back({number, stock::weight_of_packs(here, some)});
                packs -= some;
                continue;
            }
            const auto size = pack_size(*this, id, item.pack, lots);
            if (!size) return tl::make_unexpected(size.error());
            const std::int64_t wanted = basics::fits(basics::scale(packs, *size, 1000));
            const std::int64_t value = std::min(wanted, here.amount.value());
            portions.push_back({number, value});
            packs = value == wanted ? 0 : basics::fits(basics::scale(wanted - value, 1000, *size));
        }
        if (asked <= 0) return basics::problem("", "an amount of nothing", "an amount above 0");
        if (packs > 0) {
            const auto size = pack_size(*this, id, item.pack, lots);
            if (!size) return tl::make_unexpected(size.error());
            short_by = basics::fits(basics::scale(packs, *size, 1000));
        }
    } else {
        std::int64_t wanted = item.quantity.amount->value();
        if (wanted <= 0) return basics::problem("", "an amount of nothing", "an amount above 0");
        for (const LotNumber number : lots) {
            if (wanted <= 0) break;
            const Lot& here = lot(number);
            if (here.rough) continue;
            const std::int64_t value = std::min(wanted, here.amount.value());
            portions.push_back({number, whole ? stock::whole_packs_for(here, value) : value});
            wanted -= std::min(wanted, portions.back().value);
        }
        short_by = wanted;
    }
    if (short_by == 0) return portions;
    const auto rough = std::find_if(lots.begin(), lots.end(), [&](LotNumber n) { return lot(n).rough.has_value(); });
    if (rough != lots.end() && !whole) {
        note(fmt::format("{}: from what is there as '{}'", told(lot(*rough), short_by),
                         measure::name(*lot(*rough).rough)));
        return portions;
    }
    if (lots.empty() || rough != lots.end()) {
        const auto known = rough != lots.end() ? std::optional{lot(*rough).place} : item.what.from;
        auto place = known ? basics::Result<stock::PlaceId>(*known) : usual_place(*this, id);
        if (!place) return tl::make_unexpected(place.error());
        const Lot fresh = arrive(id, item.what.dish, *place);
        lots_.emplace(fresh.number, fresh);
        portions.push_back({fresh.number, find_more(fresh.number, short_by, "not known to be there", packs)});
        return portions;
    }
    const LotNumber last = lots.back();
    short_by = find_more(last, short_by, "more than was known", packs);
    if (!portions.empty() && portions.back().lot == last) {
        portions.back().value += short_by;
    } else {
        portions.push_back({last, short_by});
    }
    return portions;
}

basics::Result<std::int64_t> pack_size(const Draft& draft, catalogue::IngredientId id,
                                       const std::optional<measure::Amount>& said, const std::vector<LotNumber>& lots) {
    if (said) return said->value();
    for (const LotNumber number : lots) {
        if (const std::int64_t own = stock::whole_pack(draft.lot(number)); own > 0) return own;
    }
    const auto& thing = draft.ingredient(id);
    if (thing.pack) return thing.pack->amount.value();
    return basics::problem(thing.id, fmt::format("nobody has said how large a pack of {} is", thing.name),
                           "a pack size", "say it once, and it is remembered");
}

std::optional<basics::Problem> unfit(const Draft& draft, catalogue::IngredientId id, stock::PlaceId place) {
    const auto& thing = draft.ingredient(id);
    const auto& where = draft.kitchen().place(place);
    if (where.kind == stock::PlaceKind::pantry && perishable(thing) &&
        keeping(thing, catalogue::Keep::pantry).said != Said::time) {
        return basics::Problem{where.id, fmt::format("{} does not keep in the pantry", thing.name),
                               "a fridge or a freezer", std::nullopt};
    }
    const bool flesh = thing.kind == catalogue::Kind::raw && !draft.kitchen().catalogue().meatless(id) &&
                       perishable(thing) && keeping(thing, catalogue::Keep::crisper).said != Said::time;
    if (where.kind == stock::PlaceKind::crisper && flesh) {
        return basics::Problem{where.id, fmt::format("raw {} may drip on what is eaten raw", thing.name),
                               "a fridge or a freezer", std::nullopt};
    }
    return std::nullopt;
}

std::optional<basics::Problem> unfit_whole(const Draft& draft, const Lot& lot, std::optional<stock::PlaceId> place) {
    const auto& thing = draft.ingredient(lot.ingredient);
    const auto head = thing.piece_mg.find("head");
    const bool whole = thing.kind == catalogue::Kind::raw && head != thing.piece_mg.end() && lot.packs.empty() &&
                       thing.dimension == measure::Dimension::mass && lot.amount.value() >= head->second;
    if (!whole || !stock::freezes(draft.kitchen().place(place.value_or(lot.place)).kind)) return std::nullopt;
    return basics::Problem{thing.name, "does not freeze whole", "a fridge or a crisper",
                           fmt::format("cut and blanch it, and say the packs: '2 x 500 g {}'", thing.name)};
}

basics::Result<stock::PlaceId> usual_place(const Draft& draft, catalogue::IngredientId id) {
    if (const auto place = kitchen::usual_place(draft.kitchen(), id)) return *place;
    return basics::problem("kitchen.json, /places", "there is no place to keep anything", "at least one place");
}

void open(Draft& draft, const Portion& portion) {
    Lot rest = draft.lot(portion.lot);
    if (rest.rough || portion.value >= rest.amount.value()) {
        rest.opened_on = draft.day();
        draft.set_dates(rest);
        draft.enter(Kind::opened, Column::none, rest, 0);
        return;
    }
    Lot apart = stock::split(rest, portion.value);
    apart.number = draft.next_number();
    apart.opened_on = draft.day();
    draft.set_dates(apart);
    draft.enter(Kind::opened, Column::moved_out, rest, -portion.value);
    draft.enter(Kind::opened, Column::moved_in, apart, portion.value);
}

void eat(Draft& draft, Kind kind, const Portion& portion) {
    const Begun begun = begin(draft, portion);
    if (begun.over == 0) {
        draft.take(kind, Column::used, portion.lot, portion.value);
        return;
    }
    if (portion.value > begun.over) draft.take(kind, Column::used, portion.lot, portion.value - begun.over);
    open(draft, {portion.lot, begun.unit});
    draft.take(kind, Column::used, draft.change().entries.back().after.number, begun.over);
}

void in_eating_order(const Draft& draft, std::vector<LotNumber>& lots) {
    const auto key = [&](LotNumber number) {
        const Lot& lot = draft.lot(number);
        const bool from_frozen = draft.ingredient(lot.ingredient).thaw == catalogue::Thaw::from_frozen;
        const bool ready = lot.ready(draft.day()) || (from_frozen && lot.state == stock::State::frozen);
        const bool thawed = lot.state == stock::State::thawing || lot.state == stock::State::thawed;
        const bool first = ready && (thawed || lot.opened_on.has_value());
        return std::tuple{!ready, !first, lot.eat_by().value_or(basics::Day::max()), number};
    };
    std::sort(lots.begin(), lots.end(), [&](LotNumber a, LotNumber b) { return key(a) < key(b); });
}

void leave_expired(Draft& draft, std::vector<LotNumber>& lots) {
    std::erase_if(lots, [&](LotNumber number) {
        const Lot& lot = draft.lot(number);
        if (!lot.use_by || *lot.use_by >= draft.day()) return false;
        draft.note(fmt::format("lot {}, {}: past its use-by {}, and left alone: toss it", number,
                               label(draft.kitchen(), lot.ingredient, lot.dish), basics::iso(*lot.use_by)));
        return true;
    });
}

std::string joined(const std::vector<std::string>& parts) {
    std::string text;
    for (std::size_t i = 0; i < parts.size(); ++i) {
        if (i > 0) text += i + 1 == parts.size() ? " and " : ", ";
        text += parts[i];
    }
    return text;
}

std::string few_of(std::vector<std::string> parts) {
    constexpr std::size_t most = 4;
    if (parts.size() <= most) return joined(parts);
    const std::size_t more = parts.size() - (most - 1);
    parts.resize(most - 1);
    parts.push_back(fmt::format("{} more", more));
    return joined(parts);
}

}  // namespace samebase::kitchen::detail
