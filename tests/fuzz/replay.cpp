// Reads every text of the corpus as it is, and then with changes that are the same on every run: cut, doubled, joined
// with another, with bytes and words of the trade put in.
//
//     fuzz_replay CORPUS [CHANGES]     a folder with a folder a reader; changes of each text, 10 where nothing is said
//
// Prints how many texts were read. A reader that fails ends the program; the text is then in the last line before.
#include <algorithm>
#include <array>
#include <csignal>
#include <cstdlib>
#include <filesystem>
#include <fstream>
#include <iostream>
#include <iterator>
#include <vector>

#include "fuzz/readers.hpp"
#include "support/random_commands.hpp"

namespace {

using namespace samebase;
namespace fs = std::filesystem;

constexpr std::array<std::string_view, 24> bits{
    "\"", "{", "}",    "[",   "]",    ",",    ":",          "\n", "0",         "-1",    "1/0",  "9999999999999999999",
    "½",  "g", "pack", "and", "null", "true", "2026-02-29", "..", "</script>", "@type", "\xff", "=1"};

std::vector<std::string> texts_in(const fs::path& folder) {
    std::vector<fs::path> paths;
    for (const auto& entry : fs::directory_iterator(folder)) paths.push_back(entry.path());
    std::sort(paths.begin(), paths.end());
    std::vector<std::string> texts;
    for (const auto& path : paths) {
        std::ifstream file(path, std::ios::binary);
        texts.emplace_back(std::istreambuf_iterator<char>(file), std::istreambuf_iterator<char>());
    }
    return texts;
}

std::string changed(std::string text, const std::vector<std::string>& all, tests::Dice& dice) {
    const auto below = [&](std::size_t most) { return static_cast<std::size_t>(dice.next() % most); };
    for (auto times = 1 + below(3); times > 0; --times) {
        const auto at = below(text.size() + 1);
        switch (below(6)) {
            case 0:
                text.insert(at, bits.at(below(bits.size())));
                break;
            case 1:
                text.erase(at, 1 + below(12));
                break;
            case 2:
                text.resize(at);
                break;
            case 3:
                text.insert(at, text.substr(at / 2, below(30)));
                break;
            case 4:
                if (at < text.size()) text[at] = static_cast<char>(below(256));
                break;
            default: {
                const std::string& other = all[below(all.size())];
                text = text.substr(0, at) + other.substr(std::min(at, other.size()));
            }
        }
    }
    return text;
}

}  // namespace

int main(int argc, char** argv) {
    if (argc < 2) return 2;
    const int changes = argc > 2 ? std::atoi(argv[2]) : 10;
    static std::string now;
    std::signal(SIGABRT, [](int /*signal*/) {
        // Good enough for a program that ends anyway.
        std::cerr << "with: " << now << '\n';
        std::_Exit(1);
    });
    for (const fuzz::Reader& reader : fuzz::readers()) {
        const auto texts = texts_in(fs::path(argv[1]) / reader.name);
        if (texts.empty()) {
            std::cerr << reader.name << ": no texts\n";
            return 1;
        }
        tests::Dice dice(4);
        std::size_t read = 0;
        for (const std::string& text : texts) {
            for (int i = 0; i <= changes; ++i) {
                now = i == 0 ? text : changed(text, texts, dice);
                reader.read(now);
                ++read;
            }
        }
        std::cout << reader.name << ": " << read << " texts\n";
    }
    return 0;
}
