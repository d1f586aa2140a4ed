// Laws of reading: what is mutilated is reported or still sound, wherever it was hit, and nothing crashes.
#include <rapidcheck.h>
#include <rapidcheck/catch.h>

#include <algorithm>
#include <catch2/catch.hpp>
#include <nlohmann/json.hpp>
#include <string>
#include <vector>

#include "exchange/file.hpp"
#include "exchange/tiny_documents.hpp"

using namespace samebase;
using nlohmann::json;

namespace {

void collect(const json& value, const json::json_pointer& here, std::vector<json::json_pointer>& all) {
    all.push_back(here);
    if (value.is_object()) {
        for (const auto& [key, child] : value.items()) collect(child, here / key, all);
    } else if (value.is_array()) {
        for (std::size_t i = 0; i < value.size(); ++i) collect(value[i], here / i, all);
    }
}

std::vector<json::json_pointer> places(const json& document) {
    std::vector<json::json_pointer> all;
    collect(document, json::json_pointer(), all);
    return all;
}

/// Some value, mostly a small one, now and then one from the edge of what there is.
json some_value() {
    const std::vector<json> odd{nullptr,
                                true,
                                0,
                                -1,
                                1,
                                2.5,
                                1e300,
                                9007199254740993LL,
                                18446744073709551615ULL,
                                "",
                                "x",
                                "0 g",
                                "1 pack",
                                "9999999999 kg",
                                "mince",
                                "onion",
                                "meat-loaf",
                                "2026-02-29",
                                "9999-12-31",
                                "0000-01-01",
                                json::array(),
                                json::object(),
                                json::array({nullptr}),
                                json::object({{"of", "onion"}}),
                                "\xF0\x9F\x8D\x9E"};
    return *rc::gen::elementOf(odd);
}

/// Replaces, removes, doubles or moves one value somewhere in the document.
void mutate(json& document) {
    const auto all = places(document);
    const auto at = *rc::gen::elementOf(all);
    json& value = document[at];
    switch (*rc::gen::inRange(0, 5)) {
        case 0:
            value = some_value();
            break;
        case 1:
            if (value.is_structured() && !value.empty()) value.erase(value.begin());
            break;
        case 2:
            if (value.is_array() && !value.empty()) value.push_back(json(value.front()));
            break;
        case 3:
            value = json(document[*rc::gen::elementOf(all)]);
            break;
        default:
            if (value.is_object()) value[*rc::gen::element<std::string>("x", "of", "id", "amount")] = some_value();
    }
}

/// Everything a Problem must hold, and nothing that could not be printed as JSON.
void must_be_whole(const basics::Problems& problems) {
    RC_ASSERT(!problems.empty());
    for (const basics::Problem& problem : problems) {
        RC_ASSERT(!problem.where.empty());
        RC_ASSERT(!problem.found.empty());
        RC_ASSERT(!problem.expected.empty());
        RC_ASSERT(problem.hint != std::optional<std::string>(""));
        static_cast<void>(json(basics::to_text(problem)).dump());  // throws where it is not UTF-8
    }
}

void must_be_sound(const tests::Read& read) {
    const kitchen::Kitchen kitchen{read.knowledge,    read.household, read.stock.lots, read.stock.plan, {},
                                   read.stock.history};
    const auto broken = kitchen.check();
    if (broken) RC_FAIL(*broken);
    for (const auto& lot : kitchen.lots) static_cast<void>(price(kitchen, lot, lot.amount.value()));
    for (std::uint32_t i = 0; i < kitchen.cookbook().dishes().size(); ++i) {
        static_cast<void>(cost_per_serve(kitchen, cookbook::DishId{i}));
        static_cast<void>(weight(kitchen.cookbook()[cookbook::DishId{i}], kitchen.catalogue()));
    }
}

}  // namespace

TEST_CASE("the tiny documents are sound") {
    const tests::TinyDocuments tiny;
    const auto read = tiny.read();
    if (!read) FAIL(basics::to_text(read.error().front()));
    const kitchen::Kitchen kitchen{read->knowledge,    read->household, read->stock.lots, read->stock.plan, {},
                                   read->stock.history};
    CHECK(kitchen.check() == std::nullopt);
}

TEST_CASE("a value of the wrong type is reported where it stands, whatever value of whatever document it is") {
    tests::TinyDocuments whole;
    for (std::size_t i = 0; i < whole.all().size(); ++i) {
        for (const json::json_pointer& at : places(whole.all()[i].value)) {
            tests::TinyDocuments tiny;
            tests::TinyDocument& document = tiny.all()[i];
            json& value = document.value[at];
            value = value.is_structured() ? json(7) : json::object({{"odd", 1}});
            const auto read = tiny.read();
            const std::string where = document.name + ", " + (at.empty() ? "/" : at.to_string());
            INFO(where);
            REQUIRE_FALSE(read);
            const auto& problems = read.error();
            // Behind what is a person's stands the name.
            const auto there = [&](const auto& p) { return p.where == where || p.where.starts_with(where + " ("); };
            CHECK(std::count_if(problems.begin(), problems.end(), there) == 1);
        }
    }
}

TEST_CASE("documents with some values changed are reported or sound") {
    rc::prop("reads or gives whole problems", [] {
        tests::TinyDocuments tiny;
        const auto which = *rc::gen::inRange<std::size_t>(0, tiny.all().size());
        const int times = *rc::gen::inRange(1, 4);
        for (int i = 0; i < times; ++i) mutate(tiny.all()[which].value);
        const auto read = tiny.read();
        RC_CLASSIFY(read.has_value(), "still sound");
        if (read) {
            must_be_sound(*read);
        } else {
            must_be_whole(read.error());
        }
    });
}

TEST_CASE("a text with some bytes changed reads as JSON or says why not") {
    tests::TinyDocuments whole;
    rc::prop("reads or gives whole problems", [&] {
        tests::TinyDocuments tiny = whole;
        const auto which = *rc::gen::inRange<std::size_t>(0, tiny.all().size());
        std::string text = tiny.all()[which].value.dump(1);
        const int times = *rc::gen::inRange(1, 5);
        for (int i = 0; i < times; ++i) {
            const auto at = *rc::gen::inRange<std::size_t>(0, text.size());
            const auto byte = *rc::gen::weightedOneOf<char>(
                {{1, rc::gen::arbitrary<char>()},
                 {2, rc::gen::element('"', '{', '}', '[', ']', ',', ':', '0', '9', 'e', '\\', '-')}});
            switch (*rc::gen::inRange(0, 4)) {
                case 0:
                    text[at] = byte;
                    break;
                case 1:
                    text.insert(at, 1, byte);
                    break;
                case 2:
                    text.erase(at, 1);
                    break;
                default:
                    text.resize(std::max<std::size_t>(at, 1));
            }
            if (text.empty()) text = " ";
        }
        const auto parsed = exchange::parse(text, "x.json");
        if (!parsed) return must_be_whole(parsed.error());
        tiny.all()[which].value = *parsed;
        const auto read = tiny.read();
        if (read) return must_be_sound(*read);
        must_be_whole(read.error());
    });
}
