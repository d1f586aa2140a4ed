// Every shipped ingredient is found by each of its names with one slip of the pen in a word of six letters or more.
#include <rapidcheck/catch.h>

#include <algorithm>
#include <catch2/catch.hpp>
#include <string>
#include <vector>

#include "catalogue/names.hpp"
#include "support/shipped.hpp"

using namespace samebase;

namespace {

struct Named {
    std::uint32_t key;
    std::string name;
};

std::vector<Named> names_of_all() {
    std::vector<Named> names;
    std::uint32_t key = 0;
    for (const auto& thing : tests::shipped_catalogue().ingredients()) {
        names.push_back({key, thing.name});
        for (const auto& other : thing.also) names.push_back({key, other});
        ++key;
    }
    return names;
}

bool is_letter(char c) {
    return (c >= 'a' && c <= 'z') || (c >= 'A' && c <= 'Z');
}

struct Span {
    std::size_t from;
    std::size_t letters;
};

/// The words of six plain letters or more.
std::vector<Span> long_words(const std::string& name) {
    std::vector<Span> words;
    for (std::size_t at = 0; at < name.size();) {
        std::size_t end = at;
        while (end < name.size() && name[end] != ' ' && name[end] != '-') ++end;
        const bool plain = std::all_of(name.begin() + static_cast<std::ptrdiff_t>(at),
                                       name.begin() + static_cast<std::ptrdiff_t>(end), is_letter);
        if (plain && end - at >= 6) words.push_back({at, end - at});
        at = end + 1;
    }
    return words;
}

std::string slipped(std::string word) {
    const auto at = *rc::gen::inRange<std::size_t>(0, word.size());
    const char letter = *rc::gen::inRange<char>('a', 'z' + 1);
    switch (*rc::gen::inRange(0, 4)) {
        case 0:
            return word.insert(at, 1, letter);
        case 1:
            return word.erase(at, 1);
        case 2:
            word[at] = letter;
            return word;
        default:
            if (at + 1 < word.size()) std::swap(word[at], word[at + 1]);
            return word;
    }
}

}  // namespace

TEST_CASE("every shipped name is found through one slip of the pen in a long word") {
    const auto names = names_of_all();
    catalogue::NameIndex index;
    for (const Named& named : names) index.add(named.key, 0, named.name);
    index.finish();
    rc::prop("the thing is found, or things whose names are no further off", [&] {
        const Named& named = names[*rc::gen::inRange<std::size_t>(0, names.size())];
        const auto words = long_words(named.name);
        if (words.empty()) return;
        const Span span = words[*rc::gen::inRange<std::size_t>(0, words.size())];
        const std::string word = slipped(named.name.substr(span.from, span.letters));
        const auto alone = index.find(word);
        if (!alone.found.empty() && alone.found[0].distance == 0) return;  // it became a word that is known
        const auto match = index.find(std::string(named.name).replace(span.from, span.letters, word));
        RC_ASSERT(!match.found.empty());
        RC_ASSERT(match.found[0].distance <= 1);
        const bool itself = std::any_of(match.found.begin(), match.found.end(),
                                        [&](const catalogue::Found& found) { return found.key == named.key; });
        RC_CLASSIFY(!itself, "another fits as well");
        RC_CLASSIFY(match.found.size() > 1, "several");
    });
}
