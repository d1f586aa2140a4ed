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

/// The files that an import has made, so that one that fails leaves none.
class Made {
  public:
    void file(const fs::path& path) { paths_.push_back(path); }
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

tl::expected<store::Checked, Failure> restore(const exchange::Whole& whole, const fs::path& folder, Made& made) {
    made.folder(folder);
    for (const auto& own : whole.own) {
        made.folder(folder / fs::path(own.path).parent_path());
        made.file(folder / own.path);
        const auto written = exchange::write_file(folder / own.path, own.document.dump(2) + "\n");
        if (!written) return failure(store_failed, written.error());
    }
    const std::vector<fs::path> folders{Context::data_folder(), folder};
    const auto knowledge = exchange::load_knowledge(folders);
    if (!knowledge) return failure(files_unsound, knowledge.error());
    const auto household =
        exchange::read_household(nlohmann::json::parse(whole.kitchen.dump()), "/kitchen", **knowledge);
    if (!household) return failure(files_unsound, household.error());
    const fs::path file = store::file_in(folder);
    for (const char* suffix : {"", "-wal", "-shm", "-journal"}) made.file(file.string() + suffix);
    auto store = store::Store::open(file, store::Mode::write);
    if (!store) return failure(store_failed, store.error());
    if (const auto done = store->import_all(whole.ledger); !done) return failure(files_unsound, done.error());
    auto checked = store->check();
    if (!checked) return failure(files_unsound, checked.error());
    const auto state = store->read(**knowledge, *household);
    if (!state) return failure(files_unsound, state.error());
    made.file(folder / "kitchen.json");
    const auto written = exchange::write_file(folder / "kitchen.json", whole.kitchen.dump(2) + "\n");
    if (!written) return failure(store_failed, written.error());
    return *checked;
}

Outcome import_whole(const Arguments& arguments, const Context& context) {
    const auto text = exchange::read_file(arguments.file);
    if (!text) return failure(not_understood, text.error());
    const fs::path folder = context.new_folder();
    std::error_code error;
    if (fs::exists(folder / "kitchen.json", error) || fs::exists(store::file_in(folder), error)) {
        return failure(not_understood, {{folder.string(), "there is a kitchen here already",
                                         "a new or empty folder: --kitchen DIR", std::nullopt}});
    }
    const auto whole = exchange::read_whole(*text, arguments.file);
    if (!whole) return failure(files_unsound, whole.error());
    Made made;
    const fs::path target =
        arguments.how.dry_run ? fs::temp_directory_path(error) / fmt::format("samebase-import-{}", ::getpid()) : folder;
    const auto checked = restore(*whole, target, made);
    if (!checked) return tl::make_unexpected(checked.error());
    if (!arguments.how.dry_run) made.keep();
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
    if (!lots->empty() && lots->front().number < at.next_lot) {
        auto number = at.next_lot;
        for (auto& lot : *lots) lot.number = number++;
    }
    kitchen::Change change = kitchen::begin(at, *lots, {}, {});
    change.command = "import";
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
