// Mixtures and freezing. Component values are held against the published table through the outside runner.
#include "thermal/food.h"

#include <gtest/gtest.h>

namespace piewright::thermal {
namespace {

/// Lean pork shoulder, USDA SR28 10072, with the freezing point ASHRAE Refrigeration 2006 ch. 9 gives (from memory).
Food pork() { return *Food::of({72.63, 19.55, 7.14, 0, 0, 1.02}, -2.2); }

TEST(Food, OfOneComponentIsThatComponent) {
    const Food water = *Food::of({1, 0, 0, 0, 0, 0});
    EXPECT_DOUBLE_EQ(water.density(20), densityOf(Component::Water, 20));
    EXPECT_DOUBLE_EQ(water.conductivityParallel(20), water.conductivitySeries(20));
    EXPECT_DOUBLE_EQ(water.heatCapacity(20), heatCapacityOf(Component::Water, 20));
}

TEST(Food, FreezesOverARangeAndKeepsItsBoundWater) {
    const Food food = pork();
    EXPECT_EQ(food.ice(-2.2), 0);
    // At -20: (0.7242 - 0.4 x 0.1949)(1 - 2.2/20), parts over their sum of 1.0034.
    EXPECT_NEAR(food.ice(-20), (0.7263 - 0.4 * 0.1955) / 1.0034 * (1 - 0.11), 1e-9);
    EXPECT_GT(food.conductivityParallel(-20), 2 * food.conductivityParallel(5)); // ice conducts four times as well
    EXPECT_LT(food.density(-20), food.density(5));
}

TEST(Food, EnthalpyIsTheIntegralOfItsHeatCapacity) {
    const Food food = pork();
    for (int piece = 0; piece < 28; ++piece) {
        const double from = -38 + 6.5 * piece;
        const double to = from + 1.5;
        constexpr int kSteps = 4000;
        double sum = 0;
        for (int i = 0; i < kSteps; ++i) sum += food.heatCapacity(from + (i + 0.5) * (to - from) / kSteps);
        const double step = (to - from) / kSteps;
        // Within one step's share where it begins to freeze.
        EXPECT_NEAR(sum * step, food.enthalpy(to) - food.enthalpy(from), 150) << from;
    }
}

TEST(Food, EnthalpyRisesEverywhere) {
    const Food food = pork();
    for (int i = -240; i < 1000; ++i) EXPECT_LT(food.enthalpy(i / 4.0), food.enthalpy((i + 1) / 4.0)) << i;
}

TEST(Food, FreezingTakesMostOfTheLatentHeat) {
    // From 5 to -20 degC: about 0.575 kg of ice x 333.6 kJ/kg = 192 kJ and some 65 kJ of sensible heat.
    const double taken = pork().enthalpy(5) - pork().enthalpy(-20);
    EXPECT_GT(taken, 230e3);
    EXPECT_LT(taken, 270e3);
}

TEST(Food, RefusesWhatIsNoFood) {
    EXPECT_FALSE(Food::of({}));
    EXPECT_FALSE(Food::of({-1, 2, 0, 0, 0, 0}));
    EXPECT_FALSE(Food::of({1, 0, 0, 0, 0, 0}, 3.0));
    EXPECT_FALSE(Food::of({std::numeric_limits<double>::quiet_NaN(), 0, 0, 0, 0, 0}));
}

} // namespace
} // namespace piewright::thermal
