// The command line: arguments in, text out, an exit code.
#pragma once

#include <iosfwd>
#include <string>
#include <vector>

namespace piewright::cli {

/// Runs one command. Never throws. Returns 0 done, 1 a fault of ours, 2 the input is refused, 3 the world failed.
int run(const std::vector<std::string>& arguments, std::istream& in, std::ostream& out, std::ostream& err);

} // namespace piewright::cli
