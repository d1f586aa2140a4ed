#include "exchange/knowledge.hpp"

#include <nlohmann/json.hpp>
#include <utility>

#include "exchange/detail/documents.hpp"
#include "exchange/file.hpp"

namespace samebase::exchange {

namespace fs = std::filesystem;

namespace {

std::vector<detail::Document> read_folder(std::span<const fs::path> folders, const char* part, basics::Problems& problems) {
    std::vector<detail::Document> documents;
    for (const fs::path& folder : folders) {
        for (const fs::path& path : documents_in(folder / part)) {
            const std::string name = std::string(part) + "/" + path.filename().string();
            auto document = read_file(path).and_then([&](const std::string& text) { return parse(text, name); });
            if (document) {
                documents.push_back({name, std::move(*document)});
            } else {
                problems.insert(problems.end(), document.error().begin(), document.error().end());
            }
        }
    }
    return documents;
}

/// What holds for the whole and can be seen only when all of it is read.
void check(const kitchen::Knowledge& knowledge, basics::Problems& problems) {
    for (const auto& reason : {knowledge.catalogue.check(), knowledge.cookbook.check(knowledge.catalogue), knowledge.graph.check()}) {
        if (reason) problems.push_back({"catalogue and cookbook", *reason, "documents that agree with one another", std::nullopt});
    }
}

}  // namespace

basics::Result<std::shared_ptr<const kitchen::Knowledge>> load_knowledge(std::span<const fs::path> folders) {
    basics::Problems problems;
    auto in_catalogue = read_folder(folders, "catalogue", problems);
    const auto families_end = std::stable_partition(in_catalogue.begin(), in_catalogue.end(), [](const detail::Document& document) {
        return document.value.is_object() && document.value.contains("families");
    });
    const auto stand_ins = read_folder(folders, "stand_ins", problems);
    const auto bases = read_folder(folders, "bases", problems);
    const auto dishes = read_folder(folders, "dishes", problems);
    if (!problems.empty()) return tl::make_unexpected(problems);
    auto catalogue = detail::read_catalogue({in_catalogue.begin(), families_end}, {families_end, in_catalogue.end()}, problems);
    // What names ingredients makes sense only when these are sound.
    if (!problems.empty()) return tl::make_unexpected(problems);
    auto statements = detail::read_stand_ins(stand_ins, catalogue, problems);
    auto cookbook = detail::read_cookbook(bases, dishes, catalogue, problems);
    if (!problems.empty()) return tl::make_unexpected(problems);
    auto knowledge = std::make_shared<kitchen::Knowledge>(std::move(catalogue), std::move(cookbook), std::move(statements));
    check(*knowledge, problems);
    if (!problems.empty()) return tl::make_unexpected(problems);
    return knowledge;
}

}  // namespace samebase::exchange
