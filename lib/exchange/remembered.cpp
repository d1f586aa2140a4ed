#include "exchange/remembered.hpp"

#include <nlohmann/json.hpp>

#include "exchange/file.hpp"

namespace samebase::exchange {

namespace fs = std::filesystem;

namespace {

constexpr const char* file_name = "words/recipes.json";
constexpr const char* key = "recipe_words";

/// Identifiers by words, as they stand there.
basics::Result<std::map<std::string, std::string>> read(const fs::path& folder) {
    std::map<std::string, std::string> said;
    std::error_code error;
    if (!fs::exists(folder / file_name, error)) return said;
    const auto text = read_file(folder / file_name);
    if (!text) return tl::make_unexpected(text.error());
    const auto document = parse(*text, file_name);
    if (!document) return tl::make_unexpected(document.error());
    const auto wrong = basics::problem(file_name, "something else",
                                       "{\"recipe_words\": [{\"words\": \"...\", \"ingredient\": \"...\"}]}");
    if (!document->is_object() || !document->contains(key) || !document->at(key).is_array()) return wrong;
    for (const auto& one : document->at(key)) {
        const bool sound = one.is_object() && one.size() == 2 && one.contains("words") && one["words"].is_string() &&
                           one.contains("ingredient") && one["ingredient"].is_string();
        if (!sound) return wrong;
        said[one["words"].get<std::string>()] = one["ingredient"].get<std::string>();
    }
    return said;
}

}  // namespace

basics::Result<std::map<std::string, std::string>> read_remembered(const fs::path& kitchen_folder,
                                                                   const kitchen::Knowledge& knowledge) {
    auto said = read(kitchen_folder);
    if (!said) return said;
    std::map<std::string, std::string> names;
    for (const auto& [words, id] : *said) {
        if (const auto known = knowledge.catalogue.ingredient(id)) names[words] = knowledge.catalogue[*known].name;
    }
    return names;
}

basics::Result<void> remember(const fs::path& kitchen_folder,
                              const std::map<std::string, catalogue::IngredientId>& said,
                              const kitchen::Knowledge& knowledge) {
    auto all = read(kitchen_folder);
    if (!all) return tl::make_unexpected(all.error());
    for (const auto& [words, id] : said) (*all)[words] = knowledge.catalogue[id].id;
    nlohmann::ordered_json list = nlohmann::ordered_json::array();
    for (const auto& [words, id] : *all) list.push_back({{"words", words}, {"ingredient", id}});
    std::error_code error;
    const fs::path path = kitchen_folder / file_name;
    fs::create_directories(path.parent_path(), error);
    if (error) return basics::problem(path.parent_path().string(), error.message(), "a folder that can be made");
    return write_file(path, nlohmann::ordered_json{{key, std::move(list)}}.dump(2) + "\n");
}

}  // namespace samebase::exchange
