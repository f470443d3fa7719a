#include "day/problem.h"

#include "day/hands.h"
#include "units/text.h"

#include <algorithm>
#include <cmath>
#include <map>

namespace piewright::day {

namespace {

using book::Book;
using book::Gear;
using book::GearKind;
using book::Step;
using schedule::ActivityIndex;
using schedule::Point;
using schedule::ResourceIndex;
using schedule::Tick;

/// Weights are capacity in whole tenths of a kilogram: fine enough for a cupboard, coarse enough to count.
int tenthsOfKilogram(Mass mass) { return static_cast<int>(wholeLots(mass, grams(100))); }

bool holdsByWeight(const Gear& gear) { return gear.kind == GearKind::Chiller || gear.kind == GearKind::HotHold; }

/// First and last activity of one step: the same one, unless hands are needed at its ends only.
struct StepActivities {
    ActivityIndex first{}; ///< starts with the step
    ActivityIndex last{};  ///< ends with the step
};

class Builder {
  public:
    Builder(const Book& book, const Work& work, const Clock& clock, const std::vector<ClockSpan>& open)
        : book_(book), work_(work), clock_(clock), crew_(book, clock.date()) {
        Tick horizon = open.empty() ? 0 : clock.tick(open.back().to);
        for (const Present& present : crew_.present()) horizon = std::max(horizon, clock.tick(present.shift->at.to));
        out_.problem.horizon = horizon;
    }

    Result<DayProblem> build() {
        addHands();
        addGear();
        for (std::size_t i = 0; i < work_.today.batches.size(); ++i) addBatch(work_.today, i, Whose::Batch);
        for (std::size_t i = 0; i < work_.ahead.batches.size(); ++i) addBatch(work_.ahead, i, Whose::BatchAhead);
        for (std::size_t i = 0; i < work_.lots.loads.size(); ++i) addLoad(i);
        for (std::size_t i = 0; i < work_.lots.lots.size(); ++i) addLot(i);
        for (std::size_t i = 0; i < work_.lots.servings.size(); ++i) addServing(i);
        tie(work_.today, batches_);
        tie(work_.ahead, batchesAhead_);
        addBreaks();
        addCleaning();
        if (!findings_.empty()) return Problems{Fault::Input, findings_};
        return std::move(out_);
    }

  private:
    void addHands();
    void addGear();
    void addBatch(const DayBatches& batches, std::size_t index, Whose whose);
    void addLoad(std::size_t index);
    void addLot(std::size_t index);
    void addServing(std::size_t index);
    void tie(const DayBatches& batches, const std::vector<std::vector<StepActivities>>& steps);
    void addBreaks();
    void addCleaning();

    ActivityIndex add(schedule::Activity activity, Meaning meaning) {
        out_.problem.activities.push_back(std::move(activity));
        out_.meanings.push_back(meaning);
        return static_cast<ActivityIndex>(out_.problem.activities.size() - 1);
    }
    void lag(ActivityIndex from, Point fromPoint, ActivityIndex to, Point toPoint, Tick least, std::string reason) {
        out_.problem.lags.push_back({from, fromPoint, to, toPoint, least, std::move(reason)});
    }
    void atMost(ActivityIndex from, Point fromPoint, ActivityIndex to, Point toPoint, Tick most, std::string reason) {
        lag(to, toPoint, from, fromPoint, -most, std::move(reason));
    }
    std::vector<schedule::Use> usesOf(const Step& step, const Batch* batch, Mass mass);
    std::vector<schedule::Mode> modesOf(const Step& step, Seconds fixed, Seconds work,
                                        const std::vector<schedule::Use>& uses, const std::string& name);
    StepActivities addStep(const Step& step, double units, const Batch* batch, Mass mass, const std::string& name,
                           Meaning meaning);
    void attendEnds(ActivityIndex body, const Step& step, const std::string& what, Meaning meaning,
                    const std::string& reason);
    void chain(const StepActivities& before, const StepActivities& after, const Step& step, const std::string& what,
               const std::string& previous);
    [[nodiscard]] std::string at(ClockTime time) const { return toText(time); }
    void refuse(std::string saw, std::string want) {
        findings_.push_back({{}, std::move(saw), std::move(want), {}, Severity::Error});
    }

    const Book& book_;
    const Work& work_;
    const Clock& clock_;
    Crew crew_;
    DayProblem out_;
    std::vector<Finding> findings_;
    std::map<GearId, ResourceIndex> resourceOf_;
    std::vector<ResourceIndex> deckResources_;
    std::vector<std::vector<StepActivities>> batches_;
    std::vector<std::vector<StepActivities>> batchesAhead_;
    std::vector<StepActivities> loads_;
    std::map<std::pair<std::size_t, book::Takes>, StepActivities> lotTakes_;
    std::vector<StepActivities> servings_;
    std::map<std::string, std::size_t> refusedSkills_;
};

void Builder::addHands() {
    for (const auto& [id, name] : book_.skills) out_.problem.skills.push_back(name);
    out_.problem.skills.emplace_back("any work");
    for (const Present& present : crew_.present()) {
        schedule::Worker worker;
        worker.name = present.hand->name + ", " + at(present.shift->at.from) + "-" + at(present.shift->at.to);
        worker.skills = crew_.skillsOf(*present.hand);
        worker.present = {{clock_.tick(present.shift->at.from), clock_.tick(present.shift->at.to)}};
        out_.problem.workers.push_back(std::move(worker));
        out_.hands.push_back(present.hand);
    }
}

void Builder::addGear() {
    for (const Load& load : work_.lots.loads)
        if (std::find(out_.families.begin(), out_.families.end(), load.at) == out_.families.end())
            out_.families.push_back(load.at);
    std::sort(out_.families.begin(), out_.families.end());
    for (const Celsius family : out_.families) out_.problem.families.push_back(handText(family));

    const auto addResource = [&](const Gear& gear, schedule::Resource resource, std::optional<DeckOf> deck) {
        out_.problem.resources.push_back(std::move(resource));
        out_.gear.push_back(&gear);
        out_.decks.push_back(deck);
        return static_cast<ResourceIndex>(out_.problem.resources.size() - 1);
    };
    for (const auto& [id, gear] : book_.gear) {
        if (gear.kind != GearKind::Oven) {
            schedule::Cumulative room;
            room.capacity = gear.count;
            if (gear.kind == GearKind::Bench) room.capacity = gear.places * gear.count;
            if (holdsByWeight(gear)) room.capacity = gear.most ? tenthsOfKilogram(*gear.most) * gear.count : 1'000'000;
            resourceOf_[id] = addResource(gear, {gear.name, room, std::nullopt}, std::nullopt);
            continue;
        }
        for (int deck = 1; deck <= gear.decks * gear.count; ++deck) {
            schedule::Machine machine;
            const std::size_t families = out_.families.size();
            machine.first.assign(families, ticksFor(gear.heatUp));
            machine.setup.assign(families,
                                 std::vector<Tick>(families, std::max(ticksFor(gear.change), ticksFor(gear.reload))));
            for (std::size_t f = 0; f < families; ++f) machine.setup[f][f] = ticksFor(gear.reload);
            const std::string name = gear.name + (gear.decks * gear.count > 1 ? ", deck " + std::to_string(deck) : "");
            deckResources_.push_back(addResource(gear, {name, std::nullopt, machine}, DeckOf{&gear, deck}));
        }
    }
}

std::vector<schedule::Use> Builder::usesOf(const Step& step, const Batch* batch, Mass mass) {
    std::vector<schedule::Use> uses;
    const auto use = [&](const Gear& gear) {
        if (gear.kind == GearKind::Oven) return;
        const ResourceIndex resource = resourceOf_.at(gear.id);
        int amount = 1;
        if (gear.kind == GearKind::Bench) amount = step.hands;
        if (holdsByWeight(gear)) amount = std::max(1, tenthsOfKilogram(mass));
        const int room = out_.problem.resources[schedule::at(resource)].cumulative->capacity;
        if (amount > room)
            refuse(step.what + (batch ? " of " + batch->formula->name : "") + " takes " + handText(mass) + " in " +
                       gear.name,
                   gear.most ? "at most " + handText(*gear.most) : "more places");
        const auto same =
            std::find_if(uses.begin(), uses.end(), [&](const schedule::Use& u) { return u.resource == resource; });
        if (same == uses.end()) uses.push_back({resource, amount, {}});
    };
    for (const GearId& id : step.gear) use(book_.gear.at(id));
    if (step.vessel && batch && batch->vessel) use(*batch->vessel);
    return uses;
}

std::vector<schedule::Mode> Builder::modesOf(const Step& step, Seconds fixed, Seconds work,
                                             const std::vector<schedule::Use>& uses, const std::string& name) {
    std::vector<schedule::Mode> modes;
    for (const Crew::Team& team : crew_.teamsFor(*step.skill, step.hands)) {
        schedule::Mode mode;
        const auto shared = Seconds(std::llround(std::ceil(static_cast<double>(work.count()) / team.pace)));
        mode.duration = std::max<Tick>(1, ticksFor(fixed + shared));
        mode.uses = uses;
        mode.needs = team.needs;
        mode.team = team.workers;
        modes.push_back(std::move(mode));
    }
    if (modes.empty() && refusedSkills_[step.skill->name()]++ == 0)
        refuse(name + ": nobody at work on " + longName(clock_.date().weekday()) + " " + toText(clock_.date()) +
                   " can do it" + (step.hands > 1 ? " (" + std::to_string(step.hands) + " together)" : ""),
               std::to_string(step.hands) + " hand" + (step.hands > 1 ? "s" : "") + " with the skill \"" +
                   book_.skills.at(*step.skill) + "\"");
    if (modes.empty()) modes.push_back({1, {}, {}, {}});
    return modes;
}

StepActivities Builder::addStep(const Step& step, double units, const Batch* batch, Mass mass, const std::string& name,
                                Meaning meaning) {
    meaning.step = &step;
    const auto uses = usesOf(step, batch, mass);
    const auto each = Seconds(std::llround(std::ceil(static_cast<double>(step.each.count()) * units)));
    const std::string what = step.what + ", " + name;
    if (step.attended == book::Attended::All && step.skill) {
        meaning.does = Does::Step;
        schedule::Activity activity;
        activity.name = what;
        activity.modes = modesOf(step, step.fixed, each, uses, what);
        const ActivityIndex index = add(std::move(activity), meaning);
        return {index, index};
    }
    meaning.does = Does::Stand;
    schedule::Activity stand;
    stand.name = what;
    stand.modes = {{std::max<Tick>(1, ticksFor(step.fixed + each)), uses, {}, {}}};
    const ActivityIndex body = add(std::move(stand), meaning);
    if (step.attended != book::Attended::Ends || !step.skill) return {body, body};
    attendEnds(body, step, what, meaning, step.what + ": a hand is there when it begins and when it ends");
    return {body, body};
}

/// A hand at the beginning and at the end of `body`, tied to its ends.
void Builder::attendEnds(ActivityIndex body, const Step& step, const std::string& what, Meaning meaning,
                         const std::string& reason) {
    const auto attend = [&](Does does, Point point, Seconds length) {
        meaning.does = does;
        schedule::Activity end;
        end.name = what + (does == Does::Begin ? " (begin)" : " (end)");
        end.modes = modesOf(step, Seconds(0), length, {}, what);
        const ActivityIndex index = add(std::move(end), meaning);
        lag(body, point, index, point, 0, reason);
        lag(index, point, body, point, 0, reason);
    };
    attend(Does::Begin, Point::Start, step.start);
    attend(Does::End, Point::End, step.end);
}

void Builder::chain(const StepActivities& before, const StepActivities& after, const Step& step,
                    const std::string& what, const std::string& previous) {
    const std::string names = what + ": " + step.what + " after " + previous;
    lag(before.last, Point::End, after.first, Point::Start, ticksFor(step.leastAfter),
        names + (step.leastAfter > Seconds(0) ? ", " + handText(step.leastAfter) + " or more" : ""));
    if (step.mostAfter)
        atMost(before.last, Point::End, after.first, Point::Start,
               static_cast<Tick>(std::chrono::floor<Minutes>(*step.mostAfter).count()),
               names + ", at most " + handText(*step.mostAfter));
}

void Builder::addBatch(const DayBatches& batches, std::size_t index, Whose whose) {
    const Batch& batch = batches.batches[index];
    const book::Route& route = book_.routes.at(batch.formula->route);
    std::string name = batch.formula->name;
    if (batch.of > 1) name += " " + std::to_string(batch.number) + " of " + std::to_string(batch.of);
    std::vector<StepActivities> steps;
    for (std::size_t s = 0; s < route.steps.size(); ++s) {
        const Step& step = route.steps[s];
        double units = 1;
        if (step.per == book::PerUnit::Kilogram) units = inKilograms(batch.weighed.in);
        if (step.per == book::PerUnit::Head) {
            units = 0;
            for (const HeadsFrom& heads : batch.heads) units += static_cast<double>(heads.heads);
        }
        Meaning meaning;
        meaning.whose = whose;
        meaning.index = index;
        meaning.stepNumber = s;
        steps.push_back(addStep(step, units, &batch, batch.weighed.in, name, meaning));
        if (s > 0) chain(steps[s - 1], steps[s], step, batch.formula->name, route.steps[s - 1].what);
    }
    if (!steps.empty() && batch.notBefore) {
        schedule::Activity& first = out_.problem.activities[schedule::at(steps.front().first)];
        first.release = std::max<Tick>(0, clock_.tick(*batch.notBefore));
        first.releaseReason = batch.formula->name + ": the delivery comes at " + at(*batch.notBefore);
    }
    (whose == Whose::Batch ? batches_ : batchesAhead_).push_back(std::move(steps));
}

void Builder::addLoad(std::size_t index) {
    const Load& load = work_.lots.loads[index];
    const Step* bake = nullptr;
    std::size_t number = 0;
    const auto& steps = book_.routes.at(work_.lots.lots[load.lots.front()].good->route).steps;
    for (std::size_t s = 0; s < steps.size(); ++s)
        if (steps[s].bake) bake = &steps[s], number = s;
    Meaning meaning;
    meaning.whose = Whose::Load;
    meaning.index = index;
    meaning.stepNumber = number;
    meaning.step = bake;
    meaning.does = Does::Stand;
    const std::string name = "load for " + at(load.ready);
    const auto family = static_cast<schedule::FamilyIndex>(
        std::find(out_.families.begin(), out_.families.end(), load.at) - out_.families.begin());
    // Loading and unloading happen with the door open: the deck is taken for them too.
    const bool ends = bake->attended == book::Attended::Ends && bake->skill;
    const Tick duration = ticksFor(load.bake + (ends ? bake->start + bake->end : Seconds(0)));
    schedule::Activity stand;
    stand.name = bake->what + ", " + name;
    for (const ResourceIndex deck : deckResources_) stand.modes.push_back({duration, {{deck, 1, family}}, {}, {}});
    stand.due = clock_.tick(load.ready);
    stand.dueReason = "pies ready at " + at(load.ready);
    stand.release = std::max<Tick>(0, clock_.tick(load.until) - ticksFor(load.hold) - duration);
    stand.releaseReason =
        "pies for " + at(load.ready) + " to " + at(load.until) + " are held at most " + handText(load.hold);
    if (deckResources_.empty()) {
        refuse("there is no oven for " + work_.lots.lots[load.lots.front()].good->name, "gear of the kind \"oven\"");
        stand.modes = {{1, {}, {}, {}}};
    }
    const ActivityIndex body = add(std::move(stand), meaning);
    loads_.push_back({body, body});
    if (ends)
        attendEnds(body, *bake, bake->what + ", " + name, meaning,
                   bake->what + ": a hand loads the deck and a hand empties it");
}

void Builder::addLot(std::size_t index) {
    const Lot& lot = work_.lots.lots[index];
    const auto& steps = book_.routes.at(lot.good->route).steps;
    const std::string name =
        lot.good->name + ", " + std::to_string(lot.pieces) + " for " + at(work_.lots.loads[lot.load].ready);
    std::optional<StepActivities> before;
    const Step* previous = nullptr;
    for (std::size_t s = 0; s < steps.size(); ++s) {
        const Step& step = steps[s];
        StepActivities now;
        if (step.bake) {
            now = loads_[lot.load];
        } else {
            double units = 1;
            if (step.per == book::PerUnit::Piece) units = lot.pieces;
            if (step.per == book::PerUnit::Tray) units = lot.trays;
            Meaning meaning;
            meaning.whose = Whose::Lot;
            meaning.index = index;
            meaning.stepNumber = s;
            now = addStep(step, units, nullptr, Mass{}, name, meaning);
        }
        for (const book::Takes takes : step.takes) lotTakes_[{index, takes}] = now;
        if (before) chain(*before, now, step, lot.good->name, previous->what);
        before = now;
        previous = &step;
    }
}

void Builder::addServing(std::size_t index) {
    const Serving& serving = work_.lots.servings[index];
    const auto& steps = book_.routes.at(serving.good->route).steps;
    const std::string name = serving.good->name + " for " + at(serving.ready);
    std::vector<StepActivities> made;
    for (std::size_t s = 0; s < steps.size(); ++s) {
        Meaning meaning;
        meaning.whose = Whose::Serving;
        meaning.index = index;
        meaning.stepNumber = s;
        const double units = steps[s].per == book::PerUnit::Piece      ? serving.portions
                             : steps[s].per == book::PerUnit::Kilogram ? inKilograms(serving.mass)
                                                                       : 1;
        made.push_back(addStep(steps[s], units, nullptr, serving.mass, name, meaning));
        if (s > 0) chain(made[s - 1], made[s], steps[s], serving.good->name, steps[s - 1].what);
    }
    servings_.push_back(made.empty() ? StepActivities{} : made.front());
    if (made.empty()) return;
    schedule::Activity& last = out_.problem.activities[schedule::at(made.back().last)];
    last.due = clock_.tick(serving.ready);
    last.dueReason = serving.good->name + " ready at " + at(serving.ready);
    if (serving.good->served != book::Served::Cold) return;
    // What is cold stands in the chiller until it goes out; its time at the counter begins then.
    Tick shortest = schedule::kNever;
    for (const schedule::Mode& mode : last.modes) shortest = std::min(shortest, mode.duration);
    last.release = std::max<Tick>(0, clock_.tick(serving.until) - ticksFor(serving.good->hold) - shortest);
    last.releaseReason =
        serving.good->name + " until " + at(serving.until) + " is out at most " + handText(serving.good->hold);
}

void Builder::tie(const DayBatches& batches, const std::vector<std::vector<StepActivities>>& steps) {
    for (const Supply& supply : batches.supplies) {
        const Batch& batch = batches.batches[supply.batch];
        if (steps[supply.batch].empty()) continue;
        const ActivityIndex made = steps[supply.batch].back().last;
        std::optional<ActivityIndex> used;
        std::string where;
        if (const auto* lot = std::get_if<LotUses>(&supply.to)) {
            if (const auto found = lotTakes_.find({lot->lot, lot->takes}); found != lotTakes_.end())
                used = found->second.first;
            where = work_.lots.lots[lot->lot].good->name;
        } else if (const auto* serving = std::get_if<ServingUses>(&supply.to)) {
            used = servings_[serving->serving].first;
            where = "the counter";
            // Held from the moment it is cooked, not from the moment it is carried out.
            const Serving& wave = work_.lots.servings[serving->serving];
            if (wave.good->served == book::Served::Hot) {
                schedule::Activity& cooked = out_.problem.activities[schedule::at(made)];
                Tick shortest = schedule::kNever;
                for (const schedule::Mode& mode : cooked.modes) shortest = std::min(shortest, mode.duration);
                const Tick earliest = clock_.tick(wave.until) - ticksFor(wave.good->hold) - shortest;
                if (earliest > cooked.release) {
                    cooked.release = earliest;
                    cooked.releaseReason =
                        wave.good->name + " until " + at(wave.until) + " is held at most " + handText(wave.good->hold);
                }
            }
        } else if (const auto* parent = std::get_if<BatchUses>(&supply.to)) {
            if (!steps[parent->batch].empty()) used = steps[parent->batch].front().first;
            where = batches.batches[parent->batch].formula->name;
        }
        if (!used) continue;
        const std::string name = batch.formula->name;
        std::string reason = name + " is made before it is used for ";
        reason += where;
        if (batch.formula->rest > Seconds(0)) reason += " and rests " + handText(batch.formula->rest);
        lag(made, Point::End, *used, Point::Start, ticksFor(batch.formula->rest), std::move(reason));
        if (batch.formula->keeps)
            atMost(made, Point::End, *used, Point::Start,
                   static_cast<Tick>(std::chrono::floor<Minutes>(*batch.formula->keeps).count()),
                   name + " keeps " + handText(*batch.formula->keeps));
    }
}

void Builder::addBreaks() {
    for (std::size_t w = 0; w < crew_.present().size(); ++w) {
        const Present& present = crew_.present()[w];
        for (const book::Break& pause : present.shift->breaks) {
            schedule::Activity activity;
            activity.name = present.hand->name + "'s break";
            activity.modes = {
                {static_cast<Tick>(pause.length.count()), {}, {}, {static_cast<schedule::WorkerIndex>(w)}}};
            activity.release = clock_.tick(pause.between.from);
            activity.due = clock_.tick(pause.between.to);
            activity.releaseReason = activity.dueReason =
                activity.name + " is between " + at(pause.between.from) + " and " + at(pause.between.to);
            Meaning meaning;
            meaning.does = Does::Break;
            meaning.whose = Whose::Hand;
            meaning.hand = present.hand;
            add(std::move(activity), meaning);
        }
    }
}

/// Gear that wants cleaning is cleaned once, after its last use of the day.
void Builder::addCleaning() {
    for (const auto& [id, gear] : book_.gear) {
        if (gear.clean <= Seconds(0) || gear.kind == GearKind::Oven) continue;
        const ResourceIndex resource = resourceOf_.at(id);
        std::vector<ActivityIndex> users;
        for (std::size_t a = 0; a < out_.problem.activities.size(); ++a)
            for (const schedule::Use& use : out_.problem.activities[a].modes.front().uses)
                if (use.resource == resource) users.push_back(static_cast<ActivityIndex>(a));
        if (users.empty()) continue;
        schedule::Activity activity;
        activity.name = "Clean the " + gear.name;
        const auto any = static_cast<schedule::SkillIndex>(out_.problem.skills.size() - 1);
        activity.modes = {{ticksFor(gear.clean),
                           {{resource, out_.problem.resources[schedule::at(resource)].cumulative->capacity, {}}},
                           {{any, 1}},
                           {}}};
        Meaning meaning;
        meaning.does = Does::Clean;
        meaning.whose = Whose::Gear;
        meaning.gear = &gear;
        const ActivityIndex clean = add(std::move(activity), meaning);
        for (const ActivityIndex user : users)
            lag(user, Point::End, clean, Point::Start, 0, gear.name + " is cleaned after its last use");
    }
}

} // namespace

Result<DayProblem> problemOf(const Book& book, const Work& work, const Clock& clock,
                             const std::vector<ClockSpan>& open) {
    return Builder(book, work, clock, open).build();
}

std::optional<Instant> firstHandIn(const Book& book, Date date) {
    std::optional<Instant> first;
    for (const auto& [id, hand] : book.hands)
        if (const book::Shift* shift = shiftOn(hand, date)) {
            const Instant from = book.house.zone.at(date, shift->at.from);
            if (!first || from < *first) first = from;
        }
    return first;
}

} // namespace piewright::day
