// Changes of the household's document (kitchen.json) as JSON, its keys in their order. What is set replaces what was
// said of the same thing; what is removed tells whether it was there. Whether the result is sound is for
// read_household() to say. Identifiers are the caller's: of the catalogue, the cookbook, or of the document itself.
#pragma once

#include <cstdint>
#include <nlohmann/json.hpp>
#include <optional>
#include <string>
#include <string_view>
#include <vector>

#include "basics/day.hpp"
#include "kitchen/household.hpp"

namespace samebase::exchange {

using HouseholdDocument = nlohmann::ordered_json;

/// The kinds of dish that a standing night can ask for.
[[nodiscard]] const std::vector<std::string>& night_kinds();

/// Laid out for people: what fits stands on one line.
[[nodiscard]] std::string household_text(const HouseholdDocument& document);

/// The edits that led from `base` to `mine`, made to `theirs`: a key of the document, or one of its entries with an
/// identifier, that only one side changed is as that side has it. Nothing where both changed one differently.
[[nodiscard]] std::optional<HouseholdDocument> merged(const HouseholdDocument& base, const HouseholdDocument& mine,
                                                      const HouseholdDocument& theirs);

/// An identifier from a name, lower-case words joined by hyphens, that no entry of the list ("people") has.
[[nodiscard]] std::string new_id(const HouseholdDocument& document, std::string_view list, const std::string& name);

/// What is said of a person; what is nothing stays as it was.
struct PersonEdit {
    std::string id;
    std::string name;
    std::optional<std::int64_t> serve_thousandths;
    std::optional<std::vector<std::string>> avoids;    ///< allergens
    std::optional<std::vector<std::string>> dislikes;  ///< ingredients and families
    std::optional<kitchen::Week> home;                 ///< a new person without it is home for every meal
};
void set_person(HouseholdDocument& document, const PersonEdit& person);
[[nodiscard]] bool remove_person(HouseholdDocument& document, const std::string& id);

void add_away(HouseholdDocument& document, const std::string& person, const kitchen::Away& away);
/// Takes away what was said of days within the span.
[[nodiscard]] bool remove_away(HouseholdDocument& document, const std::string& person, const basics::Span& span);

/// A mark of a dish, or of an ingredient or a family; 0 takes it away.
void set_mark(HouseholdDocument& document, const std::string& person, bool dish, const std::string& of, int mark);

struct GuestsEdit {
    basics::Day day;
    std::optional<int> guests;
    std::optional<std::vector<std::string>> avoid;
    std::optional<std::string> dish;
    std::optional<std::string> note;
};
void set_guests(HouseholdDocument& document, const GuestsEdit& guests);
[[nodiscard]] bool remove_guests(HouseholdDocument& document, basics::Day day);

/// In place of trips on the same weekday, or date: one for `fresh` and one for `bulk` may fall on one day.
void set_trip(HouseholdDocument& document, const kitchen::Trip& trip);
/// All trips on that weekday, or that date.
[[nodiscard]] bool remove_trip(HouseholdDocument& document, std::optional<std::chrono::weekday> weekday,
                               std::optional<basics::Day> date);

void set_night(HouseholdDocument& document, const kitchen::StandingNight& night);
[[nodiscard]] bool remove_night(HouseholdDocument& document, std::chrono::weekday weekday);

void set_minutes(HouseholdDocument& document, std::chrono::weekday weekday, int minutes);

struct PlaceEdit {
    std::string id;
    std::string name;
    stock::PlaceKind kind = stock::PlaceKind::pantry;
    std::optional<std::int64_t> room_ml;  ///< nothing: as it was
};
void set_place(HouseholdDocument& document, const PlaceEdit& place);
[[nodiscard]] bool remove_place(HouseholdDocument& document, const std::string& id);

/// `amount` as a cook writes it: "700 mL". Weekdays as bits, bit 0 for Sunday.
void set_use(HouseholdDocument& document, const std::string& of, const std::string& amount, std::uint8_t weekdays);
[[nodiscard]] bool remove_use(HouseholdDocument& document, const std::string& of);

/// The shelves of the shop in the order of the household's walk; none: as they usually stand.
void set_shelves(HouseholdDocument& document, const std::vector<std::string>& shelves);

void set_staple(HouseholdDocument& document, const std::string& of, bool staple);

}  // namespace samebase::exchange
