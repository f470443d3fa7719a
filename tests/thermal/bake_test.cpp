// A pie in its tin. No published core curve of a filled pie was found; the bands are common practice, no source:
// an individual pie bakes through in 25 to 45 min at 190 to 230 degC and loses 4 to 9 %.
#include "thermal/bake.h"

#include <gtest/gtest.h>

namespace piewright::thermal {
namespace {

Pie pie() {
    const Food paste = *Food::of({20, 7, 30, 40, 2, 1.5});
    const Food filling = *Food::of({72, 13, 8, 5, 0.5, 1.5}, -1.5);
    Pie made{.base = paste, .filling = filling, .lid = paste};
    return made;
}

TEST(Bake, OfAnIndividualPieIsWithinCommonPractice) {
    for (const double deck : {190.0, 210.0, 230.0}) {
        const auto baked = bake(pie(), {}, Curve::steady(deck), {}, 3600);
        ASSERT_TRUE(baked);
        ASSERT_TRUE(baked->cooked);
        EXPECT_GE(*baked->cooked, 25 * 60) << deck;
        EXPECT_LE(*baked->cooked, 45 * 60) << deck;
        const auto until = bake(pie(), {}, Curve::steady(deck), {}, *baked->cooked);
        EXPECT_GE(until->lost / until->mass, 0.04) << deck;
        EXPECT_LE(until->lost / until->mass, 0.09) << deck;
        EXPECT_NEAR(until->history.heat / until->history.gained, 1, 1e-6);
    }
}

TEST(Bake, IsQuickerInAHotterDeckAndFromAWarmerStart) {
    const double cold = *bake(pie(), {}, Curve::steady(200), {}, 3600)->cooked;
    EXPECT_LT(*bake(pie(), {}, Curve::steady(220), {}, 3600)->cooked, cold);
    Pie warm = pie();
    warm.startDegC = 20;
    EXPECT_LT(*bake(warm, {}, Curve::steady(200), {}, 3600)->cooked, cold);
}

TEST(Bake, OfAFrozenPieTakesMuchLonger) {
    Pie frozen = pie();
    frozen.startDegC = -18;
    const double from5 = *bake(pie(), {}, Curve::steady(210), {}, 2 * 3600)->cooked;
    const auto from18 = bake(frozen, {}, Curve::steady(210), {}, 2 * 3600);
    ASSERT_TRUE(from18);
    // About 245 kJ/kg from 5 to 75 degC, and some 260 more through the ice; the colder pie takes heat in faster.
    EXPECT_GT(*from18->cooked, 1.3 * from5);
    EXPECT_LT(*from18->cooked, 2.1 * from5);
}

TEST(Bake, HardlyDependsOnTheGrid) {
    Pie fine = pie();
    fine.cells = 1200;
    EXPECT_NEAR(*bake(pie(), {}, Curve::steady(210), {}, 3600)->cooked,
                *bake(fine, {}, Curve::steady(210), {}, 3600)->cooked, 5);
}

TEST(Bake, IsCookedWhenAllThatIsAskedIsMet) {
    const Curve core = *Curve::of({{0, 5}, {1500, 70}, {1800, 82}});
    EXPECT_NEAR(*cookedAt(core, {}), 1500 + 5 * 25, 1e-9);
    BakeTarget both;
    both.lethality = Lethality{70, 7.5, {}, {}};
    both.seconds = 120;
    both.table = holdTable("fsa-combinations");
    const double all = *cookedAt(core, both);
    EXPECT_GE(all, *timeToReach(*both.lethality, core, 120));
    EXPECT_GE(all, *firstMeeting(*both.table, core));
    both.coreDegC = 90;
    EXPECT_FALSE(cookedAt(core, both));
    BakeTarget nothing;
    nothing.coreDegC.reset();
    EXPECT_FALSE(cookedAt(core, nothing));
}

TEST(Bake, RefusesAPieThatHasNoMiddle) {
    Pie none = pie();
    none.lidPaste = 0.04;
    EXPECT_FALSE(bake(none, {}, Curve::steady(210), {}, 3600));
}

} // namespace
} // namespace piewright::thermal
