// A change in the making: a working copy of the lots, and the entries that brought them from the snapshot to it.
#pragma once

#include <functional>
#include <map>
#include <string>
#include <vector>

#include "kitchen/changes.hpp"
#include "stock/packs.hpp"

namespace samebase::kitchen::detail {

using stock::Column;
using stock::Kind;
using stock::Lot;
using stock::LotNumber;

/// So much of one lot.
struct Portion {
    LotNumber lot = 0;
    std::int64_t value = 0;
};

class Draft {
  public:
    Draft(const At& at, std::string command);

    [[nodiscard]] const Kitchen& kitchen() const { return at_.kitchen; }
    [[nodiscard]] basics::Day day() const { return at_.day; }
    [[nodiscard]] const catalogue::Ingredient& ingredient(catalogue::IngredientId id) const {
        return at_.kitchen.catalogue()[id];
    }
    [[nodiscard]] const Lot& lot(LotNumber number) const { return lots_.at(number); }

    /// The lots with something left that are meant, oldest first.
    [[nodiscard]] std::vector<LotNumber> find(const What& what) const;

    /// A lot that arrives today, empty, its number dealt and its dates set.
    [[nodiscard]] Lot arrive(catalogue::IngredientId ingredient, std::optional<cookbook::DishId> dish,
                             stock::PlaceId place);
    /// A number for a lot that is split off another.
    [[nodiscard]] LotNumber next_number() { return next_lot_++; }
    void set_dates(Lot& lot) const;

    /// One entry: the lot becomes `after`.
    void enter(Kind kind, Column column, const Lot& after, std::int64_t delta, const std::string& reason = {});
    void take(Kind kind, Column column, LotNumber number, std::int64_t value, const std::string& reason = {});
    /// As much more of a lot as was not known. With `packs`, in thousandths, it is that many packs, as far as the lot
    /// is in packs or empty; how much was found.
    std::int64_t find_more(LotNumber number, std::int64_t value, const std::string& reason, std::int64_t packs = 0);

    /// What of `lots`, in their order, makes up the quantity; with `whole`, packs whole. What the lots lack is entered
    /// as found: on the last of them, or as a new lot of what is meant. Where one of them is only "some", and it need
    /// not be whole, what lacks is taken to be from there, and no entry is made of it.
    [[nodiscard]] basics::Result<std::vector<Portion>> choose(const std::vector<LotNumber>& lots, const Item& item,
                                                              bool whole);

    void note(std::string line) { change_.notes.push_back(std::move(line)); }
    [[nodiscard]] Change& change() { return change_; }
    /// "so much of such": what is told of a portion of a lot.
    [[nodiscard]] std::string told(const Lot& like, std::int64_t value) const;

  private:
    /// One note for everything that was found.
    void note_found(const Lot& lot, std::int64_t value);

    const At& at_;
    std::map<LotNumber, Lot> lots_;
    LotNumber next_lot_;
    Change change_;
    std::vector<std::string> found_;
    std::size_t found_note_ = 0;  ///< where that note is, once something was found
};

/// The weight of one pack: what was said, else what the lots' own packs weigh, else the catalogue's.
[[nodiscard]] basics::Result<std::int64_t> pack_size(const Draft& draft, catalogue::IngredientId ingredient,
                                                     const std::optional<measure::Amount>& said,
                                                     const std::vector<LotNumber>& lots = {});

/// Why the ingredient may not go into that place; nothing where it may.
[[nodiscard]] std::optional<basics::Problem> unfit(const Draft& draft, catalogue::IngredientId ingredient,
                                                   stock::PlaceId place);

/// Why the lot may not be frozen as it is, whole: a head of cabbage; nothing where it may. `place`: where it goes, if
/// not where it is.
[[nodiscard]] std::optional<basics::Problem> unfit_whole(const Draft& draft, const Lot& lot,
                                                         std::optional<stock::PlaceId> place = std::nullopt);

/// The place where such a thing usually is, for stock that was never entered.
[[nodiscard]] basics::Result<stock::PlaceId> usual_place(const Draft& draft, catalogue::IngredientId ingredient);

/// Takes the portion to be eaten or cooked with, and opens what has to be opened for that: the pack or the piece that
/// is begun becomes a lot of its own where others stay closed. Only of things that keep for a time of their own once
/// opened.
void eat(Draft& draft, Kind kind, const Portion& portion);

/// As a lot of its own, opened, or all of the lot.
void open(Draft& draft, const Portion& portion);

/// The order in which lots are eaten: what can be cooked with as it is before what is frozen; thawed and opened ones
/// first; then first-expired first; then the older number.
void in_eating_order(const Draft& draft, std::vector<LotNumber>& lots);

/// Leaves out what is past its use-by, with a note for each.
void leave_expired(Draft& draft, std::vector<LotNumber>& lots);

/// What the change takes the last of comes onto the shopping list, where such a thing is bought again.
void list_used_up(const At& at, Change& change);

/// What has arrived goes off the shopping list.
void off_the_list(const At& at, catalogue::IngredientId id, Change& change);

[[nodiscard]] std::string joined(const std::vector<std::string>& parts);
/// The same, and of more than four only the first three: "a, b, c and 5 more".
[[nodiscard]] std::string few_of(std::vector<std::string> parts);

}  // namespace samebase::kitchen::detail
