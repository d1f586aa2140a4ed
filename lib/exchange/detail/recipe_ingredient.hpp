// Which ingredient a written line means, and how much of it: as recipe_dish.hpp says.
#pragma once

#include <map>
#include <optional>
#include <string>
#include <string_view>
#include <vector>

#include "catalogue/catalogue.hpp"
#include "catalogue/names.hpp"
#include "exchange/detail/line_words.hpp"
#include "measure/line.hpp"

namespace samebase::exchange::detail {

/// What words mean by the whole of a name, or what is nearest.
struct Called {
    std::optional<catalogue::IngredientId> ingredient;
    std::string slip_of;  ///< the name of which the words are a slip; "" where they are not
    /// Where nothing, or more than one thing, is called that: names, at most three, and whether all of them are.
    std::vector<std::string> nearest;
    bool several = false;
    bool said_before = false;  ///< the cook said so of another recipe
};

class Names {
  public:
    explicit Names(const catalogue::Catalogue& catalogue);

    [[nodiscard]] Called called(const std::string& words) const;
    /// The ingredient of a line: its name with what stands before it, behind it, or as the container says.
    [[nodiscard]] Called of(const measure::WrittenLine& line) const;
    /// "salt and pepper": two lines where both are clear and neither has an amount, else none.
    [[nodiscard]] std::vector<measure::WrittenLine> two_things(const measure::WrittenLine& line,
                                                               measure::MeasureSet set) const;

  private:
    using Words = std::vector<std::string>;
    [[nodiscard]] std::optional<catalogue::IngredientId> exact(const std::string& words) const;
    [[nodiscard]] std::optional<catalogue::IngredientId> letter_for_letter(const measure::WrittenLine& line) const;
    [[nodiscard]] Called with(const Words& before, const measure::WrittenLine& line) const;
    [[nodiscard]] Called in_container(const measure::WrittenLine& line, const std::string& words) const;
    [[nodiscard]] std::optional<catalogue::IngredientId> plainer(const Words& words) const;
    [[nodiscard]] std::optional<catalogue::IngredientId> whole_of(const Words& words) const;
    [[nodiscard]] Called in_its_form(const Called& found, const Words& before, const measure::WrittenLine& line) const;
    [[nodiscard]] bool of_family(catalogue::IngredientId id, std::string_view family) const;
    [[nodiscard]] bool only_cut(const Words& dropped, catalogue::IngredientId id) const;
    [[nodiscard]] Called not_called(const std::string& words, const std::string& shorter = {}) const;

    const catalogue::Catalogue* catalogue_;
    catalogue::NameIndex index_;
    std::map<std::string, catalogue::IngredientId> long_names_;  ///< of several words, in lower case
};

/// Whether it is water, of whatever heat.
[[nodiscard]] bool is_water(std::string_view name);

/// An amount as the dish writes it.
struct DishAmount {
    measure::Amount amount;  ///< in the ingredient's own dimension, above 0
    std::string written;     ///< reads as that amount
    std::string note;        ///< what was settled, "" where nothing was
};

/// How much of the ingredient the line says. The Problem has no `where`.
[[nodiscard]] basics::Result<DishAmount> amount_in(const measure::WrittenLine& line, catalogue::IngredientId id,
                                                   const catalogue::Catalogue& catalogue, measure::MeasureSet set);
/// The same of an amount that the cook says.
[[nodiscard]] basics::Result<DishAmount> amount_said(const std::string& text, catalogue::IngredientId id,
                                                     const catalogue::Catalogue& catalogue, measure::MeasureSet set);

}  // namespace samebase::exchange::detail
