// How strongly surroundings give heat to a surface, where nobody has measured it.
//
// Published coefficients spread by a factor of two for the same oven; the house's own probe curves are better.
#pragma once

namespace piewright::thermal {

inline constexpr double kStefanBoltzmann = 5.670374419e-8; ///< W/(m2 K4), CODATA 2018, exact
inline constexpr double kMoistSurfaceEmissivity = 0.9;     ///< food and paste; usual handbook value

/// W/(m2 K): e sigma (T1^2 + T2^2)(T1 + T2), the radiation to a small surface in large surroundings over their
/// difference.
[[nodiscard]] double radiationCoefficient(double surroundingsDegC, double surfaceDegC, double emissivity);

/// W/(m2 K) of air that moves only by its warmth: 1.32 (dT / L)^(1/4), simplified for plates in laminar room air
/// (Incropera; from memory). `lengthM` above 0.
[[nodiscard]] double naturalConvection(double differenceK, double lengthM);

/// W/(m2 K) of air driven past a body of `lengthM` at `metresPerSecond` above 0: Nu = 0.664 Re^(1/2) Pr^(1/3), laminar
/// plate, properties of dry air at `airDegC` (Incropera; from memory). `turbulence` of 1 is a smooth stream; the gusty
/// air of fan ovens and chillers gives two to three times that.
[[nodiscard]] double forcedConvection(double airDegC, double metresPerSecond, double lengthM, double turbulence = 1);

/// Fan ovens move goods' air at some metres a second, gustily.
inline constexpr double kFanTurbulence = 2.0;

} // namespace piewright::thermal
