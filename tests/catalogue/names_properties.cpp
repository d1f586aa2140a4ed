#include <rapidcheck/catch.h>

#include <algorithm>
#include <array>
#include <catch2/catch.hpp>
#include <cctype>
#include <string>
#include <string_view>
#include <vector>

#include "catalogue/detail/letters.hpp"
#include "catalogue/names.hpp"

// Where an assertion has || or &&, it stands in parentheses of its own: else rapidcheck evaluates both sides.
using samebase::catalogue::Found;
using samebase::catalogue::Match;
using samebase::catalogue::NameIndex;
namespace detail = samebase::catalogue::detail;

namespace {

struct Named {
    std::uint8_t rank;
    std::uint32_t key;
    std::string name;
};

void showValue(const Named& named, std::ostream& out) {
    out << int{named.rank} << '/' << named.key << " '" << named.name << '\'';
}

constexpr std::array<std::string_view, 24> kitchen_words{
    "beef",  "mince",   "lamb",  "leaves", "tomato", "tomatoes",  "berries",      "couscous",
    "fresh", "of",      "the",   "chick",  "peas",   "chickpeas", "self-raising", "goat's",
    "crème", "fraîche", "Swiss", "red",    "rice",   "broth",     "cookies",      "zucchini"};

rc::Gen<std::string> kitchen_name() {
    return rc::gen::map(rc::gen::container<std::vector<std::string_view>>(rc::gen::elementOf(kitchen_words)),
                        [](const std::vector<std::string_view>& words) {
                            std::string name = "x";
                            if (!words.empty()) name = words[0];
                            for (std::size_t i = 1; i < std::min<std::size_t>(words.size(), 4); ++i) {
                                name += ' ';
                                name += words[i];
                            }
                            return name;
                        });
}

rc::Gen<std::string> any_bytes() {
    return rc::gen::container<std::string>(rc::gen::arbitrary<char>());
}

rc::Gen<std::string> any_name() {
    return rc::gen::weightedOneOf<std::string>({{5, kitchen_name()}, {1, any_bytes()}});
}

rc::Gen<std::vector<Named>> any_names() {
    return rc::gen::container<std::vector<Named>>(rc::gen::construct<Named>(
        rc::gen::inRange<std::uint8_t>(0, 3), rc::gen::inRange<std::uint32_t>(0, 8), any_name()));
}

NameIndex index_of(const std::vector<Named>& names) {
    NameIndex index;
    for (const Named& named : names) index.add(named.key, named.rank, named.name);
    index.finish();
    return index;
}

bool writable(const std::string& name) {
    return !detail::read_words(name).singular.empty();
}

/// The word with one letter put in, left out, exchanged or swapped.
std::string slipped(std::string word) {
    const auto at = *rc::gen::inRange<std::size_t>(0, word.size());
    const char letter = *rc::gen::inRange<char>('a', 'z' + 1);
    switch (*rc::gen::inRange(0, 4)) {
        case 0:
            word.insert(at, 1, letter);
            break;
        case 1:
            word.erase(at, 1);
            break;
        case 2:
            word[at] = letter;
            break;
        default:
            if (at + 1 < word.size()) std::swap(word[at], word[at + 1]);
    }
    return word;
}

/// Edits by their definition: the last letters go together, or one of the four edits comes last.
int edits_by_definition(std::u32string_view a, std::u32string_view b) {
    if (a.empty() || b.empty()) return static_cast<int>(a.size() + b.size());
    const auto a1 = a.substr(0, a.size() - 1);
    const auto b1 = b.substr(0, b.size() - 1);
    if (a.back() == b.back()) return edits_by_definition(a1, b1);
    int least = 1 + std::min({edits_by_definition(a1, b), edits_by_definition(a, b1), edits_by_definition(a1, b1)});
    if (!a1.empty() && !b1.empty() && a.back() == b1.back() && a1.back() == b.back()) {
        least = std::min(least, 1 + edits_by_definition(a1.substr(0, a1.size() - 1), b1.substr(0, b1.size() - 1)));
    }
    return least;
}

rc::Gen<detail::Letters> short_word(std::size_t most) {
    return rc::gen::map(rc::gen::container<detail::Letters>(rc::gen::elementOf(std::u32string(U"abcdé根"))),
                        [most](const detail::Letters& word) { return word.substr(0, most); });
}

}  // namespace

TEST_CASE("every name finds its thing, or equals of it that go first") {
    rc::prop("the thing is found without an edit", [] {
        const auto names = *any_names();
        const NameIndex index = index_of(names);
        for (const Named& named : names) {
            if (!writable(named.name)) continue;
            const Match match = index.find(named.name);
            RC_ASSERT(!match.found.empty());
            RC_ASSERT(match.nearest.empty());
            const auto plain = detail::read_words(named.name).plain;
            bool itself = false;
            for (const Found& found : match.found) {
                RC_ASSERT(found.distance == 0);
                RC_ASSERT(detail::read_words(found.name).plain == plain);
                itself |= found.rank == named.rank && found.key == named.key;
            }
            RC_ASSERT(
                (itself || match.found.size() == 8 || (match.found.size() == 1 && match.found[0].rank < named.rank)));
        }
    });
}

TEST_CASE("one slip in a long word still finds it, its own final s or a plural's notwithstanding") {
    constexpr std::array<std::string_view, 16> long_words{
        "broccoli", "parmesan",   "zucchini",   "mushroom", "eggplant", "sauerkraut", "capsicum", "asparagus",
        "couscous", "lemongrass", "watercress", "molasses", "octopus",  "radishes",   "tomatoes", "anchovies"};
    NameIndex index;
    for (std::uint32_t key = 0; key < long_words.size(); ++key) index.add(key, 0, long_words[key]);
    index.finish();
    rc::prop("one slip", [&] {
        const auto key = *rc::gen::inRange<std::uint32_t>(0, long_words.size());
        const std::string word = slipped(std::string(long_words[key]));
        const Match match = index.find(word);
        RC_ASSERT(match.found.size() == 1U);
        RC_ASSERT(match.found[0].key == key);
        RC_ASSERT(match.found[0].distance <= 1);  // none where an s was put on or left out
    });
}

TEST_CASE("the order of adding and the order of words change nothing") {
    rc::prop("any order of adding gives the same answers", [] {
        auto names = *any_names();
        const auto questions = *rc::gen::container<std::vector<std::string>>(any_name());
        const NameIndex before = index_of(names);
        for (std::size_t i = names.size(); i > 1; --i) {
            std::swap(names[i - 1], names[*rc::gen::inRange<std::size_t>(0, i)]);
        }
        const NameIndex after = index_of(names);
        for (const Named& named : names) RC_ASSERT(before.find(named.name) == after.find(named.name));
        for (const std::string& words : questions) RC_ASSERT(before.find(words) == after.find(words));
    });
    rc::prop("a name turned round is found without an edit", [] {
        auto names = *any_names();
        const std::string first(*rc::gen::elementOf(kitchen_words));
        const std::string second(*rc::gen::elementOf(kitchen_words));
        names.push_back({.rank = 0, .key = 100, .name = first + ' ' + second});
        const Match match = index_of(names).find(second + ' ' + first);
        RC_ASSERT(!match.found.empty());
        RC_ASSERT(match.found[0].distance == 0);
    });
}

TEST_CASE("any bytes give a sound answer") {
    rc::prop("at most eight found or three nearest, in order and each thing once", [] {
        const auto names = *any_names();
        const auto words = *rc::gen::oneOf(any_bytes(), any_name());
        const Match match = index_of(names).find(words);
        RC_ASSERT(match.found.size() <= 8U);
        RC_ASSERT(match.nearest.size() <= 3U);
        RC_ASSERT((match.found.empty() || match.nearest.empty()));
        RC_ASSERT((writable(words) || match == Match{}));
        const auto& listed = match.found.empty() ? match.nearest : match.found;
        for (std::size_t i = 0; i < listed.size(); ++i) {
            RC_ASSERT(std::any_of(names.begin(), names.end(), [&](const Named& named) {
                return named.rank == listed[i].rank && named.key == listed[i].key && named.name == listed[i].name;
            }));
            RC_ASSERT((i == 0 || listed[i - 1].distance <= listed[i].distance));
            for (std::size_t j = 0; j < i; ++j) {
                RC_ASSERT((listed[i].rank != listed[j].rank || listed[i].key != listed[j].key));
            }
        }
    });
    rc::prop("did you mean takes any bytes and names a known word", [] {
        const auto known = *rc::gen::container<std::vector<std::string>>(any_name());
        const std::vector<std::string_view> views(known.begin(), known.end());
        const auto word = *any_name();
        const auto near = samebase::catalogue::nearest(word, views);
        const bool is_known = std::find(known.begin(), known.end(), word) != known.end();
        RC_ASSERT((near || !is_known));
        RC_ASSERT((!near || std::find(known.begin(), known.end(), *near) != known.end()));
    });
}

TEST_CASE("edits are what their definition says, by both ways of counting them") {
    rc::prop("short words against the definition", [] {
        const auto a = *short_word(6);
        const auto b = *short_word(6);
        const auto most = *rc::gen::inRange(0, 7);
        const int expected = std::min(edits_by_definition(a, b), most + 1);
        RC_ASSERT(detail::edits(a, b, most) == expected);
        RC_ASSERT(detail::EditPattern(a).edits_to(b, detail::letter_set(b), most) == expected);
    });
    rc::prop("words of any length, both ways", [] {
        const auto a = *short_word(200);
        const auto b = *short_word(200);
        RC_ASSERT(detail::EditPattern(a).edits_to(b, detail::letter_set(b), 200) == detail::edits(a, b, 200));
    });
}

TEST_CASE("singular takes a word and its plural to one form, and leaves what only looks like a plural") {
    const std::vector<std::pair<std::u32string, std::u32string>> pairs{
        {U"carrot", U"carrots"},   {U"tomato", U"tomatoes"},   {U"potato", U"potatos"},  {U"leaf", U"leaves"},
        {U"loaf", U"loaves"},      {U"berry", U"berries"},     {U"cookie", U"cookies"},  {U"pie", U"pies"},
        {U"peach", U"peaches"},    {U"quiche", U"quiches"},    {U"radish", U"radishes"}, {U"box", U"boxes"},
        {U"mousse", U"mousses"},   {U"olive", U"olives"},      {U"chive", U"chives"},    {U"clove", U"cloves"},
        {U"cheese", U"cheeses"},   {U"avocado", U"avocadoes"}, {U"kiwi", U"kiwis"},      {U"pea", U"peas"},
        {U"sausage", U"sausages"}, {U"half", U"halves"},       {U"glass", U"glasses"},   {U"anchovy", U"anchovies"}};
    for (const auto& [one, many] : pairs) CHECK(detail::singular(one) == detail::singular(many));
    for (const std::u32string word : {U"couscous", U"asparagus", U"swiss", U"hummus", U"cos", U"cress", U"molasses"}) {
        CHECK(detail::singular(word) == word);
    }
}
