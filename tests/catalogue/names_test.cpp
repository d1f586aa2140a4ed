#include "catalogue/names.hpp"

#include <array>
#include <catch2/catch.hpp>
#include <string>
#include <string_view>
#include <utility>
#include <vector>

using samebase::catalogue::Found;
using samebase::catalogue::Match;
using samebase::catalogue::NameIndex;
using samebase::catalogue::nearest;

namespace {

constexpr std::uint8_t ingredient = 0;
constexpr std::uint8_t family = 1;
constexpr std::uint8_t dish = 2;

struct Thing {
    std::uint8_t rank;
    std::vector<std::string_view> names;
};

/// Keys are places in the list.
NameIndex index_of(const std::vector<Thing>& things) {
    NameIndex index;
    for (std::uint32_t key = 0; key < things.size(); ++key) {
        for (const std::string_view name : things[key].names) index.add(key, things[key].rank, name);
    }
    index.finish();
    return index;
}

NameIndex larder() {
    return index_of({{ingredient, {"beef mince", "beef-mince", "minced beef", "ground beef"}},
                     {ingredient, {"lamb mince", "minced lamb"}},
                     {ingredient, {"chicken mince"}},
                     {family, {"mince"}},
                     {ingredient, {"carrot"}},
                     {ingredient, {"tomato"}},
                     {ingredient, {"tinned tomatoes", "canned tomatoes"}},
                     {ingredient, {"bay leaves"}},
                     {ingredient, {"frozen berries"}},
                     {ingredient, {"potatoes"}},
                     {ingredient, {"tinned chickpeas", "chick peas", "garbanzo beans"}},
                     {ingredient, {"couscous"}},
                     {ingredient, {"asparagus"}},
                     {ingredient, {"Swiss cheese", "gruyère"}},
                     {ingredient, {"hummus"}},
                     {ingredient, {"broccoli"}},
                     {ingredient, {"zucchini", "courgette"}},
                     {ingredient, {"parmesan"}},
                     {ingredient, {"lamb leg", "leg of lamb"}},
                     {ingredient, {"crème fraîche"}},
                     {ingredient, {"goat's cheese"}},
                     {ingredient, {"self-raising flour"}},
                     {ingredient, {"frozen peas", "peas"}},
                     {ingredient, {"peas in pod", "fresh peas"}},
                     {ingredient, {"silverbeet", "silver beet"}},
                     {ingredient, {"eggplant", "aubergine"}},
                     {ingredient, {"capsicum", "bell pepper", "red pepper"}},
                     {dish, {"shepherd's pie"}},
                     {dish, {"lemon chicken"}}});
}

/// The names found, or those nearest after "near:".
std::vector<std::string> meant(const NameIndex& index, std::string_view words) {
    const Match match = index.find(words);
    std::vector<std::string> names;
    if (match.found.empty()) names.emplace_back("near:");
    for (const Found& found : match.found.empty() ? match.nearest : match.found) names.push_back(found.name);
    return names;
}

using Names = std::vector<std::string>;

}  // namespace

TEST_CASE("words name one thing the way a cook writes them") {
    const NameIndex index = larder();
    const std::vector<std::pair<std::string_view, std::string>> cases{
        // as it stands, whatever the case, accents, hyphens, apostrophes and spaces
        {"carrot", "carrot"},
        {"  CARROT ", "carrot"},
        {"Creme Fraiche", "crème fraîche"},
        {"cre\xCC\x80me frai\xCC\x82"
         "che",
         "crème fraîche"},
        {"gruyere", "gruyère"},
        {"GRUY\xC3\x88RE", "gruyère"},
        {"goats cheese", "goat's cheese"},
        {"goat\xE2\x80\x99s cheese", "goat's cheese"},
        {"goat cheese", "goat's cheese"},
        {"self raising flour", "self-raising flour"},
        {"selfraising flour", "self-raising flour"},
        {"shepherds pie", "shepherd's pie"},
        // singular and plural
        {"carrots", "carrot"},
        {"tomatoes", "tomato"},
        {"bay leaf", "bay leaves"},
        {"frozen berry", "frozen berries"},
        {"potato", "potatoes"},
        {"chickpeas", "chick peas"},
        {"chickpea", "chick peas"},
        {"couscous", "couscous"},
        {"asparagus", "asparagus"},
        {"swiss cheese", "Swiss cheese"},
        {"hummus", "hummus"},
        // in any order
        {"mince beef", "beef mince"},
        {"beef minced", "minced beef"},
        {"cheese, Swiss", "Swiss cheese"},
        {"leg lamb", "leg of lamb"},
        // with little words
        {"the carrots", "carrot"},
        {"some of that beef mince", "beef mince"},
        {"leg of lamb", "leg of lamb"},
        {"the leg of the lamb", "leg of lamb"},
        // with a slip of the pen
        {"carots", "carrot"},
        {"carrto", "carrot"},
        {"brocoli", "broccoli"},
        {"brocolli", "broccoli"},
        {"zuchini", "zucchini"},
        {"parmesean", "parmesan"},
        {"tomatos", "tomato"},
        {"minced chicken", "chicken mince"},
        {"silverbeat", "silver beet"},
        {"chiken mince", "chicken mince"},
        // by another region's name
        {"courgettes", "courgette"},
        {"aubergine", "aubergine"},
        {"ground beef", "ground beef"},
        {"bell peppers", "bell pepper"},
        {"canned tomato", "canned tomatoes"},
        // by a part that only one thing has
        {"garbanzo", "garbanzo beans"},
        {"flour", "self-raising flour"},
        {"shepherd", "shepherd's pie"},
    };
    for (const auto& [words, name] : cases) {
        INFO(words);
        CHECK(meant(index, words) == Names{name});
    }
}

TEST_CASE("a slip beside a final s that belongs to the word is one slip") {
    const NameIndex index = index_of({{ingredient, {"asparagus"}},
                                      {ingredient, {"couscous"}},
                                      {ingredient, {"hummus"}},
                                      {ingredient, {"Swiss cheese"}},
                                      {ingredient, {"molasses"}},
                                      {ingredient, {"lemongrass"}},
                                      {ingredient, {"watercress"}},
                                      {ingredient, {"cos lettuce"}},
                                      {ingredient, {"bay leaves"}},
                                      {ingredient, {"potatoes"}},
                                      {ingredient, {"frozen berries"}},
                                      {ingredient, {"frozen peas"}}});
    const std::vector<std::pair<std::string_view, std::string>> cases{{"asparagas", "asparagus"},
                                                                      {"asparags", "asparagus"},
                                                                      {"asparaguss", "asparagus"},
                                                                      {"asparagues", "asparagus"},
                                                                      {"asparagsu", "asparagus"},
                                                                      {"asparagu", "asparagus"},
                                                                      {"couscos", "couscous"},
                                                                      {"couscus", "couscous"},
                                                                      {"couscouse", "couscous"},
                                                                      {"hummas", "hummus"},
                                                                      {"humms", "hummus"},
                                                                      {"swis cheese", "Swiss cheese"},
                                                                      {"swises cheese", "Swiss cheese"},
                                                                      {"molases", "molasses"},
                                                                      {"molassas", "molasses"},
                                                                      {"molasse", "molasses"},
                                                                      {"lemongras", "lemongrass"},
                                                                      {"lemongrases", "lemongrass"},
                                                                      {"watercres", "watercress"},
                                                                      {"leeves bay", "bay leaves"},
                                                                      {"bay leavs", "bay leaves"},
                                                                      {"potatoej", "potatoes"},
                                                                      {"berriws frozen", "frozen berries"},
                                                                      {"frozen peass", "frozen peas"}};
    for (const auto& [words, name] : cases) {
        INFO(words);
        CHECK(meant(index, words) == Names{name});
    }
    CHECK(index.find("asparagas").found[0].distance == 1);
    CHECK(index.find("potatoej").found[0].distance == 1);
    CHECK(index.find("cous").found.empty());  // two edits from "cos" to "cous" and on: no slip of a short word
}

TEST_CASE("what fits in the one form for singular and plural goes before what fits only as it is written") {
    const NameIndex index = index_of({{ingredient, {"pear"}}, {ingredient, {"peas"}}, {dish, {"soup of pease"}}});
    CHECK(meant(index, "peaz") == Names{"pear"});
    CHECK(meant(index, "peass") == Names{"peas"});
    CHECK(meant(index_of({{ingredient, {"peas"}}, {ingredient, {"potato"}}}), "peaz") == Names{"peas"});
}

TEST_CASE("a whole name beats every part of a name") {
    const Match match = larder().find("mince");
    CHECK(match.found == std::vector<Found>{{.rank = family, .key = 3, .distance = 0, .name = "mince"}});
    CHECK(match.nearest.empty());
}

TEST_CASE("words that are part of several names list them, the shortest name first, then by rank and key") {
    const NameIndex index = index_of({{dish, {"mince on toast"}},
                                      {ingredient, {"lean beef mince"}},
                                      {ingredient, {"pork mince"}},
                                      {ingredient, {"beef mince"}},
                                      {family, {"cooked mince"}}});
    CHECK(meant(index, "mince") ==
          Names{"pork mince", "beef mince", "cooked mince", "lean beef mince", "mince on toast"});
    CHECK(meant(index, "minse") ==
          Names{"pork mince", "beef mince", "cooked mince", "lean beef mince", "mince on toast"});
    CHECK(meant(index, "beef") == Names{"beef mince", "lean beef mince"});
    CHECK(index.find("minse").found[0].distance == 1);
}

TEST_CASE("at most eight are listed") {
    std::vector<Thing> things(20, Thing{ingredient, {"some sauce of plums"}});
    const Match match = index_of(things).find("sauce");
    REQUIRE(match.found.size() == 8);
    for (std::uint32_t key = 0; key < 8; ++key) CHECK(match.found[key].key == key);
}

TEST_CASE("the rank decides between two kinds of thing with one name, and nothing between two of a kind") {
    const NameIndex index = index_of({{family, {"eggs"}}, {ingredient, {"eggs"}}, {dish, {"stew"}}, {dish, {"stew"}}});
    CHECK(index.find("eggs").found == std::vector<Found>{{ingredient, 1, 0, "eggs"}});
    CHECK(index.find("egg").found == std::vector<Found>{{ingredient, 1, 0, "eggs"}});
    CHECK(index.find("eegs").found == std::vector<Found>{{ingredient, 1, 1, "eggs"}});  // four letters as written
    CHECK(index.find("eeg").found.empty());                                             // three
    CHECK(index.find("stew").found == std::vector<Found>{{dish, 2, 0, "stew"}, {dish, 3, 0, "stew"}});
}

TEST_CASE("a slip that fits two different names is not decided by rank") {
    const NameIndex index = index_of({{ingredient, {"mustard"}}, {dish, {"custard"}}});
    CHECK(meant(index, "kustard") == Names{"mustard", "custard"});
    CHECK(meant(index, "mustarde") == Names{"mustard"});
}

TEST_CASE("little words settle what would else be equal") {
    const NameIndex index = larder();
    CHECK(meant(index, "peas") == Names{"peas"});
    CHECK(meant(index, "the peas") == Names{"peas"});
    CHECK(meant(index, "fresh peas") == Names{"fresh peas"});
    CHECK(meant(index_of({{dish, {"The Fresh"}}}), "the fresh") == Names{"The Fresh"});
}

TEST_CASE("a short word never becomes another") {
    const NameIndex index = index_of({{ingredient, {"lamb"}},
                                      {ingredient, {"peas"}},
                                      {ingredient, {"beef"}},
                                      {ingredient, {"rice"}},
                                      {ingredient, {"ham"}},
                                      {ingredient, {"pear"}},
                                      {dish, {"beer bread"}}});
    for (const std::string_view word : {"lime", "mice", "jam", "yam", "cod", "peach"}) {
        INFO(word);
        CHECK(index.find(word).found.empty());
    }
    CHECK(meant(index, "beer") == Names{"beer bread"});  // known as it is written, so no slip of "beef"
    CHECK(meant(index, "pear") == Names{"pear"});
    CHECK(meant(index, "rcie") == Names{"rice"});
}

TEST_CASE("a real word that is not listed was a slip of one that is") {
    const auto index = index_of({{ingredient, {"millet"}},
                                 {ingredient, {"butter"}},
                                 {ingredient, {"coffee"}},
                                 {ingredient, {"ladies' fingers"}}});
    for (const char* word : {"mullet", "batter", "batters", "toffee", "ladyfingers"}) {
        INFO(word);
        CHECK(index.find(word).found.empty());
    }
    CHECK(index.find("buter").found.size() == 1);
}

TEST_CASE("two slips need a word of eight letters") {
    const NameIndex index = index_of({{ingredient, {"mushroom"}}, {ingredient, {"carrot"}}});
    CHECK(meant(index, "mushrrom") == Names{"mushroom"});
    CHECK(meant(index, "mashrrom") == Names{"mushroom"});
    CHECK(index.find("karrat").found.empty());
}

TEST_CASE("where nothing fits, the three nearest are named") {
    const NameIndex index = index_of({{ingredient, {"lamb shoulder"}},
                                      {ingredient, {"chocolate"}},
                                      {ingredient, {"lamb neck"}},
                                      {ingredient, {"fennel", "finocchio"}},
                                      {family, {"parsnip"}}});
    CHECK(meant(index, "boneless lamb shoulder") == Names{"near:", "lamb shoulder", "lamb neck", "chocolate"});
    CHECK(meant(index, "choc") == Names{"near:", "chocolate", "fennel", "parsnip"});
    CHECK(meant(index, "karsnap") == Names{"near:", "parsnip", "chocolate", "fennel"});
    CHECK(meant(index_of({{ingredient, {"salt"}}}), "qwerty") == Names{"near:", "salt"});
    CHECK(NameIndex().find("salt") == Match{});
}

TEST_CASE("words without a letter or figure mean nothing, and a name without one is never meant") {
    const NameIndex index = index_of({{ingredient, {"salt"}}, {ingredient, {"--"}}});
    for (const std::string_view words : {"", "   ", "--", "'", "!?", "\xF0\x9F\x8D\x85"}) {
        INFO(words);
        CHECK(index.find(words) == Match{});
    }
}

TEST_CASE("letters beyond ASCII, and bytes that are no letters at all, are compared as they are") {
    const NameIndex index = index_of({{ingredient, {"хлеб"}}, {ingredient, {"大根"}}, {ingredient, {"\xFF\xFE"}}});
    CHECK(meant(index, "ХЛЕБ") == Names{"хлеб"});
    CHECK(meant(index, "大根") == Names{"大根"});
    CHECK(meant(index, "\xFF\xFE") == Names{"\xFF\xFE"});
    CHECK(index.find("\xFF\xFF").found.empty());
}

TEST_CASE("names may be added after a finish, and one name twice counts once") {
    NameIndex index;
    index.add(1, ingredient, "salt");
    index.finish();
    index.add(1, ingredient, "salt");
    index.add(0, ingredient, "pepper");
    index.finish();
    CHECK(index.find("salt").found == std::vector<Found>{{ingredient, 1, 0, "salt"}});
    CHECK(index.find("pepper").found == std::vector<Found>{{ingredient, 0, 0, "pepper"}});
}

TEST_CASE("did you mean: the nearest known word within a third of the letters") {
    const std::array<std::string_view, 5> known{"fridge", "freezer", "pantry", "crisper", "far-freezer"};
    CHECK(nearest("frige", known) == "fridge");
    CHECK(nearest("Fridge", known) == "fridge");
    CHECK(nearest("freezzer", known) == "freezer");
    CHECK(nearest("pnatry", known) == "pantry");
    CHECK(nearest("far_freezer", known) == "far-freezer");
    CHECK(nearest("cellar", known) == std::nullopt);
    CHECK(nearest("", known) == std::nullopt);
    CHECK(nearest("fr", known) == std::nullopt);
    CHECK(nearest("fridge", {}) == std::nullopt);
    const std::array<std::string_view, 3> alike{"bat", "cat", "hat"};
    CHECK(nearest("mat", alike) == "bat");
    CHECK(nearest("hat", alike) == "hat");
}

TEST_CASE("a match says whether the words are a whole name or a part of one") {
    const auto whole = [](std::string_view words) { return larder().find(words).whole; };
    CHECK(whole("beef mince"));
    CHECK(whole("mince beef"));
    CHECK(whole("beef minse"));
    CHECK(whole("mince"));
    CHECK_FALSE(whole("berries"));
    CHECK_FALSE(whole("beries"));
    CHECK_FALSE(whole("beef mince pie"));
    CHECK_FALSE(whole("zebra"));
    CHECK_FALSE(whole(""));
}
