// What must hold for a hand's shifts and breaks.
#include "book/checks.h"

#include <algorithm>
#include <optional>

namespace piewright::book {

namespace {

constexpr std::string_view kFile = "hands.toml";
constexpr Minutes kDay{24 * 60};
constexpr Minutes kShortest{15};
constexpr Minutes kLongest{16 * 60};

std::string told(const ClockSpan& span) { return toText(span.from) + '-' + toText(span.to); }

void breaksFit(const Checking& checking, const Shift& shift, const std::string& path) {
    for (std::size_t i = 0; i < shift.breaks.size(); ++i) {
        const Break& rest = shift.breaks[i];
        const std::string at = path + ".breaks[" + std::to_string(i) + ']';
        if (rest.between.from < shift.at.from || rest.between.to > shift.at.to)
            checking.error(kFile, at + ".between", "the break lies outside the shift",
                           "a time inside " + told(shift.at));
        if (rest.length > rest.between.to - rest.between.from)
            checking.error(kFile, at + ".length",
                           exactText(Seconds(rest.length)) + " do not fit between " + toText(rest.between.from) +
                               " and " + toText(rest.between.to),
                           "a shorter break, or more room for it");
    }
}

std::optional<ClockSpan> shiftOnDay(const Hand& hand, Weekday day) {
    for (const Shift& shift : hand.shifts)
        if (std::find(shift.days.begin(), shift.days.end(), day) != shift.days.end()) return shift.at;
    return std::nullopt;
}

} // namespace

void checkShiftsApart(const Checking& checking) {
    for (const auto& [id, hand] : checking.book.hands) {
        if (!checking.sound("hand." + id.name())) continue;
        for (unsigned day = 0; day < 7; ++day) {
            const auto shift = shiftOnDay(hand, Weekday(day));
            const auto next = shiftOnDay(hand, Weekday((day + 1) % 7));
            if (!shift || !next || shift->to - kDay <= next->from) continue;
            checking.report.flaw("hand." + id.name());
            checking.error(kFile, "hand." + id.name(),
                           "the shift of " + longName(Weekday(day)) + " runs into that of the day after",
                           "an end before " + toText(next->from + kDay));
        }
    }
}

void checkShifts(const Checking& checking) {
    for (const auto& [id, hand] : checking.book.hands) {
        if (!checking.sound("hand." + id.name())) continue;
        const std::size_t before = checking.report.errors();
        std::vector<Weekday> taken;
        for (std::size_t i = 0; i < hand.shifts.size(); ++i) {
            const Shift& shift = hand.shifts[i];
            const std::string path = "hand." + id.name() + ".shift[" + std::to_string(i) + ']';
            const Minutes length = shift.at.to - shift.at.from;
            if (length < kShortest || length > kLongest)
                checking.error(kFile, path + ".at", "a shift of " + exactText(Seconds(length)), "15 min to 16 h");
            if (shift.at.from >= ClockTime(kDay))
                checking.error(kFile, path + ".at", "begins on the day after, at " + toText(shift.at.from),
                               "a beginning before 24:00");
            for (std::size_t j = 0; j < shift.days.size(); ++j) {
                if (std::find(taken.begin(), taken.end(), shift.days[j]) != taken.end())
                    checking.error(kFile, path + ".days[" + std::to_string(j) + ']',
                                   "a second shift on " + longName(shift.days[j]), "at most one shift on a day");
                taken.push_back(shift.days[j]);
            }
            breaksFit(checking, shift, path);
        }
        // Sums over such shifts would only repeat what is wrong with them.
        if (checking.report.errors() != before) checking.report.flaw("hand." + id.name());
    }
}

} // namespace piewright::book
