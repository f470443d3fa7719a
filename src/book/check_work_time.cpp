// The roster against the working-time rules of the rule book in force. The local employment law governs: a rule that
// was not verified only warns, and so does one that is an average or that a hand may opt out of.
#include "book/checks.h"

#include <algorithm>

namespace piewright::book {

namespace {

constexpr std::string_view kFile = "hands.toml";
constexpr Minutes kDay{24 * 60};
constexpr Minutes kWeek = 7 * kDay;

// One shift on one weekday of the repeating week, counted from Sunday 00:00.
struct Worked {
    Minutes from;
    Minutes to;
    Minutes work; // without breaks
    const Shift* shift;
    std::string path;
};

std::vector<Worked> weekOf(const Hand& hand) {
    std::vector<Worked> week;
    for (std::size_t i = 0; i < hand.shifts.size(); ++i) {
        const Shift& shift = hand.shifts[i];
        Minutes breaks{0};
        for (const Break& rest : shift.breaks) breaks += rest.length;
        const Minutes length = shift.at.to - shift.at.from;
        for (const Weekday day : shift.days) {
            const Minutes start = static_cast<int>(day.c_encoding()) * kDay;
            week.push_back({start + shift.at.from.sinceMidnight(), start + shift.at.to.sinceMidnight(), length - breaks,
                            &shift, "hand." + hand.id.name() + ".shift[" + std::to_string(i) + ']'});
        }
    }
    std::sort(week.begin(), week.end(), [](const Worked& a, const Worked& b) { return a.from < b.from; });
    return week;
}

class Roster {
  public:
    Roster(const Checking& checking, const Hand& hand) : checking_(checking), hand_(hand), week_(weekOf(hand)) {}

    void breaks() const {
        const Rule* after = rule("break-after");
        const Rule* length = rule("break-length");
        if (after == nullptr || length == nullptr) return;
        const Shift* told = nullptr;
        for (const Worked& day : week_) {
            if (day.shift == told || day.work <= minutes(*after)) continue;
            const auto& all = day.shift->breaks;
            if (std::any_of(all.begin(), all.end(), [&](const Break& each) { return each.length >= minutes(*length); }))
                continue;
            told = day.shift;
            report(*length, day.path, exactText(Seconds(day.work)) + " of work without a break of " + shown(*length),
                   "a break of at least " + shown(*length) + " in a day longer than " + shown(*after));
        }
    }

    void dailyRest() const {
        const Rule* rest = rule("daily-rest");
        if (rest == nullptr) return;
        const Shift* told = nullptr;
        for (std::size_t i = 0; i < week_.size(); ++i) {
            const Minutes gap = gapAfter(i);
            const Worked& next = week_[(i + 1) % week_.size()];
            if (next.shift == told || gap >= minutes(*rest)) continue;
            told = next.shift;
            report(*rest, next.path,
                   exactText(Seconds(gap)) + " of rest before the shift on " + longName(weekdayOf(next)),
                   "at least " + shown(*rest) + " between two shifts");
        }
    }

    void weeklyRest() const {
        const Rule* rest = rule("weekly-rest");
        if (rest == nullptr || week_.empty()) return;
        Minutes longest{0};
        for (std::size_t i = 0; i < week_.size(); ++i) longest = std::max(longest, gapAfter(i));
        if (longest < minutes(*rest))
            report(*rest, path(), "no rest longer than " + exactText(Seconds(longest)) + " in the week",
                   "at least " + shown(*rest) + " once in seven days");
    }

    void longestDay() const {
        const Rule* most = hand_.under18 ? checking_.book.rules.find(RuleId("day-longest-under-18")) : nullptr;
        if (most == nullptr) return;
        const Shift* told = nullptr;
        for (const Worked& day : week_) {
            if (day.shift == told || day.work <= minutes(*most)) continue;
            told = day.shift;
            report(*most, day.path, exactText(Seconds(day.work)) + " of work on a day", "at most " + shown(*most));
        }
    }

    void longestWeek() const {
        const Rule* most = rule("week-longest");
        if (most == nullptr) return;
        Minutes sum{0};
        for (const Worked& day : week_) sum += day.work;
        if (sum > minutes(*most))
            report(*most, path(), hours(sum) + " of work in a week", "at most " + hours(minutes(*most)),
                   !hand_.under18);
    }

  private:
    // The rule for the hand's age: the one for under 18 where there is one, else the one for all.
    [[nodiscard]] const Rule* rule(const std::string& id) const {
        const Rule* young = hand_.under18 ? checking_.book.rules.find(RuleId(id + "-under-18")) : nullptr;
        return young != nullptr ? young : checking_.book.rules.find(RuleId(id));
    }

    static Minutes minutes(const Rule& rule) {
        const auto* seconds = std::get_if<Seconds>(&rule.value);
        return seconds == nullptr ? Minutes(0) : std::chrono::ceil<Minutes>(*seconds);
    }
    static std::string shown(const Rule& rule) { return exactText(Seconds(minutes(rule))); }
    // A week's work is spoken of in hours, not in days.
    static std::string hours(Minutes sum) {
        const auto whole = std::chrono::floor<std::chrono::hours>(sum);
        const std::string rest = sum == whole ? "" : ' ' + exactText(Seconds(sum - whole));
        return std::to_string(whole.count()) + " h" + rest;
    }
    static Weekday weekdayOf(const Worked& day) { return Weekday(static_cast<unsigned>(day.from / kDay)); }

    // From the end of one day's shift to the next one's beginning, round the week.
    [[nodiscard]] Minutes gapAfter(std::size_t i) const {
        const bool last = i + 1 == week_.size();
        return week_[(i + 1) % week_.size()].from + (last ? kWeek : Minutes(0)) - week_[i].to;
    }

    [[nodiscard]] std::string path() const { return "hand." + hand_.id.name(); }

    void report(const Rule& rule, const std::string& at, const std::string& saw, const std::string& want,
                bool mayDiffer = false) const {
        std::string full =
            want + " (rule " + rule.id.name() + ", " + checking_.book.rules.name + ": " + rule.source + ')';
        if (mayDiffer || rule.confidence == Confidence::Memory)
            checking_.warning(kFile, at, saw, std::move(full));
        else
            checking_.error(kFile, at, saw, std::move(full));
    }

    const Checking& checking_;
    const Hand& hand_;
    std::vector<Worked> week_;
};

} // namespace

void checkWorkTime(const Checking& checking) {
    for (const auto& [id, hand] : checking.book.hands) {
        if (!checking.sound("hand." + id.name())) continue;
        const Roster roster(checking, hand);
        roster.breaks();
        roster.dailyRest();
        roster.weeklyRest();
        roster.longestDay();
        roster.longestWeek();
    }
}

} // namespace piewright::book
