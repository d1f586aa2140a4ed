#include "support/chain.hpp"

#include <algorithm>

#include "support/ledger_world.hpp"
#include "support/random_commands.hpp"

namespace samebase::tests {

basics::Result<stock::CommandNumber> next_of_chain(store::Store& store) {
    const LedgerWorld& world = ledger_world();
    const auto revision = store.revision();
    if (!revision) return tl::make_unexpected(revision.error());
    const basics::Day today = day("2026-01-01") + basics::days{*revision / 6};
    if (*revision % 10 == 9) {
        const auto last = store.to_undo();
        if (!last) return tl::make_unexpected(last.error());
        const auto undone = store.undo((*last)->number, today);
        if (!undone) return tl::make_unexpected(undone.error());
        return undone->command;
    }
    for (std::uint64_t attempt = 0;; ++attempt) {
        bool refused = false;
        const auto seed = static_cast<std::uint64_t>(*revision) * 1'000 + attempt;
        const auto done = store::carry_out(store, world.knowledge, world.household, today,
                                           [&](const kitchen::At& at, const store::State&) {
                                               auto change = random_command(at, seed);
                                               refused = !change.has_value();
                                               return change;
                                           });
        if (!done && !refused) return tl::make_unexpected(done.error());
        if (done && done->written.command != 0) return done->written.command;
    }
}

store::Document after(const store::Document& whole, stock::CommandNumber commands) {
    store::Document part = whole;
    const auto later = [&](const auto& row) { return row.command > commands; };
    std::erase_if(part.commands, [&](const auto& row) { return row.number > commands; });
    std::erase_if(part.entries, later);
    std::erase_if(part.plan, later);
    std::erase_if(part.history, later);
    std::erase_if(part.facts, later);
    std::erase_if(part.documents, later);
    std::erase_if(part.list, later);
    stock::LotNumber last_lot = 0;
    for (const auto& entry : part.entries) last_lot = std::max(last_lot, entry.lot);
    std::erase_if(part.lots, [&](const auto& row) { return row.number > last_lot; });
    return part;
}

}  // namespace samebase::tests
