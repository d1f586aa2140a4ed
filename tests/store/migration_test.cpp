// Files that released versions wrote are read by this one, and brought to its layout when they are written to.
#include <SQLiteCpp/SQLiteCpp.h>

#include <algorithm>

#include "store/workbench.hpp"
#include "support/chain.hpp"

using namespace samebase;
using namespace samebase::tests;
using store::Mode;
using store::Store;

namespace {

void restore(const std::string& released, const std::filesystem::path& file) {
    const std::string sql = bytes_of(std::filesystem::path(SAMEBASE_SOURCE_DIR) / "tests/store/released" / released);
    REQUIRE_FALSE(sql.empty());
    SQLite::Database db(file.string(), SQLite::OPEN_READWRITE | SQLite::OPEN_CREATE);
    db.exec(sql);
    db.exec("PRAGMA journal_mode = WAL");
}

}  // namespace

TEST_CASE("a kitchen that an older version wrote is read, checked and written on") {
    const std::string released_as = GENERATE("version_1.sql", "version_2.sql", "version_3.sql");
    const int commands = released_as == "version_1.sql" ? 30 : 60;
    INFO(released_as);
    const Folder folder;
    restore(released_as, folder.file());
    const std::string as_it_was = bytes_of(folder.file());
    {
        Store store = open(folder.file(), Mode::read);
        CHECK(expect(store.check()).commands == commands);
        CHECK_FALSE(state_of(store).lots.empty());
    }
    CHECK(bytes_of(folder.file()) == as_it_was);
    Store store = open(folder.file());
    const store::Document released = expect(store.export_all());
    CHECK(expect(next_of_chain(store)) == commands + 1);
    CHECK(expect(store.check()).commands == commands + 1);
    CHECK(after(expect(store.export_all()), commands) == released);
    while (const auto last = expect(store.to_undo())) {
        REQUIRE_FALSE(expect(store.undo(last->number, day("2026-12-01"))).stale);
    }
    CHECK(state_of(store).lots.empty());
    CHECK(state_of(store).plan.empty());
    expect(store.check());
}

TEST_CASE("what version 2 wrote holds meals with something in place of something") {
    const Folder folder;
    restore("version_2.sql", folder.file());
    Store store = open(folder.file(), Mode::read);
    const auto rows = expect(store.export_all()).plan;
    CHECK(std::count_if(rows.begin(), rows.end(), [](const auto& row) { return !row.swaps.empty(); }) >= 3);
}

TEST_CASE("the layouts are as they were released, and lead to the same one") {
    const Folder fresh;
    { Store store = open(fresh.file()); }
    const auto layout = [](const std::filesystem::path& file) {
        SQLite::Database db(file.string(), SQLite::OPEN_READONLY);
        SQLite::Statement query(db, "SELECT sql FROM sqlite_schema WHERE sql IS NOT NULL ORDER BY type, name");
        std::vector<std::string> statements;
        while (query.executeStep()) statements.push_back(query.getColumn(0).getString());
        return statements;
    };
    for (const char* released : {"version_1.sql", "version_2.sql", "version_3.sql"}) {
        const Folder older;
        restore(released, older.file());
        CHECK(layout(older.file()) != layout(fresh.file()));
        { Store store = open(older.file()); }
        CHECK(layout(older.file()) == layout(fresh.file()));
    }
}
