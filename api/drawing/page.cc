#include "api/drawing/page.h"

#include <algorithm>
#include <cmath>

#include "engine/base/units.h"

namespace pinwright::api {
namespace {

constexpr double kFarMm = 60.0;

}  // namespace

Laid laid(const Piece& piece) {
  Laid out;
  out.piece = &piece;
  out.caps = dart_caps(piece);
  auto cutting = cutting_line(piece, out.caps);
  if (cutting.ok()) out.cutting = std::move(cutting).value();
  return out;
}

void set_frame(Laid& piece, const Frame& frame) {
  piece.frame = frame;
  piece.outline.clear();
  for (const Edge& edge : piece.piece->edges) {
    const auto points = flatten(edge.curve, kClearanceFlatnessMm);
    for (std::size_t i = 0; i + 1 < points.size(); ++i) piece.outline.push_back(frame(points[i]));
  }
}

Box extent(const Laid& piece) {
  Box box{{1e9, 1e9}, {-1e9, -1e9}};
  const auto take = [&](Vec2 p) {
    box.low = {std::min(box.low.x, p.x), std::min(box.low.y, p.y)};
    box.high = {std::max(box.high.x, p.x), std::max(box.high.y, p.y)};
  };
  for (const Edge& edge : piece.piece->edges) {
    const Box b = bounds(edge.curve);
    take(b.low);
    take(b.high);
  }
  for (const Vec2 p : piece.cutting.points) take(p);
  return box;
}

Vec2 outward(const Curve& edge, CurvePlace at) { return -left_normal(tangent(edge, at)); }

double reach_of_cut(const CuttingLine& cutting, Vec2 from, Vec2 direction, double otherwise) {
  const Vec2 d = unit(direction);
  double best = kFarMm;
  const std::size_t n = cutting.points.size();
  for (std::size_t i = 0; i < n; ++i) {
    const Vec2 a = cutting.points[i];
    const Vec2 ab = cutting.points[(i + 1) % n] - a;
    const double across = cross(d, ab);
    if (across == 0.0) continue;
    const double along_ray = cross(a - from, ab) / across;
    const double along_cut = cross(a - from, d) / across;
    if (along_ray > 0.05 && along_cut >= 0.0 && along_cut <= 1.0) best = std::min(best, along_ray);
  }
  return best < kFarMm ? best : otherwise;
}

double reading_angle(Vec2 page_direction) {
  double angle = degrees(std::atan2(page_direction.y, page_direction.x));
  if (angle > 90.0) angle -= 180.0;
  if (angle <= -90.0) angle += 180.0;
  // all but upright: read from the right
  if (angle > 89.5) angle = -90.0;
  return angle;
}

TextBox box_for(std::string_view words, double size, Vec2 centre, double angle) {
  return {centre, text_width(words, size), size, angle};
}

void settle(Page& page) {
  for (const auto& wordings : page.wishes) {
    bool written = false;
    for (const Wish& wish : wordings) {
      for (const TextBox& box : wish.places) {
        if (!page.taken.is_free(box, wish.apart)) continue;
        write(page, box, wish.css_class, wish.size, wish.words);
        written = true;
        break;
      }
      if (written) break;
    }
  }
  page.wishes.clear();
}

void write(Page& page, const TextBox& box, std::string_view css_class, double size,
           std::string_view words) {
  page.svg.text(css_class, box.centre, size, words, Anchor::middle, box.angle);
  page.taken.add_box(box);
}

}  // namespace pinwright::api
