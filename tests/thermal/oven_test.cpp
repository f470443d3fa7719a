// A deck's balance: sums by hand, energy that closes, and what bakers know (common practice, no source): a second full
// load straight after the first takes longer.
#include "thermal/oven.h"

#include <cmath>
#include <gtest/gtest.h>

namespace piewright::thermal {
namespace {

Pie pie() {
    const Food paste = *Food::of({20, 7, 30, 40, 2, 1.5});
    const Food filling = *Food::of({72, 13, 8, 5, 0.5, 1.5}, -1.5);
    return {.base = paste, .filling = filling, .lid = paste};
}

/// A deck that 60 pies nearly fill, and that a load pulls down.
Deck weak() {
    Deck deck;
    deck.power = 4000;
    return deck;
}

DeckState settled(const Deck& deck) {
    return {deck.setDegC, (deck.link * deck.setDegC + deck.loss * deck.roomDegC) / (deck.link + deck.loss)};
}

double offBalance(const DeckRun& run) {
    return std::abs(run.burnt - run.lost - run.steamed - run.loaded - run.stored) / std::max(1.0, run.burnt);
}

TEST(Oven, WithoutLossesHeatsAtPowerOverItsStore) {
    Deck deck;
    deck.link = 0;
    deck.loss = 0;
    DeckDay day;
    day.seconds = 600;
    const DeckRun heated = *run(deck, {25, 25}, day);
    EXPECT_NEAR(heated.end.deckDegC, 25 + deck.power * 600 / deck.deckHeat, 1e-6);
    EXPECT_LT(offBalance(heated), 1e-9);
}

TEST(Oven, CoolsAsTwoStoresInARow) {
    // Burner off (set far below): after long, deck and wall fall together with the slow eigenvalue of their 2 x 2
    // system.
    Deck deck;
    deck.setDegC = 26;
    DeckDay day;
    day.seconds = 40'000;
    const DeckRun cooled = *run(deck, {220, 180}, day);
    const double a = deck.link / deck.deckHeat;
    const double b = deck.link / deck.wallHeat;
    const double c = deck.loss / deck.wallHeat;
    const double slow = ((a + b + c) - std::sqrt((a + b + c) * (a + b + c) - 4 * a * c)) / 2;
    const double at2 = cooled.deck.at(20'000) - deck.roomDegC;
    const double at3 = cooled.deck.at(30'000) - deck.roomDegC;
    EXPECT_NEAR(std::log(at2 / at3) / 10'000, slow, 0.01 * slow);
    EXPECT_LT(offBalance(cooled), 1e-6);
}

TEST(Oven, DoorAndSteamAndLoadPullItDownAndTheBalanceCloses) {
    const Deck deck;
    DeckDay day;
    day.seconds = 1800;
    const double quiet = run(deck, settled(deck), day)->deck.at(300);
    day.doors = {{0, 60}};
    day.steam = {{90, 0.3}};
    for (int i = 0; i <= 120; ++i) day.load.push_back(1500.0 * 15 * i);
    const DeckRun busy = *run(deck, settled(deck), day);
    EXPECT_LT(busy.deck.at(300), quiet - 2);
    EXPECT_LT(offBalance(busy), 1e-6);
    // 0.3 kg from 20 degC to steam: 0.3 x (334 + 2256) kJ
    EXPECT_NEAR(busy.steamed / 1e3, 0.3 * (334 + 2256), 5);
    EXPECT_NEAR(busy.loaded, 1500.0 * 1800, 1);
}

TEST(Oven, HeatsUpInABakersTime) {
    const auto cold = heatUp(Deck{}, {25, 25});
    ASSERT_TRUE(cold);
    ASSERT_TRUE(*cold);
    EXPECT_GT(**cold, 20 * 60);
    EXPECT_LT(**cold, 3 * 3600);
    // Warm walls help.
    EXPECT_LT(**heatUp(Deck{}, {25, 120}), **cold);
    Deck feeble;
    feeble.power = 300;
    EXPECT_FALSE(*heatUp(feeble, {25, 25}));
}

TEST(Oven, ASecondFullLoadStraightAfterTheFirstTakesLonger) {
    const Deck deck = weak();
    const auto first = bakeLoad(deck, settled(deck), pie(), {}, {}, 60, 60);
    ASSERT_TRUE(first);
    EXPECT_GE(first->seconds, 25 * 60);
    EXPECT_LE(first->seconds, 45 * 60);
    EXPECT_LT(first->lowest, deck.setDegC - 10);
    EXPECT_LT(offBalance(first->deck), 1e-6);
    const auto second = bakeLoad(deck, first->end, pie(), {}, {}, 60, 120);
    ASSERT_TRUE(second);
    EXPECT_GT(second->seconds, first->seconds + 10);
}

TEST(BakeTimes, GrowWithTheLoadAndFallWithTheRest) {
    const auto times = BakeTimes::tabulated(weak(), pie(), {}, {}, {1, 30, 60}, {0, 900}, 60);
    ASSERT_TRUE(times);
    EXPECT_LT(times->moved(), 3);
    double before = 0;
    for (int i = 0; i <= 20; ++i) {
        const double pies = 3.5 * i;
        const double now = times->seconds(pies, 300);
        EXPECT_GE(now, before);
        EXPECT_GE(times->seconds(pies, 0), now);
        EXPECT_LE(times->seconds(pies, 5000), now);
        before = now;
    }
    EXPECT_GT(times->seconds(60, 0), times->seconds(1, 900) + 30);
}

TEST(Oven, RefusesWhatIsNoOven) {
    Deck deck;
    deck.power = -1;
    EXPECT_FALSE(run(deck, {}, {}));
    deck = {};
    deck.deckHeat = 10;
    EXPECT_FALSE(run(deck, {}, {}));
    deck = {};
    deck.setDegC = 1e9;
    EXPECT_FALSE(run(deck, {}, {}));
    EXPECT_FALSE(bakeLoad(Deck{}, {}, pie(), {}, {}, 0, 60));
    EXPECT_FALSE(BakeTimes::tabulated(Deck{}, pie(), {}, {}, {30, 10}, {0}, 60));
}

} // namespace
} // namespace piewright::thermal
