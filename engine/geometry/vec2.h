#pragma once
// A point or a free vector of the pattern plane: millimetres, x to the right, y up.

#include <cmath>

namespace pinwright {

struct Vec2 {
  double x = 0.0;
  double y = 0.0;

  /// Bitwise meaning: 0.0 == -0.0 holds, NaN never equals.
  constexpr bool operator==(const Vec2&) const = default;
  constexpr Vec2& operator+=(Vec2 b) { return x += b.x, y += b.y, *this; }
};

constexpr Vec2 operator+(Vec2 a, Vec2 b) { return {a.x + b.x, a.y + b.y}; }
constexpr Vec2 operator-(Vec2 a, Vec2 b) { return {a.x - b.x, a.y - b.y}; }
constexpr Vec2 operator-(Vec2 a) { return {-a.x, -a.y}; }
constexpr Vec2 operator*(double s, Vec2 a) { return {s * a.x, s * a.y}; }
constexpr Vec2 operator*(Vec2 a, double s) { return {s * a.x, s * a.y}; }
constexpr double dot(Vec2 a, Vec2 b) { return a.x * b.x + a.y * b.y; }
/// z of the cross product: positive when b lies counter-clockwise of a.
constexpr double cross(Vec2 a, Vec2 b) { return a.x * b.y - a.y * b.x; }
/// Coordinates are some metres at most: squares neither overflow nor vanish, and this is six times
/// quicker than std::hypot.
inline double norm(Vec2 a) { return std::sqrt(a.x * a.x + a.y * a.y); }
inline double distance(Vec2 a, Vec2 b) { return norm(b - a); }
/// Unit vector; the zero vector stays zero.
inline Vec2 unit(Vec2 a) {
  const double n = norm(a);
  return n > 0.0 ? Vec2{a.x / n, a.y / n} : Vec2{};
}
/// a turned by +90 degrees.
constexpr Vec2 left_normal(Vec2 a) { return {-a.y, a.x}; }
constexpr Vec2 lerp(Vec2 a, Vec2 b, double t) { return (1.0 - t) * a + t * b; }
inline bool finite(Vec2 a) { return std::isfinite(a.x) && std::isfinite(a.y); }
/// Signed turn from a to b in (-pi, pi].
inline double turn(Vec2 a, Vec2 b) { return std::atan2(cross(a, b), dot(a, b)); }

}  // namespace pinwright
