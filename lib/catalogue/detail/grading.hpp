// How well the words of a question fit one name: the grades that names.hpp describes.
#pragma once

#include <compare>
#include <cstddef>
#include <cstdint>
#include <limits>
#include <span>
#include <string>
#include <string_view>
#include <tuple>
#include <vector>

#include "catalogue/detail/letters.hpp"

namespace samebase::catalogue::detail {

/// One name of one thing.
struct NameEntry {
    std::uint8_t rank = 0;
    std::uint32_t key = 0;
    std::string name;
    Words words;
    std::vector<std::uint32_t> ids{};  ///< where its words stand in the vocabulary, ascending
    std::uint64_t letters = 0;         ///< letter_set of all of them
};

/// A word with its letter_set.
struct Form {
    Letters text;
    std::uint64_t letters = 0;
};

/// One word of the vocabulary: every word of every name once, in order.
struct KnownWord {
    Letters text;
    std::uint64_t letters = 0;
    std::vector<Form> written{};  ///< as it stands in names, where that is not `text`, in order
};
using Vocabulary = std::span<const KnownWord>;

/// How far one word, or all words together, are from what they are taken for. Fewer edits go first, then fewer words
/// that fit only as they are written, singular and plural apart.
struct Slips {
    int edits = 0;
    int as_written = 0;

    friend auto operator<=>(const Slips&, const Slips&) = default;
};
inline constexpr Slips no_slip{.edits = std::numeric_limits<int>::max()};

/// The words of a question, compared with the vocabulary once.
struct Question {
    Words words;
    std::vector<std::uint32_t> ids;         ///< of its words in the vocabulary, ascending
    bool all_known = false;                 ///< every word stands in some name
    bool real = false;                      ///< a word stands in no name and is a real one: no name without its space
    std::vector<std::vector<Slips>> slips;  ///< [word][vocabulary], or no_slip
    std::uint64_t letters = 0;
};

/// A question with more words than any name has (`most_words`) is not compared word by word: it is no part of a name.
[[nodiscard]] Question read_question(std::string_view words, Vocabulary vocabulary, std::size_t most_words);

enum class Grade : std::uint8_t { whole, other_order, slipped, part, slipped_part, none };

struct Hit {
    Grade grade = Grade::none;
    Slips slips;
    int extra = 0;  ///< words of the name left over, and little words on one side only
    const NameEntry* entry = nullptr;

    [[nodiscard]] auto goodness() const { return std::tuple(grade, slips, extra); }
    [[nodiscard]] auto place() const { return std::tuple(grade, slips, extra, entry->rank, entry->key); }
};

/// Grade none, and no entry, where the name fits worse than `worst`.
[[nodiscard]] Hit graded(const Question& question, const NameEntry& entry, Grade worst);

/// Whether the first of two hits of one goodness goes before the second by its rank alone, because both have the same
/// name.
[[nodiscard]] bool wins_by_rank(const Hit& first, const Hit& second);

/// How far the word is from each of the vocabulary, for naming what is nearest: edits up to half of the longer word,
/// else the length of the word; 1 for the beginning of a longer word.
[[nodiscard]] std::vector<int> distances(const Letters& word, Vocabulary vocabulary);

}  // namespace samebase::catalogue::detail
