// Files that are not sound are left as they are, and said to be so.
#include <SQLiteCpp/SQLiteCpp.h>

#include "store/workbench.hpp"
#include "support/faulty_disk.hpp"

using namespace samebase;
using namespace samebase::tests;
using store::Mode;
using store::Store;

namespace {

const basics::Day today = day("2026-11-25");
const std::string restore = "; restore a backup: keep this file under another name, then copy the backup to its place";

/// A kitchen with a few dozen commands in it, closed.
std::string sound_bytes() {
    const Folder folder;
    {
        Store store = open(folder.file());
        for (std::uint64_t seed = 0; seed < 60; ++seed) run(store, today, seed);
    }
    return bytes_of(folder.file());
}

/// What opening such a file says, to read and to write; it stays as it is, and nothing appears beside it.
std::string refused(const std::string& bytes) {
    const Folder folder;
    write_bytes(folder.file(), bytes);
    const std::string reading = problem_of(Store::open(folder.file(), Mode::read));
    const std::string writing = problem_of(Store::open(folder.file(), Mode::write));
    CHECK(reading == writing);
    CHECK(bytes_of(folder.file()) == bytes);
    return reading.substr(reading.find("kitchen.db") + 10);
}

}  // namespace

TEST_CASE("another program's database is left alone") {
    const Folder folder;
    SQLite::Database(folder.file().string(), SQLite::OPEN_READWRITE | SQLite::OPEN_CREATE).exec("CREATE TABLE t (x)");
    CHECK(refused(bytes_of(folder.file())) ==
          ": is the database of another program; expected a kitchen database" + restore);
}

TEST_CASE("what is no database is left alone") {
    CHECK(refused(std::string(500, 'x')) == ": is no kitchen database; expected a kitchen database" + restore);
    CHECK(refused("") == ": is damaged: it has only 0 bytes; expected a sound kitchen database" + restore);
    CHECK(refused("SQLite format 3") ==
          ": is damaged: it has only 15 bytes; expected a sound kitchen database" + restore);
}

TEST_CASE("a newer layout is refused and left alone") {
    std::string bytes = sound_bytes();
    bytes[63] = static_cast<char>(store::layout_version + 1);
    CHECK(refused(bytes) ==
          ": was written by a newer samebase: its layout is version 5; expected version 4 or older; use the newer "
          "samebase; nothing was changed");
}

TEST_CASE("a truncated file is refused and left alone, wherever it ends") {
    const std::string bytes = sound_bytes();
    Dice dice(7);
    std::int64_t tried = 0;
    for (std::size_t size = 0; size < bytes.size(); size += static_cast<std::size_t>(dice.roll(3000)) + 1) {
        const std::string text = refused(bytes.substr(0, size));
        CHECK(text.find("is damaged") != std::string::npos);
        ++tried;
    }
    CHECK(tried > 50);
    WARN("truncations tried: " << tried);
}

TEST_CASE("a flipped byte is either told and the file left alone, or changes nothing that is said") {
    const FaultyDisk fast;
    const std::string bytes = sound_bytes();
    store::Document truth;
    store::State state;
    {
        const Folder folder;
        write_bytes(folder.file(), bytes);
        Store store = open(folder.file(), Mode::read);
        truth = expect(store.export_all());
        state = state_of(store);
    }
    Dice dice(11);
    const Folder folder;
    int told = 0;
    int harmless = 0;
    for (int i = 0; i < 1500; ++i) {
        std::string flipped = bytes;
        const auto at =
            static_cast<std::size_t>(dice.roll(static_cast<std::int64_t>(i % 3 == 0 ? 4096 : bytes.size())));
        flipped[at] = static_cast<char>(flipped[at] ^ static_cast<char>(1 + dice.roll(255)));
        write_bytes(folder.file(), flipped);
        auto store = Store::open(folder.file(), Mode::read);
        bool sound = store.has_value() && store->check().has_value();
        if (sound) {
            // Nothing was noticed: then nothing is different.
            INFO("byte " << at);
            CHECK(expect(store->export_all()) == truth);
            CHECK(state_of(*store).lots == state.lots);
            CHECK(state_of(*store).plan == state.plan);
            CHECK(state_of(*store).history == state.history);
            ++harmless;
        } else {
            ++told;
        }
        store = basics::problem("", "", "");  // closes it
        REQUIRE(bytes_of(folder.file()) == flipped);
    }
    CHECK(told > 200);
    WARN("flips told: " << told << ", without effect: " << harmless);
}
