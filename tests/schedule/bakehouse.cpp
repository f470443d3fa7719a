#include "schedule/bakehouse.h"

#include "schedule/state.h"

namespace piewright::schedule {

Problem bakehouseDay(int bakes, int pans, int hands) {
    Statement s;
    s.problem.horizon = 870; // 18:00
    s.problem.horizonReason = "everything is done by 18:00";
    const SkillIndex paste = s.skill("paste");
    const SkillIndex bench = s.skill("bench");
    const SkillIndex oven = s.skill("oven");
    const SkillIndex kettle = s.skill("kettle");
    const std::vector<std::vector<SkillIndex>> skills{{paste, oven},   {paste, bench}, {bench, oven},
                                                      {bench, kettle}, {oven, bench},  {kettle, bench}};
    for (int h = 0; h < hands; ++h) {
        const Tick from = h < 2 ? 0 : 30 * h;
        s.worker("hand " + std::to_string(h + 1), skills[static_cast<std::size_t>(h) % skills.size()],
                 {{from, from + 600}});
    }
    s.family("hot");
    s.family("mild");
    const ResourceIndex mixer = s.machine("mixer");
    const ResourceIndex divider = s.machine("divider");
    const ResourceIndex sheeter = s.machine("sheeter");
    const ResourceIndex table = s.cumulative("bench", 4);
    const ResourceIndex stove = s.cumulative("stove", 3, {{{200, 260}, 1}});
    const ResourceIndex peeler = s.machine("peeler");
    const ResourceIndex rack = s.cumulative("rack", 12);
    std::vector<ResourceIndex> decks;
    for (const char* name : {"A", "B"}) {
        for (int deck = 1; deck <= 3; ++deck) {
            decks.push_back(
                s.machine("deck " + std::to_string(deck) + " of oven " + name, {{45, 35}, {{0, 20}, {15, 0}}, {}}));
        }
    }
    const auto mode = [](Tick duration, std::vector<Use> uses, std::vector<SkillNeed> needs) {
        return Mode{duration, std::move(uses), std::move(needs), {}};
    };
    for (int b = 0; b < bakes; ++b) {
        const std::string of = " " + std::to_string(b + 1);
        const Tick ready = 200 + 400 * b / std::max(bakes, 1);
        const FamilyIndex family{b % 4 == 3 ? 1 : 0};
        const ActivityIndex mix = s.activity("mix" + of, mode(12, {{mixer, 1, {}}}, {{paste, 1}}));
        const ActivityIndex divide = s.activity("divide" + of, mode(6, {{divider, 1, {}}}, {{paste, 1}}));
        const ActivityIndex pin = s.activity("pin" + of, mode(12, {{sheeter, 1, {}}, {table, 1, {}}}, {{bench, 1}}));
        const ActivityIndex fill = s.activity("fill" + of, mode(8, {{table, 1, {}}, {rack, 2, {}}}, {{bench, 1}}));
        const ActivityIndex lid = s.activity("lid" + of, mode(10, {{table, 2, {}}, {rack, 2, {}}}, {{bench, 2}}));
        const ActivityIndex load = s.activity("load" + of, mode(3, {}, {{oven, 1}}));
        std::vector<Mode> ways;
        for (const ResourceIndex deck : decks) {
            ways.push_back(mode(35, {{deck, 1, family}}, {}));
        }
        const ActivityIndex bake = s.activity("bake" + of, std::move(ways));
        const ActivityIndex unload = s.activity("unload" + of, mode(3, {}, {{oven, 1}}));
        s.after(mix, divide, 20, "paste rests 20 before dividing");
        s.within(mix, divide, 120, "paste is divided within 120");
        s.after(divide, pin, 15, "heads rest 15");
        s.within(divide, pin, 60, "heads are pinned within 60");
        s.after(pin, fill, 0);
        s.within(pin, fill, 30, "lined tins are filled within 30");
        s.after(fill, lid, 0);
        s.within(fill, lid, 20, "filled tins are lidded within 20");
        s.after(lid, load, 0);
        s.within(lid, load, 30, "lidded pies are in the oven within 30");
        s.atOnce(load, bake, "loaded pies bake at once");
        s.atOnce(bake, unload, "baked pies come out at once");
        s[unload].due = ready;
        s[unload].dueReason = "pies" + of + " are ready by " + std::to_string(ready);
        s[unload].release = ready - 90;
        s[unload].releaseReason = "pies" + of + " are fresh";
    }
    for (int p = 0; p < pans; ++p) {
        const std::string of = " " + std::to_string(p + 1);
        const Tick ready = 260 + 340 * p / std::max(pans, 1);
        const ActivityIndex peel = s.activity("peel" + of, mode(10, {{peeler, 1, {}}}, {{kettle, 1}}));
        const ActivityIndex putOn = s.activity("put on" + of, mode(5, {{stove, 1, {}}}, {{kettle, 1}}));
        const ActivityIndex boil = s.activity("boil" + of, mode(25, {{stove, 1, {}}}, {}));
        const ActivityIndex drain = s.activity("drain and mash" + of, mode(12, {{stove, 1, {}}}, {{kettle, 1}}));
        s.after(peel, putOn, 0);
        s.within(peel, putOn, 60, "peeled potatoes wait at most 60");
        s.atOnce(putOn, boil, "the pan boils on");
        s.atOnce(boil, drain, "boiled potatoes are drained at once");
        s[drain].due = ready;
        s[drain].dueReason = "mash" + of + " is ready by " + std::to_string(ready);
        s[drain].release = ready - 80;
        s[drain].releaseReason = "mash" + of + " is fresh";
    }
    for (int h = 0; h < hands; ++h) {
        const auto hand = nth<WorkerIndex>(static_cast<std::size_t>(h));
        const ActivityIndex rest = s.activity("break of hand " + std::to_string(h + 1), Mode{20, {}, {}, {hand}});
        const Tick from = s.problem.workers[static_cast<std::size_t>(h)].present.front().from;
        s[rest].release = from + 180;
        s[rest].releaseReason = "no break in the first three hours";
        s[rest].due = from + 380;
        s[rest].dueReason = "a break within six hours";
    }
    return s.problem;
}

} // namespace piewright::schedule
