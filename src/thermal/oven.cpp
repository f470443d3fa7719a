#include "thermal/oven.h"

#include "thermal/range.h"

#include "thermal/component.h"
#include "thermal/water.h"

#include <algorithm>
#include <array>
#include <cmath>

namespace piewright::thermal {

namespace {

constexpr double kLongestStep = 5;
constexpr double kShotSeconds = 15;
constexpr double kSettled = 0.2; // K between two rounds
constexpr int kRounds = 20;

struct Flow {
    double deck; // K/s
    double wall;
    double burnt; // W
    double lost;
};

Flow flowOf(const Deck& deck, double deckDegC, double wallDegC, bool open, double takes) {
    const double full = (deck.setDegC - deckDegC) / deck.band;
    const double burnt = deck.power * std::clamp(full, 0.0, 1.0);
    const double across = deck.link * (deckDegC - wallDegC);
    const double outside = deck.loss * (wallDegC - deck.roomDegC);
    const double door = open ? deck.openLoss * (deckDegC - deck.roomDegC) : 0;
    return {(burnt - across - door - takes) / deck.deckHeat, (across - outside) / deck.wallHeat, burnt, outside + door};
}

std::optional<Problems> refused(const Deck& deck, const DeckDay& day) {
    for (const double positive : {deck.power, deck.band, deck.deckHeat, deck.wallHeat, day.every})
        if (!above(positive, 0, 1e12))
            return Problems::one(Fault::Input, "an oven's power, band or store of " + std::to_string(positive),
                                 "above 0");
    for (const double least : {deck.link, deck.loss, deck.openLoss})
        if (!within(least, 0, 1e9))
            return Problems::one(Fault::Input, "an oven's loss of " + std::to_string(least) + " W/K", "0 or more");
    if (!above(deck.setDegC, deck.roomDegC, 450))
        return Problems::one(Fault::Input, "an oven set to " + std::to_string(deck.setDegC) + " degC",
                             "above the room, at most 450 degC");
    if (deck.link / deck.wallHeat + (deck.link + deck.openLoss + deck.power / deck.band) / deck.deckHeat > 0.4)
        return Problems::one(Fault::Input, "stores that empty within seconds", "larger stores or smaller flows");
    if (!above(day.seconds, 0, 7 * 86400.0))
        return Problems::one(Fault::Input, "an oven's time of " + std::to_string(day.seconds) + " s",
                             "above 0, at most seven days");
    return std::nullopt;
}

/// Times at which a door or a shot of steam begins or ends, and the table's times of the load.
std::vector<double> cornersOf(const DeckDay& day) {
    std::vector<double> all{0, day.seconds};
    for (const DoorOpening& door : day.doors) all.insert(all.end(), {door.from, door.to});
    for (const SteamShot& shot : day.steam) all.insert(all.end(), {shot.at, shot.at + kShotSeconds});
    const auto marks = static_cast<std::size_t>(std::min(day.seconds / day.every, 1e6));
    for (std::size_t i = 1; i <= marks; ++i) all.push_back(static_cast<double>(i) * day.every);
    std::erase_if(all, [&](double at) { return !within(at, 0, day.seconds); });
    std::sort(all.begin(), all.end());
    all.erase(std::unique(all.begin(), all.end()), all.end());
    return all;
}

} // namespace

Result<DeckRun> run(const Deck& deck, const DeckState& start, const DeckDay& day) {
    if (auto bad = refused(deck, day)) return *bad;
    const double perKilogram = enthalpyOf(Component::Water, 100) - enthalpyOf(Component::Water, 20) + latentHeat(100);
    DeckRun made;
    double hot = start.deckDegC;
    double wall = start.wallDegC;
    std::vector<CurvePoint> deckPoints{{0, hot}};
    std::vector<CurvePoint> wallPoints{{0, wall}};
    const std::vector<double> corners = cornersOf(day);
    for (std::size_t i = 1; i < corners.size(); ++i) {
        const double from = corners[i - 1];
        const double lasts = corners[i] - from;
        const double middle = from + lasts / 2;
        bool open = false;
        for (const DoorOpening& door : day.doors) open = open || (middle >= door.from && middle < door.to);
        double steam = 0;
        for (const SteamShot& shot : day.steam)
            if (middle >= shot.at && middle < shot.at + kShotSeconds)
                steam += shot.kilograms * perKilogram / kShotSeconds;
        double load = 0;
        if (const auto at = static_cast<std::size_t>(middle / day.every); at + 1 < day.load.size())
            load = (day.load[at + 1] - day.load[at]) / day.every;
        const int steps = std::max(1, static_cast<int>(std::ceil(lasts / kLongestStep)));
        const double h = lasts / steps;
        for (int s = 0; s < steps; ++s) {
            const Flow a = flowOf(deck, hot, wall, open, load + steam);
            const Flow b = flowOf(deck, hot + h / 2 * a.deck, wall + h / 2 * a.wall, open, load + steam);
            const Flow c = flowOf(deck, hot + h / 2 * b.deck, wall + h / 2 * b.wall, open, load + steam);
            const Flow d = flowOf(deck, hot + h * c.deck, wall + h * c.wall, open, load + steam);
            hot += h / 6 * (a.deck + 2 * b.deck + 2 * c.deck + d.deck);
            wall += h / 6 * (a.wall + 2 * b.wall + 2 * c.wall + d.wall);
            made.burnt += h / 6 * (a.burnt + 2 * b.burnt + 2 * c.burnt + d.burnt);
            made.lost += h / 6 * (a.lost + 2 * b.lost + 2 * c.lost + d.lost);
            made.steamed += h * steam;
            made.loaded += h * load;
        }
        deckPoints.push_back({corners[i], hot});
        wallPoints.push_back({corners[i], wall});
    }
    made.stored = deck.deckHeat * (hot - start.deckDegC) + deck.wallHeat * (wall - start.wallDegC);
    made.end = {hot, wall};
    auto deckCurve = Curve::of(std::move(deckPoints));
    auto wallCurve = Curve::of(std::move(wallPoints));
    if (!deckCurve) return deckCurve.problems();
    if (!wallCurve) return wallCurve.problems();
    made.deck = std::move(*deckCurve);
    made.wall = std::move(*wallCurve);
    return made;
}

Result<std::optional<double>> heatUp(const Deck& deck, const DeckState& start) {
    DeckDay day;
    day.seconds = 12 * 3600;
    day.every = 60;
    const auto heated = run(deck, start, day);
    if (!heated) return heated.problems();
    return heated->deck.firstAtOrAbove(deck.setDegC - deck.band);
}

Result<LoadBake> bakeLoad(const Deck& deck, const DeckState& start, const Pie& pie, const DeckHeat& heat,
                          const BakeTarget& target, int pies, double doorSeconds) {
    if (pies < 1 || pies > 10'000)
        return Problems::one(Fault::Input, "a load of " + std::to_string(pies) + " pies", "1 to 10,000");
    constexpr double kMost = 3 * 3600;
    DeckDay day;
    day.seconds = 3600;
    if (doorSeconds > 0) day.doors = {{0, doorSeconds}};
    auto oven = run(deck, start, day);
    if (!oven) return oven.problems();
    for (int round = 0; round < kRounds; ++round) {
        auto one = bake(pie, heat, oven->deck, target, day.seconds);
        if (!one) return one.problems();
        day.load.clear();
        for (const double joules : one->history.heatIn) day.load.push_back(joules * pies);
        auto again = run(deck, start, day);
        if (!again) return again.problems();
        double moved = 0;
        for (const CurvePoint& point : again->deck.points())
            moved = std::max(moved, std::abs(point.degC - oven->deck.at(point.seconds)));
        oven = std::move(again);
        if (moved > kSettled && round + 1 < kRounds) continue;
        if (!one->cooked) {
            if (day.seconds >= kMost)
                return Problems::one(Fault::Input, std::to_string(pies) + " pies not cooked within three hours",
                                     "a hotter deck or fewer pies");
            day.seconds = std::min(kMost, day.seconds * 1.75);
            day.load.clear();
            oven = run(deck, start, day);
            if (!oven) return oven.problems();
            round = 0;
            continue;
        }
        // Once more, only as long as it bakes, for what leaves and what the deck is like then.
        LoadBake made;
        made.seconds = *one->cooked;
        auto until = bake(pie, heat, oven->deck, target, made.seconds);
        if (!until) return until.problems();
        made.lossShare = until->lost / until->mass;
        made.browning = until->browning;
        day.seconds = made.seconds;
        auto part = run(deck, start, day);
        if (!part) return part.problems();
        made.end = part->end;
        made.deck = std::move(*part);
        made.lowest = start.deckDegC;
        for (const CurvePoint& point : made.deck.deck.points()) made.lowest = std::min(made.lowest, point.degC);
        return made;
    }
    return Problems::one(Fault::Ours, "deck and load do not settle");
}

Result<BakeTimes> BakeTimes::tabulated(const Deck& deck, const Pie& pie, const DeckHeat& heat, const BakeTarget& target,
                                       const std::vector<int>& loads, const std::vector<double>& recoveries,
                                       double doorSeconds) {
    const auto rising = [](const auto& all) {
        return !all.empty() && std::adjacent_find(all.begin(), all.end(), std::greater_equal<>()) == all.end();
    };
    if (!rising(loads) || !rising(recoveries) || recoveries.front() < 0)
        return Problems::one(Fault::Input, "loads or recoveries that do not rise", "rising, from one pie and 0 s");
    // Settled: the wall between deck and room, with only its losses flowing.
    const double wall = (deck.link * deck.setDegC + deck.loss * deck.roomDegC) / (deck.link + deck.loss);
    const auto before = bakeLoad(deck, {deck.setDegC, wall}, pie, heat, target, loads.back(), doorSeconds);
    if (!before) return before.problems();
    BakeTimes made;
    made.loads_.assign(loads.begin(), loads.end());
    made.recoveries_ = recoveries;
    for (const int load : loads)
        for (const double recovery : recoveries) {
            DeckState start = before->end;
            DeckDay day;
            day.seconds = doorSeconds + recovery; // the full load is taken out with the door open
            if (doorSeconds > 0) day.doors = {{0, doorSeconds}};
            if (day.seconds > 0) {
                const auto rested = run(deck, start, day);
                if (!rested) return rested.problems();
                start = rested->end;
            }
            const auto baked = bakeLoad(deck, start, pie, heat, target, load, doorSeconds);
            if (!baked) return baked.problems();
            made.seconds_.push_back(baked->seconds);
        }
    // Rounding of the rounds above may leave a dent of a second; the longer time is kept.
    const std::size_t width = recoveries.size();
    for (std::size_t l = 0; l < loads.size(); ++l)
        for (std::size_t r = width; r-- > 0;) {
            double& here = made.seconds_[l * width + r];
            const double was = here;
            if (l > 0) here = std::max(here, made.seconds_[(l - 1) * width + r]);
            if (r + 1 < width) here = std::max(here, made.seconds_[l * width + r + 1]);
            made.moved_ = std::max(made.moved_, here - was);
        }
    return made;
}

double BakeTimes::seconds(double pies, double recovered) const {
    const auto place = [](const std::vector<double>& marks, double at) -> std::pair<std::size_t, double> {
        if (marks.size() == 1 || at <= marks.front()) return {0, 0.0};
        if (at >= marks.back()) return {marks.size() - 2, 1.0};
        const auto above = std::upper_bound(marks.begin(), marks.end(), at);
        const auto low = static_cast<std::size_t>(above - marks.begin()) - 1;
        return {low, (at - marks[low]) / (marks[low + 1] - marks[low])};
    };
    const auto [l, lShare] = place(loads_, pies);
    const auto [r, rShare] = place(recoveries_, recovered);
    const std::size_t width = recoveries_.size();
    const auto at = [&](std::size_t load, std::size_t recovery) {
        return seconds_[std::min(load, loads_.size() - 1) * width + std::min(recovery, width - 1)];
    };
    const double low = at(l, r) + rShare * (at(l, r + 1) - at(l, r));
    const double high = at(l + 1, r) + rShare * (at(l + 1, r + 1) - at(l + 1, r));
    return low + lShare * (high - low);
}

} // namespace piewright::thermal
