#pragma once
// The waist line of one half of a bodice: from the fold to the waist dart, from there to the side.

#include "engine/geometry/curve.h"

namespace pinwright::drafting {

struct WaistAsk {
  Vec2 dart_point;         ///< the waist dart hangs plumb below it
  double leg_mm = 0.0;     ///< length of either leg
  double intake_mm = 0.0;  ///< between the legs at the mouth
  double sewn_mm = 0.0;    ///< length wanted of the two parts of the waist together
  double side_lean = 0.0;  ///< how far the side leans outward going up, radians from plumb
  double corner_y = 0.0;   ///< height wanted of the end at the side; gives way to a line that turns
                           ///< one way only
};

/// Inner part square to fold and leg, outer part square to leg and side: with the dart sewn the
/// line runs on. An upward arch wherever the piece narrows towards the waist. REQUIRES:
/// intake_mm < 2 leg_mm; when the inner part alone is longer than sewn_mm the outer one is a point.
struct Waist {
  Curve inner;
  Curve outer;
};

Waist waist_line(const WaistAsk& ask);

}  // namespace pinwright::drafting
