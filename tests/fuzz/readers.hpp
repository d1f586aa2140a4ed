// The readers of outside text, for fuzzing and for replaying what fuzzing found. Each takes any bytes. What it makes of
// them is sound, or a list of whole problems; where it is neither, the program ends with a message (must()).
#pragma once

#include <span>
#include <string>
#include <string_view>

#include "basics/problem.hpp"
#include "kitchen/kitchen.hpp"

namespace samebase::fuzz {

struct Reader {
    std::string_view name;  ///< of its folder in tests/fuzz/corpus
    void (*read)(const std::string& text);
    std::size_t longest;  ///< of the texts that are tried
};

/// All of them, in the order of their names.
[[nodiscard]] std::span<const Reader> readers();

void read_days(const std::string& text);
void read_documents(const std::string& text);
void read_lines(const std::string& text);
void read_recipes(const std::string& text);
void read_stock_csv(const std::string& text);
void read_whole(const std::string& text);
void read_words(const std::string& text);

/// Ends the program where that does not hold.
void must(bool holds, std::string_view what, const std::string& shown = {});
/// At least one, each with what was found and expected, and in UTF-8; with its place too, where the reader knows that.
void must_be_whole(const basics::Problems& problems, bool placed = true);

/// The day on which everything is read.
[[nodiscard]] basics::Day today();
/// The demo kitchen.
[[nodiscard]] const kitchen::Kitchen& demo();

}  // namespace samebase::fuzz
