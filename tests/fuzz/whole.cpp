// A whole export, as it is read in again.
#include "exchange/whole.hpp"

#include "fuzz/readers.hpp"

namespace samebase::fuzz {

void read_whole(const std::string& text) {
    const auto whole = exchange::read_whole(text, "whole.json");
    if (!whole) return must_be_whole(whole.error());
    const std::string written = exchange::write_whole(*whole);
    const auto again = exchange::read_whole(written, "again.json");
    must(again.has_value(), "what is written is read", written);
    must(exchange::write_whole(*again) == written, "and is written as it was");
}

}  // namespace samebase::fuzz
