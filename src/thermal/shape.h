// Bodies as cells: slab, long cylinder, sphere, round tin (straight or slanted), rectangular block; layers in each.
#pragma once

#include "finding/result.h"
#include "thermal/grid.h"

#include <cstdint>
#include <optional>
#include <vector>

namespace piewright::thermal {

/// Part of a body along one direction: paste, filling, a tray, a stone.
struct Layer {
    std::uint8_t material = 0; ///< which of the body's materials
    double thickness = 0;      ///< m
    double degC = 20;          ///< at the start
};

/// One square metre. Sides: 0 before the first layer, 1 past the last. `cells` of at least three in a layer, thin
/// layers having more than their share. Problems as all shapes: no layers, a thickness outside 1 µm to 10 m, more than
/// a million cells.
Result<Grid> slab(const std::vector<Layer>& layers, int cells);
/// One metre of its length; layers from the middle outwards. Side 0 is the outside.
Result<Grid> longCylinder(const std::vector<Layer>& layers, int cells);
Result<Grid> sphere(const std::vector<Layer>& layers, int cells);

/// A round piece or what a round tin holds: discs one on the other, and a lining of even width along the wall in all of
/// them but those said to reach the rim.
struct RoundTin {
    double floorRadius = 0;    ///< m
    double mouthRadius = 0;    ///< m; as the floor's for a cylinder; walls up to 45 degrees from upright
    std::vector<Layer> discs;  ///< from the floor up
    std::optional<Layer> wall; ///< its thickness measured level; between the first and the last disc
};
/// Sides: 0 floor, 1 mouth, 2 wall. About `cells` cells in all, nearly square. Probes are given as the part of the
/// local radius (0 to 1) and the height.
Result<Grid> roundTin(const RoundTin& tin, int cells);

/// Length and width of a block or a tray's content; layers from the bottom up. Solved as a quarter. Sides: 0 bottom,
/// 1 top, 2 the four walls. Probes are given from the middle: along, across, up.
Result<Grid> block(double length, double width, const std::vector<Layer>& layers, int cells);

} // namespace piewright::thermal
