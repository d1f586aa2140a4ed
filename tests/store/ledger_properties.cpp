// Random command sequences: the ledger's identity, undo of everything, and agreement with a plain map.
#include <rapidcheck.h>
#include <rapidcheck/catch.h>

#include <map>
#include <tuple>

#include "store/workbench.hpp"
#include "support/faulty_disk.hpp"

using namespace samebase;
using namespace samebase::tests;
using kitchen::At;
using kitchen::Change;
using stock::Column;
using store::Mode;
using store::Store;

namespace {

/// All rows as they are stored: what is still to come, and what has been had.
kitchen::Plan whole_plan(const kitchen::Kitchen& kitchen) {
    kitchen::Plan rows = kitchen.plan;
    rows.insert(rows.end(), kitchen.done.begin(), kitchen.done.end());
    std::sort(rows.begin(), rows.end(), [](const kitchen::Planned& a, const kitchen::Planned& b) {
        return std::tuple(a.day, a.meal, a.dish) < std::tuple(b.day, b.meal, b.dish);
    });
    return rows;
}

const LedgerWorld& world = ledger_world();
const basics::Day first_day = day("2026-11-01");

/// One step with loose amounts of things that do not expire, so that a plain map says what has to come of it.
struct Step {
    int what = 0;  ///< got, moved, ate, tossed, counted, undone
    std::size_t ingredient = 0;
    std::uint32_t from = 0;
    std::uint32_t to = 0;
    std::int64_t amount = 0;
    int days = 0;
};

std::ostream& operator<<(std::ostream& out, const Step& s) {
    return out << "{what " << s.what << ", ingredient " << s.ingredient << ", from " << s.from << ", to " << s.to
               << ", amount " << s.amount << ", days " << s.days << "}";
}

rc::Gen<Step> any_step() {
    return rc::gen::build<Step>(
        rc::gen::set(&Step::what, rc::gen::inRange(0, 6)),
        rc::gen::set(&Step::ingredient, rc::gen::inRange<std::size_t>(0, 3)),
        rc::gen::set(&Step::from, rc::gen::inRange<std::uint32_t>(0, 5)),
        rc::gen::set(&Step::to, rc::gen::inRange<std::uint32_t>(0, 5)),
        rc::gen::set(&Step::amount, rc::gen::oneOf(rc::gen::inRange<std::int64_t>(1, 5),
                                                   rc::gen::inRange<std::int64_t>(1, 3'000'000))),
        rc::gen::set(&Step::days, rc::gen::element(0, 0, 1, 3)));
}

const std::array<const char*, 3> lasting{"rice", "oil", "onion"};

using Key = std::pair<std::string, std::string>;

/// The plain map: what is where, and what was ever counted in which column on which day.
struct Model {
    struct Line {
        basics::Day day;
        Key key;
        Column column;
        std::int64_t delta;
    };
    struct Command {
        std::vector<Line> lines;
        bool undone = false;
    };
    std::map<Key, std::int64_t> stock;
    std::vector<Line> lines;
    std::vector<Command> commands;

    void line(basics::Day day, const Key& key, Column column, std::int64_t delta) {
        if (delta == 0) return;
        commands.back().lines.push_back({day, key, column, delta});
        lines.push_back({day, key, column, delta});
        stock[key] += delta;
    }
    void need(basics::Day day, const Key& key, std::int64_t amount) {
        line(day, key, Column::found, std::max<std::int64_t>(0, amount - stock[key]));
    }
    void undo(basics::Day day) {
        for (auto command = commands.rbegin(); command != commands.rend(); ++command) {
            if (command->undone) continue;
            command->undone = true;
            for (const Line& l : command->lines) {
                lines.push_back({day, l.key, l.column, -l.delta});
                stock[l.key] -= l.delta;
            }
            return;
        }
    }
    [[nodiscard]] stock::Movements sums(const Key& key, const basics::Span& span) const {
        stock::Movements m;
        for (const Line& l : lines) {
            if (l.key != key) continue;
            if (l.day < span.first) m.opening += l.delta;
            if (l.day <= span.last) m.closing += l.delta;
            if (span.contains(l.day)) m.count(l.column, l.delta);
        }
        return m;
    }
};

basics::Result<Change> carried_out(const At& at, const Step& s) {
    const auto id = world.ingredient(lasting[s.ingredient]);
    const measure::Amount amount{at.kitchen.catalogue()[id].dimension, s.amount};
    const kitchen::Item item{{{}, id, {}, stock::PlaceId{s.from}}, {amount, {}, {}}, {}};
    switch (s.what) {
        case 0:
            return kitchen::got(at, {{kitchen::Got{id, {amount, {}, {}}, {s.from}, {}, {}, {}, {}, ""}}});
        case 1:
            return kitchen::moved(at, {{item}}, {s.to}, {});
        case 2:
            return kitchen::ate(at, {{item}});
        case 3:
            return kitchen::tossed(at, {{item}}, "stale");
        default:
            return kitchen::count(at, {s.from}, {{kitchen::CountedItem{id, {}, {amount, {}, {}}, {}}}}, false);
    }
}

void expect_of(Model& model, basics::Day day, const Step& s) {
    const auto place = [](std::uint32_t i) { return world.household.places[i].id; };
    const Key from{lasting[s.ingredient], place(s.from)};
    const Key to{lasting[s.ingredient], place(s.to)};
    model.commands.emplace_back();
    switch (s.what) {
        case 0:
            model.line(day, from, Column::in, s.amount);
            break;
        case 1:
            model.need(day, from, s.amount);
            model.line(day, from, Column::moved_out, -s.amount);
            model.line(day, to, Column::moved_in, s.amount);
            break;
        case 2:
        case 3:
            model.need(day, from, s.amount);
            model.line(day, from, s.what == 2 ? Column::used : Column::tossed, -s.amount);
            break;
        default: {
            const std::int64_t more = s.amount - model.stock[from];
            model.line(day, from, more > 0 ? Column::found : Column::lost, more);
        }
    }
    if (model.commands.back().lines.empty()) model.commands.pop_back();  // nothing to write
}

void same_as_model(Store& store, const Model& model, const basics::Span& span) {
    std::map<Key, std::int64_t> there;
    for (const stock::Lot& lot : state_of(store).lots) {
        there[{world.knowledge->catalogue[lot.ingredient].id, world.household.places[lot.place.index()].id}] +=
            lot.amount.value();
    }
    std::map<Key, std::int64_t> expected;
    for (const auto& [key, amount] : model.stock) {
        if (amount != 0) expected.emplace(key, amount);
    }
    RC_ASSERT(there == expected);
    std::map<Key, stock::Movements> moved;
    for (const store::Moved& row : expect(store.movements(span))) {
        // Opening a piece sets it apart within its place, which the map does not know: it goes out and in.
        stock::Movements m = row.sums;
        const std::int64_t within = model.sums({row.ingredient, row.place}, span).moved_in;
        m.moved_out -= m.moved_in - within;
        m.moved_in = within;
        RC_ASSERT(row.sums.balanced());
        moved[{row.ingredient, row.place}] = m;
    }
    for (const auto& [key, amount] : model.stock) {
        const stock::Movements m = model.sums(key, span);
        RC_ASSERT(moved[key] == m);
    }
}

}  // namespace

TEST_CASE("any commands agree with a plain map, and the identity holds after each") {
    const FaultyDisk fast;
    rc::prop("ledger against a map", [] {
        const auto steps = *rc::gen::container<std::vector<Step>>(any_step());
        const auto span_start = *rc::gen::inRange(0, 20);
        const auto span_length = *rc::gen::inRange(0, 20);
        const basics::Span span{first_day + basics::days{span_start},
                                first_day + basics::days{span_start + span_length}};
        const Folder folder;
        Store store = open(folder.file());
        Model model;
        basics::Day today = first_day;
        for (const Step& step : steps) {
            today += basics::days{step.days};
            if (step.what == 5) {
                if (const auto last = expect(store.to_undo())) {
                    RC_ASSERT_FALSE(expect(store.undo(last->number, today)).stale);
                    model.undo(today);
                }
            } else {
                if (step.what == 1 && step.from == step.to) continue;
                const auto done =
                    store::carry_out(store, world.knowledge, world.household, today,
                                     [&](const At& at, const store::State&) { return carried_out(at, step); });
                if (!done) {
                    // Only what was thawed and may not be frozen again, or the shelf, is refused.
                    RC_ASSERT(step.what == 1);
                    continue;
                }
                expect_of(model, today, step);
            }
            same_as_model(store, model, span);
        }
        expect(store.check());
    });
}

TEST_CASE("any commands of any kind keep the ledger sound, and undoing all of them gives the empty kitchen") {
    const FaultyDisk fast;
    rc::prop("ledger sound and undone", [] {
        const auto seeds = *rc::gen::container<std::vector<std::uint64_t>>(rc::gen::arbitrary<std::uint64_t>());
        const Folder folder;
        Store store = open(folder.file());
        kitchen::Kitchen kitchen = world.empty();
        basics::Day today = first_day;
        Dice dice(seeds.size());
        std::vector<store::State> states{state_of(store)};
        for (const std::uint64_t seed : seeds) {
            today += basics::days{dice.roll(3)};
            const auto done = run(store, today, seed);
            if (!done || done->written.command == 0) continue;
            kitchen::apply(kitchen, done->change);
            states.push_back(state_of(store));
            const store::State& now = states.back();
            RC_ASSERT(now.lots == kitchen.lots);
            RC_ASSERT(now.plan == whole_plan(kitchen));
            RC_ASSERT(now.history == kitchen.history);
            RC_ASSERT(store::kitchen_of(world.knowledge, world.household, now).check() == std::nullopt);
            const basics::Span span{today - basics::days{dice.roll(9)}, today};
            for (const store::Moved& row : expect(store.movements(span))) RC_ASSERT(row.sums.balanced());
        }
        expect(store.check());
        while (const auto last = expect(store.to_undo())) {
            RC_ASSERT_FALSE(expect(store.undo(last->number, today)).stale);
            states.pop_back();
            const store::State now = state_of(store);
            RC_ASSERT(now.lots == states.back().lots);
            RC_ASSERT(now.plan == states.back().plan);
            RC_ASSERT(now.history == states.back().history);
            RC_ASSERT(now.facts == states.back().facts);
        }
        RC_ASSERT(states.size() == 1u);
        expect(store.check());
        for (const store::Moved& row : expect(store.movements({first_day, today}))) {
            RC_ASSERT(row.sums == stock::Movements{});
        }
    });
}
