#include "ask/recipe.hpp"

#include <fmt/format.h>

#include <algorithm>

#include "ask/detail/at_table.hpp"
#include "ask/detail/candidate.hpp"
#include "basics/exact.hpp"

namespace samebase::ask {

namespace {

using kitchen::Meal;

class Writing {
  public:
    Writing(const kitchen::Kitchen& kitchen, basics::Day today, const RecipeQuestion& question)
        : kitchen_(kitchen), today_(today), dish_(kitchen.cookbook()[question.dish]) {
        answer_.question = question;
        row_ = planned(question);
        answer_.meal = row_.meal;
        row_.swaps = kitchen::both(question.swaps, row_.swaps);
        const kitchen::Cooking cooking = kitchen::cook(kitchen, row_);
        answer_.serves_thousandths = cooking.serves_thousandths;
        answer_.left_thousandths = cooking.left_thousandths;
        cooked_ =
            (row_.serves ? std::int64_t{1000} * *row_.serves : kitchen::serves_wanted(kitchen, row_.day, row_.meal)) +
            std::int64_t{1000} * row_.left;
    }

    RecipeAnswer answer() && {
        add_people();
        const kitchen::Batch batch{row_.day, row_.meal, row_.dish, cooked_, row_.swaps};
        takes_ = kitchen::takes(kitchen_, batch);
        for (const kitchen::LineTake& line : takes_.lines) add_line(line);
        for (const kitchen::LineTake& line : takes_.lines) add_apart(line);
        add_notes_apart();
        add_cautions();
        if (dish_.leaves) {
            const auto& keeping =
                kitchen_.catalogue()[*dish_.leaves].keeps[static_cast<std::size_t>(catalogue::Keep::fridge)];
            if (keeping.said == catalogue::Keeping::Said::time) answer_.keeps_days = keeping.time.days;
        }
        return std::move(answer_);
    }

  private:
    /// The row of the plan that it is, else one made for the question.
    [[nodiscard]] kitchen::Planned planned(const RecipeQuestion& question) const {
        kitchen::Planned row{question.day, Meal::dinner, question.dish, false, question.serves, question.left, {}};
        for (const Meal meal : {Meal::dinner, Meal::lunch}) {
            if (question.meal && *question.meal != meal) continue;
            for (const kitchen::Plan* plan : {&kitchen_.plan, &kitchen_.done}) {
                const auto* found = kitchen::planned(*plan, question.day, meal, question.dish);
                if (found == nullptr) continue;
                row = *found;
                row.ready_meal = false;
                if (question.serves) row.serves = question.serves;
                if (question.left > 0) row.left = question.left;
                return row;
            }
        }
        row.meal = question.meal.value_or(dish_.dinner ? Meal::dinner : Meal::lunch);
        if (!row.serves && kitchen::serves_wanted(kitchen_, row.day, row.meal) == 0) row.serves = dish_.serves;
        return row;
    }

    void add_people() {
        if (row_.serves) return;
        for (const std::size_t eater : kitchen::eaters(kitchen_, row_.day, row_.meal))
            answer_.eaters.push_back(kitchen_.household.people[eater].name);
        if (row_.meal != Meal::dinner) return;
        for (const kitchen::Occasion& occasion : kitchen_.household.occasions)
            if (occasion.day == row_.day) answer_.guests += occasion.guests;
    }

    void add_line(const kitchen::LineTake& taken) {
        const cookbook::DishIngredient& written = dish_.ingredients[taken.line];
        for (const kitchen::Needed& take : taken.takes) {
            if (take.amount == 0) continue;
            RecipeLine line = line_of(taken.line, take);
            if (take.ingredient != written.ingredient) {
                line.in_place_of = written.ingredient;
                line.note = note_of(written, take.ingredient);
            }
            (written.optional ? answer_.optional : answer_.lines).push_back(std::move(line));
        }
    }

    [[nodiscard]] RecipeLine line_of(std::size_t at, const kitchen::Needed& take) const {
        const cookbook::DishIngredient& written = dish_.ingredients[at];
        RecipeLine line;
        line.line = at;
        line.ingredient = take.ingredient;
        line.amount = {kitchen_.catalogue()[take.ingredient].dimension, take.amount};
        if (take.ingredient == written.ingredient) {
            line.of_written = basics::fits(basics::scale(std::int64_t{1000}, take.amount, written.amount.value()));
            const auto usual =
                basics::fits(basics::scale(written.amount.value(), cooked_, std::int64_t{1000} * dish_.serves));
            constexpr std::int64_t noticed = 15;  // a hand does not see less than 15 in 100
            if (take.amount * 100 > usual * (100 + noticed)) line.against_written = 1;
            if (take.amount * 100 < usual * (100 - noticed) && takes_.lines[at].apart.empty())
                line.against_written = -1;
        }
        if (row_.day == today_) stand(line);
        return line;
    }

    [[nodiscard]] std::string note_of(const cookbook::DishIngredient& written, catalogue::IngredientId use) const {
        const auto& graph = kitchen_.graph();
        for (const graph::StandIn& stand_in :
             graph.stand_ins({written.ingredient, written.role}, graph.parameters().least_fit, {})) {
            const bool uses = std::any_of(stand_in.use.begin(), stand_in.use.end(),
                                          [&](const auto& part) { return part.first == use; });
            if (uses) return stand_in.note;
        }
        return "";
    }

    void stand(RecipeLine& line) const {
        if (kitchen_.taken_as_there(line.ingredient)) return;
        std::int64_t ready = 0;
        std::int64_t frozen = 0;
        std::optional<basics::Day> soonest;
        const bool from_frozen = kitchen_.catalogue()[line.ingredient].thaw == catalogue::Thaw::from_frozen;
        for (const stock::Lot& lot : kitchen_.lots) {
            if (lot.ingredient != line.ingredient || (lot.use_by && *lot.use_by < today_)) continue;
            if (lot.rough) return;
            const bool can = lot.ready(today_) || (from_frozen && lot.state == stock::State::frozen);
            (can ? ready : frozen) += lot.amount.value();
            if (can && lot.use_by && (!soonest || *lot.use_by < *soonest)) soonest = lot.use_by;
        }
        const std::int64_t wanted = line.amount.value();
        if (ready + frozen < wanted) {
            line.standing = Standing::lacking;
            line.missing = measure::Amount{line.amount.dimension(), wanted - ready - frozen};
        } else if (ready < wanted) {
            line.standing = Standing::frozen;
        } else if (soonest && *soonest <= today_ + basics::days{1}) {
            line.standing = Standing::eat_soon;
            line.use_by = soonest;
        }
    }

    void add_apart(const kitchen::LineTake& taken) {
        for (const kitchen::ApartTake& apart : taken.apart) {
            const std::string& name = kitchen_.household.people[apart.person].name;
            RecipeLine line = line_of(taken.line, apart.take);
            line.in_place_of = dish_.ingredients[taken.line].ingredient;
            const auto same = std::find_if(answer_.apart.begin(), answer_.apart.end(),
                                           [&](const RecipeApart& other) { return other.people.front() == name; });
            if (same == answer_.apart.end()) {
                answer_.apart.push_back({{name}, {std::move(line)}, {}});
            } else {
                same->lines.push_back(std::move(line));
            }
        }
    }

    void add_notes_apart() {
        const kitchen::Holds holds = kitchen::held_allergens(kitchen_);
        for (RecipeApart& apart : answer_.apart) {
            for (const kitchen::Person& person : kitchen_.household.people) {
                if (person.name != apart.people.front()) continue;
                for (const cookbook::SeparateServe* serve :
                     kitchen::serve_for(dish_, person.avoids, row_.swaps, holds).apart) {
                    if (!serve->note.empty()) apart.notes.push_back(serve->note);
                }
            }
        }
    }

    void add_cautions() {
        const detail::AtTable table = detail::at_table(kitchen_, row_);
        answer_.refused = table.refused;
        for (const std::string& caution : table.cautions) {
            // The serves apart stand in lines of their own.
            if (!caution.starts_with("A serve apart")) answer_.cautions.push_back(caution);
        }
        const auto usual = detail::safety_cautions(kitchen_, kitchen::cook(kitchen_, row_), {}, today_);
        answer_.cautions.insert(answer_.cautions.end(), usual.begin(), usual.end());
    }

    const kitchen::Kitchen& kitchen_;
    basics::Day today_;
    const cookbook::Dish& dish_;
    kitchen::Planned row_;
    kitchen::Takes takes_;
    std::int64_t cooked_ = 0;  ///< serves, before what whole joints give more
    RecipeAnswer answer_;
};

}  // namespace

basics::Result<RecipeAnswer> ask_recipe(const kitchen::Kitchen& kitchen, basics::Day today,
                                        const RecipeQuestion& question) {
    const cookbook::Dish& dish = kitchen.cookbook()[question.dish];
    if (dish.ingredients.empty()) return basics::problem(dish.name, "nothing is cooked", "a dish with a recipe");
    return Writing(kitchen, today, question).answer();
}

}  // namespace samebase::ask
