#pragma once
// The width of the cloth at a height, with the darts that the level crosses taken as sewn.

#include <optional>

#include "engine/pattern/piece.h"

namespace pinwright {

/// From the leftmost crossing of the outline with the horizontal at height y, straight on to where
/// the line leaves the cloth. Where it meets a dart's leg the rest of the piece is turned about the
/// dart's point until the legs lie on each other, as when the dart is sewn, and the line goes on:
///
///      ---->|\      |            ---->|      |
///           | \---->|   sewn:    -----+----->|
///           |  \    |                 |      |
///
/// What is level on one side of a sewn dart is not on the other, by the dart's angle: the line goes on
/// midway between the two, so that the width changes without a jump when a dart's point moves over
/// the level.
/// A half piece is measured from its fold (x = 0), also where a deep neckline has cut the cloth
/// away there: the width is half of what the garment spans. Nothing when the level does not cross
/// the piece, or when it touches it in a single point.
std::optional<double> cloth_width(const Piece& piece, double y);

}  // namespace pinwright
