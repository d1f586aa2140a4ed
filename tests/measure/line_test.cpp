#include "measure/line.hpp"

#include <catch2/catch.hpp>
#include <vector>

using namespace samebase;
using namespace samebase::measure;

namespace {

/// "amount | unit | name | preparation", with "each SIZE" after the amount where the line says it.
std::string shown(std::string_view text) {
    const auto read = read_line(text, MeasureSet::australian_metric);
    if (!read) return to_text(read.error().front());
    CHECK(read->original == text);
    const auto one = [](const Written& written) {
        std::string out(std::holds_alternative<Rough>(written.amount)
                            ? std::string(name(std::get<Rough>(written.amount)))
                            : write(std::get<Amount>(written.amount)));
        if (written.upper) out += " to " + write(*written.upper);
        return out;
    };
    std::string out = read->amount ? one(*read->amount) : "-";
    if (read->each) out += " each " + one(*read->each);
    return out + " | " + read->unit + " | " + read->name + " | " + read->preparation;
}

std::string fifty_megabytes(char of) {
    std::string text;
    text.resize(50'000'000, of);
    return text;
}

/// What stands before the name.
std::string before(std::string_view text) {
    const auto read = read_line(text, MeasureSet::australian_metric);
    REQUIRE(read);
    CHECK(read->preparation.starts_with(read->before));
    return read->before;
}

using Pairs = std::vector<std::pair<std::string, std::string>>;

void check_all(const Pairs& pairs) {
    for (const auto& [text, expected] : pairs) {
        INFO(text);
        CHECK(shown(text) == expected);
    }
}

}  // namespace

TEST_CASE("quantity, unit, name and preparation come apart") {
    check_all({
        {"500 g beef mince", "500 g | g | beef mince | "},
        {"2 onions, finely chopped", "2 |  | onions | finely chopped"},
        {"2 large cloves garlic, finely chopped", "2 | clove | garlic | large, finely chopped"},
        {"4 garlic cloves, peeled", "4 | clove | garlic | peeled"},
        {"2½ cups self-raising flour, sifted", "625 mL | cup | self-raising flour | sifted"},
        {"1 tbsp of olive oil", "20 mL | tablespoon | olive oil | "},
        {"1/2 tsp freshly ground black pepper", "2.5 mL | teaspoon | black pepper | freshly ground"},
        {"1 medium-sized, peeled and diced onion", "1 |  | onion | medium-sized, peeled and diced"},
        {"2 red, ripe tomatoes", "2 |  | tomatoes | red, ripe"},
        {"half a cabbage", "0.5 |  | cabbage | "},
        {"an onion", "1 |  | onion | "},
        {"a handful of basil leaves", "1 | handful | basil leaves | "},
        {"2 to 3 carrots cut into sticks", "2 to 3 |  | carrots | cut into sticks"},
        {"mushrooms 250 g", "250 g | g | mushrooms | "},
        {"Flour, 2 cups", "500 mL | cup | Flour | "},
        {"- 500 g beef mince", "500 g | g | beef mince | "},
        {"1 cup crème fraîche", "250 mL | cup | crème fraîche | "},
        {"6 cloves", "6 |  | cloves | "},
        {"3 eggs (lightly beaten)", "3 |  | eggs | lightly beaten"},
        {"1 can (beans", "1 | can | beans | "},
    });
}

TEST_CASE("lines without a number") {
    check_all({
        {"Salt, for garnish", "- |  | Salt | for garnish"},
        {"salt and pepper to taste", "- |  | salt and pepper | to taste"},
        {"some salt", "some |  | salt | "},
        {"Pinch of salt", "0.312 mL | pinch | salt | "},
        {"Sprigs of parsley", "some | sprig | parsley | "},
        {"Juice of 1 lemon", "1 |  | lemon | Juice of"},
        {"Grated zest and juice of 2 lemons", "2 |  | lemons | Grated zest and juice of"},
        {"Scant 1/2 teaspoon salt", "2.5 mL | teaspoon | salt | Scant"},
        {"low-fat milk", "- |  | milk | low-fat"},
        {"Five-spice powder", "- |  | Five-spice powder | "},
    });
}

TEST_CASE("the size of one is kept beside the count") {
    check_all({
        {"2 (400 g) cans chopped tomatoes", "2 each 400 g | can | tomatoes | 400 g, chopped"},
        {"1 14-ounce can coconut milk", "1 each 396.893 g | can | coconut milk | 14-ounce"},
        {"1 tin (400g) chickpeas, drained", "1 each 400 g | can | chickpeas | 400g, drained"},
        {"1 2-kg chicken", "1 each 2000 g |  | chicken | 2-kg"},
        {"2 x 400 g cans tomatoes", "800 g | g | tomatoes | cans"},
        {"1 3-inch piece of ginger", "1 | piece | ginger | 3-inch"},
        {"1 1/2-inch piece ginger", "1 | piece | ginger | 1/2-inch"},
        {"1 cup (250 mL) cream", "250 mL | cup | cream | 250 mL"},
        {"1 cup / 250 mL milk", "250 mL | cup | milk | 250 mL"},
        {"1 lb - 450 g flour", "453.592 g | lb | flour | 450 g"},
    });
}

TEST_CASE("a stick of butter is a weight, another stick is counted") {
    check_all({{"2 sticks unsalted butter", "226.796 g | stick | unsalted butter | "},
               {"1 stick celery", "1 | stick | celery | "}});
}

TEST_CASE("of two ingredients the first is taken, whole") {
    check_all({
        {"1 cup chicken or vegetable stock", "250 mL | cup | chicken stock | or vegetable stock"},
        {"2 tbsp butter or olive oil", "40 mL | tablespoon | butter | or olive oil"},
    });
}

TEST_CASE("an oil shared its head with no kind in a list of several") {
    check_all({
        {"2 tbsp olive or vegetable oil", "40 mL | tablespoon | olive oil | or vegetable oil"},
        {"1 cup peanut, canola or olive oil", "250 mL | cup | peanut oil | canola or olive oil"},
    });
}

TEST_CASE("a compound lost what stands behind its participle, and with it its allergens") {
    check_all({
        {"100 g honey coated cashews", "100 g | g | honey coated cashews | "},
        {"300 g cheese filled ravioli", "300 g | g | cheese filled ravioli | "},
        {"1 kg beef brisket trimmed of fat", "1000 g | kg | beef brisket | trimmed of fat"},
        {"2 potatoes diced small", "2 |  | potatoes | diced small"},
        {"1 cup tomatoes peeled and chopped", "250 mL | cup | tomatoes | peeled and chopped"},
        {"1 eggplant cut 1 cm thick", "1 |  | eggplant | cut 1 cm thick"},
    });
}

TEST_CASE("what is written by hand has a unit, a length is none, and two amounts are one sum") {
    check_all({
        {"pinch nutmeg", "0.312 mL | pinch | nutmeg | "},
        {"handful basil leaves, torn", "1 | handful | basil leaves | torn"},
        {"3 cm piece ginger, grated", "1 | piece | ginger | 3 cm, grated"},
        {"2 cm knob of ginger", "1 | knob | ginger | 2 cm"},
        {"1 cup plus 2 tbsp plain flour", "290 mL | cup | plain flour | "},
        {"1 cup plus 50 g plain flour",
         "'1 cup plus 50 g plain flour' names no ingredient; expected a line such as '2 "
         "onions, finely chopped'"},
        {"juice of half a lemon", "0.5 |  | lemon | juice of"},
        {"1 tbsp cornflour mixed with water", "20 mL | tablespoon | cornflour | mixed with water"},
        {"3 red medium onions", "3 |  | red onions | medium"},
        {"500 g fresh or frozen peas", "500 g | g | peas | fresh or frozen"},
        {"4 sweet or hot sausages", "4 |  | hot sausages | sweet or"},
    });
}

TEST_CASE("some describing words are part of a name") {
    check_all({
        {"500 g ground beef", "500 g | g | ground beef | "},
        {"1 tsp hot sauce", "5 mL | teaspoon | hot sauce | "},
        {"1 cup hot water", "250 mL | cup | water | hot"},
        {"1 cup whole wheat flour", "250 mL | cup | whole wheat flour | "},
        {"50 g unsalted butter, melted", "50 g | g | unsalted butter | melted"},
    });
}

TEST_CASE("a line that cannot be read is a problem that says so") {
    const std::string like = "; expected a line such as '2 onions, finely chopped'";
    check_all({
        {"", "nothing is written" + like},
        {"500 g", "'500 g' names no ingredient" + like},
        {"...", "'...' names no ingredient" + like},
        {"1/2 cup plus more to taste", "'1/2 cup plus more to taste' names no ingredient" + like},
        {"to taste", "'to taste' names no ingredient" + like},
        {"()", "'()' names no ingredient" + like},
        {"1/0 cup milk", "'1/0 cup milk' divides by zero; expected a fraction whose lower number is at least 1"},
        {"-5 g salt", "'-5 g salt' is below nothing; expected an amount of 0 or more"},
        {"9999999999 kg rice",
         "'9999999999 kg rice' is too large; expected at most 1000000000 kg, 1000000000 L or 1000000000000 pieces"},
        {"1 cup \xFF", "'1 cup \\xFF' is not UTF-8" + like + ", in UTF-8"},
        {std::string("1 cup\0", 6), "'1 cup\\x00' holds a NUL byte" + like + ", in UTF-8"},
        {fifty_megabytes('a'),
         "'" + std::string(60, 'a') + "...' is 50000000 bytes long" + like + ", in at most 4000 bytes"},
    });
}

TEST_CASE("what stands before the name is told apart from what comes after") {
    CHECK(before("1 large brown onion, finely chopped") == "large");
    CHECK(before("2 large cloves garlic, finely chopped") == "large");
    CHECK(before("1 cup frozen peas, thawed") == "frozen");
    CHECK(before("peas, frozen") == "");
    CHECK(before("1 peeled and diced onion (about 150 g)") == "peeled and diced");
    CHECK(before("400 g can chopped tomatoes") == "can, chopped");
    CHECK(before("1 red, ripe tomato") == "red, ripe");
    CHECK(before("6 whole cloves") == "whole");
}
