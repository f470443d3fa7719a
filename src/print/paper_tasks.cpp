#include "print/cautions.h"
#include "print/paper_sheet.h"
#include "print/table.h"

#include <algorithm>

namespace piewright::print {

namespace {

Cell whatOf(const day::Task& task, double points) {
    Cell what{{task.what, {points, true}, Mark::None}};
    if (!task.of.empty()) what.push_back({task.of, {points - 0.5}, Mark::None});
    if (!task.card.empty()) what.push_back({"weigh card " + task.card, {points - 1.5}, Mark::None});
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
                 {"", Align::Left, 0, 1.6},
                 {"", Align::Left, 0, 1},
                 {"", Align::Left, 0, 1.2}});
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
    flow.page(Turn::Upright, "Tasks by time");
    flow.heading("Tasks by time");
    Table table({{"", Align::Left},
                 {"no.", Align::Right},
                 {"time", Align::Left},
                 {"who", Align::Left, 86},
                 {"what", Align::Left, 0, 1.5},
                 {"how much", Align::Left, 0, 1},
                 {"with", Align::Left, 0, 1.1}});
    std::string hour;
    for (const day::Task* task : tasksInOrder(plan)) {
        Row row;
        const std::string now = times.clock(task->start - times.pastTheHour(task->start));
        row.heavy = now != hour;
        hour = now;
        row.cells = {
            {{"", {11}, Mark::TickBox}},
            {{std::to_string(task->number), {9}, Mark::None}},
            {{times.span(task->start, task->end), {10.5, true}, Mark::None}},
            {{task->hands.empty() ? "by itself" : joined(task->hands), {10, !task->hands.empty()}, Mark::None}},
            whatOf(*task, 10),
            {{task->amount, {10}, Mark::None}},
            withOf(*task)};
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
