#include "stock/entry.hpp"

#include <fmt/format.h>

#include <array>
#include <map>
#include <utility>

#include "basics/exact.hpp"

namespace samebase::stock {

namespace {

constexpr std::array<std::string_view, 10> kinds{"got",   "moved",  "thawing", "opened", "cooked",
                                                 "eaten", "tossed", "found",   "lost",   "undone"};
constexpr std::array<std::string_view, 8> columns{"none", "in",     "moved-in", "found",
                                                  "used", "tossed", "lost",     "moved-out"};

template <class Enum, std::size_t N>
std::optional<Enum> read(const std::array<std::string_view, N>& names, std::string_view text) {
    for (std::size_t i = 0; i < N; ++i) {
        if (names[i] == text) return static_cast<Enum>(i);
    }
    return std::nullopt;
}

}  // namespace

std::string_view name(Kind kind) {
    return kinds[static_cast<std::size_t>(kind)];
}

std::optional<Kind> read_kind(std::string_view text) {
    return read<Kind>(kinds, text);
}

std::string_view name(Column column) {
    return columns[static_cast<std::size_t>(column)];
}

std::optional<Column> read_column(std::string_view text) {
    return read<Column>(columns, text);
}

void Movements::count(Column column, std::int64_t delta) {
    const std::array<std::int64_t*, 8> sums{nullptr, &in, &moved_in, &found, &used, &tossed, &lost, &moved_out};
    std::int64_t* sum = sums[static_cast<std::size_t>(column)];
    if (sum != nullptr) *sum += comes_in(column) ? delta : -delta;
}

bool Movements::balanced() const {
    return opening + in + moved_in + found == used + tossed + lost + moved_out + closing;
}

Movements& Movements::operator+=(const Movements& other) {
    opening += other.opening;
    in += other.in;
    moved_in += other.moved_in;
    found += other.found;
    used += other.used;
    tossed += other.tossed;
    lost += other.lost;
    moved_out += other.moved_out;
    closing += other.closing;
    return *this;
}

Movements movements(std::span<const Entry> entries, catalogue::IngredientId ingredient, std::optional<PlaceId> place,
                    const basics::Span& span) {
    Movements sums;
    for (const Entry& entry : entries) {
        if (entry.after.ingredient != ingredient || (place && entry.place != *place)) continue;
        if (entry.day < span.first) sums.opening += entry.delta;
        if (entry.day <= span.last) sums.closing += entry.delta;
        if (span.contains(entry.day)) sums.count(entry.column, entry.delta);
    }
    return sums;
}

tl::expected<std::vector<Lot>, std::string> lots_of(std::span<const Entry> entries) {
    std::map<LotNumber, Lot> lots;
    for (const Entry& entry : entries) {
        const auto found = lots.find(entry.after.number);
        const std::int64_t before = found == lots.end() ? 0 : found->second.amount.value();
        const auto amount = basics::add(before, entry.delta);
        if (!amount || *amount != entry.after.amount.value() || *amount < 0) {
            return tl::make_unexpected(fmt::format("entry {}: lot {} does not follow from what was there before",
                                                   entry.number, entry.after.number));
        }
        if (found == lots.end()) {
            lots.emplace(entry.after.number, entry.after);
        } else {
            found->second = entry.after;
        }
    }
    std::vector<Lot> result;
    result.reserve(lots.size());
    for (auto& [number, lot] : lots) result.push_back(std::move(lot));
    return result;
}

}  // namespace samebase::stock
