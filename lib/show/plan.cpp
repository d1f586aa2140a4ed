#include "show/plan.hpp"

#include <fmt/format.h>

#include <algorithm>
#include <array>
#include <nlohmann/json.hpp>

#include "show/detail/parts.hpp"
#include "show/json.hpp"

namespace samebase::show {

namespace {

using State = ask::PlanDay::State;
using ReasonKind = ask::PlanReason::Kind;

class Page {
  public:
    Page(const ask::PlanAnswer& answer, const kitchen::Kitchen& kitchen, basics::Day today, const std::string& said,
         const Manner& manner)
        : answer_(answer), kitchen_(kitchen), today_(today), said_(said), manner_(manner) {}

    std::string text() {
        sentence();
        for (const ask::PlanDay& day : answer_.days) row(day);
        nothing();
        news();
        trips();
        if (answer_.why) why(*answer_.why);
        if (answer_.stopped) out_ += "Stopped early: the best so far.\n";
        if (count(State::proposed) + count(State::wished) > 0)
            out_ += wrapped(fmt::format("Take it: samebase plan {} --write. Why a day has what it has: --explain DAY",
                                        said_),
                            2) +
                    "\n";
        return out_;
    }

  private:
    [[nodiscard]] std::ptrdiff_t count(State state) const {
        return std::count_if(answer_.days.begin(), answer_.days.end(),
                             [&](const ask::PlanDay& day) { return day.state == state; });
    }
    [[nodiscard]] std::string about(basics::Money money) const {
        return about_money(money, kitchen_.household.currency);
    }
    [[nodiscard]] const std::string& dish(cookbook::DishId id) const { return kitchen_.cookbook()[id].name; }

    void sentence() {
        const auto chosen = count(State::proposed);
        std::string line = fmt::format("{} to {}: {} chosen", capitalised(day(answer_.span.first, today_)),
                                       day(answer_.span.last, today_), counted(chosen, "dinner"));
        if (const auto stood = count(State::planned) + count(State::wished); stood > 0)
            line += fmt::format(", {} as planned or wished", stood);
        line += fmt::format(". They add {} to buy", answer_.more.minor > 0 ? about(answer_.more) : "nothing");
        if (answer_.binned.minor > 0)
            line += fmt::format("; about {} of food is in no meal yet", about(answer_.binned));
        // A bound that is far away says nothing to a cook.
        constexpr double near = 0.25;
        if (chosen > 0 && answer_.gap <= near) line += "; " + detail::how_good(answer_.proved_best, answer_.gap);
        out_ += wrapped(line + ".", 0) + "\n";
        if (!answer_.budget) return;
        const basics::Money over = answer_.spent - *answer_.budget;
        out_ += wrapped(over.minor > 0
                            ? fmt::format("! All that is planned costs {}, {} over the budget: no cheaper menu "
                                          "was found.",
                                          about(answer_.spent), about(over))
                            : fmt::format("All that is planned costs {}, within the budget.", about(answer_.spent)),
                        2) +
                "\n";
    }

    [[nodiscard]] std::string reason_words(const ask::PlanReason& reason) const {
        switch (reason.kind) {
            case ReasonKind::wished:
                return "as wished";
            case ReasonKind::uses_up:
                return "uses up the " + kitchen_.catalogue()[*reason.of].name;
            case ReasonKind::from_stock:
                return "all in the house";
            case ReasonKind::not_since:
                return "not since " + near_day(*reason.day, today_);
            case ReasonKind::never_had:
                return "new";
        }
        return {};
    }

    void row(const ask::PlanDay& day) {
        const std::string head = fmt::format("  {:<7} {:<9} ", detail::row_day(day.day), day.kind.value_or(""));
        std::string words;
        switch (day.state) {
            case State::nobody_home:
                words = "nobody home";
                break;
            case State::empty:
                words = "nothing: see below";
                break;
            case State::had:
                words = "had: " + dish(*day.dish);
                break;
            default:
                words = dish(*day.dish) + (day.ready_meal ? " from the freezer" : "");
                if (day.state == State::planned) words += " (planned)";
        }
        for (const flow::StandInUse& use : day.stand_ins) words += ", " + detail::stand_in_words(use, kitchen_, false);
        // What is new is told once, below.
        if (!day.reasons.empty() && day.reasons.front().kind != ReasonKind::never_had)
            words += fmt::format(" ({})", reason_words(day.reasons.front()));
        out_ += wrapped(head + words, length(head)) + "\n";
    }

    /// Nights with nothing, those that follow one another for the same reason in one line.
    void nothing() {
        const auto& all = answer_.empty;
        for (std::size_t i = 0; i < all.size();) {
            std::size_t last = i;
            while (last + 1 < all.size() && all[last + 1].way == all[i].way &&
                   all[last + 1].day == all[last].day + basics::days{1})
                ++last;
            std::string when = day(all[i].day, today_);
            if (last > i) when += " to " + day(all[last].day, today_);
            out_ += wrapped(fmt::format("! Nothing for {}: {}.", when, way_words(all[i], last > i)), 2) + "\n";
            i = last + 1;
        }
    }

    [[nodiscard]] std::string way_words(const ask::PlanEmpty& empty, bool several) const {
        const std::string dish = empty.kind && !several ? fmt::format("{} dish", *empty.kind) : "dish";
        const std::string dishes = counted(empty.dishes, dish);
        switch (empty.way) {
            case ask::PlanEmpty::Way::none:
                return fmt::format("the cookbook has no {}", dish);
            case ask::PlanEmpty::Way::trip: {
                const auto next = kitchen::shopping_day(kitchen_.household, empty.day);
                return fmt::format(
                    "what is in the house makes no {}, {}", dish,
                    next ? fmt::format("and the next trip is {}", on_day(*next, today_)) : "and no trip is planned");
            }
            case ask::PlanEmpty::Way::unusual:
                return fmt::format("{} would do with things that you do not usually buy: --unusual", dishes);
            case ask::PlanEmpty::Way::minutes:
                return fmt::format("{} would do with {} minutes", dishes, empty.minutes);
            case ask::PlanEmpty::Way::gap:
                return fmt::format("{} would do, but come too soon after, or before, the same", dishes);
            case ask::PlanEmpty::Way::eaters:
                break;
        }
        return fmt::format("no {} is for all who are home", dish);
    }

    /// What was not had for long, and what is new, in a line.
    void news() {
        std::vector<std::string> long_ago;
        std::int64_t fresh = 0;
        for (const ask::PlanDay& day : answer_.days) {
            for (const ask::PlanReason& reason : day.reasons) {
                fresh += reason.kind == ReasonKind::never_had ? 1 : 0;
                if (reason.kind == ReasonKind::not_since) long_ago.push_back(dish(*day.dish));
            }
        }
        constexpr std::size_t most = 3;
        std::string line;
        if (fresh > 0) line = fmt::format("{} not had before.", counted(fresh, "dish"));
        if (!long_ago.empty()) {
            const auto more = long_ago.size() > most ? long_ago.size() - most : 0;
            long_ago.resize(std::min(long_ago.size(), most));
            line += fmt::format("{}Not had for a while: {}{}.", line.empty() ? "" : " ",
                                more > 0 ? fmt::format("{}", fmt::join(long_ago, ", ")) : listed(long_ago),
                                more > 0 ? fmt::format(" and {} more", more) : "");
        }
        if (!line.empty()) out_ += wrapped(line, 2) + "\n";
    }

    void trips() {
        if (!manner_.all) return;
        std::vector<std::string> words;
        for (const ask::PlanTrip& trip : answer_.trips)
            words.push_back(fmt::format("{} {}", basics::short_day(trip.day), about(trip.spent)));
        if (!words.empty()) out_ += wrapped(fmt::format("To buy, all that is planned: {}.", listed(words)), 2) + "\n";
    }

    void why(const ask::PlanWhy& why) {
        const auto found = std::find_if(answer_.days.begin(), answer_.days.end(),
                                        [&](const ask::PlanDay& day) { return day.day == why.day; });
        out_ +=
            wrapped(fmt::format("Why {} {}: against nothing there", dish(*found->dish), on_day(why.day, today_)), 2) +
            "\n";
        for (const ask::PlanBecause& because : why.because) {
            const std::string of = because.of ? kitchen_.catalogue()[*because.of].name : "";
            const std::string gap = !of.empty() && !because.note.empty() ? ": " : "";
            out_ +=
                wrapped(fmt::format("  {:>9}  {:<17} {}{}{}", signed_money(because.money, kitchen_.household.currency),
                                    detail::plain_name(because.line), of, gap, because.note),
                        31) +
                "\n";
        }
        out_ += fmt::format("  {:>9}  in all\n", signed_money(why.worth, kitchen_.household.currency));
        for (const ask::PlanRunnerUp& other : why.runners_up)
            out_ += wrapped(fmt::format("  Or {}: {} less.", dish(other.dish),
                                        money(other.less, kitchen_.household.currency)),
                            5) +
                    "\n";
    }

    const ask::PlanAnswer& answer_;
    const kitchen::Kitchen& kitchen_;
    basics::Day today_;
    const std::string& said_;
    const Manner& manner_;
    std::string out_;
};

constexpr std::array<std::string_view, 6> states{"proposed", "planned", "had", "wished", "empty", "nobody_home"};
constexpr std::array<std::string_view, 5> reasons{"wished", "uses_up", "from_stock", "not_since", "never_had"};
constexpr std::array<std::string_view, 6> ways{"none", "trip", "unusual", "minutes", "gap", "eaters"};

template <std::size_t count, class Enum>
std::string_view name(const std::array<std::string_view, count>& names, Enum of) {
    return names[static_cast<std::size_t>(of)];
}

Json id_or_null(std::optional<catalogue::IngredientId> id, const kitchen::Kitchen& kitchen) {
    return id ? Json(kitchen.catalogue()[*id].id) : Json(nullptr);
}

Json day_or_null(std::optional<basics::Day> day) {
    return day ? json_day(*day) : Json(nullptr);
}

Json day_json(const ask::PlanDay& day, const kitchen::Kitchen& kitchen) {
    Json stand_ins = Json::array();
    for (const flow::StandInUse& use : day.stand_ins) stand_ins.push_back(detail::stand_in_json(use, kitchen));
    Json list = Json::array();
    for (const ask::PlanReason& reason : day.reasons)
        list.push_back({{"reason", name(reasons, reason.kind)},
                        {"of", id_or_null(reason.of, kitchen)},
                        {"day", day_or_null(reason.day)}});
    const cookbook::Dish* dish = day.dish ? &kitchen.cookbook()[*day.dish] : nullptr;
    return {{"day", json_day(day.day)},
            {"state", name(states, day.state)},
            {"standing_kind", day.kind ? Json(*day.kind) : Json(nullptr)},
            {"dinner", dish != nullptr ? Json(dish->id) : Json(nullptr)},
            {"label", dish != nullptr ? Json(dish->name) : Json(nullptr)},
            {"ready_meal", day.ready_meal},
            {"stand_ins", std::move(stand_ins)},
            {"reasons", std::move(list)}};
}

Json why_json(const ask::PlanWhy& why, const kitchen::Kitchen& kitchen) {
    Json because = Json::array();
    for (const ask::PlanBecause& line : why.because)
        because.push_back({{"line", menu::name(line.line)},
                           {"minor", line.money.minor},
                           {"of", id_or_null(line.of, kitchen)},
                           {"note", line.note.empty() ? Json(nullptr) : Json(line.note)}});
    Json others = Json::array();
    for (const ask::PlanRunnerUp& other : why.runners_up)
        others.push_back({{"dish", kitchen.cookbook()[other.dish].id}, {"less", json_money(other.less, kitchen)}});
    return {{"day", json_day(why.day)},
            {"because", std::move(because)},
            {"worth", json_money(why.worth, kitchen)},
            {"runners_up", std::move(others)}};
}

}  // namespace

std::string text(const ask::PlanAnswer& answer, const kitchen::Kitchen& kitchen, basics::Day today,
                 const std::string& said, const Manner& manner) {
    return Page(answer, kitchen, today, said, manner).text();
}

Json json(const ask::PlanAnswer& answer, const kitchen::Kitchen& kitchen) {
    Json days = Json::array();
    for (const ask::PlanDay& day : answer.days) days.push_back(day_json(day, kitchen));
    Json empty = Json::array();
    for (const ask::PlanEmpty& night : answer.empty)
        empty.push_back({{"day", json_day(night.day)},
                         {"standing_kind", night.kind ? Json(*night.kind) : Json(nullptr)},
                         {"way", name(ways, night.way)},
                         {"minutes", night.minutes},
                         {"dishes", night.dishes}});
    Json trips = Json::array();
    for (const ask::PlanTrip& trip : answer.trips)
        trips.push_back({{"day", json_day(trip.day)}, {"spent", json_money(trip.spent, kitchen)}});
    return {{"from", json_day(answer.span.first)},
            {"until", json_day(answer.span.last)},
            {"value", json_money(answer.value, kitchen)},
            {"bound", json_money(answer.bound, kitchen)},
            {"proved_best", answer.proved_best},
            {"gap", std::round(answer.gap * 1e6) / 1e6},
            {"at_stake", json_money(answer.cost, kitchen)},
            {"spent", json_money(answer.spent, kitchen)},
            {"more", json_money(answer.more, kitchen)},
            {"binned", json_money(answer.binned, kitchen)},
            {"budget", answer.budget ? json_money(*answer.budget, kitchen) : Json(nullptr)},
            {"trips", std::move(trips)},
            {"days", std::move(days)},
            {"empty", std::move(empty)},
            {"why", answer.why ? why_json(*answer.why, kitchen) : Json(nullptr)}};
}

}  // namespace samebase::show
