// The questions of fifty_questions.json and its like: one household with one kitchen, and for each question
// what is asked about, in which month, who avoids what, which dishes a cook expects among the first ten answers and
// what must be among none.
#pragma once

#include <fmt/format.h>

#include <algorithm>
#include <catch2/catch.hpp>
#include <chrono>
#include <iostream>
#include <nlohmann/json.hpp>
#include <optional>
#include <sstream>
#include <string>
#include <vector>

#include "exchange/file.hpp"
#include "exchange/household.hpp"
#include "support/shipped.hpp"

namespace samebase::tests {

/// Dishes of one idea: one of them at least is expected.
using Idea = std::vector<cookbook::DishId>;

struct CooksQuestion {
    std::string id;  ///< "beef-mince", "beef-mince, all avoid gluten"
    catalogue::IngredientId ask;
    unsigned month = 1;
    std::vector<Idea> expect;
    std::vector<Idea> plain;  ///< for each idea the everyday dishes that are the same one: on a base of its dishes
    std::vector<cookbook::DishId> never_dishes;  ///< among the answers
    std::vector<catalogue::Of> never_in_it;      ///< served with any answer
    std::optional<catalogue::Allergen> avoids;
    nlohmann::json lot;        ///< of what is asked about, as stock.json has it, without dates
    nlohmann::json household;  ///< as kitchen.json has it
};

inline std::vector<std::string> words_of(const std::string& text) {
    std::istringstream in(text);
    std::vector<std::string> words;
    for (std::string word; in >> word;) words.push_back(word);
    return words;
}

inline cookbook::DishId shipped_dish(const std::string& id) {
    const auto found = shipped().cookbook.dish(id);
    INFO("dish " << id);
    REQUIRE(found);
    return *found;
}

inline nlohmann::json read_questions(const std::string& name) {
    const std::string path = SAMEBASE_SOURCE_DIR "/tests/data/" + name;
    return exchange::parse(exchange::read_file(path).value(), path).value();
}

/// With the household and its stock.
inline const nlohmann::json& questions_document() {
    static const nlohmann::json document = read_questions("fifty_questions.json");
    return document;
}

inline CooksQuestion read_question(const nlohmann::json& row) {
    CooksQuestion question;
    question.id = row.at("ask");
    question.ask = shipped_ingredient(question.id);
    question.month = row.at("month");
    for (const std::string group : row.at("expect")) {
        question.expect.emplace_back();
        for (const auto& dish : words_of(group)) question.expect.back().push_back(shipped_dish(dish));
    }
    question.plain.resize(question.expect.size());
    const auto plain = row.value("plain", nlohmann::json::array());
    for (std::size_t i = 0; i < plain.size(); ++i) {
        for (const auto& dish : words_of(plain.at(i))) question.plain.at(i).push_back(shipped_dish(dish));
    }
    for (const auto& word : words_of(row.value("never", ""))) {
        if (const auto dish = shipped().cookbook.dish(word)) {
            question.never_dishes.push_back(*dish);
            continue;
        }
        const auto of = shipped_catalogue().ingredient_or_family(word);
        INFO("dish, ingredient or family " << word);
        REQUIRE(of);
        question.never_in_it.push_back(*of);
    }
    question.lot = {{"lot", 1}, {"of", question.id}};
    for (const char* const key : {"amount", "packs", "paid"}) {
        if (row.contains(key)) question.lot[key] = row[key];
    }
    if (row.contains("of_dish")) question.lot["dish"] = row["of_dish"];
    question.household = questions_document().at("household");
    if (row.contains("avoids")) {
        const std::string avoids = row["avoids"];
        const std::string who = row.at("who");
        question.avoids = catalogue::read_allergen(avoids);
        REQUIRE(question.avoids);
        question.id += fmt::format(", {} avoid{} {}", who, who == "one" ? "s" : "", avoids);
        auto& people = question.household["people"];
        for (std::size_t i = 0; i < (who == "one" ? 1 : people.size()); ++i) people[i]["avoids"] = {avoids};
    }
    return question;
}

inline std::vector<CooksQuestion> questions_of(const nlohmann::json& document) {
    std::vector<CooksQuestion> read;
    for (const auto& row : document.at("questions")) {
        if (!row.contains("section")) read.push_back(read_question(row));
    }
    return read;
}

inline const std::vector<CooksQuestion>& cooks_questions() {
    static const std::vector<CooksQuestion> questions = questions_of(questions_document());
    return questions;
}

/// The first Wednesday from the tenth of the month on.
inline basics::Day asked_on(const CooksQuestion& question) {
    basics::Day day = std::chrono::year{2026} / std::chrono::month{question.month} / std::chrono::day{10};
    while (std::chrono::weekday{day} != std::chrono::Wednesday) day += basics::days{1};
    return day;
}

/// Where the thing is kept, and since when: what keeps for a month at most has been there until it keeps for one more
/// day, all else for 25 days.
inline void put_away(nlohmann::json& lot, const catalogue::IngredientId thing, basics::Day today) {
    constexpr int month = 30;
    constexpr int long_there = 25;
    for (const auto& [keep, place] : {std::pair{catalogue::Keep::crisper, "crisper"},
                                      {catalogue::Keep::pantry, "pantry"},
                                      {catalogue::Keep::fridge, "fridge"}}) {
        const auto keeps = keeping(thing, keep);
        if (keeps.said != catalogue::Keeping::Said::time) continue;
        lot["place"] = place;
        const int ago = keeps.time.days <= month ? keeps.time.days - 1 : long_there;
        lot["arrived"] = basics::iso(today - basics::days{ago});
        return;
    }
}

/// The household's stock on that day, with what is asked about in place of its own of it.
inline nlohmann::json stock_of(const CooksQuestion& question, basics::Day today) {
    nlohmann::json document{{"samebase", 1}, {"lots", nlohmann::json::array()}};
    auto& lots = document["lots"];
    lots.push_back(question.lot);
    put_away(lots.back(), question.ask, today);
    const std::string asked = question.lot.at("of");
    for (nlohmann::json lot : questions_document().at("stock")) {
        if (lot.at("of") == asked) continue;
        lot["lot"] = lots.size() + 1;
        lot["arrived"] = basics::iso(today - basics::days{lot.at("days_ago").get<int>()});
        lot.erase("days_ago");
        if (lot.contains("opened_days_ago")) {
            lot["opened_on"] = basics::iso(today - basics::days{lot["opened_days_ago"].get<int>()});
            lot.erase("opened_days_ago");
        }
        lots.push_back(std::move(lot));
    }
    return document;
}

template <class T>
T read_or_fail(basics::Result<T> result) {
    if (!result) {
        for (const auto& problem : result.error()) FAIL_CHECK(basics::to_text(problem));
    }
    return std::move(result.value());
}

inline kitchen::Kitchen kitchen_of(const CooksQuestion& question, basics::Day today) {
    kitchen::Kitchen kitchen;
    kitchen.knowledge = {&shipped(), [](const kitchen::Knowledge*) {}};
    kitchen.household = read_or_fail(exchange::read_household(question.household, "the household", *kitchen.knowledge));
    auto stock = read_or_fail(exchange::read_stock(stock_of(question, today), "the stock", *kitchen.knowledge,
                                                   kitchen.household, basics::days{0}));
    kitchen.lots = std::move(stock.lots);
    return kitchen;
}

}  // namespace samebase::tests
