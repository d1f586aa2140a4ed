#include "documents.hpp"

#include <fmt/format.h>

#include "exchange/file.hpp"
#include "exchange/household.hpp"
#include "exchange/household_edit.hpp"

namespace samebase::cli {

namespace fs = std::filesystem;

namespace {

using exchange::HouseholdDocument;

std::optional<HouseholdDocument> document_in(const std::optional<std::string>& text) {
    if (!text) return std::nullopt;
    auto document = HouseholdDocument::parse(*text, nullptr, false);
    return document.is_discarded() ? std::nullopt : std::optional(std::move(document));
}

/// What leads from `base` to `mine`, done to `theirs`.
std::optional<std::string> merged(const std::optional<std::string>& base, const std::optional<std::string>& mine,
                                  const std::optional<std::string>& theirs) {
    const auto a = document_in(base);
    const auto b = document_in(mine);
    const auto c = document_in(theirs);
    if (!a || !b || !c) return std::nullopt;
    if (*a == *c) return mine;
    const auto both = exchange::merged(*a, *b, *c);
    return both ? std::optional(exchange::household_text(*both)) : std::nullopt;
}

basics::Result<void> put(const fs::path& folder, const std::string& path, const std::optional<std::string>& text) {
    std::error_code error;
    if (text) {
        fs::create_directories((folder / path).parent_path(), error);
        return exchange::write_file(folder / path, *text);
    }
    fs::remove(folder / path, error);
    if (error) return basics::problem((folder / path).string(), error.message(), "a file that can be removed");
    return {};
}

}  // namespace

basics::Result<std::optional<std::string>> text_of(const fs::path& folder, const std::string& path) {
    std::error_code error;
    if (!fs::exists(folder / path, error)) return std::optional<std::string>{};
    return exchange::read_file(folder / path).map([](std::string text) { return std::optional(std::move(text)); });
}

basics::Result<void> land(const fs::path& folder, store::Store& store) {
    return store.land([&](const store::DocumentRow& row) -> basics::Result<void> {
        const auto now = text_of(folder, row.path);
        if (!now) return tl::make_unexpected(now.error());
        if (*now == row.becomes) return {};
        if (*now == row.was) return put(folder, row.path, row.becomes);
        const auto both = merged(row.was, row.becomes, *now);
        return both ? put(folder, row.path, both) : basics::Result<void>{};
    });
}

basics::Result<void> settle(const fs::path& folder) {
    std::error_code error;
    if (!fs::exists(store::file_in(folder), error)) return {};
    auto reader = store::Store::open(store::file_in(folder), store::Mode::read);
    if (!reader) return {};  // whoever needs it says so
    const auto left = reader->to_land();
    if (!left || left->empty()) return {};
    auto writer = store::Store::open(store::file_in(folder), store::Mode::write);
    if (!writer) return tl::make_unexpected(writer.error());
    return land(folder, *writer);
}

basics::Result<std::optional<std::string>> taken_back(const store::DocumentRow& change,
                                                      const std::optional<std::string>& now) {
    if (now == change.becomes) return change.was;
    auto both = merged(change.becomes, change.was, now);
    if (both) return both;
    return basics::problem(change.path, "was edited by hand since, where the command had changed it",
                           "the document as the command left it",
                           "change it by hand, or with 'household'; nothing was undone");
}

basics::Result<kitchen::Household> sound_household(const std::string& text, const kitchen::Knowledge& knowledge) {
    return exchange::read_household_text(text, "kitchen.json", knowledge);
}

}  // namespace samebase::cli
