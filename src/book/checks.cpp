#include "book/checks.h"

#include <array>

namespace piewright::book {

std::span<const Check> allChecks() {
    static constexpr std::array<Check, 1> kChecks{checkReferences};
    return kChecks;
}

} // namespace piewright::book
