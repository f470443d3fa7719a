// Cooling and holding. The reference layer is the published one: 50 mm of a food with k 0.5, density 1040, heat
// capacity 3700, 70 to 3 degC; exact by series (Carslaw and Jaeger 1959).
#include "thermal/cooling.h"

#include <gtest/gtest.h>

namespace piewright::thermal {
namespace {

Material layerFood() { return *Material::constant(0.5, 1040, 3700); }

/// The duty of a blast chiller in the UK cook-chill guidelines of 1989: 50 mm from 70 to 3 degC in 90 minutes.
const std::vector<CoolingStage> kChillDuty{{70, 3, 90 * 60}};
const std::vector<CoolingStage> kTwoStages{{57, 21, 2 * 3600}, {57, 5, 6 * 3600}};

TEST(Cooling, OfADeepLayerIsNotPromisedInNinetyMinutes) {
    // Conduction alone takes about 80 min with both faces held at -5 degC; at h = 40 it takes 166.
    const double least = conductionTakes(layerFood(), 0.05, 70, -5, 3);
    EXPECT_NEAR(least / 60, 80, 1.5);
    Vessel tray;
    const auto cooled = cool(tray, layerFood(), 70, Place::blastChiller(), kChillDuty);
    ASSERT_TRUE(cooled);
    EXPECT_FALSE(cooled->inTime);
    EXPECT_NEAR(*cooled->stages[0].seconds / 60, 166, 8);
    EXPECT_NEAR(cooled->stages[0].least, least, 1e-6);
}

TEST(Cooling, NeverBeatsWhatConductionTakes) {
    for (const double depth : {0.01, 0.03, 0.06, 0.10})
        for (const Place& place : {Place::roomAir(0), Place::coldRoom(), Place::blastChiller(), Place::iceBath()}) {
            Vessel tray;
            tray.depth = depth;
            tray.evaporates = true;
            const auto cooled = cool(tray, layerFood(), 80, place, kTwoStages);
            ASSERT_TRUE(cooled);
            for (const StageTime& stage : cooled->stages)
                if (stage.seconds) {
                    EXPECT_GE(*stage.seconds, stage.least * 0.999) << depth;
                }
        }
}

TEST(Cooling, GreatestDepthIsTheLastThatMakesIt) {
    Vessel tray;
    const auto depth = greatestDepth(tray, layerFood(), 70, Place::blastChiller(), kChillDuty);
    ASSERT_TRUE(depth);
    ASSERT_TRUE(*depth);
    EXPECT_LT(**depth, 0.05);
    EXPECT_GT(**depth, 0.02);
    tray.depth = **depth;
    EXPECT_TRUE(cool(tray, layerFood(), 70, Place::blastChiller(), kChillDuty)->inTime);
    tray.depth += 0.001;
    EXPECT_FALSE(cool(tray, layerFood(), 70, Place::blastChiller(), kChillDuty)->inTime);
}

TEST(Cooling, CannotBeDoneWhereThePlaceIsTooWarm) {
    const auto depth = greatestDepth(Vessel{}, layerFood(), 70, Place::roomAir(25), kTwoStages);
    ASSERT_TRUE(depth);
    EXPECT_FALSE(*depth);
}

TEST(Cooling, TakesLongerTheDeeperAndTheWarmerThePlace) {
    double before = 0;
    for (const double depth : {0.01, 0.02, 0.04, 0.08}) {
        Vessel tray;
        tray.depth = depth;
        const auto cooled = cool(tray, layerFood(), 80, Place::blastChiller(), {{63, 8, 4 * 3600}});
        ASSERT_TRUE(cooled);
        ASSERT_TRUE(cooled->stages[0].seconds);
        EXPECT_GT(*cooled->stages[0].seconds, before);
        before = *cooled->stages[0].seconds;
    }
}

TEST(Cooling, OfARoundPanIsQuickerThanOfAnEndlessLayer) {
    Vessel layer;
    layer.depth = 0.08;
    layer.length = layer.width = 2;
    Vessel pan = layer;
    pan.radius = 0.12;
    const std::vector<CoolingStage> rule{{63, 21, 4 * 3600}};
    EXPECT_LT(*cool(pan, layerFood(), 80, Place::coldRoom(), rule)->stages[0].seconds,
              *cool(layer, layerFood(), 80, Place::coldRoom(), rule)->stages[0].seconds);
}

TEST(Cooling, InAnIceBathBeatsStillAirAndStirringHelps) {
    Vessel pot;
    pot.radius = 0.12;
    pot.depth = 0.10;
    const std::vector<CoolingStage> rule{{63, 21, 6 * 3600}};
    const double inAir = *cool(pot, layerFood(), 80, Place::coldRoom(), rule)->stages[0].seconds;
    const double inIce = *cool(pot, layerFood(), 80, Place::iceBath(), rule)->stages[0].seconds;
    pot.stirred = true;
    const double stirred = *cool(pot, layerFood(), 80, Place::iceBath(), rule)->stages[0].seconds;
    EXPECT_LT(inIce, inAir);
    EXPECT_LT(stirred, inIce / 3);
}

TEST(Cooling, OfAStirredPotFollowsNewton) {
    // Only the bath: floor and walls of a pot of radius 0.1, depth 0.1, insulated above.
    Vessel pot;
    pot.radius = 0.1;
    pot.depth = 0.1;
    pot.stirred = true;
    Place place = Place::iceBath();
    place.convection = 0;
    place.emissivity = 0;
    const History history = *standing(pot, layerFood(), 80, place, 3600);
    const double perVolume = (0.1 * 0.1 + 2 * 0.1 * 0.1) / (0.1 * 0.1 * 0.1); // (floor + wall) / volume, pi cancels
    const double rate = 300 * perVolume / (1040 * 3700);
    EXPECT_NEAR(history.hottest.points().back().degC, stirredTemperature(80, 0.5, rate, 3600), 0.1);
}

TEST(Holding, EndsWhenTheColdestPointIsBelowTheLimit) {
    Vessel mash;
    mash.depth = 0.10;
    const Material food = *Material::of(*Food::of({78, 2, 4, 14, 1.5, 0.5}));
    const auto inAir = heldAbove(mash, food, 85, Place::roomAir(), 63, 4 * 3600);
    ASSERT_TRUE(inAir);
    ASSERT_TRUE(*inAir);
    mash.evaporates = true;
    const auto open = heldAbove(mash, food, 85, Place::roomAir(), 63, 4 * 3600);
    ASSERT_TRUE(*open);
    EXPECT_LT(**open, **inAir);
    // Below the limit from the start.
    EXPECT_EQ(**heldAbove(mash, food, 60, Place::roomAir(), 63, 3600), 0);
}

TEST(Holding, InAHotPlaceDoesNotEnd) {
    Vessel mash;
    mash.depth = 0.08;
    const Material food = *Material::of(*Food::of({78, 2, 4, 14, 1.5, 0.5}));
    const auto held = heldAbove(mash, food, 75, Place::hotCupboard(75), 63, 4 * 3600);
    ASSERT_TRUE(held);
    EXPECT_FALSE(*held);
    mash.stirred = true; // its top in room air, but of one temperature with what stands in the water
    const auto bath = heldAbove(mash, food, 75, Place::bainMarie(85), 63, 4 * 3600);
    ASSERT_TRUE(bath);
    EXPECT_FALSE(*bath);
}

TEST(Cooling, RefusesWhatIsNoRule) {
    EXPECT_FALSE(cool(Vessel{}, layerFood(), 70, Place::coldRoom(), {}));
    EXPECT_FALSE(cool(Vessel{}, layerFood(), 70, Place::coldRoom(), {{3, 70, 60}}));
    Vessel none;
    none.depth = 0;
    EXPECT_FALSE(cool(none, layerFood(), 70, Place::coldRoom(), {{63, 8, 60}}));
    EXPECT_FALSE(cool(Vessel{}, layerFood(), 70, Place::coldRoom(1e9), {{63, 8, 60}}));
}

} // namespace
} // namespace piewright::thermal
