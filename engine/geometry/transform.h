#pragma once
// Rigid and affine maps of points, cubics and curves.

#include "engine/geometry/curve.h"

namespace pinwright {

/// p -> (a b; c d) p + move
struct Affine {
  double a = 1, b = 0, c = 0, d = 1;
  Vec2 move;
};

Affine translation(Vec2 by);
/// Counter-clockwise by angle (radians) about a point, which itself maps to itself.
Affine rotation_about(Vec2 pivot, double angle);
/// Mirror at the vertical line x = at.
Affine mirror_x(double at);
/// First `first`, then `second`.
Affine then(const Affine& first, const Affine& second);
Vec2 apply(const Affine& m, Vec2 p);
Cubic apply(const Affine& m, const Cubic& c);
Curve apply(const Affine& m, const Curve& c);

}  // namespace pinwright
