// Runs commands on a kitchen, for tests that kill it or run it beside another.
//
//   store_driver chain FILE COUNT         the chain of commands: which one comes next follows from the ledger's
//   revision store_driver chain-synced FILE COUNT  the same, and waits for the disk after each store_driver crowd FILE
//   COUNT SEED    so many commands of its own, whatever others write
//
// Prints the number of each command as soon as it is written. Exit 1 with the Problem where one comes up.
#include <cstdio>
#include <cstdlib>
#include <cstring>
#include <optional>

#include "store/store.hpp"
#include "support/chain.hpp"
#include "support/faulty_disk.hpp"
#include "support/ledger_world.hpp"
#include "support/random_commands.hpp"

using namespace samebase;

namespace {

int failed(const basics::Problems& problems) {
    for (const auto& problem : problems) std::fprintf(stderr, "%s\n", basics::to_text(problem).c_str());
    return 1;
}

void tell(stock::CommandNumber number) {
    std::printf("%lld\n", static_cast<long long>(number));
    std::fflush(stdout);
}

int chain(store::Store& store, long count) {
    for (long i = 0; i < count; ++i) {
        const auto number = tests::next_of_chain(store);
        if (!number) return failed(number.error());
        tell(*number);
    }
    return 0;
}

int crowd(store::Store& store, long count, std::uint64_t seed) {
    const tests::LedgerWorld& world = tests::ledger_world();
    for (long written = 0; written < count; ++seed) {
        bool refused = false;
        const auto done = store::carry_out(store, world.knowledge, world.household, tests::day("2026-11-25"),
                                           [&](const kitchen::At& at, const store::State&) {
                                               auto change = tests::random_command(at, seed);
                                               refused = !change.has_value();
                                               return change;
                                           });
        if (!done && !refused) return failed(done.error());
        if (!done || done->written.command == 0) continue;
        tell(done->written.command);
        ++written;
    }
    return 0;
}

}  // namespace

int main(int argc, char** argv) {
    if (argc < 4) return 2;
    std::optional<tests::FaultyDisk> fast;
    if (std::strcmp(argv[1], "chain-synced") != 0) fast.emplace();
    auto store = store::Store::open(argv[2], store::Mode::write);
    if (!store) return failed(store.error());
    const long count = std::atol(argv[3]);
    if (std::strncmp(argv[1], "chain", 5) == 0) return chain(*store, count);
    return crowd(*store, count, argc > 4 ? std::strtoull(argv[4], nullptr, 10) : 0);
}
