#pragma once
// Curves drawn by their ends and the directions at them.

#include "engine/geometry/curve.h"

namespace pinwright::drafting {

/// From a, leaving along ta, to b, arriving along tb (unit vectors). The inner points lie
/// `fullness` of the way from the ends to the point where the two end tangents meet, so that the
/// line turns one way only and has no inflection; 0.5523 gives nearly a quarter of an ellipse, more
/// is fuller in the corner. When the tangents do not meet between the ends the inner points lie a
/// third of the chord along the tangents.
Cubic turned_line(Vec2 a, Vec2 ta, Vec2 b, Vec2 tb, double fullness);
/// The same with the fullness that makes an arc of a circle when the ends allow one: handles of
/// 4/3 tan(turn / 4) of the radius (the usual approximation of an arc by a cubic).
Cubic round_line(Vec2 a, Vec2 ta, Vec2 b, Vec2 tb);

/// Unit vector turned by an angle, counter-clockwise.
Vec2 turned(Vec2 v, double angle);
/// Unit vector at an angle from the x axis.
Vec2 direction(double angle);
/// -90 degrees.
constexpr Vec2 right_normal(Vec2 v) { return {v.y, -v.x}; }

}  // namespace pinwright::drafting
