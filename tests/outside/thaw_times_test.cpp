// Every published figure on thawing that we hold, row by row as it stands in its table, against what this program does.
// Where two sources differ the stricter wins: which one that is stands in the last cell (ours: as strict as the
// strictest source, and stricter than this one; same: this one is the strictest that we know).
//
// All rows are marked as seen in a copy of their source, but for "secondary": pages that quote the source, which was
// not seen itself.
#include <algorithm>
#include <catch2/catch.hpp>
#include <functional>
#include <map>
#include <set>

#include "ask/thaw.hpp"
#include "stock/thaw.hpp"
#include "support/frozen.hpp"
#include "support/table.hpp"

using namespace samebase;
using catalogue::Keep;
using stock::ThawMethod;
using tests::demo;
using tests::demo_day;

namespace {

// item | value | unit | condition | status | who is stricter
constexpr std::string_view published = R"(
@ USDA FSIS, The Big Thaw - Safe Defrosting Methods (2013; page itself not seen, restated next); University of Nebraska-Lincoln Extension, How to thaw meat and poultry safely, citing USDA (food.unl.edu)
large item (turkey, whole bird, roast) | 24 | h per 4-5 lb (1.8-2.3 kg) | fridge thaw at or below 4 C | seen | same
@ US land-grant extension nutrition programme, Safe thawing practices (buyeatlivebetter.org)
any frozen food | 24 | h per 5 lb (2.27 kg), minimum 24 h | fridge thaw | seen | ours
@ University of Nebraska-Lincoln Extension, How to thaw meat and poultry safely, citing USDA (food.unl.edu)
1 lb (454 g) ground meat or boneless chicken breasts | 24 | h (at least) | fridge thaw | seen | same
@ NSW Government, Storing meat and poultry page (nsw.gov.au)
boneless chicken breasts | overnight | | fridge thaw | seen | ours
whole chicken | 1-2 | days or longer | fridge thaw | seen | same
@ University of Nebraska-Lincoln Extension, How to thaw meat and poultry safely, citing USDA (food.unl.edu); University of Illinois Extension, Meat safety: thawing, citing FSIS The Big Thaw 2013 (extension.illinois.edu)
1 lb (454 g) package | 1 | h or less | cold water, changed every 30 min, leakproof bag | seen | same
@ University of Illinois Extension, Meat safety: thawing, citing FSIS The Big Thaw 2013 (extension.illinois.edu); US land-grant extension nutrition programme, Safe thawing practices (buyeatlivebetter.org)
3-4 lb (1.4-1.8 kg) package | 2-3 | h | cold water, changed every 30 min | seen | same
@ University of Nebraska-Lincoln Extension, citing USDA (food.unl.edu); University of Illinois Extension, citing FSIS The Big Thaw 2013 (extension.illinois.edu); US land-grant extension nutrition programme (buyeatlivebetter.org)
whole turkey | 30 | min per lb (66 min per kg) | cold water, changed every 30 min | seen | same
@ NSW Government, Storing meat and poultry page (nsw.gov.au)
1.5-2 kg package | 2-3 | h | cold water, changed every 30 min | seen | same
@ University of Nebraska-Lincoln Extension, citing USDA (food.unl.edu); US land-grant extension nutrition programme (buyeatlivebetter.org)
ground meat, stew meat, poultry, seafood | 1-2 | days | cook within, after fridge thaw | seen | ours
@ University of Nebraska-Lincoln Extension, citing USDA (food.unl.edu); US land-grant extension nutrition programme (buyeatlivebetter.org); University of Illinois Extension (extension.illinois.edu)
red meat cuts (roasts, chops, steaks) | 3-5 | days | cook within, after fridge thaw | seen | ours
@ NSW Government, Storing meat and poultry page (nsw.gov.au)
meat and poultry | 1 | day | keep after fridge thaw before cooking (AU, stricter) | seen | same
@ NSW Food Authority, Leftovers page (foodauthority.nsw.gov.au)
frozen cooked leftovers | 24 | h | use within, after fridge thaw (AU, stricter) | seen | same
@ US land-grant extension nutrition programme (buyeatlivebetter.org); University of Nebraska-Lincoln Extension, citing USDA (food.unl.edu)
cold-water or microwave thawed food | 0 | days | cook immediately | seen | same
refreeze raw, fridge-thawed | allowed | | quality loss only (US) | seen | ours
@ secondary pages quoting USDA FSIS
refreeze raw, cold-water/microwave-thawed | only after cooking | | US | seen, secondary | same
refreeze, out of fridge over 2 h (1 h above 32 C) | not allowed | | US | seen, secondary | ours
refreeze thawed cooked leftovers, fridge-thawed | allowed | | US; freeze within 3-4 days | seen, secondary | ours
@ Better Health Channel (Victoria) guideline, Freezing food safely, as republished (sfoodfeedf.org)
refreeze raw thawed food | never | | AU (Victoria), stricter than US | seen | same
microwave thaw | cook immediately | | AU (Victoria) and US | seen | same
@ NSW Government, Storing meat and poultry page (nsw.gov.au); University of Nebraska-Lincoln Extension, citing USDA (food.unl.edu)
bench-top thaw | not allowed | | AU (NSW) and US | seen | same
@ Northern Territory Government, Food safety: defrosting (nt.gov.au, 2015)
refreeze thawed food | avoid | | AU (Northern Territory Government, Defrosting; nt.gov.au, 2015) | seen | ours
@ Northern Territory Government, Food safety: defrosting (nt.gov.au); ACT Standard 3.2.2 guidance (accesscanberra.act.gov.au)
fridge thaw temperature | 5 | C or below | AU | seen | same
@ Diabetes UK freezing advice (diabetes.org.uk)
refreeze leftovers after defrost | never | | UK | seen | same
)";

constexpr std::int64_t pound_mg = 453'592;
const std::vector<std::string_view> large{"whole-birds", "roasting-meat"};
const std::vector<std::string_view> flesh{"meat", "seafood"};

const catalogue::Ingredient& thing(catalogue::IngredientId id) {
    return demo().catalogue()[id];
}

std::vector<catalogue::IngredientId> members(std::string_view id) {
    if (const auto one = demo().catalogue().ingredient(id)) return {*one};
    const auto family = demo().catalogue().family(id);
    INFO("ingredient or family " << id);
    REQUIRE(family);
    const auto all = demo().catalogue().members(*family);
    REQUIRE_FALSE(all.empty());
    return {all.begin(), all.end()};
}

stock::Lot one_pack(catalogue::IngredientId id, std::int64_t mg) {
    stock::Lot lot;
    lot.ingredient = id;
    lot.amount = measure::Mass{mg};
    lot.packs = {mg};
    return lot;
}

/// Hours in the fridge that we plan for a pack, of every member.
void for_hours(std::string_view family, std::int64_t mg, const std::function<void(int)>& check) {
    for (const auto id : members(family)) {
        if (thing(id).dimension != measure::Dimension::mass) continue;
        const int hours = 24 * stock::days_to_thaw(one_pack(id, mg), thing(id), ThawMethod::fridge);
        INFO(thing(id).id << ", " << mg / 1000 << " g: " << hours << " h");
        check(hours);
    }
}

/// What is thawed, in the fridge of the demo kitchen, and how it stands then.
struct Thawed {
    kitchen::Kitchen kitchen;
    const stock::Lot* lot = nullptr;
};

Thawed thawed(std::string_view id, ThawMethod method, std::string_view cooked_as = {}) {
    kitchen::Kitchen kitchen = tests::bare_kitchen();
    tests::add_frozen(kitchen, id, "kitchen-freezer", {cooked_as.empty() ? 500 : 2}, 10, false, cooked_as);
    const kitchen::Item item{{1, {}, {}, {}}, {}, {}};
    const auto change = kitchen::moved({kitchen, demo_day, 2}, {&item, 1}, tests::place("fridge"), method);
    REQUIRE(change);
    kitchen::apply(kitchen, *change);
    Thawed result{std::move(kitchen), nullptr};
    result.lot = result.kitchen.lot(1);
    REQUIRE(result.lot != nullptr);
    return result;
}

/// Why the lot may not go back into a freezer, today and a day later; empty where it may.
std::string refused_again(std::string_view id, ThawMethod method, std::string_view cooked_as = {}) {
    const Thawed it = thawed(id, method, cooked_as);
    std::string refused;
    for (const int day : {0, 1}) {
        const kitchen::Item item{{1, {}, {}, {}}, {}, {}};
        const auto back = kitchen::moved({it.kitchen, demo_day + basics::days{day}, 2}, {&item, 1},
                                         tests::place("kitchen-freezer"), std::nullopt);
        if (back) return {};
        refused = basics::to_text(back.error().front());
    }
    return refused;
}

void check_never_again(std::string_view id, std::string_view cooked_as = {}) {
    for (const ThawMethod method : {ThawMethod::fridge, ThawMethod::cold_water, ThawMethod::microwave}) {
        INFO(id << ", thawed: " << stock::name(method));
        CHECK(refused_again(id, method, cooked_as).find("thawed food does not go back into a freezer") !=
              std::string::npos);
    }
}

void check_at_once(ThawMethod method) {
    const Thawed it = thawed("beef-mince", method);
    CHECK(it.lot->thawed_on == demo_day);
    CHECK(it.lot->use_by == demo_day);
    CHECK(stock::days_to_thaw(*it.lot, thing(it.lot->ingredient), method) == 0);
}

/// Days after thawing in the fridge, at most.
void check_thawed_keeps(std::string_view family, int most) {
    for (const auto id : members(family)) {
        const auto& keeps = thing(id).keeps;
        if (keeps[static_cast<std::size_t>(Keep::freezer)].said != catalogue::Keeping::Said::time) continue;
        const auto& thawed = keeps[static_cast<std::size_t>(Keep::thawed)];
        INFO(thing(id).id << ": " << thawed.time.days << " days once thawed");
        CHECK(thawed.said == catalogue::Keeping::Said::time);
        CHECK(thawed.time.limit == catalogue::Limit::use_by);
        CHECK(thawed.time.days <= most);
    }
}

/// Dinner tomorrow, or today: what the answer says of it.
ask::ThawAnswer mince_for(int day) {
    kitchen::Kitchen kitchen = tests::bare_kitchen();
    tests::plan_dinner(kitchen, "rissoles", day);
    tests::add_frozen(kitchen, "beef-mince", "kitchen-freezer", {tests::asked(kitchen, "beef-mince")});
    const auto answer = ask::ask_thaw(kitchen, demo_day, {demo_day, demo_day + basics::days{3}});
    REQUIRE(answer);
    REQUIRE(answer->moves.size() == 1);
    return *answer;
}

bool says(const std::vector<std::string>& list, const std::string& words) {
    return std::any_of(list.begin(), list.end(),
                       [&](const std::string& text) { return text.find(words) != std::string::npos; });
}

/// By item of the table: what our functions do about it. A key is "item, condition" where the item alone is not one
/// row.
const std::map<std::string, std::function<void()>>& checks() {
    static const std::map<std::string, std::function<void()>> all{
        {"large item (turkey, whole bird, roast)",
         [] {
             // The slower end, 24 h per 4 lb; whole days, never fewer hours.
             for (const std::string_view family : large) {
                 for (const std::int64_t pounds : {4, 8, 10, 14})
                     for_hours(family, pounds * pound_mg, [&](int hours) { CHECK(hours >= 24 * pounds / 4); });
             }
         }},
        {"any frozen food",
         [] {
             for (const std::string_view family : {"meat", "seafood"}) {
                 for (const std::int64_t grams : {100, 454, 1000, 2270, 4540, 9080})
                     for_hours(family, grams * 1000, [&](int hours) {
                         CHECK(hours >= 24);
                         // What is flat goes by its pack as well.
                         CHECK(hours * 2270 >= 24 * grams);
                     });
             }
         }},
        {"1 lb (454 g) ground meat or boneless chicken breasts",
         [] {
             for_hours("mince", 454'000, [](int hours) { CHECK(hours == 24); });
             for_hours("chicken-breast", 454'000, [](int hours) { CHECK(hours == 24); });
         }},
        {"boneless chicken breasts",
         [] {
             constexpr int overnight = 12;
             for_hours("chicken-breast", 700'000, [=](int hours) { CHECK(hours >= overnight); });
         }},
        {"whole chicken",
         [] {
             for_hours("whole-chicken", 1'600'000, [](int hours) { CHECK(hours == 24); });
             for_hours("whole-chicken", 2'200'000, [](int hours) { CHECK(hours == 48); });
         }},
        {"1 lb (454 g) package",
         [] {
             CHECK(stock::cold_water_minutes(454'000) == 60);
             CHECK(stock::cold_water_minutes(200'000) == 60);
         }},
        {"3-4 lb (1.4-1.8 kg) package",
         [] {
             for (const std::int64_t grams : {1400, 1600, 1800}) CHECK(stock::cold_water_minutes(grams * 1000) == 180);
         }},
        {"whole turkey",
         [] {
             for (const std::int64_t grams : {2500, 3000, 4000, 5000, 8000}) {
                 INFO(grams << " g: " << stock::cold_water_minutes(grams * 1000) << " minutes");
                 CHECK(stock::cold_water_minutes(grams * 1000) * 1000 >= 66 * grams);
             }
         }},
        {"1.5-2 kg package",
         [] {
             for (const std::int64_t grams : {1500, 1750, 2000}) CHECK(stock::cold_water_minutes(grams * 1000) == 180);
         }},
        {"ground meat, stew meat, poultry, seafood",
         [] {
             for (const char* family : {"mince", "stewing-meat", "poultry", "seafood"}) check_thawed_keeps(family, 1);
         }},
        {"red meat cuts (roasts, chops, steaks)",
         [] {
             for (const char* family : {"roasting-meat", "steaks-and-chops"}) check_thawed_keeps(family, 1);
         }},
        {"meat and poultry",
         [] {
             check_thawed_keeps("meat", 1);
             // Ready on the next day, and good for a day more.
             CHECK(thawed("beef-mince", ThawMethod::fridge).lot->thawed_on == demo_day + basics::days{1});
             CHECK(thawed("beef-mince", ThawMethod::fridge).lot->use_by == demo_day + basics::days{2});
             CHECK(mince_for(1).moves.front().move.cook_by == demo_day + basics::days{2});
         }},
        {"frozen cooked leftovers",
         [] {
             const Thawed it = thawed("leftover-chilli", ThawMethod::fridge, "chilli");
             CHECK(it.lot->use_by == *it.lot->thawed_on + basics::days{1});
         }},
        {"cold-water or microwave thawed food",
         [] {
             check_at_once(ThawMethod::cold_water);
             check_at_once(ThawMethod::microwave);
             const auto today = mince_for(0);
             CHECK(today.moves.front().move.method == ThawMethod::cold_water);
             CHECK(today.moves.front().move.cook_by == demo_day);
         }},
        {"refreeze raw, fridge-thawed", [] { check_never_again("beef-mince"); }},
        {"refreeze raw, cold-water/microwave-thawed",
         [] {
             for (const ThawMethod method : {ThawMethod::cold_water, ThawMethod::microwave})
                 CHECK(refused_again("beef-mince", method).find("cook it first") != std::string::npos);
         }},
        {"refreeze, out of fridge over 2 h (1 h above 32 C)",
         [] {
             // The ledger knows no hours: what was thawed does not go back at all, however long it was out.
             check_never_again("beef-mince");
             check_never_again("leftover-chilli", "chilli");
         }},
        {"refreeze thawed cooked leftovers, fridge-thawed", [] { check_never_again("leftover-chilli", "chilli"); }},
        {"refreeze raw thawed food",
         [] {
             for (const char* raw : {"beef-mince", "chicken-thigh", "white-fish-fillets"}) check_never_again(raw);
         }},
        {"microwave thaw", [] { check_at_once(ThawMethod::microwave); }},
        {"bench-top thaw",
         [] {
             for (const char* word : {"bench", "bench-top", "counter", "room"})
                 CHECK_FALSE(stock::read_thaw_method(word));
             kitchen::Kitchen kitchen = tests::bare_kitchen();
             tests::add_frozen(kitchen, "beef-mince", "kitchen-freezer", {500});
             const kitchen::Item item{{1, {}, {}, {}}, {}, {}};
             const auto out =
                 kitchen::moved({kitchen, demo_day, 2}, {&item, 1}, tests::place("pantry"), ThawMethod::fridge);
             REQUIRE_FALSE(out);
             CHECK(out.error().front().found == "beef mince is not thawed out of the fridge");
             for (const int day : {0, 1}) CHECK(says(mince_for(day).moves.front().cautions, "ever on the bench"));
         }},
        {"refreeze thawed food",
         [] {
             check_never_again("beef-mince");
             CHECK(says(mince_for(1).cautions, "not frozen again"));
         }},
        {"fridge thaw temperature", [] { CHECK(says(mince_for(1).moves.front().cautions, "at 5 degrees or below")); }},
        {"refreeze leftovers after defrost",
         [] {
             check_never_again("leftover-chilli", "chilli");
             check_never_again("leftover-beef-stew", "beef-stew");
         }},
    };
    return all;
}

}  // namespace

TEST_CASE("every published figure on thawing is held, the stricter of two") {
    const auto rows = tests::read_table(published);
    CHECK(rows.size() == 24);
    std::set<std::string> seen;
    for (const tests::Row& row : rows) {
        INFO(row[0] << ": " << row[1] << ' ' << row[2] << " (" << row[3] << "; " << row.source << ", " << row[4]
                    << ")");
        REQUIRE(row.cells.size() == 6);
        REQUIRE_FALSE(row.source.empty());
        const bool told = row[5] == "same" || row[5] == "ours";
        REQUIRE(told);
        const auto check = checks().find(row[0]);
        REQUIRE(check != checks().end());
        CHECK(seen.insert(row[0]).second);
        check->second();
    }
    CHECK(seen.size() == checks().size());
}

TEST_CASE("where sources on thawing differ, ours is no laxer than any") {
    // United States 1-2 and 3-5 days, New South Wales 1: ours is the least of them, for every cut.
    for (const std::string_view family : flesh) check_thawed_keeps(family, 1);
    // 24 hours per 4 lb or per 5 lb: ours is never below the longer, at any weight.
    for (std::int64_t grams = 250; grams <= 12'000; grams += 250) {
        for_hours("whole-birds", grams * 1000, [&](int hours) {
            CHECK(hours * 1800 >= 24 * grams);
            CHECK(hours >= 24);
        });
    }
    // An hour a pound up to three, 2 to 3 hours up to 2 kg, 30 minutes a pound: ours is never below any, and never
    // falls.
    int before = 0;
    for (std::int64_t grams = 50; grams <= 12'000; grams += 50) {
        const int minutes = stock::cold_water_minutes(grams * 1000);
        INFO(grams << " g: " << minutes << " minutes");
        CHECK(minutes >= before);
        CHECK(minutes >= 60);
        CHECK(minutes * 1000 >= 66 * grams);
        if (grams >= 1361 && grams <= 2000) CHECK(minutes >= 180);
        before = minutes;
    }
}
