// Names as a cook writes them: case, accents, hyphens, word order, plural or singular and a small slip of the pen do
// not matter. One index serves ingredients, families, dishes, people and places alike.
//
// What the words may mean is graded, and a better grade hides the worse ones:
//   1. the whole name, letter for letter ("self-raising flour", "selfraising flour");
//   2. the whole name with the words in other order or number ("flour self-raising", "carrots");
//   3. the whole name with slips ("carots");
//   4. the words are a part of the name ("mince" for "beef mince");
//   5. a part with slips.
// Little words (of, the, a, some, fresh, and, my, that ...) are left out, and only settle what else would be equal.
// A slip is one edit in a word of four letters or more and two in one of eight or more; in words shorter than six
// letters the first letter must be right; a word that stands in some name as it is written, or is a common word of the
// kitchen (detail/real_words.hpp), is no slip of another, except for "minced" and "mince".
// Slips are counted between the forms that singular and plural share, and between the words as they are written, the
// fewer of the two: "asparagas" is one slip of "asparagus", and "leeves" of "leaves". Among slips of one size those
// that fit only as they are written give way to the others ("peaz" is "pear" where there are "pear" and "peas").
#pragma once

#include <cstddef>
#include <cstdint>
#include <optional>
#include <span>
#include <string>
#include <string_view>
#include <vector>

#include "catalogue/detail/grading.hpp"

namespace samebase::catalogue {

/// A thing that the words may mean.
struct Found {
    std::uint8_t rank = 0;
    std::uint32_t key = 0;
    int distance = 0;  ///< edits; among the nearest, a number that only orders them
    std::string name;  ///< the one of its names that fits best, as it was added

    friend bool operator==(const Found&, const Found&) = default;
};

/// One found: the words clearly mean it. Several: they might mean any of them, best first, at most eight. None: the
/// three nearest things, or fewer where there are fewer; no nearest where the words have no letter or figure.
/// The order is by edits, then how many words fit only as they are written, words of the name left over, rank, key.
struct Match {
    std::vector<Found> found;
    std::vector<Found> nearest;
    bool whole = false;  ///< what is found has the words for its whole name: grades 1 to 3

    friend bool operator==(const Match&, const Match&) = default;
};

/// Add all names, then finish(), then find(). What is found does not depend on the order of adding.
/// A find costs a scan of the names: 20 to 130 microseconds for 1,500 of them.
class NameIndex {
  public:
    /// A thing may be added under several names: its name, its other names, its identifier. `rank` goes before `key`
    /// where two things are equally meant; the caller's keys are in the order of identifiers within a rank.
    void add(std::uint32_t key, std::uint8_t rank, std::string_view name);
    void finish();

    /// Takes any bytes. The caller guarantees that finish() came after the last add().
    [[nodiscard]] Match find(std::string_view words) const;

  private:
    std::vector<detail::NameEntry> entries_;     ///< by rank, key, name
    std::vector<detail::KnownWord> vocabulary_;  ///< every word of every name once, in order
    std::size_t most_words_ = 0;                 ///< of any one name
    bool finished_ = true;
};

/// "did you mean": the known word with the fewest edits from `word`, case and accents aside, where they are no more
/// than a third of its letters; the first of several.
[[nodiscard]] std::optional<std::string> nearest(std::string_view word, std::span<const std::string_view> known);

}  // namespace samebase::catalogue
