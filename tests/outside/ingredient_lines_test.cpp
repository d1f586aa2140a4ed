// The line reader against labelled ingredient lines: New York Times ingredient snapshot (2015), training part,
// Apache-2.0, as `line, quantity, unit, name, comment, other, token_labels`. The lines are not shipped: the test looks
// for them in the folder that SAMEBASE_OUTSIDE_DATA names, else beside the repository.
//
// Which lines count. The labels are noisy and some lines hold two ingredients, so a line counts when its labels are
// whole and name one ingredient, decided from the labels and three words, never from what our reader makes of it:
//   - there is one label for each word of the line;
//   - the labels make one run of quantity, at most one run of unit and one run of name; the quantity is a number, a
//   fraction or
//     both (a line without a quantity has none to get right; several runs are several ingredients, sizes or ranges);
//   - no word or number is labelled OTHER: there the labeller left out a part of the line, often the quantity ("1/3")
//   itself;
//   - no word is "or", "plus" or "and/or", which bring in a second ingredient or a second quantity.
//
// What is right. Quantity and unit: our amount is the labelled number of the labelled unit, by sizes restated below, to
// one smallest unit; a dozen is twelve pieces, and a stick of butter may be a weight. Name: the same set of words,
// after folding case, cutting at everything that is not a letter or a digit, and taking the plural off each word of
// four letters or more
// ("ies" to "y", "ves" to "f", "es" after s, x, z, ch, sh or o, else "s" but not "ss").
//
// The rules were written by looking at the misses among the odd lines of the file only; the even lines are held out.
// The floors are for all, and for the held-out half.
#include <algorithm>
#include <catch2/catch.hpp>
#include <cmath>
#include <cstdlib>
#include <filesystem>
#include <fstream>
#include <iostream>
#include <map>
#include <optional>
#include <set>
#include <sstream>
#include <string>
#include <vector>

#include "measure/line.hpp"

using namespace samebase::measure;

namespace {

using Words = std::vector<std::string>;

Words split(const std::string& text, char at) {
    Words parts;
    std::istringstream in(text);
    for (std::string part; std::getline(in, part, at);) parts.push_back(part);
    return parts;
}

std::string lower(std::string text) {
    for (char& c : text) {
        if (c >= 'A' && c <= 'Z') c = static_cast<char>(c - 'A' + 'a');
    }
    return text;
}

bool is_word_byte(char c) {
    return (c >= '0' && c <= '9') || (c >= 'a' && c <= 'z') || (c >= 'A' && c <= 'Z') ||
           static_cast<unsigned char>(c) >= 0x80U;
}

/// "2", "3/4", "1 1/2", "0.5"; nothing else.
std::optional<double> read_label_number(const std::string& text) {
    double sum = 0;
    const Words parts = split(text, ' ');
    if (parts.empty() || parts.size() > 2) return std::nullopt;
    for (const std::string& part : parts) {
        if (part.empty() || part.find_first_not_of("0123456789./") != std::string::npos) return std::nullopt;
        const auto stroke = part.find('/');
        const double upper = std::atof(part.c_str());  // NOLINT(cert-err34-c): only digits are left
        if (stroke == std::string::npos) {
            sum += upper;
            continue;
        }
        const double under = std::atof(part.c_str() + stroke + 1);  // NOLINT(cert-err34-c)
        if (stroke == 0 || under == 0) return std::nullopt;
        sum += upper / under;
    }
    return sum;
}

struct Labelled {
    std::string line;
    double quantity = 0;
    std::string unit;
    std::string name;
};

/// Runs of each label; `B-` and `I-` are one run.
std::map<std::string, int> count_runs(const Words& labels) {
    std::map<std::string, int> runs;
    std::string last;
    for (const std::string& label : labels) {
        const std::string kind = label == "OTHER" ? label : label.substr(2);
        if (kind != last) ++runs[kind];
        last = kind;
    }
    return runs;
}

/// The row, where it counts by the rules above.
std::optional<Labelled> counted_row(const Words& row) {
    if (row.size() != 7) return std::nullopt;
    const Words words = split(row[0], ' ');
    const Words labels = split(row[6], ' ');
    if (words.size() != labels.size()) return std::nullopt;
    auto runs = count_runs(labels);
    if (runs["QTY"] != 1 || runs["UNIT"] > 1 || runs["NAME"] != 1) return std::nullopt;
    for (std::size_t i = 0; i < words.size(); ++i) {
        if (labels[i] == "OTHER" && std::any_of(words[i].begin(), words[i].end(), is_word_byte)) return std::nullopt;
        const std::string word = lower(words[i]);
        if (word == "or" || word == "plus" || word == "and/or") return std::nullopt;
    }
    const auto quantity = read_label_number(row[1]);
    if (!quantity) return std::nullopt;
    return Labelled{row[0], *quantity, row[2], row[3]};
}

std::string singular(std::string word) {
    const auto ends = [&](std::string_view tail) { return std::string_view(word).ends_with(tail); };
    if (word.size() < 4) return word;
    if (ends("ies")) return word.substr(0, word.size() - 3) + "y";
    if (ends("ves")) return word.substr(0, word.size() - 3) + "f";
    if (ends("ses") || ends("xes") || ends("zes") || ends("ches") || ends("shes") || ends("oes")) {
        return word.substr(0, word.size() - 2);
    }
    if (ends("s") && !ends("ss")) word.pop_back();
    return word;
}

std::set<std::string> set_of_words(const std::string& text) {
    std::set<std::string> words;
    std::string word;
    for (const char c : lower(text) + " ") {
        if (is_word_byte(c)) {
            word += c;
        } else if (!word.empty()) {
            words.insert(singular(word));
            word.clear();
        }
    }
    return words;
}

/// Our word for a labelled unit, and its size in milligrams, microlitres or thousandths of a piece (US gallon 231 cubic
/// inches; pound 453.59237 g). A count word that we do not list is expected as it stands.
std::pair<std::string, double> expected_unit(const std::string& label) {
    static const std::map<std::string, std::pair<std::string, double>> sizes{
        {"cup", {"cup", 236588.2365}},
        {"tablespoon", {"tablespoon", 14786.76478125}},
        {"teaspoon", {"teaspoon", 4928.92159375}},
        {"pint", {"pint", 473176.473}},
        {"quart", {"quart", 946352.946}},
        {"gallon", {"gallon", 3785411.784}},
        {"pound", {"lb", 453592.37}},
        {"ounce", {"oz", 28349.523125}},
        {"gram", {"g", 1000}},
        {"pinche", {"pinch", 4928.92159375 / 16}},
        {"pinch", {"pinch", 4928.92159375 / 16}},
        {"dashe", {"dash", 4928.92159375 / 8}},
        {"dash", {"dash", 4928.92159375 / 8}},
        {"drop", {"drop", 50}},
        {"dozen", {"", 12000}},
        {"package", {"pack", 1000}},
        {"packet", {"pack", 1000}},
        {"bunche", {"bunch", 1000}},
        {"tin", {"can", 1000}},
        {"loave", {"loaf", 1000}},
        {"leave", {"leaf", 1000}},
        {"rib", {"stalk", 1000}},
        {"boxe", {"box", 1000}},
    };
    std::string word = lower(label);
    if (word.size() > 1 && word.back() == 's') word.pop_back();
    const auto found = sizes.find(word);
    return found != sizes.end() ? found->second : std::pair{word, 1000.0};
}

bool right_amount(const WrittenLine& read, const Labelled& label) {
    const auto [unit, size] = expected_unit(label.unit);
    if (read.unit != unit || !read.amount || !std::holds_alternative<Amount>(read.amount->amount)) return false;
    const auto amount = std::get<Amount>(read.amount->amount);
    const bool weighed_stick = unit == "stick" && amount.dimension() == Dimension::mass;
    const double expected = label.quantity * (weighed_stick ? 453592.37 / 4 : size);
    return std::abs(static_cast<double>(amount.value()) - expected) <= 1;
}

struct Score {
    int lines = 0;
    int amounts = 0;
    int names = 0;
    int whole = 0;

    void add(bool amount, bool name) {
        ++lines;
        amounts += amount ? 1 : 0;
        names += name ? 1 : 0;
        whole += amount && name ? 1 : 0;
    }
    [[nodiscard]] double share(int right) const { return lines == 0 ? 0 : 100.0 * right / lines; }
    void print(const char* which) const {
        std::cout << "ingredient lines, " << which << ": " << lines << " count; quantity and unit right "
                  << share(amounts) << " %, name right " << share(names) << " %, all three " << share(whole) << " %\n";
    }
};

std::filesystem::path data_file() {
    const char* named = std::getenv("SAMEBASE_OUTSIDE_DATA");
    const auto folder = named != nullptr ? std::filesystem::path(named)
                                         : std::filesystem::path(SAMEBASE_SOURCE_DIR).parent_path() / "shared" / "data";
    return folder / "ingredient_lines" / "lines.tsv";
}

/// What was reached (99.2 and 87.6), less a little; the aims were 95 and 85.
constexpr double least_amounts = 99.0;
constexpr double least_names = 87.0;

}  // namespace

TEST_CASE("labelled ingredient lines are read right") {
    std::ifstream file(data_file());
    if (!file) {
        std::cout << "ingredient lines: skipped, because the data is absent: no " << data_file()
                  << "; it is not shipped, set SAMEBASE_OUTSIDE_DATA to the folder that holds it\n";
        return;
    }
    Score all;
    Score held_out;
    std::string line;
    std::getline(file, line);  // the header
    int number = 0;
    while (std::getline(file, line)) {
        ++number;
        const auto label = counted_row(split(line, '\t'));
        if (!label) continue;
        const auto read = read_line(label->line, MeasureSet::us_customary);
        const bool amount = read && right_amount(*read, *label);
        const bool name = read && set_of_words(read->name) == set_of_words(label->name);
        all.add(amount, name);
        if (number % 2 == 0) held_out.add(amount, name);
    }
    std::cout << "ingredient lines: " << number << " in the file\n";
    all.print("all");
    held_out.print("held out");
    std::cout << "ingredient lines: the CRF published with the data labels 74.4 % of whole lines right. That is on its "
                 "own test "
                 "part, on lines of every kind, and counts every word's label: the figures are not of one scale.\n";
    CHECK(all.lines > 12'000);
    CHECK(all.share(all.amounts) >= least_amounts);
    CHECK(all.share(all.names) >= least_names);
    CHECK(held_out.share(held_out.amounts) >= least_amounts);
    CHECK(held_out.share(held_out.names) >= least_names);
}
