#include "print/cautions.h"
#include "print/paper_sheet.h"
#include "print/table.h"

#include <algorithm>

namespace piewright::print {

namespace {

Cell whatOf(const day::Task& task, double points) {
    Cell what{{task.what, {points, true}, Mark::None}};
    std::string of = task.of;
    if (!task.card.empty()) of += (of.empty() ? "weigh card " : "; weigh card ") + task.card;
    if (!of.empty()) what.push_back({of, {points - 1}, Mark::None});
    return what;
}

Cell withOf(const day::Task& task) {
    Cell with;
    if (!task.gear.empty()) with.push_back({joined(task.gear), {9}, Mark::None});
    if (!task.cautions.empty()) with.push_back({wordsOf(task.cautions), {8.5}, Mark::Caution});
    return with;
}

/// `Nell  05:30–13:30, break 09:30–10:00`
std::string shiftLine(const day::Plan& plan, const std::string& hand, const Times& times) {
    const day::PlannedShift* shift = shiftOf(plan, hand);
    if (!shift) return "no shift in the plan";
    std::string text = times.span(shift->from, shift->to);
    for (const auto& [from, to] : shift->breaks) text += ", break " + times.span(from, to);
    return text + ", " + handText(Seconds(shift->busy)) + " of tasks";
}

Table::Laidout personTable(Flow& flow, const day::Plan& plan, const std::string& hand, const Times& times) {
    Table table({{"", Align::Left},
                 {"", Align::Left},
                 {"", Align::Left, 0, 1.8},
                 {"", Align::Left, 0, 1.2},
                 {"", Align::Left, 0, 1}});
    table.padding = 1.2;
    for (const day::Task* task : tasksInOrder(plan)) {
        if (!takesPart(*task, hand)) continue;
        std::vector<std::string> others;
        for (const std::string& other : task->hands)
            if (other != hand) others.push_back(other);
        Cell much{{task->amount, {10}, Mark::None}};
        if (!others.empty()) much.push_back({"with " + joined(others), {10, true}, Mark::None});
        table.add({{{"", {12}, Mark::TickBox}},
                   {{times.span(task->start, task->end), {11.5, true}, Mark::None}},
                   whatOf(*task, 11),
                   much,
                   withOf(*task)});
    }
    return table.layOut(flow.canvas(), flow.width());
}

void cutLine(Flow& flow) {
    flow.canvas().dashes(flow.left(), flow.y(), flow.left() + flow.width(), flow.y(), 0.6);
    const Laid words = flow.canvas().lay("cut here", {7});
    flow.canvas().put(words, flow.left() + flow.width() - words.width, flow.y() + 1);
    flow.space(12);
}

void person(Flow& flow, const day::Plan& plan, const std::string& hand, const Times& times, bool first) {
    const Laid name = flow.canvas().lay(hand, {20, true, 0, Align::Left, 2}, flow.width());
    const Laid line = flow.canvas().lay(times.day() + ": " + shiftLine(plan, hand, times), {10.5}, flow.width());
    const Table::Laidout list = personTable(flow, plan, hand, times);
    const double all = name.height + line.height + 4 + list.height;
    constexpr double kCut = 30;
    flow.retitle(hand);
    if (!first && all + kCut <= flow.room()) {
        flow.space(14);
        cutLine(flow);
    } else if (!first) {
        flow.page(Turn::Upright, hand);
    }
    flow.canvas().put(name, flow.left(), flow.y());
    flow.space(name.height);
    flow.canvas().put(line, flow.left(), flow.y());
    flow.space(line.height + 4);
    if (list.rows.empty()) flow.text("Nothing in the plan.", {11});
    for (const Block& row : list.rows) flow.add(row);
}

} // namespace

void paperTasks(Flow& flow, const day::Plan& plan, const Times& times) {
    if (plan.tasks.empty()) return;
    // The lead's list: small and whole. What each hand works by is their own list, large, after it.
    flow.page(Turn::Upright, "Tasks by time");
    flow.heading("Tasks by time");
    Table table({{"", Align::Left},
                 {"no.", Align::Right},
                 {"time", Align::Left},
                 {"who", Align::Left, 70},
                 {"what", Align::Left, 0, 2.2},
                 {"how much", Align::Left, 0, 1.4},
                 {"with", Align::Left, 0, 0.9}});
    table.padding = 0.6;
    table.gap = 6;
    constexpr double kPoints = 8;
    std::string hour;
    for (const day::Task* task : tasksInOrder(plan)) {
        Row row;
        const std::string now = times.clock(task->start - times.pastTheHour(task->start));
        row.heavy = now != hour;
        hour = now;
        row.cells = {
            {{"", {kPoints}, Mark::TickBox}},
            {{std::to_string(task->number), {kPoints - 1}, Mark::None}},
            {{times.span(task->start, task->end), {kPoints, true}, Mark::None}},
            {{task->hands.empty() ? "by itself" : joined(task->hands), {kPoints, !task->hands.empty()}, Mark::None}},
            {{task->what + (task->of.empty() ? "" : ": " + task->of), {kPoints}, Mark::None}},
            {{task->amount, {kPoints}, Mark::None}},
            {{joined(task->gear), {kPoints}, Mark::None}}};
        table.add(row);
    }
    table.flow(flow);
    bool first = true;
    for (const std::string& hand : handsOf(plan)) {
        if (first) flow.page(Turn::Upright, hand);
        person(flow, plan, hand, times, first);
        first = false;
    }
}

} // namespace piewright::print
