// Recipes of schema.org, of our own invention: what is read of them, what dish they become, and what is said of bad
// ones.
#include "exchange/recipe.hpp"

#include <fmt/format.h>

#include <catch2/catch.hpp>
#include <nlohmann/json.hpp>
#include <optional>
#include <string>
#include <vector>

#include "exchange/detail/duration.hpp"
#include "exchange/detail/page.hpp"
#include "exchange/detail/recipe_ingredient.hpp"
#include "exchange/detail/recipe_parts.hpp"
#include "exchange/recipe_dish.hpp"
#include "measure/line.hpp"
#include "support/shipped.hpp"

using namespace samebase;
using exchange::detail::read_duration;
using nlohmann::json;
using Lines = std::vector<std::string>;

namespace {

/// A whole recipe.
json stew() {
    return {{"@context", "https://schema.org"},
            {"@type", "Recipe"},
            {"name", "Stationmaster's bean stew"},
            {"recipeYield", "4 servings"},
            {"prepTime", "PT15M"},
            {"cookTime", "PT45M"},
            {"recipeIngredient", {"2 onions, sliced", "500 g beef mince", "1 tin kidney beans, drained"}},
            {"recipeInstructions", {"Fry the onions and the mince.", "Simmer with the beans, to 75 degrees."}}};
}

json with(json recipe, const char* key, json value) {
    recipe[key] = std::move(value);
    return recipe;
}

Lines said(const basics::Problems& problems) {
    Lines lines;
    for (const auto& problem : problems) lines.push_back(basics::to_text(problem));
    return lines;
}

exchange::Recipe one(const json& recipe) {
    const auto read = exchange::read_recipes(recipe.dump(), "r.json");
    REQUIRE(read);
    REQUIRE(read->recipes.size() == 1);
    return read->recipes.front();
}

Lines problems_of(const std::string& text) {
    const auto read = exchange::read_recipes(text, "r.json");
    REQUIRE_FALSE(read);
    return said(read.error());
}

/// The lines of a dish as "amount | ingredient | role | preparation | notes".
Lines shown(const exchange::RecipeDish& dish) {
    Lines result;
    for (const auto& line : dish.lines) {
        if (!line.ingredient) {
            result.push_back(fmt::format("{}: left out, {}", line.written, line.left_out));
            continue;
        }
        std::string text =
            fmt::format("{} | {} | {} | {}", line.as_written, tests::shipped().catalogue[*line.ingredient].id,
                        name(line.role), line.preparation);
        for (const auto& note : line.notes) text += fmt::format(" [{}]", note);
        result.push_back(std::move(text));
    }
    return result;
}

basics::Result<std::vector<exchange::RecipeDish>> dishes(const json& recipe, const exchange::RecipeWords& words = {}) {
    const std::vector<exchange::Recipe> recipes{one(recipe)};
    return exchange::dishes_of(recipes, words, tests::shipped());
}

/// How the lines read, or every problem.
Lines read_as(const Lines& written, const exchange::RecipeWords& words = {}) {
    const auto made = dishes(with(stew(), "recipeIngredient", written), words);
    return made ? shown(made->front()) : said(made.error());
}

}  // namespace

TEST_CASE("a recipe is read with its name, serves, times, lines and steps") {
    const auto recipe = one(stew());
    CHECK(recipe.place == "r.json, recipe 1");
    CHECK(recipe.name == "Stationmaster's bean stew");
    CHECK(recipe.serves == 4);
    CHECK(recipe.minutes == 60);
    CHECK(recipe.hands_on == 15);
    REQUIRE(recipe.lines.size() == 3);
    CHECK(recipe.lines[2].place == "r.json, recipe 1, line 3");
    CHECK(recipe.lines[2].text == "1 tin kidney beans, drained");
    CHECK(recipe.method == Lines{"Fry the onions and the mince.", "Simmer with the beans, to 75 degrees."});
}

TEST_CASE("a recipe becomes a dish as data/README.md describes one") {
    const auto made = dishes(stew());
    REQUIRE(made);
    CHECK(json::parse(made->front().document.dump()) == json::parse(R"({
        "id": "stationmasters-bean-stew", "name": "Stationmaster's bean stew", "base": null, "meals": ["dinner"],
        "kinds": ["stew"], "serves": 4, "minutes": 60, "hands_on": 15, "leaves": null, "freezes": false,
        "ingredients": [
          {"of": "onion", "amount": "2", "role": "body", "prep": "sliced"},
          {"of": "beef-mince", "amount": "500 g", "role": "main"},
          {"of": "tinned-red-beans", "amount": "1 can", "role": "main", "prep": "drained"}],
        "method": ["Fry the onions and the mince.", "Simmer with the beans, to 75 degrees."]})"));
}

TEST_CASE("recipes are found in lists, under @graph, with several types, and in pages") {
    const json recipe = with(stew(), "@type", {"NewsArticle", "https://schema.org/Recipe"});
    const json page = {{"@type", "WebPage"}, {"name", "not this"}};
    const auto count = [](const std::string& text) {
        const auto read = exchange::read_recipes(text, "r");
        return read ? read->recipes.size() : 0;
    };
    CHECK(count(recipe.dump()) == 1);
    CHECK(count("\xEF\xBB\xBF \n" + json{page, recipe, stew()}.dump()) == 2);
    CHECK(count(json{{"@graph", {page, recipe}}}.dump()) == 1);
    CHECK(count(json{{"@type", "WebPage"}, {"mainEntity", recipe}}.dump()) == 1);
    CHECK(count(json{{"@type", "ItemList"}, {"itemListElement", {{{"@type", "ListItem"}, {"item", recipe}}}}}.dump()) ==
          1);
    const std::string html = fmt::format(
        "<html><script>var a = 1;</script>\n<SCRIPT class=x type='application/ld+json'>{}</SCRIPT>"
        "<script type=\"application/ld+json\">\n{}\n</script><p>more",
        page.dump(), json{recipe, stew()}.dump());
    CHECK(count(html) == 2);
}

TEST_CASE("texts are plain: entities, tags and control characters are gone") {
    using exchange::detail::plain_text;
    CHECK(plain_text("  Salt &amp; pepper\u00A0 &frac12;&nbsp;cup\t<b>cr&#232;me</b> ") ==
          "Salt & pepper \u00BD cup cr\u00E8me");
    CHECK(plain_text("a\u001b[2Jb\u0085c &unknown; &#0; &#x110000; &") == "a [2Jb c &unknown; &#0; &#x110000; &");
    CHECK(plain_text("heat < 3 and > 1 <") == "heat < 3 and > 1 <");
    CHECK(exchange::detail::plain_lines("<p>One.</p><p>Two.<br/>Three.\n\nFour.</p>") ==
          Lines{"One.", "Two.", "Three.", "Four."});
}

TEST_CASE("durations are read by ISO 8601, up to two days") {
    const auto minutes = [](const char* text) { return read_duration(text).value_or(-1); };
    CHECK(minutes("PT45M") == 45);
    CHECK(minutes("PT1H30M") == 90);
    CHECK(minutes("P1DT2H") == 1560);
    CHECK(minutes("P0DT0H20M") == 20);
    CHECK(minutes("PT1.5H") == 90);
    CHECK(minutes("PT0,25H") == 15);
    CHECK(minutes("PT90S") == 2);
    CHECK(minutes("pt5m") == 5);
    CHECK(minutes("P2D") == 2880);
    CHECK(minutes("PT0M") == 0);
    for (const char* text :
         {"",       "P",      "PT",   "P1DT", "45",  "45 minutes", "PT-5M", "-PT5M", "PT5",
          "PT5M3H", "PT5M5M", "PT5X", "P1Y",  "P1M", "P30M",       "PTM",   "PT1.H", "PT99999999999999999999M",
          "P3D",    "P1W",    "PT5M "}) {
        INFO(text);
        CHECK_FALSE(read_duration(text));
    }
    CHECK(read_duration("P30M").error().hint == "without a T it is months: PT30M?");
    CHECK(read_duration("P3D").error().expected == "at most 2880 minutes, two days");
}

TEST_CASE("times: the whole, else the parts, and nonsense is said, and --minutes stands in") {
    CHECK(one(with(stew(), "totalTime", "PT2H")).minutes == 120);
    CHECK(one(with(stew(), "totalTime", "PT0M")).minutes == 60);
    json bad = stew();
    bad["prepTime"] = "a while";
    bad["cookTime"] = 45;
    bad["totalTime"] = "P1M";
    CHECK(
        said(one(bad).of_times) ==
        Lines{"r.json, recipe 1, totalTime: 'P1M'; expected a duration by ISO 8601, such as PT45M or PT1H30M; without "
              "a T it is months: PT1M?, or say --minutes N",
              "r.json, recipe 1, prepTime: 'a while'; expected a duration by ISO 8601, such as PT45M or PT1H30M; or "
              "say --minutes N",
              "r.json, recipe 1, cookTime: 45; expected a duration by ISO 8601, such as PT45M or PT1H30M; or say "
              "--minutes N"});
    exchange::RecipeWords words;
    words.minutes = 50;
    REQUIRE(dishes(bad, words));
    CHECK(dishes(bad, words)->front().document["minutes"] == 50);
    CHECK(said(one(with(stew(), "totalTime", "PT20M")).of_times) ==
          Lines{"r.json, recipe 1, totalTime: 20 minutes in all, 45 of them at one go; expected at least that, and at "
                "most 2880; or say --minutes N"});
    json none = stew();
    none.erase("prepTime");
    none.erase("cookTime");
    CHECK(said(one(none).of_times) ==
          Lines{"r.json, recipe 1: no totalTime, prepTime or cookTime; expected how long it takes; say --minutes N"});
}

TEST_CASE("serves are told by a number or by who eats, and by nothing else") {
    const auto serves = [](json yield) {
        return one(with(stew(), "recipeYield", std::move(yield))).serves.value_or(0);
    };
    CHECK(serves(4) == 4);
    CHECK(serves(4.0) == 4);
    CHECK(serves("4") == 4);
    CHECK(serves("Serves 4-6") == 4);
    CHECK(serves("4 to 6 servings") == 4);
    CHECK(serves("4\u20136 portions") == 4);
    CHECK(serves("for 3 people") == 3);
    CHECK(serves("1 loaf (12 servings)") == 12);
    CHECK(serves(json{"6", "6 servings"}) == 6);
    CHECK(serves(json{"1 loaf", "8 serves"}) == 8);
    CHECK(serves(json{{"@type", "QuantitativeValue"}, {"value", 5}, {"unitText", "portions"}}) == 5);
    CHECK(serves("1 loaf") == 0);
    CHECK(serves("12 muffins") == 0);
    CHECK(serves(json{"12", "12 muffins"}) == 0);
    CHECK(serves("serving size 100 g") == 0);
    CHECK(serves("2.5 servings") == 0);
    CHECK(serves(0) == 0);
    CHECK(serves(-4) == 0);
    CHECK(serves(4000) == 0);
    CHECK(serves(true) == 0);
    CHECK(
        said(one(with(stew(), "recipeYield", "1 loaf")).of_yield) ==
        Lines{"r.json, recipe 1, recipeYield: '1 loaf'; expected a number from 1 to 1000 of serves, servings, portions "
              "or people; say --serves N"});
    exchange::RecipeWords words;
    words.serves = 7;
    CHECK(dishes(with(stew(), "recipeYield", "1 loaf"), words)->front().document["serves"] == 7);
}

TEST_CASE("steps are texts, steps and sections, in whatever way they stand") {
    const auto method = [](json steps) { return one(with(stew(), "recipeInstructions", std::move(steps))).method; };
    CHECK(method("Mix.\nBake.") == Lines{"Mix.", "Bake."});
    CHECK(method({{{"@type", "HowToStep"}, {"name", "Mix"}, {"text", "Mix it."}},
                  {{"@type", "HowToStep"}, {"name", "Eat"}}}) == Lines{"Mix it.", "Eat"});
    CHECK(method({{{"@type", "HowToSection"},
                   {"name", "The sauce"},
                   {"itemListElement", {{{"@type", "HowToStep"}, {"text", "Melt."}}, "Stir."}}},
                  "Serve."}) == Lines{"The sauce: Melt.", "Stir.", "Serve."});
    CHECK(said(one(with(stew(), "recipeInstructions", {1, json::object()})).of_rest) ==
          Lines{"r.json, recipe 1, recipeInstructions: 1; expected text, a HowToStep with text, or a HowToSection",
                "r.json, recipe 1, recipeInstructions: an object; expected text, a HowToStep with text, or a "
                "HowToSection"});
    CHECK(said(one(with(stew(), "recipeInstructions", json::array())).of_rest) ==
          Lines{"r.json, recipe 1, recipeInstructions: no step; expected at least one"});
}

TEST_CASE("lines come apart into amount, ingredient, role and preparation") {
    CHECK(read_as({"1 large brown onion, finely chopped", "2-3 cloves garlic", "1 (400 g) can chickpeas, drained",
                   "2 x 400 g tins chopped tomatoes", "1 cup frozen peas, thawed", "2 cups cooked rice",
                   "500 g minced beef", "1 tbsp minced garlic", "Juice of 1 lemon", "100 g gluten-free flour",
                   "1/3 cup grated parmesan (optional)", "4 carots"}) ==
          Lines{"1 | onion | body | large, finely chopped",
                "2 cloves | garlic | seasoning |  [the lower end of what is written]",
                "400 g | tinned-chickpeas | main | 400 g, drained", "800 g | tinned-tomatoes | sauce | tins, chopped",
                "1 cup | frozen-peas | body | frozen, thawed", "2 cups | cooked-rice | starch | cooked",
                "500 g | beef-mince | main | minced", "1 tbsp | garlic | seasoning | minced",
                "1 | lemon | seasoning | Juice of", "100 g | gluten-free-flour | binder | gluten-free",
                "1/3 cup | parmesan | topping | grated, optional", "4 | carrot | body |  [a slip of 'carrot']"});
}

TEST_CASE("the whole name of a thing is that thing, whatever its words mean apart") {
    // Each was read as something else, or asked about, before: peas, lamb shoulder, potato, cooked beetroot, dried
    // pork.
    const std::vector<std::pair<std::string, std::string>> lines{
        {"400 g peas in pod, podded", "peas-in-pod"},
        {"700 g lamb shoulder diced", "lamb-shoulder-diced"},
        {"2 serves mashed potato", "mashed-potato"},
        {"2 beetroot, cooked or raw, grated", "beetroot"},
        {"1 kg pork belly, rind scored and dried", "pork-belly"}};
    for (const auto& [line, id] : lines) {
        INFO(line);
        const auto read = measure::read_line(line, measure::MeasureSet::australian_metric);
        REQUIRE(read);
        const auto called = exchange::detail::Names(tests::shipped().catalogue).of(*read);
        REQUIRE(called.ingredient);
        CHECK(tests::shipped().catalogue[*called.ingredient].id == id);
    }
}

TEST_CASE("headings and water are left out, and two seasonings in a line are two") {
    CHECK(read_as({"For the stew:", "2 cups boiling water", "1 onion", "Salt and freshly ground black pepper, to taste",
                   "olive oil, for frying", "parsley"}) ==
          Lines{"For the stew:: left out, a heading", "2 cups boiling water: left out, water", "1 | onion | main | ",
                "1 pinch | salt | seasoning |  [no amount is written: 1 pinch]",
                "1 pinch | black-pepper | seasoning | freshly ground, to taste [no amount is written: 1 pinch]",
                "1 tbsp | olive-oil | seasoning | for frying [no amount is written: 1 tbsp]",
                "1 tbsp | parsley | seasoning |  [no amount is written: 1 tbsp]"});
}

TEST_CASE("nothing is taken for something else silently, and all of it is said at once") {
    CHECK(read_as({"2 tbsp garlic-infused oil", "300 g chopped tomatoes", "1 cup smoked almonds",
                   "2 cups rice and noodles", "1 tin peaches and cream", "1 tsp whole turmeric", "safflower oil",
                   "1 onion"}) ==
          Lines{"r.json, recipe 1, line 1: '2 tbsp garlic-infused oil': nothing is called 'garlic-infused oil'; "
                "expected the name of an ingredient; the nearest: 'vegetable oil', 'canola oil', 'coconut oil'; say "
                "--as 'garlic-infused oil=vegetable oil', or --skip 'garlic-infused oil'",
                "r.json, recipe 1, line 2: '300 g chopped tomatoes': 'chopped tomatoes' may be 'tomato', 'tinned "
                "tomatoes'; expected the name of an ingredient; say --as 'chopped tomatoes=tomato', or --skip 'chopped "
                "tomatoes'",
                "r.json, recipe 1, line 3: '1 cup smoked almonds': nothing is called 'smoked almonds'; expected the "
                "name of an ingredient; the nearest: 'almonds', 'Brazil nuts', 'cashews'; say --as 'smoked "
                "almonds=almonds', or --skip 'smoked almonds'",
                "r.json, recipe 1, line 4: '2 cups rice and noodles': nothing is called 'rice and noodles'; expected "
                "the name of an ingredient; the nearest: 'rice noodles', 'glass noodles', 'rice vermicelli'; say --as "
                "'rice and noodles=rice noodles', or --skip 'rice and noodles'",
                "r.json, recipe 1, line 5: '1 tin peaches and cream': nothing is called 'peaches and cream'; expected "
                "the name of an ingredient; the nearest: 'cream', 'creme fraiche', 'light cream'; say --as 'peaches "
                "and cream=cream', or --skip 'peaches and cream'",
                "r.json, recipe 1, line 6: '1 tsp whole turmeric': nothing is called 'whole turmeric'; expected the "
                "name of an ingredient; the nearest: 'turmeric', 'caraway seeds', 'coriander seeds'; say --as 'whole "
                "turmeric=turmeric', or "
                "--skip 'whole turmeric'",
                "r.json, recipe 1, line 7: 'safflower oil': nothing is called 'safflower oil'; expected the name of an "
                "ingredient; the nearest: 'sunflower oil', 'canola oil', 'coconut oil'; say --as 'safflower "
                "oil=sunflower oil', or --skip 'safflower oil'"});
}

TEST_CASE("the cook says what a line is, leaves it out, and corrects role and amount") {
    exchange::RecipeWords words;
    words.as = {{"garlic-infused oil", "olive oil"}, {"cheese", "fetta"}};
    words.skip = {"cooking spray"};
    words.roles = {{"cheese", "main"}};
    words.amounts = {{"chervil", "10 g"}};
    words.as.emplace_back("chervil", "parsley");
    CHECK(read_as({"1 tbsp garlic-infused oil", "cooking spray", "200 g cheese", "1 bouquet chervil"}, words) ==
          Lines{"1 tbsp | olive-oil | seasoning | garlic-infused [as asked for 'garlic-infused oil']",
                "cooking spray: left out, as asked", "200 g | feta | main |  [as asked for 'cheese']",
                "10 g | parsley | seasoning |  [as asked for 'bouquet chervil'] [the amount as asked]"});
}

TEST_CASE("what the cook says has to pick a line and be something") {
    exchange::RecipeWords words;
    words.as = {{"unicorn", "olive oil"}, {"onions", "oninoin"}};
    words.skip = {"nothing here"};
    words.roles = {{"beef mince", "mian"}};
    words.amounts = {{"kidney beans", "lots"}};
    words.kinds = {"stw"};
    words.base = "mince-onion-crum";
    const auto made = dishes(stew(), words);
    REQUIRE_FALSE(made);
    CHECK(
        said(made.error()) ==
        Lines{
            "r.json, recipe 1, line 1, --as: nothing is called 'oninoin'; expected the name of an ingredient; the "
            "nearest: 'onion', 'gravy', 'onion powder'",
            "r.json, recipe 1, line 2, --role: 'mian'; expected one of: main, body, starch, binder, sauce, seasoning, "
            "topping, side; did you mean 'main'?",
            "r.json, recipe 1, line 3, --amount: 'lots'; expected an amount that can be weighed, measured or counted",
            "--base: 'mince-onion-crum'; expected the identifier of a base; did you mean 'mince-onion-crumb'?",
            "--kind: 'stw'; expected one of: roast, mince, loaf, pasta, pie, curry, soup, stew, traybake, stir-fry, "
            "salad, pizza, flatbread, pancakes, fish, eggs, pulses, rice, grill, burgers, dumplings, potatoes, "
            "noodles, sausages, sandwich, toast, leftovers, bake, fritters, snack-plate; did you mean 'stew'?",
            "--skip: 'nothing here' picks no line; expected the ingredient of a line, or words that stand in one line "
            "only",
            "--as: 'unicorn' picks no line; expected the ingredient of a line, or words that stand in one line only"});
}

TEST_CASE("a role is what the cookbook mostly has, and where nothing is main, the heaviest is") {
    const auto made = dishes(with(stew(), "recipeIngredient", {"2 carrots", "500 g potatoes", "1 tsp salt"}));
    REQUIRE(made);
    CHECK(shown(made->front()) ==
          Lines{"2 | carrot | body | ", "500 g | potato | main | ", "1 tsp | salt | seasoning | "});
    CHECK(made->front().lines[0].role_from == "most dishes with it");
    CHECK(made->front().lines[1].role_from == "nothing else is main, and it is the heaviest");
}

TEST_CASE("a base has what it needs in the dish, and gives a kind where the name has none") {
    exchange::RecipeWords words;
    words.base = "browned-mince";
    json recipe = with(stew(), "name", "Signal box supper");
    REQUIRE(dishes(recipe, words));
    CHECK(dishes(recipe, words)->front().document["base"] == "browned-mince");
    CHECK(dishes(recipe, words)->front().document["kinds"].dump() == R"(["mince"])");
    words.base = "baked-fish";
    CHECK(said(dishes(recipe, words).error()) == Lines{"r.json, recipe 1: nothing in it is 'seafood'; expected what "
                                                       "the base baked-fish needs; another --base, or none"});
    words.base.reset();
    CHECK(said(dishes(recipe, words).error()) ==
          Lines{"r.json, recipe 1: no kind of dish in its name, category or keywords; expected one of: roast, mince, "
                "loaf, pasta, pie, curry, soup, stew, traybake, stir-fry, salad, pizza, flatbread, pancakes, fish, "
                "eggs, pulses, rice, grill, burgers, dumplings, potatoes, noodles, sausages, sandwich, toast, "
                "leftovers, bake, fritters, snack-plate; say --kind KIND; a standing night asks for one"});
}

TEST_CASE("an imported dish left nothing, and never froze") {
    exchange::RecipeWords words;
    words.leaves = "leftover beef stew";
    words.freezes = true;
    REQUIRE(dishes(stew(), words));
    CHECK(dishes(stew(), words)->front().document["leaves"] == "leftover-beef-stew");
    CHECK(dishes(stew(), words)->front().document["freezes"] == true);
    words.leaves = "carrot";
    CHECK(said(dishes(stew(), words).error()) ==
          Lines{"--leaves: 'carrot' is no leftover; expected the name of a leftover, as in 'leftover curry'"});
}

TEST_CASE("cups and spoons are of the set that is said") {
    exchange::RecipeWords words;
    words.measures = measure::MeasureSet::us_customary;
    const auto made =
        dishes(with(stew(), "recipeIngredient", {"1 cup milk", "1 tbsp oil", "500 g chicken breast"}), words);
    REQUIRE(made);
    CHECK(made->front().document["measures"] == "us-customary");
    CHECK(made->front().lines[0].amount == measure::Amount{measure::Dimension::volume, 236'588});
    CHECK(shown(made->front()) == Lines{"1 cup | milk | sauce | ", "1 tbsp | vegetable-oil | seasoning | ",
                                        "500 g | chicken-breast | main | "});
}

TEST_CASE("what is no recipe is said with its place") {
    CHECK(problems_of("") == Lines{"r.json: neither JSON nor a page with linked data; expected a JSON document, or a "
                                   "page with <script type=\"application/ld+json\">"});
    CHECK(problems_of("{\"@type\": \"Recipe\",\n \"name\": ") ==
          Lines{"r.json, line 2, column 10: the document ends too early; expected a JSON document (RFC 8259)"});
    CHECK(problems_of("<p>\n<script type=\"application/ld+json\">\n{\"@type\": \n</script>") ==
          Lines{"r.json, line 4, column 1: the document ends too early; expected a JSON document (RFC 8259)"});
    CHECK(problems_of("[{\"@type\": \"WebPage\"}, 3, \"Recipe\", {\"@type\": 4}]") ==
          Lines{"r.json: no recipe; expected something with \"@type\": \"Recipe\" (schema.org)"});
    const auto page = exchange::read_recipes(fmt::format("<script type=\"application/ld+json\">{{,}}</script>\n"
                                                         "<script type=\"application/ld+json\">{}</script>",
                                                         stew().dump()),
                                             "r.html");
    REQUIRE(page);
    CHECK(said(page->passed_over) ==
          Lines{"r.html, line 1, column 37: this is not JSON; expected a JSON document (RFC 8259)"});
}

TEST_CASE("wrong types are said with their places") {
    const json bad = {{"@type", "Recipe"},
                      {"name", 3},
                      {"recipeYield", json::object()},
                      {"totalTime", json::array()},
                      {"recipeIngredient", {1, json::object(), {{"name", "sugar"}, {"unitCode", "XYZ"}}, nullptr}},
                      {"recipeInstructions", false}};
    const auto made = dishes(bad);
    REQUIRE_FALSE(made);
    CHECK(
        said(made.error()) ==
        Lines{
            "r.json, recipe 1, name: 3; expected text of at most 200 bytes; say --name NAME",
            "r.json, recipe 1, line 1: 1; expected text, or a PropertyValue with a name",
            "r.json, recipe 1, line 2: an object without a name; expected text, or a PropertyValue with a name",
            "r.json, recipe 1, line 3: the unit code 'XYZ'; expected text, or a PropertyValue with a name",
            "r.json, recipe 1, line 4: null; expected text, or a PropertyValue with a name",
            "r.json, recipe 1, recipeInstructions: false; expected text, a HowToStep with text, or a HowToSection",
            "r.json, recipe 1, recipeYield: an object; expected a number, or text such as '4 servings'; say --serves N",
            "r.json, recipe 1, totalTime: a list; expected a duration by ISO 8601, such as PT45M or PT1H30M; or say "
            "--minutes N",
            "r.json, recipe 1: no kind of dish in its name, category or keywords; expected one of: roast, mince, loaf, "
            "pasta, pie, curry, soup, stew, traybake, stir-fry, salad, pizza, flatbread, pancakes, fish, eggs, pulses, "
            "rice, grill, burgers, dumplings, potatoes, noodles, sausages, sandwich, toast, leftovers, bake, fritters, "
            "snack-plate; say --kind KIND; a standing night asks for one"});
    const auto empty = dishes({{"@type", "Recipe"}});
    REQUIRE_FALSE(empty);
    CHECK(said(empty.error()) ==
          Lines{"r.json, recipe 1: no name; expected a name; say --name NAME",
                "r.json, recipe 1: no recipeIngredient; expected the lines of the ingredients",
                "r.json, recipe 1: no recipeInstructions; expected at least one step",
                "r.json, recipe 1: no recipeYield; expected how many it serves; say --serves N",
                "r.json, recipe 1: no totalTime, prepTime or cookTime; expected how long it takes; say --minutes N",
                "r.json, recipe 1: no kind of dish in its name, category or keywords; expected one of: roast, mince, "
                "loaf, pasta, pie, curry, soup, stew, traybake, stir-fry, salad, pizza, flatbread, pancakes, fish, "
                "eggs, pulses, rice, grill, burgers, dumplings, potatoes, noodles, sausages, sandwich, toast, "
                "leftovers, bake, fritters, snack-plate; say --kind KIND; a standing night asks for one"});
}

TEST_CASE("a line of 50 MB is too long, and is shown shortened") {
    std::string huge = "1 onion ";
    huge.resize(50'000'000, 'x');
    const auto lines = read_as({huge, "1 onion"});
    REQUIRE(lines.size() == 1);
    CHECK(lines[0].size() < 400);
    CHECK(lines[0].starts_with("r.json, recipe 1, line 1: '1 onion xxxxxx"));
    CHECK(lines[0].find("50000000 bytes") != std::string::npos);
    CHECK(said(one(with(stew(), "name", huge)).of_name).front().size() < 400);
    CHECK(said(one(with(stew(), "recipeYield", huge)).of_yield).front().size() < 400);
    CHECK(said(one(with(stew(), "totalTime", huge)).of_times).front().size() < 400);
    CHECK(said(one(with(stew(), "recipeInstructions", huge)).of_rest).front().size() < 400);
    CHECK_FALSE(exchange::read_recipes(huge, "r.json"));
    CHECK_FALSE(exchange::read_recipes("<script type=\"application/ld+json\">" + huge, "r.json"));
}

TEST_CASE("many lines are too many") {
    CHECK(said(one(with(stew(), "recipeIngredient", Lines(501, "1 onion"))).of_rest) ==
          Lines{"r.json, recipe 1, recipeIngredient: 501 lines; expected at most 500"});
    CHECK(said(one(with(stew(), "recipeInstructions", Lines(501, "Stir."))).of_rest) ==
          Lines{"r.json, recipe 1, recipeInstructions: more than 500 steps; expected fewer"});
}

TEST_CASE("an amount that cannot be told is said, with how to say it") {
    CHECK(read_as({"a bouquet of beef mince", "3 bunches beef mince", "1 cup beef mince", "penne", "0 onions"}) ==
          Lines{"r.json, recipe 1, line 1: 'a bouquet of beef mince': nothing is called 'bouquet of beef mince'; "
                "expected the name of an ingredient; the nearest: 'beef mince', 'chicken mince', 'kangaroo mince'; say "
                "--as 'bouquet of beef mince=beef mince', or --skip 'bouquet of beef mince'",
                "r.json, recipe 1, line 2: '3 bunches beef mince': for 'beef mince' the weight of one piece is not in "
                "the catalogue; expected a weight in g, to turn pieces into what it is counted in; say --amount '3 "
                "bunches beef mince=100 g'",
                "r.json, recipe 1, line 4: 'penne': for 'penne' no amount; expected an amount that can be weighed, "
                "measured or counted; say --amount 'penne=100 g'",
                "r.json, recipe 1, line 5: '0 onions': for 'onion' the amount is nothing; expected an amount above 0; "
                "say --amount 'onions=100 g'"});
}

TEST_CASE("of several recipes, serves and minutes that are said are for those that do not tell") {
    json other = with(with(stew(), "name", "Other stew"), "recipeYield", "a pot");
    const auto read = exchange::read_recipes(json{stew(), other}.dump(), "r.json");
    REQUIRE(read);
    exchange::RecipeWords words;
    words.serves = 9;
    words.minutes = 20;
    const auto both = exchange::dishes_of(read->recipes, words, tests::shipped());
    REQUIRE(both);
    CHECK(both->at(0).document["serves"] == 4);
    CHECK(both->at(1).document["serves"] == 9);
    CHECK(both->at(1).document["minutes"] == 60);
    const auto first = exchange::dishes_of({read->recipes.data(), 1}, words, tests::shipped());
    REQUIRE(first);
    CHECK(first->at(0).document["serves"] == 9);
    CHECK(first->at(0).document["minutes"] == 20);
    CHECK(first->at(0).document["hands_on"] == 15);
}
