#pragma once
// Fairing: the smoothest curve through given points with given end tangents.

#include <vector>

#include "engine/base/result.h"
#include "engine/geometry/curve.h"

namespace pinwright {

/// Interpolates points (at least two, no two neighbours coincident) with the clamped C2 cubic
/// spline on centripetal-to-chord parameters: of all interpolants with these end tangents it has
/// the least integral of |second derivative|^2 (Holladay's theorem; de Boor, A Practical Guide to
/// Splines, ch. IV-V). Tangent directions need not be unit; their lengths are chosen by the method
/// so that a quarter circle's points give a quarter circle within 1e-3 of its radius.
/// Errors: "fairing-points" (too few, coincident or not finite), "fairing-tangent" (zero).
Result<Curve> fair_through(const std::vector<Vec2>& points, Vec2 start_tangent, Vec2 end_tangent);

/// The curve of `segments` cubic segments that comes nearest (least squares at equal arc-length
/// steps) to the target curve while keeping its end points bit for bit and its end tangent
/// directions; inner joints are tangent-continuous. Never has more curvature sign changes than a
/// convex target does (0). Errors as above.
Result<Curve> refit(const Curve& target, std::size_t segments, Vec2 start_tangent,
                    Vec2 end_tangent);

/// How often the sign of the curvature changes along c. Parts with |curvature| < 1e-7 / mm count
/// as straight and do not change the sign; a corner between segments (over 1 degree) counts as
/// one change when the turn at the corner opposes the sign before it.
int inflections(const Curve& c);

}  // namespace pinwright
