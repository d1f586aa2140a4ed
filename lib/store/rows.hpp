// The rows of a kitchen's ledger as they are stored: things are named by identifier, so that a document can be written
// and read without the catalogue. A Document is all of them; from it everything else follows.
#pragma once

#include <cstdint>
#include <optional>
#include <string>
#include <vector>

#include "basics/day.hpp"
#include "kitchen/changes.hpp"
#include "kitchen/household.hpp"
#include "measure/amount.hpp"
#include "measure/written.hpp"
#include "stock/entry.hpp"

namespace samebase::store {

/// The number of the last command; 0 in an empty ledger. It grows with every change.
using Revision = std::int64_t;

struct CommandRow {
    stock::CommandNumber number = 0;
    basics::Day day;
    std::string name;  ///< "got"
    std::string line;  ///< what it did, for the cook
    std::optional<stock::CommandNumber> undoes;

    friend bool operator==(const CommandRow&, const CommandRow&) = default;
};

/// What never changes of a lot.
struct LotRow {
    stock::LotNumber number = 0;
    std::string ingredient;
    std::optional<std::string> dish;
    basics::Day arrived;
    measure::Dimension dimension = measure::Dimension::mass;
    std::vector<std::string> also{};  ///< allergens

    friend bool operator==(const LotRow&, const LotRow&) = default;
};

/// What changes of a lot: how it stands after an entry. As in stock::Lot.
struct Standing {
    std::string place;
    std::int64_t amount = 0;
    std::optional<measure::Rough> rough;
    std::vector<std::int64_t> packs;
    std::int64_t part_of = 0;
    stock::State state = stock::State::fresh;
    basics::Day since;
    std::optional<basics::Day> opened_on;
    std::optional<stock::ThawMethod> thaw;
    std::optional<basics::Day> thawed_on;
    std::optional<basics::Day> printed_use_by;
    std::optional<basics::Day> use_by;
    std::optional<basics::Day> best_by;
    std::optional<std::int64_t> paid;
    std::int64_t paid_for = 0;
    std::string note;

    friend bool operator==(const Standing&, const Standing&) = default;
};

struct EntryRow {
    stock::EntryNumber number = 0;
    stock::CommandNumber command = 0;
    stock::Kind kind = stock::Kind::got;
    stock::Column column = stock::Column::none;
    basics::Day day;
    stock::LotNumber lot = 0;
    std::string place;  ///< where the change happens
    std::int64_t delta = 0;
    std::string reason;
    std::optional<stock::EntryNumber> undoes;
    Standing after;

    friend bool operator==(const EntryRow&, const EntryRow&) = default;
};

/// What is cooked in place of an ingredient of a dish, for so many serves in thousandths.
struct SwapRow {
    std::string of;
    std::int64_t serves = 0;
    std::vector<std::pair<std::string, std::int64_t>> use;  ///< ingredients and amounts

    friend bool operator==(const SwapRow&, const SwapRow&) = default;
};

/// Something appears (`adds`) or goes away. What goes away is written as it was.
struct PlanRow {
    std::int64_t number = 0;
    stock::CommandNumber command = 0;
    bool adds = true;
    basics::Day day;
    kitchen::Meal meal = kitchen::Meal::dinner;
    std::string dish;
    bool ready_meal = false;
    std::optional<std::int64_t> serves;
    std::int64_t left = 0;
    std::vector<SwapRow> swaps{};

    friend bool operator==(const PlanRow&, const PlanRow&) = default;
};

struct HistoryRow {
    std::int64_t number = 0;
    stock::CommandNumber command = 0;
    bool adds = true;
    basics::Day day;
    kitchen::Meal meal = kitchen::Meal::dinner;
    std::string dish;

    friend bool operator==(const HistoryRow&, const HistoryRow&) = default;
};

struct FactRow {
    std::int64_t number = 0;
    stock::CommandNumber command = 0;
    bool adds = true;
    kitchen::Fact::Kind kind = kitchen::Fact::Kind::out;
    std::string ingredient;
    std::int64_t amount = 0;
    std::int64_t minor = 0;

    friend bool operator==(const FactRow&, const FactRow&) = default;
};

/// What was put on the shopping list by hand, or goes off it as it was.
struct ListRow {
    std::int64_t number = 0;
    stock::CommandNumber command = 0;
    bool adds = true;
    std::string words;
    std::optional<std::string> ingredient;
    std::int64_t count = 0;

    friend bool operator==(const ListRow&, const ListRow&) = default;
};

/// A document of the kitchen's folder that a command changed: whole texts; nothing where there is no such file.
struct DocumentRow {
    std::int64_t number = 0;
    stock::CommandNumber command = 0;
    std::string path;
    std::optional<std::string> was;
    std::optional<std::string> becomes;

    friend bool operator==(const DocumentRow&, const DocumentRow&) = default;
};

/// Everything that ever happened, each list in the order of its numbers, which run from 1 without a gap; lots in the
/// order of theirs. The rows of one command stand together, and the commands in their order.
struct Document {
    std::vector<CommandRow> commands;
    std::vector<LotRow> lots;
    std::vector<EntryRow> entries;
    std::vector<PlanRow> plan;
    std::vector<HistoryRow> history;
    std::vector<FactRow> facts;
    std::vector<DocumentRow> documents{};
    std::vector<ListRow> list{};

    friend bool operator==(const Document&, const Document&) = default;
};

/// "out", "pack", "price".
[[nodiscard]] std::string_view name(kitchen::Fact::Kind kind);
[[nodiscard]] std::optional<kitchen::Fact::Kind> read_fact_kind(std::string_view text);
/// "mass", "volume", "pieces".
[[nodiscard]] std::string_view name(measure::Dimension dimension);
[[nodiscard]] std::optional<measure::Dimension> read_dimension(std::string_view text);
[[nodiscard]] std::optional<measure::Rough> read_rough(std::string_view text);

}  // namespace samebase::store
