// Moves of an annealing over plans that give each place one option: `Search` is Annealing of a value that knows
// clashes.
#pragma once

#include <array>
#include <cstddef>

namespace samebase::menu {

/// Gives a place another option; so many times of a hundred none.
template <class Search>
void change_one(Search& search, std::size_t emptied = 0) {
    const std::size_t place = search.any_place();
    const bool empties = emptied > 0 && search.dice().below(100) < emptied;
    const int option = empties ? -1 : search.any_option(place);
    if ((option < 0 && !empties) || search.value().clashes(option)) return;
    const std::array<typename Search::Change, 1> change{{{static_cast<int>(place), option}}};
    search.try_to(change);
}

/// Lets two places exchange what they have. `same_at(option, place)` is the option that is the same there; below 0
/// where there is none.
template <class Search, class SameAt>
void exchange_two(Search& search, const SameAt& same_at) {
    const std::size_t a = search.any_place();
    const std::size_t b = search.any_place();
    if (a == b || search.now(a) < 0 || search.now(b) < 0) return;
    const int to_a = same_at(search.now(b), a);
    const int to_b = same_at(search.now(a), b);
    if (to_a < 0 || to_b < 0) return;
    const auto at_a = static_cast<int>(a);
    const auto at_b = static_cast<int>(b);
    if (search.value().clashes(to_a, at_b) || search.value().clashes(to_b, at_a)) return;
    const std::array<typename Search::Change, 2> changes{{{at_a, to_a}, {at_b, to_b}}};
    search.try_to(changes);
}

}  // namespace samebase::menu
