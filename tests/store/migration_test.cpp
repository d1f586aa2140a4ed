// Files that released versions wrote are read by this one, and brought to its layout when they are written to.
#include <SQLiteCpp/SQLiteCpp.h>

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
    SQLite::Database(file.string(), SQLite::OPEN_READWRITE | SQLite::OPEN_CREATE).exec(sql);
}

}  // namespace

TEST_CASE("a kitchen that version 1 wrote is read, checked and written on") {
    const Folder folder;
    restore("version_1.sql", folder.file());
    {
        Store store = open(folder.file(), Mode::read);
        CHECK(expect(store.check()).commands == 30);
        CHECK_FALSE(state_of(store).lots.empty());
    }
    Store store = open(folder.file());
    const store::Document released = expect(store.export_all());
    CHECK(expect(next_of_chain(store)) == 31);
    CHECK(expect(store.check()).commands == 31);
    CHECK(after(expect(store.export_all()), 30) == released);
    while (const auto last = expect(store.to_undo())) {
        REQUIRE_FALSE(expect(store.undo(last->number, day("2026-12-01"))).stale);
    }
    CHECK(state_of(store).lots.empty());
    CHECK(state_of(store).plan.empty());
    expect(store.check());
}

TEST_CASE("the layout of version 1 is as it was released") {
    const Folder released;
    const Folder fresh;
    restore("version_1.sql", released.file());
    { Store store = open(fresh.file()); }
    const auto layout = [](const std::filesystem::path& file) {
        SQLite::Database db(file.string(), SQLite::OPEN_READONLY);
        SQLite::Statement query(db, "SELECT sql FROM sqlite_schema WHERE sql IS NOT NULL ORDER BY type, name");
        std::vector<std::string> statements;
        while (query.executeStep()) statements.push_back(query.getColumn(0).getString());
        return statements;
    };
    CHECK(layout(released.file()) == layout(fresh.file()));
}
