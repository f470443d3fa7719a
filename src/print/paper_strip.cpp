// The day as a picture: a strip for each hand, for what runs by itself, and for each deck, under one axis of time.
#include "print/paper_sheet.h"

#include <algorithm>
#include <cmath>
#include <optional>

namespace piewright::print {

namespace {

enum class Kind { Work, Break, Oven, Unwatched };

struct Bar {
    Instant from, to;
    Kind kind = Kind::Work;
    std::string number; ///< in the task list; of the load
    std::string what;   ///< in words
    std::string more;
};

struct Strip {
    std::string name;
    std::vector<std::pair<Instant, Instant>> present;
    std::vector<std::vector<Bar>> lanes; ///< bars of one lane do not overlap
    std::vector<std::pair<Instant, std::string>> pointers;
    double share = 1; ///< of the height, for each lane
};

/// Spreads bars over as few lanes as they need, each into the first that is free.
std::vector<std::vector<Bar>> inLanes(std::vector<Bar> bars) {
    std::stable_sort(bars.begin(), bars.end(), [](const Bar& a, const Bar& b) { return a.from < b.from; });
    std::vector<std::vector<Bar>> lanes;
    for (Bar& bar : bars) {
        const auto free = std::find_if(lanes.begin(), lanes.end(),
                                       [&](const std::vector<Bar>& lane) { return lane.back().to <= bar.from; });
        if (free == lanes.end())
            lanes.push_back({std::move(bar)});
        else
            free->push_back(std::move(bar));
    }
    if (lanes.empty()) lanes.emplace_back();
    return lanes;
}

Bar barOf(const day::Task& task) {
    const Kind kind = task.isBreak ? Kind::Break : task.hands.empty() ? Kind::Unwatched : Kind::Work;
    return {task.start, task.end, kind, std::to_string(task.number), task.isBreak ? "Break" : task.what, task.of};
}

std::vector<Strip> stripsOf(const day::Plan& plan, const Times& times) {
    std::vector<Strip> strips;
    for (const std::string& hand : handsOf(plan)) {
        Strip strip;
        strip.name = hand;
        strip.share = 1.6; // what a person does wants the most words
        for (const day::PlannedShift& shift : plan.shifts)
            if (shift.hand == hand) strip.present.emplace_back(shift.from, shift.to);
        std::vector<Bar> bars;
        for (const day::Task& task : plan.tasks)
            if (takesPart(task, hand)) bars.push_back(barOf(task));
        strip.lanes = inLanes(std::move(bars));
        strips.push_back(std::move(strip));
    }
    std::vector<Bar> unwatched;
    for (const day::Task& task : plan.tasks)
        if (task.hands.empty()) unwatched.push_back(barOf(task));
    if (!unwatched.empty()) strips.push_back({"By itself", {}, inLanes(std::move(unwatched)), {}, 0.8});
    for (const Deck& deck : decksOf(plan)) {
        Strip strip;
        strip.name = deck.name;
        strip.share = 1.3;
        std::vector<Bar> bars;
        int number = 0;
        for (const day::DeckLoad* load : deck.loads) {
            bars.push_back({load->in, load->out, Kind::Oven, std::to_string(++number), contentsOf(*load),
                            "at " + handText(load->at)});
            if (load->lightBy) strip.pointers.emplace_back(*load->lightBy, times.clock(*load->lightBy));
        }
        strip.lanes = inLanes(std::move(bars));
        strips.push_back(std::move(strip));
    }
    return strips;
}

/// From the first whole hour to the last that hold everything; none when there is nothing, or no such hours within two
/// days.
std::optional<std::pair<Instant, Instant>> hoursOf(const day::Plan& plan, const Times& times) {
    std::vector<Instant> all;
    for (const day::Task& task : plan.tasks) all.insert(all.end(), {task.start, task.end});
    for (const day::DeckLoad& load : plan.loads) {
        all.insert(all.end(), {load.in, load.out});
        if (load.lightBy) all.push_back(*load.lightBy);
    }
    for (const day::PlannedShift& shift : plan.shifts) all.insert(all.end(), {shift.from, shift.to});
    if (all.empty()) return std::nullopt;
    const auto [first, last] = std::minmax_element(all.begin(), all.end());
    if (*last - *first > std::chrono::hours(48)) return std::nullopt;
    const Instant from = *first - times.pastTheHour(*first);
    const Seconds over = times.pastTheHour(*last);
    const Instant to = over == Seconds(0) ? *last : *last - over + std::chrono::hours(1);
    return std::pair(from, std::max(to, from + std::chrono::hours(1)));
}

class Picture {
  public:
    Picture(Flow& flow, const day::Plan& plan, const Times& times, Instant from, Instant to)
        : flow_(flow), canvas_(flow.canvas()), plan_(plan), times_(times), from_(from), to_(to) {}

    void draw(const std::vector<Strip>& strips);

  private:
    static constexpr double kNames = 92;           ///< points for the strips' names
    static constexpr double kAxis = 24;            ///< height of the axis
    static constexpr double kLegend = 26;          ///< height kept for the legend
    static constexpr double kLow = 17, kTall = 50; ///< a lane
    static constexpr double kApart = 5;            ///< between strips
    static constexpr double kPointers = 15;        ///< above a strip that has some
    static constexpr double kThinnest = 6.8;       ///< bar that can hold a line of text

    [[nodiscard]] double x(Instant at) const {
        const double part = static_cast<double>((at - from_).count()) / static_cast<double>((to_ - from_).count());
        return flow_.left() + kNames + part * (flow_.width() - kNames);
    }
    void axis(double top, double bottom);
    void strip(const Strip& strip, double top, double lane);
    /// The bar itself, without words: greys differ in frame or hatching too, for who prints badly or sees badly.
    void ground(Kind kind, double left, double top, double width, double height);
    void bar(const Bar& bar, double top, double height);
    void label(const Bar& bar, double left, double width, double top, double height);
    void legend(double top);

    Flow& flow_;
    Canvas& canvas_;
    const day::Plan& plan_;
    const Times& times_;
    Instant from_, to_;
};

void Picture::axis(double top, double bottom) {
    const double hourWidth =
        (flow_.width() - kNames) / std::max(1.0, static_cast<double>((to_ - from_).count()) / 3600);
    const double wanted = canvas_.lay("00:00", {8}).width + 4;
    const int every = std::max(1, static_cast<int>(std::ceil(wanted / hourWidth)));
    int hour = 0;
    double free = 0; // right of the label before
    for (Instant at = from_; at <= to_; at += std::chrono::hours(1), ++hour) {
        canvas_.line(x(at), top + kAxis - 3, x(at), bottom, 0.4, 0.7);
        if (hour % every != 0) continue;
        const Laid words = canvas_.lay(times_.clock(at), {8});
        const double most = flow_.left() + flow_.width() - words.width;
        const double left = std::min(x(at) - words.width / 2, most);
        if (left < free) continue;
        canvas_.put(words, left, top + kAxis - 4 - words.height);
        free = left + words.width + 3;
    }
    for (const auto& [from, to] : plan_.open) {
        const Instant opens = std::clamp(from, from_, to_);
        const Instant shuts = std::clamp(to, from_, to_);
        if (opens == shuts) continue;
        canvas_.fill(x(opens), top + 1, x(shuts) - x(opens), 9, 0);
        canvas_.fill(x(opens) + 1, top + 2, x(shuts) - x(opens) - 2, 7, 1);
        const Laid words = canvas_.lay("open", {6.5, true});
        canvas_.put(words, (x(opens) + x(shuts) - words.width) / 2, top + 1);
    }
}

void Picture::label(const Bar& bar, double left, double width, double top, double height) {
    constexpr double kWords = 56; // narrower than this, words stand upright
    constexpr double kLine = 8.3; // height of a line of 7 points
    const std::string first = bar.kind == Kind::Break ? bar.what : bar.number + "  " + bar.what;
    if (width >= kWords) {
        const int lines = std::max(1, static_cast<int>(height / kLine));
        const bool both = !bar.more.empty() && lines > 1;
        const Laid upper = canvas_.lay(first, {7, true, 0, Align::Left, both ? (lines + 1) / 2 : lines}, width - 4);
        const int rest = lines - static_cast<int>(std::lround(upper.height / kLine));
        const Laid lower = both ? canvas_.lay(bar.more, {7, false, 0, Align::Left, rest}, width - 4) : Laid();
        const double y = top + (height - upper.height - lower.height) / 2;
        canvas_.put(upper, left + 2, y);
        canvas_.put(lower, left + 2, y + upper.height);
        return;
    }
    // Upright, in as many lines as stand side by side in the bar.
    const bool thin = width < kLine;
    const int lines = std::max(1, static_cast<int>(width / kLine));
    constexpr double kUpright = 26; // lower than this, upright words are cut to nothing
    if (height < kUpright) {
        const Laid number = canvas_.lay(bar.number, {7, true});
        if (number.width + 1 <= width)
            canvas_.put(number, left + (width - number.width) / 2, top + (height - number.height) / 2);
        return;
    }
    if (width < kThinnest) return;
    const Style style{thin ? 6.0 : 7.0, false, 0, Align::Left, lines};
    const Laid words = canvas_.lay(lines > 1 && !bar.more.empty() ? first + ", " + bar.more : first, style, height - 3);
    canvas_.putUpwards(words, left + (width - words.height) / 2, top + height - 1.5);
}

void Picture::ground(Kind kind, double left, double top, double width, double height) {
    const double grey = kind == Kind::Work ? 0.87 : kind == Kind::Oven ? 0.76 : 1.0;
    canvas_.fill(left, top, width, height, grey);
    if (kind == Kind::Unwatched) canvas_.hatch(left, top, width, height, 0.75);
    if (kind == Kind::Break)
        canvas_.dashedFrame(left, top, width, height, 0.8);
    else
        canvas_.frame(left, top, width, height, kind == Kind::Oven ? 1.2 : 0.6);
}

void Picture::bar(const Bar& bar, double top, double height) {
    const double left = x(bar.from);
    const double width = std::max(x(bar.to) - left, 0.8);
    ground(bar.kind, left, top, width, height);
    label(bar, left, width, top, height);
}

void Picture::strip(const Strip& strip, double top, double lane) {
    const double height = lane * static_cast<double>(strip.lanes.size());
    for (const auto& [from, to] : strip.present) canvas_.fill(x(from), top, x(to) - x(from), height, 0.96);
    const Laid name = canvas_.lay(strip.name, {10, true, 0, Align::Left, lane < 24 ? 1 : 2}, kNames - 6);
    canvas_.put(name, flow_.left(), top + std::max(0.0, (std::min(height, lane) - name.height) / 2));
    canvas_.line(flow_.left(), top + height + kApart / 2, flow_.left() + flow_.width(), top + height + kApart / 2, 0.4,
                 0.5);
    double y = top;
    for (const std::vector<Bar>& bars : strip.lanes) {
        for (const Bar& one : bars) bar(one, y + 0.5, lane - 1);
        y += lane;
    }
    for (const auto& [at, clock] : strip.pointers) {
        const Laid words = canvas_.lay(clock, {7, true});
        canvas_.put(words, x(at) - words.width - 5, top - kPointers + 2);
        canvas_.pointer(x(at), top - 1, 8);
    }
}

void Picture::legend(double top) {
    double left = flow_.left();
    const auto show = [&](const char* words, Kind kind) {
        ground(kind, left, top + 2, 18, 10);
        const Laid laid = canvas_.lay(words, {8});
        canvas_.put(laid, left + 22, top + 2);
        left += 22 + laid.width + 14;
    };
    show("work, with its number in the task list", Kind::Work);
    show("break", Kind::Break);
    show("runs by itself", Kind::Unwatched);
    show("in the oven, with its load number", Kind::Oven);
    canvas_.pointer(left + 4, top + 11, 7);
    canvas_.put(canvas_.lay("light the oven, or change it, by then", {8}), left + 12, top + 2);
}

void Picture::draw(const std::vector<Strip>& strips) {
    std::size_t next = 0;
    while (next < strips.size()) {
        flow_.page(Turn::Sideways, "The day as a picture");
        flow_.heading("The day as a picture");
        const double top = flow_.y();
        const double room = flow_.room() - kAxis - kLegend;
        // As many strips as fit at the least height, then as tall as they may be.
        double shares = 0;
        double others = 0; // what is not lanes
        std::size_t end = next;
        for (; end < strips.size(); ++end) {
            const double more = strips[end].share * static_cast<double>(strips[end].lanes.size());
            const double other = kApart + (strips[end].pointers.empty() ? 0 : kPointers);
            if (end > next && (shares + more) * kLow + others + other > room) break;
            shares += more;
            others += other;
        }
        const double unit = std::clamp((room - others) / shares, 1.0, kTall);
        const double bottom = top + kAxis + shares * unit + others;
        axis(top, bottom);
        double y = top + kAxis;
        for (; next < end; ++next) {
            const double lane = unit * strips[next].share;
            if (!strips[next].pointers.empty()) y += kPointers;
            strip(strips[next], y, lane);
            y += lane * static_cast<double>(strips[next].lanes.size()) + kApart;
        }
        legend(bottom + 2);
    }
}

} // namespace

void paperStrip(Flow& flow, const day::Plan& plan, const Times& times) {
    const auto hours = hoursOf(plan, times);
    if (!hours) return;
    const std::vector<Strip> strips = stripsOf(plan, times);
    Picture(flow, plan, times, hours->first, hours->second).draw(strips);
}

} // namespace piewright::print
