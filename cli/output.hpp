// The program's two streams: the only place that writes to them.
#pragma once

#include <string_view>

namespace samebase::cli {

/// A document to standard output, byte by byte.
void print_document(std::string_view text);
/// Text for people to standard output. `colours`: our own colours are in it.
void print(std::string_view text, bool colours = false);
/// Text for people to standard error.
void tell(std::string_view text);

/// The exit status of a command that ended with `status`: another one where standard output did not take all that was
/// printed, and that is told.
[[nodiscard]] int finished(int status);

}  // namespace samebase::cli
