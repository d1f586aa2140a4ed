// Laws of reading and writing amounts.
#include <rapidcheck/catch.h>

#include <catch2/catch.hpp>
#include <cmath>
#include <string>

#include "measure/written.hpp"

using namespace samebase::measure;

namespace {

rc::Gen<MeasureSet> any_set() {
    return rc::gen::elementOf(std::vector<MeasureSet>(measure_sets.begin(), measure_sets.end()));
}

/// Readable amounts of every size: the number of digits is drawn first, so that small ones are as likely as large.
rc::Gen<Amount> any_amount() {
    return rc::gen::apply(
        [](int digits, double part, Dimension dimension) {
            const double value = std::pow(10.0, digits) * part;
            return Amount{dimension, std::min(static_cast<std::int64_t>(value), most_readable)};
        },
        rc::gen::inRange(0, 16), rc::gen::map(rc::gen::inRange(0, 1'000'001), [](int n) { return n / 1e6; }),
        rc::gen::element(Dimension::mass, Dimension::volume, Dimension::pieces));
}

/// Texts of the words and signs that amounts are made of, in any order.
rc::Gen<std::string> amount_like() {
    const auto token = rc::gen::elementOf(std::vector<std::string>{"1",     "2",
                                                                   "500",   "1/2",
                                                                   "0",     "1,000",
                                                                   "0.5",   "½",
                                                                   "g",     "kg",
                                                                   "cups",  "cloves",
                                                                   "-",     "to",
                                                                   "x",     "a",
                                                                   "half",  "of",
                                                                   "dozen", "and",
                                                                   "some",  "about",
                                                                   "stick", "butter",
                                                                   " ",     "  ",
                                                                   "/",     ".",
                                                                   ",",     "(",
                                                                   ")",     "fl",
                                                                   "oz",    "999999999999999999"});
    return rc::gen::map(rc::gen::container<std::vector<std::string>>(token),
                        [](const std::vector<std::string>& tokens) {
                            std::string text;
                            for (const auto& one : tokens) text += one + (one.size() % 2 == 0 ? " " : "");
                            return text;
                        });
}

void check_sound(const std::string& text, MeasureSet set) {
    const auto read = read_amount(text, set);
    if (!read) {
        RC_ASSERT(read.error().size() == 1U);
        RC_ASSERT(read.error().front().where.empty());
        RC_ASSERT(!read.error().front().found.empty());
        RC_ASSERT(!read.error().front().expected.empty());
        return;
    }
    const auto* amount = std::get_if<Amount>(&read->amount);
    if (amount == nullptr) {
        RC_ASSERT(!read->upper.has_value());
        return;
    }
    RC_ASSERT((amount->value() >= 0 && amount->value() <= most_readable));
    RC_ASSERT((read->counted.empty() || amount->dimension() == Dimension::pieces));
    if (!read->upper) return;
    RC_ASSERT(read->upper->dimension() == amount->dimension());
    RC_ASSERT((read->upper->value() >= amount->value() && read->upper->value() <= most_readable));
}

}  // namespace

TEST_CASE("what is written is read again as it was") {
    rc::prop("read(write(a)) == a", [] {
        const auto amount = *any_amount();
        const auto read = read_amount(write(amount), *any_set());
        RC_ASSERT(read.has_value());
        RC_ASSERT(*read == (Written{amount, {}, {}}));
    });
    for (const auto dimension : {Dimension::mass, Dimension::volume, Dimension::pieces}) {
        const Amount most{dimension, most_readable};
        CHECK(read_amount(write(most), MeasureSet::imperial) == Written{most, {}, {}});
        CHECK_FALSE(read_amount(write(Amount{dimension, most_readable + 1}), MeasureSet::imperial));
    }
}

TEST_CASE("the canonical form is a fixed point, whatever was read") {
    rc::prop("read -> write -> read is read", [] {
        const auto set = *any_set();
        const auto first = read_amount(*amount_like(), set);
        if (!first || !std::holds_alternative<Amount>(first->amount)) return;
        const auto amount = std::get<Amount>(first->amount);
        RC_ASSERT(std::get<Amount>(read_amount(write(amount), set)->amount) == amount);
    });
}

TEST_CASE("reading gives a sound amount or one whole problem") {
    rc::prop("on any bytes", [] { check_sound(*rc::gen::arbitrary<std::string>(), *any_set()); });
    rc::prop("on what looks like an amount", [] { check_sound(*amount_like(), *any_set()); });
}

TEST_CASE("a range read from two amounts has them as its ends") {
    rc::prop("ranges", [] {
        const auto a = *rc::gen::inRange(1, 100'000);
        const auto b = a + *rc::gen::inRange(0, 100'000);
        const auto sign = *rc::gen::element<std::string>("-", " - ", " to ", " or ", "–");
        const auto read = read_amount(std::to_string(a) + sign + std::to_string(b) + " g", *any_set());
        RC_ASSERT(read.has_value());
        RC_ASSERT(std::get<Amount>(read->amount) == (Amount{Dimension::mass, a * 1000LL}));
        RC_ASSERT(read->upper.value() == (Amount{Dimension::mass, b * 1000LL}));
    });
}

TEST_CASE("writing for people is never wrong by more than a half in a hundred") {
    rc::prop("write_kindly", [] {
        const auto amount = *any_amount();
        // Fractions of a piece are read back as the thousandths that they were written for.
        const auto read = read_amount(write_kindly(amount), *any_set());
        RC_ASSERT(read.has_value());
        const auto again = std::get<Amount>(read->amount);
        RC_ASSERT(again.dimension() == amount.dimension());
        RC_ASSERT(200 * std::abs(again.value() - amount.value()) <= amount.value());
    });
}

TEST_CASE("an amount as a hand measures it has no decimal below a kilogram, and two at most above") {
    rc::prop("write_rounded", [] {
        const std::int64_t value = *rc::gen::inRange<std::int64_t>(0, 30'000'000);
        const auto dimension = *rc::gen::element(Dimension::mass, Dimension::volume);
        const std::string text = write_rounded(Amount{dimension, value});
        const auto point = text.find('.');
        const auto space = text.find(' ');
        if (point != std::string::npos) {
            RC_ASSERT(text.ends_with(" kg") || text.ends_with(" L"));
            RC_ASSERT(space - point <= 3U);
        }
        if (text == "a little") {
            RC_ASSERT(value < 500);
            return;
        }
        const auto again = std::get<Amount>(read_amount(text, *any_set())->amount);
        const std::int64_t step = value < 10'000      ? 1'000
                                  : value < 100'000   ? 5'000
                                  : value < 1'000'000 ? 10'000
                                                      : 50'000;
        RC_ASSERT(2 * std::abs(again.value() - value) <= step);
    });
}
