// Answers as sheets. A sheet hangs for days: it names days by their dates, never "tomorrow".
#pragma once

#include "ask/list.hpp"
#include "ask/lunches.hpp"
#include "ask/menu.hpp"
#include "ask/recipe.hpp"
#include "ask/thaw.hpp"
#include "ask/tonight.hpp"
#include "show/sheet.hpp"
#include "show/stock.hpp"

namespace samebase::show {

/// For the fridge's door: dinner, who eats, what is taken out, and lunch of each day of the menu. Of `thaw` what is
/// taken out on these days.
[[nodiscard]] Sheet week_sheet(const ask::Menu& menu, const ask::ThawAnswer& thaw, const kitchen::Kitchen& kitchen);

enum class Naming : std::uint8_t { nobody, everybody };

/// The same to pass on to others: dinners, what to take out when, and what is cooked in place of what. With
/// Naming::nobody no name of anybody of the household is in it: notes that have one are left out.
[[nodiscard]] Sheet shared_week_sheet(const ask::Menu& menu, const ask::ThawAnswer& thaw,
                                      const kitchen::Kitchen& kitchen, Naming naming);

[[nodiscard]] Sheet month_sheet(const ask::Menu& menu, const kitchen::Kitchen& kitchen, basics::Day today);

/// By place, with a box to tick for each pack: what is alike is one row.
[[nodiscard]] Sheet stock_sheet(const StockAnswer& answer, const kitchen::Kitchen& kitchen);
/// What nothing planned eats in time, by day; of the answer's lots what is past its use-by besides.
[[nodiscard]] Sheet first_sheet(const ask::TonightAnswer& answer, const kitchen::Kitchen& kitchen);

[[nodiscard]] Sheet lunches_sheet(const ask::LunchesAnswer& answer, const kitchen::Kitchen& kitchen);
/// In the order of the shop, with a box to tick and room for the price that was paid.
[[nodiscard]] Sheet list_sheet(const ask::ListAnswer& answer, const kitchen::Kitchen& kitchen);
[[nodiscard]] Sheet recipe_sheet(const ask::RecipeAnswer& answer, const kitchen::Kitchen& kitchen, basics::Day today);

}  // namespace samebase::show
