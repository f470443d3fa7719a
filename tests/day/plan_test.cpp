// What must hold of every plan, looked at in the plan itself, by a reader who knows nothing of how it was made.
#include "day/houses.h"
#include "wire/plan_json.h"

#include <gtest/gtest.h>

#include <algorithm>
#include <map>

namespace piewright {
namespace {

using test::date;

/// Tuesday to Saturday of an ordinary week; the Saturday before the clocks go back; Christmas Eve, shut at 15:00.
std::vector<Date> someDates() {
    return {date(2026, 11, 24), date(2026, 11, 25), date(2026, 11, 26), date(2026, 11, 27),
            date(2026, 11, 28), date(2026, 10, 24), date(2026, 12, 24)};
}

class EveryPlan : public testing::TestWithParam<Date> {
  protected:
    book::Book book_ = test::ropewalk();
    day::Plan plan_ = test::planFor(book_, GetParam());
};

TEST_P(EveryPlan, HasNobodyInTwoPlacesOrAtWorkOutsideTheirShift) {
    std::map<std::string, std::vector<const day::Task*>> byHand;
    for (const day::Task& task : plan_.tasks)
        for (const std::string& hand : task.hands) byHand[hand].push_back(&task);
    ASSERT_FALSE(byHand.empty());
    for (auto& [hand, tasks] : byHand) {
        std::sort(tasks.begin(), tasks.end(), [](const auto* a, const auto* b) { return a->start < b->start; });
        for (std::size_t i = 1; i < tasks.size(); ++i)
            EXPECT_LE(tasks[i - 1]->end, tasks[i]->start)
                << hand << ": " << tasks[i - 1]->what << " and " << tasks[i]->what;
        const auto shift = std::find_if(plan_.shifts.begin(), plan_.shifts.end(),
                                        [&, &name = hand](const auto& s) { return s.hand == name; });
        ASSERT_NE(shift, plan_.shifts.end()) << hand;
        EXPECT_GE(tasks.front()->start, shift->from) << hand;
        EXPECT_LE(tasks.back()->end, shift->to) << hand;
    }
}

TEST_P(EveryPlan, GivesEveryHandItsBreak) {
    for (const day::PlannedShift& shift : plan_.shifts) {
        ASSERT_EQ(shift.breaks.size(), 1U) << shift.hand;
        EXPECT_EQ(shift.breaks.front().second - shift.breaks.front().first, Minutes(30)) << shift.hand;
    }
}

TEST_P(EveryPlan, LoadsNoDeckTwiceAtOnceNorBeyondItsTraysNorBeforeItIsHot) {
    std::map<std::pair<std::string, int>, std::vector<const day::DeckLoad*>> decks;
    for (const day::DeckLoad& load : plan_.loads) {
        EXPECT_LE(load.trays, load.room);
        int trays = 0;
        for (const auto& content : load.contents) trays += content.trays;
        EXPECT_EQ(trays, load.trays);
        decks[{load.oven, load.deck}].push_back(&load);
    }
    ASSERT_FALSE(decks.empty());
    const Instant firstIn =
        std::min_element(plan_.shifts.begin(), plan_.shifts.end(), [](const auto& a, const auto& b) {
            return a.from < b.from;
        })->from;
    for (const auto& [deck, loads] : decks) {
        const auto oven = std::find_if(book_.gear.begin(), book_.gear.end(),
                                       [&, &name = deck.first](const auto& g) { return g.second.name == name; });
        ASSERT_NE(oven, book_.gear.end());
        ASSERT_TRUE(loads.front()->lightBy);
        EXPECT_GE(*loads.front()->lightBy, firstIn) << "lit before anybody is there";
        for (std::size_t i = 1; i < loads.size(); ++i) {
            const Seconds gap = loads[i]->at == loads[i - 1]->at ? oven->second.reload : oven->second.change;
            EXPECT_GE(loads[i]->in - loads[i - 1]->out, gap) << deck.first << " deck " << deck.second;
        }
    }
}

TEST_P(EveryPlan, BringsEveryWaveOfPiesOutByItsTimeAndWithinItsHold) {
    for (const day::PlannedAmount& amount : plan_.amounts) {
        const book::Good& good = book_.goods.at(GoodId(amount.good));
        int planned = 0;
        for (const day::PlannedWave& wave : amount.waves) planned += wave.pieces;
        if (amount.setAside == 0) {
            EXPECT_EQ(planned, amount.pieces) << amount.name;
        }
        if (!good.bake) continue;
        int baked = 0;
        for (const day::PlannedWave& wave : amount.waves) {
            EXPECT_LE(wave.until - wave.ready, good.hold) << amount.name;
            // By the time a wave is due, it and all the waves before it are out.
            int due = 0;
            for (const day::PlannedWave& other : amount.waves)
                if (other.ready <= wave.ready) due += other.pieces;
            int out = 0;
            for (const day::DeckLoad& load : plan_.loads)
                for (const auto& content : load.contents)
                    if (content.good == amount.name && load.out <= wave.ready) out += content.pieces;
            EXPECT_GE(out, due) << amount.name << " for " << toText(book_.house.zone.clockOf(wave.ready));
        }
        for (const day::DeckLoad& load : plan_.loads)
            for (const auto& content : load.contents)
                if (content.good == amount.name) baked += content.pieces;
        EXPECT_EQ(baked, amount.pieces) << amount.name;
    }
}

TEST_P(EveryPlan, BalancesTheWeightsOfEveryCard) {
    ASSERT_FALSE(plan_.cards.empty());
    for (const day::WeighCard& card : plan_.cards) {
        Mass lines;
        for (const day::CardLine& line : card.lines) lines += line.weight;
        EXPECT_EQ(lines, card.in) << card.id;
        Mass lost;
        for (const auto& [at, mass] : card.lost) lost += mass;
        EXPECT_EQ(card.out + lost, card.in) << card.id;
    }
}

TEST_P(EveryPlan, PressesWholeHeadsAndNamesTheSurplus) {
    for (const day::PiecesLine& line : plan_.pieces) {
        EXPECT_GE(line.heads * line.perHead, line.pieces);
        EXPECT_LT((line.heads - 1) * line.perHead, line.pieces);
        EXPECT_EQ(line.head, line.each * line.perHead);
        EXPECT_GT(line.each, line.onPie) << "something is trimmed off";
        EXPECT_LT(line.gauge, line.finished) << "paste springs back";
    }
    std::int64_t over = 0;
    for (const day::PiecesLine& line : plan_.pieces) over += line.heads * line.perHead - line.pieces;
    std::int64_t named = 0;
    for (const day::PlannedSurplus& surplus : plan_.surplus) named += surplus.pieces;
    EXPECT_EQ(named, over);
}

TEST_P(EveryPlan, KeepsMixesOfOnePasteNearlyEqualAndWithinTheMixer) {
    std::map<std::string, std::pair<Mass, Mass>> sizes;
    for (const day::WeighCard& card : plan_.cards) {
        if (!card.target) continue;
        const auto gear = std::find_if(book_.gear.begin(), book_.gear.end(),
                                       [&](const auto& g) { return g.second.name == card.vessel; });
        ASSERT_NE(gear, book_.gear.end()) << card.id;
        EXPECT_LE(card.in, *gear->second.most + grams(50)) << card.id;
        EXPECT_GE(card.in, *gear->second.least - grams(50)) << card.id;
    }
}

TEST_P(EveryPlan, IsTheSameTwice) { EXPECT_EQ(wire::toJson(plan_), wire::toJson(test::planFor(book_, GetParam()))); }

TEST_P(EveryPlan, ReadsBackFromJsonAsItWas) {
    const std::string text = wire::toJson(plan_);
    const auto again = wire::planFromJson(text, "plan.json");
    ASSERT_TRUE(again) << toText(again.problems().findings);
    EXPECT_EQ(wire::toJson(*again), text);
}

INSTANTIATE_TEST_SUITE_P(Dates, EveryPlan, testing::ValuesIn(someDates()), [](const auto& which) {
    std::string name = toText(which.param);
    std::replace(name.begin(), name.end(), '-', '_');
    return name;
});

TEST(Plan, BaseAndLidOfOneThicknessDifferInWeight) {
    // Common practice, no source.
    const day::Plan plan = test::planFor(test::ropewalk(), date(2026, 11, 27));
    Mass heaviestHandLid;
    for (const day::PiecesLine& line : plan.pieces)
        if (line.part.starts_with("lid") && line.finished == millimetres(3))
            heaviestHandLid = std::max(heaviestHandLid, line.each);
    ASSERT_GT(heaviestHandLid, Mass{});
    int bases = 0;
    for (const day::PiecesLine& line : plan.pieces) {
        if (!line.part.starts_with("base") || line.finished != millimetres(3)) continue;
        ++bases;
        EXPECT_GT(line.each, heaviestHandLid);
    }
    EXPECT_GE(bases, 2);
}

TEST(Plan, FifteenSacksOfPotatoesGoThroughOnePeelerAndTwoPans) {
    // Common practice, no source: a busy day's mash. 15 sacks of 25 kg, a fifth of it peel:
    // 375 kg x 0.8 = 300 kg peeled; 20 kg of it make 22.66 kg x 0.97 = 21.98 kg of mash, so 329.7 kg: 1,648 portions.
    book::Book book = test::ropewalk();
    std::erase_if(book.goods, [](const auto& good) { return good.first != GoodId("mash"); });
    const day::Plan plan = test::planFor(book, date(2026, 11, 27), {{"mash", 1560}});
    const auto potatoes = std::find_if(plan.needed.begin(), plan.needed.end(), [&](const day::Needed& needed) {
        return needed.stuff == book.stuffs.at(StuffId("potatoes")).name;
    });
    ASSERT_NE(potatoes, plan.needed.end());
    EXPECT_GE(potatoes->packs, 14);
    EXPECT_LE(potatoes->packs, 17);
    EXPECT_EQ(potatoes->pack, "sack of 25 kg");
    std::vector<const day::Task*> boils;
    for (const day::Task& task : plan.tasks)
        if (task.what.starts_with("Boil: put on")) boils.push_back(&task);
    EXPECT_GE(boils.size(), 10U); // 340 kg in pans of at most 34 kg
}

} // namespace
} // namespace piewright
