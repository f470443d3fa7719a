// What a side of a body meets: air, radiating walls, a stone or tray, evaporation. Several may act together.
#pragma once

#include "finding/result.h"
#include "thermal/curve.h"

#include <optional>

namespace piewright::thermal {

/// With everything at 0 the side is insulated.
struct Boundary {
    double convection = 0; ///< W/(m2 K), to `air`
    Curve air = Curve::steady(20);
    double emissivity = 0;      ///< 0 to 1, in large surroundings
    std::optional<Curve> walls; ///< what radiates; the air's temperature where not given
    double contact = 0;         ///< W/(m2 K) through tin, paper and gap, to `body`
    Curve body = Curve::steady(20);
    /// Water evaporates from it below boiling, as fast as `convection` lets (Lewis's relation), until the water that
    /// can leave is gone and the wet edge draws back.
    bool moist = false;
    double vapourPressure = 1.0; ///< kPa in the air; 20 degC and 43 % is 1.0
    std::optional<Curve> fixed;  ///< the surface's own temperature; nothing else counts then

    static Boundary insulated() { return {}; }
    static Boundary convecting(double coefficient, double airDegC);
    static Boundary held(double degC);
};

/// Problems: a negative or enormous coefficient, an emissivity above 1, a vapour pressure outside 0 to 101 kPa.
Result<Boundary> checked(Boundary asked);

/// What flows at one moment between a surface and a cell inside it.
struct Surroundings {
    double convection = 0;
    double air = 0;
    double emissivity = 0;
    double walls = 0;
    double contact = 0;
    double body = 0;
    double evaporation = 0; ///< kg/(s m2 kPa), 0 where nothing evaporates at the surface
    double vapourPressure = 0;
    bool isFixed = false;
    double fixed = 0;
};

/// At one time; without evaporation, which depends on how far the surface is dry.
[[nodiscard]] Surroundings surroundingsAt(const Boundary& side, double seconds);

/// kg/(s m2 kPa) that a convection of `coefficient` W/(m2 K) carries away: h M / (cp P Le^(2/3)), Lewis number 0.857.
[[nodiscard]] double evaporationCoefficient(double coefficient);

struct SurfaceFlow {
    double degC;      ///< the surface
    double heat;      ///< W/m2 into the cell
    double perKelvin; ///< W/m2 less for each K the cell is warmer; not negative
    double steam;     ///< kg/(s m2)
};

/// `inside` W/(m2 K) leads from the surface to the cell at `cell` degC; `aside` W/m2 flows off along a slanted wall.
/// `guess` is where Newton's iteration starts.
[[nodiscard]] SurfaceFlow surfaceFlow(const Surroundings& outside, double inside, double cell, double aside,
                                      double guess);

} // namespace piewright::thermal
