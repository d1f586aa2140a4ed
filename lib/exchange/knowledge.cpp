#include "exchange/knowledge.hpp"

#include <algorithm>
#include <iterator>
#include <map>
#include <nlohmann/json.hpp>
#include <string>
#include <system_error>
#include <utility>

#include "exchange/detail/documents.hpp"
#include "exchange/file.hpp"

namespace samebase::exchange {

namespace fs = std::filesystem;

namespace {

using detail::Document;

void take(basics::Problems& problems, basics::Problems more) {
    problems.insert(problems.end(), std::make_move_iterator(more.begin()), std::make_move_iterator(more.end()));
}

/// What a household says of a thing that is shipped too is what holds, so that a shipped name that is new later does
/// not break its kitchen. Of an ingredient, what it does not say is taken from the shipped entry. The first `shipped`
/// documents are those that are shipped.
void own_words_hold(std::vector<Document>& documents, std::size_t shipped) {
    const auto each = [&](std::size_t from, std::size_t to, const auto& visit) {
        for (std::size_t i = from; i < to; ++i) {
            if (!documents[i].value.is_object()) continue;
            for (auto& [list, entries] : documents[i].value.items()) {
                if (entries.is_array()) visit(list, entries);
            }
        }
    };
    const auto id_of = [](const nlohmann::json& entry) {
        const bool named = entry.is_object() && entry.contains("id") && entry["id"].is_string();
        return named ? entry["id"].get<std::string>() : std::string();
    };
    std::map<std::string, nlohmann::json*> own;
    each(shipped, documents.size(), [&](const std::string&, nlohmann::json& entries) {
        for (auto& entry : entries) {
            if (const auto id = id_of(entry); !id.empty()) own.emplace(id, &entry);
        }
    });
    if (own.empty()) return;
    each(0, shipped, [&](const std::string& list, nlohmann::json& entries) {
        for (auto entry = entries.begin(); entry != entries.end();) {
            const auto mine = own.find(id_of(*entry));
            if (mine == own.end()) {
                ++entry;
                continue;
            }
            if (list == "ingredients") {
                nlohmann::json both = std::move(*entry);
                const nlohmann::json family = both.value("family", nlohmann::json());
                both.update(*mine->second);
                both["family"] = family;
                *mine->second = std::move(both);
            }
            entry = entries.erase(entry);
        }
    });
}

/// The documents of one part over all folders. The first folder's are named "dishes/mince.json", the others' by their
/// paths.
std::vector<Document> read_part(std::span<const fs::path> folders, const char* part, const Draft* draft,
                                basics::Problems& problems) {
    std::vector<Document> documents;
    std::size_t shipped = 0;
    for (const fs::path& folder : folders) {
        auto paths = documents_in(folder / part);
        if (!paths) take(problems, paths.error());
        if (paths && draft != nullptr && draft->path.parent_path() == folder / part) {
            const auto at = std::lower_bound(paths->begin(), paths->end(), draft->path);
            if (at == paths->end() || *at != draft->path) paths->insert(at, draft->path);
        }
        for (const fs::path& path : paths.value_or(std::vector<fs::path>{})) {
            const bool first = &folder == &folders.front();
            const std::string name = (first ? fs::path(part) / path.filename() : path).string();
            const bool drafted = draft != nullptr && path == draft->path;
            const auto text = drafted ? basics::Result<std::string>(draft->text) : read_file(path);
            auto document = text.and_then([&](const std::string& all) { return parse(all, name); });
            if (document) {
                documents.push_back({name, std::move(*document)});
            } else {
                take(problems, document.error());
            }
        }
        if (&folder == &folders.front()) shipped = documents.size();
    }
    own_words_hold(documents, shipped);
    return documents;
}

/// Splits off the documents that hold families; they come first.
std::size_t families_first(std::vector<Document>& documents) {
    const auto end = std::stable_partition(documents.begin(), documents.end(), [](const Document& document) {
        return document.value.is_object() && document.value.contains("families");
    });
    return static_cast<std::size_t>(end - documents.begin());
}

/// What holds for the whole and can be seen only when all of it is read.
void must_hold(const std::string& where, std::optional<std::string> broken, basics::Problems& problems) {
    if (broken) problems.push_back({where, std::move(*broken), "documents that agree with one another", std::nullopt});
}

}  // namespace

basics::Result<std::shared_ptr<const kitchen::Knowledge>> load_knowledge(std::span<const fs::path> folders,
                                                                         const Draft* draft) {
    basics::Problems problems;
    for (const fs::path& folder : folders) {
        std::error_code error;
        if (!fs::is_directory(folder, error))
            problems.push_back({folder.string(), "no such folder", "a folder of documents", {}});
    }
    auto in_catalogue = read_part(folders, "catalogue", draft, problems);
    const auto stand_ins = read_part(folders, "stand_ins", draft, problems);
    const auto bases = read_part(folders, "bases", draft, problems);
    const auto dishes = read_part(folders, "dishes", draft, problems);
    if (!problems.empty()) return tl::make_unexpected(problems);
    for (const Document& document : in_catalogue) {
        if (!document.value.is_object() || document.value.contains("families") ||
            document.value.contains("ingredients"))
            continue;
        problems.push_back(
            {document.name + ", /", "neither 'families' nor 'ingredients'", "one of the two lists", std::nullopt});
    }
    if (!problems.empty()) return tl::make_unexpected(problems);
    const std::size_t of_families = families_first(in_catalogue);
    const std::span<const Document> all(in_catalogue);
    auto catalogue = detail::read_catalogue(all.first(of_families), all.subspan(of_families), problems);
    // What names ingredients makes sense only when these are sound.
    if (problems.empty()) must_hold("catalogue", catalogue.check(), problems);
    if (!problems.empty()) return tl::make_unexpected(problems);
    auto statements = detail::read_stand_ins(stand_ins, catalogue, problems);
    auto cookbook = detail::read_cookbook(bases, dishes, catalogue, problems);
    if (problems.empty()) must_hold("dishes", cookbook.check(catalogue), problems);
    if (!problems.empty()) return tl::make_unexpected(problems);
    auto knowledge =
        std::make_shared<kitchen::Knowledge>(std::move(catalogue), std::move(cookbook), std::move(statements));
    return knowledge;
}

}  // namespace samebase::exchange
