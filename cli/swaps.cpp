#include "swaps.hpp"

#include <fmt/format.h>

#include <algorithm>

#include "amounts.hpp"
#include "basics/exact.hpp"
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

    tl::expected<kitchen::LineSwap, Failure> read(const std::string& text, std::vector<std::string>& notes) const {
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
        fill_in(swap, notes);
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
    void fill_in(kitchen::LineSwap& swap, std::vector<std::string>& notes) const {
        const bool all_said =
            std::all_of(swap.use.begin(), swap.use.end(), [](const auto& use) { return use.second >= 0; });
        if (all_said) return;
        const auto usual = flow::swap_of(kitchen_.catalogue(), dish_, swap.of, ratios(swap, notes), serves_);
        for (std::size_t i = 0; i < swap.use.size(); ++i) {
            if (swap.use[i].second < 0) swap.use[i].second = usual.use[i].second;
        }
    }

    using Ratios = std::vector<std::pair<catalogue::IngredientId, graph::Ppm>>;

    /// In the order in which the parts were said.
    [[nodiscard]] Ratios ratios(const kitchen::LineSwap& swap, std::vector<std::string>& notes) const {
        std::vector<catalogue::IngredientId> parts;
        for (const auto& [use, amount] : swap.use) parts.push_back(use);
        if (const auto known = known_ratios(swap.of, parts)) return *known;
        const auto share = graph::one / static_cast<graph::Ppm>(parts.size());
        Ratios result;
        for (std::size_t i = 0; i < parts.size(); ++i) {
            const auto known = parts.size() == 1 ? std::nullopt : known_ratios(swap.of, {parts[i]});
            const auto ratio = known ? known->front().second : graph::one;
            if (!known && swap.use[i].second < 0) {
                notes.push_back(fmt::format("how much {} does the work of {} is not known: weight for weight",
                                            kitchen_.catalogue()[parts[i]].name, kitchen_.catalogue()[swap.of].name));
            }
            result.emplace_back(parts[i], basics::fits(basics::scale(ratio, share, graph::one)));
        }
        return result;
    }

    /// Of the best stand-in of just these parts for the first line of it that must be there, whatever its fit.
    [[nodiscard]] std::optional<Ratios> known_ratios(catalogue::IngredientId of,
                                                     std::vector<catalogue::IngredientId> parts) const {
        const cookbook::DishIngredient* line = nullptr;
        for (const auto& one : dish_.ingredients) {
            if (one.ingredient == of && (line == nullptr || (line->optional && !one.optional))) line = &one;
        }
        const auto as_said = parts;
        std::sort(parts.begin(), parts.end());
        for (const auto& way : kitchen_.graph().stand_ins({line->ingredient, line->role}, 0, {})) {
            std::vector<catalogue::IngredientId> used;
            for (const auto& [use, ratio] : way.use) used.push_back(use);
            std::sort(used.begin(), used.end());
            if (used != parts) continue;
            Ratios result;
            for (const auto part : as_said) {
                result.push_back(
                    *std::find_if(way.use.begin(), way.use.end(), [&](const auto& use) { return use.first == part; }));
            }
            return result;
        }
        return std::nullopt;
    }

    const kitchen::Kitchen& kitchen_;
    const cookbook::Dish& dish_;
    std::int64_t serves_;
};

}  // namespace

tl::expected<ReadSwaps, Failure> read_swaps(const std::string& text, const kitchen::Kitchen& kitchen,
                                            cookbook::DishId dish, std::int64_t serves) {
    ReadSwaps result;
    const Reader reader(kitchen, dish, serves);
    for (const std::string& one : split_at_commas(text)) {
        auto swap = reader.read(one, result.notes);
        if (!swap) return tl::make_unexpected(swap.error());
        const bool twice =
            std::any_of(result.swaps.begin(), result.swaps.end(), [&](const auto& s) { return s.of == swap->of; });
        if (twice) return not_so(one, fmt::format("'{}' once", kitchen.catalogue()[swap->of].name));
        result.swaps.push_back(std::move(*swap));
    }
    return result;
}

void add_with(CLI::App& command, std::vector<std::string>& with) {
    command.add_option("--with", with, "'pork mince for beef mince', 'nothing for carrot', with commas")
        ->type_name("X for Y");
}

}  // namespace samebase::cli
