// What sheets share in words.
#pragma once

#include <optional>
#include <string>

#include "ask/thaw.hpp"
#include "show/words.hpp"

namespace samebase::show::detail {

/// "Wed 25 Nov to Tue 1 Dec", "December 2026" where the span is a month.
[[nodiscard]] std::string span_words(basics::Span span);

/// "beef mince, 2 packs from the shed freezer".
[[nodiscard]] std::string what_is_taken_out(const flow::ThawMove& move, const kitchen::Kitchen& kitchen,
                                            bool with_place = true);
/// The same with "for Fri 4 Dec: meat loaf".
[[nodiscard]] std::string take_out_words(const flow::ThawMove& move, const kitchen::Kitchen& kitchen,
                                         bool with_place = true);

/// "Fri 4 Dec", "4 Dec 2027" where it is far away.
[[nodiscard]] std::string date_words(basics::Day day, basics::Day today);

}  // namespace samebase::show::detail
