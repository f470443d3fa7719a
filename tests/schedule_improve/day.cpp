#include "schedule_improve/day.h"

#include "schedule/state.h"

#include <algorithm>
#include <random>

namespace piewright::schedule {

namespace {

class Day {
  public:
    Day(const DaySize& size, std::uint64_t seed) : size_(size), random_(seed) {}

    Problem make() {
        s_.problem.horizon = kEnd;
        s_.problem.horizonReason = "everything is done by 18:30";
        // The more there is to do, the shorter each piece: the same hands do it.
        share_ = std::max(1, (size_.batches + size_.extras) / 44);
        people();
        gear();
        for (int b = 0; b < size_.batches + size_.extras; ++b) batch(b, b >= size_.batches);
        fillings();
        for (int p = 0; p < size_.pans; ++p) pan(p);
        breaks();
        return s_.problem;
    }

  private:
    static constexpr Tick kEnd = 900;

    int draw(int from, int to) {
        return from + static_cast<int>(random_() % static_cast<std::uint64_t>(to - from + 1));
    }
    bool chance(int percent) { return draw(1, 100) <= percent; }
    [[nodiscard]] Tick shorter(Tick duration) const { return std::max(2, duration / share_); }

    static Mode mode(Tick duration, std::vector<Use> uses, std::vector<SkillNeed> needs) {
        return Mode{duration, std::move(uses), std::move(needs), {}};
    }

    void people() {
        paste_ = s_.skill("paste");
        bench_ = s_.skill("bench");
        oven_ = s_.skill("oven");
        kettle_ = s_.skill("kettle");
        const std::vector<std::vector<SkillIndex>> skills{{paste_, oven_, bench_}, {paste_, bench_},
                                                          {bench_, oven_},         {bench_, kettle_, paste_},
                                                          {oven_, bench_},         {kettle_, bench_}};
        for (int h = 0; h < size_.hands; ++h) {
            const Tick from = h < 2 ? 0 : 40 * h;
            const WorkerIndex hand =
                s_.worker("hand " + std::to_string(h + 1), skills[static_cast<std::size_t>(h) % skills.size()],
                          {{from, std::min(kEnd, from + 640)}});
            // Overtime after eight hours' work; each minute from first to last is paid.
            s_.problem.costs.work.push_back({hand, {{{0, 0, 0}, {480, 0, 25}}}});
            s_.problem.costs.extents.push_back({ExtentCost::Of::Length, {}, hand, {{{0, 0, 4}}}});
        }
    }

    void gear() {
        hot_ = s_.family("hot");
        mild_ = s_.family("mild");
        mixer_ = s_.machine("mixer");
        divider_ = s_.machine("divider");
        sheeter_ = s_.machine("sheeter");
        table_ = s_.cumulative("bench", 5);
        stove_ = s_.cumulative("stove", 3, {{{200, 240}, 1}});
        rack_ = s_.cumulative("rack", 14);
        peeler_ = s_.machine("peeler");
        filling_ = s_.reservoir("filling", {6, 0, 30});
        for (const char* name : {"A", "B"}) {
            for (int deck = 1; deck <= 2; ++deck) {
                Machine machine{{45, 35}, {{0, 20}, {15, 0}}, {}};
                machine.together = 4;
                machine.firstCost = {40, 30};
                machine.setupCost = {{0, 30}, {20, 0}};
                decks_.push_back(s_.machine("deck " + std::to_string(deck) + " of oven " + name, std::move(machine)));
            }
        }
        s_.problem.costs.loads.push_back({table_, {0, kEnd}, 4, 1});
    }

    void window(ActivityIndex activity, Tick from, Tick to, Cost early, Cost late) {
        s_.problem.costs.times.push_back(
            {activity, Point::End, {{{0, early * from, -early}, {from, 0, 0}, {to, 0, late}}}});
    }

    void batch(int b, bool isExtra) {
        const std::string of = " " + std::to_string(b + 1);
        const int all = size_.batches + size_.extras;
        const Tick ready = isExtra ? draw(250, 800) : 170 + 610 * b / std::max(all, 1) + draw(0, 30);
        const FamilyIndex family = b % 4 == 3 ? mild_ : hot_;
        const ActivityIndex mix = s_.activity("mix" + of, mode(shorter(12), {{mixer_, 1, {}}}, {{paste_, 1}}));
        const ActivityIndex divide = s_.activity("divide" + of, mode(shorter(6), {{divider_, 1, {}}}, {{paste_, 1}}));
        const ActivityIndex pin =
            s_.activity("pin" + of, mode(shorter(10), {{sheeter_, 1, {}}, {table_, 1, {}}}, {{bench_, 1}}));
        Mode filling = mode(shorter(8), {{table_, 1, {}}, {rack_, 1, {}}}, {{bench_, 1}});
        filling.flows.push_back({filling_, Point::Start, -1});
        const ActivityIndex fill = s_.activity("fill" + of, std::move(filling));
        // Two together, or one who takes longer.
        const ActivityIndex lid =
            s_.activity("lid" + of, {mode(shorter(8), {{table_, 2, {}}, {rack_, 1, {}}}, {{bench_, 2}}),
                                     mode(shorter(16), {{table_, 1, {}}, {rack_, 1, {}}}, {{bench_, 1}})});
        const ActivityIndex load = s_.activity("load" + of, mode(2, {}, {{oven_, 1}}));
        std::vector<Mode> ways;
        for (std::size_t d = 0; d < decks_.size(); ++d) {
            Mode way = mode(30, {{decks_[d], 1, family}}, {});
            way.cost = static_cast<Cost>(d) * 2;
            ways.push_back(std::move(way));
        }
        const ActivityIndex bake = s_.activity("bake" + of, std::move(ways));
        const ActivityIndex unload = s_.activity("unload" + of, mode(2, {}, {{oven_, 1}}));
        s_.after(mix, divide, 15, "paste rests before dividing");
        s_.within(mix, divide, 120, "paste is divided within 120");
        s_.after(divide, pin, 10, "heads rest");
        s_.within(divide, pin, 90, "heads are pinned within 90");
        s_.after(pin, fill, 0);
        s_.within(pin, fill, 40, "lined tins are filled within 40");
        s_.after(fill, lid, 0);
        s_.within(fill, lid, 30, "filled tins are lidded within 30");
        s_.after(lid, load, 0);
        s_.within(lid, load, 40, "lidded pies are in the oven within 40");
        s_.after(load, bake, 0);
        s_.within(load, bake, 6, "loaded pies bake soon");
        s_.after(bake, unload, 0);
        s_.within(bake, unload, 4, "baked pies come out");
        window(unload, ready - 30, ready, 1, 12);
        s_[unload].due = std::min(kEnd, ready + 90);
        s_[unload].dueReason = "pies" + of + " are too late after " + std::to_string(ready + 90);
        s_.problem.costs.handOvers.push_back({mix, divide, 6});
        s_.problem.costs.handOvers.push_back({pin, fill, 4});
        s_.problem.costs.handOvers.push_back({load, unload, 8});
        if (chance(15)) s_.problem.stays.push_back({pin, fill, "who pins fills" + of});
        if (chance(20)) {
            s_.problem.costs.before.push_back({pin, std::max(0, ready - 100 + draw(-20, 20)), 0, {}, 1, 0, 0});
        }
        if (!isExtra) return;
        const std::vector<ActivityIndex> chain{mix, divide, pin, fill, lid, load, bake, unload};
        for (const ActivityIndex a : chain) s_[a].isOptional = true;
        for (std::size_t i = 0; i < chain.size(); ++i) {
            s_.problem.implications.push_back({chain[i], chain[(i + 1) % chain.size()], "a batch is made whole"});
        }
        s_[mix].absentCost = draw(60, 400);
    }

    /// Kettles fill the stock that batches use up; one may wait over the quiet hour.
    void fillings() {
        const int kettles = (size_.batches + size_.extras) / 6 + 1;
        for (int k = 0; k < kettles; ++k) {
            const std::string of = " " + std::to_string(k + 1);
            Mode cook = mode(shorter(24), {{stove_, 1, {}}}, {{kettle_, 1}});
            cook.flows.push_back({filling_, Point::End, 6});
            if (chance(30)) cook.pauses.push_back({420, 440});
            const ActivityIndex filling = s_.activity("filling" + of, std::move(cook));
            s_[filling].due = 200 + 600 * k / kettles;
            s_[filling].dueReason = "filling" + of + " is in time";
        }
    }

    void pan(int p) {
        const std::string of = " " + std::to_string(p + 1);
        const Tick ready = 240 + 560 * p / std::max(size_.pans, 1);
        const ActivityIndex peel = s_.activity("peel" + of, mode(shorter(10), {{peeler_, 1, {}}}, {{kettle_, 1}}));
        const ActivityIndex putOn = s_.activity("put on" + of, mode(3, {{stove_, 1, {}}}, {{kettle_, 1}}));
        const ActivityIndex boil = s_.activity("boil" + of, mode(25, {{stove_, 1, {}}}, {}));
        const ActivityIndex drain = s_.activity("drain" + of, mode(shorter(10), {{stove_, 1, {}}}, {{kettle_, 1}}));
        s_.after(peel, putOn, 0);
        s_.within(peel, putOn, 60, "peeled potatoes wait at most 60");
        s_.atOnce(putOn, boil, "the pan boils on");
        s_.atOnce(boil, drain, "boiled potatoes are drained at once");
        window(drain, ready - 20, ready, 2, 10);
        s_[drain].due = std::min(kEnd, ready + 80);
        s_[drain].dueReason = "mash" + of + " is too late after " + std::to_string(ready + 80);
        s_.problem.costs.handOvers.push_back({peel, drain, 4});
    }

    void breaks() {
        for (int h = 0; h < size_.hands; ++h) {
            const auto hand = nth<WorkerIndex>(static_cast<std::size_t>(h));
            const ActivityIndex rest = s_.activity("break of hand " + std::to_string(h + 1), Mode{20, {}, {}, {hand}});
            const Tick from = s_.problem.workers[static_cast<std::size_t>(h)].present.front().from;
            s_[rest].release = from + 180;
            s_[rest].releaseReason = "no break in the first three hours";
            s_[rest].due = from + 380;
            s_[rest].dueReason = "a break within six hours";
        }
    }

    DaySize size_;
    std::mt19937_64 random_;
    Statement s_;
    int share_ = 1;
    SkillIndex paste_{}, bench_{}, oven_{}, kettle_{};
    FamilyIndex hot_{}, mild_{};
    ResourceIndex mixer_{}, divider_{}, sheeter_{}, table_{}, stove_{}, rack_{}, peeler_{}, filling_{};
    std::vector<ResourceIndex> decks_;
};

} // namespace

Problem inventedDay(const DaySize& size, std::uint64_t seed) { return Day{size, seed}.make(); }

} // namespace piewright::schedule
