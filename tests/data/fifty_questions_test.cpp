// Questions that a cook would ask, and what a sensible cook would answer: common practice, from no published source.
// The kitchen of each question has four at the table, an ordinary stock of dry goods, tins, roots, eggs and dairy, a
// lot of what is asked about that must be eaten by tomorrow, nothing planned, and a shop that is open.
//
// Three are not answered as expected. Kangaroo mince: what its own dish leaves of beetroot, feta and leaves that must
// be bought spoils, and pies of other mince leave pastry, which keeps. Cold cooked fish, roast vegetables: no dinner is
// made from them, and nothing says that they may stand in for raw fish or vegetables.
#include <fmt/format.h>

#include <algorithm>
#include <catch2/catch.hpp>
#include <iostream>
#include <iterator>
#include <set>
#include <sstream>
#include <string>
#include <string_view>
#include <vector>

#include "ask/else.hpp"
#include "support/shipped.hpp"

using namespace samebase;
using catalogue::IngredientId;
using cookbook::DishId;

namespace {

/// Who avoids what is avoided.
enum class Who { nobody, one, all };

struct Asked {
    std::string_view about;    ///< an ingredient, or a family and what of it there is: "mince: lamb-mince"
    std::string_view expects;  ///< dishes, or "base:" and a base: one of them at least is among the first ten
    std::string_view never;    ///< dishes that are not among the answers at all
    Who who = Who::nobody;
    std::string_view avoids{};  ///< one allergen, of which nobody who avoids it is ever given any
};

// clang-format off
const std::vector<Asked> questions{
    // Mince.
    {"beef-mince", "base:mince-onion-crumb base:mince-and-tomato", "steak-new-potatoes-asparagus roast-beef-butternut"},
    {"mince: lamb-mince", "base:browned-mince", "roast-lamb-leg lamb-chops-broad-beans"},
    {"pork-mince", "base:mince-stir-fry", "roast-pork-red-cabbage pork-chops-apple-kohlrabi"},
    {"beef-mince", "cottage-pie savoury-mince", "chicken-pita-pizza", Who::one, "gluten"},
    {"beef-mince", "base:mash-topped-pie chilli", "lasagne", Who::all, "milk"},
    {"chicken-mince", "chicken-mince-basil chicken-mince-sugar-snaps", "roast-chicken-lemon", Who::all, "peanut"},
    {"kangaroo-mince", "kangaroo-mince-beetroot-barley", "kangaroo-beetroot-braise"},
    // Roasts and pots.
    {"beef-roast", "base:roast-beef", "steak-salad-beetroot-greens"},
    {"roasting-meat: lamb-leg", "base:roast-lamb-or-pork", "lamb-chops-broad-beans"},
    {"whole-chicken", "base:roast-chicken", "chicken-mince-basil"},
    {"corned-silverside", "base:simmered-meat", "steak-salad-beetroot-greens beef-broccolini-stir-fry"},
    {"stewing-meat: gravy-beef", "base:braised-meat", "steak-new-potatoes-asparagus beef-broccolini-stir-fry"},
    {"lamb-shoulder-diced", "base:curried-meat base:braised-meat", "lamb-chops-broad-beans"},
    {"oxtail", "oxtail-turnips", "steak-new-potatoes-asparagus"},
    {"chuck-steak", "beef-stew", "beef-broccolini-stir-fry", Who::one, "gluten"},
    // Chicken, pans and grills.
    {"chicken-thigh", "base:curried-chicken base:braised-chicken", ""},
    {"chicken-pieces: chicken-drumsticks", "base:chicken-traybake", "chicken-mince-basil"},
    {"chicken-breast", "base:crumbed-and-fried base:stir-fried-meat", ""},
    {"chicken-thigh", "base:braised-chicken", "chicken-tomato-cheese-schnitzel", Who::all, "milk"},
    {"chicken-breast", "base:stir-fried-meat", "", Who::all, "cashew"},
    {"chicken-breast", "base:crumbed-and-fried", "", Who::one, "gluten"},
    {"lamb-chops", "base:grilled-meat", "lamb-koftas"},
    {"rump-steak", "base:grilled-meat", "beef-cheeks-celeriac-mash"},
    {"sausages: pork-sausages", "base:sausages-in-a-pan base:sausage-braise", ""},
    {"bacon", "base:bacon-and-onion", ""},
    {"chicken-wings", "chicken-wings-corn-slaw", "chicken-mince-basil"},
    // Fish.
    {"white-fish-fillets", "base:fish-and-mash base:pan-fish", ""},
    {"salmon-fillets", "base:baked-fish", "tuna-caper-and-tomato-spaghetti"},
    {"smoked-fish-fillets", "base:fish-in-sauce", "seared-squid-with-asparagus-and-broad-beans"},
    {"tinned-tuna", "base:tinned-fish-and-pasta", "pan-fried-fish-with-fennel-and-orange soy-salmon-with-asparagus-and-snow-peas"},
    {"prawns", "base:seafood-stew", "smoked-fish-and-swede-hotpot"},
    {"white-fish-fillets", "base:baked-fish", "", Who::all, "milk"},
    {"penne", "base:tomato-pasta", "", Who::all, "fish"},
    // Pasta, noodles, rice and grains.
    {"spaghetti", "base:oil-and-garlic-pasta base:tomato-pasta", "green-risotto-with-broad-beans-and-peas"},
    {"fettuccine", "base:creamy-pasta", "udon-in-broth-with-daikon-and-tofu"},
    {"lasagne-sheets", "base:layered-pasta", "spaghetti-with-zucchini-lemon-and-mint"},
    {"macaroni", "base:pasta-bake", ""},
    {"noodles: hokkien-noodles", "base:noodle-stir-fry", "spaghetti-bolognese"},
    {"rice-noodles", "base:noodle-soup", "", Who::one, "gluten"},
    {"arborio-rice", "base:one-pot-rice", "kimchi-fried-rice"},
    {"couscous", "base:grain-bowl", "rice-noodles-in-spiced-beef-broth"},
    // Eggs, batter, pastry and bread.
    {"eggs", "base:eggs-in-sauce base:egg-and-vegetables", ""},
    {"eggs", "base:eggs-in-sauce thick-potato-and-onion-omelette", "leek-and-goats-cheese-tart", Who::all, "milk"},
    {"milk", "base:pancake-batter", ""},
    {"puff-pastry", "base:pastry-pie", "pizza-ham-mushroom"},
    {"shortcrust-pastry", "base:savoury-tart", "pizza-ham-mushroom"},
    {"pizza-bases", "base:pizza", "leek-and-goats-cheese-tart"},
    {"flatbreads: wheat-tortillas", "base:filled-flatbread", "spaghetti-bolognese"},
    {"bread-rolls", "base:burgers", "spaghetti-bolognese"},
    {"ham", "pizza-ham-mushroom buckwheat-pancakes-with-ham-and-silverbeet", "", Who::one, "gluten"},
    // Pulses and tofu.
    {"brown-lentils", "base:lentil-pot", "spaghetti-bolognese"},
    {"tinned-chickpeas", "base:chickpea-pot base:pulse-patties", ""},
    {"tinned-white-beans", "base:bean-pot", ""},
    {"pulses: red-lentils", "base:pulse-soup base:lentil-pot", ""},
    {"firm-tofu", "base:tofu-stir-fry", "steak-new-potatoes-asparagus"},
    {"firm-tofu", "base:tofu-stir-fry", "", Who::all, "peanut"},
    // The crisper.
    {"leek", "base:savoury-tart", ""},
    {"beetroot", "beetroot-cabbage-and-potato-soup", ""},
    {"parsnip", "parsnip-and-apple-soup", ""},
    {"sweet-potato", "baked-sweet-potatoes-with-black-beans silverbeet-and-sweet-potato-gratin", ""},
    {"cabbage", "base:slaw cabbage-rolls", ""},
    {"cauliflower", "base:vegetable-gratin base:vegetable-curry", ""},
    {"cauliflower", "base:vegetable-curry cauliflower-and-chickpea-pilaf", "cauliflower-and-broccoli-cheese", Who::all, "milk"},
    {"kale", "sausage-kale-potato-soup spaghetti-with-cavolo-nero-and-crumbs", ""},
    {"buk-choy", "base:noodle-soup choko-and-buk-choy-broth", ""},
    {"silverbeet", "silverbeet-and-sweet-potato-gratin", ""},
    {"cos-lettuce", "base:main-salad", "cabbage-rolls beef-stew"},
    {"fennel", "roast-tomato-and-fennel-soup pan-fried-fish-with-fennel-and-orange", ""},
    {"eggplant", "base:vegetable-stew", ""},
    {"capsicum", "capsicums-stuffed-with-quinoa-and-corn", ""},
    {"zucchini", "base:vegetable-fritters", ""},
    {"marrow", "base:stuffed-vegetables", ""},
    {"pumpkin", "pumpkin-and-ginger-soup base:roast-vegetable-tray", ""},
    {"cucumber", "base:main-salad", "pumpkin-and-ginger-soup"},
    {"broad-beans", "base:vegetable-stew", ""},
    {"corn-cob", "corn-and-snow-pea-soup-with-egg", ""},
    {"button-mushrooms", "eggs-in-mushroom-gravy mushroom-and-chive-omelettes", ""},
    {"field-mushrooms", "mushroom-and-chive-omelettes", "", Who::all, "gluten"},
    {"bean-sprouts", "rice-noodles-with-egg-bean-sprouts-and-peanuts", ""},
    {"carrot", "base:blended-soup base:vegetable-soup", ""},
    {"potato", "base:baked-potatoes thick-potato-and-onion-omelette", ""},
    {"zucchini", "zucchini-pea-and-mint-soup", "leek-and-goats-cheese-tart", Who::all, "egg"},
    // Leftovers.
    {"cold-roast-beef", "base:roast-meat-again cold-beef-cottage-pie", "roast-beef-butternut beef-broccolini-stir-fry"},
    {"cold-roast-lamb", "roast-lamb-pilaf roast-meat-gravy-plate", "roast-lamb-leg lamb-shanks-collards"},
    {"cold-roast-pork", "roast-pork-noodles", "roast-pork-red-cabbage pork-cider-parsnip"},
    {"cold-roast-chicken", "chicken-again-leek-risoni", "roast-chicken-lemon chicken-schnitzel-potato-cucumber"},
    {"cold-roast-beef", "roast-meat-gravy-plate", "", Who::one, "gluten"},
    {"mashed-potato", "cottage-pie", "pizza-potato-pancetta thick-potato-and-onion-omelette"},
    {"cooked-rice", "base:fried-rice", "green-risotto-with-broad-beans-and-peas baked-mushroom-rice"},
    {"cooked-pasta", "base:pasta-bake", "lasagne"},
    {"cold-cooked-fish", "base:fish-and-mash", "pan-fried-fish-with-fennel-and-orange"},
    {"roast-vegetables", "base:vegetable-curry", "cauliflower-and-pea-fritters"},
    {"stale-bread", "bread-salad-with-tomatoes-and-beans spaghetti-with-cavolo-nero-and-crumbs", ""},
    {"ham-bone", "pea-and-ham-soup base:meat-soup", "ham-asparagus-filo"},
};
// clang-format on

constexpr basics::Day today{std::chrono::year{2026} / 5 / 16};  // a Saturday in autumn
constexpr std::size_t looked_at = 10;

std::vector<std::string> words(std::string_view text) {
    std::istringstream in{std::string(text)};
    return {std::istream_iterator<std::string>(in), {}};
}

DishId dish(const std::string& id) {
    const auto found = tests::shipped().cookbook.dish(id);
    INFO("dish " << id);
    REQUIRE(found);
    return *found;
}

/// What the question names, and the ingredient that there is a lot of.
std::pair<catalogue::Of, IngredientId> meant(const Asked& asked) {
    const auto colon = asked.about.find(": ");
    const std::string_view named = asked.about.substr(0, colon);
    const auto of = tests::shipped_catalogue().ingredient_or_family(named);
    INFO(asked.about);
    REQUIRE(of);
    if (colon != std::string_view::npos) return {*of, tests::shipped_ingredient(asked.about.substr(colon + 2))};
    REQUIRE(std::holds_alternative<IngredientId>(*of));
    return {*of, std::get<IngredientId>(*of)};
}

enum Place : std::uint32_t { crisper, freezer, fridge, pantry };

class KitchenOf {
  public:
    explicit KitchenOf(const Asked& asked) {
        kitchen_.knowledge = std::shared_ptr<const kitchen::Knowledge>(&tests::shipped(), [](const auto*) {});
        kitchen::Household& home = kitchen_.household;
        home.name = "four at home";
        home.places = {{"crisper", "crisper", stock::PlaceKind::crisper, {}},
                       {"freezer", "freezer", stock::PlaceKind::near_freezer, {}},
                       {"fridge", "fridge", stock::PlaceKind::fridge, {}},
                       {"pantry", "pantry", stock::PlaceKind::pantry, {}}};
        for (const char* id : {"ana", "ben", "cleo", "dov"}) {
            kitchen::Person person;
            person.id = person.name = id;
            kitchen::Week week{};
            week.fill(kitchen::only(kitchen::Meal::dinner));
            person.roster = {week};
            person.roster_from = today;
            if (asked.who == Who::all || (asked.who == Who::one && home.people.empty())) {
                person.avoids.add(*catalogue::read_allergen(asked.avoids));
            }
            home.people.push_back(std::move(person));
        }
        for (const auto& thing : tests::shipped_catalogue().ingredients()) home.staples.push_back(thing.staple);
        home.staples_out.assign(home.staples.size(), false);
        for (const auto& [id, amount] : std::vector<std::pair<const char*, int>>{{"plain-flour", 1000},
                                                                                 {"white-rice", 1000},
                                                                                 {"basmati-rice", 500},
                                                                                 {"spaghetti", 500},
                                                                                 {"penne", 500},
                                                                                 {"rolled-oats", 500},
                                                                                 {"couscous", 300},
                                                                                 {"pearl-barley", 300},
                                                                                 {"red-lentils", 400},
                                                                                 {"brown-lentils", 400},
                                                                                 {"rice-noodles", 400},
                                                                                 {"dry-breadcrumbs", 200},
                                                                                 {"tinned-tomatoes", 1200},
                                                                                 {"passata", 700},
                                                                                 {"tomato-paste", 150},
                                                                                 {"tinned-chickpeas", 800},
                                                                                 {"tinned-red-beans", 800},
                                                                                 {"tinned-white-beans", 800},
                                                                                 {"tinned-tuna", 400},
                                                                                 {"coconut-milk", 800},
                                                                                 {"chicken-stock", 1000},
                                                                                 {"vegetable-stock", 1000},
                                                                                 {"beef-stock", 1000},
                                                                                 {"onion", 1000},
                                                                                 {"potato", 2000},
                                                                                 {"garlic", 100}}) {
            put(id, amount, pantry);
        }
        for (const auto& [id, amount] : std::vector<std::pair<const char*, int>>{{"milk", 2000},
                                                                                 {"eggs", 12},
                                                                                 {"butter", 500},
                                                                                 {"tasty-cheese", 500},
                                                                                 {"parmesan", 200},
                                                                                 {"plain-yoghurt", 500},
                                                                                 {"lemon", 3}}) {
            put(id, amount, fridge);
        }
        home.shopping_days = 1U << 6;  // the shop is open today
        put("carrot", 1000, crisper);
        put("celery", 400, crisper);
        put("frozen-peas", 500, freezer);
        put("white-bread", 700, freezer);
        const IngredientId much = meant(asked).second;
        const auto& thing = tests::shipped_catalogue()[much];
        const bool large =
            tests::shipped_catalogue().is(much, *tests::shipped_catalogue().ingredient_or_family("roasting-meat")) ||
            tests::shipped_catalogue().is(much, *tests::shipped_catalogue().ingredient_or_family("whole-birds"));
        std::erase_if(kitchen_.lots, [&](const stock::Lot& lot) { return lot.ingredient == much; });
        const int amount = thing.dimension == measure::Dimension::pieces ? (thing.in_serves ? 5 : 12)
                           : large                                       ? 2000
                                                                         : 1200;
        stock::Lot& lot =
            put(thing.id, amount, thing.kind == catalogue::Kind::raw && keeps(thing, crisper) ? crisper : fridge);
        lot.use_by = lot.printed_use_by = today + basics::days{1};
        lot.best_by.reset();
        for (std::size_t i = 0; i < kitchen_.lots.size(); ++i)
            kitchen_.lots[i].number = static_cast<stock::LotNumber>(i) + 1;
    }

    [[nodiscard]] const kitchen::Kitchen& operator*() const { return kitchen_; }

  private:
    [[nodiscard]] bool keeps(const catalogue::Ingredient& thing, Place place) const {
        return thing.keeps[static_cast<std::size_t>(stock::keep_in(kitchen_.household.places[place].kind))].said ==
               catalogue::Keeping::Said::time;
    }

    /// So many grams, millilitres, pieces or serves of it, bought yesterday.
    stock::Lot& put(std::string_view id, int amount, Place place) {
        const auto& thing = tests::shipped_catalogue()[tests::shipped_ingredient(id)];
        stock::Lot lot;
        lot.ingredient = tests::shipped_ingredient(id);
        lot.place = stock::PlaceId{place};
        lot.amount = {thing.dimension, std::int64_t{1000} * amount};
        lot.state = place == freezer ? stock::State::frozen : stock::State::fresh;
        lot.arrived = lot.since = today - basics::days{1};
        stock::set_dates(lot, thing, kitchen_.household.places[place].kind);
        return kitchen_.lots.emplace_back(std::move(lot));
    }

    kitchen::Kitchen kitchen_;
};

bool meets(const std::string& expected, DishId id) {
    const auto& book = tests::shipped().cookbook;
    if (expected.starts_with("base:")) {
        const auto base = book.base(expected.substr(5));
        INFO(expected);
        REQUIRE(base);
        return book[id].base == base;
    }
    return id == dish(expected);
}

/// The names of what holds the allergen in a serve of someone who avoids it.
std::string held(const Asked& asked, const kitchen::Kitchen& kitchen, const ask::Alternative& answer) {
    std::string result;
    if (asked.who == Who::nobody) return result;
    const auto allergen = *catalogue::read_allergen(asked.avoids);
    const auto& things = tests::shipped_catalogue();
    const auto holds = [&](IngredientId id) { return things[id].counted_allergens().has(allergen); };
    if (asked.who == Who::all) {
        for (const auto& need : answer.cooking.needs) {
            if (need.amount > 0 && holds(need.ingredient)) result += " " + things[need.ingredient].id;
        }
        return result;
    }
    const cookbook::Dish& made = tests::shipped().cookbook[answer.dish];
    const auto apart = std::find_if(made.separate.begin(), made.separate.end(),
                                    [&](const auto& serve) { return serve.avoids == allergen; });
    for (const auto& line : made.ingredients) {
        if (line.optional) continue;
        std::vector<IngredientId> in_it{line.ingredient};
        for (const auto& stand_in : answer.stand_ins) {
            if (stand_in.replaced != line.ingredient) continue;
            in_it.clear();
            for (const auto& [use, amount] : stand_in.use) in_it.push_back(use);
        }
        if (std::none_of(in_it.begin(), in_it.end(), holds)) continue;
        // Only a serve apart helps, whose own ingredient is among what is cooked, or a staple.
        const bool own =
            apart != made.separate.end() &&
            std::any_of(apart->swaps.begin(), apart->swaps.end(), [&](const auto& swap) {
                return swap.first == line.ingredient && !holds(swap.second) &&
                       (kitchen.taken_as_there(swap.second) ||
                        std::any_of(answer.cooking.needs.begin(), answer.cooking.needs.end(), [&](const auto& need) {
                            return need.ingredient == swap.second && need.amount > 0;
                        }));
            });
        if (!own) result += " " + things[line.ingredient].id;
    }
    return result;
}

}  // namespace

TEST_CASE("fifty questions that a cook would ask are answered as a cook would") {
    const auto& book = tests::shipped().cookbook;
    std::size_t as_expected = 0;
    for (const Asked& asked : questions) {
        const KitchenOf kitchen{asked};
        REQUIRE((*kitchen).check().value_or("") == "");
        const auto [of, much] = meant(asked);
        ask::ElseQuestion question;
        question.day = today;
        question.using_ = of;
        const auto answer = ask::ask_else(*kitchen, today, question);
        REQUIRE(answer);
        const auto& all = answer->alternatives;
        const auto first = std::min(all.size(), looked_at);
        const auto expects = words(asked.expects);
        const bool met =
            std::any_of(all.begin(), all.begin() + static_cast<std::ptrdiff_t>(first), [&](const auto& one) {
                return std::any_of(expects.begin(), expects.end(),
                                   [&](const auto& expected) { return meets(expected, one.dish); });
            });
        std::string forbidden;
        for (const std::string& id : words(asked.never)) {
            const DishId never = dish(id);
            if (std::any_of(all.begin(), all.end(), [&](const auto& one) { return one.dish == never; }))
                forbidden += " " + id;
        }
        for (const ask::Alternative& one : all) {
            if (const auto what = held(asked, *kitchen, one); !what.empty()) {
                forbidden += fmt::format(" {} (with {}, of{})", book[one.dish].id, asked.avoids, what);
            }
        }
        INFO(asked.about);
        CHECK(forbidden == "");
        if (met) {
            ++as_expected;
            continue;
        }
        std::cout << fmt::format("{}: {}: none among the first {} of {}:", asked.about, asked.expects, looked_at,
                                 all.size());
        for (std::size_t i = 0; i < first; ++i) std::cout << ' ' << book[all[i].dish].id;
        std::cout << '\n';
    }
    std::cout << fmt::format("{} of {} questions are answered as a cook would\n", as_expected, questions.size());
    CHECK(questions.size() >= 50);
    CHECK(as_expected >= 48);
    CHECK(as_expected * 50 >= questions.size() * 48);
}

TEST_CASE("the questions cover every base, common leftover and vegetable group, and eaters with allergens") {
    const auto& book = tests::shipped().cookbook;
    const auto& things = tests::shipped_catalogue();
    std::set<std::string> bases;
    std::set<std::string> families;
    std::set<std::string> about;
    std::set<std::string> avoided;
    for (const Asked& asked : questions) {
        const IngredientId much = meant(asked).second;
        about.insert(things[much].id);
        for (const auto family : things.ancestors(much)) families.insert(things[family].id);
        if (asked.who != Who::nobody) avoided.emplace(asked.avoids);
        REQUIRE_FALSE(asked.expects.empty());
        for (const std::string& expected : words(asked.expects)) {
            if (expected.starts_with("base:")) {
                bases.insert(expected.substr(5));
            } else if (const auto base = book[dish(expected)].base) {
                bases.insert(book[*base].id);
            }
        }
    }
    for (const auto& one : book.dishes()) {
        if (!one.dinner || !one.base) continue;
        INFO("base " << book[*one.base].id);
        CHECK(bases.contains(book[*one.base].id));
    }
    for (const auto& thing : things.ingredients()) {
        if (!things.belongs(*things.ingredient(thing.id), *things.family("vegetables"))) continue;
        if (thing.keeps[static_cast<std::size_t>(catalogue::Keep::crisper)].said != catalogue::Keeping::Said::time)
            continue;
        INFO("family " << things[thing.family].id);
        CHECK(families.contains(things[thing.family].id));
    }
    for (const char* family :
         {"cold-roast-meat", "cooked-rice-dishes", "cooked-pasta-dishes", "cold-fish", "cooked-vegetables"}) {
        INFO("leftovers " << family);
        CHECK(families.contains(family));
    }
    for (const char* id : {"cold-roast-beef", "cold-roast-lamb", "cold-roast-pork", "cold-roast-chicken",
                           "mashed-potato", "cooked-rice", "cooked-pasta", "cold-cooked-fish", "roast-vegetables"}) {
        INFO("leftover " << id);
        CHECK(about.contains(id));
    }
    for (const char* allergen : {"gluten", "milk", "egg", "fish", "peanut", "cashew"}) {
        INFO("without " << allergen);
        CHECK(avoided.contains(allergen));
    }
}
