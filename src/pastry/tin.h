// How much paste a tin takes: blanks, piece weights, the sheeter's gauge.
#pragma once

#include "book/book.h"

namespace piewright::pastry {

/// Area in square metres. A plain number: areas only ever turn into weights here.
using SquareMetres = double;

/// Paste that lines the tin: floor, sloping wall and the overhang past the mouth.
/// Round: exact (frustum wall pi (R + r) s). Oval and rectangle with rounded corners: floor and overhang exact, the
/// wall as mean perimeter x slope, exact for straight walls. Ellipse perimeter by Ramanujan's second formula (1914).
[[nodiscard]] SquareMetres baseArea(const book::Tin& tin);
/// Paste that covers the mouth and the overhang.
[[nodiscard]] SquareMetres lidArea(const book::Tin& tin);
/// Inside volume to the mouth: prismoidal formula, exact for frustum and cylinder.
[[nodiscard]] Volume fillVolume(const book::Tin& tin);

/// Weight on the pie: area x thickness x density, to the nearest milligram. `area` from above.
[[nodiscard]] Mass sheetWeight(SquareMetres area, Length thickness, Density density);

struct Piece {
    Mass onPie;         ///< what stays on the pie
    Mass trim;          ///< what is cut off
    Mass divided;       ///< what the divider presses: on the pie + trim
    Length blankLength; ///< size of the pinned-out blank: diameter, or longer way
    Length blankWidth;
};
[[nodiscard]] Piece basePiece(const book::Tin& tin, const book::Sheet& sheet, Density density);
[[nodiscard]] Piece lidPiece(const book::Tin& tin, const book::Sheet& sheet, Density density);

/// Springback left after a rest: s = s0 exp(-t / tau). `tau` zero: none is left after any rest.
[[nodiscard]] Share springbackAfter(Share atOnce, Seconds relaxation, Seconds rest);
/// Gauge that ends at `finished` when the sheet then thickens by `springback`: finished / (1 + springback).
[[nodiscard]] Length gaugeFor(Length finished, Share springback);

} // namespace piewright::pastry
