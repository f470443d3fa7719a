// Water as steam: what holds it in a moist surface and what it carries off.
#pragma once

namespace piewright::thermal {

/// kPa over pure water at 0 to 150 degC (clamped). Source: IAPWS SR1-86 (1992), coefficients from memory; within 0.1 %
/// of printed steam tables (tests/thermal/water_test.cpp).
[[nodiscard]] double saturationPressure(double degC);

/// J/kg to turn water into steam, 0 to 110 degC (clamped): a cubic through the IAPWS-95 steam tables' values at 0, 25,
/// 60 and 100 degC, within 0.2 kJ/kg of them between.
[[nodiscard]] double latentHeat(double degC);

/// J carried off as latent heat by `loss` (0 to 1) of a piece of `massKg`.
[[nodiscard]] double heatOfLoss(double massKg, double loss, double latentJoulesPerKg);

/// Part of the mass before that went off when all that left was water: 1 - (1 - before)/(1 - after), both parts of
/// water from 0 to below 1. Negative when water was taken up.
[[nodiscard]] double lossFromWater(double before, double after);

} // namespace piewright::thermal
