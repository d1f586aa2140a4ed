#include "catalogue/names.hpp"

#include <algorithm>
#include <cassert>
#include <limits>
#include <tuple>
#include <utility>

namespace samebase::catalogue {

using detail::Hit;
using detail::KnownWord;
using detail::Letters;
using detail::NameEntry;
using detail::Question;

namespace {

constexpr std::size_t most_found = 8;
constexpr std::size_t most_nearest = 3;
constexpr std::size_t most_compared = 8;  // words of a question that count for what is nearest

bool same_thing(const NameEntry& a, const NameEntry& b) {
    return a.rank == b.rank && a.key == b.key;
}

/// Of each thing the name that fits best, all of the best grade that there is, best first.
std::vector<Hit> best_hits(const Question& question, std::span<const NameEntry> entries) {
    std::vector<Hit> best;
    detail::Grade worst = detail::Grade::slipped_part;
    for (const NameEntry& entry : entries) {
        const Hit hit = graded(question, entry, worst);
        if (hit.entry == nullptr) continue;
        if (hit.grade < worst) best.clear();
        worst = hit.grade;
        if (best.empty() || !same_thing(*best.back().entry, entry)) {
            best.push_back(hit);
        } else if (hit.goodness() < best.back().goodness()) {
            best.back() = hit;
        }
    }
    std::sort(best.begin(), best.end(), [](const Hit& a, const Hit& b) { return a.place() < b.place(); });
    return best;
}

/// Every word of every name once, each with the ways in which it is written.
std::vector<KnownWord> vocabulary_of(std::span<const NameEntry> entries) {
    std::vector<std::pair<Letters, Letters>> words;
    for (const NameEntry& entry : entries) {
        for (std::size_t i = 0; i < entry.words.singular.size(); ++i) {
            words.emplace_back(entry.words.singular[i], entry.words.written[i]);
        }
    }
    std::sort(words.begin(), words.end());
    words.erase(std::unique(words.begin(), words.end()), words.end());
    std::vector<KnownWord> vocabulary;
    for (const auto& [text, written] : words) {
        if (vocabulary.empty() || vocabulary.back().text != text) {
            vocabulary.push_back({.text = text, .letters = detail::letter_set(text)});
        }
        if (written != text) vocabulary.back().written.push_back({written, detail::letter_set(written)});
    }
    return vocabulary;
}

/// By how far each word of the question is from the nearest word of the name, and one for each word of the name left
/// over.
std::vector<Found> nearest_things(const Question& question, std::span<const NameEntry> entries,
                                  detail::Vocabulary vocabulary) {
    std::vector<std::vector<int>> far;
    for (const Letters& word : question.words.singular) {
        if (far.size() < most_compared) far.push_back(distances(word, vocabulary));
    }
    struct Near {
        int distance;
        const NameEntry* entry;
        [[nodiscard]] auto place() const { return std::tuple(distance, entry->rank, entry->key); }
    };
    std::vector<Near> near;
    near.reserve(entries.size());
    for (const NameEntry& entry : entries) {
        int distance = entry.ids.size() > far.size() ? static_cast<int>(entry.ids.size() - far.size()) : 0;
        for (const auto& from : far) {
            int least = std::numeric_limits<int>::max();
            for (const std::uint32_t id : entry.ids) least = std::min(least, from[id]);
            distance += least;
        }
        if (near.empty() || !same_thing(*near.back().entry, entry)) {
            near.push_back({distance, &entry});
        } else if (distance < near.back().distance) {
            near.back() = {distance, &entry};
        }
    }
    const auto end = near.begin() + static_cast<std::ptrdiff_t>(std::min(near.size(), most_nearest));
    std::partial_sort(near.begin(), end, near.end(),
                      [](const Near& a, const Near& b) { return a.place() < b.place(); });
    std::vector<Found> found;
    for (auto at = near.begin(); at != end; ++at) {
        found.push_back({at->entry->rank, at->entry->key, at->distance, at->entry->name});
    }
    return found;
}

}  // namespace

void NameIndex::add(std::uint32_t key, std::uint8_t rank, std::string_view name) {
    NameEntry entry{.rank = rank, .key = key, .name = std::string(name), .words = detail::read_words(name)};
    if (entry.words.singular.empty()) return;  // nobody could write it
    entry.letters = detail::letter_set(entry.words.joined);
    entries_.push_back(std::move(entry));
    finished_ = false;
}

void NameIndex::finish() {
    const auto order = [](const NameEntry& entry) { return std::tie(entry.rank, entry.key, entry.name); };
    std::sort(entries_.begin(), entries_.end(), [&](const auto& a, const auto& b) { return order(a) < order(b); });
    const auto same = [&](const NameEntry& a, const NameEntry& b) { return order(a) == order(b); };
    entries_.erase(std::unique(entries_.begin(), entries_.end(), same), entries_.end());

    vocabulary_ = vocabulary_of(entries_);
    most_words_ = 0;
    for (NameEntry& entry : entries_) {
        entry.ids.clear();
        for (const Letters& word : entry.words.singular) {
            const auto at = std::lower_bound(vocabulary_.begin(), vocabulary_.end(), word,
                                             [](const KnownWord& known, const Letters& w) { return known.text < w; });
            entry.ids.push_back(static_cast<std::uint32_t>(at - vocabulary_.begin()));
        }
        std::sort(entry.ids.begin(), entry.ids.end());
        most_words_ = std::max(most_words_, entry.ids.size());
    }
    finished_ = true;
}

Match NameIndex::find(std::string_view words) const {
    assert(finished_);
    const Question question = detail::read_question(words, vocabulary_, most_words_);
    Match match;
    if (question.words.singular.empty()) return match;
    std::vector<Hit> best = best_hits(question, entries_);
    if (best.empty()) {
        match.nearest = nearest_things(question, entries_, vocabulary_);
        return match;
    }
    match.whole = best[0].grade <= detail::Grade::slipped;
    if (best.size() > 1 && match.whole) {
        if (best[0].goodness() < best[1].goodness() || wins_by_rank(best[0], best[1])) best.resize(1);
    }
    if (best[0].slips.as_written == 0) std::erase_if(best, [](const Hit& hit) { return hit.slips.as_written > 0; });
    if (best.size() > most_found) best.resize(most_found);
    for (const Hit& hit : best) {
        match.found.push_back({hit.entry->rank, hit.entry->key, hit.slips.edits, hit.entry->name});
    }
    return match;
}

std::optional<std::string> nearest(std::string_view word, std::span<const std::string_view> known) {
    const Letters wanted = detail::folded(word);
    int most = static_cast<int>(wanted.size() / 3);
    std::optional<std::string> best;
    for (const std::string_view candidate : known) {
        const int far = detail::edits(wanted, detail::folded(candidate), most);
        if (far > most) continue;
        best = std::string(candidate);
        most = far - 1;  // only what is nearer still
    }
    return best;
}

}  // namespace samebase::catalogue
