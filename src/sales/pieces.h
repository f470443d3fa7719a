// A number of pieces as tills write it.
#pragma once

#include <string_view>

namespace piewright::sales {

constexpr int kMostInARow = 100'000;

struct Pieces {
    enum class Kind { Whole, Part, NotANumber, Absurd } kind = Kind::NotANumber;
    int count = 0; ///< of Kind::Whole; negative for a return
};

/// `2`, `2.0`, `2,0`, `-3`, `3-`, `(3)`, `+2`, `1.234,00`, `1,234.00`, `1 234`, `1'234`. Where one mark with three
/// digits after it could be either, `decimalComma` says which it is. Kind::Part: a part of a piece; Kind::Absurd:
/// beyond 100,000 either way.
[[nodiscard]] Pieces parsePieces(std::string_view text, bool decimalComma);

} // namespace piewright::sales
