// One reader under libFuzzer: SAMEBASE_READER names its function.
#include <cstddef>
#include <cstdint>

#include "fuzz/readers.hpp"

extern "C" int LLVMFuzzerTestOneInput(const std::uint8_t* data, std::size_t size) {
    samebase::fuzz::SAMEBASE_READER(std::string(data, data + size));
    return 0;
}
