#include "day/lots.h"

#include "formula/weigh.h"

#include <algorithm>
#include <cmath>
#include <map>
#include <numeric>
#include <utility>

namespace piewright::day {

namespace {

using book::Book;
using book::Good;

constexpr Minutes kReadyStep{15};

/// A hold less what must happen between made and sold, but at least one step: the longest that a wave may sell.
Minutes sellingTime(Seconds hold, Seconds before) {
    return std::max(kReadyStep, std::chrono::floor<Minutes>(hold - before));
}

/// Time in which one deck can be emptied and bake a second load for the same wave: loads of one wave need not all come
/// out at once, and the first of them is held longest.
Seconds secondLoad(const Book& book, const Good& good) {
    Seconds reload{0};
    for (const auto& [id, gear] : book.gear)
        if (gear.kind == book::GearKind::Oven) reload = std::max(reload, gear.reload);
    Seconds ends{0};
    for (const book::Step& step : book.routes.at(good.route).steps)
        if (step.bake) ends = step.start + step.end;
    return *good.bake + reload + ends;
}

/// Time to bring a wave to the counter by its route, at half the written pace, and a step for whoever is busy just
/// then.
Seconds bringing(const Book& book, const Good& good) {
    Seconds sum = kReadyStep;
    for (const book::Step& step : book.routes.at(good.route).steps) sum += 2 * step.fixed + step.leastAfter;
    return sum;
}

struct Baked {
    const Good* good;
    const Chosen* chosen;
};

int traysFor(const Book& book, const Good& good, int pieces) {
    const int perTray = book.tins.at(*good.tin).perTray;
    return (pieces + perTray - 1) / perTray;
}

/// Portions from every vessel of the best kind filled once; none when the vessels set no limit.
std::optional<int> portionsAtOnce(const Book& book, const Good& good) {
    const book::Deposit& portion = good.deposits.front();
    const book::Formula& formula = book.formulas.at(portion.formula);
    std::optional<int> most;
    for (const GearId& id : formula.vessels) {
        const book::Gear& vessel = book.gear.at(id);
        if (!vessel.most) return std::nullopt;
        // Weighed backwards: what goes in for a portion's weight coming out.
        const Mass in = formula::inputFor(formula, portion.weight * 1000);
        const auto portions = static_cast<int>(1000.0 * ratio(*vessel.most * vessel.count, in));
        most = std::max(most.value_or(1), portions);
    }
    return most;
}

/// Trays on the smallest deck, so that any load fits any deck; and trays on all decks together.
std::pair<int, int> deckRoom(const Book& book) {
    int least = 0;
    int all = 0;
    for (const auto& [id, gear] : book.gear) {
        if (gear.kind != book::GearKind::Oven) continue;
        least = least == 0 ? gear.trays : std::min(least, gear.trays);
        all += gear.trays * gear.decks * gear.count;
    }
    return {least, all};
}

double profileUpTo(const demand::Profile& profile, ClockTime time) {
    double share = 0;
    for (int quarter = 0; quarter < demand::kQuarters; ++quarter)
        if (Minutes(15 * quarter) < time.sinceMidnight()) share += profile.at(static_cast<std::size_t>(quarter));
    return share;
}

/// A good's pieces over waves whose bounds are given, by its own profile; sums to `pieces`.
std::vector<int> spread(int pieces, const demand::Profile& profile, const std::vector<demand::Wave>& waves) {
    const double all = profileUpTo(profile, ClockTime(Minutes(24 * 60)));
    std::vector<int> parts;
    int given = 0;
    for (std::size_t i = 0; i < waves.size(); ++i) {
        const double share = all > 0 ? profileUpTo(profile, waves[i].until) / all
                                     : static_cast<double>(i + 1) / static_cast<double>(waves.size());
        const int upTo =
            i + 1 == waves.size() ? pieces : static_cast<int>(std::lround(share * static_cast<double>(pieces)));
        parts.push_back(std::max(0, upTo - given));
        given = std::max(given, upTo);
    }
    return parts;
}

/// A few pies on a tray of their own go with the next wave instead; the sum stays.
void fillTrays(std::vector<int>& parts, int perTray) {
    for (std::size_t w = 0; w + 1 < parts.size(); ++w) {
        const int over = parts[w] % perTray;
        if (parts[w] > perTray && over * 4 <= perTray) {
            parts[w] -= over;
            parts[w + 1] += over;
        }
    }
}

demand::Profile pooled(const std::vector<Baked>& goods) {
    demand::Profile sum{};
    for (const Baked& baked : goods)
        for (std::size_t q = 0; q < sum.size(); ++q)
            sum.at(q) += baked.chosen->profile.at(q) * std::max(1, baked.chosen->amount.pieces);
    const double all = std::accumulate(sum.begin(), sum.end(), 0.0);
    if (all > 0)
        for (double& share : sum) share /= all;
    return sum;
}

std::optional<Minutes> everyAtMost(const Good& good) {
    return good.everyAtMost ? std::optional(std::chrono::floor<Minutes>(*good.everyAtMost)) : std::nullopt;
}

/// Trays of one wave into loads: each good in turn goes whole into the fullest load that has room for it, or is cut
/// where no load has; so few lots are small, and few goods are cut.
void addLoads(const Book& book, DayLots& out, const std::vector<Baked>& goods, const std::vector<int>& pieces,
              const demand::Wave& wave, int number, int deckTrays) {
    Load empty;
    empty.at = *goods.front().good->ovenAt;
    empty.bake = *goods.front().good->bake;
    empty.ready = wave.ready;
    empty.until = wave.until;
    empty.hold = goods.front().good->hold;
    for (const Baked& baked : goods) empty.hold = std::min(empty.hold, baked.good->hold);

    std::vector<std::size_t> order(goods.size());
    std::iota(order.begin(), order.end(), 0);
    std::stable_sort(order.begin(), order.end(), [&](std::size_t a, std::size_t b) {
        return traysFor(book, *goods[a].good, pieces[a]) > traysFor(book, *goods[b].good, pieces[b]);
    });
    const std::size_t first = out.loads.size();
    const auto put = [&](std::size_t load, const Good& good, int count) {
        const int trays = traysFor(book, good, count);
        out.loads[load].trays += trays;
        out.loads[load].lots.push_back(out.lots.size());
        out.lots.push_back({&good, load, number, count, trays});
    };
    for (const std::size_t g : order) {
        const Good& good = *goods[g].good;
        const int perTray = book.tins.at(*good.tin).perTray;
        for (int left = pieces[g]; left > 0;) {
            const int trays = traysFor(book, good, left);
            std::optional<std::size_t> fullest;
            for (std::size_t l = first; l < out.loads.size(); ++l)
                if (deckTrays - out.loads[l].trays >= std::min(trays, deckTrays) &&
                    (!fullest || out.loads[l].trays > out.loads[*fullest].trays))
                    fullest = l;
            if (!fullest) {
                fullest = out.loads.size();
                out.loads.push_back(empty);
            }
            const int now = std::min(left, deckTrays * perTray);
            put(*fullest, good, now);
            left -= now;
        }
    }
}

void addBaked(const Book& book, DayLots& out, const std::vector<Baked>& goods, const std::vector<ClockSpan>& open) {
    const auto [deckTrays, allTrays] = deckRoom(book);
    int total = 0;
    int perTray = 0;
    demand::WaveTerms terms;
    terms.open = open;
    terms.step = kReadyStep;
    terms.hold = sellingTime(goods.front().good->hold, secondLoad(book, *goods.front().good));
    for (const Baked& baked : goods) {
        total += baked.chosen->amount.pieces;
        terms.hold = std::min(terms.hold, sellingTime(baked.good->hold, secondLoad(book, *baked.good)));
        const int onTray = book.tins.at(*baked.good->tin).perTray;
        perTray = perTray == 0 ? onTray : std::min(perTray, onTray);
        if (const auto every = everyAtMost(*baked.good))
            terms.everyAtMost = terms.everyAtMost ? std::min(*terms.everyAtMost, *every) : *every;
    }
    terms.mostPieces = std::max(1, allTrays * perTray);
    const auto waves = demand::waves(total, pooled(goods), terms);
    std::vector<std::vector<int>> parts;
    for (const Baked& baked : goods) {
        parts.push_back(spread(baked.chosen->amount.pieces, baked.chosen->profile, waves));
        fillTrays(parts.back(), book.tins.at(*baked.good->tin).perTray);
    }
    for (std::size_t w = 0; w < waves.size(); ++w) {
        std::vector<int> pieces;
        pieces.reserve(parts.size());
        for (const auto& part : parts) pieces.push_back(part[w]);
        addLoads(book, out, goods, pieces, waves[w], static_cast<int>(w) + 1, deckTrays);
    }
}

void addServings(const Book& book, DayLots& out, const Chosen& chosen, const std::vector<ClockSpan>& open) {
    const Good& good = book.goods.at(chosen.good);
    const book::Deposit& portion = good.deposits.front();
    std::vector<demand::Wave> waves;
    if (good.served == book::Served::Cold) {
        waves.push_back({open.front().from, open.back().to, chosen.amount.pieces});
    } else {
        demand::WaveTerms terms;
        terms.open = open;
        terms.step = kReadyStep;
        terms.hold = sellingTime(good.hold, bringing(book, good));
        terms.everyAtMost = everyAtMost(good);
        terms.mostPieces = portionsAtOnce(book, good);
        waves = demand::waves(chosen.amount.pieces, chosen.profile, terms);
    }
    int number = 0;
    for (const demand::Wave& wave : waves)
        if (wave.pieces > 0)
            out.servings.push_back(
                {&good, wave.ready, wave.until, ++number, wave.pieces, portion.weight * wave.pieces});
}

} // namespace

DayLots lotsFor(const Book& book, const std::vector<Chosen>& amounts, const std::vector<ClockSpan>& open) {
    std::map<std::pair<Celsius, Seconds>, std::vector<Baked>> ovens;
    DayLots out;
    for (const Chosen& chosen : amounts) {
        const Good& good = book.goods.at(chosen.good);
        if (chosen.amount.pieces == 0) continue;
        if (good.bake)
            ovens[{*good.ovenAt, *good.bake}].push_back({&good, &chosen});
        else
            addServings(book, out, chosen, open);
    }
    for (const auto& [family, goods] : ovens) addBaked(book, out, goods, open);

    // In the order they are wanted: heads of paste and mixes go to the earliest first.
    std::vector<std::size_t> order(out.loads.size());
    std::iota(order.begin(), order.end(), 0);
    std::stable_sort(order.begin(), order.end(),
                     [&](std::size_t a, std::size_t b) { return out.loads[a].ready < out.loads[b].ready; });
    DayLots sorted;
    sorted.servings = std::move(out.servings);
    for (const std::size_t from : order) {
        Load load = out.loads[from];
        for (std::size_t& lot : load.lots) {
            sorted.lots.push_back(out.lots[lot]);
            sorted.lots.back().load = sorted.loads.size();
            lot = sorted.lots.size() - 1;
        }
        sorted.loads.push_back(std::move(load));
    }
    return sorted;
}

} // namespace piewright::day
