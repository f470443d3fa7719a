// What is wrong with something a person gave us, told so that they can mend it. Used by every room.
#pragma once

#include <compare>
#include <string>
#include <vector>

namespace piewright {

/// Where in the input a finding stands. Line and column count from 1; 0 means "the whole file".
struct Place {
    std::string file;
    int line = 0;
    int column = 0;
    std::string key; ///< dotted path inside the file, such as `good.beef-pie.price`; empty where there is none

    auto operator<=>(const Place&) const = default;
};

enum class Severity {
    Error,  ///< the input is refused
    Warning ///< the input is taken, and the person should look
};

/// One thing wrong: where, what was seen, what would be right, and a hint where we have one.
struct Finding {
    Place place;
    std::string saw;  ///< what is wrong, with the value seen: `"12 kilo" is not a weight`
    std::string want; ///< what would be right: `a number and kg, g, mg, lb or oz, as in "12 kg"`
    std::string hint; ///< `did you mean "plain-flour"?`; empty where there is none
    Severity severity = Severity::Error;

    auto operator<=>(const Finding&) const = default;
};

/// Whose fault it is when something cannot be done. The values are the program's exit codes: never renumber.
enum class Fault {
    Ours = 1,  ///< a broken promise inside the program
    Input = 2, ///< what we were given is refused, with every reason
    World = 3  ///< disk, network, another program
};

/// One finding as a line for people: `goods.toml:12:9: good.beef-pie.price: saw …; want … (hint)`.
[[nodiscard]] std::string toText(const Finding& finding);

/// All findings, one a line, in file, line and column order.
[[nodiscard]] std::string toText(std::vector<Finding> findings);

} // namespace piewright
