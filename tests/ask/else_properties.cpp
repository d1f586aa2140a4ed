// Laws that hold for whatever is in the kitchen, whoever eats, whatever they avoid and whatever is asked: the demo
// kitchen is varied at random. Allergens are worked out here from the dish as it is written and what the answer says
// stands in, not by the code that ranks.
#include <rapidcheck.h>
#include <rapidcheck/catch.h>
#include <rapidcheck/detail/Configuration.h>
#include <unistd.h>

#include <algorithm>
#include <filesystem>
#include <fstream>
#include <map>
#include <set>
#include <sstream>
#include <tuple>

#include "ask/else.hpp"
#include "support/demo.hpp"
#include "support/law.hpp"

using namespace samebase;
using catalogue::AllergenSet;
using catalogue::IngredientId;
using tests::demo;
using tests::demo_day;

namespace {

AllergenSet any_allergens(int most) {
    AllergenSet set;
    const int count = *rc::gen::inRange(0, most + 1);
    // Those that dishes hold often are drawn often.
    const std::vector<catalogue::Allergen> often{catalogue::Allergen::gluten, catalogue::Allergen::wheat,
                                                 catalogue::Allergen::egg,    catalogue::Allergen::milk,
                                                 catalogue::Allergen::soy,    catalogue::Allergen::celery};
    for (int i = 0; i < count; ++i) {
        const auto any =
            static_cast<catalogue::Allergen>(*rc::gen::inRange(0, static_cast<int>(catalogue::allergen_count)));
        set.add(*rc::gen::weightedElement<catalogue::Allergen>({{3, *rc::gen::elementOf(often)}, {1, any}}));
    }
    return set;
}

bool one_in(int n) {
    return *rc::gen::inRange(0, n) == 0;
}

void vary_people(kitchen::Household& household, basics::Day day) {
    for (auto& person : household.people) {
        person.avoids = any_allergens(one_in(2) ? 0 : 3);
        if (one_in(4)) person.away.push_back({{day, day}, kitchen::only(kitchen::Meal::dinner)});
        if (one_in(4)) person.serve_thousandths = *rc::gen::inRange<std::int64_t>(300, 2001);
    }
    if (one_in(2)) {
        household.occasions.push_back(
            {.day = day, .note = "", .dish = {}, .guests = *rc::gen::inRange(0, 4), .guests_avoid = any_allergens(2)});
    }
}

void vary_lots(kitchen::Kitchen& kitchen) {
    const int dropped = *rc::gen::inRange(0, 101);
    std::erase_if(kitchen.lots, [&](const stock::Lot&) { return *rc::gen::inRange(0, 150) < dropped; });
    stock::LotNumber next = 1000;
    const int added = *rc::gen::inRange(0, 15);
    const auto count = static_cast<std::uint32_t>(kitchen.catalogue().ingredients().size());
    for (int i = 0; i < added; ++i) {
        stock::Lot lot;
        lot.number = next++;
        lot.ingredient = {*rc::gen::inRange<std::uint32_t>(0, count)};
        const auto& ingredient = kitchen.catalogue()[lot.ingredient];
        if (ingredient.only_stand_in) continue;
        const auto places = static_cast<std::uint32_t>(kitchen.household.places.size());
        lot.place = {*rc::gen::inRange<std::uint32_t>(0, places)};
        lot.state = stock::freezes(kitchen.place(lot.place).kind) ? stock::State::frozen : stock::State::fresh;
        const auto most = ingredient.dimension == measure::Dimension::pieces ? std::int64_t{9} : std::int64_t{1500};
        lot.amount = {ingredient.dimension, 1000 * *rc::gen::inRange<std::int64_t>(1, most)};
        lot.arrived = lot.since = demo_day - basics::days{*rc::gen::inRange(0, 10)};
        stock::set_dates(lot, ingredient, kitchen.place(lot.place).kind);
        kitchen.lots.push_back(lot);
    }
}

void vary_plan(kitchen::Kitchen& kitchen) {
    const int dropped = *rc::gen::inRange(0, 60);
    std::erase_if(kitchen.plan, [&](const kitchen::Planned&) { return *rc::gen::inRange(0, 100) < dropped; });
    const auto dishes = static_cast<std::uint32_t>(kitchen.cookbook().dishes().size());
    for (auto& planned : kitchen.plan) {
        const cookbook::DishId other{*rc::gen::inRange<std::uint32_t>(0, dishes)};
        if (planned.meal != kitchen::Meal::dinner || planned.ready_meal || !kitchen.cookbook()[other].dinner ||
            !one_in(4))
            continue;
        planned.dish = other;
    }
    std::sort(kitchen.plan.begin(), kitchen.plan.end(), [](const auto& a, const auto& b) {
        return std::tuple(a.day, a.meal, a.dish) < std::tuple(b.day, b.meal, b.dish);
    });
}

ask::ElseQuestion any_question(const kitchen::Kitchen& kitchen, basics::Day day) {
    ask::ElseQuestion question{
        .day = day, .using_ = {}, .lot = {}, .instead_of = {}, .serves = {}, .left = *rc::gen::inRange(0, 3)};
    if (one_in(3)) question.serves = *rc::gen::inRange(1, 9);
    if (kitchen::serves_wanted(kitchen, day, kitchen::Meal::dinner) == 0) question.serves = 2;
    const auto& catalogue = kitchen.catalogue();
    const int what = *rc::gen::inRange(0, 4);
    if (what == 0 && !kitchen.lots.empty()) {
        question.lot = kitchen.lots[*rc::gen::inRange<std::size_t>(0, kitchen.lots.size())].number;
    } else if (what == 1) {
        question.using_ = catalogue::FamilyId{
            *rc::gen::inRange<std::uint32_t>(0, static_cast<std::uint32_t>(catalogue.families().size()))};
    } else {
        // Something that a dinner uses, so that there is an answer.
        const auto& dishes = kitchen.cookbook().dishes();
        const auto& lines = dishes[*rc::gen::inRange<std::size_t>(0, dishes.size())].ingredients;
        question.using_ = lines[*rc::gen::inRange<std::size_t>(0, std::min<std::size_t>(4, lines.size()))].ingredient;
    }
    return question;
}

struct World {
    kitchen::Kitchen kitchen = demo();
    ask::ElseQuestion question;
};

World any_world() {
    World world;
    const basics::Day day = demo_day + basics::days{*rc::gen::inRange(0, 8)};
    vary_people(world.kitchen.household, day);
    vary_lots(world.kitchen);
    vary_plan(world.kitchen);
    RC_ASSERT(!world.kitchen.check());
    world.question = any_question(world.kitchen, day);
    return world;
}

using Apart = std::vector<const cookbook::SeparateServe*>;

/// What one eater's serve holds: the lines that are cooked, those of `apart` swapped (of a line the first that swaps
/// it), else as the answer says for all.
AllergenSet serve(const kitchen::Kitchen& kitchen, const ask::Alternative& a, const Apart& apart) {
    AllergenSet holds;
    for (const auto& line : kitchen.cookbook()[a.dish].ingredients) {
        if (line.optional) continue;
        std::vector<IngredientId> used{line.ingredient};
        for (const auto& stand_in : a.stand_ins) {
            if (stand_in.replaced != line.ingredient) continue;
            used.clear();
            for (const auto& part : stand_in.use) used.push_back(part.first);
        }
        for (auto separate = apart.rbegin(); separate != apart.rend(); ++separate) {
            for (const auto& [of, use] : (*separate)->swaps) {
                if (of == line.ingredient) used = {use};
            }
        }
        for (const IngredientId id : used) holds.add(kitchen.catalogue()[id].counted_allergens());
    }
    return holds;
}

/// Whether some of the dish's separate serves together are free of it.
bool free_apart(const kitchen::Kitchen& kitchen, const ask::Alternative& a, AllergenSet avoids) {
    const auto& separate = kitchen.cookbook()[a.dish].separate;
    for (std::uint32_t some = 1; some < (1U << separate.size()); ++some) {
        Apart apart;
        for (std::size_t i = 0; i < separate.size(); ++i) {
            if ((some >> i & 1U) != 0) apart.push_back(&separate[i]);
        }
        if (serve(kitchen, a, apart).shared_with(avoids).empty()) return true;
    }
    return false;
}

bool free_of(AllergenSet holds, AllergenSet avoids) {
    return holds.shared_with(avoids).empty();
}

void serves_nobody_what_they_avoid(const kitchen::Kitchen& kitchen, const ask::ElseQuestion& question,
                                   const ask::Alternative& a) {
    const cookbook::Dish& dish = kitchen.cookbook()[a.dish];
    AllergenSet guests;
    for (const auto& occasion : kitchen.household.occasions) {
        if (occasion.day == question.day) guests.add(occasion.guests_avoid);
    }
    AllergenSet all = guests;
    bool someone_apart = false;
    AllergenSet common = serve(kitchen, a, {});
    if (a.ready_meal) {
        common = cookbook::allergens(dish, kitchen.catalogue());
        common.add(kitchen.catalogue()[*dish.leaves].counted_allergens());
    }
    RC_ASSERT(free_of(common, guests));
    for (const auto& person : kitchen.household.people) {
        if (!kitchen::home(person, question.day, kitchen::Meal::dinner)) continue;
        all.add(person.avoids);
        if (free_of(common, person.avoids)) continue;
        RC_ASSERT(!a.ready_meal);
        RC_ASSERT(free_apart(kitchen, a, person.avoids));
        // It must be said, by name and with the caution on contact.
        const bool said = std::any_of(a.cautions.begin(), a.cautions.end(), [&](const std::string& caution) {
            return caution.find("A serve apart for " + person.name) != std::string::npos &&
                   caution.find("touching") != std::string::npos;
        });
        RC_ASSERT(said);
        someone_apart = true;
    }
    if (someone_apart) return;
    // Nothing that the pot is filled from holds it either.
    for (const auto& need : a.cooking.needs)
        RC_ASSERT(free_of(kitchen.catalogue()[need.ingredient].counted_allergens(), all));
    // A leftover holds what the dish holds that it was cooked as.
    for (const auto& use : a.uses) {
        const stock::Lot* lot = kitchen.lot(use.lot);
        RC_ASSERT(lot != nullptr);
        RC_ASSERT(free_of(stock::counted_allergens(*lot, kitchen.catalogue(), kitchen.cookbook()), all));
    }
}

void uses_what_is_there(const kitchen::Kitchen& kitchen, const ask::ElseQuestion& question, const ask::Alternative& a) {
    std::map<stock::LotNumber, std::int64_t> used;
    for (const auto& use : a.uses) {
        const stock::Lot* lot = kitchen.lot(use.lot);
        RC_ASSERT(lot != nullptr);
        RC_ASSERT(lot->ingredient == use.ingredient);
        RC_ASSERT(lot->state == use.state);
        RC_ASSERT(use.amount.value() > 0);
        RC_ASSERT((!lot->use_by || lot->state == stock::State::frozen || *lot->use_by >= question.day));
        used[use.lot] += use.amount.value();
        RC_ASSERT(used[use.lot] <= lot->amount.value());
    }
}

void stands_in_well(const kitchen::Kitchen& kitchen, const ask::Alternative& a) {
    const auto& graph = kitchen.graph();
    RC_ASSERT(a.stand_ins.size() <= graph.parameters().most_stand_ins);
    for (const auto& use : a.stand_ins) {
        RC_ASSERT(use.fit >= graph.parameters().least_fit - 1e-6);
        RC_ASSERT(use.fit < 1);
        RC_ASSERT(!use.use.empty());
        if (use.use.size() == 1) RC_ASSERT(!graph.forbidden(use.replaced, use.use.front().first, use.role));
        for (const auto& part : use.use) RC_ASSERT(part.second.value() > 0);
    }
}

/// A dish that is cooked has what was asked about in it, be it in another thing's place.
void uses_what_was_asked_about(const kitchen::Kitchen& kitchen, const ask::ElseAnswer& answer,
                               const ask::Alternative& a) {
    if (a.ready_meal) return;
    const auto is_used = [&](IngredientId id) {
        return std::any_of(answer.used.begin(), answer.used.end(),
                           [&](const auto& of) { return kitchen.catalogue().is(id, of); });
    };
    bool in_it = false;
    for (const auto& line : kitchen.cookbook()[a.dish].ingredients) {
        const bool replaced = std::any_of(a.stand_ins.begin(), a.stand_ins.end(),
                                          [&](const auto& use) { return use.replaced == line.ingredient; });
        in_it = in_it || (!line.optional && !replaced && is_used(line.ingredient));
    }
    for (const auto& use : a.stand_ins) {
        for (const auto& part : use.use) in_it = in_it || is_used(part.first);
    }
    RC_ASSERT(in_it);
}

using Key = std::tuple<std::int64_t, bool, std::int64_t, cookbook::DishId, bool>;

/// Smaller is better.
Key key(const ask::Alternative& a) {
    return {-a.worth.minor, !a.same_base, -a.likeness, a.dish, a.ready_meal};
}

/// All of an answer that a cook can see, as one text.
std::string seen(const ask::ElseAnswer& answer, const kitchen::Kitchen& kitchen) {
    std::ostringstream out;
    for (const auto& a : answer.alternatives) {
        out << kitchen.cookbook()[a.dish].id << ' ' << a.ready_meal << a.same_base << ' ' << a.likeness << ' '
            << a.worth.minor << '\n';
        for (const auto& line : a.because) {
            out << "  " << ask::name(line.line) << ' ' << line.money.minor << ' '
                << (line.of ? kitchen.catalogue()[*line.of].id : "") << ' ' << (line.amount ? line.amount->value() : 0)
                << ' ' << line.note << '\n';
        }
        for (const auto& use : a.uses)
            out << "  lot " << use.lot << ' ' << use.amount.value() << ' ' << use.use_first << '\n';
        for (const auto& use : a.stand_ins) {
            out << "  for " << kitchen.catalogue()[use.replaced].id << ' ' << use.fit;
            for (const auto& part : use.use)
                out << ' ' << kitchen.catalogue()[part.first].id << ' ' << part.second.value();
            out << '\n';
        }
        for (const auto& buy : a.to_buy)
            out << "  buy " << kitchen.catalogue()[buy.ingredient].id << ' ' << buy.packs << ' ' << buy.price.minor
                << '\n';
        for (const auto& caution : a.cautions) out << "  ! " << caution << '\n';
    }
    return out.str();
}

nlohmann::json shuffled(nlohmann::json list) {
    for (std::size_t i = list.size(); i > 1; --i) std::swap(list[i - 1], list[*rc::gen::inRange<std::size_t>(0, i)]);
    return list;
}

/// A copy of the shipped data in a folder of its own, every list of every document shuffled; gone at the end.
class ShuffledData {
  public:
    ShuffledData()
        : folder_(std::filesystem::temp_directory_path() / ("samebase-shuffled-" + std::to_string(::getpid()))) {
        for (const char* room : {"catalogue", "stand_ins", "bases", "dishes"}) {
            std::filesystem::create_directories(folder_ / room);
            for (const auto& file :
                 std::filesystem::directory_iterator(std::filesystem::path(SAMEBASE_SOURCE_DIR "/data") / room)) {
                auto document = tests::read_or_end(
                    exchange::parse(tests::read_or_end(exchange::read_file(file.path())), "shipped"));
                for (auto& [name, value] : document.items()) {
                    if (value.is_array()) value = shuffled(value);
                }
                std::ofstream(folder_ / room / file.path().filename()) << document.dump();
            }
        }
    }
    ShuffledData(const ShuffledData&) = delete;
    ShuffledData& operator=(const ShuffledData&) = delete;
    ~ShuffledData() {
        std::error_code ignored;
        std::filesystem::remove_all(folder_, ignored);
    }
    [[nodiscard]] const std::filesystem::path& folder() const { return folder_; }

  private:
    std::filesystem::path folder_;
};

}  // namespace

TEST_CASE("whatever is in the kitchen, every answer obeys the laws of an answer") {
    int alternatives = 0;
    tests::holds(12, [&] {
        const World world = any_world();
        const auto answer = ask::ask_else(world.kitchen, demo_day, world.question);
        RC_ASSERT(answer.has_value());
        for (const auto& a : answer->alternatives) {
            ++alternatives;
            RC_LOG() << world.kitchen.cookbook()[a.dish].id << (a.ready_meal ? ", ready" : "") << '\n';
            serves_nobody_what_they_avoid(world.kitchen, world.question, a);
            uses_what_is_there(world.kitchen, world.question, a);
            stands_in_well(world.kitchen, a);
            uses_what_was_asked_about(world.kitchen, *answer, a);
            std::int64_t sum = 0;
            for (const auto& line : a.because) sum += line.money.minor;
            RC_ASSERT(sum == a.worth.minor);
            for (const auto& buy : a.to_buy) {
                RC_ASSERT(world.kitchen.catalogue()[buy.ingredient].kind != catalogue::Kind::cooked);
                RC_ASSERT(buy.packs > 0);
            }
        }
        for (std::size_t i = 1; i < answer->alternatives.size(); ++i) {
            RC_ASSERT(key(answer->alternatives[i - 1]) < key(answer->alternatives[i]));
        }
    });
    // The worlds are not so bare that there was nothing to hold the laws against.
    CHECK(alternatives > 50);
}

TEST_CASE("the order in which lots, plan and dishes are written changes nothing in the answer") {
    tests::holds(2, [] {
        const ShuffledData data;
        auto document = tests::demo_document("stock.json");
        for (const char* list : {"lots", "plan", "history"}) document[list] = shuffled(document[list]);
        const auto other = tests::demo_with(tests::knowledge_in(data.folder()), document);
        RC_ASSERT(!other.check());
        const ask::ElseQuestion question{.day = demo_day + basics::days{*rc::gen::inRange(0, 4)},
                                         .using_ = catalogue::Of{tests::thing("beef-mince")},
                                         .lot = {},
                                         .instead_of = {},
                                         .serves = {},
                                         .left = 0};
        const auto one = ask::ask_else(demo(), demo_day, question);
        const auto two = ask::ask_else(other, demo_day, question);
        RC_ASSERT(one.has_value());
        RC_ASSERT(two.has_value());
        RC_ASSERT(seen(*one, demo()) == seen(*two, other));
    });
}
