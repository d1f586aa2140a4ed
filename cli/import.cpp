// samebase import FILE: a whole kitchen into an empty folder, or stock from CSV into a kitchen that has none;
// import recipe FILE has a file of its own.
#include <fmt/format.h>
#include <unistd.h>

#include <nlohmann/json.hpp>

#include "exchange/file.hpp"
#include "exchange/household.hpp"
#include "exchange/knowledge.hpp"
#include "exchange/stock_csv.hpp"
#include "exchange/whole.hpp"
#include "import_recipe.hpp"
#include "kitchen/begin.hpp"
#include "ledger.hpp"
#include "show/json.hpp"

namespace samebase::cli {

namespace fs = std::filesystem;

namespace {

struct Arguments {
    std::string file;
    bool stock_csv = false;
    How how;
};

/// The folders that an import has made, so that one that fails leaves none.
class Made {
  public:
    void folder(const fs::path& path) {
        std::error_code error;
        if (path.empty() || fs::exists(path, error)) return;
        folder(path.parent_path());
        fs::create_directory(path, error);
        if (!error) paths_.push_back(path);
    }
    void keep() { paths_.clear(); }
    ~Made() {
        std::error_code error;
        for (auto path = paths_.rbegin(); path != paths_.rend(); ++path) fs::remove(*path, error);
    }
    Made() = default;
    Made(const Made&) = delete;
    Made& operator=(const Made&) = delete;

  private:
    std::vector<fs::path> paths_;
};

/// Where a kitchen is put together before it appears. An import that was killed leaves it behind.
constexpr const char* being_imported = ".being-imported";

/// A folder that goes, with all in it, at the end of its scope.
class Staging {
  public:
    explicit Staging(fs::path path) : path_(std::move(path)) {
        std::error_code error;
        fs::remove_all(path_, error);
        fs::create_directories(path_, error);
    }
    ~Staging() {
        std::error_code error;
        fs::remove_all(path_, error);
    }
    Staging(const Staging&) = delete;
    Staging& operator=(const Staging&) = delete;
    [[nodiscard]] const fs::path& path() const { return path_; }

  private:
    fs::path path_;
};

/// Writes the kitchen into an empty folder, and reads it again with all checks.
tl::expected<store::Checked, Failure> restore(const exchange::Whole& whole, const fs::path& folder) {
    std::error_code error;
    for (const auto& own : whole.own) {
        fs::create_directories(folder / fs::path(own.path).parent_path(), error);
        const auto written = exchange::write_file(folder / own.path, own.document.dump(2) + "\n");
        if (!written) return failure(store_failed, written.error());
    }
    const std::vector<fs::path> folders{Context::data_folder(), folder};
    const auto knowledge = exchange::load_knowledge(folders);
    if (!knowledge) return failure(files_unsound, knowledge.error());
    const auto household =
        exchange::read_household(nlohmann::json::parse(whole.kitchen.dump()), "/kitchen", **knowledge);
    if (!household) return failure(files_unsound, household.error());
    auto store = store::Store::open(store::file_in(folder), store::Mode::write);
    if (!store) return failure(store_failed, store.error());
    if (const auto done = store->import_all(whole.ledger); !done) return failure(files_unsound, done.error());
    auto checked = store->check();
    if (!checked) return failure(files_unsound, checked.error());
    const auto state = store->read(**knowledge, *household);
    if (!state) return failure(files_unsound, state.error());
    const auto written = exchange::write_file(folder / "kitchen.json", whole.kitchen.dump(2) + "\n");
    if (!written) return failure(store_failed, written.error());
    return *checked;
}

/// Moves the kitchen to its place, what makes it one last: without kitchen.json a folder is no kitchen.
tl::expected<void, Failure> publish(const exchange::Whole& whole, const fs::path& from, const fs::path& folder) {
    std::vector<fs::path> names;
    for (const auto& own : whole.own) names.emplace_back(own.path);
    names.push_back(store::file_in(fs::path()));
    names.emplace_back("kitchen.json");
    for (const fs::path& name : names) {
        std::error_code error;
        fs::create_directories((folder / name).parent_path(), error);
        fs::rename(from / name, folder / name, error);
        if (error)
            return failure(store_failed, {{(folder / name).string(), error.message(), "a folder that can be written to",
                                           "say it again"}});
    }
    return {};
}

/// What went wrong while it was put together, told of the folder where the kitchen is to be.
Failure told_of(Failure failure, const fs::path& staging, const fs::path& folder) {
    const auto in_place = [&](std::string& text) {
        for (auto at = text.find(staging.string()); at != std::string::npos; at = text.find(staging.string(), at))
            text.replace(at, staging.string().size(), folder.string());
    };
    for (basics::Problem& problem : failure.problems) {
        in_place(problem.where);
        in_place(problem.found);
    }
    return failure;
}

bool is_taken(const fs::path& folder) {
    std::error_code error;
    if (fs::exists(folder / "kitchen.json", error)) return true;
    // A database alone is one that somebody keeps, unless an import was killed while it moved it to its place.
    return fs::exists(store::file_in(folder), error) && !fs::exists(folder / being_imported, error);
}

tl::unexpected<Failure> taken(const fs::path& folder) {
    return failure(not_understood, {{folder.string(), "there is a kitchen here already",
                                     "a new or empty folder: --kitchen DIR", std::nullopt}});
}

tl::expected<store::Checked, Failure> tried(const exchange::Whole& whole, const fs::path& folder) {
    std::error_code error;
    const Staging staging(fs::temp_directory_path(error) / fmt::format("samebase-import-{}", ::getpid()));
    auto checked = restore(whole, staging.path());
    if (!checked) return tl::make_unexpected(told_of(std::move(checked.error()), staging.path(), folder));
    return *checked;
}

/// Whatever stops it, the folder is no kitchen yet or the whole one, and the same import can be said again.
tl::expected<store::Checked, Failure> imported(const exchange::Whole& whole, const fs::path& folder) {
    Made made;
    made.folder(folder);
    const auto lock = exchange::lock_folder(folder);
    if (!lock) return failure(store_failed, lock.error());
    if (is_taken(folder)) return taken(folder);
    const Staging staging(folder / being_imported);
    auto checked = restore(whole, staging.path());
    if (!checked) return tl::make_unexpected(told_of(std::move(checked.error()), staging.path(), folder));
    if (const auto done = publish(whole, staging.path(), folder); !done) return tl::make_unexpected(done.error());
    made.keep();
    return *checked;
}

Outcome import_whole(const Arguments& arguments, const Context& context) {
    const auto text = exchange::read_file(arguments.file);
    if (!text) return failure(not_understood, text.error());
    const fs::path folder = context.new_folder();
    if (is_taken(folder)) return taken(folder);
    const auto whole = exchange::read_whole(*text, arguments.file);
    if (!whole) return failure(files_unsound, whole.error());
    const auto checked = arguments.how.dry_run ? tried(*whole, folder) : imported(*whole, folder);
    if (!checked) return tl::make_unexpected(checked.error());
    const std::string name = whole->kitchen.value("name", "");
    context.answer(
        [&](const show::Manner&) {
            return fmt::format("{}{} {} in {}, with {} commands and {} entries.\n",
                               arguments.how.dry_run ? "Nothing is written; " : "",
                               arguments.how.dry_run ? name : show::capitalised(name),
                               arguments.how.dry_run ? "would be" : "is", folder.string(), checked->commands,
                               checked->entries);
        },
        [&] {
            return show::Json{{"kitchen", folder.string()},
                              {"dry_run", arguments.how.dry_run},
                              {"commands", checked->commands},
                              {"entries", checked->entries}};
        });
    return answered;
}

tl::expected<kitchen::Change, Failure> stock_of(const Arguments& arguments, const kitchen::At& at) {
    if (!at.kitchen.lots.empty()) {
        return failure(not_understood, {{"import --stock-csv", "there is stock already", "a kitchen without stock",
                                         "say 'samebase got' for what is new"}});
    }
    const auto text = exchange::read_file(arguments.file);
    if (!text) return failure(not_understood, text.error());
    auto lots = exchange::read_stock_csv(*text, arguments.file, *at.kitchen.knowledge, at.kitchen.household, at.day);
    if (!lots) return failure(not_understood, lots.error());
    // The ledger numbers lots without a gap, and what was used up is not in the table.
    auto number = at.next_lot;
    for (auto& lot : *lots) lot.number = number++;
    kitchen::Change change = kitchen::begin(at, *lots, {}, {});
    change.command = kitchen::import_command;
    change.line = fmt::format("took in {} {} from a table", lots->size(), lots->size() == 1 ? "lot" : "lots");
    return change;
}

Outcome run(const Arguments& arguments, const Context& context) {
    if (arguments.file.empty()) {
        return failure(not_understood,
                       {{"import", "no file", "what export has written, or recipe FILE", std::nullopt}});
    }
    if (!arguments.stock_csv) return import_whole(arguments, context);
    return carry_out(context, arguments.how,
                     [&](const kitchen::At& at, const store::State&) { return stock_of(arguments, at); });
}

}  // namespace

void add_import(CLI::App& app, Chosen& chosen) {
    auto* command =
        app.add_subcommand("import", "a whole kitchen (from export) into an empty folder, stock from CSV, or a recipe");
    auto arguments = std::make_shared<Arguments>();
    command->add_option("file", arguments->file, "what export has written")->type_name("FILE");
    command->add_flag("--stock-csv", arguments->stock_csv, "a table of stock, into a kitchen that has none");
    add_dry_run(*command, arguments->how);
    command->callback([command, arguments, &chosen] {
        if (!command->get_subcommands().empty()) return;  // that one says what is run
        chosen.run = [arguments](const Context& context) { return run(*arguments, context); };
    });
    add_import_recipe(*command, chosen);
}

}  // namespace samebase::cli
