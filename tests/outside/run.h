// The program: cases in, verdicts out.
#pragma once

#include <iosfwd>
#include <span>
#include <string>

namespace piewright::outside {

/// `outside [--foods FILE] FILE.csv…`: a line for each judged case with its id, expected and computed value and
/// verdict, and three counts at the end. Returns 0 when none failed, 1 when some did, 2 when a file is refused (nothing
/// is judged then), 3 when one can't be read.
int run(std::span<const std::string> arguments, std::ostream& out, std::ostream& err);

} // namespace piewright::outside
