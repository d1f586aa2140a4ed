// Laws of reading ingredient lines.
#include <rapidcheck/catch.h>

#include <catch2/catch.hpp>
#include <string>

#include "measure/line.hpp"

using namespace samebase::measure;

namespace {

rc::Gen<std::string> line_like() {
    const auto token = rc::gen::elementOf(std::vector<std::string>{
        "1",    "2",     "1/2",     "½",      "14-ounce", "3-inch", "cups", "g",     "cloves", "(",
        ")",    ",",     ";",       "-",      "or",       "of",     "and",  "onion", "garlic", "butter",
        "red",  "fresh", "chopped", "finely", "to",       "taste",  "some", "a",     "stick",  "juice",
        "from", "x",     "/",       "[",      "]",        ".",      "large"});
    return rc::gen::map(rc::gen::container<std::vector<std::string>>(token),
                        [](const std::vector<std::string>& tokens) {
                            std::string text;
                            for (const auto& one : tokens) text += one + " ";
                            return text;
                        });
}

void check_sound(const std::string& text) {
    const auto read = read_line(text, MeasureSet::metric_15);
    if (!read) {
        RC_ASSERT(read.error().size() == 1U);
        RC_ASSERT(!read.error().front().found.empty());
        return;
    }
    RC_ASSERT(!read->name.empty());
    RC_ASSERT(read->original == text);
    RC_ASSERT((read->amount || (read->unit.empty() && !read->each)));
    if (read->amount && read->amount->upper) {
        RC_ASSERT(*read->amount->upper >= std::get<Amount>(read->amount->amount));
    }
    RC_ASSERT((read->unit.empty() || find_unit(read->unit)->name == read->unit));
}

}  // namespace

TEST_CASE("reading a line gives a sound line or one problem") {
    rc::prop("on any bytes", [] { check_sound(*rc::gen::arbitrary<std::string>()); });
    rc::prop("on what looks like a line", [] { check_sound(*line_like()); });
}

TEST_CASE("an amount before a plain name is the amount by itself") {
    rc::prop("amount, name", [] {
        const auto amount = *rc::gen::element<std::string>("500 g", "1 1/2 cups", "½ tsp", "3 cloves", "2-3 kg",
                                                           "2 x 400 g", "a pinch");
        const auto name = *rc::gen::element<std::string>("onion", "soy sauce", "beef mince", "basil leaves");
        const auto of = *rc::gen::element<std::string>(" ", " of ");
        const auto line = read_line(amount + of + name, MeasureSet::imperial);
        RC_ASSERT(line.has_value());
        RC_ASSERT(line->amount == *read_amount(amount, MeasureSet::imperial));
        RC_ASSERT(line->name == name);
        RC_ASSERT(line->preparation.empty());
    });
}
