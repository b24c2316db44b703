#include "api/drawing/clearance.h"

#include <algorithm>
#include <array>

#include "engine/base/units.h"

namespace pinwright::api {
namespace {

/// A point in the box's own frame: centre at 0, sides along the axes.
Vec2 local(const TextBox& box, Vec2 p) {
  const double angle = radians(box.angle);
  const double c = std::cos(angle);
  const double s = std::sin(angle);
  const Vec2 d = p - box.centre;
  return {c * d.x + s * d.y, -s * d.x + c * d.y};
}

/// Whether the segment a b enters [-w, w] x [-h, h] (clipping after Liang and Barsky, 1984).
bool enters(Vec2 a, Vec2 b, double w, double h) {
  double from = 0.0;
  double to = 1.0;
  const Vec2 d = b - a;
  const std::array<std::array<double, 2>, 4> sides = {
      {{-d.x, a.x + w}, {d.x, w - a.x}, {-d.y, a.y + h}, {d.y, h - a.y}}};
  for (const auto& [slope, room] : sides) {
    if (slope == 0.0) {
      if (room < 0.0) return false;
    } else if (slope < 0.0) {
      from = std::max(from, room / slope);
    } else {
      to = std::min(to, room / slope);
    }
  }
  return from <= to;
}

std::array<Vec2, 4> corners(const TextBox& box) {
  const double angle = radians(box.angle);
  const Vec2 along = (0.5 * box.width) * Vec2{std::cos(angle), std::sin(angle)};
  const Vec2 up = (0.5 * box.height) * Vec2{-std::sin(angle), std::cos(angle)};
  return {box.centre + along + up, box.centre - along + up, box.centre - along - up,
          box.centre + along - up};
}

bool meets_line(const TextBox& box, Vec2 a, Vec2 b, double apart) {
  const double reach = 0.5 * (box.width + box.height) + apart;
  if (std::min(a.x, b.x) > box.centre.x + reach || std::max(a.x, b.x) < box.centre.x - reach ||
      std::min(a.y, b.y) > box.centre.y + reach || std::max(a.y, b.y) < box.centre.y - reach) {
    return false;
  }
  return enters(local(box, a), local(box, b), 0.5 * box.width + apart, 0.5 * box.height + apart);
}

bool meets_box(const TextBox& box, const TextBox& other, double apart) {
  const auto c = corners(other);
  for (std::size_t i = 0; i < 4; ++i) {
    if (meets_line(box, c[i], c[(i + 1) % 4], apart)) return true;
  }
  const Vec2 middle = local(other, box.centre);  // box wholly inside the other
  return std::abs(middle.x) <= 0.5 * other.width && std::abs(middle.y) <= 0.5 * other.height;
}

}  // namespace

void Clearance::add_line(Vec2 a, Vec2 b) { lines_.push_back({a, b}); }

void Clearance::add_line(const std::vector<Vec2>& points, bool closed) {
  for (std::size_t i = 1; i < points.size(); ++i) add_line(points[i - 1], points[i]);
  if (closed && points.size() > 2) add_line(points.back(), points.front());
}

void Clearance::add_box(const TextBox& box) { boxes_.push_back(box); }

bool Clearance::is_free(const TextBox& box, double apart) const {
  return std::none_of(boxes_.begin(), boxes_.end(),
                      [&](const TextBox& b) { return meets_box(box, b, apart); }) &&
         std::none_of(lines_.begin(), lines_.end(),
                      [&](const Segment& s) { return meets_line(box, s.a, s.b, apart); });
}

int Clearance::conflicts(const TextBox& box, double apart) const {
  int count = 0;
  for (const TextBox& b : boxes_) count += meets_box(box, b, apart) ? 10 : 0;
  for (const Segment& s : lines_) count += meets_line(box, s.a, s.b, apart) ? 1 : 0;
  return count;
}

bool inside(const std::vector<Vec2>& ring, Vec2 p) {
  bool in = false;
  for (std::size_t i = 0, j = ring.size() - 1; i < ring.size(); j = i++) {
    const Vec2 a = ring[i];
    const Vec2 b = ring[j];
    if ((a.y > p.y) != (b.y > p.y) && p.x < (b.x - a.x) * (p.y - a.y) / (b.y - a.y) + a.x) {
      in = !in;
    }
  }
  return in;
}

}  // namespace pinwright::api
