// The household: who eats when, where food is kept, and the rules it lives by.
#pragma once

#include <array>
#include <cstdint>
#include <initializer_list>
#include <optional>
#include <string>
#include <string_view>
#include <utility>
#include <vector>

#include "basics/day.hpp"
#include "basics/money.hpp"
#include "catalogue/catalogue.hpp"
#include "cookbook/cookbook.hpp"
#include "measure/measure_set.hpp"
#include "stock/place.hpp"

namespace samebase::kitchen {

enum class Meal : std::uint8_t { lunch, dinner };
[[nodiscard]] constexpr std::string_view name(Meal meal) {
    return meal == Meal::lunch ? "lunch" : "dinner";
}
[[nodiscard]] std::optional<Meal> read_meal(std::string_view text);

/// Meals of a day as bits.
using Meals = std::uint8_t;
[[nodiscard]] constexpr Meals only(Meal meal) {
    return static_cast<Meals>(1U << static_cast<unsigned>(meal));
}
[[nodiscard]] constexpr bool has(Meals meals, Meal meal) {
    return (meals & only(meal)) != 0;
}

/// The meals that someone is home for on each weekday, Sunday first (as std::chrono counts).
using Week = std::array<Meals, 7>;

struct Away {
    basics::Span span;
    Meals meals = 0;
};

/// What someone thinks of a dish, an ingredient or a family: from -3 to 3, 0 where nothing is said.
struct Mark {
    std::optional<cookbook::DishId> dish;  ///< else `of`
    catalogue::Of of;
    int mark = 0;
};

struct Person {
    std::string id;
    std::string name;
    std::int64_t serve_thousandths = 1000;  ///< how much they eat of a serve
    catalogue::AllergenSet avoids;
    std::vector<catalogue::Of> dislikes;  ///< not put before them
    std::vector<Mark> marks;
    std::vector<Week> roster;  ///< weeks that follow one another in turn, the first from `roster_from` on; never empty
    basics::Day roster_from;
    std::vector<Away> away;
};

[[nodiscard]] bool home(const Person& person, basics::Day day, Meal meal);

/// What goes without a dish: breakfast milk, sandwich bread.
struct StandingUse {
    catalogue::IngredientId ingredient;
    measure::Amount amount;
    std::uint8_t weekdays = 0x7F;  ///< bit 0 for Sunday
};

/// A weekday that always has the same kind of dish; several kinds take turns, a week each, the first from `from` on.
struct StandingNight {
    std::chrono::weekday weekday;
    std::vector<std::string> kinds;
    basics::Day from;
};

/// A dated wish.
struct Occasion {
    basics::Day day;
    std::string note;
    std::optional<cookbook::DishId> dish;
    int guests = 0;
    catalogue::AllergenSet guests_avoid;
};

/// What is bought on a trip to the shops: sold_on() says what each sells.
enum class TripFor : std::uint8_t { all, fresh, bulk };
[[nodiscard]] std::string_view name(TripFor what);
[[nodiscard]] std::optional<TripFor> read_trip_for(std::string_view text);

/// A shopping day: a weekday every so many weeks, or one date.
struct Trip {
    std::optional<std::chrono::weekday> weekday;  ///< nothing: on `from` alone
    int every = 1;                                ///< weeks from one to the next; 1 or more
    /// The date of a single trip; else the first trip is on the first such weekday from here on. Nothing for a weekday
    /// trip that has no beginning: it then comes every week.
    std::optional<basics::Day> from;
    TripFor what_for = TripFor::all;

    friend bool operator==(const Trip&, const Trip&) = default;
};

/// Weekly trips for everything, on weekdays given as bits, bit 0 for Sunday.
[[nodiscard]] std::vector<Trip> weekly_trips(std::uint8_t weekdays);

/// What was last paid for an amount of an ingredient.
struct Price {
    catalogue::IngredientId ingredient;
    measure::Amount amount;
    basics::Money price;
};

/// What somebody put on the shopping list by hand, food or not.
struct Listed {
    std::string words;                                  ///< the ingredient's name; of what is no food as it was written
    std::optional<catalogue::IngredientId> ingredient;  ///< nothing: no food
    int count = 0;                                      ///< packs, or how many; 0 where nothing was said

    friend bool operator==(const Listed&, const Listed&) = default;
};

/// What things other than food are worth to the household, in the smallest unit of its currency.
struct Worths {
    /// A whole dish replaced by something that does not fit at all: as a dinner brought in for four instead.
    basics::Money fussiness{5600};
    basics::Money mark{30};            ///< one mark of one eater's liking
    basics::Money minute{8};           ///< a minute more than the day allows
    basics::Money had_lately{600};     ///< the same dish again on the next day; fades over the dish's gap
    basics::Money bought_lunch{1400};  ///< a lunch bought outside
    basics::Money trip{500};           ///< a trip to the shops: its petrol and its time
};

struct Household {
    std::string name;
    std::string currency = "AUD";
    bool southern = true;
    measure::MeasureSet measures = measure::MeasureSet::australian_metric;
    std::vector<Person> people;        ///< in the order of identifiers
    std::vector<stock::Place> places;  ///< in the order of identifiers
    std::vector<bool> staples;         ///< by ingredient handle
    std::vector<bool> staples_out;     ///< by ingredient handle: said to be out
    std::vector<StandingUse> standing_uses;
    std::vector<StandingNight> standing_nights;
    std::vector<Occasion> occasions;
    std::vector<Price> prices;
    std::vector<Trip> trips;
    std::vector<std::string>
        shelves;                 ///< those of a shop in the order in which the household walks by; the rest follow
    std::vector<Listed> listed;  ///< in the order of words, each once
    std::optional<basics::Day> shopped_on;  ///< the last day on which bought things came in: its trip is done
    std::array<int, 7> minutes{60, 45, 45, 45, 45, 45, 60};  ///< for dinner, by weekday, Sunday first
    Worths worths;
    basics::Money tell_from{100};  ///< a finding that is worth less is only summed up
};

/// The first place of the first of these kinds that the household has.
[[nodiscard]] std::optional<stock::PlaceId> place_of(const Household& household,
                                                     std::initializer_list<stock::PlaceKind> kinds);

/// The kind of dish that the standing night asks for on that day; nothing where the weekday has none, or the day has an
/// occasion with a dish or a note.
[[nodiscard]] std::optional<std::string> standing_kind(const Household& household, basics::Day day);

/// The first day of that trip on or after a day; nothing where there is none.
[[nodiscard]] std::optional<basics::Day> next_day(const Trip& trip, basics::Day from);

/// The first day on or after that day with a trip of any kind that is not done; nothing where there is none.
[[nodiscard]] std::optional<basics::Day> shopping_day(const Household& household, basics::Day from);
/// The same, of trips that sell fresh food: those for `all` and `fresh`.
[[nodiscard]] std::optional<basics::Day> fresh_shopping_day(const Household& household, basics::Day from);

/// What keeps at most this many days outside a freezer is perishable.
inline constexpr int perishable_days = 14;
/// Whether a trip sells the thing. One for `all` sells everything; one for `fresh` what is perishable; one for `bulk`
/// everything but what is perishable and cannot be frozen.
[[nodiscard]] bool sells(TripFor what_for, const catalogue::Ingredient& thing);
/// Whether the thing can be bought on that day: a trip that is not done falls on it and sells it.
[[nodiscard]] bool sold_on(const Household& household, basics::Day day, const catalogue::Ingredient& thing);

}  // namespace samebase::kitchen
