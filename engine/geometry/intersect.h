#pragma once
#include <vector>

#include "engine/geometry/curve.h"

namespace pinwright {

struct Crossing {
  CurvePlace on_a;
  CurvePlace on_b;
  Vec2 point;
};

/// All crossings and touchings of a and b, sorted along a; each once. Where the two run along each
/// other (overlap) the ends of the shared stretch are given. Found by subdivision of bounding boxes
/// and a Newton finish to kCoincidentMm.
std::vector<Crossing> intersections(const Curve& a, const Curve& b);

/// Places where c crosses or touches itself; joints between neighbouring segments do not count,
/// the shared point of a closed curve neither.
std::vector<Crossing> self_intersections(const Curve& c);

/// Crossings and touchings of c with the horizontal line at height y / the vertical line at x,
/// sorted along c, each once: a joint on the line is told as the end of the segment before it. A
/// segment that lies on the line gives its two ends.
std::vector<CurvePlace> at_height(const Curve& c, double y);
std::vector<CurvePlace> at_x(const Curve& c, double x);

}  // namespace pinwright
