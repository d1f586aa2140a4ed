#include "support/history_generator.hpp"

#include <algorithm>
#include <array>
#include <set>
#include <string>
#include <utility>

#include "kitchen/changes.hpp"
#include "support/ledger_world.hpp"
#include "support/random_commands.hpp"

namespace samebase::tests {

namespace {

using kitchen::At;
using kitchen::Change;

/// A household that lives from day to day, and writes down what it does.
class Life {
  public:
    explicit Life(const Past& past)
        : dice_(past.seed), today_(past.last - basics::days{365 * past.years + past.years / 4}), last_(past.last) {}

    store::Document lived() {
        for (; today_ < last_; today_ += basics::days{1}) {
            const std::chrono::weekday weekday{today_};
            const std::chrono::year_month_day date{today_};
            if (weekday == std::chrono::Saturday) shop();
            if (date.day() == std::chrono::day{1}) set_up_month();
            if (weekday == std::chrono::Monday) plan_week();
            lunch();
            breakfast();
            if (!dice_.one_in(80)) dinner();
            clear_out();
        }
        return std::move(document_);
    }

  private:
    [[nodiscard]] catalogue::IngredientId thing(const char* id) const { return world_.ingredient(id); }
    [[nodiscard]] std::int64_t there(const char* id, const char* where = nullptr) const {
        std::int64_t sum = 0;
        for (const stock::Lot& lot : kitchen_.lots) {
            if (lot.ingredient == thing(id) && (where == nullptr || lot.place == world_.place(where)))
                sum += lot.amount.value();
        }
        return sum;
    }

    /// Applies and writes down what a command does; one that is refused or empty never happened.
    template <class Compute>
    void does(Compute compute) {
        const At at{kitchen_, today_, next_lot_};
        basics::Result<Change> change = compute(at);
        if (!change || change->empty()) return;
        next_lot_ = kitchen::next_lot(at, *change);
        write(*change);
        kitchen::apply(kitchen_, *change);
    }

    void write(const Change& change);

    void get(const char* id, std::int64_t packs, std::int64_t amount, const char* where, std::int64_t paid) {
        kitchen::Got got{thing(id), {}, world_.place(where), {}, {}, basics::Money{paid}, {}, ""};
        if (packs > 0) {
            got.quantity.packs = packs * 1000;
        } else {
            got.quantity.amount = {kitchen_.catalogue()[got.ingredient].dimension, amount};
        }
        basket_.push_back(got);
    }

    void shop() {
        basket_.clear();
        const std::int64_t mince = there("beef-mince");
        if (mince < 4'000'000) get("beef-mince", 14, 0, "far-freezer", 9'800 + dice_.roll(900));
        if (there("whole-chicken") < 4'000'000) get("whole-chicken", 3, 0, "far-freezer", 3'400 + dice_.roll(300));
        if (there("eggs") < 12'000) get("eggs", 3, 0, "fridge", 1'700 + dice_.roll(200));
        if (there("onion") < 6'000) get("onion", 0, 8'000, "pantry", 350);
        if (there("cabbage") < 1'500) get("cabbage", 0, 2'000, "crisper", 700 + dice_.roll(200));
        if (there("rice") < 1'000'000) get("rice", 2, 0, "pantry", 1'000);
        if (there("peas") < 1'000'000) get("peas", 2, 0, "near-freezer", 640);
        if (there("pasta-sauce") < 1'000'000) get("pasta-sauce", 3, 0, "pantry", 840);
        get("milk", 3, 0, "fridge", 1'050 + dice_.roll(90));
        if (dice_.one_in(3)) get("parsley", 0, 40'000, "crisper", 300);
        does([&](const At& at) { return kitchen::got(at, basket_); });
    }

    kitchen::Item item(const char* id, const char* from, std::int64_t packs, std::int64_t amount = 0) const {
        kitchen::Item it{{{}, thing(id), {}, {}}, {}, {}};
        if (from != nullptr) it.what.from = world_.place(from);
        if (packs > 0) it.quantity.packs = packs * 1000;
        if (amount > 0) it.quantity.amount = {kitchen_.catalogue()[thing(id)].dimension, amount};
        return it;
    }

    void set_up_month() {
        const std::array<kitchen::Item, 2> things{item("beef-mince", "far-freezer", 6),
                                                  item("whole-chicken", "far-freezer", 2)};
        does([&](const At& at) { return kitchen::moved(at, things, world_.place("near-freezer"), {}); });
        std::vector<kitchen::CountedItem> counted;
        for (const char* id : {"beef-mince", "peas"}) {
            std::int64_t packs = 0;
            const std::int64_t size = kitchen_.catalogue()[thing(id)].pack->amount.value();
            packs = there(id, "near-freezer") / size * 1000 + (dice_.one_in(2) ? 0 : (dice_.roll(3) - 1) * 1000);
            counted.push_back({thing(id), {}, {{}, std::max<std::int64_t>(packs, 0), {}}, {}});
        }
        does([&](const At& at) { return kitchen::count(at, world_.place("near-freezer"), counted, false); });
    }

    void plan_week() {
        kitchen::Plan rows;
        for (int i = 0; i < 7; ++i) {
            const auto dish = static_cast<std::uint32_t>((dice_.roll(100) + i) % 4);
            rows.push_back({today_ + basics::days{i},
                            kitchen::Meal::dinner,
                            cookbook::DishId{dish},
                            false,
                            {},
                            dish == 1 ? 2 : 0});
        }
        does([&](const At& at) {
            return kitchen::set_plan(at, {today_, today_ + basics::days{6}}, kitchen::Meal::dinner, rows, "plan");
        });
    }

    void breakfast() {
        std::vector<kitchen::Item> things{item("milk", nullptr, 0, 400'000 + dice_.roll(5) * 50'000)};
        if (there("milk") < 500'000) return;
        if (there("eggs") > 4'000 && dice_.one_in(2)) things.push_back(item("eggs", nullptr, 0, 2'000));
        if (there("pasta-sauce") > 300'000 && dice_.one_in(5))
            things.push_back(item("pasta-sauce", nullptr, 0, 250'000));
        does([&](const At& at) { return kitchen::ate(at, things); });
    }

    void lunch() {
        for (const char* id : {"cold-meat-loaf", "cold-roast-chicken"}) {
            if (there(id, "fridge") == 0) continue;
            const std::array<kitchen::Item, 1> things{
                item(id, "fridge", 0, std::min<std::int64_t>(there(id, "fridge"), 2'000))};
            does([&](const At& at) { return kitchen::ate(at, things); });
        }
    }

    void take_out(const char* id, std::int64_t packs) {
        const std::array<kitchen::Item, 1> things{item(id, "near-freezer", packs)};
        if (there(id, "near-freezer") == 0) return;
        does([&](const At& at) {
            return kitchen::moved(at, things, world_.place("fridge"), stock::ThawMethod::cold_water);
        });
    }

    void dinner() {
        const kitchen::Planned* planned = kitchen::planned(kitchen_.plan, today_, kitchen::Meal::dinner);
        kitchen::Cooked what;
        what.dish = planned != nullptr ? planned->dish : cookbook::DishId{static_cast<std::uint32_t>(dice_.roll(4))};
        if (dice_.one_in(6)) {  // they change their mind
            what.dish = cookbook::DishId{static_cast<std::uint32_t>(dice_.roll(4))};
            does([&](const At& at) {
                return kitchen::set_meal(at, {today_, kitchen::Meal::dinner, what.dish, false, {}, 0});
            });
        }
        if (what.dish == world_.dish("meat-loaf")) take_out("beef-mince", 2);
        if (what.dish == world_.dish("roast-chicken")) take_out("whole-chicken", 1);
        what.serves = 5'000 + dice_.roll(3) * 1'000;
        what.eaten = 4'000;
        what.freeze = dice_.one_in(12) ? 1'000 : 0;
        if (!kitchen_.cookbook()[what.dish].leaves) what.freeze = 0;
        what.leftovers = world_.place("fridge");
        what.freezer = world_.place("near-freezer");
        does([&](const At& at) { return kitchen::cooked(at, what); });
    }

    /// What is past its use-by, or long past its best-by, goes.
    void clear_out() {
        std::vector<kitchen::Item> things;
        for (const stock::Lot& lot : kitchen_.lots) {
            const bool gone = lot.use_by && *lot.use_by <= today_;
            const bool poor = lot.best_by && *lot.best_by + basics::days{20} <= today_;
            if (gone || poor) things.push_back({{lot.number, {}, {}, {}}, {}, {}});
        }
        if (!things.empty()) does([&](const At& at) { return kitchen::tossed(at, things, "too old"); });
    }

    const LedgerWorld& world_ = ledger_world();
    Dice dice_;
    kitchen::Kitchen kitchen_ = ledger_world().empty();
    stock::LotNumber next_lot_ = 1;
    basics::Day today_;
    basics::Day last_;
    std::vector<kitchen::Got> basket_;
    store::Document document_;
    std::set<stock::LotNumber> arrived_;
};

store::Standing standing(const LedgerWorld& world, const stock::Lot& lot) {
    store::Standing now;
    now.place = world.household.places[lot.place.index()].id;
    now.amount = lot.amount.value();
    now.rough = lot.rough;
    now.packs = lot.packs;
    now.part_of = lot.part_of;
    now.state = lot.state;
    now.since = lot.since;
    now.opened_on = lot.opened_on;
    now.thaw = lot.thaw;
    now.thawed_on = lot.thawed_on;
    now.printed_use_by = lot.printed_use_by;
    now.use_by = lot.use_by;
    now.best_by = lot.best_by;
    if (lot.paid) now.paid = lot.paid->minor;
    now.paid_for = lot.paid_for;
    now.note = lot.note;
    return now;
}

template <class Row>
std::int64_t next_in(const std::vector<Row>& rows) {
    return static_cast<std::int64_t>(rows.size()) + 1;
}

void Life::write(const Change& change) {
    const auto& catalogue = kitchen_.catalogue();
    const auto& cookbook = kitchen_.cookbook();
    const std::int64_t command = next_in(document_.commands);
    document_.commands.push_back({command, change.day, change.command, change.line, {}});
    for (const stock::Entry& entry : change.entries) {
        const stock::Lot& lot = entry.after;
        if (arrived_.insert(lot.number).second) {
            std::optional<std::string> dish;
            if (lot.dish) dish = cookbook[*lot.dish].id;
            std::vector<std::string> also;
            for (const auto allergen : lot.also.members()) also.emplace_back(catalogue::name(allergen));
            document_.lots.push_back(
                {lot.number, catalogue[lot.ingredient].id, dish, lot.arrived, lot.amount.dimension(), std::move(also)});
        }
        document_.entries.push_back({next_in(document_.entries),
                                     command,
                                     entry.kind,
                                     entry.column,
                                     entry.day,
                                     lot.number,
                                     world_.household.places[entry.place.index()].id,
                                     entry.delta,
                                     entry.reason,
                                     {},
                                     standing(world_, lot)});
    }
    for (const kitchen::PlanEdit& edit : change.plan) {
        document_.plan.push_back({next_in(document_.plan),
                                  command,
                                  edit.adds,
                                  edit.row.day,
                                  edit.row.meal,
                                  cookbook[edit.row.dish].id,
                                  edit.row.ready_meal,
                                  {},
                                  edit.row.left});
    }
    for (const kitchen::HistoryEdit& edit : change.history) {
        document_.history.push_back(
            {next_in(document_.history), command, edit.adds, edit.row.day, edit.row.meal, cookbook[edit.row.dish].id});
    }
}

}  // namespace

store::Document generate(const Past& past) {
    return Life(past).lived();
}

}  // namespace samebase::tests
