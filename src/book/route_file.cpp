// routes.toml: how things get made, step by step.
#include "book/kinds.h"
#include "book/writer.h"

#include <array>

namespace piewright::book {

namespace {

constexpr std::array<std::string_view, 1> kTop{"route"};
constexpr std::array<std::string_view, 2> kRoute{"name", "step"};
constexpr std::array<std::string_view, 17> kStep{"id",   "what",        "skill",      "hands", "gear",     "vessel",
                                                 "bake", "fixed",       "each",       "per",   "attended", "start",
                                                 "end",  "least-after", "most-after", "takes", "cautions"};

constexpr Bounds<int> kHands{1, 20};
constexpr Bounds<Seconds> kTimes{Seconds(0), Days(7)};
constexpr std::size_t kMostSteps = 60;
constexpr std::size_t kMostGear = 10;
constexpr std::size_t kMostWords = 20;

void readStep(Reading& reading, const Node& table, const std::string& path, Route& route) {
    Fields fields(reading, table, path, kStep);
    Step step;
    fields.need("id", step.id);
    fields.need("what", step.what);
    fields.take("skill", step.skill);
    fields.take("hands", step.hands, kHands);
    fields.takeList("gear", step.gear, kMostGear);
    fields.take("vessel", step.vessel);
    fields.take("bake", step.bake);
    fields.take("fixed", step.fixed, kTimes);
    fields.take("each", step.each, kTimes);
    fields.take("per", step.per);
    fields.take("attended", step.attended);
    fields.take("start", step.start, kTimes);
    fields.take("end", step.end, kTimes);
    fields.take("least-after", step.leastAfter, kTimes);
    fields.take("most-after", step.mostAfter, kTimes);
    fields.takeList("takes", step.takes, kMostWords, true);
    fields.takeList("cautions", step.cautions, kMostWords, true);
    route.steps.push_back(std::move(step));
}

Route readRoute(Reading& reading, const Node& table, const std::string& path) {
    Fields fields(reading, table, path, kRoute);
    Route route;
    fields.need("name", route.name);
    if (!fields.has("step")) fields.missing("step", "at least one step, under [[" + path + ".step]]");
    fields.eachItem("step", kMostSteps,
                    [&](const Node& node, const std::string& at) { readStep(reading, node, at, route); });
    return route;
}

Entries stepEntries(const Step& step) {
    const Step plain;
    Entries entries;
    entries.put("id", step.id);
    entries.put("what", step.what);
    entries.put("skill", step.skill);
    entries.putUnless("hands", step.hands, plain.hands);
    entries.putList("gear", step.gear);
    entries.putUnless("vessel", step.vessel, plain.vessel);
    entries.putUnless("bake", step.bake, plain.bake);
    entries.putUnless("fixed", step.fixed, plain.fixed);
    entries.putUnless("each", step.each, plain.each);
    entries.putUnless("per", step.per, plain.per);
    entries.putUnless("attended", step.attended, plain.attended);
    entries.putUnless("start", step.start, plain.start);
    entries.putUnless("end", step.end, plain.end);
    entries.putUnless("least-after", step.leastAfter, plain.leastAfter);
    entries.put("most-after", step.mostAfter);
    entries.putList("takes", step.takes);
    entries.putList("cautions", step.cautions);
    return entries;
}

} // namespace

void readRoutes(Reading& reading, const Node& file, Book& book) {
    Fields top(reading, file, {}, kTop);
    top.eachNamed("route", [&](const std::string& name, const Node& node, const std::string& path) {
        const std::size_t before = reading.report.errors();
        const RouteId id(name);
        Route route = readRoute(reading, node, path);
        route.id = id;
        book.routes.emplace(id, std::move(route));
        if (reading.report.errors() != before) reading.report.flaw(path);
    });
}

std::string printRoutes(const Book& book) {
    Writer writer;
    for (const auto& [id, route] : book.routes) {
        const std::string header = "route." + id.name();
        Entries entries;
        entries.put("name", route.name);
        writer.table(header, entries);
        for (const Step& step : route.steps) writer.listTable(header + ".step", stepEntries(step));
    }
    return writer.take();
}

std::span<const KnownTable> routeTables() {
    static constexpr std::array<KnownTable, 2> kTables{{{"route.NAME", kRoute}, {"route.NAME.step", kStep}}};
    return kTables;
}

} // namespace piewright::book
