#include "ask/else.hpp"

#include <fmt/format.h>

#include <algorithm>
#include <array>
#include <cmath>
#include <set>

#include "ask/detail/candidate.hpp"
#include "ask/detail/honest_name.hpp"
#include "ask/detail/there.hpp"
#include "ask/detail/worth.hpp"
#include "basics/exact.hpp"
#include "basics/ranges.hpp"
#include "graph/likeness.hpp"

namespace samebase::ask {

namespace {

using catalogue::IngredientId;
using detail::Candidate;
using detail::Setting;

/// The main ingredient of a dish: of those in the role main the heaviest, else the heaviest of all.
std::optional<IngredientId> main_ingredient(const kitchen::Kitchen& kitchen, cookbook::DishId id) {
    const cookbook::DishIngredient* best = nullptr;
    std::int64_t most = -1;
    for (const auto& line : kitchen.cookbook()[id].ingredients) {
        if (line.optional) continue;
        const auto mass = catalogue::weight(line.amount, kitchen.catalogue()[line.ingredient]);
        const std::int64_t weight =
            (mass ? mass->value : 0) + (line.role == catalogue::Role::main ? std::int64_t{1} << 50 : 0);
        if (weight <= most) continue;
        most = weight;
        best = &line;
    }
    return best == nullptr ? std::nullopt : std::optional(best->ingredient);
}

/// What a question is about: things to use, or else a kind of dish.
struct Subject {
    std::vector<catalogue::Of> used;
    std::string kind;
};

basics::Result<Subject> subject_of(const kitchen::Kitchen& kitchen, const ElseQuestion& question,
                                   std::optional<cookbook::DishId> reference) {
    if (!question.kind.empty()) return Subject{{}, question.kind};
    if (question.using_) {
        Subject subject{{*question.using_}, {}};
        subject.used.insert(subject.used.end(), question.also.begin(), question.also.end());
        return subject;
    }
    if (question.lot) {
        const stock::Lot* lot = kitchen.lot(*question.lot);
        if (lot == nullptr)
            return basics::problem(fmt::format("lot {}", *question.lot), "there is no such lot",
                                   "the number of a lot in stock");
        return Subject{{lot->ingredient}, {}};
    }
    const auto main = reference ? main_ingredient(kitchen, *reference) : std::nullopt;
    if (main) return Subject{{*main}, {}};
    if (auto kind = kitchen::standing_kind(kitchen.household, question.day)) return Subject{{}, std::move(*kind)};
    return basics::problem("else", fmt::format("nothing is planned for {}", basics::short_day(question.day)),
                           "what to use: an ingredient, a family, a lot or a dish");
}

/// Everything that the candidates of one question share, with what owns it.
struct Prepared {
    Prepared(const kitchen::Kitchen& kitchen, basics::Day today, const ElseQuestion& question, Subject subject)
        : balancer(kitchen, {today, std::max(flow::horizon(kitchen, today), question.day)}, flow::Effort::quick),
          before(balancer.balance(balancer.planned())) {
        setting.kitchen = &kitchen;
        setting.today = today;
        setting.question = question;
        setting.using_ = std::move(subject.used);
        setting.kind = std::move(subject.kind);
        setting.eaters = kitchen::eaters(kitchen, question.day, kitchen::Meal::dinner);
        setting.guests_avoid = kitchen::guests_avoid(kitchen, question.day);
        setting.holds = flow::held_allergens(kitchen);
        setting.balancer = &balancer;
        setting.stock_first = true;
        setting.before = &before;
        const flow::Slot slot = flow::dinner_of(static_cast<int>((question.day - today).count()));
        const std::size_t count = kitchen.catalogue().ingredients().size();
        setting.available.assign(count, 0);
        setting.in_danger.assign(count, 0);
        setting.can_be_bought_before.assign(count, false);
        const auto shopping = kitchen::shopping_day(kitchen.household, today);
        for (std::uint32_t i = 0; i < count; ++i) {
            const flow::Part* part = before.part(IngredientId{i});
            if (part != nullptr) {
                setting.available[i] = detail::available_at(part->component, slot);
                setting.in_danger[i] = detail::in_danger_at(*part, slot);
            }
            setting.can_be_bought_before[i] =
                shopping && *shopping <= question.day && kitchen.catalogue()[IngredientId{i}].pack.has_value();
        }
        for (const stock::Lot& lot : kitchen.lots) {
            if (lot.rough) setting.available[lot.ingredient.index()] = std::numeric_limits<std::int64_t>::max();
        }
        planned = kitchen::planned(kitchen.plan, question.day, kitchen::Meal::dinner);
    }
    Prepared(const Prepared&) = delete;
    Prepared& operator=(const Prepared&) = delete;

    flow::Balancer balancer;
    flow::Balance before;
    Setting setting;
    const kitchen::Planned* planned = nullptr;
};

basics::Result<std::unique_ptr<Prepared>> prepare(const kitchen::Kitchen& kitchen, basics::Day today,
                                                  const ElseQuestion& question) {
    if (question.day < today) {
        return basics::problem("--day", basics::iso(question.day), fmt::format("a day from {} on", basics::iso(today)));
    }
    const auto* planned = kitchen::planned(kitchen.plan, question.day, kitchen::Meal::dinner);
    const auto reference = question.instead_of ? question.instead_of
                           : planned           ? std::optional(planned->dish)
                                               : std::nullopt;
    auto subject = subject_of(kitchen, question, reference);
    if (!subject) return tl::make_unexpected(subject.error());
    if (!question.serves && kitchen::serves_wanted(kitchen, question.day, kitchen::Meal::dinner) == 0) {
        return basics::problem("--serves",
                               fmt::format("nobody is home for dinner on {}", basics::short_day(question.day)),
                               "how many serves to cook");
    }
    return std::make_unique<Prepared>(kitchen, today, question, std::move(*subject));
}

/// The plan with that dinner replaced.
std::vector<flow::Cooking> with_dinner(const Prepared& prepared, const flow::Cooking& dinner) {
    std::vector<flow::Cooking> cookings;
    bool placed = false;
    for (const flow::Cooking& cooking : prepared.before.cookings) {
        const bool same = cooking.day == dinner.day && cooking.meal == kitchen::Meal::dinner;
        if (!same) {
            cookings.push_back(cooking);
        } else if (!placed) {
            cookings.push_back(dinner);
            placed = true;
        }
    }
    if (!placed) cookings.push_back(dinner);
    return cookings;
}

class Ranker {
  public:
    Ranker(const Prepared& prepared, std::optional<cookbook::DishId> reference)
        : prepared_(prepared), kitchen_(*prepared.setting.kitchen), reference_(reference) {}

    [[nodiscard]] Alternative judged(cookbook::DishId id, Candidate candidate) {
        const cookbook::Dish& dish = kitchen_.cookbook()[id];
        Alternative result;
        result.dish = id;
        result.ready_meal = candidate.cooking.ready_meal;
        result.same_base =
            prepared_.setting.question.instead_of
                ? dish.base == kitchen_.cookbook()[*prepared_.setting.question.instead_of].base && dish.base
                : std::any_of(prepared_.setting.using_.begin(), prepared_.setting.using_.end(),
                              [&](const auto& of) { return detail::starts_from(kitchen_, dish, of); });
        if (reference_) {
            const auto& profiles = kitchen_.knowledge->profiles;
            result.likeness = graph::likeness(profiles[reference_->index()], profiles[id.index()], kitchen_.graph());
        }
        const flow::Balance after = prepared_.balancer.rebalance(
            prepared_.before, with_dinner(prepared_, candidate.cooking), candidate.bought_at_once, &memory_);
        detail::weigh(prepared_.setting, after, candidate, result);
        detail::describe(prepared_.setting, after, candidate, result);
        result.needs_trip = !candidate.bought_at_once.empty();
        result.label = detail::honest_name(kitchen_, id, candidate.stand_ins);
        result.stand_ins = std::move(candidate.stand_ins);
        result.scaled = std::move(candidate.scaled);
        result.cooking = std::move(candidate.cooking);
        return result;
    }

    /// Best first, a total order: worth, same base, likeness, ready meal last, identifier.
    static bool before(const Alternative& a, const Alternative& b) {
        if (a.worth != b.worth) return a.worth > b.worth;
        if (a.same_base != b.same_base) return a.same_base;
        if (a.likeness != b.likeness) return a.likeness > b.likeness;
        if (a.dish != b.dish) return a.dish < b.dish;
        return !a.ready_meal && b.ready_meal;
    }

  private:
    const Prepared& prepared_;
    const kitchen::Kitchen& kitchen_;
    std::optional<cookbook::DishId> reference_;
    flow::Memory memory_;
};

/// A ready meal of the dish that can be warmed for that dinner.
std::optional<Candidate> ready_meal(const Prepared& prepared, cookbook::DishId id) {
    if (!detail::has_ready_meal(*prepared.setting.kitchen, id)) return std::nullopt;
    Candidate candidate = detail::warmed(prepared.setting, id);
    if (!candidate.ruled_out.empty() || !candidate.vetoed.empty()) return std::nullopt;
    return candidate;
}

/// Leaves out what needs a trip, unless everything does.
void keep_to_stock(ElseAnswer& answer) {
    const auto needs_trip = [](const Alternative& a) { return a.needs_trip; };
    auto& all = answer.alternatives;
    answer.with_trip = static_cast<std::size_t>(std::count_if(all.begin(), all.end(), needs_trip));
    if (answer.with_trip == all.size()) {
        answer.with_trip = 0;
    } else {
        std::erase_if(all, needs_trip);
    }
}

std::optional<cookbook::DishId> reference_of(const Prepared& prepared) {
    if (prepared.setting.question.instead_of) return prepared.setting.question.instead_of;
    return prepared.planned ? std::optional(prepared.planned->dish) : std::nullopt;
}

ElseAnswer answered(const Prepared& prepared) {
    const kitchen::Kitchen& kitchen = *prepared.setting.kitchen;
    ElseAnswer answer;
    answer.question = prepared.setting.question;
    answer.used = prepared.setting.using_;
    answer.question.kind = prepared.setting.kind;
    answer.horizon = prepared.before.span.last;
    answer.serves_thousandths = answer.question.serves
                                    ? std::int64_t{1000} * *answer.question.serves
                                    : kitchen::serves_wanted(kitchen, answer.question.day, kitchen::Meal::dinner);
    if (prepared.planned != nullptr) answer.planned = prepared.planned->dish;
    Ranker ranker(prepared, reference_of(prepared));
    for (const cookbook::DishId id : basics::handles<cookbook::DishId>(kitchen.cookbook().dishes().size())) {
        if (!kitchen.cookbook()[id].dinner || answer.question.instead_of == id) continue;
        const bool is_planned = answer.planned == id && !prepared.planned->ready_meal;
        if (!is_planned) {
            Candidate candidate = detail::candidate(prepared.setting, id);
            if (!candidate.ruled_out.empty() || !candidate.vetoed.empty()) continue;
            answer.alternatives.push_back(ranker.judged(id, std::move(candidate)));
        }
        if (auto ready = ready_meal(prepared, id)) answer.alternatives.push_back(ranker.judged(id, std::move(*ready)));
    }
    std::sort(answer.alternatives.begin(), answer.alternatives.end(), Ranker::before);
    if (answer.question.from_stock) keep_to_stock(answer);
    return answer;
}

}  // namespace

basics::Result<ElseAnswer> ask_else(const kitchen::Kitchen& kitchen, basics::Day today, const ElseQuestion& question) {
    return prepare(kitchen, today, question).map([](const auto& prepared) { return answered(*prepared); });
}

basics::Result<WhyNot> why_not(const kitchen::Kitchen& kitchen, basics::Day today, const ElseQuestion& question,
                               cookbook::DishId dish) {
    const auto prepared = prepare(kitchen, today, question);
    if (!prepared) return tl::make_unexpected(prepared.error());
    WhyNot result;
    result.dish = dish;
    if (!kitchen.cookbook()[dish].dinner) result.reasons.emplace_back("it is not a dinner");
    if ((*prepared)->planned != nullptr && (*prepared)->planned->dish == dish)
        result.reasons.emplace_back("it is what is planned already");
    const Candidate candidate = detail::candidate((*prepared)->setting, dish);
    result.reasons.insert(result.reasons.end(), candidate.ruled_out.begin(), candidate.ruled_out.end());
    result.reasons.insert(result.reasons.end(), candidate.vetoed.begin(), candidate.vetoed.end());
    if (!result.reasons.empty()) return result;
    const ElseAnswer answer = answered(**prepared);
    const auto found = std::find_if(answer.alternatives.begin(), answer.alternatives.end(),
                                    [&](const Alternative& a) { return a.dish == dish && !a.ready_meal; });
    if (found == answer.alternatives.end()) return result;
    result.position = static_cast<std::size_t>(found - answer.alternatives.begin());
    result.alternative = *found;
    return result;
}

}  // namespace samebase::ask
