// What must hold for a route by itself, and that there are hands for its steps.
#include "book/checks.h"

#include <algorithm>
#include <set>

namespace piewright::book {

namespace {

constexpr std::string_view kFile = "routes.toml";

template <class Look> void eachSoundStep(const Checking& checking, Look look) {
    for (const auto& [id, route] : checking.book.routes) {
        if (!checking.sound("route." + id.name())) continue;
        for (std::size_t i = 0; i < route.steps.size(); ++i)
            look(route.steps[i], "route." + id.name() + ".step[" + std::to_string(i) + ']', i);
    }
}

} // namespace

void checkStepNames(const Checking& checking) {
    for (const auto& [id, route] : checking.book.routes) {
        std::set<StepId> seen;
        const std::string path = "route." + id.name();
        if (route.steps.empty() && checking.sound(path))
            checking.error(kFile, path, "no step", "at least one, under [[" + path + ".step]]");
        for (std::size_t i = 0; i < route.steps.size(); ++i)
            if (!route.steps[i].id.empty() && !seen.insert(route.steps[i].id).second)
                checking.error(kFile, path + ".step[" + std::to_string(i) + "].id",
                               '"' + route.steps[i].id.name() + "\" stands there twice", "each name once in a route");
    }
}

void checkStepAttendance(const Checking& checking) {
    eachSoundStep(checking, [&](const Step& step, const std::string& path, std::size_t) {
        if (!step.skill && step.attended != Attended::None)
            checking.error(kFile, path + ".skill", "is missing",
                           "the skill of the hand that attends the step, or attended = \"none\"");
        if (step.skill && step.attended == Attended::None)
            checking.error(kFile, path + ".skill", "a skill for a step that nobody attends",
                           "no skill, or attended = \"all\" or \"ends\"");
        if (step.hands > 1 && step.attended == Attended::None)
            checking.error(kFile, path + ".hands", "hands for a step that nobody attends", "no hands");
        const bool ends = step.attended == Attended::Ends;
        if (ends && step.start + step.end == Seconds(0))
            checking.error(kFile, path + ".attended", "attended at its ends, and neither start nor end says how long",
                           "start or end, as in start = \"2 min\"");
        if (!ends && step.start + step.end > Seconds(0))
            checking.error(kFile, path + (step.start > Seconds(0) ? ".start" : ".end"),
                           "only a step attended at its ends has a start and an end", "attended = \"ends\"");
        if (ends && !step.bake && step.fixed < step.start + step.end)
            checking.error(kFile, path + ".fixed",
                           exactText(step.fixed) + " is shorter than its attended start and end together",
                           "at least " + exactText(step.start + step.end));
    });
}

void checkStepTimes(const Checking& checking) {
    eachSoundStep(checking, [&](const Step& step, const std::string& path, std::size_t index) {
        const bool timed = step.fixed > Seconds(0) || step.each > Seconds(0);
        if (step.bake && timed)
            checking.error(kFile, path + (step.fixed > Seconds(0) ? ".fixed" : ".each"),
                           "a time of its own for the baking", "none: each good says how long it bakes");
        if (step.bake && step.vessel)
            checking.error(kFile, path + ".vessel", "a step that bakes and takes a vessel", "one of the two");
        if (!step.bake && !timed) checking.error(kFile, path, "a step that takes no time", "fixed or each");
        if (step.per != PerUnit::Batch && step.each == Seconds(0))
            checking.error(kFile, path + ".per",
                           "counted by " + std::string(wordFor(step.per)) + ", and no time for each",
                           "each, as in each = \"20 s\"");
        if (step.mostAfter && *step.mostAfter < step.leastAfter)
            checking.error(kFile, path + ".most-after", "less than the least time after the step before",
                           "at least " + exactText(step.leastAfter));
        if (index == 0 && (step.mostAfter || step.leastAfter > Seconds(0)))
            checking.error(kFile, path + (step.mostAfter ? ".most-after" : ".least-after"),
                           "the first step comes after no other", "the key left out");
    });
}

void checkSkilledHands(const Checking& checking) {
    if (!checking.sources.known("hands.toml")) return;
    for (const auto& [id, hand] : checking.book.hands)
        if (!checking.sound("hand." + id.name())) return; // what it can do is not known
    eachSoundStep(checking, [&](const Step& step, const std::string& path, std::size_t) {
        if (!step.skill || !checking.book.skills.contains(*step.skill)) return;
        const auto able = std::count_if(checking.book.hands.begin(), checking.book.hands.end(),
                                        [&](const auto& each) { return each.second.skills.contains(*step.skill); });
        if (able < step.hands)
            checking.error(kFile, path + (step.hands > 1 ? ".hands" : ".skill"),
                           std::to_string(able) + (able == 1 ? " hand has" : " hands have") + " the skill \"" +
                               step.skill->name() + '"',
                           "at least " + std::to_string(step.hands) + " in hands.toml");
    });
}

} // namespace piewright::book
