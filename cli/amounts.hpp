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
    bool all = false;                        ///< "all the", "the rest of the"
    std::string size{};                      ///< "large", where it is no part of the name

    /// What it was counted in: "can", "bunch", "serve"; nothing for a bare number or a measure.
    [[nodiscard]] std::string counted() const { return amount ? amount->counted : std::string(); }
};

/// Whether what is counted in that is a container: "pack", "can", "bunch".
[[nodiscard]] bool is_container(const std::string& word);

/// Reads one thing. Failures: an amount that is none, an amount without a name.
[[nodiscard]] tl::expected<Said, Failure> read_said(const std::string& text, measure::MeasureSet set);

/// What stands beside a thing that was bought: "@ 4.65", "@ 18/kg", "use by 12 dec".
struct Beside {
    std::optional<basics::Money> each;   ///< of each that was counted, of all that was measured
    bool said_each = false;              ///< "@ 4.65 each"
    std::optional<basics::Money> total;  ///< "for 4.65", "$4.65"
    std::optional<basics::Money> rate;   ///< for `of`
    measure::Amount of;
    std::optional<basics::Day> use_by;
};

/// Takes what stands beside the thing out of `text`.
[[nodiscard]] tl::expected<Beside, Failure> take_beside(std::string& text, const std::string& currency,
                                                        basics::Day today);

/// Money as a cook writes it, "14.50", in the household's currency.
[[nodiscard]] tl::expected<basics::Money, Failure> read_money(const std::string& text, const std::string& currency,
                                                              const std::string& where);

/// A number of serves, "3" or "1.5", in thousandths; above 0.
[[nodiscard]] tl::expected<std::int64_t, Failure> read_serves(const std::string& text, const std::string& where);

/// What was asked on the terminal, so that nobody is asked twice: sizes of packs, and which of two readings is meant.
class Answers {
  public:
    /// What one pack is: as the cook says it now, as the household remembers it, or as it is asked for; nothing where
    /// the lots or the catalogue know. A failure where nobody knows and there is no terminal to ask on.
    [[nodiscard]] tl::expected<std::optional<measure::Amount>, Failure> size_for(const kitchen::At& at,
                                                                                 const store::State& facts,
                                                                                 const Thing& thing, const Said& said,
                                                                                 Doing doing,
                                                                                 std::optional<stock::PlaceId> place);
    /// What is to be remembered of what was said and asked.
    [[nodiscard]] std::vector<kitchen::FactEdit> learned() const;

    /// Which of several the cook means: their place in the list. Nothing where nobody can be asked, or it is none.
    [[nodiscard]] std::optional<std::size_t> chosen(const std::string& question, const std::vector<std::string>& among);

  private:
    std::map<catalogue::IngredientId, measure::Amount> asked_;
    std::map<std::string, std::optional<std::size_t>> chosen_;
};
using PackSizes = Answers;

/// How much was said, of that thing. A measure is what it says; a container word is that container; a bare number is
/// pieces where the thing is counted (bananas, sausages, buns), packs where it is not (mince, flour, tins), and both
/// are weighed against what is known and what is done with it. Where two readings are more than three times apart and
/// neither is clearly usual, the cook is asked, else it is a failure that shows both.
[[nodiscard]] tl::expected<kitchen::Quantity, Failure> quantity_of(const kitchen::Kitchen& kitchen, const Thing& thing,
                                                                   const Said& said,
                                                                   std::optional<stock::PlaceId> place,
                                                                   Doing doing = Doing::using_up,
                                                                   Answers* answers = nullptr);

/// A thing, how much of it, and what a pack of it weighs where that is not known to the kitchen already.
struct Wanted {
    Thing thing;
    Said said;
    kitchen::Quantity quantity;
    std::optional<measure::Amount> pack;
    Beside beside;        ///< of what is bought only
    bool frozen = false;  ///< it was said to be
};

/// A whole line; every problem of it at once. `place`: where the things are.
[[nodiscard]] tl::expected<std::vector<Wanted>, Failure> read_things(const kitchen::At& at, const store::State& facts,
                                                                     const std::string& line,
                                                                     std::optional<stock::PlaceId> place, Doing doing,
                                                                     Answers& answers);

/// The same as items of a change, taken from that place where one is said.
[[nodiscard]] std::vector<kitchen::Item> items_of(const std::vector<Wanted>& things,
                                                  std::optional<stock::PlaceId> from);

}  // namespace samebase::cli
