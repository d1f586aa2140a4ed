// Documents of the kitchen's folder that commands change: written with the ledger, landed after it, undone with it.
#include "kitchen/begin.hpp"
#include "store/workbench.hpp"

using namespace samebase;
using namespace samebase::tests;
using store::Mode;
using store::Store;

namespace {

const basics::Day today = day("2026-11-25");

/// "kitchen.json" becomes the text, whatever it was in the folder.
store::Written change(Store& store, const std::filesystem::path& folder, const std::string& text) {
    const LedgerWorld& world = ledger_world();
    kitchen::Change change;
    change.command = "household";
    change.day = today;
    change.line = "it is " + text;
    change.documents.push_back({"kitchen.json", bytes_of(folder / "kitchen.json"), text});
    return expect(store.write(change, *world.knowledge, world.household, expect(store.revision())));
}

void land(Store& store, const std::filesystem::path& folder) {
    expect(store.land([&](const store::DocumentRow& row) -> basics::Result<void> {
        write_bytes(folder / row.path, row.becomes.value_or(""));
        return {};
    }));
}

}  // namespace

TEST_CASE("a document that was written and not landed is landed by the next one, once") {
    const Folder folder;
    write_bytes(folder.path() / "kitchen.json", "old");
    {
        Store store = open(folder.file());
        REQUIRE(change(store, folder.path(), "new").command == 1);
    }
    CHECK(bytes_of(folder.path() / "kitchen.json") == "old");
    Store reader = open(folder.file(), Mode::read);
    const auto left = expect(reader.to_land());
    REQUIRE(left.size() == 1);
    CHECK(left.front().was == "old");
    CHECK(left.front().becomes == "new");
    Store store = open(folder.file());
    land(store, folder.path());
    CHECK(bytes_of(folder.path() / "kitchen.json") == "new");
    CHECK(expect(store.to_land()).empty());
    write_bytes(folder.path() / "kitchen.json", "by hand");
    land(store, folder.path());
    CHECK(bytes_of(folder.path() / "kitchen.json") == "by hand");
    expect(store.check());
}

TEST_CASE("a landing that fails is left to the next time") {
    const Folder folder;
    write_bytes(folder.path() / "kitchen.json", "old");
    Store store = open(folder.file());
    static_cast<void>(change(store, folder.path(), "new"));
    const auto landed = store.land([](const store::DocumentRow& row) -> basics::Result<void> {
        return basics::problem(row.path, "full", "room");
    });
    REQUIRE_FALSE(landed);
    CHECK(expect(store.to_land()).size() == 1);
}

TEST_CASE("whoever opened the kitchen before its household changed cannot write with the old one") {
    const Folder folder;
    write_bytes(folder.path() / "kitchen.json", "old");
    Store mine = open(folder.file());
    Store theirs = open(folder.file());
    static_cast<void>(change(theirs, folder.path(), "theirs"));
    land(theirs, folder.path());
    CHECK(change(mine, folder.path(), "mine").outdated);
    CHECK(expect(mine.revision()) == 1);
    Store anew = open(folder.file());
    CHECK_FALSE(change(anew, folder.path(), "mine").outdated);
    CHECK(expect(anew.revision()) == 2);
}

TEST_CASE("undo takes the document back, or makes of it what it is told") {
    const Folder folder;
    write_bytes(folder.path() / "kitchen.json", "a");
    Store store = open(folder.file());
    static_cast<void>(change(store, folder.path(), "b"));
    land(store, folder.path());
    static_cast<void>(change(store, folder.path(), "c"));
    land(store, folder.path());
    const auto undo = [&](const std::vector<kitchen::DocumentEdit>& documents) {
        const auto last = expect(store.to_undo());
        REQUIRE(last);
        REQUIRE_FALSE(expect(store.undo(last->number, today, documents)).stale);
        land(store, folder.path());
        return bytes_of(folder.path() / "kitchen.json");
    };
    CHECK(undo({}) == "b");
    CHECK(undo({{"kitchen.json", "b, and by hand", "a, and by hand"}}) == "a, and by hand");
    CHECK_FALSE(expect(store.to_undo()));
    const auto whole = expect(store.export_all());
    CHECK(whole.documents.size() == 4);
    expect(store.check());
    const Folder second;
    Store other = open(second.file());
    expect(other.import_all(whole));
    CHECK(expect(other.export_all()) == whole);
    CHECK(expect(other.to_land()).empty());
}

TEST_CASE("the day on which things came in is known until that is undone") {
    const LedgerWorld& world = ledger_world();
    const Folder folder;
    Store store = open(folder.file());
    CHECK_FALSE(state_of(store).shopped_on);
    const auto got = [&](basics::Day on, const std::string& command) {
        const kitchen::Got thing{world.ingredient("peas"), {{}, 2000, {}}, world.place("fridge"), {}, {}, {}, {}, ""};
        return expect(store::carry_out(store, world.knowledge, world.household, on,
                                       [&](const kitchen::At& at, const store::State&) {
                                           auto change = kitchen::got(at, {{thing}});
                                           if (change) change->command = command;
                                           return change;
                                       }));
    };
    static_cast<void>(got(today - basics::days{1}, std::string(kitchen::begin_command)));
    CHECK_FALSE(state_of(store).shopped_on);
    static_cast<void>(got(today, "got"));
    static_cast<void>(got(today + basics::days{3}, "list"));
    CHECK(state_of(store).shopped_on == today + basics::days{3});
    const auto last = expect(store.to_undo());
    REQUIRE_FALSE(expect(store.undo(last->number, today + basics::days{3})).stale);
    CHECK(state_of(store).shopped_on == today);
}

TEST_CASE("a place that the household no longer has is told once, with the one that it may have become") {
    const LedgerWorld& world = ledger_world();
    const Folder folder;
    Store store = open(folder.file());
    const auto fridge = world.place("fridge");
    for (int i = 0; i < 3; ++i) {
        const kitchen::Got thing{world.ingredient("peas"), {{}, 2000, {}}, fridge, {}, {}, {}, {}, ""};
        expect(
            store::carry_out(store, world.knowledge, world.household, today,
                             [&](const kitchen::At& at, const store::State&) { return kitchen::got(at, {{thing}}); }));
    }
    kitchen::Household renamed = world.household;
    for (std::uint32_t i = 0; i < renamed.places.size();) {
        const bool there = renamed.places[i].id == "fridge";
        there ? void(renamed.places[i++].id = "fridge-2") : void(renamed.places.erase(renamed.places.begin() + i));
    }
    const auto read = store.read(*world.knowledge, renamed);
    REQUIRE_FALSE(read);
    REQUIRE(read.error().size() == 1);
    CHECK(basics::to_text(read.error().front()) ==
          "kitchen.json, /places: there is no place 'fridge', and 3 lots are in it; expected a place of that id; the "
          "places are 'fridge-2'; if it is 'fridge-2' now, give that the id 'fridge' again: a place's name may change, "
          "its id stays");
}
