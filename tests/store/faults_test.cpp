// Every call that a command makes to the disk goes wrong once, in every way it can, for that call alone or from then
// on. Afterwards the kitchen opens, is sound, and holds the state before the command or the state after it.
#include "store/workbench.hpp"
#include "support/chain.hpp"
#include "support/faulty_disk.hpp"

using namespace samebase;
using namespace samebase::tests;
using store::Mode;
using store::Store;

namespace {

/// The files of a kitchen at rest, or as a killed process leaves them, with a log beside the file.
struct Files {
    std::string database;
    std::string log;
};

Files read_files(const std::filesystem::path& file) {
    return {bytes_of(file), bytes_of(file.string() + "-wal")};
}

void lay_out(const Files& files, const std::filesystem::path& file) {
    for (const auto& entry : std::filesystem::directory_iterator(file.parent_path()))
        std::filesystem::remove_all(entry);
    if (files.database.empty()) return;
    write_bytes(file, files.database);
    if (!files.log.empty()) write_bytes(file.string() + "-wal", files.log);
}

using Command = std::function<bool(const std::filesystem::path& file)>;  ///< true: it says that it is done

struct Tried {
    std::int64_t faults = 0;
    std::int64_t before = 0;
    std::int64_t after = 0;
};

/// All faults of one command.
void try_all(FaultyDisk& disk, const Files& files, const Command& command, const store::Document& before,
             const store::Document& after, Tried& tried) {
    const Folder folder("faults, всё");
    const auto file = folder.file();
    lay_out(files, file);
    disk.arm(0, Fault::error, false);
    REQUIRE(command(file));
    const std::int64_t calls = disk.calls();
    std::vector<std::pair<Fault, std::vector<std::int64_t>>> strikes;
    for (const Fault fault : {Fault::error, Fault::full, Fault::torn, Fault::short_read}) {
        std::vector<std::int64_t> places;  // where it can strike: a command makes the same calls every time
        for (std::int64_t at = 1; at <= calls; ++at) {
            if (disk.can_strike(at, fault)) places.push_back(at);
        }
        strikes.emplace_back(fault, std::move(places));
    }
    for (const auto& [fault, places] : strikes) {
        for (const bool lasting : {false, true}) {
            for (const std::int64_t at : places) {
                lay_out(files, file);
                disk.arm(at, fault, lasting);
                const bool done = command(file);
                const bool struck = disk.struck();
                disk.arm(0, Fault::error, false);
                if (!struck) continue;
                ++tried.faults;
                INFO("call " << at << " of " << calls << ", fault " << static_cast<int>(fault) << ", lasting "
                             << lasting);
                Store store = open(file);
                expect(store.check());
                const store::Document now = expect(store.export_all());
                const bool is_after = now == after;
                REQUIRE((is_after || now == before));
                if (done) REQUIRE(is_after);
                ++(is_after ? tried.after : tried.before);
            }
        }
    }
}

bool next_command(const std::filesystem::path& file) {
    auto store = Store::open(file, Mode::write);
    return store && next_of_chain(*store);
}

}  // namespace

TEST_CASE("a disk that fails at any call leaves the state before or after, never between") {
    FaultyDisk disk;
    Tried tried;
    const Folder folder;
    store::Document whole;
    constexpr stock::CommandNumber first = 17;
    constexpr stock::CommandNumber last = 20;
    std::vector<Files> at_rest(1);
    std::vector<Files> left_open(1);
    for (stock::CommandNumber number = 1; number <= last; ++number) {
        {
            Store store = open(folder.file());
            REQUIRE(expect(next_of_chain(store)) == number);
            left_open.push_back(read_files(folder.file()));
            whole = expect(store.export_all());
        }
        at_rest.push_back(read_files(folder.file()));
    }
    const auto at = [](std::vector<Files>& list, stock::CommandNumber n) { return list[static_cast<std::size_t>(n)]; };
    for (stock::CommandNumber number = first; number < last; ++number) {  // the last is an undo
        try_all(disk, at(at_rest, number), next_command, after(whole, number), after(whole, number + 1), tried);
    }
    for (stock::CommandNumber number = first; number < first + 1; ++number) {  // behind a process that was killed
        REQUIRE_FALSE(at(left_open, number).log.empty());
        try_all(disk, at(left_open, number), next_command, after(whole, number), after(whole, number + 1), tried);
    }
    try_all(disk, {}, next_command, {}, after(whole, 1), tried);  // the first command makes the file
    const auto import = [&](const std::filesystem::path& file) {
        auto store = Store::open(file, Mode::write);
        return store && store->import_all(whole);
    };
    try_all(disk, {}, import, {}, whole, tried);
    CHECK(tried.faults > 2'000);
    CHECK(tried.before > 100);
    CHECK(tried.after > 100);
    WARN("faults tried: " << tried.faults << ", state before " << tried.before << ", after " << tried.after);
}

TEST_CASE("a backup to a disk that fails is whole or not there") {
    FaultyDisk disk;
    const Folder folder;
    {
        Store store = open(folder.file());
        for (int i = 0; i < 20; ++i) expect(next_of_chain(store));
    }
    const auto copy = folder.path() / "backup";
    const auto back_up = [&] {
        auto store = Store::open(folder.file(), Mode::read);
        return store && store->backup(copy);
    };
    disk.arm(0, Fault::error, false);
    REQUIRE(back_up());
    const std::int64_t calls = disk.calls();
    const store::Document truth = [&] {
        Store store = open(copy, Mode::read);
        return expect(store.export_all());
    }();
    std::int64_t faults = 0;
    std::int64_t whole = 0;
    for (const Fault fault : {Fault::error, Fault::full, Fault::torn}) {
        for (std::int64_t at = 1; at <= calls; ++at) {
            std::filesystem::remove(copy);
            disk.arm(at, fault, at % 2 == 0);
            const bool done = back_up();
            const bool struck = disk.struck();
            disk.arm(0, Fault::error, false);
            if (!struck) continue;
            ++faults;
            INFO("call " << at << ", fault " << static_cast<int>(fault));
            if (done) REQUIRE(std::filesystem::exists(copy));
            if (!std::filesystem::exists(copy)) continue;
            ++whole;
            Store store = open(copy, Mode::read);
            expect(store.check());
            REQUIRE(expect(store.export_all()) == truth);
        }
    }
    CHECK(faults > 100);
    WARN("faults tried on backups: " << faults << ", whole all the same " << whole);
}
