#include <fmt/format.h>

#include <algorithm>

#include "list.hpp"
#include "show/words.hpp"

namespace samebase::cli {

namespace {

/// So many packs that hold as much as was said; 0 where nothing was.
int packs_of(const kitchen::Kitchen& kitchen, catalogue::IngredientId id, const kitchen::Quantity& quantity) {
    const auto& thing = kitchen.catalogue()[id];
    const auto up = [](std::int64_t part, std::int64_t whole) { return static_cast<int>((part + whole - 1) / whole); };
    if (quantity.packs) return up(*quantity.packs, 1000);
    if (quantity.amount && thing.pack) return up(quantity.amount->value(), thing.pack->amount.value());
    return 0;
}

/// How many, where it is a plain number; the words stay as they are where it is anything else ("2 rolls of foil").
kitchen::Listed no_food(const Said& said) {
    kitchen::Listed row{said.name, std::nullopt, 0};
    if (!said.amount) return row;
    const auto* count = std::get_if<measure::Amount>(&said.amount->amount);
    const bool plain = count != nullptr && count->dimension() == measure::Dimension::pieces &&
                       count->value() % 1000 == 0 && said.counted().empty();
    constexpr std::int64_t most = 1000;
    if (plain && count->value() / 1000 <= most) {
        row.count = static_cast<int>(count->value() / 1000);
    } else {
        row.words = said.text;
    }
    return row;
}

/// Whether the words are a name of it with a slip of the pen: "brocoli". Short words may be anything: "soap" is no
/// soup.
bool a_slip_of(const kitchen::Kitchen& kitchen, const std::string& words, catalogue::IngredientId id) {
    constexpr std::size_t shortest = 6;
    if (words.size() < shortest) return false;
    catalogue::NameIndex index;
    add_ingredient(kitchen.catalogue()[id], 0, 0, index);
    index.finish();
    return index.find(words).whole;
}

/// One thing of the line; the words as they are where no food is clearly meant.
tl::expected<kitchen::Listed, Failure> listed(const kitchen::At& at, const Things& things, const std::string& text) {
    const auto clean = remark({text}, "list");
    if (!clean) return tl::make_unexpected(clean.error());
    const auto said = read_said(*clean, at.kitchen.household.measures);
    if (!said) return tl::make_unexpected(said.error());
    const auto taken = things.taken(said->name, said->counted());
    const bool food = taken && (taken->exact || a_slip_of(at.kitchen, said->name, taken->thing.ingredient));
    kitchen::Listed row = no_food(*said);
    if (!food) return row;
    const auto id = taken->thing.ingredient;
    row.words = at.kitchen.catalogue()[id].name;
    row.ingredient = id;
    if (!said->amount) return row;
    const auto quantity = quantity_of(at.kitchen, taken->thing, *said, std::nullopt, Doing::buying);
    if (quantity) {
        row.count = packs_of(at.kitchen, id, *quantity);
    } else if (row.count == 0) {  // a bare number that may be pieces or packs is packs, on a list
        return tl::make_unexpected(quantity.error());
    }
    return row;
}

}  // namespace

tl::expected<kitchen::Change, Failure> put_on_list(const kitchen::At& at, const std::string& words) {
    const Things things(at.kitchen, std::nullopt, Doing::buying);
    std::vector<kitchen::Listed> rows;
    for (const std::string& text : split_at_commas(words)) {
        auto row = listed(at, things, text);
        if (!row) return tl::make_unexpected(row.error());
        std::erase_if(rows, [&](const kitchen::Listed& other) { return other.words == row->words; });
        rows.push_back(std::move(*row));
    }
    if (rows.empty())
        return failure(
            not_understood,
            {{"list add", "nothing is named", "what to buy, as in 'list add 2 bread, dishwashing liquid'", {}}});
    return kitchen::list_add(at, rows);
}

tl::expected<kitchen::Change, Failure> take_off_list(const kitchen::At& at, const std::string& words) {
    const auto& rows = at.kitchen.household.listed;
    std::vector<std::string> all;
    catalogue::NameIndex index;
    for (std::uint32_t i = 0; i < rows.size(); ++i) {
        index.add(i, 0, rows[i].words);
        all.push_back(rows[i].words);
    }
    index.finish();
    std::vector<std::string> off;
    for (const std::string& word : split_at_commas(words)) {
        const auto match = index.find(word);
        if (match.found.size() != 1) {
            const std::string expected =
                all.empty() ? "something that was put on the list" : fmt::format("one of: {}", quoted(all));
            return failure(not_understood, {{word, "was not put on the list by hand", expected,
                                             "what the plan needs is left out with 'list --got --not'"}});
        }
        off.push_back(rows[match.found.front().key].words);
    }
    if (off.empty())
        return failure(not_understood, {{"list drop", "nothing is named", "something on the list", std::nullopt}});
    return understood(kitchen::list_drop(at, off));
}

}  // namespace samebase::cli
