#pragma once
// A curve drawn anew between other ends, without a wiggle.

#include <optional>

#include "engine/geometry/curve.h"

namespace pinwright {

/// What a redrawn curve must meet.
struct HollowAsk {
  Vec2 start;
  Vec2 end;
  Vec2 start_direction;  ///< along the direction of travel, any length
  Vec2 end_direction;
  std::optional<double> length;  ///< mm
  /// Passes through (x, level), mm.
  std::optional<double> level;
  double x = 0.0;
};

/// A hollow (a curve that bends one way only and by less than half a turn) lies in the triangle of
/// its ends A, B and the meeting T of its end tangents; so do its control points. They are taken
/// over into the new triangle by the map that sends A, T, B to the new A', T', B':
///
///      A.                A'.
///      | `.      ->      |  `-.
///      |  (`.            | (    `.      a projective map keeps lines lines, so a control polygon
///      T---- B           T'------ B'    that bends one way still does: no wiggle can arise.
///
/// The weight of T makes the curve fuller or flatter and with that longer or shorter; the weight of
/// A shifts its fullness along. Both are sought (damped Newton) so that length and passing place
/// come out to 1e-9 mm where they are asked for.
/// Nothing when `was` is no such hollow, when the new tangents do not meet on the right side, when
/// the length or place cannot be had with weights between 1/5 and 5.
std::optional<Curve> redraw_hollow(const Curve& was, const HollowAsk& ask);

}  // namespace pinwright
