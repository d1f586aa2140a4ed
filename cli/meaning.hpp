// What the cook's words mean: ingredients, families, dishes, places, lots.
#pragma once

#include <memory>
#include <optional>
#include <string>
#include <variant>
#include <vector>

#include "catalogue/names.hpp"
#include "context.hpp"
#include "kitchen/kitchen.hpp"

namespace samebase::cli {

/// What `else` can be asked about.
using Meant = std::variant<catalogue::IngredientId, catalogue::FamilyId, cookbook::DishId, stock::LotNumber>;

/// One clear thing; else a failure that lists what the words might mean, or the three nearest. "lot 12" is a lot.
[[nodiscard]] tl::expected<Meant, Failure> meant(const kitchen::Kitchen& kitchen, const std::string& words);
[[nodiscard]] tl::expected<cookbook::DishId, Failure> dish_meant(const kitchen::Kitchen& kitchen,
                                                                 const std::string& words);

/// By its name, its identifier or its kind ("near freezer"); several places that match are a failure that lists them.
[[nodiscard]] tl::expected<stock::PlaceId, Failure> place_meant(const kitchen::Kitchen& kitchen,
                                                                const std::string& words);

/// One of a few ingredients: those of a dish, the staples.
[[nodiscard]] tl::expected<catalogue::IngredientId, Failure> one_of_meant(
    const kitchen::Kitchen& kitchen, const std::vector<catalogue::IngredientId>& few, const std::string& words,
    const std::string& what);

/// Something that is, or could be, in stock: an ingredient, what is left of a dish, or one lot.
struct Thing {
    catalogue::IngredientId ingredient;
    std::optional<cookbook::DishId> dish;  ///< of kind cooked: only what was cooked as that
    std::optional<stock::LotNumber> lot;

    friend bool operator==(const Thing&, const Thing&) = default;
};

/// The things that one command may be about. What words might mean is settled by what is in stock: "mince" is the beef
/// mince where there is no other, first in the place that is named, then anywhere.
class Things {
  public:
    enum class For : std::uint8_t {
        buying,  ///< ingredients only
        stock    ///< leftovers by the name of their dish too, and lots
    };
    Things(const kitchen::Kitchen& kitchen, std::optional<stock::PlaceId> place, For what_for);

    /// `in_serves`: it was counted in serves, so that leftovers are meant where there are any.
    [[nodiscard]] tl::expected<Thing, Failure> meant(const std::string& words, bool in_serves = false) const;

  private:
    struct Index {
        catalogue::NameIndex names;
        std::vector<Thing> things;

        void add(const kitchen::Kitchen& kitchen, const Thing& thing, bool by_label);
    };
    [[nodiscard]] std::vector<Thing> found(const Index& index, const catalogue::Match& match, bool in_serves) const;
    [[nodiscard]] std::optional<Thing> in_stock(const std::string& words, bool in_serves) const;
    [[nodiscard]] bool rather(const Thing& stocked, const Thing& thing) const;

    const kitchen::Kitchen* kitchen_;
    For for_;
    Index everything_;
    Index here_;   ///< in stock in that place
    Index stock_;  ///< in stock anywhere
};

[[nodiscard]] tl::expected<basics::Day, Failure> day_meant(const std::string& text, basics::Day today,
                                                           const std::string& where);

/// A month, a year, the coming week, two days with ".." between them, or one day; at most two years long.
[[nodiscard]] tl::expected<basics::Span, Failure> span_meant(const std::string& text, basics::Day today,
                                                             const std::string& where);

/// The same; where nothing is said, from today up to the horizon.
[[nodiscard]] tl::expected<basics::Span, Failure> span_or_horizon(const std::string& text,
                                                                  const kitchen::Kitchen& kitchen, basics::Day today,
                                                                  const std::string& where);

[[nodiscard]] std::string joined(const std::vector<std::string>& words);

/// Words that are kept as they are: UTF-8 without line ends and the like.
[[nodiscard]] tl::expected<std::string, Failure> remark(const std::vector<std::string>& words,
                                                        const std::string& where);

/// The parts between commas, without spaces around them; empty ones are left out.
[[nodiscard]] std::vector<std::string> split_at_commas(const std::string& text);

}  // namespace samebase::cli
