#include "book/rules.h"

#include <algorithm>
#include <array>

namespace piewright::book {

namespace {

constexpr std::array<KnownRule, 29> kKnown{{
    {"hot-hold-temperature", true, Bound::Least, "Hot food is kept at"},
    {"hot-hold-tolerance", false, Bound::Most, "Once, below the hot holding temperature, for"},
    {"chill-temperature", true, Bound::Most, "Chilled food is kept at"},
    {"chill-tolerance", false, Bound::Most, "Once, above the chilled holding temperature, for"},
    {"time-control", false, Bound::Most, "Without any temperature control, then thrown away, for"},
    {"use-or-chill-within", false, Bound::Most, "Without temperature control, and still fit to be chilled again, for"},
    {"cook-temperature", true, Bound::Least, "Cooked to a core temperature of"},
    {"cook-time", false, Bound::Least, "held at that core temperature for"},
    {"reheat-temperature", true, Bound::Least, "Reheated to a core temperature of"},
    {"reheat-time", false, Bound::Least, "held at that core temperature for"},
    {"reheat-within", false, Bound::Most, "Reheated for hot holding within"},
    {"cool-start-within", false, Bound::Most, "Cooling begins after cooking within"},
    {"cool-from", true, Bound::Least, "The time for cooling counts from"},
    {"cool-midway", true, Bound::Most, "At the end of the first stage of cooling at"},
    {"cool-first-within", false, Bound::Most, "From the start of cooling to the first stage's end within"},
    {"cool-second-within", false, Bound::Most, "From the first stage's end to the end of cooling within"},
    {"cool-to", true, Bound::Most, "Cooled to"},
    {"cool-within", false, Bound::Most, "From the start of cooling to its end within"},
    {"break-after", false, Bound::Most, "A working day without a break lasts"},
    {"break-length", false, Bound::Least, "The break in a longer day lasts"},
    {"break-after-under-18", false, Bound::Most, "Under 18: a working day without a break lasts"},
    {"break-length-under-18", false, Bound::Least, "Under 18: the break in a longer day lasts"},
    {"daily-rest", false, Bound::Least, "Between two working days"},
    {"daily-rest-under-18", false, Bound::Least, "Under 18: between two working days"},
    {"weekly-rest", false, Bound::Least, "Once in seven days, without a break, rest of"},
    {"weekly-rest-under-18", false, Bound::Least, "Under 18: rest in seven days"},
    {"day-longest-under-18", false, Bound::Most, "Under 18: a working day lasts"},
    {"week-longest", false, Bound::Most, "A working week lasts, on average,"},
    {"week-longest-under-18", false, Bound::Most, "Under 18: a working week lasts"},
}};

} // namespace

std::span<const KnownRule> knownRules() { return kKnown; }

const KnownRule* knownRule(const RuleId& id) {
    const auto found =
        std::find_if(kKnown.begin(), kKnown.end(), [&](const KnownRule& rule) { return rule.id == id.name(); });
    return found == kKnown.end() ? nullptr : &*found;
}

bool stricter(Bound bound, const RuleValue& value, const RuleValue& than) {
    return bound == Bound::Least ? value > than : value < than;
}

} // namespace piewright::book
