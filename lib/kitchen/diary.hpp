// A household's days as a calendar has them: plain data between what words them and what writes them down.
#pragma once

#include <cstdint>
#include <string>
#include <string_view>
#include <vector>

#include "basics/day.hpp"

namespace samebase::kitchen {

struct DiaryEntry {
    enum class Kind : std::uint8_t { dinner, lunch, take_out, carry, trip, use_by };
    Kind kind = Kind::dinner;
    basics::Day day;  ///< all of it
    /// Tells apart entries of one kind on one day: empty, or letters, digits and hyphens. Kind, day and this are the
    /// entry: said again with another title it is the same one, changed.
    std::string which;
    std::string title;
    std::string note;             ///< may have lines
    bool in_the_morning = false;  ///< to be reminded of at eight
};

[[nodiscard]] constexpr std::string_view name(DiaryEntry::Kind kind) {
    switch (kind) {
        case DiaryEntry::Kind::dinner:
            return "dinner";
        case DiaryEntry::Kind::lunch:
            return "lunch";
        case DiaryEntry::Kind::take_out:
            return "take-out";
        case DiaryEntry::Kind::carry:
            return "carry";
        case DiaryEntry::Kind::trip:
            return "trip";
        case DiaryEntry::Kind::use_by:
            break;
    }
    return "use-by";
}

}  // namespace samebase::kitchen
