#include "fuzz/targets.h"

#include <cstddef>
#include <cstdint>

extern "C" int LLVMFuzzerTestOneInput(const std::uint8_t* data, std::size_t size) {
    piewright::fuzz::bookOf(std::string(data, data + size));
    return 0;
}
