#include <fmt/format.h>

#include <charconv>
#include <cmath>

#include "exchange/detail/documents.hpp"
#include "measure/written.hpp"

namespace samebase::exchange::detail {

namespace {

using catalogue::Family;
using catalogue::FamilyId;
using catalogue::Ingredient;

constexpr double most_density = 25;       // g per mL; osmium is 22.6
constexpr double most_piece = 1'000'000;  // g
constexpr std::int64_t most_price = 100'000'000;

std::int64_t thousandths(double value) {
    return std::llround(value * 1000);
}

catalogue::KeepingTimes keeping_times(const Element& entry) {
    catalogue::KeepingTimes times{};
    const auto found = entry.find("keeps");
    if (!found || !found->object({"pantry", "fridge", "crisper", "freezer", "thawed", "opened"})) return times;
    for (const auto& [key, value] : found->members()) {
        const auto keep = catalogue::read_keep(key);
        if (!keep) continue;
        catalogue::Keeping& keeping = times[static_cast<std::size_t>(*keep)];
        if (value.is_null()) {
            keeping.said = catalogue::Keeping::Said::never;
            continue;
        }
        const std::string text = value.text();
        if (const auto time = catalogue::read_keeping_time(text)) {
            keeping = {catalogue::Keeping::Said::time, *time};
        } else if (value.value().is_string()) {
            value.wrong(value.shown(), "a keeping time such as '2 days use-by' or '90 days best-by', or null");
        }
    }
    return times;
}

std::optional<catalogue::Thaw> read_thaw(std::string_view text) {
    if (text == "flat") return catalogue::Thaw::flat;
    if (text == "block") return catalogue::Thaw::block;
    if (text == "from-frozen") return catalogue::Thaw::from_frozen;
    return std::nullopt;
}

catalogue::Thaw thaw(const Element& entry) {
    const auto found = entry.find("thaw");
    if (!found || found->is_null()) return catalogue::Thaw::not_said;
    return word(*found, read_thaw, {"flat", "block", "from-frozen"}).value_or(catalogue::Thaw::not_said);
}

std::optional<catalogue::Measured> read_measured(std::string_view text) {
    if (text == "weight") return catalogue::Measured::weight;
    if (text == "pieces") return catalogue::Measured::pieces;
    if (text == "spoons") return catalogue::Measured::spoons;
    return std::nullopt;
}

catalogue::Measured measured(const Element& entry) {
    const auto found = entry.find("measured");
    if (!found || found->is_null()) return catalogue::Measured::not_said;
    return word(*found, read_measured, {"weight", "pieces", "spoons"}).value_or(catalogue::Measured::not_said);
}

/// Where it is said to be null it does not matter, whatever the family says.
std::optional<int> cook_to(const Element& entry) {
    const auto found = entry.find("cook_to");
    if (found && found->is_null()) return 0;
    const auto degrees = entry.optional_integer("cook_to", 40, 120);
    return degrees ? std::optional<int>(static_cast<int>(*degrees)) : std::nullopt;
}

std::optional<std::int64_t> ml_per_kg(const Element& entry) {
    const auto litres = entry.optional_number("litres_per_kg", 0.1, 100);
    return litres ? std::optional<std::int64_t>(thousandths(*litres)) : std::nullopt;
}

std::vector<Family> families(const std::vector<Entry>& entries) {
    std::vector<Family> result;
    for (const Entry& entry : entries) {
        const Element& e = entry.element;
        e.object({"id", "name", "parent", "siblings", "keeps", "cook_to", "thaw", "measured", "litres_per_kg", "note"});
        Family family;
        family.id = entry.id;
        family.name = e.text("name");
        family.siblings = e.optional_number("siblings", 0.001, 0.999);
        family.keeps = keeping_times(e);
        family.cook_to = cook_to(e);
        family.thaw = thaw(e);
        family.measured = measured(e);
        family.ml_per_kg = ml_per_kg(e);
        static_cast<void>(e.optional_text("note"));  // for those who look after the data
        result.push_back(std::move(family));
    }
    for (std::size_t i = 0; i < entries.size(); ++i) {
        const auto parent = entries[i].element.optional_text("parent");
        if (!parent) continue;
        result[i].parent = basics::find_sorted<FamilyId>(result, *parent);
        if (result[i].parent) continue;
        std::vector<std::string> known;
        known.reserve(result.size());
        for (const Family& family : result) known.push_back(family.id);
        const Element at = *entries[i].element.find("parent");
        if (!at.value().is_string()) continue;
        at.wrong(fmt::format("{} is not a family", at.shown()), "the identifier of a family, or null",
                 did_you_mean(*parent, known));
    }
    return result;
}

std::optional<unsigned> month(std::string_view text) {
    unsigned value = 0;
    const auto [end, error] = std::from_chars(text.data(), text.data() + text.size(), value);
    if (error != std::errc{} || end != text.data() + text.size() || value < 1 || value > 12) return std::nullopt;
    return value - 1;
}

/// "11-3" or "3-5, 9-11"; nothing where it is not written so.
std::optional<catalogue::Months> read_months(std::string_view text) {
    catalogue::Months months = 0;
    while (!text.empty()) {
        const auto comma = text.find(',');
        std::string_view range = text.substr(0, comma);
        text = comma == std::string_view::npos ? std::string_view{} : text.substr(comma + 1);
        while (!range.empty() && range.front() == ' ') range.remove_prefix(1);
        const auto dash = range.find('-');
        const auto first = month(range.substr(0, dash));
        const auto last = dash == std::string_view::npos ? first : month(range.substr(dash + 1));
        if (!first || !last) return std::nullopt;
        for (unsigned m = *first;; m = (m + 1) % 12) {
            months = static_cast<catalogue::Months>(months | 1U << m);
            if (m == *last) break;
        }
    }
    if (months == 0) return std::nullopt;
    return months;
}

catalogue::Months six_months_on(catalogue::Months months) {
    return static_cast<catalogue::Months>((months << 6U | months >> 6U) & catalogue::every_month);
}

void seasons(const Element& e, Ingredient& thing) {
    for (const bool south : {true, false}) {
        const auto at = e.find(south ? "season" : "season_north");
        if (!at || at->is_null()) continue;
        const auto months = read_months(at->text());
        if (!at->value().is_string()) continue;
        if (!months) {
            at->wrong(at->shown(), "months such as '11-3' or '3-5, 9-11'");
        } else if (south) {
            thing.season_south = *months;
            thing.season_north = six_months_on(*months);
        } else {
            thing.season_north = *months;
        }
    }
}

void counting(const Element& e, Ingredient& thing) {
    const std::string unit = e.text("counted_in");
    if (unit == "g") {
        thing.dimension = measure::Dimension::mass;
    } else if (unit == "mL") {
        thing.dimension = measure::Dimension::volume;
    } else if (unit == "piece" || unit == "serve") {
        thing.dimension = measure::Dimension::pieces;
        thing.in_serves = unit == "serve";
    } else if (!unit.empty()) {
        e.find("counted_in")->wrong(e.find("counted_in")->shown(), "one of: g, mL, piece, serve");
    }
    if (const auto density = e.optional_number("density", 0.01, most_density))
        thing.conversion.mg_per_ml = thousandths(*density);
    if (const auto piece = e.optional_number("piece", 0.01, most_piece))
        thing.conversion.mg_per_piece = thousandths(*piece);
    if (const auto pieces = e.find("pieces")) {
        for (const auto& [name, grams] : pieces->members()) {
            // One that has many names of the same piece ("leaf") is asked for by the singular that reading an amount
            // gives.
            thing.piece_mg[name] = thousandths(grams.number(0.01, most_piece));
        }
    }
    if (const auto edible = e.optional_number("edible", 0.05, 1))
        thing.edible_thousandths = static_cast<int>(thousandths(*edible));
}

void kind(const Element& e, Ingredient& thing) {
    const std::string text = e.text("kind");
    if (text == "raw") {
        thing.kind = catalogue::Kind::raw;
    } else if (text == "made") {
        thing.kind = catalogue::Kind::made;
    } else if (text == "cooked") {
        thing.kind = catalogue::Kind::cooked;
    } else if (!text.empty()) {
        e.find("kind")->wrong(e.find("kind")->shown(), "one of: raw, made, cooked");
    }
}

void pack(const Element& e, Ingredient& thing) {
    const auto at = e.find("pack");
    if (!at || at->is_null() || !at->object({"amount", "name", "price"})) return;
    const auto text = at->need("amount");
    const auto price = at->optional_integer("price", 0, most_price);
    if (!price) at->wrong("no 'price'", "the guide price in cents");
    if (!text) return static_cast<void>(at->text("name"));
    const std::string words = text->text();
    const std::string name = at->text("name");
    if (!text->value().is_string()) return;
    const auto written = measure::read_amount(words, measure::MeasureSet::australian_metric);
    if (!written || !std::holds_alternative<measure::Amount>(written->amount)) {
        text->wrong(text->shown(), "the amount of the usual pack, such as '500 g'");
        return;
    }
    const auto amount = catalogue::in_own_dimension(std::get<measure::Amount>(written->amount), thing);
    if (!amount || amount->value() <= 0 || too_large(*amount, thing)) {
        text->wrong(text->shown(), "an amount above 0 of what the ingredient is counted in");
        return;
    }
    thing.pack = catalogue::Pack{*amount, name, basics::Money{price.value_or(0)}};
}

Ingredient read_ingredient(const Entry& entry, const std::vector<Family>& families) {
    const Element& e = entry.element;
    e.object({"id",      "name",         "also",   "family",        "kind",          "counted_in",
              "density", "piece",        "pieces", "edible",        "pack",          "allergens",
              "season",  "season_north", "staple", "everyday",      "only_stand_in", "meatless",
              "keeps",   "cook_to",      "thaw",   "litres_per_kg", "note"});
    Ingredient thing;
    thing.id = entry.id;
    thing.name = e.text("name");
    for (const Element& other : e.list("also")) thing.also.push_back(other.text());
    const std::string family = e.text("family");
    if (const auto found = basics::find_sorted<FamilyId>(families, family)) {
        thing.family = *found;
    } else if (!family.empty()) {
        std::vector<std::string> known;
        known.reserve(families.size());
        for (const Family& f : families) known.push_back(f.id);
        const Element at = *e.find("family");
        at.wrong(fmt::format("{} is not a family", at.shown()), "the identifier of a family",
                 did_you_mean(family, known));
    }
    kind(e, thing);
    counting(e, thing);
    pack(e, thing);
    if (e.find("allergens")) thing.allergens = allergens(e.list("allergens"));
    seasons(e, thing);
    thing.staple = e.boolean("staple", false);
    thing.everyday = e.boolean("everyday", false);
    thing.only_stand_in = e.boolean("only_stand_in", false);
    if (e.find("meatless")) thing.said_meatless = e.boolean("meatless", false);
    thing.keeps = keeping_times(e);
    thing.cook_to = cook_to(e);
    thing.thaw = thaw(e);
    thing.ml_per_kg = ml_per_kg(e);
    thing.note = e.optional_text("note").value_or("");
    return thing;
}

}  // namespace

catalogue::Catalogue read_catalogue(std::span<const Document> of_families, std::span<const Document> of_ingredients,
                                    basics::Problems& problems) {
    std::vector<Family> all_families = families(entries(of_families, "families", problems));
    if (all_families.empty() && !problems.empty()) return {};
    std::vector<Ingredient> ingredients;
    for (const Entry& entry : entries(of_ingredients, "ingredients", problems)) {
        ingredients.push_back(read_ingredient(entry, all_families));
    }
    if (all_families.empty()) return {};
    return {std::move(all_families), std::move(ingredients)};
}

}  // namespace samebase::exchange::detail
