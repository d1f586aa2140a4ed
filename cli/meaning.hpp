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

/// What a command does with a thing: how freely its words may be taken, and what a bare number of it is.
enum class Doing : std::uint8_t {
    buying,    ///< ingredients only
    counting,  ///< what follows is in stock, or could be: leftovers by the name of their dish too, and lots
    moving,
    opening,
    using_up,  ///< cooked with
    eating,
    tossing
};

/// Whether only a name, a plural of it or another listed name will do, because what is taken is gone.
[[nodiscard]] constexpr bool destroys(Doing doing) {
    return doing == Doing::using_up || doing == Doing::eating || doing == Doing::tossing;
}

/// What words were taken for.
struct Taken {
    Thing thing;
    bool exact = true;    ///< by a name, a plural of it or another listed name; not by a slip or a part of a name
    bool frozen = false;  ///< "frozen" was said of something that is not sold so
    std::string size{};   ///< "large": a word of size that is no part of the name
};

/// The things that one command may be about. The whole name of a thing is that thing, whatever is in stock; a general
/// word ("mince", "chicken"), a part of a name or a slip is settled by what is in stock, first in the place that is
/// named, then anywhere. A tin of something is the thing that comes in tins.
class Things {
  public:
    struct For {  ///< what is bought, and what is there
        static constexpr Doing buying = Doing::buying;
        static constexpr Doing stock = Doing::using_up;
    };
    Things(const kitchen::Kitchen& kitchen, std::optional<stock::PlaceId> place, Doing doing);

    /// `counted`: what it was counted in. In serves, leftovers are meant where there are any; a tin chooses the form.
    [[nodiscard]] tl::expected<Taken, Failure> taken(const std::string& words, const std::string& counted = {}) const;
    [[nodiscard]] tl::expected<Thing, Failure> meant(const std::string& words) const;

  private:
    struct Index {
        catalogue::NameIndex names;
        std::vector<Thing> things;

        void add(const kitchen::Kitchen& kitchen, const Thing& thing, bool by_label);
    };
    struct Few;
    [[nodiscard]] Few few(const Index& index, const std::string& words, bool in_serves) const;
    [[nodiscard]] std::optional<Few> in_stock(const std::string& words, bool in_serves) const;
    [[nodiscard]] bool stocked(catalogue::IngredientId id) const;
    [[nodiscard]] bool is_name(const std::string& words, const Thing& thing) const;
    [[nodiscard]] tl::expected<Taken, Failure> of_name(const std::string& words, bool in_serves) const;
    [[nodiscard]] tl::expected<Taken, Failure> general(const std::string& words, const Taken& usual) const;
    [[nodiscard]] std::optional<Taken> in_tins(const std::string& words) const;
    [[nodiscard]] tl::unexpected<Failure> unknown(const std::string& words) const;
    [[nodiscard]] tl::unexpected<Failure> several(const std::string& words, const std::vector<Thing>& things) const;
    [[nodiscard]] std::string label(const Thing& thing) const;

    const kitchen::Kitchen* kitchen_;
    Doing doing_;
    Index everything_;
    Index here_;   ///< in stock in that place
    Index stock_;  ///< in stock anywhere
    catalogue::NameIndex families_;
};

/// Whether it is sold in such a container: "can", "jar", "loaf" (what read_amount calls it).
[[nodiscard]] bool comes_in(const catalogue::Ingredient& thing, const std::string& container);

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

/// Every name of an ingredient, and its identifier with spaces, under that key.
void add_ingredient(const catalogue::Ingredient& thing, std::uint32_t key, std::uint8_t rank,
                    catalogue::NameIndex& index);
[[nodiscard]] std::string spaced(std::string id);
[[nodiscard]] std::optional<stock::LotNumber> lot_number(std::string words);
/// "'a', 'b'": names in a list of choices.
[[nodiscard]] std::string quoted(const std::vector<std::string>& names);

/// Words that are kept as they are: UTF-8 without line ends and the like.
[[nodiscard]] tl::expected<std::string, Failure> remark(const std::vector<std::string>& words,
                                                        const std::string& where);

/// The parts between commas, without spaces around them; empty ones are left out.
[[nodiscard]] std::vector<std::string> split_at_commas(const std::string& text);

}  // namespace samebase::cli
