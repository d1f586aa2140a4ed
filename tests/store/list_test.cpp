// What is put on the shopping list by hand, and what the ledger remembers of prices and of the bin.
#include <SQLiteCpp/SQLiteCpp.h>

#include <algorithm>

#include "store/past.hpp"
#include "store/workbench.hpp"

using namespace samebase;
using namespace samebase::tests;
using kitchen::PriceFrom;
using store::Store;

namespace {

const basics::Day today = day("2026-11-25");

store::Done carry_out(Store& store, const store::Compute& compute, basics::Day on = today) {
    const LedgerWorld& world = ledger_world();
    return expect(store::carry_out(store, world.knowledge, world.household, on, compute));
}

void list(Store& store, const std::vector<kitchen::Listed>& rows) {
    static_cast<void>(
        carry_out(store, [&](const kitchen::At& at, const store::State&) { return kitchen::list_add(at, rows); }));
}

kitchen::Got got_of(std::string_view id, std::int64_t packs, std::optional<std::int64_t> paid, bool share = false) {
    const LedgerWorld& world = ledger_world();
    kitchen::Got got;
    got.ingredient = world.ingredient(id);
    got.quantity.packs = packs * 1000;
    got.place = world.place("fridge");
    if (paid) got.paid = basics::Money{*paid};
    got.paid_is_share = share;
    return got;
}

void buy(Store& store, const std::vector<kitchen::Got>& things, basics::Day on = today) {
    static_cast<void>(carry_out(
        store, [&](const kitchen::At& at, const store::State&) { return kitchen::got(at, things); }, on));
}

void undo(Store& store) {
    const auto last = expect(store.to_undo());
    REQUIRE(last);
    REQUIRE_FALSE(expect(store.undo(last->number, today)).stale);
}

kitchen::Past past(Store& store) {
    return store::past_of(expect(store.export_all()), *ledger_world().knowledge);
}

}  // namespace

TEST_CASE("what is put on the list is there, is undone, and is brought out and in") {
    const LedgerWorld& world = ledger_world();
    const Folder folder;
    Store store = open(folder.file());
    const kitchen::Listed candles{"candles", std::nullopt, 2};
    const kitchen::Listed milk{"milk", world.ingredient("milk"), 0};
    list(store, {milk, candles});
    CHECK(state_of(store).listed == std::vector{candles, milk});
    list(store, {{"candles", std::nullopt, 3}});
    CHECK(state_of(store).listed.front().count == 3);
    undo(store);
    CHECK(state_of(store).listed == std::vector{candles, milk});
    const std::vector<std::string> off{"candles"};
    static_cast<void>(
        carry_out(store, [&](const kitchen::At& at, const store::State&) { return kitchen::list_drop(at, off); }));
    CHECK(state_of(store).listed == std::vector{milk});
    expect(store.check());
    const store::Document whole = expect(store.export_all());
    CHECK(whole.list.size() == 7);
    const Folder second;
    Store other = open(second.file());
    expect(other.import_all(whole));
    CHECK(expect(other.export_all()) == whole);
    CHECK(state_of(other).listed == std::vector{milk});
}

TEST_CASE("what arrives goes off the list, and the same said again changes nothing") {
    const LedgerWorld& world = ledger_world();
    const Folder folder;
    Store store = open(folder.file());
    const kitchen::Listed milk{"milk", world.ingredient("milk"), 1};
    list(store, {milk});
    const auto before = expect(store.revision());
    list(store, {milk});
    CHECK(expect(store.revision()) == before);
    buy(store, {got_of("milk", 1, 350)});
    CHECK(state_of(store).listed.empty());
    undo(store);
    CHECK(state_of(store).listed == std::vector{milk});
    const kitchen::Kitchen empty = world.empty();
    const std::vector<std::string> none{"milk"};
    const auto refused = kitchen::list_drop({empty, today, 1}, none);
    REQUIRE_FALSE(refused);
    CHECK(basics::to_text(refused.error().front()) == "milk: is not on the list; expected something on the list");
}

TEST_CASE("a row of the list that was changed by other means is found") {
    const Folder folder;
    {
        Store store = open(folder.file());
        list(store, {{"candles", std::nullopt, 2}});
    }
    SQLite::Database db(folder.file().string(), SQLite::OPEN_READWRITE);
    db.exec("UPDATE list SET count = 5");
    Store store = open(folder.file());
    const auto checked = store.check();
    REQUIRE_FALSE(checked);
    CHECK(checked.error().front().where.ends_with("the shopping list"));
}

TEST_CASE("a total shared among things makes no prices of their own, and what is undone was never paid") {
    const Folder folder;
    Store store = open(folder.file());
    buy(store, {got_of("milk", 2, 700)});
    buy(store, {got_of("milk", 1, 900, true), got_of("peas", 1, 300, true)}, today + basics::days{1});
    buy(store, {got_of("milk", 2, 700)}, today + basics::days{2});
    buy(store, {got_of("rice", 1, 100)}, today + basics::days{2});
    undo(store);
    const kitchen::Past seen = past(store);
    std::vector<PriceFrom> from;
    for (const auto& price : seen.prices) from.push_back(price.from);
    CHECK(from == std::vector{PriceFrom::paid, PriceFrom::share, PriceFrom::share, PriceFrom::paid});
    CHECK(seen.bought.size() == 4);
    CHECK(state_of(store).facts.front().money.minor == 700);
}

TEST_CASE("what went to the bin is remembered with its reason, and what was eaten with its last day") {
    const LedgerWorld& world = ledger_world();
    const Folder folder;
    Store store = open(folder.file());
    buy(store, {got_of("milk", 1, 350), got_of("beef-mince", 2, 1500)});
    const auto item = [&](std::string_view id) {
        kitchen::Item one;
        one.what.ingredient = world.ingredient(id);
        return std::vector{one};
    };
    static_cast<void>(carry_out(store, [&](const kitchen::At& at, const store::State&) {
        return kitchen::tossed(at, item("beef-mince"), "smelt off");
    }));
    static_cast<void>(
        carry_out(store, [&](const kitchen::At& at, const store::State&) { return kitchen::ate(at, item("milk")); }));
    const kitchen::Past gone = past(store);
    REQUIRE(gone.tossed.size() == 1);
    CHECK(gone.tossed.front().reason == "smelt off");
    CHECK(gone.tossed.front().lot.paid == basics::Money{1500});
    REQUIRE(gone.used.size() == 1);
    CHECK(gone.used.front().lot.use_by == today + basics::days{8});
}
