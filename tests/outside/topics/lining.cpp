#include "outside/topics.h"
#include "pastry/tin.h"

namespace piewright::outside {

namespace {

Length metres(double m) { return Length::nearest(m * 1e6); }

struct Rolled {
    book::Sheet sheet;
    Density density;
};

/// Nothing unless both are sizes of a real sheet of paste.
std::optional<Rolled> rolled(double thicknessMm, double gramsPerMl) {
    if (thicknessMm <= 0 || thicknessMm > 1'000 || gramsPerMl <= 0 || gramsPerMl > 100) return std::nullopt;
    Rolled made;
    made.sheet.thickness = metres(thicknessMm / 1e3);
    made.density = Density::nearest(gramsPerMl * 1e6);
    return made;
}

bool sizeOfTin(double m) { return m > 0 && m <= 100; }

Answer lid(const Case& asked) {
    const auto in = asked.inputs.exactly({"mouth_d_m", "overhang_m", "thickness_mm", "density_g_ml"});
    if (!in) return NotCovered{"wants mouth_d_m, overhang_m, thickness_mm and density_g_ml"};
    const auto [mouth, overhang, thickness, density] = *in;
    const auto paste = rolled(thickness, density);
    if (!paste || !sizeOfTin(mouth) || overhang < 0 || overhang > 100) return NotCovered{"out of range"};
    book::Tin tin;
    tin.shape = book::TinShape::Frustum;
    tin.mouthLength = tin.mouthWidth = metres(mouth);
    tin.overhang = metres(overhang);
    return inGrams(pastry::lidPiece(tin, paste->sheet, paste->density).onPie);
}

Answer base(const Case& asked) {
    const auto in =
        asked.inputs.exactly({"mouth_d_m", "base_d_m", "height_m", "overhang_m", "thickness_mm", "density_g_ml"});
    if (!in) return NotCovered{"wants mouth_d_m, base_d_m, height_m, overhang_m, thickness_mm and density_g_ml"};
    const auto [mouth, floor, height, overhang, thickness, density] = *in;
    const auto paste = rolled(thickness, density);
    if (!paste || !sizeOfTin(mouth) || !sizeOfTin(floor) || !sizeOfTin(height) || overhang < 0 || overhang > 100)
        return NotCovered{"out of range"};
    book::Tin tin;
    tin.shape = book::TinShape::Frustum;
    tin.mouthLength = tin.mouthWidth = metres(mouth);
    tin.floorLength = tin.floorWidth = metres(floor);
    tin.depth = metres(height);
    tin.overhang = metres(overhang);
    return inGrams(pastry::basePiece(tin, paste->sheet, paste->density).onPie);
}

} // namespace

Answer lining(const Case& asked, const Foods& /*foods*/) {
    if (asked.unit != "g") return NotCovered{"wants grams"};
    if (asked.quantity == "lid weight") return lid(asked);
    if (asked.quantity.starts_with("paste weight to line a round")) return base(asked);
    return NotCovered{"neither a lid's weight nor that of a round tin's lining"};
}

} // namespace piewright::outside
