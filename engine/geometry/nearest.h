#pragma once
#include "engine/geometry/curve.h"

namespace pinwright {

struct Nearest {
  CurvePlace at;
  Vec2 point;
  double distance = 0.0;  ///< mm
};

/// The place of c nearest to q (the global one: every segment is searched; of equal places the
/// first along the curve). Accuracy: |distance| within 1e-9 mm of the true minimum.
Nearest nearest(const Curve& c, Vec2 q);

}  // namespace pinwright
