#include "demand/amounts.h"

#include <gtest/gtest.h>
#include <rapidcheck/gtest.h>

#include <algorithm>

namespace piewright::demand {
namespace {

ClockTime clock(int hours, int minutes = 0) { return ClockTime(Minutes(60 * hours + minutes)); }

WaveTerms terms(Minutes hold) {
    WaveTerms t;
    t.open = {{clock(11), clock(19)}};
    t.hold = hold;
    return t;
}

Profile evenOver(const WaveTerms& t) { return even(openParts(t.open)); }

int sum(const std::vector<Wave>& waves) {
    int pieces = 0;
    for (const Wave& w : waves) pieces += w.pieces;
    return pieces;
}

TEST(Waves, EightEvenHoursHeldTwoAreFourWaves) {
    const WaveTerms t = terms(Minutes(120));
    const std::vector<Wave> w = waves(80, evenOver(t), t);
    ASSERT_EQ(w.size(), 4U);
    for (std::size_t i = 0; i < 4; ++i) {
        EXPECT_EQ(w[i].ready, clock(11 + 2 * static_cast<int>(i)));
        EXPECT_EQ(w[i].until, clock(13 + 2 * static_cast<int>(i)));
        EXPECT_EQ(w[i].pieces, 20);
    }
}

TEST(Waves, AsFewWavesShareTheDayRatherThanFillingTheFirst) {
    // 150 min of hold over 480 min needs 4 waves; four of 120 are fresher than three of 150 and one of 30
    const WaveTerms t = terms(Minutes(150));
    const std::vector<Wave> w = waves(80, evenOver(t), t);
    ASSERT_EQ(w.size(), 4U);
    for (const Wave& wave : w) EXPECT_EQ(wave.pieces, 20);
}

TEST(Waves, TheHousesWishForFreshnessShortensTheHold) {
    WaveTerms t = terms(Minutes(240));
    t.everyAtMost = Minutes(60);
    EXPECT_EQ(waves(80, evenOver(t), t).size(), 8U);
}

TEST(Waves, NoWaveIsMoreThanTheDeckHolds) {
    WaveTerms t = terms(Minutes(480));
    t.mostPieces = 24;
    const std::vector<Wave> w = waves(100, evenOver(t), t);
    EXPECT_EQ(sum(w), 100);
    for (const Wave& wave : w) EXPECT_LE(wave.pieces, 24);
    EXPECT_EQ(w.size(), 5U); // 100 / 24 = 4.2
}

TEST(Waves, ARushThatOneDeckCannotServeGetsTwoAtOnce) {
    WaveTerms t = terms(Minutes(120));
    t.mostPieces = 10;
    Profile p{};
    p[48] = 1; // all at noon
    const std::vector<Wave> w = waves(25, p, t);
    EXPECT_EQ(sum(w), 25);
    for (const Wave& wave : w) {
        EXPECT_LE(wave.pieces, 10);
        EXPECT_LE(wave.ready, clock(12));
    }
}

TEST(Waves, NothingIsReadiedForTheAfternoonBreak) {
    WaveTerms t = terms(Minutes(90));
    t.open = {{clock(11), clock(14)}, {clock(17), clock(20)}};
    const std::vector<Wave> w = waves(60, evenOver(t), t);
    EXPECT_EQ(sum(w), 60);
    for (const Wave& wave : w) {
        EXPECT_TRUE(wave.ready < clock(14) || wave.ready >= clock(17)) << toText(wave.ready);
        EXPECT_TRUE(wave.until <= clock(14) || wave.until > clock(17)) << toText(wave.until);
    }
    EXPECT_EQ(w.size(), 4U);
}

TEST(Waves, OpeningOffTheGridIsServedFromTheGridPointBefore) {
    WaveTerms t = terms(Minutes(600));
    t.open = {{clock(10, 20), clock(12)}};
    const std::vector<Wave> w = waves(5, evenOver(t), t);
    ASSERT_EQ(w.size(), 1U);
    EXPECT_EQ(w[0].ready, clock(10, 15));
    EXPECT_EQ(w[0].until, clock(12));
}

TEST(Waves, AHoldShorterThanTheStepWins) {
    WaveTerms t = terms(Minutes(10));
    t.open = {{clock(11), clock(12)}};
    const std::vector<Wave> w = waves(60, evenOver(t), t);
    EXPECT_EQ(sum(w), 60);
    EXPECT_EQ(w.size(), 6U);
}

TEST(Waves, AProfileThatSaysNothingIsTakenAsEven) {
    const WaveTerms t = terms(Minutes(240));
    const std::vector<Wave> w = waves(10, Profile{}, t);
    ASSERT_EQ(w.size(), 2U);
    EXPECT_EQ(w[0].pieces, 5);
}

TEST(Waves, NoPiecesNoWaves) {
    const WaveTerms t = terms(Minutes(60));
    EXPECT_TRUE(waves(0, evenOver(t), t).empty());
}

RC_GTEST_PROP(WavesProperty, SumToThePiecesAndKeepTheirTerms, ()) {
    WaveTerms t;
    const int from = *rc::gen::inRange(0, 700);
    const int to = from + *rc::gen::inRange(1, 300);
    t.open = {{ClockTime(Minutes(from)), ClockTime(Minutes(to))}};
    if (*rc::gen::arbitrary<bool>()) {
        const int again = to + *rc::gen::inRange(1, 200);
        t.open.push_back({ClockTime(Minutes(again)), ClockTime(Minutes(again + *rc::gen::inRange(1, 400)))});
    }
    t.hold = Minutes(*rc::gen::inRange(1, 400));
    if (*rc::gen::arbitrary<bool>()) t.everyAtMost = Minutes(*rc::gen::inRange(1, 200));
    if (*rc::gen::arbitrary<bool>()) t.mostPieces = *rc::gen::inRange(1, 60);
    t.step = Minutes(*rc::gen::element(1, 5, 10, 15, 30));
    const int pieces = *rc::gen::inRange(0, 500);
    Profile p{};
    for (double& share : p) share = *rc::gen::inRange(0, 5);
    double total = 0;
    for (const double share : p) total += share;
    if (total > 0)
        for (double& share : p) share /= total;
    const std::vector<Wave> w = waves(pieces, p, t);
    RC_ASSERT(sum(w) == pieces);
    RC_ASSERT(std::is_sorted(w.begin(), w.end(), [](const Wave& a, const Wave& b) { return a.ready < b.ready; }));
    for (const Wave& wave : w) {
        RC_ASSERT(wave.pieces > 0);
        RC_ASSERT(!t.mostPieces || wave.pieces <= *t.mostPieces);
        RC_ASSERT(wave.until > wave.ready);
        RC_ASSERT(wave.until - wave.ready <= t.hold);
        RC_ASSERT(!t.everyAtMost || wave.until - wave.ready <= *t.everyAtMost);
        RC_ASSERT(wave.until <= t.open.back().to);
    }
}

} // namespace
} // namespace piewright::demand
