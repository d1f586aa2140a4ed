// What a cook's words about the household mean: people, weekdays, spans, allergens, kinds of dinner, trips, places.
#pragma once

#include <cstdint>
#include <optional>
#include <string>
#include <vector>

#include "exchange/household_edit.hpp"
#include "meaning.hpp"

namespace samebase::cli {

template <class T>
using Understood = tl::expected<T, Failure>;

/// "5 dec", "sat 5 dec", "dec 5", "12..14 dec", "12 to 14 dec" as ISO days with ".." between them: what is neither
/// stays.
[[nodiscard]] std::string with_iso_days(const std::string& text, basics::Day today);
[[nodiscard]] std::optional<basics::Day> a_day(const std::string& text, basics::Day today);
[[nodiscard]] std::optional<basics::Span> a_span(const std::string& text, basics::Day today);

/// Everybody in the order of the household. `exactly`: as a whole name without a slip.
[[nodiscard]] Understood<std::size_t> person_meant(const kitchen::Household& household, const std::string& words,
                                                   bool exactly);
/// A person's name at the beginning of the words: how many of them it takes, and who.
struct PersonSaid {
    std::size_t person = 0;
    std::size_t words = 0;
};
[[nodiscard]] Understood<PersonSaid> person_first(const kitchen::Household& household,
                                                  const std::vector<std::string>& words);

/// "gluten, eggs", "dairy", "nuts", "shellfish"; "none" is none.
[[nodiscard]] Understood<std::vector<std::string>> allergens_meant(const std::vector<std::string>& words);
/// Ingredients and families by identifier, at commas; "none" is none.
[[nodiscard]] Understood<std::vector<std::string>> things_meant(const kitchen::Kitchen& kitchen,
                                                                const std::vector<std::string>& words);
/// An ingredient or a family by identifier.
[[nodiscard]] Understood<std::string> thing_meant(const kitchen::Kitchen& kitchen, const std::string& words);

/// "mon-fri", "mon..wed", "sat", "weekdays", "weekend", "every day", "mon, wed": bits, bit 0 for Sunday.
[[nodiscard]] std::optional<std::uint8_t> weekdays_meant(const std::string& text);
/// "mon-fri dinner, sat-sun all".
[[nodiscard]] Understood<kitchen::Week> week_meant(const std::string& text);

/// "mince soup", "stir-fry, pasta": at least one kind.
[[nodiscard]] Understood<std::vector<std::string>> kinds_meant(const std::vector<std::string>& words);
/// "tue mince soup": a weekday and its kinds, the first on the next such day.
[[nodiscard]] Understood<kitchen::StandingNight> night_meant(const std::vector<std::string>& words, basics::Day today);

/// "sat", "every second sat from 5 dec", "sat every 2 from 5 dec fresh", "5 dec bulk".
[[nodiscard]] Understood<kitchen::Trip> trip_meant(const std::string& text, basics::Day today);

/// "shed freezer: far-freezer 200 L", "shed freezer far freezer", "pantry". `kind` is nothing where none is said.
struct PlaceSaid {
    std::string name;
    std::optional<stock::PlaceKind> kind;
    std::optional<std::int64_t> room_ml;
};
[[nodiscard]] Understood<PlaceSaid> place_said(const std::string& text);

/// A number from 0.05 to 5, in thousandths of a serve.
[[nodiscard]] Understood<std::int64_t> eats_meant(const std::string& text);
/// A whole number in this range; nothing where it is none.
[[nodiscard]] std::optional<int> whole_number(const std::string& text, int least, int most);

[[nodiscard]] std::vector<std::string> words_of(const std::string& text);

}  // namespace samebase::cli
