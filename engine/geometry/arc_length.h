#pragma once
// Arc length and its inverse.
// Method: Gauss-Legendre quadrature of |B'(t)|, 16 points a panel, panels halved until two
// estimates agree (a fixed rule is wrong by 1e-6 on a tight S), and parted where the speed is
// least, since a cusp near the end of a panel is seen by no node. Nodes and weights: Abramowitz &
// Stegun, Handbook of Mathematical Functions, table 25.4.

#include "engine/geometry/curve.h"

namespace pinwright {

/// Length in mm; relative error below kLengthRelative, cusps included. Points that are not finite
/// give NaN or infinity; an empty curve is 0 mm long.
double length(const Cubic& c);
/// From t0 to t1 (each clamped to [0, 1]); negative when t1 < t0.
double length(const Cubic& c, double t0, double t1);
double length(const Curve& c);
/// Length from the start of c to the place.
double length_to(const Curve& c, CurvePlace at);
/// The place s mm from the start; s is clamped to [0, length(c)]. |length_to(place) - s| stays
/// within kLengthRelative * length(c). Newton steps kept inside a bisection bracket.
/// At a joint the end of the segment before it is given. NaN counts as 0.
CurvePlace place_at(const Curve& c, double s);
Vec2 point_at(const Curve& c, double s);
Vec2 tangent_at(const Curve& c, double s);

}  // namespace pinwright
