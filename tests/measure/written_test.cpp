#include "measure/written.hpp"

#include <catch2/catch.hpp>
#include <limits>
#include <vector>

using namespace samebase;
using namespace samebase::measure;

namespace {

constexpr MeasureSet metric = MeasureSet::australian_metric;

/// "500 g", "500 g to 600 g", "3 clove", "some", or the problem's whole text.
std::string shown(std::string_view text, MeasureSet set = metric) {
    const auto read = read_amount(text, set);
    if (!read) {
        CHECK(read.error().size() == 1);
        return to_text(read.error().front());
    }
    std::string out(std::holds_alternative<Rough>(read->amount) ? std::string(name(std::get<Rough>(read->amount)))
                                                                : write(std::get<Amount>(read->amount)));
    if (read->upper) out += " to " + write(*read->upper);
    if (!read->counted.empty()) out += " " + read->counted;
    return out;
}

std::string fifty_megabytes(char of) {
    std::string text;
    text.resize(50'000'000, of);
    return text;
}

using Pairs = std::vector<std::pair<std::string, std::string>>;

void check_all(const Pairs& pairs) {
    for (const auto& [text, expected] : pairs) {
        INFO(text);
        CHECK(shown(text) == expected);
    }
}

}  // namespace

TEST_CASE("amounts as a cook writes them") {
    check_all({
        {"500 g", "500 g"},
        {"1.5kg", "1500 g"},
        {"  250   mL ", "250 mL"},
        {"1,000 g", "1000 g"},
        {"1,234,567 g", "1234567 g"},
        {".5 L", "500 mL"},
        {"3", "3"},
        {"0", "0"},
        {"13.5", "13.5"},
        {"2 packs", "2 pack"},
        {"3 cloves", "3 clove"},
        {"4 serves", "4 serve"},
        {"1 tin", "1 can"},
        {"1½ packets", "1.5 pack"},
        {"500-g", "500 g"},
        {"about 500 g", "500 g"},
        {"approx. 2 cups", "500 mL"},
        {"1 T", "20 mL"},
        {"1 t", "5 mL"},
        {"2 c. ", "500 mL"},
        {"2 fl. oz.", "56.826 mL"},
        {"1 stick", "1 stick"},
        {"1 stick of butter", "113.398 g"},
        {"2 sticks butter", "226.796 g"},
    });
}

TEST_CASE("fractions, in figures and in words") {
    check_all({
        {"1/2 cup", "125 mL"},
        {"1 1/2 cups", "375 mL"},
        {"1-1/2 cups", "375 mL"},
        {"1 and 1/2 cups", "375 mL"},
        {"1½", "1.5"},
        {"½ tsp", "2.5 mL"},
        {"1\u00A0½\u00A0cups", "375 mL"},
        {"1⁄3 cup", "83.333 mL"},
        {"half", "0.5"},
        {"a half", "0.5"},
        {"half a cup", "125 mL"},
        {"half cup", "125 mL"},
        {"a quarter of a cup", "62.5 mL"},
        {"three quarters of a cup", "187.5 mL"},
        {"one and a half cups", "375 mL"},
        {"two cups", "500 mL"},
        {"a cup", "250 mL"},
        {"a pinch", "0.312 mL"},
        {"a dozen", "12"},
        {"half a dozen", "6"},
        {"2 dozen", "24"},
        {"a couple of packs", "2 pack"},
    });
}

TEST_CASE("products are multiplied out and ranges keep both ends") {
    check_all({
        {"2 x 400 g", "800 g"},
        {"2×400g", "800 g"},
        {"400 g x 2", "800 g"},
        {"2 packs x 500 g", "1000 g"},
        {"3 x 2 x 100 g", "600 g"},
        {"500-600 g", "500 g to 600 g"},
        {"500 – 600 g", "500 g to 600 g"},
        {"500 to 600 g", "500 g to 600 g"},
        {"500 g - 1 kg", "500 g to 1000 g"},
        {"2 or 3 cloves", "2 to 3 clove"},
        {"two to three cups", "500 mL to 750 mL"},
        {"½-¾ cup", "125 mL to 187.5 mL"},
        {"2 x 400-500 g", "800 g to 1000 g"},
        {"2-2 g", "2 g to 2 g"},
    });
}

TEST_CASE("rough amounts") {
    check_all({{"some", "some"},
               {"Low", "low"},
               {"running low", "low"},
               {"lots", "lots"},
               {"plenty", "lots"},
               {"a few", "some"}});
}

TEST_CASE("reading rounds once, half to even") {
    check_all({
        {"0.0005 g", "0 g"},
        {"0.0015 g", "0.002 g"},
        {"0.0025 g", "0.002 g"},
        {"0.00250000001 g", "0.003 g"},
        {"1/3", "0.333"},
        {"3 x 1/3", "1"},  // and not 0.999
    });
}

TEST_CASE("measures differ by set") {
    CHECK(shown("1 tbsp", MeasureSet::australian_metric) == "20 mL");
    CHECK(shown("1 tbsp", MeasureSet::metric_15) == "15 mL");
    CHECK(shown("1 tbsp", MeasureSet::us_customary) == "14.787 mL");
    CHECK(shown("1 tbsp", MeasureSet::imperial) == "17.758 mL");
    CHECK(shown("1 dessertspoon") == "10 mL");
}

TEST_CASE("what cannot be read is a problem that says so") {
    const std::string like = "; expected an amount such as '500 g', '2 packs', '1 1/2 cups' or 'half'";
    const std::string unit = "is not a unit; expected a unit such as 'g', 'mL', 'cup' or 'pack', and nothing after it";
    const std::string size = "is too large; expected at most 1000000000 kg, 1000000000 L or 1000000000000 pieces";
    check_all({
        {"", "nothing is written" + like},
        {" \t\n", "nothing is written" + like},
        {"onions", "'onions' is not an amount" + like},
        {"a", "'a' is not an amount" + like},
        {"5 potatos", "'potatos' in '5 potatos' " + unit},
        {"500 g of", "'of' in '500 g of' " + unit},
        {"1e3", "'e3' in '1e3' " + unit},
        {"1/2/3", "'/3' in '1/2/3' " + unit},
        {"-5 g", "'-5 g' is below nothing; expected an amount of 0 or more"},
        {"\u22125 g", "'\u22125 g' is below nothing; expected an amount of 0 or more"},
        {"1/0 cup", "'1/0 cup' divides by zero; expected a fraction whose lower number is at least 1"},
        {"2 1/0 cup", "'2 1/0 cup' divides by zero; expected a fraction whose lower number is at least 1"},
        {"1,5 kg", "'1,5 kg' has a comma that parts no thousands; expected a decimal point, as in '1.5'"},
        {"1000000001 kg", "'1000000001 kg' " + size},
        {"999999999999999999 kg", "'999999999999999999 kg' " + size},
        {"999999999999999999 x 999999999999999999 gallons",
         "'999999999999999999 x 999999999999999999 gallons' " + size},
        {"12345678901234567890", "'12345678901234567890' has too many digits; expected a number of at most 18 digits"},
        {"600-500 g", "'600-500 g' runs backwards; expected a range with its smaller end first"},
        {"500 g to 2 cups",
         "'500 g to 2 cups' mixes units that do not go together; expected one unit, or two of the same kind"},
        {"2 g x 3 g", "'2 g x 3 g' mixes units that do not go together; expected one unit, or two of the same kind"},
        {"1 can to 2 packs",
         "'1 can to 2 packs' mixes units that do not go together; expected one unit, or two of the same kind"},
        {std::string("5\0g", 3), "'5\\x00g' holds a NUL byte" + like + ", in UTF-8"},
        {"5 \xFFg", "'5 \\xFFg' is not UTF-8" + like + ", in UTF-8"},
        {"\xC2", "'\\xC2' is not UTF-8" + like + ", in UTF-8"},
    });
}

TEST_CASE("an amount of fifty megabytes is a short problem") {
    const std::string like =
        "; expected an amount such as '500 g', '2 packs', '1 1/2 cups' or 'half', in at most 1000 bytes";
    CHECK(shown(fifty_megabytes('9')) == "'" + std::string(60, '9') + "...' is 50000000 bytes long" + like);
    CHECK(shown(std::string(1001, ' ')) == "'" + std::string(60, ' ') + "...' is 1001 bytes long" + like);
    std::string halves;
    for (int i = 0; i < 70; ++i) halves += "½";
    CHECK(read_amount(halves, metric).error().front().found.find("...'") != std::string::npos);
}

TEST_CASE("writing is exact") {
    CHECK(write(Amount{Dimension::mass, 1'234'567}) == "1234.567 g");
    CHECK(write(Amount{Dimension::volume, 250'000}) == "250 mL");
    CHECK(write(Amount{Dimension::pieces, 2500}) == "2.5");
    CHECK(write(Amount{Dimension::pieces, -50}) == "-0.05");
    CHECK(write(Amount{Dimension::mass, std::numeric_limits<std::int64_t>::min()}) == "-9223372036854775.808 g");
}

TEST_CASE("writing for people is short") {
    const auto mass = [](std::int64_t mg) { return write_kindly(Amount{Dimension::mass, mg}); };
    CHECK(mass(0) == "0 g");
    CHECK(mass(1) == "0.001 g");
    CHECK(mass(480'000) == "480 g");
    CHECK(mass(113'398) == "113 g");
    CHECK(mass(56'699) == "56.7 g");
    CHECK(mass(999'499) == "999 g");
    CHECK(mass(999'500) == "1 kg");
    CHECK(mass(1'004'999) == "1 kg");
    CHECK(mass(1'500'000) == "1.5 kg");
    CHECK(mass(7'300'000) == "7.3 kg");
    CHECK(mass(-1'500'000) == "-1.5 kg");
    CHECK(write_kindly(Amount{Dimension::volume, 1'250'000}) == "1.25 L");
    CHECK(write_kindly(Amount{Dimension::volume, 60'000}) == "60 mL");
    const auto pieces = [](std::int64_t thousandths) { return write_kindly(Amount{Dimension::pieces, thousandths}); };
    CHECK(pieces(0) == "0");
    CHECK(pieces(3000) == "3");
    CHECK(pieces(2500) == "2 1/2");
    CHECK(pieces(500) == "1/2");
    CHECK(pieces(333) == "1/3");
    CHECK(pieces(13'500) == "13 1/2");
    CHECK(pieces(2340) == "2.34");
}

TEST_CASE("an amount that a cook reads is one that a hand can measure") {
    const auto mass = [](std::int64_t mg) { return write_rounded(Amount{Dimension::mass, mg}); };
    CHECK(mass(0) == "0 g");
    CHECK(mass(1) == "a little");
    CHECK(mass(499) == "a little");
    CHECK(mass(500) == "1 g");
    CHECK(mass(8'810) == "9 g");
    CHECK(mass(9'400) == "9 g");
    CHECK(mass(12'300) == "10 g");
    CHECK(mass(97'600) == "100 g");
    CHECK(mass(333'000) == "330 g");
    CHECK(mass(994'999) == "990 g");
    CHECK(mass(996'000) == "1 kg");
    CHECK(mass(1'024'999) == "1 kg");
    CHECK(mass(1'476'000) == "1.5 kg");
    CHECK(mass(7'073'000) == "7.05 kg");
    CHECK(mass(-332'000) == "-330 g");
    CHECK(write_rounded(Amount{Dimension::volume, 36'310}) == "35 mL");
    CHECK(write_rounded(Amount{Dimension::volume, 1'149'000}) == "1.15 L");
    const auto pieces = [](std::int64_t thousandths) { return write_rounded(Amount{Dimension::pieces, thousandths}); };
    CHECK(pieces(0) == "0");
    CHECK(pieces(100) == "1");
    CHECK(pieces(1'680) == "2");
    CHECK(pieces(3'000) == "3");
}
