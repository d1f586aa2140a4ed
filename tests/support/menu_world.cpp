#include "support/menu_world.hpp"

#include <algorithm>
#include <cmath>
#include <cstdlib>
#include <limits>
#include <map>

#include "support/random_component.hpp"

namespace samebase::tests {

namespace {

using menu::Batch;
using menu::Worth;

Batch random_batch(Random& random, int days) {
    const std::int64_t amount = std::int64_t{50} * random.within(1, 20);
    Batch batch{.amount = amount, .whole = amount, .price = random.within(0, 9) * 50'000};
    batch.in_stock = true;
    switch (random.within(0, 4)) {
        case 0:  // frozen
            batch.thaw_days = random.within(1, 2);
            batch.thawed_days = random.within(0, 2);
            batch.cold_water = random.within(0, 1) == 1;
            break;
        case 1:  // sealed
            batch.opened_days = random.within(0, 3);
            batch.last = flow::dinner_of(random.within(0, days + 2));
            break;
        case 2:  // comes later
            batch.first = flow::lunch_of(random.within(0, days - 1));
            batch.last = batch.first + random.within(0, 9);
            break;
        case 3:
            batch.last = flow::dinner_of(random.within(0, days + 1));
            break;
        default:
            break;
    }
    return batch;
}

menu::Item random_item(Random& random, int days) {
    menu::Item item;
    item.days = days;
    item.kept_thousandths = random.within(0, 2) * 500;
    for (auto batches = random.within(0, 3); batches > 0; --batches) item.there.push_back(random_batch(random, days));
    if (random.within(0, 3) == 0) return item;
    flow::Offer offer{.pack = random.within(1, 10) * 50, .price = {random.within(1, 600)}};
    for (int day = 0; day < days; ++day) {
        if (random.within(0, 2) == 0) offer.slots.push_back(flow::shopping_of(day));
    }
    offer.keeps_days = random.within(-1, 3);
    offer.opened_days = random.within(-1, 2);
    offer.frozen = random.within(0, 5) == 0;
    item.offer = offer;
    return item;
}

menu::Group random_group(Random& random) {
    menu::Group group;
    group.within = random.within(0, 4);
    group.never = random.within(0, 2) == 0;
    group.price = random.within(0, 5) * 100'000;
    group.a_week = random.within(-1, 2);
    group.price_over = random.within(0, 5) * 100'000;
    if (random.within(0, 1) == 1) group.standing = {random.within(0, 2)};
    return group;
}

std::vector<int> some_of(Random& random, std::size_t count) {
    std::vector<int> some;
    for (std::size_t i = 0; i < count; ++i) {
        if (random.within(0, 2) == 0) some.push_back(static_cast<int>(i));
    }
    return some;
}

// The slow answers.

/// One line of the larder as it stands on some day.
struct Jar {
    std::int64_t amount;
    flow::Slot from;
    flow::Slot until;
    double unit_price;
    bool untouched;
    Batch as_it_was;
};

bool ready(const Jar& jar, flow::Slot time) {
    if (time < jar.from || time > jar.until || jar.amount == 0) return false;
    if (!jar.untouched || jar.as_it_was.thaw_days == 0) return true;
    if (flow::day_of(time) >= jar.as_it_was.thaw_days) return true;
    return jar.as_it_was.cold_water && jar.as_it_was.thaw_days == 1 && time == flow::dinner_of(0);
}

bool changes_when_touched(const Jar& jar) {
    return jar.untouched && (jar.as_it_was.thaw_days > 0 || jar.as_it_was.opened_days >= 0);
}

void touch(Jar& jar, flow::Slot time) {
    if (!changes_when_touched(jar)) return;
    const int days = jar.as_it_was.thaw_days > 0 ? jar.as_it_was.thawed_days : jar.as_it_was.opened_days;
    jar.until = std::min(jar.until, flow::dinner_of(flow::day_of(time) + days));
    jar.untouched = false;
}

std::optional<Worth> worth_of(const menu::Item& item, const std::map<flow::Slot, std::vector<std::int64_t>>& wants) {
    std::vector<Jar> jars;
    for (const Batch& batch : item.there) {
        jars.push_back({batch.amount, batch.first, batch.last,
                        static_cast<double>(batch.price) / static_cast<double>(batch.whole), true, batch});
    }
    Worth worth = 0;
    for (const auto& [time, amounts] : wants) {
        for (std::int64_t open : amounts) {
            std::vector<std::size_t> order;
            for (std::size_t j = 0; j < jars.size(); ++j) {
                if (ready(jars[j], time)) order.push_back(j);
            }
            std::stable_sort(order.begin(), order.end(), [&](std::size_t a, std::size_t b) {
                const bool first = changes_when_touched(jars[a]);
                const bool second = changes_when_touched(jars[b]);
                return first != second ? second : jars[a].until < jars[b].until;
            });
            for (const std::size_t j : order) {
                const auto eaten = std::min(open, jars[j].amount);
                if (eaten > 0) touch(jars[j], time);
                jars[j].amount -= eaten;
                open -= eaten;
            }
            if (open == 0) continue;
            if (!item.offer) return std::nullopt;
            const flow::Offer& offer = *item.offer;
            std::optional<flow::Slot> trip;
            for (const flow::Slot slot : offer.slots) {
                if (slot <= time) trip = slot;
            }
            if (!trip) return std::nullopt;
            const bool for_good = offer.frozen || offer.keeps_days < 0;
            const flow::Slot end = for_good ? flow::never : flow::dinner_of(flow::day_of(*trip) + offer.keeps_days);
            if (time > end) return std::nullopt;
            std::int64_t bought = 0;
            while (bought < open) {
                bought += offer.pack;
                worth -= menu::thousandths * offer.price.minor;
            }
            Jar rest{bought - open,
                     *trip,
                     end,
                     static_cast<double>(menu::thousandths * offer.price.minor) / static_cast<double>(offer.pack),
                     false,
                     {}};
            if (!offer.frozen && offer.opened_days >= 0)
                rest.until = std::min(rest.until, flow::dinner_of(flow::day_of(time) + offer.opened_days));
            jars.push_back(rest);
        }
    }
    double kept = 0;
    double tossed = 0;
    for (const Jar& jar : jars) {
        (jar.until > flow::dinner_of(item.days - 1) ? kept : tossed) +=
            static_cast<double>(jar.amount) * jar.unit_price;
    }
    return worth + std::llround(kept * item.kept_thousandths / 1000 - tossed);
}

}  // namespace

menu::Problem random_menu(std::uint64_t number) {
    Random random(number);
    menu::Problem problem;
    problem.days = random.within(2, 9);
    for (auto items = random.within(1, 4); items > 0; --items)
        problem.items.push_back(random_item(random, problem.days));
    for (auto groups = random.within(0, 4); groups > 0; --groups) problem.groups.push_back(random_group(random));
    for (int day = 0; day < problem.days && problem.slots.size() < 4; ++day) {
        if (random.within(0, 3) == 0) continue;
        menu::MealSlot slot{{}, flow::dinner_of(day), day, day / 7, random.within(0, 9) * 200'000, {}};
        const auto s = static_cast<int>(problem.slots.size());
        for (auto options = random.within(0, 5); options > 0; --options) {
            menu::Option option;
            option.slot = s;
            option.dish = cookbook::DishId{static_cast<std::uint32_t>(options)};
            option.worth = random.within(-5, 5) * 60'000;
            option.groups = some_of(random, problem.groups.size());
            for (const int item : some_of(random, problem.items.size()))
                option.needs.push_back({item, random.within(1, 12) * 50});
            slot.options.push_back(static_cast<int>(problem.options.size()));
            problem.options.push_back(std::move(option));
        }
        problem.slots.push_back(std::move(slot));
    }
    return problem;
}

std::optional<menu::Worth> worth_of(const menu::Problem& problem, const menu::Choice& choice) {
    Worth worth = 0;
    std::vector<const menu::Option*> chosen;
    for (std::size_t s = 0; s < choice.size(); ++s) {
        if (choice[s] < 0) {
            worth -= problem.slots[s].empty;
        } else {
            chosen.push_back(&problem.options[static_cast<std::size_t>(choice[s])]);
            worth += chosen.back()->worth;
        }
    }
    for (std::size_t i = 0; i < problem.items.size(); ++i) {
        std::map<flow::Slot, std::vector<std::int64_t>> wants;
        for (const menu::Option* option : chosen) {
            for (const menu::Need& need : option->needs) {
                if (need.item == static_cast<int>(i))
                    wants[problem.slots[static_cast<std::size_t>(option->slot)].time].push_back(need.amount);
            }
        }
        const auto line = worth_of(problem.items[i], wants);
        if (!line) return std::nullopt;
        worth += *line;
    }
    for (std::size_t g = 0; g < problem.groups.size(); ++g) {
        const menu::Group& group = problem.groups[g];
        std::map<int, int> weeks;
        for (std::size_t week = 0; week < group.standing.size(); ++week)
            weeks[static_cast<int>(week)] = group.standing[week];
        std::vector<int> days;
        for (const menu::Option* option : chosen) {
            if (std::find(option->groups.begin(), option->groups.end(), static_cast<int>(g)) == option->groups.end())
                continue;
            const auto& slot = problem.slots[static_cast<std::size_t>(option->slot)];
            if (++weeks[slot.week] > group.a_week && group.a_week >= 0) worth -= group.price_over;
            for (const int day : days) {
                const int apart = std::abs(day - slot.day_number);
                if (apart >= group.within) continue;
                if (group.never) return std::nullopt;
                worth -= group.within == 1 ? group.price : group.price * (group.within - apart) / (group.within - 1);
            }
            days.push_back(slot.day_number);
        }
    }
    return worth;
}

menu::Worth best_of_all(const menu::Problem& problem) {
    menu::Worth best = std::numeric_limits<Worth>::min();
    menu::Choice choice(problem.slots.size(), -1);
    const auto go_on = [&](auto&& self, std::size_t slot) -> void {
        if (slot == choice.size()) {
            if (const auto worth = worth_of(problem, choice)) best = std::max(best, *worth);
            return;
        }
        choice[slot] = -1;
        self(self, slot + 1);
        for (const int option : problem.slots[slot].options) {
            choice[slot] = option;
            self(self, slot + 1);
        }
        choice[slot] = -1;
    };
    go_on(go_on, 0);
    return best;
}

}  // namespace samebase::tests
