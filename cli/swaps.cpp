#include "swaps.hpp"

#include <fmt/format.h>

#include <algorithm>

#include "amounts.hpp"
#include "flow/cooking.hpp"
#include "meaning.hpp"

namespace samebase::cli {

namespace {

tl::unexpected<Failure> not_so(const std::string& text, std::string expected) {
    return failure(not_understood, {{"--with", fmt::format("'{}'", text), std::move(expected), std::nullopt}});
}

class Reader {
  public:
    Reader(const kitchen::Kitchen& kitchen, cookbook::DishId dish, std::int64_t serves)
        : kitchen_(kitchen), dish_(kitchen.cookbook()[dish]), serves_(serves) {}

    tl::expected<kitchen::LineSwap, Failure> read(const std::string& text) const {
        const auto at = text.rfind(" for ");
        if (at == std::string::npos) return not_so(text, "'X for Y', as in 'pork mince for beef mince'");
        std::vector<catalogue::IngredientId> lines;
        for (const auto& line : dish_.ingredients) lines.push_back(line.ingredient);
        const auto of =
            one_of_meant(kitchen_, lines, text.substr(at + 5), fmt::format("an ingredient of {}", dish_.name));
        if (!of) return tl::make_unexpected(of.error());
        kitchen::LineSwap swap{*of, {}, serves_};
        if (text.substr(0, at) == "nothing") return swap;
        const auto parts = split_at_plus(text.substr(0, at));
        for (const std::string& part : parts) {
            const auto said = read_said(part, kitchen_.household.measures);
            if (!said) return tl::make_unexpected(said.error());
            const auto thing = Things(kitchen_, std::nullopt, Things::For::stock).meant(said->name);
            if (!thing) return tl::make_unexpected(thing.error());
            const auto quantity = quantity_of(kitchen_, *thing, *said, std::nullopt);
            if (!quantity) return tl::make_unexpected(quantity.error());
            if (quantity->rough || quantity->packs) return not_so(text, "an amount such as 300 g, or none");
            swap.use.emplace_back(thing->ingredient, quantity->amount ? quantity->amount->value() : -1);
        }
        fill_in(swap);
        return swap;
    }

  private:
    static std::vector<std::string> split_at_plus(const std::string& text) {
        std::vector<std::string> parts;
        std::size_t from = 0;
        for (auto at = text.find(" + "); at != std::string::npos; at = text.find(" + ", from)) {
            parts.push_back(text.substr(from, at - from));
            from = at + 3;
        }
        parts.push_back(text.substr(from));
        return parts;
    }

    /// The amounts that were not said.
    void fill_in(kitchen::LineSwap& swap) const {
        const auto usual = flow::swap_of(kitchen_.catalogue(), dish_, swap.of, ratios(swap), serves_);
        for (std::size_t i = 0; i < swap.use.size(); ++i) {
            if (swap.use[i].second < 0) swap.use[i].second = usual.use[i].second;
        }
    }

    /// Of the best known stand-in of just these parts, else weight for weight.
    [[nodiscard]] std::vector<std::pair<catalogue::IngredientId, graph::Ppm>> ratios(
        const kitchen::LineSwap& swap) const {
        const auto line = std::find_if(dish_.ingredients.begin(), dish_.ingredients.end(),
                                       [&](const auto& l) { return l.ingredient == swap.of; });
        for (const auto& way : kitchen_.graph().stand_ins({line->ingredient, line->role}, 0, {})) {
            const bool same = std::equal(way.use.begin(), way.use.end(), swap.use.begin(), swap.use.end(),
                                         [](const auto& a, const auto& b) { return a.first == b.first; });
            if (same) return way.use;
        }
        std::vector<std::pair<catalogue::IngredientId, graph::Ppm>> alike;
        for (const auto& [use, amount] : swap.use) alike.emplace_back(use, graph::one);
        return alike;
    }

    const kitchen::Kitchen& kitchen_;
    const cookbook::Dish& dish_;
    std::int64_t serves_;
};

}  // namespace

tl::expected<std::vector<kitchen::LineSwap>, Failure> read_swaps(const std::string& text,
                                                                 const kitchen::Kitchen& kitchen, cookbook::DishId dish,
                                                                 std::int64_t serves) {
    std::vector<kitchen::LineSwap> swaps;
    const Reader reader(kitchen, dish, serves);
    for (const std::string& one : split_at_commas(text)) {
        auto swap = reader.read(one);
        if (!swap) return tl::make_unexpected(swap.error());
        const bool twice = std::any_of(swaps.begin(), swaps.end(), [&](const auto& s) { return s.of == swap->of; });
        if (twice) return not_so(one, fmt::format("'{}' once", kitchen.catalogue()[swap->of].name));
        swaps.push_back(std::move(*swap));
    }
    return swaps;
}

void add_with(CLI::App& command, std::vector<std::string>& with) {
    command.add_option("--with", with, "'pork mince for beef mince', 'nothing for celery', with commas")
        ->type_name("X for Y");
}

}  // namespace samebase::cli
