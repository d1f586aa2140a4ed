#include "catalogue/catalogue.hpp"

#include <algorithm>
#include <array>
#include <catch2/catch.hpp>
#include <iterator>
#include <optional>
#include <set>
#include <string>
#include <string_view>
#include <utility>
#include <vector>

#include "basics/problem.hpp"
#include "catalogue/role.hpp"

using namespace samebase::catalogue;
using samebase::basics::to_text;
using samebase::measure::Amount;
using samebase::measure::Dimension;

namespace {

constexpr Keeping never{.said = Keeping::Said::never, .time = {}};

constexpr Keeping days(int number, Limit limit) {
    return {.said = Keeping::Said::time, .time = {.days = number, .limit = limit}};
}

Keeping& at(KeepingTimes& times, Keep keep) {
    return times[static_cast<std::size_t>(keep)];
}
const Keeping& at(const KeepingTimes& times, Keep keep) {
    return times[static_cast<std::size_t>(keep)];
}

Family family(std::string id, std::optional<FamilyId> parent = std::nullopt,
              std::optional<double> siblings = std::nullopt) {
    Family made;
    made.name = id;
    made.id = std::move(id);
    made.parent = parent;
    made.siblings = siblings;
    return made;
}

Ingredient ingredient(std::string id, FamilyId family) {
    Ingredient made;
    made.name = id;
    made.id = std::move(id);
    made.family = family;
    return made;
}

constexpr FamilyId meat{0};
constexpr FamilyId mince{1};
constexpr FamilyId vegetables{2};

/// meat > mince; vegetables. Beef mince and lamb mince are mince, ham is meat, kale is a vegetable.
struct World {
    std::vector<Family> families{family("meat", std::nullopt, 0.5), family("mince", meat, 0.85), family("vegetables")};
    std::vector<Ingredient> ingredients{ingredient("beef-mince", mince), ingredient("ham", meat),
                                        ingredient("kale", vegetables), ingredient("lamb-mince", mince)};

    [[nodiscard]] Catalogue catalogue() const { return {families, ingredients}; }
    [[nodiscard]] std::string reason() const { return catalogue().check().value_or("sound"); }
};

constexpr IngredientId beef_mince{0};
constexpr IngredientId ham{1};
constexpr IngredientId kale{2};
constexpr IngredientId lamb_mince{3};

}  // namespace

TEST_CASE("a catalogue knows things by their identifiers") {
    const Catalogue catalogue = World{}.catalogue();
    CHECK(catalogue.ingredient("beef-mince") == beef_mince);
    CHECK(catalogue.ingredient("lamb-mince") == lamb_mince);
    CHECK(catalogue.ingredient("mince") == std::nullopt);
    CHECK(catalogue.ingredient("") == std::nullopt);
    CHECK(catalogue.family("mince") == mince);
    CHECK(catalogue.family("beef-mince") == std::nullopt);
    CHECK(catalogue.ingredient_or_family("kale") == Of{kale});
    CHECK(catalogue.ingredient_or_family("vegetables") == Of{vegetables});
    CHECK(catalogue.ingredient_or_family("fruit") == std::nullopt);
    CHECK(catalogue.name(Of{kale}) == "kale");
    CHECK(catalogue.slug(Of{mince}) == "mince");
}

TEST_CASE("ancestors go from the nearest family to the root, and members are all below, in order") {
    const Catalogue catalogue = World{}.catalogue();
    const auto above = catalogue.ancestors(beef_mince);
    CHECK(std::vector<FamilyId>(above.begin(), above.end()) == std::vector<FamilyId>{mince, meat});
    const auto below = catalogue.members(meat);
    CHECK(std::vector<IngredientId>(below.begin(), below.end()) ==
          std::vector<IngredientId>{beef_mince, ham, lamb_mince});
    CHECK(catalogue.members(vegetables).size() == 1);
    CHECK(catalogue.belongs(beef_mince, meat));
    CHECK(catalogue.belongs(ham, meat));
    CHECK_FALSE(catalogue.belongs(ham, mince));
    CHECK(catalogue.is(ham, Of{ham}));
    CHECK(catalogue.is(lamb_mince, Of{meat}));
    CHECK_FALSE(catalogue.is(ham, Of{kale}));
    CHECK_FALSE(catalogue.is(kale, Of{meat}));
}

TEST_CASE("a family that says cooking does not matter is not overruled by its parent, as tinned fish by seafood") {
    World world;
    world.families[meat.index()].cook_to = 63;
    world.families[mince.index()].cook_to = 0;
    const Catalogue catalogue = world.catalogue();
    CHECK_FALSE(catalogue[beef_mince].cook_to);
    CHECK(catalogue[ham].cook_to == 63);
}

TEST_CASE("what an ingredient does not say is said by its nearest family that does") {
    World world;
    at(world.families[meat.index()].keeps, Keep::fridge) = days(3, Limit::use_by);
    at(world.families[meat.index()].keeps, Keep::freezer) = days(180, Limit::best_by);
    at(world.families[meat.index()].keeps, Keep::pantry) = never;
    at(world.families[mince.index()].keeps, Keep::fridge) = days(1, Limit::use_by);
    at(world.ingredients[lamb_mince.index()].keeps, Keep::freezer) = days(90, Limit::best_by);
    at(world.ingredients[ham.index()].keeps, Keep::pantry) = days(2, Limit::best_by);
    world.families[meat.index()].cook_to = 63;
    world.families[mince.index()].cook_to = 75;
    world.families[meat.index()].thaw = Thaw::block;
    world.families[mince.index()].thaw = Thaw::flat;
    world.families[meat.index()].ml_per_kg = 1500;
    world.ingredients[ham.index()].cook_to = 60;
    world.ingredients[ham.index()].thaw = Thaw::from_frozen;
    const Catalogue catalogue = world.catalogue();

    const Ingredient& beef = catalogue[beef_mince];
    CHECK(at(beef.keeps, Keep::fridge) == days(1, Limit::use_by));
    CHECK(at(beef.keeps, Keep::freezer) == days(180, Limit::best_by));
    CHECK(at(beef.keeps, Keep::pantry) == never);
    CHECK(at(beef.keeps, Keep::thawed) == Keeping{});
    CHECK(beef.cook_to == 75);
    CHECK(beef.thaw == Thaw::flat);
    CHECK(beef.ml_per_kg == 1500);
    CHECK(at(catalogue[lamb_mince].keeps, Keep::freezer) == days(90, Limit::best_by));
    CHECK(at(catalogue[ham].keeps, Keep::fridge) == days(3, Limit::use_by));
    CHECK(at(catalogue[ham].keeps, Keep::pantry) == days(2, Limit::best_by));
    CHECK(catalogue[ham].cook_to == 60);
    CHECK(catalogue[ham].thaw == Thaw::from_frozen);
    CHECK(catalogue[kale].cook_to == std::nullopt);
    CHECK(catalogue[kale].thaw == Thaw::not_said);
}

TEST_CASE("check() gives the reason for each invariant that is broken") {
    World world;
    CHECK(world.reason() == "sound");
    CHECK(Catalogue().check() == std::nullopt);
    SECTION("1: the order of families") {
        world.families[2].id = "apples";
        CHECK(world.reason() == "family 'apples' is out of order");
    }
    SECTION("1: a family twice") {
        world.families[2].id = "mince";
        CHECK(world.reason() == "family 'mince' is out of order");
    }
    SECTION("1: the order of ingredients") {
        world.ingredients[1].id = "artichoke";
        CHECK(world.reason() == "ingredient 'artichoke' is out of order");
    }
    SECTION("1: one identifier for both") {
        world.ingredients[3].id = "mince";
        CHECK(world.reason() == "'mince' is both a family and an ingredient");
    }
    SECTION("2: a family above itself") {
        world.families[0].parent = mince;
        CHECK(world.reason() == "family 'meat' is its own ancestor");
    }
    SECTION("2: a family that is its own parent") {
        world.families[2].parent = vegetables;
        CHECK(world.reason() == "family 'vegetables' is its own ancestor");
    }
    SECTION("3: a fit outside (0, 1)") {
        const double fit = GENERATE(0.0, 1.0, -0.5, 1.5);
        world.families[2].siblings = fit;
        CHECK(world.reason() == "family 'vegetables': the fit of siblings is not between 0 and 1");
    }
    SECTION("3: a parent whose members are more alike than its child's") {
        world.families[0].siblings = 0.9;
        CHECK(world.reason() == "family 'mince' has a fit of siblings below that of its parent 'meat'");
    }
    SECTION("4: cooked, and not in serves") {
        world.ingredients[1].kind = Kind::cooked;
        CHECK(world.reason() == "'ham': what is cooked, and only that, is counted in serves");
    }
    SECTION("4: in serves, and not cooked") {
        world.ingredients[1].in_serves = true;
        CHECK(world.reason() == "'ham': what is cooked, and only that, is counted in serves");
    }
    SECTION("4: cooked, with a pack") {
        world.ingredients[1].kind = Kind::cooked;
        world.ingredients[1].in_serves = true;
        world.ingredients[1].dimension = Dimension::pieces;
        world.ingredients[1].pack = Pack{.amount = {Dimension::pieces, 1000}, .name = "tub", .price = {}};
        CHECK(world.reason() == "'ham' is cooked and has a pack");
    }
    SECTION("4: a pack in another dimension") {
        world.ingredients[2].pack = Pack{.amount = {Dimension::pieces, 1000}, .name = "bunch", .price = {}};
        CHECK(world.reason() == "'kale': its pack is not an amount of what it is counted in");
    }
    SECTION("4: a pack of nothing") {
        world.ingredients[2].pack = Pack{.amount = {Dimension::mass, 0}, .name = "bunch", .price = {}};
        CHECK(world.reason() == "'kale': its pack is not an amount of what it is counted in");
    }
}

TEST_CASE("amounts turn into what the ingredient is counted in, or say what the catalogue lacks") {
    Ingredient flour = ingredient("plain-flour", meat);
    const Amount cup{Dimension::volume, 250'000};
    const Amount two{Dimension::pieces, 2000};
    const auto error = [&](const Amount& amount) {
        const auto result = in_own_dimension(amount, flour);
        REQUIRE_FALSE(result);
        REQUIRE(result.error().size() == 1);
        return to_text(result.error()[0]);
    };
    CHECK(
        error(cup) ==
        "plain-flour: its density is not in the catalogue; expected a density in g per mL, to turn a volume into what "
        "it is counted in");
    CHECK(error(two) ==
          "plain-flour: the weight of one piece is not in the catalogue; expected a weight in g, to turn pieces into "
          "what "
          "it is counted in");
    CHECK(weight(cup, flour) == std::nullopt);

    flour.conversion = {.mg_per_ml = 528, .mg_per_piece = 50'000};
    CHECK(in_own_dimension(cup, flour) == Amount{Dimension::mass, 132'000});
    CHECK(in_own_dimension(two, flour) == Amount{Dimension::mass, 100'000});
    CHECK(in_own_dimension(Amount{Dimension::mass, 7}, flour) == Amount{Dimension::mass, 7});
    CHECK(weight(cup, flour) == samebase::measure::Mass{132'000});
    CHECK(error(Amount{Dimension::pieces, samebase::measure::most_readable * 1000}) ==
          "plain-flour: the amount is too large; expected an amount below a million tonnes");
}

TEST_CASE("a keeping time is read as it is written, and nothing else is") {
    CHECK(read_keeping_time("2 days use-by") == KeepingTime{.days = 2, .limit = Limit::use_by});
    CHECK(read_keeping_time("1 day use-by") == KeepingTime{.days = 1, .limit = Limit::use_by});
    CHECK(read_keeping_time("0 days use-by") == KeepingTime{.days = 0, .limit = Limit::use_by});
    CHECK(read_keeping_time("180 days best-by") == KeepingTime{.days = 180, .limit = Limit::best_by});
    CHECK(read_keeping_time("3660 days best-by") == KeepingTime{.days = 3660, .limit = Limit::best_by});
    for (const std::string_view text : {"", "days use-by", "-1 days use-by", "3661 days best-by", "2 days",
                                        "2 days use by", " 2 days use-by", "2 days use-by ", "2  days use-by",
                                        "2.5 days use-by", "99999999999 days use-by", "2 weeks best-by", "never"}) {
        INFO(text);
        CHECK(read_keeping_time(text) == std::nullopt);
    }
}

TEST_CASE("names of places and roles are read back as what they name") {
    for (std::size_t i = 0; i < keep_count; ++i) {
        CHECK(read_keep(name(static_cast<Keep>(i))) == static_cast<Keep>(i));
    }
    for (const Role role : all_roles) CHECK(read_role(name(role)) == role);
    CHECK(read_keep("attic") == std::nullopt);
    CHECK(read_role("Main") == std::nullopt);
}

TEST_CASE("the allergens are those of the three published lists, and no others") {
    // Australia New Zealand Food Standards Code, Standard 1.2.3 and Schedule 9, names for the summary statement. Gluten
    // stands for barley, oats and rye (and for wheat that contains it); "added sulphites" from 10 mg/kg.
    const std::set<std::string_view> australia_new_zealand{
        "wheat", "gluten", "almond",   "brazil-nut", "cashew",     "hazelnut", "macadamia",
        "pecan", "walnut", "pine-nut", "pistachio",  "crustacean", "egg",      "fish",
        "lupin", "milk",   "mollusc",  "peanut",     "sesame",     "soy",      "sulphites"};
    // Regulation (EU) No 1169/2011, Annex II: 14 entries. Entry 1, cereals containing gluten, are wheat and gluten
    // here; entry 8 names eight nuts.
    const std::set<std::string_view> european_union{
        "wheat",  "gluten",   "crustacean", "egg",       "fish",  "peanut",     "soy",       "milk",
        "almond", "hazelnut", "walnut",     "cashew",    "pecan", "brazil-nut", "pistachio", "macadamia",
        "celery", "mustard",  "sesame",     "sulphites", "lupin", "mollusc"};
    // US Federal Food, Drug, and Cosmetic Act, section 201(qq), as amended in 2004 and 2021: nine, with tree nuts as
    // one (which nuts those are is left to guidance: the nuts of the other two lists).
    const std::set<std::string_view> united_states{
        "milk",       "egg",    "fish",     "crustacean", "peanut",    "wheat",     "soy",    "sesame",  "almond",
        "brazil-nut", "cashew", "hazelnut", "pecan",      "macadamia", "pistachio", "walnut", "pine-nut"};
    std::set<std::string_view> expected = australia_new_zealand;
    expected.insert(european_union.begin(), european_union.end());
    expected.insert(united_states.begin(), united_states.end());

    std::set<std::string_view> ours;
    for (const Allergen allergen : AllergenSet::all().members()) ours.insert(name(allergen));
    CHECK(ours == expected);
    CHECK(ours.size() == allergen_count);
    for (const std::string_view written : expected) {
        INFO(written);
        const auto allergen = read_allergen(written);
        REQUIRE(allergen);
        CHECK(name(*allergen) == written);
    }
    CHECK(read_allergen("nuts") == std::nullopt);
    CHECK(read_allergen("Milk") == std::nullopt);

    // What the lists do not share, as the law's own tables give it.
    const auto only_in = [](const auto& a, const auto& b) {
        std::set<std::string_view> rest;
        std::set_difference(a.begin(), a.end(), b.begin(), b.end(), std::inserter(rest, rest.end()));
        return rest;
    };
    CHECK(only_in(european_union, australia_new_zealand) == std::set<std::string_view>{"celery", "mustard"});
    CHECK(only_in(australia_new_zealand, european_union) == std::set<std::string_view>{"pine-nut"});
    CHECK(only_in(australia_new_zealand, united_states) ==
          std::set<std::string_view>{"gluten", "lupin", "mollusc", "sulphites"});
}

TEST_CASE("allergens that are not known count as all") {
    Ingredient thing = ingredient("mystery-sauce", meat);
    CHECK(thing.counted_allergens() == AllergenSet::all());
    thing.allergens = AllergenSet();
    CHECK(thing.counted_allergens().empty());
    AllergenSet milk_and_egg;
    milk_and_egg.add(Allergen::milk);
    milk_and_egg.add(Allergen::egg);
    thing.allergens = milk_and_egg;
    CHECK(thing.counted_allergens().members() == std::vector<Allergen>{Allergen::egg, Allergen::milk});
    CHECK(milk_and_egg.has(Allergen::milk));
    CHECK_FALSE(milk_and_egg.has(Allergen::walnut));
    AllergenSet egg;
    egg.add(Allergen::egg);
    CHECK(milk_and_egg.shared_with(egg) == egg);
    egg.add(milk_and_egg);
    CHECK(egg == milk_and_egg);
    CHECK(AllergenSet::all().has(Allergen::walnut));
}
