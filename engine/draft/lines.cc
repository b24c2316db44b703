#include "engine/draft/lines.h"

#include <cmath>
#include <optional>
#include <utility>

namespace pinwright::drafting {
namespace {

/// Distances from a along ta and from b back along tb to the point where both lines meet.
std::optional<std::pair<double, double>> meeting(Vec2 a, Vec2 ta, Vec2 b, Vec2 tb) {
  const double sine = cross(ta, tb);
  if (std::abs(sine) < 1e-9) return std::nullopt;
  const Vec2 chord = b - a;
  const double from_a = cross(chord, tb) / sine;
  const double from_b = cross(ta, chord) / sine;
  if (!(from_a > 0.0) || !(from_b > 0.0)) return std::nullopt;
  return std::pair(from_a, from_b);
}

}  // namespace

Cubic turned_line(Vec2 a, Vec2 ta, Vec2 b, Vec2 tb, double fullness) {
  if (const auto reach = meeting(a, ta, b, tb)) {
    return {{a, a + fullness * reach->first * ta, b - fullness * reach->second * tb, b}};
  }
  const double third = distance(a, b) / 3.0;
  return {{a, a + third * ta, b - third * tb, b}};
}

Cubic round_line(Vec2 a, Vec2 ta, Vec2 b, Vec2 tb) {
  const double angle = std::abs(turn(ta, tb));
  const double fullness =
      angle < 1e-6 ? 2.0 / 3.0 : 4.0 / 3.0 * std::tan(angle / 4.0) / std::tan(angle / 2.0);
  return turned_line(a, ta, b, tb, fullness);
}

Vec2 turned(Vec2 v, double angle) {
  const double c = std::cos(angle);
  const double s = std::sin(angle);
  return {c * v.x - s * v.y, s * v.x + c * v.y};
}

Vec2 direction(double angle) { return {std::cos(angle), std::sin(angle)}; }

}  // namespace pinwright::drafting
