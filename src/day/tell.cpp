#include "day/tell.h"

#include "day/tell_cards.h"
#include "units/text.h"

#include <algorithm>
#include <array>
#include <map>

namespace piewright::day {

namespace {

using schedule::Placed;

class Teller {
  public:
    explicit Teller(const Told& told) : told_(told) {}

    Plan plan() {
        addHouse();
        addAmounts();
        addTasks();
        addLoads();
        addShifts();
        addBefore();
        addBatchPapers(told_, plan_);
        addAssumptions();
        return std::move(plan_);
    }

  private:
    void addHouse();
    void addAmounts();
    [[nodiscard]] PlannedAmount amountOf(const Chosen& chosen) const;
    void addTasks();
    [[nodiscard]] Task taskOf(std::size_t activity) const;
    void addLoads();
    void addShifts();
    void addBefore();
    void addAssumptions();
    [[nodiscard]] const Batch& batchOf(const Meaning& meaning) const {
        return meaning.whose == Whose::Batch ? told_.work.today.batches[meaning.index]
                                             : told_.work.ahead.batches[meaning.index];
    }
    [[nodiscard]] const book::Book& book() const { return told_.book; }
    [[nodiscard]] std::string deckName(std::size_t activity) const;

    const Told& told_;
    Plan plan_;
};

void Teller::addHouse() {
    const book::House& house = book().house;
    plan_.house = house.name;
    plan_.place = house.place;
    plan_.zone = house.zone.name();
    plan_.date = told_.clock.date();
    plan_.note = noteOn(house, plan_.date);
    for (const ClockSpan& span : hoursOn(house, plan_.date))
        plan_.open.emplace_back(told_.clock.instant(span.from), told_.clock.instant(span.to));
    plan_.ruleBook = book().rules.name;
    plan_.letterPaper = house.paper == book::Paper::Letter;
}

PlannedAmount Teller::amountOf(const Chosen& chosen) const {
    const book::Good& good = book().goods.at(chosen.good);
    PlannedAmount amount;
    amount.good = chosen.good.name();
    amount.name = good.name;
    amount.unit = good.tin ? "pieces" : "portions";
    amount.low = chosen.low;
    amount.middle = chosen.middle;
    amount.high = chosen.high;
    amount.pieces = chosen.amount.pieces;
    amount.fractile = chosen.amount.fractile;
    amount.price = chosen.price;
    amount.cost = chosen.cost;
    amount.leftover = chosen.leftover;
    amount.expectedMissed = chosen.amount.expectedMissed;
    amount.expectedLeft = chosen.amount.expectedLeft;
    amount.because = chosen.because;
    return amount;
}

void Teller::addAmounts() {
    for (const Chosen& chosen : told_.amounts) {
        PlannedAmount amount = amountOf(chosen);
        std::map<Instant, PlannedWave> waves;
        const auto add = [&](ClockTime ready, ClockTime until, int pieces) {
            PlannedWave& wave = waves[told_.clock.instant(ready)];
            wave.ready = told_.clock.instant(ready);
            wave.until = told_.clock.instant(until);
            wave.pieces += pieces;
        };
        for (const Lot& lot : told_.work.lots.lots)
            if (lot.good->id == chosen.good)
                add(told_.work.lots.loads[lot.load].ready, told_.work.lots.loads[lot.load].until, lot.pieces);
        for (const Serving& serving : told_.work.lots.servings)
            if (serving.good->id == chosen.good) add(serving.ready, serving.until, serving.portions);
        for (const auto& [ready, wave] : waves) amount.waves.push_back(wave);
        plan_.amounts.push_back(std::move(amount));
    }
    for (const Chosen& chosen : told_.over) {
        PlannedAmount amount = amountOf(chosen);
        amount.setAside = amount.pieces;
        std::string dates;
        for (const Date date : chosen.dates) dates += (dates.empty() ? "" : ", ") + longDate(date);
        amount.name += " for " + dates;
        amount.because.emplace_back(
            "made today for the days until the next is ready; the days are taken as independent");
        plan_.amounts.push_back(std::move(amount));
    }
}

std::string Teller::deckName(std::size_t activity) const {
    const auto& mode = told_.problem.problem.activities[activity]
                           .modes[static_cast<std::size_t>(told_.schedule.placed[activity].mode)];
    for (const schedule::Use& use : mode.uses)
        if (told_.problem.decks[schedule::at(use.resource)])
            return told_.problem.problem.resources[schedule::at(use.resource)].name;
    return {};
}

/// What a task is about, how much of it, and which card it starts from.
Task Teller::taskOf(std::size_t activity) const {
    const Meaning& meaning = told_.problem.meanings[activity];
    const Placed& placed = told_.schedule.placed[activity];
    const auto& mode = told_.problem.problem.activities[activity].modes[static_cast<std::size_t>(placed.mode)];
    Task task;
    task.start = told_.clock.instant(placed.start);
    task.end = told_.clock.instant(placed.end);
    for (const schedule::WorkerIndex worker : placed.workers)
        task.hands.push_back(told_.problem.hands[schedule::at(worker)]->name);
    for (const schedule::Use& use : mode.uses)
        task.gear.push_back(told_.problem.problem.resources[schedule::at(use.resource)].name);
    if (meaning.step) {
        task.what = meaning.step->what;
        task.cautions = meaning.step->cautions;
    }
    switch (meaning.whose) {
    case Whose::Batch:
    case Whose::BatchAhead: {
        const Batch& batch = batchOf(meaning);
        task.of = batchName(batch);
        if (!batch.forDates.empty()) task.of += ", for " + longDate(batch.forDates.front());
        task.amount = handText(batch.weighed.in) + " in, " + handText(batch.weighed.out) + " out";
        if (meaning.step->per == book::PerUnit::Head) {
            std::int64_t heads = 0;
            for (const HeadsFrom& from : batch.heads) heads += from.heads;
            task.amount = std::to_string(heads) + " heads";
        }
        if (meaning.stepNumber == 0) task.card = cardId(batch);
        break;
    }
    case Whose::Lot: {
        const Lot& lot = told_.work.lots.lots[meaning.index];
        task.of = lot.good->name + ", bake " + std::to_string(lot.bake);
        task.amount = std::to_string(lot.pieces) + " pieces, " + std::to_string(lot.trays) +
                      (lot.trays == 1 ? " tray" : " trays");
        for (const book::Takes takes : meaning.step->takes) task.amount += takenText(told_, lot, takes);
        break;
    }
    case Whose::Load: {
        const Load& load = told_.work.lots.loads[meaning.index];
        task.of = "for " + toText(load.ready);
        task.amount = std::to_string(load.trays) + (load.trays == 1 ? " tray" : " trays");
        break;
    }
    case Whose::Serving: {
        const Serving& serving = told_.work.lots.servings[meaning.index];
        task.of = serving.good->name + " for " + toText(serving.ready);
        task.amount = std::to_string(serving.portions) + " portions, " + handText(serving.mass);
        break;
    }
    case Whose::Hand:
        task.what = "Break";
        task.isBreak = true;
        break;
    case Whose::Gear:
        task.what = "Clean";
        task.of = meaning.gear->name;
        task.cautions = {book::Caution::Machine};
        task.gear.clear();
        break;
    }
    return task;
}

/// Unattended stretches are told by their ends: the begin says until when, the end what comes off.
void Teller::addTasks() {
    const auto& activities = told_.problem.problem.activities;
    std::map<std::pair<Whose, std::pair<std::size_t, std::size_t>>, std::size_t> stands;
    for (std::size_t a = 0; a < activities.size(); ++a) {
        const Meaning& m = told_.problem.meanings[a];
        if (m.does == Does::Stand) stands[{m.whose, {m.index, m.stepNumber}}] = a;
    }
    std::vector<Task> tasks;
    for (std::size_t a = 0; a < activities.size(); ++a) {
        const Meaning& m = told_.problem.meanings[a];
        const bool ends = m.does == Does::Begin || m.does == Does::End;
        if (m.does == Does::Stand && m.step->attended == book::Attended::Ends && m.step->skill) continue;
        Task task = taskOf(a);
        if (ends) {
            const std::size_t stand = stands.at({m.whose, {m.index, m.stepNumber}});
            const Task whole = taskOf(stand);
            task.gear = whole.gear;
            const std::string deck = deckName(stand);
            const std::string until = toText(told_.clock.clock(told_.schedule.placed[stand].end));
            const bool begins = m.does == Does::Begin;
            task.what +=
                deck.empty() ? (begins ? ": put on, off at " : ": take off") : (begins ? ": load " : ": empty ");
            task.what += deck;
            if (begins && !deck.empty()) task.what += ", out at ";
            if (begins) task.what += until;
            if (m.does == Does::End) task.card.clear();
        } else if (m.does == Does::Stand) {
            task.what += ", until " + toText(told_.clock.clock(told_.schedule.placed[a].end));
        }
        tasks.push_back(std::move(task));
    }
    std::stable_sort(tasks.begin(), tasks.end(), [](const Task& a, const Task& b) {
        return a.start != b.start ? a.start < b.start : a.end < b.end;
    });
    int number = 0;
    for (Task& task : tasks) task.number = ++number;
    plan_.tasks = std::move(tasks);
}

void Teller::addLoads() {
    struct At {
        std::size_t resource;
        std::size_t activity;
    };
    std::vector<At> loads;
    for (std::size_t a = 0; a < told_.problem.meanings.size(); ++a) {
        const Meaning& m = told_.problem.meanings[a];
        if (m.whose != Whose::Load || m.does != Does::Stand) continue;
        const auto& mode =
            told_.problem.problem.activities[a].modes[static_cast<std::size_t>(told_.schedule.placed[a].mode)];
        loads.push_back({schedule::at(mode.uses.front().resource), a});
    }
    std::stable_sort(loads.begin(), loads.end(), [&](const At& a, const At& b) {
        const auto& placed = told_.schedule.placed;
        return a.resource != b.resource ? a.resource < b.resource : placed[a.activity].start < placed[b.activity].start;
    });
    std::optional<std::size_t> lastResource;
    std::optional<Celsius> lastAt;
    for (const At& at : loads) {
        const Load& load = told_.work.lots.loads[told_.problem.meanings[at.activity].index];
        const DeckOf& deck = *told_.problem.decks[at.resource];
        const Placed& placed = told_.schedule.placed[at.activity];
        DeckLoad out;
        out.oven = deck.oven->name;
        out.deck = deck.deck;
        out.in = told_.clock.instant(placed.start);
        out.out = told_.clock.instant(placed.end);
        out.at = load.at;
        out.trays = load.trays;
        out.room = deck.oven->trays;
        const bool first = lastResource != at.resource;
        if (first)
            out.lightBy = out.in - deck.oven->heatUp;
        else if (lastAt != load.at)
            out.lightBy = out.in - deck.oven->change;
        for (const std::size_t l : load.lots) {
            const Lot& lot = told_.work.lots.lots[l];
            const auto same = std::find_if(out.contents.begin(), out.contents.end(),
                                           [&](const LoadContent& c) { return c.good == lot.good->name; });
            if (same == out.contents.end())
                out.contents.push_back({lot.good->name, lot.pieces, lot.trays});
            else
                same->pieces += lot.pieces, same->trays += lot.trays;
        }
        plan_.loads.push_back(std::move(out));
        lastResource = at.resource;
        lastAt = load.at;
    }
}

void Teller::addShifts() {
    for (std::size_t w = 0; w < told_.problem.hands.size(); ++w) {
        const book::Hand& hand = *told_.problem.hands[w];
        const book::Shift& shift = *shiftOn(hand, told_.clock.date());
        PlannedShift planned;
        planned.hand = hand.name;
        planned.from = told_.clock.instant(shift.at.from);
        planned.to = told_.clock.instant(shift.at.to);
        for (std::size_t a = 0; a < told_.schedule.placed.size(); ++a) {
            const Placed& placed = told_.schedule.placed[a];
            if (std::find(placed.workers.begin(), placed.workers.end(), static_cast<schedule::WorkerIndex>(w)) ==
                placed.workers.end())
                continue;
            if (told_.problem.meanings[a].does == Does::Break)
                planned.breaks.emplace_back(told_.clock.instant(placed.start), told_.clock.instant(placed.end));
            else
                planned.busy += Minutes(placed.end - placed.start);
        }
        std::sort(planned.breaks.begin(), planned.breaks.end());
        plan_.shifts.push_back(std::move(planned));
    }
    std::stable_sort(plan_.shifts.begin(), plan_.shifts.end(),
                     [](const PlannedShift& a, const PlannedShift& b) { return a.from < b.from; });
}

void Teller::addBefore() {
    for (const Before& before : told_.work.today.before)
        plan_.before.push_back({before.formula->name, before.mass,
                                before.formula->made == book::Made::Delivery ? "made when its fish came in"
                                                                             : "made the working day before"});
}

void Teller::addAssumptions() {
    const book::House& house = book().house;
    plan_.assumptions.push_back("Room " + handText(house.usual.room) + ", flour " + handText(house.usual.flour) +
                                ", fat " + handText(house.usual.fat) + ", tap water " + handText(house.usual.tap) +
                                ": measure, and set the water by what you read.");
    if (!plan_.before.empty())
        plan_.assumptions.emplace_back(
            "What is listed as made before stands ready in the chiller, within its life. Count it before you begin.");
    plan_.assumptions.emplace_back("No left-over pieces, paste or portions from the day before are counted in.");
    plan_.assumptions.emplace_back(
        "Bake, boil and cooling times are the book's. They are estimates: probe the food and follow your own "
        "food-safety plan and your local authority's rules.");
    Mass chilled;
    for (const Batch& batch : told_.work.ahead.batches) chilled += batch.weighed.out;
    for (const Before& before : told_.work.today.before) chilled += before.mass;
    Mass room;
    for (const auto& [id, gear] : book().gear)
        if (gear.kind == book::GearKind::Chiller && gear.most) room += *gear.most * gear.count;
    if (chilled > room && room > Mass{})
        plan_.warnings.push_back("Up to " + handText(chilled) +
                                 " wants chilling through the day; the chiller is put at " + handText(room) + ".");
    for (const book::Rule& rule : book().rules.rules)
        if (rule.confidence == book::Confidence::Memory)
            plan_.warnings.push_back("Rule not verified, check it with your local authority: " + rule.what + " (" +
                                     rule.source + ").");
}

} // namespace

std::string longDate(Date date) {
    static constexpr std::array<const char*, 12> kMonths{"January",   "February", "March",    "April",
                                                         "May",       "June",     "July",     "August",
                                                         "September", "October",  "November", "December"};
    const auto ymd = date.ymd();
    return longName(date.weekday()) + " " + std::to_string(static_cast<unsigned>(ymd.day())) + " " +
           kMonths.at(static_cast<unsigned>(ymd.month()) - 1);
}

Plan tell(const Told& told) { return Teller(told).plan(); }

} // namespace piewright::day
