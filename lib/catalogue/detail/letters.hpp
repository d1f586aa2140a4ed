// Written words made comparable: case folded, accents stripped, cut into words, with one form for singular and plural.
// Any bytes are taken: a byte that is not UTF-8 counts as a letter of its own.
#pragma once

#include <array>
#include <cstdint>
#include <string>
#include <string_view>
#include <utility>
#include <vector>

namespace samebase::catalogue::detail {

using Letters = std::u32string;

/// Every character, case folded and without its accents. Linear.
[[nodiscard]] Letters folded(std::string_view text);

/// One form for singular and plural ("tomatoes", "leaves", "berries" give "tomato", "leaf", "berry"), for comparing and
/// not for showing: "cookie" and "cookies" both give "cooky". What only looks like a plural stays ("couscous",
/// "swiss").
[[nodiscard]] Letters singular(Letters word);

/// A text cut into words at everything that is neither letter nor figure; apostrophes vanish ("goat's" is "goats").
struct Words {
    Letters plain;                  ///< the telling words as written, folded, without spaces: "self-raising" is
                                    ///< "selfraising"
    std::vector<Letters> written;   ///< the telling words in the order of the text
    std::vector<Letters> singular;  ///< the same, each in one form for singular and plural
    Letters joined;                 ///< `singular` without spaces
    std::uint32_t little = 0;       ///< the set of little words ("of", "the") left out, a bit each
};

/// Linear. Where there are only little words, they are the telling ones.
[[nodiscard]] Words read_words(std::string_view text);

/// The set of letters as bits, several letters sharing a bit. One edit adds at most one bit and takes away at most one.
[[nodiscard]] std::uint64_t letter_set(std::u32string_view word);

/// Two words with these sets of letters are at least so many edits apart.
[[nodiscard]] int least_edits(std::uint64_t a, std::uint64_t b);

/// Edits (a letter put in, left out, exchanged, or swapped with its neighbour; no letter touched twice) that turn one
/// word into the other; most + 1 where there are more than `most`. Costs the product of the lengths.
[[nodiscard]] int edits(std::u32string_view a, std::u32string_view b, int most);

/// One word made ready for edits() to many others. For words of at most 64 letters a whole column of the table of edits
/// is worked out at once, in machine words: G. Myers, "A fast bit-vector algorithm for approximate string matching
/// based on dynamic programming", J. ACM 46 (1999), with swaps after H. Hyyro, "A bit-vector algorithm for computing
/// Levenshtein and Damerau edit distances", Nordic J. Computing 10 (2003).
class EditPattern {
  public:
    explicit EditPattern(Letters word);
    [[nodiscard]] const Letters& word() const { return word_; }
    /// What edits(word(), other, most) gives. `other_set` is the letter_set of the other word.
    [[nodiscard]] int edits_to(std::u32string_view other, std::uint64_t other_set, int most) const;

  private:
    [[nodiscard]] std::uint64_t places_of(char32_t letter) const;

    Letters word_;
    std::uint64_t set_ = 0;
    std::array<std::uint64_t, 128> places_{};  ///< of each ASCII letter in the word, as bits
    std::vector<std::pair<char32_t, std::uint64_t>> others_;
};

}  // namespace samebase::catalogue::detail
