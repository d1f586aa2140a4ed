// What else can I make from this? On the shipped demo kitchen, on the day around which it is written.
#include "ask/else.hpp"

#include <algorithm>
#include <map>
#include <set>

#include "support/demo.hpp"

using namespace samebase;
using tests::demo;
using tests::demo_day;
using tests::dish;
using tests::thing;

namespace {

ask::ElseQuestion about(std::string_view ingredient, basics::Day day = demo_day) {
    return {
        .day = day, .using_ = catalogue::Of{thing(ingredient)}, .lot = {}, .instead_of = {}, .serves = {}, .left = 0};
}

ask::ElseQuestion about_nothing(basics::Day day = demo_day) {
    return {.day = day, .using_ = {}, .lot = {}, .instead_of = {}, .serves = {}, .left = 0};
}

ask::ElseAnswer asked(const ask::ElseQuestion& question, const kitchen::Kitchen& kitchen = demo()) {
    auto answer = ask::ask_else(kitchen, demo_day, question);
    INFO((answer ? "" : basics::to_text(answer.error().front())));
    REQUIRE(answer);
    return std::move(*answer);
}

std::string failing(const ask::ElseQuestion& question, const kitchen::Kitchen& kitchen = demo()) {
    const auto answer = ask::ask_else(kitchen, demo_day, question);
    REQUIRE_FALSE(answer);
    REQUIRE(answer.error().size() == 1);
    return basics::to_text(answer.error().front());
}

ask::WhyNot reasons(const ask::ElseQuestion& question, std::string_view of, const kitchen::Kitchen& kitchen = demo()) {
    auto answer = ask::why_not(kitchen, demo_day, question, dish(of));
    REQUIRE(answer);
    return std::move(*answer);
}

bool among(const ask::ElseAnswer& answer, std::string_view of) {
    return std::any_of(answer.alternatives.begin(), answer.alternatives.end(),
                       [&](const auto& a) { return a.dish == dish(of) && !a.ready_meal; });
}

kitchen::Kitchen with_nobody_home() {
    kitchen::Kitchen kitchen = demo();
    for (auto& person : kitchen.household.people)
        person.away.push_back({{demo_day, demo_day}, kitchen::only(kitchen::Meal::dinner)});
    return kitchen;
}

/// A kitchen whose beef mince is so much, thawed, to be eaten by tomorrow.
kitchen::Kitchen with_mince(std::int64_t grams) {
    kitchen::Kitchen kitchen = demo();
    std::erase_if(kitchen.lots, [](const stock::Lot& lot) {
        return lot.ingredient == thing("beef-mince") && lot.state != stock::State::thawed;
    });
    for (stock::Lot& lot : kitchen.lots) {
        if (lot.ingredient != thing("beef-mince")) continue;
        lot.packs.clear();
        lot.amount = measure::Mass{grams * 1000};
    }
    kitchen.plan.clear();
    return kitchen;
}

const ask::Alternative& found(const ask::ElseAnswer& answer, std::string_view of) {
    const auto at = std::find_if(answer.alternatives.begin(), answer.alternatives.end(),
                                 [&](const auto& a) { return a.dish == dish(of) && !a.ready_meal; });
    REQUIRE(at != answer.alternatives.end());
    return *at;
}

/// How much of it the dish would take.
std::int64_t taken(const ask::Alternative& alternative, std::string_view what) {
    for (const flow::Needed& need : alternative.cooking.needs) {
        if (need.ingredient == thing(what)) return need.amount;
    }
    return 0;
}

bool buys(const ask::Alternative& alternative, std::string_view what) {
    return std::any_of(alternative.to_buy.begin(), alternative.to_buy.end(),
                       [&](const auto& buy) { return buy.ingredient == thing(what); });
}

/// A kitchen where all that anyone avoids is this.
kitchen::Kitchen where_alba_avoids(std::initializer_list<catalogue::Allergen> allergens) {
    kitchen::Kitchen kitchen = demo();
    kitchen.household.people.front().avoids = {};
    for (const auto allergen : allergens) kitchen.household.people.front().avoids.add(allergen);
    return kitchen;
}

}  // namespace

TEST_CASE("beef mince has at least six other dinners on its base") {
    const auto answer = asked(about("beef-mince"));
    const auto on_base = std::count_if(answer.alternatives.begin(), answer.alternatives.end(),
                                       [](const auto& a) { return a.same_base && !a.ready_meal; });
    CHECK(on_base >= 6);
    for (const char* classic : {"meatballs", "meat-loaf", "rissoles", "tacos", "meat-pie"}) {
        INFO(classic);
        CHECK(among(answer, classic));
    }
    CHECK(answer.planned == dish("spaghetti-bolognese"));
    CHECK_FALSE(among(answer, "spaghetti-bolognese"));
    CHECK(answer.serves_thousandths == kitchen::serves_wanted(demo(), demo_day, kitchen::Meal::dinner));
}

TEST_CASE("the thawed mince goes before the frozen") {
    const auto answer = asked(about("beef-mince"));
    bool seen = false;
    for (const auto& a : answer.alternatives) {
        std::int64_t thawed = 0;
        std::int64_t frozen = 0;
        for (const auto& use : a.uses) {
            if (use.ingredient != thing("beef-mince")) continue;
            (use.state == stock::State::thawed ? thawed : frozen) += use.amount.value();
            if (use.state == stock::State::thawed) CHECK(use.lot == 17);
        }
        INFO(demo().cookbook()[a.dish].id);
        // The kilogram that is thawed is used up before a tray is put in cold water.
        if (frozen > 0) CHECK(thawed == 1'005'000);
        seen = seen || thawed > 0;
    }
    CHECK(seen);
}

TEST_CASE("what is a little less than the recipe says is enough, and more of what is in danger goes in") {
    // Meatballs say 700 g for five, and bear from 0.75 to 1.25 of that; four and a tenth are home: 574 g.
    const auto serves = kitchen::serves_wanted(demo(), demo_day, kitchen::Meal::dinner);
    REQUIRE(serves == 4'100);
    const auto meatballs_of = [](std::int64_t grams) {
        const kitchen::Kitchen kitchen = with_mince(grams);
        return found(asked(about("beef-mince"), kitchen), "meatballs");
    };
    const auto less = meatballs_of(500);
    CHECK(taken(less, "beef-mince") == 500'000);
    CHECK_FALSE(buys(less, "beef-mince"));
    const auto scaled = std::find_if(less.scaled.begin(), less.scaled.end(),
                                     [](const auto& one) { return one.ingredient == thing("beef-mince"); });
    REQUIRE(scaled != less.scaled.end());
    CHECK(scaled->thousandths == 871);
    CHECK(scaled->amount == measure::Amount(measure::Mass{500'000}));

    const auto least = meatballs_of(431);  // 574 g x 0.75 = 430.5 g
    CHECK(taken(least, "beef-mince") == 431'000);
    CHECK_FALSE(buys(least, "beef-mince"));
    const auto too_little = meatballs_of(430);
    CHECK(taken(too_little, "beef-mince") == 574'000);
    CHECK(buys(too_little, "beef-mince"));

    CHECK(taken(meatballs_of(600), "beef-mince") == 600'000);
    CHECK(taken(meatballs_of(2000), "beef-mince") == 717'500);
}

TEST_CASE("an alternative, planned as it is offered, is cooked as it was weighed") {
    const auto answer = asked(about("beef-mince"));
    REQUIRE(answer.alternatives.size() > 20);
    std::size_t with_stand_ins = 0;
    std::size_t with_scaled = 0;
    for (const auto& alternative : answer.alternatives) {
        const kitchen::Planned row{
            demo_day,
            kitchen::Meal::dinner,
            alternative.dish,
            alternative.ready_meal,
            {},
            0,
            flow::as_swaps(alternative.stand_ins, alternative.scaled, alternative.cooking.serves_thousandths)};
        INFO(demo().cookbook()[alternative.dish].id);
        CHECK(flow::cook(demo(), row) == alternative.cooking);
        with_stand_ins += alternative.stand_ins.empty() ? 0 : 1;
        with_scaled += alternative.scaled.empty() ? 0 : 1;
    }
    CHECK(with_stand_ins > 10);
    CHECK(with_scaled > 10);
}

TEST_CASE("where everyone at the table needs the serve apart, it is how the dish is cooked") {
    kitchen::Kitchen kitchen = demo();
    for (auto& person : kitchen.household.people) {
        person.avoids = {};
        person.avoids.add(catalogue::Allergen::gluten);
    }
    const auto rissoles = found(asked(about("beef-mince"), kitchen), "rissoles");
    CHECK(taken(rissoles, "dry-breadcrumbs") == 0);
    CHECK(taken(rissoles, "gluten-free-breadcrumbs") > 0);
    CHECK(std::any_of(rissoles.stand_ins.begin(), rissoles.stand_ins.end(),
                      [](const auto& use) { return use.replaced == thing("dry-breadcrumbs"); }));
    for (const std::string& caution : rissoles.cautions) CHECK_THAT(caution, !Catch::Contains("serve apart"));
    CHECK_FALSE(among(asked(about("dry-breadcrumbs"), kitchen), "rissoles"));
}

TEST_CASE("a dish that is named stands for its main ingredient, and is not its own alternative") {
    ask::ElseQuestion question = about_nothing();
    question.instead_of = dish("rissoles");
    const auto answer = asked(question);
    CHECK(answer.used == std::vector<catalogue::Of>{thing("beef-mince")});
    CHECK_FALSE(among(answer, "rissoles"));
    REQUIRE(among(answer, "meat-loaf"));
    for (const auto& a : answer.alternatives) {
        INFO(demo().cookbook()[a.dish].id);
        CHECK(a.same_base == (demo().cookbook()[a.dish].base == demo().cookbook()[dish("rissoles")].base));
        CHECK(a.likeness > 0);
        CHECK(a.likeness < graph::one);
    }
}

TEST_CASE("with nothing named, the main ingredient of what is planned is meant") {
    CHECK(asked(about_nothing()).used == std::vector<catalogue::Of>{thing("beef-mince")});
    CHECK(asked(about_nothing(demo_day + basics::days{1})).used ==
          std::vector<catalogue::Of>{thing("white-fish-fillets")});
}

TEST_CASE("a family stands for all its members, a lot for what it holds") {
    const auto family = demo().catalogue().family("mince");
    REQUIRE(family);
    ask::ElseQuestion question = about_nothing();
    question.using_ = *family;
    const auto by_family = asked(question);
    CHECK(among(by_family, "rissoles"));
    CHECK(std::all_of(by_family.alternatives.begin(), by_family.alternatives.end(), [&](const auto& a) {
        return a.ready_meal || std::any_of(a.cooking.needs.begin(), a.cooking.needs.end(), [&](const auto& need) {
                   return demo().catalogue().is(need.ingredient, *family);
               });
    }));
    ask::ElseQuestion of_lot = about_nothing();
    of_lot.lot = 58;
    CHECK(asked(of_lot).used == std::vector<catalogue::Of>{thing("savoy-cabbage")});
}

TEST_CASE("what cannot be asked is a problem that says why") {
    ask::ElseQuestion of_lot = about_nothing();
    of_lot.lot = 4711;
    CHECK(failing(of_lot) == "lot 4711: there is no such lot; expected the number of a lot in stock");
    CHECK(failing(about("beef-mince", demo_day - basics::days{1})) ==
          "--day: 2026-11-24; expected a day from 2026-11-25 on");
    CHECK(failing(about("beef-mince"), with_nobody_home()) ==
          "--serves: nobody is home for dinner on Wed 25 Nov; expected how many serves to cook");
    kitchen::Kitchen unplanned = demo();
    unplanned.plan.clear();
    CHECK(failing(about_nothing(), unplanned) ==
          "else: nothing is planned for Wed 25 Nov; expected what to use: an ingredient, a family, a lot or a dish");
}

TEST_CASE("with serves given, it may be asked for a day when nobody is home") {
    ask::ElseQuestion question = about("beef-mince");
    question.serves = 3;
    const auto answer = asked(question, with_nobody_home());
    CHECK(answer.serves_thousandths == 3000);
    CHECK(among(answer, "rissoles"));
}

TEST_CASE("what stands in exactly as well as it must is proposed") {
    const auto& graph = demo().graph();
    const auto fit = graph.parameters().least_fit_of_named;
    const auto cost = graph.cost({thing("chuck-steak"), catalogue::Role::main},
                                 {thing("lamb-shoulder-diced"), catalogue::Role::main});
    REQUIRE(cost == graph::cost_of(fit));
    CHECK(among(asked(about("lamb-shoulder-diced")), "beef-stew"));
}

TEST_CASE("a dish that uses none of it is ruled out for that") {
    const auto answer = reasons(about("beef-mince"), "fish-baked-on-zucchini-tomato-and-olives");
    CHECK(answer.reasons ==
          std::vector<std::string>{"it uses no beef mince, and nothing in it that beef mince could replace well"});
    CHECK_FALSE(answer.position);
    CHECK_FALSE(answer.alternative);
}

TEST_CASE("what is planned, and what is no dinner, is ruled out for that") {
    const auto planned = reasons(about("beef-mince"), "spaghetti-bolognese");
    REQUIRE_FALSE(planned.reasons.empty());
    CHECK(planned.reasons.front() == "it is what is planned already");
    const auto lunch = reasons(about("celery"), "cheese-and-celery-sandwich");
    REQUIRE_FALSE(lunch.reasons.empty());
    CHECK(lunch.reasons.front() == "it is not a dinner");
}

TEST_CASE("a dish whose allergen nothing replaces is ruled out, and the reason names both") {
    const auto kitchen = where_alba_avoids({catalogue::Allergen::egg});
    const auto answer = reasons(about("zucchini"), "eggs-with-okra-and-tomato", kitchen);
    REQUIRE_FALSE(answer.reasons.empty());
    const auto of_eggs = reasons(about("eggs"), "eggs-with-okra-and-tomato", kitchen);
    CHECK(of_eggs.reasons ==
          std::vector<std::string>{
              "eggs has egg, which someone at the table avoids, and nothing free of it does its work"});
}

TEST_CASE("what was asked about is not itself replaced because someone avoids it") {
    const auto kitchen = where_alba_avoids({catalogue::Allergen::fish});
    ask::ElseQuestion question = about("white-fish-fillets");
    for (const auto& a : asked(question, kitchen).alternatives) CHECK(a.ready_meal);
}

TEST_CASE("why not a dish that is among the answers: it stands there, and where") {
    const auto question = about("beef-mince");
    const auto answer = asked(question);
    const auto found = std::find_if(answer.alternatives.begin(), answer.alternatives.end(),
                                    [](const auto& a) { return a.dish == dish("meat-loaf") && !a.ready_meal; });
    REQUIRE(found != answer.alternatives.end());
    const auto why = reasons(question, "meat-loaf");
    CHECK(why.reasons.empty());
    CHECK(why.position == static_cast<std::size_t>(found - answer.alternatives.begin()));
    REQUIRE(why.alternative);
    CHECK(why.alternative->worth == found->worth);
}

TEST_CASE("a ready meal is an answer on a day by which it can be thawed, and not before") {
    const auto ready = [](basics::Day day) {
        ask::ElseQuestion question = about("beef-mince", day);
        question.serves = 5;
        std::set<std::string> dishes;
        for (const auto& a : asked(question).alternatives) {
            if (!a.ready_meal) continue;
            CHECK(a.cooking.ready_meal);
            CHECK(a.stand_ins.empty());
            dishes.insert(demo().cookbook()[a.dish].id);
        }
        return dishes;
    };
    // Five serves of chilli lie in the freezer above the fridge; two of stew are not enough for five.
    CHECK(ready(demo_day).count("chilli") == 0);
    CHECK(ready(demo_day + basics::days{2}) == std::set<std::string>{"chilli"});
}

TEST_CASE("a dish that eats tomorrow's dinner answers for it, in money") {
    // Tomorrow's fish is baked on zucchini: today's dish takes all that there is.
    kitchen::Kitchen kitchen = demo();
    REQUIRE(kitchen.lot(61)->ingredient == thing("zucchini"));
    const auto answer = asked(about("zucchini"), kitchen);
    bool paid_for = false;
    for (const auto& a : answer.alternatives) {
        std::int64_t eaten = 0;
        for (const auto& use : a.uses) eaten += use.lot == 61 ? use.amount.value() : 0;
        if (eaten < 300'000) continue;
        INFO(demo().cookbook()[a.dish].id);
        const bool line = std::any_of(a.because.begin(), a.because.end(), [](const auto& because) {
            const bool about_it = because.of == thing("zucchini") && because.money.minor < 0;
            return about_it && (because.line == ask::Line::unmet || because.line == ask::Line::to_buy);
        });
        CHECK(line);
        paid_for = true;
    }
    CHECK(paid_for);
}

TEST_CASE("a leftover that is not enough for all is said to lack, and for fewer it is enough") {
    // Two serves of cooked rice are left, and more than four are wanted.
    const auto rice = thing("cooked-rice");
    const auto lacked = [&](const ask::Alternative& a) {
        const auto found = std::find_if(a.lacks.begin(), a.lacks.end(), [&](const auto& l) { return l.first == rice; });
        return found == a.lacks.end() ? std::int64_t{0} : found->second.value();
    };
    const auto used = [&](const ask::Alternative& a) {
        std::int64_t sum = 0;
        for (const auto& use : a.uses) sum += use.ingredient == rice ? use.amount.value() : 0;
        return sum;
    };
    const auto for_all = asked(about("cooked-rice"));
    REQUIRE_FALSE(for_all.alternatives.empty());
    for (const auto& a : for_all.alternatives) {
        const auto need = std::find_if(a.cooking.needs.begin(), a.cooking.needs.end(),
                                       [&](const flow::Needed& n) { return n.ingredient == rice; });
        REQUIRE(need != a.cooking.needs.end());
        CHECK(used(a) + lacked(a) == need->amount);
    }
    CHECK(lacked(for_all.alternatives.front()) > 0);
    auto question = about("cooked-rice");
    question.serves = 1;
    for (const auto& a : asked(question).alternatives) CHECK(lacked(a) == 0);
}

TEST_CASE("a dish that uses dear stock is worth less than the same with cheap stock, all else equal") {
    // Frozen lamb mince keeps past the horizon: what it cost is what using it takes from the good stock.
    const auto lamb = thing("lamb-mince");
    const auto worth_at = [&](std::int64_t paid) {
        kitchen::Kitchen kitchen = demo();
        for (stock::Lot& lot : kitchen.lots) {
            if (lot.ingredient != lamb) continue;
            lot.paid = basics::Money{paid};
            lot.paid_for = lot.amount.value();
        }
        const auto answer = asked(about("lamb-mince", demo_day + basics::days{1}), kitchen);
        REQUIRE_FALSE(answer.alternatives.empty());
        std::map<cookbook::DishId, basics::Money> worth;
        for (const auto& a : answer.alternatives) {
            if (!a.ready_meal) worth[a.dish] = a.worth;
        }
        return worth;
    };
    const auto cheap = worth_at(500);
    const auto dear = worth_at(5000);
    REQUIRE(cheap.size() == dear.size());
    for (const auto& [id, worth] : dear) CHECK(worth < cheap.at(id));
}

TEST_CASE("what the plan would buy later anyway is bought for tonight, and is said") {
    // Cornflour comes with Saturday's shopping; tonight's gravy needs it before.
    const auto answer = asked(about("beef-mince"));
    for (const auto& a : answer.alternatives) {
        INFO(demo().cookbook()[a.dish].id);
        for (const flow::Needed& need : a.cooking.needs) {
            const auto& thing = demo().catalogue()[need.ingredient];
            if (thing.kind == catalogue::Kind::cooked) continue;
            const bool rough = std::any_of(demo().lots.begin(), demo().lots.end(), [&](const stock::Lot& lot) {
                return lot.ingredient == need.ingredient && lot.rough;
            });
            if (rough) continue;
            std::int64_t told = 0;
            for (const auto& use : a.uses) told += use.ingredient == need.ingredient ? use.amount.value() : 0;
            for (const auto& buy : a.to_buy) told += buy.ingredient == need.ingredient ? buy.amount.value() : 0;
            for (const auto& lacks : a.lacks) told += lacks.first == need.ingredient ? lacks.second.value() : 0;
            INFO(thing.id);
            CHECK(told >= need.amount);
        }
    }
}

TEST_CASE("between trips the answers are those that need nothing bought, and it is told how many more there are") {
    ask::ElseQuestion question = about("beef-mince");
    const auto all = asked(question);
    question.from_stock = true;
    const auto from_stock = asked(question);
    REQUIRE_FALSE(from_stock.alternatives.empty());
    CHECK(from_stock.with_trip > 0);
    CHECK(from_stock.alternatives.size() + from_stock.with_trip == all.alternatives.size());
    for (const auto& a : from_stock.alternatives) {
        INFO(demo().cookbook()[a.dish].id);
        CHECK_FALSE(a.needs_trip);
        CHECK(a.to_buy.empty());
    }
    // On Saturday the shop comes before the dinner.
    ask::ElseQuestion saturday = about("beef-mince", demo_day + basics::days{3});
    saturday.from_stock = true;
    CHECK(asked(saturday).with_trip == 0);
}

TEST_CASE("what does the work as well is used up before anything is bought") {
    kitchen::Kitchen kitchen = demo();
    const auto eaten = dish("spirals-with-brussels-sprouts-and-goats-cheese");
    const auto fit = kitchen.graph().stand_ins({thing("spirals"), catalogue::Role::starch}, 0.9, {});
    REQUIRE(std::any_of(fit.begin(), fit.end(), [](const auto& s) { return s.use.front().first == thing("penne"); }));
    std::erase_if(kitchen.lots, [](const auto& lot) {
        return demo().catalogue().belongs(lot.ingredient, *demo().catalogue().family("pasta"));
    });
    stock::Lot penne;
    penne.number = 9000;
    penne.ingredient = thing("penne");
    penne.place = *kitchen::place_of(kitchen.household, {stock::PlaceKind::pantry});
    penne.amount = measure::Mass{2'000'000};
    penne.arrived = penne.since = demo_day;
    kitchen.lots.push_back(penne);
    const auto& a = found(asked(about("brussels-sprouts"), kitchen), "spirals-with-brussels-sprouts-and-goats-cheese");
    CHECK(a.dish == eaten);
    CHECK_FALSE(buys(a, "spirals"));
    CHECK(taken(a, "penne") > 0);
}

TEST_CASE("the rest of a pack that nobody eats in the next weeks is not good stock kept") {
    const auto answer = asked(about("beef-mince"));
    int bought = 0;
    for (const auto& a : answer.alternatives) {
        for (const auto& buy : a.to_buy) {
            const bool had = std::any_of(demo().history.begin(), demo().history.end(), [&](const auto& meal) {
                const auto& lines = demo().cookbook()[meal.dish].ingredients;
                return std::any_of(lines.begin(), lines.end(),
                                   [&](const auto& line) { return line.ingredient == buy.ingredient; });
            });
            const bool there = std::any_of(demo().lots.begin(), demo().lots.end(),
                                           [&](const auto& lot) { return lot.ingredient == buy.ingredient; });
            const bool planned = std::any_of(demo().plan.begin(), demo().plan.end(), [&](const auto& row) {
                const auto& lines = demo().cookbook()[row.dish].ingredients;
                return std::any_of(lines.begin(), lines.end(),
                                   [&](const auto& line) { return line.ingredient == buy.ingredient; });
            });
            const auto& uses = demo().household.standing_uses;
            const bool daily = std::any_of(uses.begin(), uses.end(),
                                           [&](const auto& use) { return use.ingredient == buy.ingredient; });
            if (had || there || planned || daily) continue;
            ++bought;
            INFO(demo().cookbook()[a.dish].id << " " << demo().catalogue()[buy.ingredient].id);
            CHECK(std::none_of(a.because.begin(), a.because.end(), [&](const auto& because) {
                return because.line == ask::Line::kept && because.of == buy.ingredient && because.money.minor > 0;
            }));
        }
    }
    CHECK(bought > 5);
}

TEST_CASE("what someone will not eat is not put before them, and what lies on top is left off their plate") {
    kitchen::Kitchen kitchen = demo();
    const auto before = asked(about("beef-mince"), kitchen);
    REQUIRE(among(before, "rissoles"));
    REQUIRE(among(before, "meat-loaf"));
    auto& person = kitchen.household.people.front();
    person.marks.push_back({.dish = dish("rissoles"), .of = {}, .mark = -3});
    person.dislikes.push_back(catalogue::Of{thing("carrot")});
    const auto answer = asked(about("beef-mince"), kitchen);
    CHECK_FALSE(among(answer, "rissoles"));
    const auto why = reasons(about("beef-mince"), "rissoles", kitchen);
    CHECK(why.reasons == std::vector<std::string>{person.name + " will not eat it"});
    CHECK(answer.alternatives.size() < before.alternatives.size());
    for (const auto& a : answer.alternatives) {
        if (taken(a, "carrot") == 0) continue;
        INFO(demo().cookbook()[a.dish].id);
        CHECK(std::find(a.cautions.begin(), a.cautions.end(), "Leave the carrot off " + person.name + "'s plate.") !=
              a.cautions.end());
    }
    // Who asks for carrots wants them all the same.
    CHECK_FALSE(asked(about("carrot"), kitchen).alternatives.empty());
}

TEST_CASE("with nothing planned on a standing night, dishes of its kind are meant") {
    kitchen::Kitchen kitchen = demo();
    kitchen.plan.clear();
    kitchen.household.standing_nights = {{std::chrono::Wednesday, {"soup"}, demo_day}};
    const auto answer = asked(about_nothing(), kitchen);
    CHECK(answer.used.empty());
    CHECK(answer.question.kind == "soup");
    REQUIRE(answer.alternatives.size() > 5);
    for (const auto& a : answer.alternatives) {
        const auto& kinds = demo().cookbook()[a.dish].kinds;
        CHECK((a.ready_meal || std::find(kinds.begin(), kinds.end(), "soup") != kinds.end()));
    }
}

TEST_CASE("a general word means any of the things that go by it") {
    ask::ElseQuestion question = about("chicken-thigh");
    question.also = {catalogue::Of{thing("chicken-breast")}};
    const auto answer = asked(question);
    const auto of_thigh = asked(about("chicken-thigh"));
    REQUIRE_FALSE(of_thigh.alternatives.empty());
    CHECK(answer.alternatives.size() > of_thigh.alternatives.size());
}
