#include "catalogue/detail/grading.hpp"

#include <algorithm>
#include <bit>
#include <optional>

#include "catalogue/detail/real_words.hpp"

namespace samebase::catalogue::detail {

namespace {

constexpr std::size_t most_assigned = 64;
constexpr std::size_t farthest = 1000;

/// How many edits still count as a slip of the pen between two words.
int allowed_slips(const Letters& a, const Letters& b) {
    const std::size_t shorter = std::min(a.size(), b.size());
    const std::size_t longer = std::max(a.size(), b.size());
    if (shorter < 4) return 0;
    if (shorter >= 8) return 2;
    const bool same_start = a[0] == b[0] || (a[0] == b[1] && a[1] == b[0]);
    return longer < 6 && !same_start ? 0 : 1;
}

/// "minced" and "mince", "roasted" and "roast".
bool is_participle(const Letters& a, const Letters& b) {
    const Letters& base = a.size() < b.size() ? a : b;
    const Letters& other = a.size() < b.size() ? b : a;
    if (base.size() < 4 || other.size() - base.size() > 2 || !other.starts_with(base)) return false;
    const std::u32string_view tail = std::u32string_view(other).substr(base.size());
    return tail == U"ed" || (tail == U"d" && base.back() == U'e');
}

/// A word of a question, made ready to be compared.
struct Asked {
    explicit Asked(const Letters& word) : pattern(word), letters(letter_set(word)) {}
    EditPattern pattern;
    std::uint64_t letters;
};

/// The edits between the two where they count as a slip.
std::optional<int> slip(const Asked& asked, const Letters& other, std::uint64_t other_letters) {
    if (least_edits(asked.letters, other_letters) > 2) return std::nullopt;
    const int allowed = allowed_slips(asked.pattern.word(), other);
    const int needed = asked.pattern.edits_to(other, other_letters, allowed);
    return needed <= allowed ? std::optional(needed) : std::nullopt;
}

/// Beside a final s the one form for singular and plural takes a slip further than it is: "asparagas" becomes
/// "asparaga", "swis" becomes "swi", "potatoej" is far from "potato". As it is written on both sides it is one edit.
Slips slip_of(const Asked& singular, const Asked& written, const KnownWord& known) {
    Slips least = no_slip;
    const auto take = [&least](std::optional<int> edits, int as_written) {
        if (edits) least = std::min(least, Slips{*edits, as_written});
    };
    take(slip(singular, known.text, known.letters), 0);
    if (written.pattern.word() != singular.pattern.word()) take(slip(written, known.text, known.letters), 1);
    for (const Form& form : known.written) take(slip(written, form.text, form.letters), 1);
    return least;
}

/// How far the word is from each of the vocabulary that it may be a slip of.
std::vector<Slips> slips_of(const Letters& word, const Letters& as_written, bool known, Vocabulary vocabulary) {
    std::vector<Slips> slips(vocabulary.size(), no_slip);
    const Asked singular(word);
    const Asked written(as_written);
    for (std::size_t i = 0; i < vocabulary.size(); ++i) {
        const Letters& other = vocabulary[i].text;
        if (other == word) {
            slips[i] = {};
        } else if (is_participle(word, other)) {
            slips[i] = {.edits = 1};
        } else if (!known) {
            slips[i] = slip_of(singular, written, vocabulary[i]);
        }
    }
    return slips;
}

/// The edits that turn each word of the question into a word of the name of its own; nothing where that cannot be. What
/// is equal goes together first, then the rest in order.
std::optional<Slips> assigned(const Question& question, const std::vector<std::uint32_t>& ids) {
    if (question.slips.empty() || ids.size() > most_assigned) return std::nullopt;
    std::uint64_t used = 0;
    Slips needed;
    for (const bool rest : {false, true}) {
        for (const auto& slips : question.slips) {
            std::size_t best = ids.size();
            bool is_there = false;
            for (std::size_t n = 0; n < ids.size(); ++n) {
                is_there |= slips[ids[n]] == Slips{};
                if ((used >> n & 1U) != 0 || slips[ids[n]] == no_slip) continue;
                if (best == ids.size() || slips[ids[n]] < slips[ids[best]]) best = n;
            }
            if (is_there == rest) continue;
            if (best == ids.size()) return std::nullopt;
            used |= std::uint64_t{1} << best;
            needed.edits += slips[ids[best]].edits;
            needed.as_written += slips[ids[best]].as_written;
        }
    }
    return needed;
}

/// Whether words of the name that stand together, written as one, are `joined`.
bool has_run(const Words& name, const Letters& joined) {
    std::size_t start = 0;
    for (std::size_t first = 0; first < name.singular.size(); ++first) {
        if (name.joined.compare(start, joined.size(), joined) == 0) {
            std::size_t length = 0;
            for (std::size_t i = first; i < name.singular.size() && length < joined.size(); ++i) {
                length += name.singular[i].size();
            }
            if (length == joined.size()) return true;
        }
        start += name.singular[first].size();
    }
    return false;
}

/// One edit between two names of which one is written as a single word: "silverbeat" for "silver beet".
bool slipped_as_one(const Question& question, const NameEntry& entry) {
    const Words& a = question.words;
    const Words& b = entry.words;
    if (a.singular.size() == b.singular.size() || (a.singular.size() > 1 && b.singular.size() > 1)) return false;
    if (std::min(a.joined.size(), b.joined.size()) < 6) return false;
    return least_edits(question.letters, entry.letters) <= 1 && edits(a.joined, b.joined, 1) <= 1;
}

}  // namespace

Question read_question(std::string_view words, Vocabulary vocabulary, std::size_t most_words) {
    Question question;
    question.words = read_words(words);
    question.letters = letter_set(question.words.joined);
    std::vector<std::pair<Letters, Letters>> wanted;
    for (std::size_t i = 0; i < question.words.singular.size(); ++i) {
        wanted.emplace_back(question.words.singular[i], question.words.written[i]);
    }
    if (wanted.size() > most_words) return question;
    std::sort(wanted.begin(), wanted.end());
    question.all_known = true;
    for (const auto& [word, written] : wanted) {
        const auto at = std::lower_bound(vocabulary.begin(), vocabulary.end(), word,
                                         [](const KnownWord& a, const Letters& b) { return a.text < b; });
        const bool known = at != vocabulary.end() && at->text == word;
        if (known) question.ids.push_back(static_cast<std::uint32_t>(at - vocabulary.begin()));
        question.all_known &= known;
        const bool real = !known && is_real_word(word);
        question.real |= real;
        question.slips.push_back(slips_of(word, written, known || real, vocabulary));
    }
    return question;
}

Hit graded(const Question& question, const NameEntry& entry, Grade worst) {
    const int left_over = static_cast<int>(entry.ids.size()) - static_cast<int>(question.words.singular.size());
    const int little = std::popcount(question.words.little ^ entry.words.little);
    if (entry.words.plain == question.words.plain) return {Grade::whole, {}, little, &entry};
    if (worst < Grade::other_order) return {};
    const bool as_one = !question.real && entry.words.joined == question.words.joined;
    if ((question.all_known && entry.ids == question.ids) || as_one) {
        return {Grade::other_order, {}, little, &entry};
    }
    if (worst < Grade::slipped) return {};
    if (left_over == 0) {
        const auto slips = assigned(question, entry.ids);
        return slips ? Hit{Grade::slipped, *slips, little, &entry} : Hit{};
    }
    if (!question.all_known && !question.real && slipped_as_one(question, entry))
        return {Grade::slipped, {.edits = 1}, little, &entry};
    if (worst < Grade::part) return {};
    const int extra = std::max(left_over, 0) + little;
    const auto& ids = question.ids;
    const bool all_there =
        question.all_known && std::includes(entry.ids.begin(), entry.ids.end(), ids.begin(), ids.end());
    const bool may_run = !question.real && (question.letters & ~entry.letters) == 0;
    if (all_there || (may_run && has_run(entry.words, question.words.joined))) {
        return {Grade::part, {}, extra, &entry};
    }
    if (worst < Grade::slipped_part || left_over < 0) return {};
    const auto slips = assigned(question, entry.ids);
    return slips ? Hit{Grade::slipped_part, *slips, extra, &entry} : Hit{};
}

bool wins_by_rank(const Hit& first, const Hit& second) {
    if (first.entry->rank >= second.entry->rank) return false;
    return first.grade < Grade::slipped || first.entry->ids == second.entry->ids ||
           first.entry->words.joined == second.entry->words.joined;
}

std::vector<int> distances(const Letters& word, Vocabulary vocabulary) {
    const int none = static_cast<int>(std::min(word.size(), farthest));
    const EditPattern pattern(word);
    std::vector<int> all(vocabulary.size(), none);
    for (std::size_t i = 0; i < vocabulary.size(); ++i) {
        const Letters& other = vocabulary[i].text;
        if (word.size() >= 3 && other.starts_with(word)) {
            all[i] = other.size() == word.size() ? 0 : 1;
        } else {
            const int most = std::min(none - 1, static_cast<int>(std::max(word.size(), other.size()) / 2));
            const int far = pattern.edits_to(other, vocabulary[i].letters, most);
            if (far <= most) all[i] = far;
        }
    }
    return all;
}

}  // namespace samebase::catalogue::detail
