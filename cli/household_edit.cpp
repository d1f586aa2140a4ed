// samebase household edit: kitchen.json, or the household's own dishes, in the cook's editor; checked before it is
// saved.
#include <fmt/format.h>
#include <sys/wait.h>
#include <unistd.h>

#include <algorithm>
#include <cstdlib>
#include <fstream>
#include <iostream>

#include "documents.hpp"
#include "exchange/file.hpp"
#include "exchange/knowledge.hpp"
#include "household.hpp"
#include "output.hpp"

namespace samebase::cli {

namespace {

namespace fs = std::filesystem;

constexpr std::string_view household_path = "kitchen.json";

struct EditWords {
    std::string document;
    How how;
};

tl::unexpected<Failure> wrong(std::string where, std::string found, std::string expected) {
    return failure(not_understood, {{std::move(where), std::move(found), std::move(expected), std::nullopt}});
}

/// kitchen.json; with "dishes" the one document of the folder `dishes`, or a new one; or a document of it by its path.
Understood<std::string> path_of(const std::string& words, const fs::path& folder) {
    if (words.empty() || words == household_path) return std::string(household_path);
    const auto found = exchange::documents_in(folder / "dishes");
    if (!found) return failure(files_unsound, found.error());
    std::vector<std::string> paths;
    for (const auto& path : *found) paths.push_back("dishes/" + path.filename().string());
    if (std::find(paths.begin(), paths.end(), words) != paths.end()) return words;
    if (words != "dishes")
        return wrong(words, "is no document that can be edited", "nothing for the household, or: dishes");
    if (paths.size() > 1)
        return wrong("dishes", "there are several documents", fmt::format("one of: {}", fmt::join(paths, ", ")));
    return paths.empty() ? "dishes/ours.json" : paths.front();
}

std::string from_environment(const char* name) {
    const char* value = std::getenv(name);  // NOLINT(concurrency-mt-unsafe): one thread
    return value == nullptr ? "" : value;
}

/// A file of its own for the editor; it goes with the scope unless it is kept.
class Draft {
  public:
    explicit Draft(const std::string& text) {
        std::string pattern = (fs::temp_directory_path() / "samebase-XXXXXX").string();
        if (::mkdtemp(pattern.data()) != nullptr) file_ = fs::path(pattern) / "edit.json";
        std::ofstream(file_, std::ios::binary) << text;
    }
    Draft(const Draft&) = delete;
    Draft& operator=(const Draft&) = delete;
    ~Draft() {
        std::error_code error;
        if (!kept_) fs::remove_all(file_.parent_path(), error);
    }
    [[nodiscard]] const fs::path& file() const { return file_; }
    void keep() { kept_ = true; }

  private:
    fs::path file_;
    bool kept_ = false;
};

Understood<std::string> edited(const Draft& draft) {
    std::string editor = from_environment("VISUAL");
    if (editor.empty()) editor = from_environment("EDITOR");
    if (editor.empty())
        return wrong("edit", "neither VISUAL nor EDITOR is set", "an editor: EDITOR=nano samebase household edit");
    const std::string command = fmt::format("{} '{}'", editor, draft.file().string());
    std::cout.flush();
    const int status =
        std::system(command.c_str());  // NOLINT(cert-env33-c,concurrency-mt-unsafe): the cook's own editor
    if (status == -1 || !WIFEXITED(status) || WEXITSTATUS(status) != 0)
        return wrong("edit", fmt::format("the editor '{}' ended with a failure", editor),
                     "an editor that saves; nothing was changed");
    auto text = exchange::read_file(draft.file());
    if (!text) return failure(not_understood, text.error());
    return std::move(*text);
}

/// What is wrong with the document; nothing where it is sound.
basics::Problems problems_of(const std::string& path, const std::string& text, const kitchen::At& at,
                             const fs::path& folder) {
    if (path == household_path) {
        const auto change = household_change(at, "", text, {});
        return change ? basics::Problems{} : change.error().problems;
    }
    const std::vector<fs::path> folders{Context::data_folder(), folder};
    const exchange::Draft draft{folder / path, text};
    const auto knowledge = exchange::load_knowledge(folders, &draft);
    if (!knowledge) return knowledge.error();
    basics::Problems problems;
    for (const auto& lot : at.kitchen.lots) {
        if (!lot.dish) continue;
        const auto& dish = at.kitchen.cookbook()[*lot.dish];
        if ((*knowledge)->cookbook.dish(dish.id)) continue;
        problems.push_back({path, fmt::format("'{}' is gone, and there are leftovers of it", dish.name), "that dish",
                            "a dish's name may change, its id stays"});
    }
    return problems;
}

std::vector<std::string> lines_of(const std::string& text) {
    const auto document = exchange::HouseholdDocument::parse(text, nullptr, false);
    std::vector<std::string> lines;
    std::string line;
    for (const char c : document.is_discarded() ? text : exchange::household_text(document)) {
        if (c != '\n') {
            line += c;
            continue;
        }
        const auto first = line.find_first_not_of(' ');
        if (line.ends_with(',')) line.pop_back();
        lines.push_back(first == std::string::npos ? "" : line.substr(first));
        line.clear();
    }
    return lines;
}

/// Lines that go ("-") and come ("+"), in the order of the documents, however they are laid out.
std::vector<std::string> difference(const std::string& was, const std::string& is) {
    const auto a = lines_of(was);
    const auto b = lines_of(is);
    // The longest common part, from the ends: documents have some hundred lines.
    std::vector<std::vector<std::size_t>> common(a.size() + 1, std::vector<std::size_t>(b.size() + 1));
    for (std::size_t i = a.size(); i-- > 0;) {
        for (std::size_t j = b.size(); j-- > 0;)
            common[i][j] = a[i] == b[j] ? common[i + 1][j + 1] + 1 : std::max(common[i + 1][j], common[i][j + 1]);
    }
    std::vector<std::string> lines;
    for (std::size_t i = 0, j = 0; i < a.size() || j < b.size();) {
        if (i < a.size() && j < b.size() && a[i] == b[j]) {
            ++i, ++j;
        } else if (j == b.size() || (i < a.size() && common[i + 1][j] >= common[i][j + 1])) {
            lines.push_back("- " + a[i++]);
        } else {
            lines.push_back("+ " + b[j++]);
        }
    }
    return lines;
}

/// Asks again as long as it is wrong and somebody is there; the sound text, or nothing where nothing was changed.
Understood<std::optional<std::string>> sound_text(const std::string& path, const std::string& was, Draft& draft,
                                                  const kitchen::At& at, const fs::path& folder) {
    while (true) {
        auto text = edited(draft);
        if (!text) return tl::make_unexpected(text.error());
        if (*text == was) return std::nullopt;
        auto problems = problems_of(path, *text, at, folder);
        if (problems.empty()) return std::optional(std::move(*text));
        if (on_terminal()) {
            for (const auto& problem : problems) tell(basics::to_text(problem) + "\n");
            if (agreed("Edit it again?")) continue;
        }
        draft.keep();
        problems.back().hint =
            fmt::format("{}nothing was changed; your text is in {}",
                        problems.back().hint ? *problems.back().hint + "; " : "", draft.file().string());
        return failure(not_understood, std::move(problems));
    }
}

/// The edit as a change to the document as it is now; somebody else may have changed another part of it meanwhile.
Understood<kitchen::Change> change_of(const std::string& path, const std::optional<std::string>& was,
                                      const std::string& text, const kitchen::At& at, const fs::path& folder) {
    const auto now = text_of(folder, path);
    if (!now) return failure(files_unsound, now.error());
    std::optional<std::string> becomes = text;
    if (*now != was) {
        auto both = taken_back({0, 0, path, text, was}, *now);
        if (!both || !*both)
            return wrong(path, "was changed by somebody else while you edited it",
                         "nothing was changed: edit it again");
        becomes = std::move(*both);
    }
    const std::string line =
        fmt::format("edited {}: {} lines changed", path, difference(now->value_or(""), *becomes).size());
    if (path == household_path) return household_change(at, now->value_or(""), *becomes, {line});
    kitchen::Change change;
    change.command = "household";
    change.day = at.day;
    change.line = line;
    change.documents.push_back({path, *now, becomes});
    return change;
}

void show_difference(const std::string& was, const std::string& is) {
    constexpr std::size_t most = 40;
    const auto lines = difference(was, is);
    for (std::size_t i = 0; i < std::min(lines.size(), most); ++i) print(show::wrapped(lines[i], 4) + "\n");
    if (lines.size() > most) print(fmt::format("... and {} lines more\n", lines.size() - most));
    std::cout.flush();
}

Outcome run(const EditWords& words, const Context& context) {
    const auto today = context.today();
    if (!today) return tl::make_unexpected(today.error());
    const auto kitchen = context.kitchen();
    if (!kitchen) return tl::make_unexpected(kitchen.error());
    const fs::path folder = *context.folder();
    const auto path = path_of(words.document, folder);
    if (!path) return tl::make_unexpected(path.error());
    const auto was = text_of(folder, *path);
    if (!was) return failure(files_unsound, was.error());
    Draft draft(was->value_or("{\n  \"dishes\": [\n  ]\n}\n"));
    const auto text = sound_text(*path, was->value_or(""), draft, {*kitchen, *today, 1}, folder);
    if (!text) return tl::make_unexpected(text.error());
    if (*text && !context.wants_json()) show_difference(was->value_or(""), **text);
    return carry_out(context, words.how,
                     [&](const kitchen::At& at, const store::State&) -> Understood<kitchen::Change> {
                         if (*text) return change_of(*path, *was, **text, at, folder);
                         kitchen::Change nothing;
                         nothing.command = "household";
                         nothing.day = at.day;
                         nothing.line = fmt::format("{} is as it was", *path);
                         return nothing;
                     });
}

}  // namespace

void add_household_edit(CLI::App& household, Chosen& chosen) {
    auto* command = household.add_subcommand(
        "edit", "all of it in your editor (VISUAL, EDITOR), checked before it is saved: edit dishes");
    auto words = std::make_shared<EditWords>();
    command->add_option("document", words->document, "nothing for the household; dishes for your own dishes");
    add_dry_run(*command, words->how);
    run_with(*command, chosen, words, run);
}

}  // namespace samebase::cli
