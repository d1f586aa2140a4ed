#include "stock/lot.hpp"

#include <catch2/catch.hpp>

#include "stock/thaw.hpp"
#include "support/ledger_world.hpp"

using namespace samebase;
using stock::Lot;
using stock::PlaceKind;
using stock::State;
using stock::ThawMethod;
using tests::day;

namespace {

const tests::LedgerWorld& world = tests::ledger_world();

Lot lot(const char* what, State state = State::fresh) {
    Lot it;
    it.number = 1;
    it.ingredient = world.ingredient(what);
    it.amount = {world.knowledge->catalogue[it.ingredient].dimension, 1'000'000};
    it.state = state;
    it.arrived = it.since = day("2026-11-25");
    return it;
}

Lot dated(Lot it, PlaceKind place) {
    stock::set_dates(it, world.knowledge->catalogue[it.ingredient], place);
    return it;
}

}  // namespace

TEST_CASE("a perishable has a use-by wherever it is") {
    CHECK(dated(lot("beef-mince"), PlaceKind::fridge).use_by == day("2026-11-27"));
    CHECK(dated(lot("beef-mince"), PlaceKind::crisper).use_by == day("2026-11-27"));
    CHECK(dated(lot("beef-mince"), PlaceKind::pantry).use_by == day("2026-11-25"));
    CHECK(dated(lot("beef-mince", State::frozen), PlaceKind::far_freezer).best_by == day("2027-02-23"));
    CHECK(dated(lot("cold-meat-loaf"), PlaceKind::pantry).use_by == day("2026-11-25"));
    CHECK(dated(lot("cabbage"), PlaceKind::pantry).use_by == std::nullopt);
}

TEST_CASE("a printed use-by of what is closed and fresh stands, nearer or further than the catalogue") {
    Lot it = lot("beef-mince");
    it.printed_use_by = day("2026-11-26");
    CHECK(dated(it, PlaceKind::fridge).use_by == day("2026-11-26"));
    it.printed_use_by = day("2026-12-26");
    CHECK(dated(it, PlaceKind::fridge).use_by == day("2026-12-26"));
    CHECK(dated(it, PlaceKind::pantry).use_by == day("2026-11-25"));
}

TEST_CASE("frozen and thawed food goes by the catalogue, whatever is printed on it") {
    Lot it = lot("beef-mince", State::frozen);
    it.printed_use_by = day("2026-12-26");
    CHECK(dated(it, PlaceKind::near_freezer).use_by == std::nullopt);
    it.state = State::thawing;
    it.thaw = ThawMethod::fridge;
    it.thawed_on = day("2026-11-26");
    CHECK(dated(it, PlaceKind::fridge).use_by == day("2026-11-27"));
}

TEST_CASE("once opened, the printed day or the time once opened counts, whichever is sooner") {
    Lot it = lot("milk");
    it.printed_use_by = day("2026-12-20");
    CHECK(dated(it, PlaceKind::fridge).use_by == day("2026-12-20"));
    it.opened_on = day("2026-11-26");
    CHECK(dated(it, PlaceKind::fridge).use_by == day("2026-11-30"));
    it.printed_use_by = day("2026-11-28");
    CHECK(dated(it, PlaceKind::fridge).use_by == day("2026-11-28"));
}

TEST_CASE("what was thawed in the fridge keeps for a day once it is ready, and in cold water it is cooked that day") {
    Lot it = lot("beef-mince", State::thawing);
    it.thaw = ThawMethod::fridge;
    it.thawed_on = day("2026-11-26");
    CHECK(dated(it, PlaceKind::fridge).use_by == day("2026-11-27"));
    CHECK_FALSE(it.ready(day("2026-11-25")));
    CHECK(it.ready(day("2026-11-26")));
    it.thaw = ThawMethod::cold_water;
    it.thawed_on = day("2026-11-25");
    CHECK(dated(it, PlaceKind::fridge).use_by == day("2026-11-25"));
}

TEST_CASE("opening never lengthens a use-by") {
    Lot it = lot("milk");
    CHECK(dated(it, PlaceKind::fridge).use_by == day("2026-12-03"));
    it.opened_on = day("2026-11-26");
    CHECK(dated(it, PlaceKind::fridge).use_by == day("2026-11-30"));
    it.opened_on = day("2026-12-02");
    CHECK(dated(it, PlaceKind::fridge).use_by == day("2026-12-03"));
}

TEST_CASE("days to thaw go by the largest pack: a day for every 1.8 kg, one at least") {
    const auto& catalogue = world.knowledge->catalogue;
    Lot it = lot("whole-chicken", State::frozen);
    const auto days = [&](std::int64_t grams, ThawMethod method = ThawMethod::fridge) {
        it.amount = {measure::Dimension::mass, grams * 1000};
        it.packs = {grams * 1000};
        return stock::days_to_thaw(it, catalogue[it.ingredient], method);
    };
    CHECK(days(500) == 1);
    CHECK(days(1'800) == 1);
    CHECK(days(1'801) == 2);
    CHECK(days(5'500) == 4);
    CHECK(days(5'500, ThawMethod::cold_water) == 0);
    Lot loose = lot("peas", State::frozen);
    loose.amount = {measure::Dimension::mass, 9'000'000};
    CHECK(stock::days_to_thaw(loose, catalogue[loose.ingredient], ThawMethod::fridge) == 1);
}

TEST_CASE("a lot that cannot be as it is says why") {
    const auto& catalogue = world.knowledge->catalogue;
    Lot it = lot("beef-mince");
    CHECK(stock::check(it, catalogue) == std::nullopt);
    it.packs = {500'000, 500'001};
    CHECK(stock::check(it, catalogue) == "lot 1: its packs do not sum to its amount");
    it.packs = {1'000'000};
    it.part_of = 1'000'000;
    CHECK(stock::check(it, catalogue) == "lot 1: its last pack is no part of a larger one");
    it = lot("beef-mince");
    it.rough = measure::Rough::some;
    CHECK(stock::check(it, catalogue) == "lot 1 is both rough and weighed");
    it = lot("beef-mince");
    it.amount = {measure::Dimension::volume, 5};
    CHECK(stock::check(it, catalogue) == "lot 1: 'beef-mince' is not counted in that");
    it.amount = {measure::Dimension::mass, -5};
    CHECK(stock::check(it, catalogue) == "lot 1 is below nothing");
}

TEST_CASE("a leftover holds the allergens of its dish") {
    Lot it = lot("cold-meat-loaf");
    it.dish = world.dish("meat-loaf");
    const auto set = stock::counted_allergens(it, world.knowledge->catalogue, world.knowledge->cookbook);
    CHECK(set.members() == std::vector{catalogue::Allergen::wheat, catalogue::Allergen::egg});
}
