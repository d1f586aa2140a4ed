// Twenty-five years of menus and entries: the ledger stays sound and whole.
#include <chrono>

#include "store/workbench.hpp"
#include "support/faulty_disk.hpp"
#include "support/history_generator.hpp"

using namespace samebase;
using namespace samebase::tests;
using store::Mode;
using store::Store;

TEST_CASE("twenty-five years are kept, checked, exported and undone like a week") {
    const FaultyDisk fast;
    const basics::Day today = day("2026-11-25");
    const store::Document past = generate({25, 1, today});
    CHECK(past.entries.size() > 90'000);
    CHECK(past.entries.size() < 140'000);
    CHECK(past.history.size() > 8'500);
    CHECK(generate({1, 7, today}) == generate({1, 7, today}));
    CHECK_FALSE(generate({1, 7, today}) == generate({1, 8, today}));

    const Folder folder;
    Store store = open(folder.file());
    expect(store.import_all(past));
    CHECK(expect(store.check()).entries == static_cast<std::int64_t>(past.entries.size()));
    CHECK(expect(store.export_all()) == past);
    const store::State state = state_of(store);
    CHECK(state.lots.size() < 100);
    CHECK(state.history.size() == past.history.size());
    for (const basics::Span& span :
         {basics::Span{day("2003-01-01"), day("2003-12-31")}, basics::Span{today - basics::days{31}, today}}) {
        const auto rows = expect(store.movements(span));
        CHECK(rows.size() > 10);
        for (const store::Moved& row : rows) CHECK(row.sums.balanced());
    }
    const auto last = expect(store.to_undo());
    REQUIRE(last);
    CHECK_FALSE(expect(store.undo(last->number, today)).stale);
    expect(store.check());
}
