// What a plan of meals keeps from the bin and costs, found by living through it day by day. Written from the words of
// ask/clear.hpp alone; shares no code with the search or the programme. What a dish takes is the kitchen's own
// arithmetic, which has tests of its own.
#pragma once

#include <map>
#include <span>
#include <string>
#include <utility>
#include <vector>

#include "kitchen/kitchen.hpp"

namespace samebase::tests {

struct ChosenMeal {
    basics::Day day;
    kitchen::Meal meal = kitchen::Meal::dinner;
    cookbook::DishId dish;
    bool ready_meal = false;
    std::vector<std::pair<catalogue::IngredientId, std::int64_t>> wants;
    double stand_in_loss = 0;  ///< in minor units
};

struct Judged {
    double value = 0;  ///< in minor units, no line rounded
    std::map<catalogue::IngredientId, std::int64_t> danger;
    std::map<catalogue::IngredientId, std::int64_t> saved;
    std::map<catalogue::IngredientId, std::int64_t> packs;
    std::vector<std::string> faults;  ///< why it is no plan that may be answered
};

class Judge {
  public:
    /// Stock of one lot, with the first and the last meal of its time; meals count two a day.
    struct Batch {
        catalogue::IngredientId ingredient;
        std::int64_t amount = 0;
        int first = 0;
        int last = 0;
        std::int64_t lot = 0;
        bool crisper = false;
    };

    /// The kitchen outlives the judge. No meal that stands leaves anything or gives by-products.
    Judge(const kitchen::Kitchen& kitchen, basics::Day today, basics::Day until);

    [[nodiscard]] Judged judge(std::span<const ChosenMeal> meals) const;
    /// Meals that somebody is home for and that no occasion has taken.
    [[nodiscard]] const std::vector<std::pair<basics::Day, kitchen::Meal>>& open() const { return open_; }
    /// What of an ingredient is in danger and can be eaten at that meal.
    [[nodiscard]] std::int64_t danger_at(catalogue::IngredientId id, basics::Day day, kitchen::Meal meal) const;

    [[nodiscard]] int meal_number(basics::Day day, kitchen::Meal meal) const;
    /// What there is, after what stands has eaten.
    [[nodiscard]] const std::vector<Batch>& batches() const { return batches_; }
    [[nodiscard]] bool in_danger(const Batch& batch) const { return batch.last <= end_; }
    /// What saving an amount of each thing in danger counts, in minor units.
    [[nodiscard]] const std::map<catalogue::IngredientId, double>& worth() const { return worth_; }
    [[nodiscard]] double liking_and_variety(const ChosenMeal& meal) const;
    /// What leaving an open meal empty costs.
    [[nodiscard]] double price_of_nothing(basics::Day day, kitchen::Meal meal) const;

  private:
    void stock_up();
    void eat_what_stands();
    void price_the_danger();
    [[nodiscard]] bool stands(const kitchen::Planned& row) const;
    [[nodiscard]] static std::int64_t eat(std::vector<Batch>& batches, catalogue::IngredientId id, int meal,
                                          std::int64_t amount, int danger_until, std::int64_t* saved);
    void find_faults(std::span<const ChosenMeal> meals, Judged& judged) const;

    const kitchen::Kitchen* kitchen_;
    basics::Day today_;
    basics::Day until_;
    basics::Day horizon_;
    int end_ = 0;  ///< the last meal of the horizon
    std::vector<std::pair<basics::Day, kitchen::Meal>> open_;
    std::vector<Batch> batches_;
    std::map<catalogue::IngredientId, std::int64_t> danger_;
    std::map<catalogue::IngredientId, double> worth_;
};

/// Every dish that may be had at that meal, as written, and with as much of what is in danger as its lines bear.
/// For kitchens in which nobody avoids anything and nothing stands in for anything.
[[nodiscard]] std::vector<ChosenMeal> choices(const kitchen::Kitchen& kitchen, const Judge& judge, basics::Day day,
                                              kitchen::Meal meal);

}  // namespace samebase::tests
