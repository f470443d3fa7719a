// Published losses of weight in the oven, for a house that has not weighed its own; and a guide to colour.
#pragma once

#include "thermal/curve.h"

#include <optional>
#include <span>
#include <string_view>

namespace piewright::thermal {

/// Parts of the weight that went in, least and most; the same where one figure was printed.
struct BakeLoss {
    std::string_view id;
    std::string_view what;
    double least;
    double most;
    std::string_view source;
};

[[nodiscard]] std::span<const BakeLoss> bakeLosses();
[[nodiscard]] const BakeLoss* bakeLoss(std::string_view id);

/// Grams of dough that give a loaf of `breadGrams` three hours after the oven: 45.654 + 1.0624 m, measured on bread of
/// some 400 to 800 g (Bocevska et al., Kem. Ind.). Bread only.
[[nodiscard]] double doughForBread(double breadGrams);

/// A guide to colour and nothing else: 0 for raw, towards 1 for dark, from the surface's temperature as first order
/// browning with k = 42,000 e^(-64,151 / (R T)) a second (bread crust; Zanoni, Peri and Bruno 1995, figures from
/// memory). Glaze, sugar and egg change it wholly: compare a house's own goods with each other only. It says nothing
/// about being cooked.
[[nodiscard]] double browningGuide(const Curve& surface);

} // namespace piewright::thermal
