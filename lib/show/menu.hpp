// What is planned, as text and as JSON.
#pragma once

#include <nlohmann/json_fwd.hpp>
#include <string>
#include <vector>

#include "ask/menu.hpp"
#include "show/words.hpp"

namespace samebase::show {

[[nodiscard]] std::string text(const ask::Menu& menu, const kitchen::Kitchen& kitchen, basics::Day today,
                               const Manner& manner);
[[nodiscard]] nlohmann::ordered_json json(const ask::Menu& menu, const kitchen::Kitchen& kitchen);

/// "rissoles", "had: rissoles", "open, pizza night".
[[nodiscard]] std::string dinner_words(const ask::MenuDay& day, const kitchen::Kitchen& kitchen);
/// "soup and cheese toastie from the freezer".
[[nodiscard]] std::string meals_words(const std::vector<ask::MenuMeal>& meals, const kitchen::Kitchen& kitchen);
/// "2 guests", notes of occasions, "without Bram", "trip".
[[nodiscard]] std::vector<std::string> remarks(const ask::MenuDay& day);

}  // namespace samebase::show
