#pragma once
// The waist line of one half of a bodice: from the fold to the waist dart, from there to the side.

#include "engine/geometry/curve.h"

namespace pinwright::drafting {

/// Inner part square to fold and leg, outer part square to leg and side: with the dart sewn the
/// line runs on. An upward arch wherever the piece narrows towards the waist.
struct Waist {
  Curve inner;
  Curve outer;
};

/// Where the waist's corners lie.
struct WaistCorners {
  Vec2 fold;
  Vec2 mouth_in;
  Vec2 mouth_out;
  Vec2 corner;
};

/// The corners moved to where both parts can turn one way only and the dart hangs plumb:
/// - the mouths, as far apart as they are, plumb below the dart's point, with legs `leg` long; or,
///   with `leg` 0, with the legs that keep the fold where it is;
/// - the fold up or down to where an arc to the inner mouth starts;
/// - the corner up or down to the level of the waist (y = 0), or as near to it as an arch can
/// reach.
WaistCorners faired(WaistCorners at, Vec2 dart_point, double leg, Vec2 side_up);

/// `side_up`: unit direction in which the side leaves the corner.
Waist waist_line(const WaistCorners& at, Vec2 dart_point, Vec2 side_up);

}  // namespace pinwright::drafting
