#pragma once
// One cubic Bézier segment. t runs over [0, 1].
// Formulas: de Casteljau's construction and Bernstein form, as in any text on curves
// (G. Farin, Curves and Surfaces for CAGD, ch. 4-5).

#include <array>
#include <utility>

#include "engine/geometry/vec2.h"

namespace pinwright {

struct Cubic {
  std::array<Vec2, 4> p;
  constexpr bool operator==(const Cubic&) const = default;
};

struct Box {
  Vec2 low;
  Vec2 high;
};

/// The straight segment from a to b with its inner points at exact thirds.
Cubic straight(Vec2 a, Vec2 b);
Vec2 point(const Cubic& c, double t);
/// dB/dt, mm per unit of t.
Vec2 derivative(const Cubic& c, double t);
Vec2 second_derivative(const Cubic& c, double t);
/// Unit tangent. Where the derivative vanishes (coincident control points) the limit direction is
/// taken from the next differing control point; a segment shrunk to a point gives zero.
Vec2 tangent(const Cubic& c, double t);
/// Signed curvature in 1/mm, positive when turning counter-clockwise; 0 where it is undefined.
double curvature(const Cubic& c, double t);
/// The two halves at t; they share the point bit for bit, the outer ends equal c's bit for bit.
std::pair<Cubic, Cubic> split(const Cubic& c, double t);
/// Tight bounding box of the curve (not of its control polygon).
Box bounds(const Cubic& c);

}  // namespace pinwright
