#pragma once
#include <vector>

#include "engine/geometry/curve.h"

namespace pinwright {

struct Crossing {
  CurvePlace on_a;
  CurvePlace on_b;
  Vec2 point;
};

/// All crossings and touchings of a and b, sorted along a; each once. A touch is a place where the
/// two come within kCoincidentMm of each other. Where the two run along each other (overlap) the
/// ends of the shared stretch are given. Crossings are found by subdivision and a Newton finish to
/// 1e-10 mm; the work is bounded, and segments with points that are not finite meet nothing.
/// Two crossings with less than kCoincidentMm of daylight between them are told as one touch.
std::vector<Crossing> intersections(const Curve& a, const Curve& b);

/// Places where c crosses or touches itself, on_a before on_b; joints between neighbouring segments
/// do not count, the shared point of a closed curve neither, nor loops shorter than 1e-4 mm. Where
/// a straight segment turns back on its own line the turning place is given (on_a = on_b).
std::vector<Crossing> self_intersections(const Curve& c);

/// Crossings and touchings of c with the horizontal line at height y / the vertical line at x,
/// sorted along c, each once: a joint on the line is told as the end of the segment before it. A
/// segment that lies on the line gives its two ends.
std::vector<CurvePlace> at_height(const Curve& c, double y);
std::vector<CurvePlace> at_x(const Curve& c, double x);

}  // namespace pinwright
