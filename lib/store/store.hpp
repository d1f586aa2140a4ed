// The store: a kitchen's ledger, plan, history and facts in one SQLite file. A command is written whole or not at all,
// and what is written is never changed or deleted: an undo is written after what it undoes. Several processes may use
// one file at once; they wait for each other, and nobody writes what was computed from a snapshot that is no longer the
// newest.
//
// A command can change documents of the kitchen's folder too (kitchen.json). The new text is written here with the
// command, and then landed: put in its place in the folder. Whoever is stopped in between leaves the landing to the
// next one who opens the kitchen, so that a document and the ledger always tell the same.
//
// Errors are Problems whose `where` is the file. A file that is damaged, of another program, or of a newer version is
// left as it is. A Store is for one thread.
#pragma once

#include <filesystem>
#include <functional>
#include <memory>
#include <optional>
#include <string>
#include <vector>

#include "basics/problem.hpp"
#include "kitchen/changes.hpp"
#include "kitchen/kitchen.hpp"
#include "stock/entry.hpp"
#include "store/rows.hpp"

namespace samebase::store {

/// The present version of the file's layout.
inline constexpr int layout_version = 4;

/// The file in a kitchen's folder.
[[nodiscard]] std::filesystem::path file_in(const std::filesystem::path& kitchen_folder);

enum class Mode : std::uint8_t {
    read,   ///< never writes; where there is no file yet, an empty ledger; works in a folder that cannot be written
    write,  ///< makes the file where there is none
};

/// What a snapshot takes from the store.
struct State {
    Revision revision = 0;
    stock::LotNumber next_lot = 1;
    /// The first day whose standing uses have not been entered: that of the newest command, or the day after it where
    /// that command entered them. Nothing in an empty ledger.
    std::optional<basics::Day> uses_from;
    std::vector<stock::Lot> lots;  ///< with something left, in the order of numbers
    kitchen::Plan plan;
    std::vector<kitchen::Had> history;
    std::vector<kitchen::Fact> facts;
    std::vector<kitchen::Listed> listed;    ///< in the order of words
    std::optional<basics::Day> shopped_on;  ///< the last day on which bought things came in (`got`)
    std::vector<std::string>
        forgotten;  ///< dishes of plan and history that the cookbook no longer has, each once, sorted
};

/// How much of the past a command looks at: of plan and history only what is of that day and later; nothing for all.
struct Since {
    std::optional<basics::Day> plan;
    std::optional<basics::Day> history;
};

/// What was written.
struct Written {
    bool stale = false;     ///< nothing was written: the ledger has moved on since `from`
    bool outdated = false;  ///< nothing was written: a document of the folder was changed since the store was opened
    stock::CommandNumber command = 0;
    std::vector<stock::Entry> entries;  ///< with their numbers
};

/// A command of the log, and whether it was undone since.
struct Logged {
    CommandRow command;
    std::optional<stock::CommandNumber> undone_by;
};

/// What happened to one ingredient in one place. See stock::Movements.
struct Moved {
    std::string ingredient;
    std::string place;
    stock::Movements sums;
};

struct Checked {
    std::int64_t commands = 0;
    std::int64_t lots = 0;
    std::int64_t entries = 0;
};

class Store {
  public:
    [[nodiscard]] static basics::Result<Store> open(const std::filesystem::path& file, Mode mode);
    Store(Store&&) noexcept;
    Store& operator=(Store&&) noexcept;
    ~Store();

    /// In constant time.
    [[nodiscard]] basics::Result<Revision> revision();

    /// One consistent state. Linear in what is left, the plan and the history, whatever the length of the ledger. A
    /// Problem where a lot is of an ingredient or in a place that is no longer known. Of the plan only what is planned
    /// for `from` and later.
    [[nodiscard]] basics::Result<State> read(const kitchen::Knowledge& knowledge, const kitchen::Household& household,
                                             const Since& since = {});

    /// Writes a change that was computed from the state of that revision, with the documents of the folder as they were
    /// when the store was opened. Documents are to be landed after it.
    [[nodiscard]] basics::Result<Written> write(const kitchen::Change& change, const kitchen::Knowledge& knowledge,
                                                const kitchen::Household& household, Revision from);

    /// The command that the next undo undoes; nothing where there is none left.
    [[nodiscard]] basics::Result<std::optional<CommandRow>> to_undo();
    /// Its entries, oldest first.
    [[nodiscard]] basics::Result<std::vector<EntryRow>> entries_of(stock::CommandNumber command);
    /// The documents that it changed.
    [[nodiscard]] basics::Result<std::vector<DocumentRow>> documents_of(stock::CommandNumber command);
    /// Undoes that command; stale where it is no longer the one that the next undo undoes. `documents` are what its
    /// documents become where that is not what they were before it (somebody edited them by hand since).
    [[nodiscard]] basics::Result<Written> undo(stock::CommandNumber command, basics::Day today,
                                               const std::vector<kitchen::DocumentEdit>& documents = {});

    /// Documents that were written here and are not known to be in their place, oldest first.
    [[nodiscard]] basics::Result<std::vector<DocumentRow>> to_land();
    /// Calls `put` for each of them, while nobody else writes or lands. It puts the text in its place, or takes the
    /// file away where the text is nothing; a Problem of it leaves the rest to the next time.
    [[nodiscard]] basics::Result<void> land(const std::function<basics::Result<void>(const DocumentRow&)>& put);

    /// The newest commands, newest first.
    [[nodiscard]] basics::Result<std::vector<Logged>> log(int limit);

    /// Every ingredient and place that had anything or to which anything happened, in that order.
    [[nodiscard]] basics::Result<std::vector<Moved>> movements(const basics::Span& span);

    /// Is the file sound, and does everything follow from the entries? Any change made to what is stored by other means
    /// than this is found: every command carries a seal over its rows and the seal before.
    [[nodiscard]] basics::Result<Checked> check();

    /// A copy of the present state in a new file, while others write.
    [[nodiscard]] basics::Result<void> backup(const std::filesystem::path& file);

    [[nodiscard]] basics::Result<Document> export_all();
    /// Into an empty ledger only; whole or not at all. export_all() then gives the same document.
    [[nodiscard]] basics::Result<void> import_all(const Document& document);

  private:
    struct Open;
    explicit Store(std::unique_ptr<Open> open);
    std::unique_ptr<Open> open_;
};

/// The snapshot of that state: the household with what the facts say of staples and prices.
[[nodiscard]] kitchen::Kitchen kitchen_of(std::shared_ptr<const kitchen::Knowledge> knowledge,
                                          kitchen::Household household, State state);

/// The weight of a pack that the household remembers.
[[nodiscard]] std::optional<measure::Amount> remembered_pack(const State& state, const catalogue::Catalogue& catalogue,
                                                             catalogue::IngredientId ingredient);

/// What a command did: the snapshot before, the change, and what was written.
struct Done {
    kitchen::Kitchen before;
    kitchen::Change change;
    Written written;
};

using Compute = std::function<basics::Result<kitchen::Change>(const kitchen::At& at, const State& facts)>;

/// The snapshot as of that day: standing uses of the days since the newest command have been eaten. `next_lot` counts
/// the lots that this makes.
struct Present {
    kitchen::Kitchen kitchen;
    stock::LotNumber next_lot = 1;
    std::vector<kitchen::Change> standing;  ///< in the order of days, not yet written
};
[[nodiscard]] Present present(std::shared_ptr<const kitchen::Knowledge> knowledge, kitchen::Household household,
                              State state, basics::Day day);

/// Reads, computes and writes, again from the start whenever somebody else wrote in between; where that was a document
/// of the folder, it ends with written.outdated, and the caller has to open everything anew. Standing uses of days that
/// have passed are written before it, each as a command of its own. A change that is empty is not written, and nor are
/// they then. `facts` is the state with lots, plan and history moved out of it into at.kitchen.
[[nodiscard]] basics::Result<Done> carry_out(Store& store, const std::shared_ptr<const kitchen::Knowledge>& knowledge,
                                             const kitchen::Household& household, basics::Day day,
                                             const Compute& compute, const Since& since = {});

}  // namespace samebase::store
