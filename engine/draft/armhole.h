#pragma once
// The half armhole, from the underarm point up to the shoulder tip.

#include "engine/base/result.h"
#include "engine/geometry/curve.h"
#include "engine/pattern/piece.h"

namespace pinwright::drafting {

/// ::
///                 tip
///                 /      square to the shoulder
///                |
///       across_x |       plumb, half way up
///                 \        .
///                  `--___  underarm, square to the side
struct ArmholeAsk {
  Vec2 underarm;
  Vec2 side_up;  ///< unit direction in which the side arrives at the underarm
  Vec2 tip;
  Vec2 shoulder;          ///< unit direction in which the shoulder leaves the tip
  double across_x = 0.0;  ///< wanted x of the plumb place
  double hollow = 0.58;   ///< fullness of the lower quarter
};

/// The front armhole is hollowed out more than the back's.
inline constexpr double kFrontHollow = 0.62;
inline constexpr double kBackHollow = 0.56;

/// The armhole bends no more sharply where it meets the side: a little more than the limit that
/// every garment is held to (constraint/limits.h).
inline constexpr double kUnderarmRadiusMm = 10.5;

/// x of the plumb place nearest to the wanted one from which both quarters turn one way only: well
/// inside the underarm point, left of the tip, but not further left than the shoulder's slope lets
/// the line swing.
double armhole_across(const ArmholeAsk& ask);
/// Two segments, joined where it is plumb; no inflection.
Curve armhole(const ArmholeAsk& ask);
/// "draft-impossible" for a piece whose armhole is too shallow (tip less than 90 mm above the
/// underarm point) or has no hollow (plumb place less than 8 mm inside the underarm point).
Problems check_armhole(const Piece& piece);

}  // namespace pinwright::drafting
