// The ledger's rows as JSON, in both directions: each kind of row names its fields once.
#pragma once

#include <cstdint>
#include <string>
#include <string_view>
#include <utility>

#include "store/rows.hpp"

namespace samebase::exchange::detail {

/// `io.need(key, value)` for what every row has, `io.maybe(key, value)` for what is left out where it is as in an empty
/// row.
template <class Io>
void walk(Io& io, store::CommandRow& row) {
    io.need("number", row.number);
    io.need("day", row.day);
    io.need("name", row.name);
    io.need("line", row.line);
    io.maybe("undoes", row.undoes);
}

template <class Io>
void walk(Io& io, store::LotRow& row) {
    io.need("number", row.number);
    io.need("ingredient", row.ingredient);
    io.maybe("dish", row.dish);
    io.need("arrived", row.arrived);
    io.need("dimension", row.dimension);
    io.maybe("also", row.also);
}

template <class Io>
void walk(Io& io, store::Standing& row) {
    io.need("place", row.place);
    io.need("amount", row.amount);
    io.maybe("rough", row.rough);
    io.maybe("packs", row.packs);
    io.maybe("part_of", row.part_of);
    io.need("state", row.state);
    io.need("since", row.since);
    io.maybe("opened_on", row.opened_on);
    io.maybe("thaw", row.thaw);
    io.maybe("thawed_on", row.thawed_on);
    io.maybe("printed_use_by", row.printed_use_by);
    io.maybe("use_by", row.use_by);
    io.maybe("best_by", row.best_by);
    io.maybe("paid", row.paid);
    io.maybe("paid_for", row.paid_for);
    io.maybe("note", row.note);
}

template <class Io>
void walk(Io& io, store::EntryRow& row) {
    io.need("number", row.number);
    io.need("command", row.command);
    io.need("kind", row.kind);
    io.need("column", row.column);
    io.need("day", row.day);
    io.need("lot", row.lot);
    io.need("place", row.place);
    io.need("delta", row.delta);
    io.maybe("reason", row.reason);
    io.maybe("undoes", row.undoes);
    io.need("after", row.after);
}

template <class Io>
void walk(Io& io, std::pair<std::string, std::int64_t>& use) {
    io.need("of", use.first);
    io.need("amount", use.second);
}

template <class Io>
void walk(Io& io, store::SwapRow& row) {
    io.need("of", row.of);
    io.need("serves", row.serves);
    io.need("use", row.use);
}

template <class Io>
void walk(Io& io, store::PlanRow& row) {
    io.need("number", row.number);
    io.need("command", row.command);
    io.need("adds", row.adds);
    io.need("day", row.day);
    io.need("meal", row.meal);
    io.need("dish", row.dish);
    io.maybe("ready_meal", row.ready_meal);
    io.maybe("serves", row.serves);
    io.maybe("left", row.left);
    io.maybe("swaps", row.swaps);
}

template <class Io>
void walk(Io& io, store::HistoryRow& row) {
    io.need("number", row.number);
    io.need("command", row.command);
    io.need("adds", row.adds);
    io.need("day", row.day);
    io.need("meal", row.meal);
    io.need("dish", row.dish);
}

template <class Io>
void walk(Io& io, store::FactRow& row) {
    io.need("number", row.number);
    io.need("command", row.command);
    io.need("adds", row.adds);
    io.need("kind", row.kind);
    io.need("ingredient", row.ingredient);
    io.maybe("amount", row.amount);
    io.maybe("minor", row.minor);
}

template <class Io>
void walk(Io& io, store::ListRow& row) {
    io.need("number", row.number);
    io.need("command", row.command);
    io.need("adds", row.adds);
    io.need("words", row.words);
    io.maybe("ingredient", row.ingredient);
    io.maybe("count", row.count);
}

template <class Io>
void walk(Io& io, store::DocumentRow& row) {
    io.need("number", row.number);
    io.need("command", row.command);
    io.need("path", row.path);
    io.maybe("was", row.was);
    io.maybe("becomes", row.becomes);
}

}  // namespace samebase::exchange::detail
