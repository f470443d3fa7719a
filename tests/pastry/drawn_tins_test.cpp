// What must hold for any tin, tried on drawn ones.
#include "pastry/heads.h"
#include "pastry/tin.h"

#include <gtest/gtest.h>
#include <rapidcheck/gtest.h>

namespace piewright::pastry {
namespace {

Length drawnLength(std::int64_t leastMm, std::int64_t mostMm) {
    return micrometres(*rc::gen::inRange<std::int64_t>(leastMm * 1'000, mostMm * 1'000 + 1));
}

/// Mouths of 40 to 400 mm, floors no larger, any shape.
book::Tin drawnTin() {
    using enum book::TinShape;
    book::Tin tin;
    tin.shape = *rc::gen::element(Frustum, Cylinder, Oval, Rectangle);
    tin.mouthLength = drawnLength(40, 400);
    const bool round = tin.shape == Frustum || tin.shape == Cylinder;
    tin.mouthWidth = round ? tin.mouthLength : scaled(tin.mouthLength, *rc::gen::inRange(50, 101) / 100.0);
    const double taper = tin.shape == Cylinder ? 1 : *rc::gen::inRange(60, 101) / 100.0;
    tin.floorLength = scaled(tin.mouthLength, taper);
    tin.floorWidth = scaled(tin.mouthWidth, taper);
    tin.depth = drawnLength(10, 80);
    tin.overhang = drawnLength(0, 15);
    tin.corner = drawnLength(0, 15);
    return tin;
}

RC_GTEST_PROP(DrawnTin, LiningIsMoreThanTheFloorAndTheOverhangAlone, ()) {
    book::Tin tin = drawnTin();
    const double whole = baseArea(tin);
    tin.depth = Length{};
    RC_ASSERT(whole > baseArea(tin)); // the wall
}

RC_GTEST_PROP(DrawnTin, AFlatTinIsLinedLikeItsLid, ()) {
    // No depth and straight: the floor is the mouth, and base and lid are one shape.
    book::Tin tin = drawnTin();
    tin.depth = Length{};
    tin.floorLength = tin.mouthLength;
    tin.floorWidth = tin.mouthWidth;
    RC_ASSERT(std::abs(baseArea(tin) / lidArea(tin) - 1) < 1e-12);
}

RC_GTEST_PROP(DrawnTin, AnyRealTinNeedsMorePasteBelowThanAbove, ()) {
    // Floor and sloping wall together span the mouth by another way, so they are never smaller.
    const book::Tin tin = drawnTin();
    RC_ASSERT(baseArea(tin) > lidArea(tin));
}

RC_GTEST_PROP(DrawnTin, VolumeLiesBetweenTheTwoPrisms, ()) {
    const book::Tin tin = drawnTin();
    book::Tin wide = tin;
    wide.floorLength = tin.mouthLength;
    wide.floorWidth = tin.mouthWidth;
    book::Tin narrow = tin;
    narrow.mouthLength = tin.floorLength;
    narrow.mouthWidth = tin.floorWidth;
    RC_ASSERT(fillVolume(tin) <= fillVolume(wide));
    RC_ASSERT(fillVolume(tin) >= fillVolume(narrow));
}

RC_GTEST_PROP(DrawnTin, DoubleTheTinIsFourTimesTheAreaAndEightTimesTheVolume, ()) {
    const book::Tin tin = drawnTin();
    book::Tin twice = tin;
    for (Length* length : {&twice.mouthLength, &twice.mouthWidth, &twice.floorLength, &twice.floorWidth, &twice.depth,
                           &twice.corner, &twice.overhang})
        *length = *length * 2;
    RC_ASSERT(std::abs(baseArea(twice) / baseArea(tin) - 4) < 1e-9);
    RC_ASSERT(std::abs(lidArea(twice) / lidArea(tin) - 4) < 1e-9);
    RC_ASSERT(std::abs(ratio(fillVolume(twice), fillVolume(tin)) - 8) < 1e-2);
}

RC_GTEST_PROP(DrawnTin, APieceIsWhatStaysAndWhatIsCutOff, ()) {
    const book::Tin tin = drawnTin();
    book::Sheet sheet;
    sheet.thickness = micrometres(*rc::gen::inRange<std::int64_t>(1'000, 8'000));
    sheet.trim = Share::ofRaw(*rc::gen::inRange<std::int64_t>(0, 600'000));
    const Density density = Density::ofRaw(*rc::gen::inRange<std::int64_t>(900'000, 1'400'000));
    for (const Piece& piece : {basePiece(tin, sheet, density), lidPiece(tin, sheet, density)}) {
        RC_ASSERT(piece.onPie + piece.trim == piece.divided);
        RC_ASSERT(piece.trim >= Mass{});
        RC_ASSERT(std::abs(ratio(piece.trim, piece.divided) - asFraction(sheet.trim)) < 1e-3);
        RC_ASSERT(piece.blankLength >= piece.blankWidth);
    }
}

RC_GTEST_PROP(DrawnHeads, CoverThePiecesWithLessThanOneHeadOver, ()) {
    book::Gear divider;
    divider.pieces = *rc::gen::inRange(1, 200);
    const auto pieces = *rc::gen::inRange<std::int64_t>(0, 100'000);
    const auto heads = headsFor(pieces, grams(80), divider);
    RC_ASSERT(heads.ok());
    RC_ASSERT(heads->heads * divider.pieces == pieces + heads->surplus);
    RC_ASSERT(heads->surplus >= 0);
    RC_ASSERT(heads->surplus < divider.pieces);
}

RC_GTEST_PROP(DrawnSurplus, IsNeitherLostNorMade, ()) {
    const FormulaId paste("p");
    const FormulaId other("o");
    book::Book book;
    book.formulas[paste].id = paste;
    book.formulas[other].id = other;
    if (*rc::gen::arbitrary<bool>()) book.formulas[paste].keeps = Seconds(*rc::gen::inRange(0, 100'000));
    if (*rc::gen::arbitrary<bool>()) book.formulas[paste].reworkMost = Share::ofRaw(*rc::gen::inRange(0, 500'000));
    if (*rc::gen::arbitrary<bool>()) book.formulas[other].reworkMost = Share::ofRaw(*rc::gen::inRange(0, 500'000));
    if (*rc::gen::arbitrary<bool>()) book.formulas[other].reworkFrom = paste;
    const std::map<FormulaId, Mass> receiving{{paste, grams(*rc::gen::inRange(0, 20'000))},
                                              {other, grams(*rc::gen::inRange(0, 20'000))}};
    const auto pieces = *rc::gen::inRange<std::int64_t>(0, 200);
    const Mass weight = grams(*rc::gen::inRange(1, 120));
    std::int64_t sum = 0;
    std::map<FormulaId, Mass> reworked;
    for (const Surplus& part : whereSurplusGoes(book, paste, pieces, weight, Seconds(50'000), receiving)) {
        RC_ASSERT(part.pieces > 0);
        RC_ASSERT(part.mass == weight * part.pieces);
        RC_ASSERT(!part.why.empty());
        RC_ASSERT(part.into.empty() == (part.goes != SurplusGoes::Reworked));
        sum += part.pieces;
        if (part.goes == SurplusGoes::Reworked) reworked[part.into] += part.mass;
    }
    RC_ASSERT(sum == pieces);
    for (const auto& [into, mass] : reworked) {
        RC_ASSERT(book.formulas.at(into).reworkMost.has_value());
        const double limit = inGrams(receiving.at(into)) * asFraction(*book.formulas.at(into).reworkMost);
        RC_ASSERT(inGrams(mass) <= limit + 1e-6);
    }
}

} // namespace
} // namespace piewright::pastry
