#pragma once
// Neck, shoulder and underarm of one half piece, as numbers, before any curve is drawn.

#include "engine/base/result.h"
#include "engine/base/units.h"
#include "engine/draft/need.h"
#include "engine/geometry/vec2.h"

namespace pinwright::drafting {

/// What front and back share. Slopes: the front falls kSlopeShift more than the body's shoulder and
/// the back as much less, so that the seam lies a little forward and the back stands a bit raised.
struct ShoulderPlan {
  double base_width = 0.0;   ///< half width of the body's neck base
  double base_rise = 0.0;    ///< neck point above the back neck point
  double neck_width = 0.0;   ///< half width of the garment's neckline
  double neckline_mm = 0.0;  ///< whole neckline wanted
  double length = 0.0;       ///< of the garment's shoulder (front, and back when sewn without ease)
  double front_slope = 0.0;  ///< radians below level
  double back_slope = 0.0;
  double neck_turn = 0.0;  ///< see neckline_start
};

inline constexpr double kSlopeShift = radians(1.5);
inline constexpr double kNeckTurn = radians(12.0);  // our own

/// Errors: "draft-impossible" when the shoulder is steeper than 40 degrees or when the neckline
/// leaves less than 35 mm of it.
Result<ShoulderPlan> plan_shoulder(const Body& body, double neckline_mm);

/// The neckline's shoulder end: the body's neck point moved along the shoulder.
Vec2 neck_point(const ShoulderPlan& plan, Vec2 body_neck_point, double slope);
/// The plumb leg of a line `along` that also goes `aside` (at most nine tenths of it).
double plumb_part(double along, double aside);
/// Unit direction from the tip to the neck.
Vec2 toward_neck(double slope);
/// Unit direction in which the half neckline leaves the neck point. Not square to the shoulder: the
/// front's is `neck_turn` steeper, so that it is round and not a V, and the back's as much flatter;
/// over the shoulder seam the two make one line.
Vec2 front_neckline_start(double slope, double neck_turn);
Vec2 back_neckline_start(double slope, double neck_turn);

}  // namespace pinwright::drafting
