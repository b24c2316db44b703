#pragma once
// Fairing: the smoothest curve through given points with given end tangents.

#include <vector>

#include "engine/base/result.h"
#include "engine/geometry/curve.h"

namespace pinwright {

/// Interpolates points (at least two, no two neighbours coincident; every one is met bit for bit)
/// with the clamped C2 cubic spline: of all interpolants on the same knots with the same end
/// derivatives it has the least integral of |second derivative|^2 (Holladay's theorem; de Boor, A
/// Practical Guide to Splines, ch. IV-V). One segment between neighbouring points.
/// Knots: a span is as long as its chord, lengthened by 1 / cos^2(turn / 4), turn being the angle
/// that the curve turns within the span; with unit end derivatives a single span is then the usual
/// cubic arc (handles 4/3 tan(turn / 4) of the radius). With inner points the lengths of the end
/// derivatives are chosen near 1 so that the third derivative jumps least. So tangent directions
/// need not be unit, and a quarter circle's points give it within 1e-3 of its radius.
/// Errors: "fairing-points" (too few, coincident or not finite), "fairing-tangent" (zero or not
/// finite).
Result<Curve> fair_through(const std::vector<Vec2>& points, Vec2 start_tangent, Vec2 end_tangent);

/// The curve of `segments` cubic segments that comes nearest (least squares at equal arc-length
/// steps) to the target curve while keeping its end points bit for bit and its end tangent
/// directions; inner joints are tangent-continuous. A target without change of curvature gets a
/// curve without one, as long as the end tangents asked for allow it.
/// Method: Gauss-Newton on the distances from the target's points to the curve, places on the curve
/// found anew in each round (squared distance minimised with its tangential part free; W. Wang,
/// H. Pottmann, Y. Liu, Fitting B-spline curves to point clouds, ACM ToG 2006).
/// Errors: as above for target points and tangents; "fairing-segments" (none, or over 64).
Result<Curve> refit(const Curve& target, std::size_t segments, Vec2 start_tangent,
                    Vec2 end_tangent);

/// How often the sign of the curvature changes along c. Parts with |curvature| < 1e-7 / mm count
/// as straight and do not change the sign; a corner between segments (over 1 degree) counts as
/// one change when the turn at the corner opposes the sign before it (what follows is then compared
/// with the corner's turn). An empty curve or one that is not finite has none.
int inflections(const Curve& c);

}  // namespace pinwright
