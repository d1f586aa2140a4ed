// What stands in a page of the web: texts without tags and entities, and the blocks of linked data.
#pragma once

#include <cstddef>
#include <string>
#include <string_view>
#include <vector>

namespace samebase::exchange::detail {

/// A text as people read it: entities of HTML resolved ("&amp;", "&frac12;", "&#176;"; those not known stay as they
/// are), tags left out, control characters and runs of spaces one space each. Linear in its length.
[[nodiscard]] std::string plain_text(std::string_view text);

/// The same in lines: a line ends where the text has an end of line, a <br> or the end of a block (</p>, </li>,
/// </div>). Empty lines are left out.
[[nodiscard]] std::vector<std::string> plain_lines(std::string_view text);

/// A block of linked data in a page.
struct Block {
    std::string_view text;
    std::size_t line = 1;    ///< where it begins, both counted from 1
    std::size_t column = 1;  ///< in bytes
};

/// What stands in `<script type="application/ld+json">`, in order; one that is never closed goes to the end of the
/// page. At most `most_blocks`.
[[nodiscard]] std::vector<Block> linked_data_blocks(std::string_view page);
inline constexpr std::size_t most_blocks = 1000;

}  // namespace samebase::exchange::detail
