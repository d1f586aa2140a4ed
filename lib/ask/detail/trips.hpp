// The fewest walks to far freezers that bring everything into the near one in time, as plain numbers.
//
// A walk is one far freezer on one day. Whatever is brought on a day goes into the near freezer at once and leaves it
// on the day that it is said to; so an item takes room from the day of its walk to the eve of that day. What is brought
// on the very day that it leaves takes none: it goes straight on.
//
// It is enough to look at walks on days on which something is needed, and to bring each item on the last walk that is
// in time: a later walk takes less room. One freezer alone is solved by walking as late, and bringing as many days'
// needs, as room allows; several share the room, and then an integer programme over (walk, next walk) of each freezer
// proves or bounds.
#pragma once

#include <cstdint>
#include <vector>

namespace samebase::ask::detail {

struct TripItem {
    int freezer = 0;  ///< from 0
    int need = 0;     ///< the last day on which it may come
    int until = 0;    ///< the day on which it leaves, at least `need`
    std::int64_t room = 0;
};

struct Trip {
    int freezer = 0;
    int day = 0;

    friend auto operator<=>(const Trip&, const Trip&) = default;
};

struct TripPlan {
    std::vector<Trip> trips;     ///< in the order of (freezer, day)
    std::vector<int> item_days;  ///< by item: the day of the walk that brings it
    int bound = 0;               ///< nobody needs fewer walks
    int by_rule = 0;             ///< walks that the quick rule needs

    [[nodiscard]] int value() const { return static_cast<int>(trips.size()); }
    [[nodiscard]] bool proved() const { return value() == bound; }
};

/// `free` is the near freezer's room by day; below 0 counts as 0. The caller guarantees that everything fits where each
/// item comes on the last day that it may, and that every `until` is at most the number of days. `effort` is 100 as
/// usual; the programme searches a tree in proportion, and at 0 there is none. Among plans with the fewest walks:
/// freezer by freezer each walk brings as many days' needs as room allows; the first walk to each is as early as it can
/// be, from day 0, the others are as late as they can be.
[[nodiscard]] TripPlan fewest_trips(const std::vector<TripItem>& items, const std::vector<std::int64_t>& free,
                                    int effort);

/// Whether everything fits where each item comes on the last day that it may: what fewest_trips() asks for.
[[nodiscard]] bool fits_at_the_last(const std::vector<TripItem>& items, const std::vector<std::int64_t>& free);

}  // namespace samebase::ask::detail
