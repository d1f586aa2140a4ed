// Lists of things with amounts, as a cook says them in one line: "2 kg beef mince, 3 cabbages, 14 packs of 500 g pork
// mince, 7.3 kg in 14 packs beef mince, some parsley". Words need no quotes.
#pragma once

#include <map>
#include <optional>
#include <string>
#include <vector>

#include "context.hpp"
#include "kitchen/changes.hpp"
#include "meaning.hpp"
#include "measure/written.hpp"
#include "store/store.hpp"

namespace samebase::cli {

/// One thing as it was said.
struct Said {
    std::string text;                        ///< all of it, for messages
    std::string name;                        ///< "beef mince"; never empty
    std::optional<measure::Written> amount;  ///< nothing: none was said
    std::optional<measure::Amount> each;     ///< what one of them weighs
    std::optional<measure::Amount> total;    ///< what all of them weigh
};

/// Reads one thing. Failures: an amount that is none, an amount without a name.
[[nodiscard]] tl::expected<Said, Failure> read_said(const std::string& text, measure::MeasureSet set);

/// Money as a cook writes it, "14.50", in the household's currency.
[[nodiscard]] tl::expected<basics::Money, Failure> read_money(const std::string& text, const std::string& currency,
                                                              const std::string& where);

/// A number of serves, "3" or "1.5", in thousandths; above 0.
[[nodiscard]] tl::expected<std::int64_t, Failure> read_serves(const std::string& text, const std::string& where);

/// Sizes of packs that were asked for on the terminal, so that nobody is asked twice.
class PackSizes {
  public:
    /// What one pack is: as the cook says it now, as the household remembers it, or as it is asked for; nothing where
    /// the lots or the catalogue know. A failure where nobody knows and there is no terminal to ask on.
    [[nodiscard]] tl::expected<std::optional<measure::Amount>, Failure> size_for(const kitchen::At& at,
                                                                                 const store::State& facts,
                                                                                 const Thing& thing, const Said& said,
                                                                                 Things::For what_for,
                                                                                 std::optional<stock::PlaceId> place);
    /// What is to be remembered of what was said and asked.
    [[nodiscard]] std::vector<kitchen::FactEdit> learned() const;

  private:
    std::map<catalogue::IngredientId, measure::Amount> asked_;
};

/// How much was said, of that thing. A bare number is packs where a cook counts the thing in packs (it is in stock in
/// packs, or has a pack and is not counted by the piece: meat, fish, tins, bread), else pieces (eggs, onions, cabbages:
/// by the weight of one).
[[nodiscard]] tl::expected<kitchen::Quantity, Failure> quantity_of(const kitchen::Kitchen& kitchen, const Thing& thing,
                                                                   const Said& said,
                                                                   std::optional<stock::PlaceId> place);

/// A thing, how much of it, and what a pack of it weighs where that is not known to the kitchen already.
struct Wanted {
    Thing thing;
    Said said;
    kitchen::Quantity quantity;
    std::optional<measure::Amount> pack;
};

/// A whole line. `place`: where the things are.
[[nodiscard]] tl::expected<std::vector<Wanted>, Failure> read_things(const kitchen::At& at, const store::State& facts,
                                                                     const std::string& line,
                                                                     std::optional<stock::PlaceId> place,
                                                                     Things::For what_for, PackSizes& packs);

/// The same as items of a change, taken from that place where one is said.
[[nodiscard]] std::vector<kitchen::Item> items_of(const std::vector<Wanted>& things,
                                                  std::optional<stock::PlaceId> from);

}  // namespace samebase::cli
