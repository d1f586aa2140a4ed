// Changes: what a command does to the kitchen, computed from a snapshot and a day with no database in sight. A Change
// holds the ledger's entries and the edits to plan, history and facts, and what the cook is told. The store writes it
// whole or not at all. Nothing here changes the snapshot that it is given.
//
// A cook who uses, moves or tosses more than the ledger knew did have it: the difference is entered as found first, and
// a note says so. No lot goes below nothing.
#pragma once

#include <cstdint>
#include <optional>
#include <span>
#include <string>
#include <utility>
#include <vector>

#include "basics/problem.hpp"
#include "kitchen/cooking.hpp"
#include "kitchen/kitchen.hpp"
#include "stock/entry.hpp"

namespace samebase::kitchen {

/// The snapshot that a change starts from.
struct At {
    const Kitchen& kitchen;
    basics::Day day;
    stock::LotNumber next_lot = 1;  ///< the number of the next lot to arrive
};

/// One row of the plan, or one meal that was had, that appears or goes away. `adds` false: the row as it was.
struct PlanEdit {
    bool adds = true;
    Planned row;

    friend bool operator==(const PlanEdit&, const PlanEdit&) = default;
};

struct HistoryEdit {
    bool adds = true;
    Had row;

    friend bool operator==(const HistoryEdit&, const HistoryEdit&) = default;
};

/// What commands teach the household: a staple is out, how large a pack is, what was last paid. One of each kind for an
/// ingredient.
struct Fact {
    enum class Kind : std::uint8_t { out, pack, price };
    Kind kind = Kind::out;
    catalogue::IngredientId ingredient;
    std::int64_t amount = 0;  ///< of a pack, or that was paid for
    basics::Money money;      ///< that was paid

    friend bool operator==(const Fact&, const Fact&) = default;
};

/// From now on this holds; with `holds` false, nothing of that kind does for that ingredient.
struct FactEdit {
    bool holds = true;
    Fact fact;

    friend bool operator==(const FactEdit&, const FactEdit&) = default;
};

/// One row of what was put on the shopping list by hand that appears or goes away. `adds` false: the row as it was.
struct ListEdit {
    bool adds = true;
    Listed row;

    friend bool operator==(const ListEdit&, const ListEdit&) = default;
};

/// A document of the kitchen's folder that changes: whole texts; nothing where there is no such file.
struct DocumentEdit {
    std::string path;  ///< "kitchen.json", "dishes/ours.json"
    std::optional<std::string> was;
    std::optional<std::string> becomes;

    friend bool operator==(const DocumentEdit&, const DocumentEdit&) = default;
};

/// What a count found of one thing: what was known, and what there is.
struct Counted {
    catalogue::IngredientId ingredient;
    std::optional<cookbook::DishId> dish;
    std::string was;  ///< "16 packs (8 kg)", "nothing"
    std::string is;
};

/// What a change took of one thing.
struct Took {
    catalogue::IngredientId ingredient;
    std::optional<cookbook::DishId> dish;  ///< of a leftover: what was cooked
    std::int64_t amount = 0;
    bool last = false;  ///< nothing of it is left

    friend bool operator==(const Took&, const Took&) = default;
};

struct Change {
    std::string command;  ///< "got"
    basics::Day day;
    std::string line;                ///< what it did, one line for the cook
    std::vector<std::string> notes;  ///< what the cook should know besides, a line each
    std::vector<stock::Entry> entries;
    std::vector<PlanEdit> plan;
    std::vector<HistoryEdit> history;
    std::vector<FactEdit> facts;
    std::vector<ListEdit> list;
    std::vector<DocumentEdit> documents;  ///< each path once
    std::vector<Counted> counted;         ///< by `count` only
    std::vector<Took> took;               ///< by `cooked` only, in the order of the recipe

    [[nodiscard]] bool empty() const {
        return entries.empty() && plan.empty() && history.empty() && facts.empty() && list.empty() && documents.empty();
    }
};

/// How much of something. Packs and an amount together: so many packs that weigh that in all. Nothing: all that there
/// is.
struct Quantity {
    std::optional<measure::Amount> amount;  ///< in the ingredient's own dimension
    std::optional<std::int64_t> packs;      ///< in thousandths of a pack
    std::optional<measure::Rough> rough;

    [[nodiscard]] bool all() const { return !amount && !packs && !rough; }
};

/// Which stock is meant: one lot, or whatever there is of an ingredient, or of a dish as leftovers and ready meals.
struct What {
    std::optional<stock::LotNumber> lot;
    std::optional<catalogue::IngredientId> ingredient;
    std::optional<cookbook::DishId> dish;
    std::optional<stock::PlaceId> from;  ///< nothing: wherever it is
};

struct Item {
    What what;
    Quantity quantity;
    std::optional<measure::Amount> pack;  ///< the weight of one pack, where the household or the cook said it
};

struct Got {
    catalogue::IngredientId ingredient;
    Quantity quantity;
    stock::PlaceId place;
    std::optional<measure::Amount> pack;   ///< as in Item; remembered from now on
    std::optional<basics::Day> use_by;     ///< as printed
    std::optional<basics::Money> paid;     ///< for all of it
    std::optional<cookbook::DishId> dish;  ///< of kind cooked: what it was cooked as
    std::string note;
    bool paid_is_share = false;  ///< of a payment for several things, which says nothing of the price of each
};

/// Things arrive. A lot each, frozen if its place freezes; what was paid for one becomes the household's last price of
/// it. What is sold in tins, jars, bottles and the like is so many of them. Refused: an amount of nothing, a pack whose
/// size nobody knows, a printed use-by that has passed, and what does not keep where it is put: a perishable in the
/// pantry, raw meat in a crisper, a whole cabbage in a freezer.
[[nodiscard]] basics::Result<Change> got(const At& at, std::span<const Got> things);

/// Things go to another place: in packs, whole ones. Out of a freezer they begin to thaw by the method given, or with
/// none stay frozen; thawing there is for the fridge, or for what keeps in the pantry. Into a freezer they freeze.
/// Refused: freezing again what was thawed, freezing past the use-by, thawing on the bench, and what got() refuses.
[[nodiscard]] basics::Result<Change> moved(const At& at, std::span<const Item> things, stock::PlaceId to,
                                           std::optional<stock::ThawMethod> thaw);

/// Packs of one lot by their true weights; of a loose lot, an amount.
struct PacksOfLot {
    stock::LotNumber lot = 0;
    std::vector<std::int64_t> weights;
};

/// The same as moved() for packs that somebody chose. Refused besides: a lot that is not there, or has no such packs.
[[nodiscard]] basics::Result<Change> moved_packs(const At& at, std::span<const PacksOfLot> packs, stock::PlaceId to,
                                                 std::optional<stock::ThawMethod> thaw);

/// Things are opened or cut: of a lot in packs one pack, of whole pieces one piece, unless a quantity is given;
/// otherwise all of the lot. What is past its use-by is not opened.
[[nodiscard]] basics::Result<Change> opened(const At& at, std::span<const Item> things);

/// Things are eaten without a dish, first-expired first. What is past its use-by is not eaten.
[[nodiscard]] basics::Result<Change> ate(const At& at, std::span<const Item> things);

/// Things go to the bin, those that expired first.
[[nodiscard]] basics::Result<Change> tossed(const At& at, std::span<const Item> things, const std::string& reason);

/// Everything that is past its use-by goes to the bin. Refused where nothing is.
[[nodiscard]] basics::Result<Change> tossed_past(const At& at, const std::string& reason);

struct CountedItem {
    catalogue::IngredientId ingredient;
    std::optional<cookbook::DishId> dish;  ///< of kind cooked: only what was cooked as that
    Quantity quantity;
    std::optional<measure::Amount> pack;
};

/// A stocktake of one place: what is known there becomes what was counted, by entries found and lost. Whole packs go at
/// their true weights, oldest lot first; what is found more counts as old as the oldest lot, which is the stricter
/// guess. Where that lot is past its best and of no danger, all of it was bought since, and is a lot of today. What was
/// loose, or in other packs, and is counted in packs of a weight that was said is in those packs from then on. With
/// `all`, what is not named in that place is gone. Things that agree make no entry.
[[nodiscard]] basics::Result<Change> count(const At& at, stock::PlaceId place, std::span<const CountedItem> things,
                                           bool all);

struct Cooked {
    cookbook::DishId dish;
    Meal meal = Meal::dinner;
    std::int64_t serves = 0;                ///< cooked, in thousandths
    std::int64_t eaten = 0;                 ///< of them, at once, in thousandths
    std::int64_t freeze = 0;                ///< of them, as a ready meal, in thousandths
    stock::PlaceId leftovers;               ///< where what is neither eaten nor frozen goes
    std::optional<stock::PlaceId> freezer;  ///< needed where something is frozen
    std::vector<LineSwap> swaps;
    std::vector<Needed> used{};  ///< what really went in, of these; also of what the dish does not name
    bool ready_meal = false;     ///< nothing is cooked: serves of it that were frozen or left over are warmed
};

/// A dish is cooked. What takes() says for so many serves, serves apart among it, is eaten from the lots: thawed and
/// opened ones first, then first-expired first; frozen ones only where there is no other, with a note; none past its
/// use-by. Staples that are there are not counted; optional ingredients are eaten as far as there are any. Makes
/// leftovers and by-products, and a row of history.
[[nodiscard]] basics::Result<Change> cooked(const At& at, const Cooked& what);

/// A staple has run out, or is there again.
[[nodiscard]] basics::Result<Change> out(const At& at, catalogue::IngredientId staple, bool is_out);

/// Things come onto the shopping list, or off it by their words. What is there already is so many of it from now on,
/// where a number is said. Refused: taking off what is not there.
[[nodiscard]] Change list_add(const At& at, std::span<const Listed> things);
[[nodiscard]] basics::Result<Change> list_drop(const At& at, std::span<const std::string> words);

/// The plan over a span of days becomes this: rows outside the span are not allowed. `meal`: only rows of that meal.
[[nodiscard]] basics::Result<Change> set_plan(const At& at, const basics::Span& span, std::optional<Meal> meal,
                                              const Plan& rows, std::string command);

/// One meal becomes that dish.
[[nodiscard]] basics::Result<Change> set_meal(const At& at, const Planned& row);

/// A row of the plan is cooked with these in place of what its dish asks for, whatever it was cooked with before.
[[nodiscard]] Change set_swaps(const At& at, const Planned& row, std::vector<LineSwap> swaps);

/// The meals of two days change places.
[[nodiscard]] basics::Result<Change> swap_days(const At& at, basics::Day one, basics::Day other, Meal meal);

/// Past menus, as they are brought in: rows that are not yet in the history.
[[nodiscard]] Change remember(const At& at, std::span<const Had> meals);

/// What both changes do, one after the other, told in one line; `second` was computed from the kitchen after `first`.
[[nodiscard]] Change one_after_other(Change first, Change second);

/// The snapshot after the change, and the number of the next lot. What has nothing left is no longer in it. Facts of
/// kind pack are the store's and change nothing here.
void apply(Kitchen& kitchen, const Change& change);
[[nodiscard]] stock::LotNumber next_lot(const At& at, const Change& change);

/// "14 packs (7.3 kg)", "600 g", "3 serves", "some": what of a lot is left.
[[nodiscard]] std::string describe(const Kitchen& kitchen, const stock::Lot& lot);

/// "tasty cheese for cheddar"; of another amount of the same "500 g pork sausages"; of nothing "no celery".
[[nodiscard]] std::string describe(const Kitchen& kitchen, const LineSwap& swap);

/// All of them in one line; empty where there is none.
[[nodiscard]] std::string describe(const Kitchen& kitchen, std::span<const LineSwap> swaps);

/// "beef mince"; of leftovers "cold meat loaf", with the dish where it says more: "leftover stew (beef and barley
/// stew)".
[[nodiscard]] std::string label(const Kitchen& kitchen, catalogue::IngredientId ingredient,
                                std::optional<cookbook::DishId> dish);

}  // namespace samebase::kitchen
