#pragma once
// Where two single cubic segments meet; used by intersect.cc alone.

#include <optional>
#include <vector>

#include "engine/geometry/cubic.h"

namespace pinwright {

/// a(t) and b(s) are the same point within kCoincidentMm. Where the two touch so flatly that their
/// directions cannot be told apart, `touching` is set and [t0, t1], [s0, s1] is the stretch that
/// was looked at; neighbouring stretches belong to the same touch.
struct Meeting {
  double t = 0.0, s = 0.0;
  double gap = 0.0;  ///< mm between a(t) and b(s)
  bool touching = false;
  double t0 = 0.0, t1 = 0.0, s0 = 0.0, s1 = 0.0;
};

/// Every meeting of a and b; a crossing may be told more than once where stretches join.
/// Method: both are halved until their bounding boxes and fat lines (Sederberg & Nishita 1990)
/// part; two arcs whose cones of tangent directions are disjoint cross at most once, and Newton's
/// method finds that crossing; arcs that are straight within a tenth of kCoincidentMm are compared
/// as lines. At most 100000 pairs of arcs are looked at.
std::vector<Meeting> meetings(const Cubic& a, const Cubic& b);

/// The stretch along which a and b are the same line within kCoincidentMm, when it is longer than
/// 1e-4 mm: the places of its ends on both. Two cubics of which such a stretch is shared are the
/// same algebraic curve, so the stretch ends at an end of one of them.
struct Shared {
  double t0 = 0.0, t1 = 0.0, s0 = 0.0, s1 = 0.0;
};
std::optional<Shared> shared_stretch(const Cubic& a, const Cubic& b);

}  // namespace pinwright
