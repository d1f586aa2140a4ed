// What the base graph answers: which statement holds for a pair, how far it reaches, and what is left out.
#include <catch2/catch.hpp>
#include <cmath>
#include <string>

#include "graph/base_graph.hpp"
#include "support/small_world.hpp"

using namespace samebase::graph;
using samebase::catalogue::Allergen;
using samebase::catalogue::AllergenSet;
using samebase::catalogue::Role;
using samebase::tests::small_world;
using samebase::tests::SmallWorld;
using samebase::tests::written;

namespace {

/// Answers for one thing, down to any fit, with nobody to be careful of.
std::string answers(const SmallWorld& world, const std::string& id, Role role = Role::main, double least_fit = 1e-6,
                    AllergenSet avoid = {}) {
    const BaseGraph graph = world.graph();
    REQUIRE(!graph.check());
    return written(graph.stand_ins(world.node(id, role), least_fit, avoid), world.catalogue);
}

double fit(const SmallWorld& world, const std::string& from, const std::string& to, Role role = Role::main) {
    const BaseGraph graph = world.graph();
    const auto cost = graph.cost(world.node(from, role), world.node(to, role));
    return cost ? fit_of(*cost) : 0.0;
}

Approx near(double value) {
    return Approx(value).epsilon(1e-5);
}

/// Citrus fruit in two families of fruit, and a root outside.
const std::string fruit = R"(
    family fruit siblings 0.3
    family citrus in fruit siblings 0.8
    family stone in fruit
    family root
    thing lemon in citrus
    thing lime in citrus
    thing peach in stone
    thing plum in stone
    thing turnip in root
    thing swede in root
)";

}  // namespace

TEST_CASE("costs are -ln(fit) in millionths, above 0") {
    CHECK(cost_of(0.5) == 693147);
    CHECK(cost_of(0.8) == 223144);
    CHECK(cost_of(1e-9) == 20723266);
    CHECK(cost_of(0.999999999) == 1);
    CHECK(fit_of(0) == 1.0);
    CHECK(fit_of(693147) == near(0.5));
}

TEST_CASE("siblings step at the fit of their nearest common family that states one") {
    const SmallWorld world = small_world(fruit);
    CHECK(fit(world, "lemon", "lime") == near(0.8));
    CHECK(fit(world, "peach", "plum") == near(0.3));  // "stone" says nothing, "fruit" does
    CHECK(fit(world, "lemon", "plum") == near(0.3));
    CHECK(fit(world, "turnip", "swede") == 0.0);
    CHECK(fit(world, "lemon", "turnip") == 0.0);
    CHECK(answers(world, "lemon") == "lime 1 | peach 1 | plum 1");
    CHECK(answers(world, "turnip").empty());
}

TEST_CASE("a thing stands for itself at cost 0, in another role at the fit of that change") {
    const SmallWorld world = small_world(fruit);
    const BaseGraph graph = world.graph();
    CHECK(graph.cost(world.node("lemon"), world.node("lemon")) == 0);
    const auto change = cost_of(graph.parameters().role_change);
    CHECK(graph.cost(world.node("lemon"), world.node("lemon", Role::sauce)) == change);
    CHECK(graph.cost(world.node("lemon"), world.node("lime", Role::sauce)) == change + cost_of(0.8));
    CHECK(graph.cost(world.node("lemon"), world.node("swede", Role::sauce)) == std::nullopt);
}

TEST_CASE("a named pair overrides its families, lower or higher") {
    const SmallWorld lower = small_world(fruit + "for lemon use lime x 1.5 fit 0.4 said sweeter");
    CHECK(fit(lower, "lemon", "lime") == near(0.4));
    CHECK(fit(lower, "lime", "lemon") == near(0.8));  // said one way only
    const SmallWorld higher = small_world(fruit + "for lemon use lime fit 0.95");
    CHECK(fit(higher, "lemon", "lime") == near(0.95));
    const BaseGraph graph = lower.graph();
    const auto best = graph.stand_ins(lower.node("lemon"), 0.35, {});
    REQUIRE(best.size() == 1);
    CHECK(best[0].note == "sweeter");
    CHECK(best[0].use[0].second == 1'500'000);
    CHECK(best[0].fit() == near(0.4));
}

TEST_CASE("of statements about families the nearest holds, however well it fits") {
    const SmallWorld world = small_world(fruit + R"(
        for fruit use root fit 0.9
        for citrus use root fit 0.5
        for lemon use root fit 0.6
        for lemon use swede fit 0.45)");
    CHECK(fit(world, "lemon", "swede") == near(0.45));
    CHECK(fit(world, "lemon", "turnip") == near(0.6));
    CHECK(fit(world, "lime", "turnip") == near(0.5));
    CHECK(fit(world, "peach", "turnip") == near(0.9));
    CHECK(fit(world, "turnip", "lemon") == 0.0);
}

TEST_CASE("of statements equally near the better fit holds") {
    const SmallWorld world = small_world(fruit + R"(
        for citrus use turnip fit 0.5
        for lemon use root fit 0.7
        for citrus use turnip x 2 fit 0.6)");
    CHECK(fit(world, "lemon", "turnip") == near(0.7));
    CHECK(answers(world, "lime", Role::main, 0.58) == "lemon 1 | turnip 2");
}

TEST_CASE("a cheap detour beats a dear named pair, and says the last step's note") {
    const SmallWorld world = small_world(fruit + R"(
        for turnip use swede x 2 fit 0.9 said firmer
        for swede use plum x 1.5 fit 0.9 said sweeter
        for turnip use plum fit 0.5 said odd)");
    CHECK(fit(world, "turnip", "plum") == near(0.81));
    const BaseGraph graph = world.graph();
    const auto found = graph.stand_ins(world.node("turnip"), 0.6, {});
    CHECK(written(found, world.catalogue) == "swede 2 | plum 3");
    REQUIRE(found.size() == 2);
    CHECK(found[1].note == "sweeter");
}

TEST_CASE("both ways inverts the ratio") {
    const SmallWorld world = small_world(fruit + "for turnip use plum x 1.25 fit 0.9 both ways");
    CHECK(answers(world, "turnip", Role::main, 0.5) == "plum 1.25");
    CHECK(answers(world, "plum", Role::main, 0.5) == "turnip 0.8");
}

TEST_CASE("a stand-in takes as much longer as the longest step to it, one way only") {
    const SmallWorld world = small_world(fruit + R"(
        for turnip use swede fit 0.9 longer 60
        for swede use plum fit 0.9 longer 20
        for turnip use lemon fit 0.9
        for lemon use turnip x 0.5 + plum x 0.5 fit 0.9 longer 5)");
    const BaseGraph graph = world.graph();
    const auto minutes = [&](const std::string& replaced, const std::string& used) {
        for (const StandIn& found : graph.stand_ins(world.node(replaced), 0.3, {})) {
            if (written({found}, world.catalogue) == used) return found.adds_minutes;
        }
        return -1;
    };
    CHECK(minutes("turnip", "swede 1") == 60);
    CHECK(minutes("turnip", "plum 1") == 60);
    CHECK(minutes("swede", "plum 1") == 20);
    CHECK(minutes("turnip", "lemon 1") == 0);
    CHECK(minutes("turnip", "lime 1") == 0);  // by way of the lemon and its siblings
    CHECK(minutes("lemon", "turnip 0.5 + plum 0.5") == 5);
    CHECK(minutes("plum", "swede 1") == -1);
}

TEST_CASE("of statements that differ in nothing but their time the longer holds, in whatever order") {
    for (const char* said : {"for turnip use swede fit 0.9 longer 60\n for turnip use swede fit 0.9 longer 5",
                             "for turnip use swede fit 0.9 longer 5\n for turnip use swede fit 0.9 longer 60"}) {
        const SmallWorld world = small_world(fruit + said);
        const BaseGraph graph = world.graph();
        const auto found = graph.stand_ins(world.node("turnip"), 0.5, {});
        REQUIRE(found.size() == 1);
        CHECK(found[0].adds_minutes == 60);
    }
}

TEST_CASE("what must be cooked takes the place of what is ready to eat only where that is said") {
    const SmallWorld world = small_world(R"(
        family meat siblings 0.8
        thing bacon in meat cook 75
        thing ham in meat
        thing salami in meat
        thing sausage in meat cook 75
        for ham use salami fit 0.9
        for salami use bacon fit 0.9 said crisp
        for ham use bacon x 1.5 fit 0.6 said fried)");
    const BaseGraph graph = world.graph();
    const auto found = graph.stand_ins(world.node("ham"), 0.5, {});
    CHECK(written(found, world.catalogue) == "salami 1 | bacon 1.5");
    REQUIRE(found.size() == 2);
    CHECK(found[1].fit() == near(0.6));  // not the 0.81 by way of the salami, whose note is not of ham
    CHECK(found[1].note == "fried");
    CHECK(written(graph.stand_ins(world.node("ham"), 0.7, {}), world.catalogue) == "salami 1");
    CHECK(answers(world, "bacon") == "ham 1 | salami 1 | sausage 1");
    CHECK(fit(world, "ham", "sausage") == near(0.8));  // likeness asks for no note
}

TEST_CASE("a statement holds in its roles only") {
    const SmallWorld world = small_world(fruit + R"(
        for turnip use plum fit 0.9 as sauce topping
        for turnip use plum x 3 fit 0.7 as topping)");
    CHECK(answers(world, "turnip", Role::sauce, 0.5) == "plum 1");
    CHECK(answers(world, "turnip", Role::topping, 0.5) == "plum 1");
    // From main only by two changes of role: 0.6 x 0.9 x 0.6.
    CHECK(fit(world, "turnip", "plum") == near(0.324));
    CHECK(answers(world, "turnip", Role::main, 0.35).empty());
}

TEST_CASE("never forbids in answers and nowhere else") {
    const SmallWorld world = small_world(fruit + R"(
        for lemon never lime as main
        for citrus never stone)");
    CHECK(fit(world, "lemon", "lime") == near(0.8));
    const BaseGraph graph = world.graph();
    CHECK(graph.forbidden(world.thing("lemon"), world.thing("lime"), Role::main));
    CHECK(!graph.forbidden(world.thing("lemon"), world.thing("lime"), Role::sauce));
    CHECK(!graph.forbidden(world.thing("lime"), world.thing("lemon"), Role::main));
    CHECK(graph.forbidden(world.thing("lime"), world.thing("plum"), Role::side));
    CHECK(answers(world, "lemon").empty());
    CHECK(answers(world, "lemon", Role::sauce) == "lime 1");
    CHECK(answers(world, "peach") == "lemon 1 | lime 1 | plum 1");
}

TEST_CASE("never gives way to a nearer stand-in, and wins over one as near") {
    const SmallWorld nearer = small_world(fruit + R"(
        for root never citrus
        for turnip use lemon fit 0.5)");
    CHECK(answers(nearer, "turnip", Role::main, 0.45) == "lemon 1");
    CHECK(!nearer.graph().forbidden(nearer.thing("turnip"), nearer.thing("lemon"), Role::main));
    CHECK(nearer.graph().forbidden(nearer.thing("turnip"), nearer.thing("lime"), Role::main));
    const SmallWorld as_near = small_world(fruit + R"(
        for turnip never lemon
        for turnip use lemon fit 0.5)");
    CHECK(answers(as_near, "turnip", Role::main, 0.45).empty());
    const SmallWorld both_ways = small_world(fruit + "for turnip never lemon both ways");
    CHECK(both_ways.graph().forbidden(both_ways.thing("lemon"), both_ways.thing("turnip"), Role::main));
}

TEST_CASE("a mixture is proposed whole, and is no step to anything else") {
    const SmallWorld world = small_world(fruit + R"(
        for turnip use lemon x 0.25 + swede x 0.75 fit 0.8 as main said mashed
        for swede use turnip x 2 fit 0.9
        for turnip use plum fit 0.7)");
    CHECK(answers(world, "turnip", Role::main, 0.45) == "lemon 0.25 + swede 0.75 | plum 1");
    CHECK(answers(world, "turnip", Role::sauce, 0.45) == "plum 1");
    // By way of the turnip; not when what is replaced is a part of the mixture.
    CHECK(fit(world, "turnip", "swede") == 0.0);
    CHECK(answers(world, "swede", Role::main, 0.6) == "turnip 2 | plum 2");
    const SmallWorld mix = small_world(fruit + R"(
        for turnip use lemon x 0.25 + plum x 0.75 fit 0.8
        for swede use turnip x 2 fit 0.9)");
    CHECK(answers(mix, "swede", Role::main, 0.6) == "turnip 2 | lemon 0.5 + plum 1.5");
}

TEST_CASE("no answer brings an allergen that must be avoided, and what is not known counts as all of them") {
    const SmallWorld world = small_world(R"(
        family all siblings 0.9
        thing cream in all with milk
        thing oil in all with
        thing paste in all with sesame soy
        thing mystery in all with anything
        thing water in all with
        for water use oil x 0.5 + cream x 0.5 fit 0.8)");
    AllergenSet milk;
    milk.add(Allergen::milk);
    AllergenSet sesame;
    sesame.add(Allergen::sesame);
    CHECK(answers(world, "water") == "cream 1 | mystery 1 | oil 1 | paste 1 | oil 0.5 + cream 0.5");
    CHECK(answers(world, "water", Role::main, 0.5, milk) == "oil 1 | paste 1");
    CHECK(answers(world, "water", Role::main, 0.5, sesame) == "cream 1 | oil 1 | oil 0.5 + cream 0.5");
    CHECK(fit(world, "water", "cream") == near(0.9));  // likeness does not ask who eats
}

TEST_CASE("answers are cut at the least fit, which still counts") {
    const SmallWorld world = small_world(fruit + "for lemon use swede fit 0.5");
    CHECK(answers(world, "lemon", Role::main, 0.5) == "lime 1 | swede 1");
    CHECK(answers(world, "lemon", Role::main, 0.51) == "lime 1");
    CHECK(answers(world, "lemon", Role::main, 0.3) == "lime 1 | swede 1 | peach 1 | plum 1");
}

TEST_CASE("equal costs stand in the order of identifiers") {
    const SmallWorld world = small_world(R"(
        family all
        thing a in all
        thing b in all
        thing c in all
        thing d in all
        thing z in all
        for z use d fit 0.5
        for z use b fit 0.5
        for z use a x 0.5 + c x 0.5 fit 0.5
        for z use a fit 0.5
        for z use c fit 0.5)");
    CHECK(answers(world, "z") == "a 0.5 + c 0.5 | a 1 | b 1 | c 1 | d 1");
}

TEST_CASE("of equally cheap ways the one through the first identifier gives ratio and note") {
    const SmallWorld world = small_world(R"(
        family all
        thing a in all
        thing b in all
        thing y in all
        thing z in all
        for z use b x 2 fit 0.9
        for z use a x 3 fit 0.8
        for b use y fit 0.8 said by-b
        for a use y fit 0.9 said by-a)");
    const BaseGraph graph = world.graph();
    const auto found = graph.stand_ins(world.node("z"), 0.7, {});
    CHECK(written(found, world.catalogue) == "b 2 | a 3 | y 3");
    REQUIRE(found.size() == 3);
    CHECK(found[2].note == "by-a");
}

TEST_CASE("statements that differ in nothing but ratio and note do not depend on their order") {
    const std::string things = "family all\n thing a in all\n thing b in all\n thing z in all\n";
    const std::string one_way = "for z use a x 2 fit 0.5 said more\n for z use a x 1.5 fit 0.5 said less\n";
    const std::string other = "for z use a x 1.5 fit 0.5 said less\n for z use a x 2 fit 0.5 said more\n";
    CHECK(answers(small_world(things + one_way), "z") == "a 1.5");
    CHECK(answers(small_world(things + other), "z") == "a 1.5");
    const auto notes = [&](const std::string& said) {
        const SmallWorld world = small_world(things + said);
        std::string result;
        for (const StandIn& found : world.graph().stand_ins(world.node("z"), 0.1, {})) result += found.note + " ";
        return result;
    };
    CHECK(notes("for z use a fit 0.5 said north\n for z use a fit 0.5 said south") == "north ");
    CHECK(notes("for z use a fit 0.5 said south\n for z use a fit 0.5 said north") == "north ");
    CHECK(notes("for z use a + b fit 0.5 said south\n for z use a + b fit 0.5 said north") == "north south ");
}

TEST_CASE("a fit of nothing cuts nothing: whatever a path leads to stands in, with its ratio") {
    // The logarithm of nothing was rounded to a whole number, which may be any: nothing stood in, and a stand-in that
    // the cook named was taken weight for weight.
    const SmallWorld world = small_world(R"(
        family all
        thing a in all
        thing b in all
        thing z in all
        for z use a x 0.05 fit 0.9
        for z use b x 3 fit 0.001)");
    const BaseGraph base = world.graph();
    CHECK(samebase::graph::cost_of(0) == BaseGraph::no_path - 1);
    CHECK(samebase::graph::cost_of(0) > samebase::graph::cost_of(1e-300));
    CHECK(written(base.stand_ins(world.node("z"), 0, {}), world.catalogue) == "a 0.05 | b 3");
}
