#include "stock/entry.hpp"

#include <catch2/catch.hpp>

#include "support/ledger_world.hpp"

using namespace samebase;
using stock::Column;
using stock::Entry;
using stock::Movements;
using tests::day;

namespace {

const tests::LedgerWorld& world = tests::ledger_world();

Entry entry(Column column, const char* on, const char* where, std::int64_t delta, stock::LotNumber lot,
            std::int64_t left) {
    Entry e;
    e.column = column;
    e.day = day(on);
    e.place = world.place(where);
    e.delta = delta;
    e.after.number = lot;
    e.after.ingredient = world.ingredient("rice");
    e.after.amount = {measure::Dimension::mass, left};
    return e;
}

std::vector<Entry> story() {
    std::vector<Entry> list{entry(Column::in, "2026-11-01", "pantry", 900, 1, 900),
                            entry(Column::moved_out, "2026-11-03", "pantry", -400, 1, 500),
                            entry(Column::moved_in, "2026-11-03", "fridge", 400, 2, 400),
                            entry(Column::used, "2026-11-05", "fridge", -100, 2, 300),
                            entry(Column::used, "2026-11-08", "fridge", 100, 2, 400)};
    list.back().kind = stock::Kind::undone;
    return list;
}

}  // namespace

TEST_CASE("every kind and column has one name") {
    for (int i = 0; i < 10; ++i)
        CHECK(stock::read_kind(stock::name(static_cast<stock::Kind>(i))) == static_cast<stock::Kind>(i));
    for (int i = 0; i < 8; ++i)
        CHECK(stock::read_column(stock::name(static_cast<Column>(i))) == static_cast<Column>(i));
    CHECK_FALSE(stock::read_kind("gone"));
}

TEST_CASE("movements count by place and span, and an undo counts back where it was counted") {
    const auto entries = story();
    const auto rice = world.ingredient("rice");
    const basics::Span all{day("2026-11-01"), day("2026-11-30")};
    CHECK(stock::movements(entries, rice, {}, all) == Movements{0, 900, 400, 0, 0, 0, 0, 400, 900});
    CHECK(stock::movements(entries, rice, world.place("fridge"), {day("2026-11-04"), day("2026-11-06")}) ==
          Movements{400, 0, 0, 0, 100, 0, 0, 0, 300});
    CHECK(stock::movements(entries, rice, world.place("fridge"), {day("2026-11-08"), day("2026-11-08")}) ==
          Movements{300, 0, 0, 0, -100, 0, 0, 0, 400});
    CHECK(stock::movements(entries, world.ingredient("milk"), {}, all) == Movements{});
}

TEST_CASE("lots are the sums of their entries, and what does not follow is told") {
    auto entries = story();
    const auto lots = stock::lots_of(entries);
    REQUIRE(lots);
    REQUIRE(lots->size() == 2);
    CHECK((*lots)[0].amount.value() == 500);
    CHECK((*lots)[1].amount.value() == 400);
    entries[3].number = 4;
    entries[3].delta = -99;
    CHECK(stock::lots_of(entries).error() == "entry 4: lot 2 does not follow from what was there before");
}
