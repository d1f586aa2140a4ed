// What a balance finds that a cook must see to, in the order in which they must act.
#pragma once

#include <cstdint>
#include <optional>
#include <string_view>
#include <vector>

#include "flow/balance.hpp"

namespace samebase::flow {

struct Finding {
    enum class Kind : std::uint8_t {
        past_use_by,  ///< in stock past its use-by: never eaten
        not_thawed,   ///< wanted, and frozen with too little time to thaw
        short_of,     ///< wanted, and neither there nor to be bought in time
        tossed,       ///< nothing planned eats it in time
        no_room       ///< a place holds more than it has room for
    };
    Kind kind = Kind::tossed;
    basics::Day day;  ///< past: its use-by; wanted: the meal's day; tossed: the last day it could be eaten; room: the
                      ///< first day
    catalogue::IngredientId ingredient;  ///< of `no_room`, what takes most room there
    std::int64_t amount = 0;             ///< in its own dimension
    basics::Money price;
    stock::LotNumber lot = 0;              ///< of stock; 0 for what is yet to be bought or cooked
    bool use_by = false;                   ///< tossed: by a use-by, else a matter of quality
    std::optional<cookbook::DishId> dish;  ///< wanted: by that dish; nothing: a standing use
    kitchen::Meal meal = kitchen::Meal::dinner;
    std::optional<stock::PlaceId> place;  ///< no room: which
    std::int64_t over_ml = 0;             ///< and by how much

    friend bool operator==(const Finding&, const Finding&) = default;
};

[[nodiscard]] std::string_view name(Finding::Kind kind);  ///< "past-use-by"

/// In the order of (kind, day, dearest first, ingredient, lot). Costs about what the ledger costs.
[[nodiscard]] std::vector<Finding> findings(const kitchen::Kitchen& kitchen, const Balance& balance);

/// Those about one ingredient, `no_room` left out.
[[nodiscard]] std::vector<Finding> findings_of(const kitchen::Kitchen& kitchen, const Balance& balance,
                                               catalogue::IngredientId ingredient);

}  // namespace samebase::flow
