#include "exchange/imported.hpp"

#include <fmt/format.h>

#include <algorithm>
#include <set>
#include <system_error>
#include <utility>

#include "exchange/file.hpp"

namespace samebase::exchange {

namespace fs = std::filesystem;

namespace {

using Json = nlohmann::ordered_json;

/// What is there, with its keys in their order; an empty document where there is no file. The caller has read the
/// kitchen's documents: it is sound.
basics::Result<Json> present(const fs::path& path) {
    std::error_code error;
    if (fs::status(path, error).type() == fs::file_type::not_found) return Json{{"dishes", Json::array()}};
    const auto text = read_file(path);
    if (!text) return tl::make_unexpected(text.error());
    if (const auto sound = parse(*text, path.string()); !sound) return tl::make_unexpected(sound.error());
    Json document = Json::parse(*text);
    if (document.is_object() && document.contains("dishes") && document["dishes"].is_array()) return document;
    return basics::problem(path.string(), "no list of dishes", "a document of dishes");
}

/// A list takes a line for each of its elements where these are long, as the shipped dishes do.
std::string value_text(const Json& value) {
    if (!value.is_array() || value.empty() || value.dump().size() < 80) return value.dump();
    std::string out = "[";
    for (std::size_t i = 0; i < value.size(); ++i)
        out += fmt::format("{}\n      {}", i == 0 ? "" : ",", value[i].dump());
    return out + "]";
}

/// A dish takes a line for each key.
std::string dish_text(const Json& dish) {
    if (!dish.is_object()) return dish.dump();
    std::string out = "{";
    for (const auto& [key, value] : dish.items()) {
        out += fmt::format("{}{}: {}", out.size() == 1 ? "" : ",\n    ", Json(key).dump(), value_text(value));
    }
    return out + "}";
}

std::string document_text(const Json& document) {
    std::string out = "{";
    for (const auto& [key, value] : document.items()) {
        out += fmt::format("{}{}: ", out.size() == 1 ? "" : ",\n", Json(key).dump());
        if (key != "dishes") {
            out += value.dump();
            continue;
        }
        out += "[";
        for (std::size_t i = 0; i < value.size(); ++i) {
            out += fmt::format("{}\n  {}", i == 0 ? "" : ",", dish_text(value[i]));
        }
        out += "\n]";
    }
    return out + "}\n";
}

}  // namespace

basics::Result<Addition> with_dishes(const fs::path& kitchen_folder, std::span<const RecipeDish> dishes, bool replace,
                                     const cookbook::Cookbook& cookbook) {
    Addition addition{{kitchen_folder / "dishes" / "imported.json", {}}, {}};
    auto document = present(addition.draft.path);
    if (!document) return tl::make_unexpected(document.error());
    Json& list = (*document)["dishes"];
    basics::Problems problems;
    std::set<std::string> added;
    for (const RecipeDish& dish : dishes) {
        const auto there = std::find_if(list.begin(), list.end(), [&](const Json& one) {
            return one.is_object() && one.value("id", Json()) == Json(dish.id);
        });
        if (!added.insert(dish.id).second) {
            problems.push_back({dish.place, fmt::format("'{}' once more", dish.id), "recipes with names of their own",
                                "take one of them with --which N, or name it with --name NAME"});
        } else if (there != list.end() && replace) {
            *there = dish.document;
            addition.replaced.push_back(dish.id);
        } else if (there != list.end()) {
            problems.push_back({dish.place, fmt::format("the dish '{}' was taken in before", dish.id),
                                "a dish that is not there yet",
                                "say --replace to put this in its place, or --name NAME"});
        } else if (cookbook.dish(dish.id)) {
            problems.push_back({dish.place, fmt::format("there is a dish '{}' that was not taken in", dish.id),
                                "a name of its own", "say --name NAME"});
        } else {
            list.push_back(dish.document);
        }
    }
    if (!problems.empty()) return tl::make_unexpected(std::move(problems));
    addition.draft.text = document_text(*document);
    return addition;
}

basics::Result<void> write_addition(const Addition& addition) {
    std::error_code error;
    const fs::path folder = addition.draft.path.parent_path();
    const bool made = fs::create_directories(folder, error);
    if (error) return basics::problem(folder.string(), error.message(), "a folder that can be made");
    auto written = write_file(addition.draft.path, addition.draft.text);
    if (!written && made) fs::remove(folder, error);  // and so it is as it was
    return written;
}

}  // namespace samebase::exchange
