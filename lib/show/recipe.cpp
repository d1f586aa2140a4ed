#include "show/recipe.hpp"

#include <fmt/format.h>

#include <algorithm>
#include <array>
#include <cctype>
#include <nlohmann/json.hpp>

#include "catalogue/hand.hpp"
#include "measure/written.hpp"
#include "show/detail/recipe_words.hpp"
#include "show/json.hpp"

namespace samebase::show {

namespace {

using ask::RecipeLine;

constexpr std::size_t amount_width = 10;

/// "1/4", "2", "1 1/2": quarters of a unit.
std::string in_quarters(std::int64_t quarters) {
    constexpr std::array<std::string_view, 4> fractions{"", "1/4", "1/2", "3/4"};
    const std::string whole = quarters >= 4 ? fmt::format("{}", quarters / 4) : "";
    const std::string_view part = fractions[static_cast<std::size_t>(quarters % 4)];
    if (part.empty()) return whole;
    return whole.empty() ? std::string{part} : fmt::format("{} {}", whole, part);
}

std::string plural(const std::string& unit, std::int64_t quarters) {
    if (quarters <= 4 || unit == "tbsp" || unit == "tsp") return unit;
    if (unit.ends_with("ch") || unit.ends_with("sh") || unit.ends_with('s')) return unit + "es";
    if (unit == "leaf" || unit == "loaf") return unit.substr(0, unit.size() - 1) + "ves";
    return unit + "s";
}

/// The measure that a written amount ends with: "tbsp" of "2 tbsp".
std::string unit_of(std::string_view written) {
    constexpr std::array<std::string_view, 3> spoons{"tbsp", "tsp", "cup"};
    std::string word{written.substr(std::min(written.rfind(' ') + 1, written.size()))};
    if (word == "cups") word = "cup";
    return std::find(spoons.begin(), spoons.end(), word) == spoons.end() ? "" : word;
}

std::string people(const std::vector<std::string>& names, int guests) {
    std::vector<std::string> words = names;
    if (guests > 0) words.push_back(fmt::format("{} guest{}", guests, guests == 1 ? "" : "s"));
    return listed(words);
}

/// "2", "1 3/4": pieces, without a unit.
bool is_count(const std::string& quantity) {
    return !quantity.empty() && quantity.back() >= '0' && quantity.back() <= '9';
}
/// More than one of them: not "1", not "3/4".
bool is_several(const std::string& count) {
    return count.find('/') == std::string::npos ? count != "1" : count.find(' ') != std::string::npos;
}
/// "2 tins".
bool in_tins(const std::string& quantity) {
    return quantity.ends_with(" tin") || quantity.ends_with(" tins");
}

class Card {
  public:
    Card(const ask::RecipeAnswer& answer, const kitchen::Kitchen& kitchen, basics::Day today, std::size_t width)
        : answer_(answer),
          kitchen_(kitchen),
          dish_(kitchen.cookbook()[answer.question.dish]),
          today_(today),
          width_(width) {}

    std::string text() && {
        head();
        for (const RecipeLine& line : answer_.lines) add(line, false);
        for (const RecipeLine& line : answer_.optional) add(line, true);
        for (const ask::RecipeApart& apart : answer_.apart) serve_apart(apart);
        for (std::size_t i = 0; i < dish_.method.size(); ++i)
            out_ += wrapped(fmt::format("{:>2}. {}", i + 1, dish_.method[i]), 4, width_) + "\n";
        foot();
        return std::move(out_);
    }

  private:
    void head() {
        const std::string line =
            fmt::format("{}: {}", capitalised(dish_.name), detail::recipe_head(answer_, kitchen_, today_));
        out_ += wrapped(line + ".", 2, width_) + "\n";
        for (const std::string& reason : answer_.refused)
            out_ += wrapped("! Not for everyone at the table: " + reason + ".", 2, width_) + "\n";
    }

    void add(const RecipeLine& line, bool optional) {
        const cookbook::DishIngredient& written = dish_.ingredients[line.line];
        const catalogue::Ingredient& thing = kitchen_.catalogue()[line.ingredient];
        const std::string quantity = detail::line_amount(line, written, kitchen_);
        std::string what = is_count(quantity) ? catalogue::name_of(thing, is_several(quantity)) : thing.name;
        if (!written.preparation.empty() && !(in_tins(quantity) && in_tins(written.preparation)))
            what += ", " + written.preparation;
        std::vector<std::string> told = detail::line_remarks(line, kitchen_, today_);
        if (optional) told.insert(told.begin(), "if you like");
        if (!told.empty()) what += fmt::format(" ({})", fmt::join(told, "; "));
        out_ += wrapped(fmt::format("  {:<{}} {}", quantity, amount_width, what), amount_width + 3, width_) + "\n";
    }

    void serve_apart(const ask::RecipeApart& apart) {
        out_ += wrapped(detail::apart_words(apart) + ".", 2, width_) + "\n";
        for (const RecipeLine& line : apart.lines) add(line, false);
    }

    void foot() {
        for (const std::string& caution : answer_.cautions) out_ += wrapped("! " + caution, 2, width_) + "\n";
        if (const std::string left = detail::leftovers_words(answer_, dish_); !left.empty())
            out_ += wrapped(left, 2, width_) + "\n";
        out_ += std::string(advice) + "\n";
    }

    const ask::RecipeAnswer& answer_;
    const kitchen::Kitchen& kitchen_;
    const cookbook::Dish& dish_;
    basics::Day today_;
    std::size_t width_;
    std::string out_;
};

std::string_view name(ask::Standing standing) {
    constexpr std::array<std::string_view, 4> names{"fine", "eat-soon", "frozen", "lacking"};
    return names[static_cast<std::size_t>(standing)];
}

Json lines_json(const std::vector<RecipeLine>& lines, const cookbook::Dish& dish, const kitchen::Kitchen& kitchen) {
    Json list = Json::array();
    for (const RecipeLine& line : lines) {
        const auto& thing = kitchen.catalogue()[line.ingredient];
        const cookbook::DishIngredient& written = dish.ingredients[line.line];
        list.push_back(
            {{"ingredient", thing.id},
             {"label", thing.name},
             {"amount", json_amount(line.amount, thing)},
             {"role", name(written.role)},
             {"preparation", written.preparation.empty() ? Json(nullptr) : Json(written.preparation)},
             {"in_place_of", line.in_place_of ? Json(kitchen.catalogue()[*line.in_place_of].id) : Json(nullptr)},
             {"note", line.note.empty() ? Json(nullptr) : Json(line.note)},
             {"standing", name(line.standing)},
             {"use_by", json_day(line.use_by)},
             {"missing", line.missing ? json_amount(*line.missing, thing) : Json(nullptr)}});
    }
    return list;
}

}  // namespace

namespace detail {

std::string recipe_head(const ask::RecipeAnswer& answer, const kitchen::Kitchen& kitchen, basics::Day today) {
    const cookbook::Dish& dish = kitchen.cookbook()[answer.question.dish];
    std::string line = fmt::format("{} minutes", dish.minutes);
    if (dish.hands_on > 0 && dish.hands_on < dish.minutes) line += fmt::format(", {} of them yours", dish.hands_on);
    line += ", for " + (answer.eaters.empty() && answer.guests == 0
                            ? fmt::format("{} serves", serves(answer.serves_thousandths))
                            : people(answer.eaters, answer.guests));
    if (answer.left_thousandths > 0) line += fmt::format(", {} more to keep", serves(answer.left_thousandths));
    if (answer.question.day != today) line += ", " + on_day(answer.question.day, today);
    return line;
}

std::string line_amount(const ask::RecipeLine& line, const cookbook::DishIngredient& written,
                        const kitchen::Kitchen& kitchen) {
    const catalogue::Ingredient& thing = kitchen.catalogue()[line.ingredient];
    if (thing.pack && (thing.pack->name == "tin" || thing.pack->name == "can")) {
        const std::int64_t tins = line.amount.value() / thing.pack->amount.value();
        if (tins > 0 && line.amount.value() == tins * thing.pack->amount.value())
            return fmt::format("{} tin{}", tins, tins == 1 ? "" : "s");
    }
    if (line.of_written) {
        if (auto own = in_own_measure(written.written, *line.of_written)) return *own;
    }
    return amount(line.amount, thing);
}

std::vector<std::string> line_remarks(const ask::RecipeLine& line, const kitchen::Kitchen& kitchen, basics::Day today) {
    std::vector<std::string> list;
    if (line.in_place_of) {
        const std::string& name = kitchen.catalogue()[*line.in_place_of].name;
        list.push_back(line.note.empty() ? "for " + name : fmt::format("for {}: {}", name, line.note));
    }
    if (line.against_written > 0) list.emplace_back("more than written");
    if (line.against_written < 0) list.emplace_back("less than written");
    switch (line.standing) {
        case ask::Standing::fine:
            break;
        case ask::Standing::eat_soon:
            list.push_back("use by " + day(*line.use_by, today));
            break;
        case ask::Standing::frozen:
            list.emplace_back("still frozen");
            break;
        case ask::Standing::lacking:
            list.push_back(
                *line.missing == line.amount
                    ? "none in stock"
                    : fmt::format("{} missing", amount(*line.missing, kitchen.catalogue()[line.ingredient])));
            break;
    }
    return list;
}

std::string apart_words(const ask::RecipeApart& apart) {
    return fmt::format(
        "Apart, for {}: {}", listed(apart.people),
        apart.notes.empty() ? "in a pot, pan and plate of its own" : fmt::format("{}", fmt::join(apart.notes, "; ")));
}

std::string leftovers_words(const ask::RecipeAnswer& answer, const cookbook::Dish& dish) {
    if (!answer.keeps_days || *answer.keeps_days <= 0) return "";
    return fmt::format("Leftovers: in the fridge within 2 hours, {} day{}{}.", *answer.keeps_days,
                       *answer.keeps_days == 1 ? "" : "s", dish.freezes ? "; they freeze well" : "");
}

}  // namespace detail

std::optional<std::string> in_own_measure(std::string_view written, std::int64_t thousandths) {
    const auto read = measure::read_amount(written, measure::MeasureSet::australian_metric);
    const auto* amount = read ? std::get_if<measure::Amount>(&read->amount) : nullptr;
    if (amount == nullptr || read->upper) return std::nullopt;
    std::string unit = unit_of(written);
    constexpr std::int64_t cup_ul = 250'000;
    constexpr std::int64_t tablespoon_ul = 20'000;
    constexpr std::int64_t teaspoon_ul = 5'000;
    std::int64_t one = 1000;
    std::int64_t step = 2;  // halves of what is counted
    if (!unit.empty()) {
        one = unit == "cup" ? cup_ul : unit == "tbsp" ? tablespoon_ul : teaspoon_ul;
        step = 1;
    } else if (amount->dimension() == measure::Dimension::pieces && read->counted != "serve") {
        unit = read->counted;
    } else {
        return std::nullopt;
    }
    std::int64_t value = amount->value() * thousandths / 1000;
    if (unit == "tbsp" && value < tablespoon_ul / 2) unit = "tsp", one = teaspoon_ul;
    if (unit == "cup" && value < cup_ul / 4) unit = "tbsp", one = tablespoon_ul;
    if (unit.empty()) step = 1;                  // quarters of an onion
    if (!unit.empty() && value > one) step = 2;  // above one spoon or cup, halves
    if (value > 3 * one) step = 4;
    const std::int64_t quarters = std::max<std::int64_t>(step, (value * 4 + one * step / 2) / (one * step) * step);
    return in_quarters(quarters) + (unit.empty() ? "" : " " + plural(unit, quarters));
}

std::string text(const ask::RecipeAnswer& answer, const kitchen::Kitchen& kitchen, basics::Day today,
                 const Manner& /*manner*/) {
    return Card(answer, kitchen, today, screen_width()).text();
}

Json json(const ask::RecipeAnswer& answer, const kitchen::Kitchen& kitchen) {
    const cookbook::Dish& dish = kitchen.cookbook()[answer.question.dish];
    Json apart = Json::array();
    for (const ask::RecipeApart& one : answer.apart)
        apart.push_back({{"for", one.people}, {"lines", lines_json(one.lines, dish, kitchen)}, {"notes", one.notes}});
    return {{"dish", dish.id},
            {"label", dish.name},
            {"day", json_day(answer.question.day)},
            {"meal", name(answer.meal)},
            {"serves", json_serves(answer.serves_thousandths)},
            {"left", json_serves(answer.left_thousandths)},
            {"eaters", answer.eaters},
            {"guests", answer.guests},
            {"minutes", dish.minutes},
            {"hands_on", dish.hands_on},
            {"lines", lines_json(answer.lines, dish, kitchen)},
            {"optional", lines_json(answer.optional, dish, kitchen)},
            {"apart", std::move(apart)},
            {"method", dish.method},
            {"refused", answer.refused},
            {"cautions", answer.cautions},
            {"freezes", dish.freezes},
            {"keeps_days", answer.keeps_days ? Json(*answer.keeps_days) : Json(nullptr)}};
}

}  // namespace samebase::show
