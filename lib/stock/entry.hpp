// Entries of the ledger: stock changes only by these, and they are only ever added. A lot's amount is the sum of its
// entries' deltas; everything else of it is as its last entry says.
#pragma once

#include <cstdint>
#include <optional>
#include <span>
#include <string>
#include <string_view>
#include <vector>

#include "basics/day.hpp"
#include "stock/lot.hpp"

namespace samebase::stock {

using CommandNumber = std::int64_t;
using EntryNumber = std::int64_t;

enum class Kind : std::uint8_t { got, moved, thawing, opened, cooked, eaten, tossed, found, lost, undone };

/// Where an entry counts in a statement of movements. An undo counts back in the column of what it undoes, so that what
/// it undoes vanishes from the sums; `none` is for entries that change no amount.
enum class Column : std::uint8_t { none, in, moved_in, found, used, tossed, lost, moved_out };

[[nodiscard]] std::string_view name(Kind kind);
[[nodiscard]] std::optional<Kind> read_kind(std::string_view text);
[[nodiscard]] std::string_view name(Column column);  ///< "moved-in"
[[nodiscard]] std::optional<Column> read_column(std::string_view text);

/// The column adds what comes in (in, moved in, found); the others add what goes out.
[[nodiscard]] constexpr bool comes_in(Column column) {
    return column == Column::in || column == Column::moved_in || column == Column::found;
}

struct Entry {
    EntryNumber number = 0;     ///< 0 until it is written
    CommandNumber command = 0;  ///< 0 until it is written
    Kind kind = Kind::got;
    Column column = Column::none;
    basics::Day day;
    PlaceId place;           ///< where the change happens
    std::int64_t delta = 0;  ///< in the ingredient's own dimension
    std::string reason;      ///< why it was tossed, what was counted, or ""
    std::optional<EntryNumber> undoes;
    Lot after;  ///< the lot as it stands after this entry, its amount included

    friend bool operator==(const Entry&, const Entry&) = default;
};

/// What happened to one ingredient in one place, or in all, over a span of days. Of whatever entries it is made,
/// opening + in + moved in + found = used + tossed + lost + moved out + closing, exactly.
struct Movements {
    std::int64_t opening = 0;
    std::int64_t in = 0;
    std::int64_t moved_in = 0;
    std::int64_t found = 0;
    std::int64_t used = 0;
    std::int64_t tossed = 0;
    std::int64_t lost = 0;
    std::int64_t moved_out = 0;
    std::int64_t closing = 0;

    void count(Column column, std::int64_t delta);
    [[nodiscard]] bool balanced() const;
    Movements& operator+=(const Movements& other);
    friend bool operator==(const Movements&, const Movements&) = default;
};

/// Over the entries of that ingredient, in that place or in all. Linear in the entries.
[[nodiscard]] Movements movements(std::span<const Entry> entries, catalogue::IngredientId ingredient,
                                  std::optional<PlaceId> place, const basics::Span& span);

/// The lots that these entries make, in the order of their numbers, those with nothing left included. Entries stand in
/// the order of their numbers. Nothing, with the reason, where an entry's lot does not follow from those before it.
[[nodiscard]] tl::expected<std::vector<Lot>, std::string> lots_of(std::span<const Entry> entries);

}  // namespace samebase::stock
