#include "engine/alteration/edit.h"

#include <cmath>
#include <cstdio>

#include "engine/alteration/hollow.h"

namespace pinwright {
namespace {

// 0 for the first two control points, 1 for the last two, a smooth passage between.
double passage(std::size_t i, std::size_t count) {
  if (i <= 1) return 0.0;
  if (i + 2 >= count) return 1.0;
  const double u = static_cast<double>(i - 1) / static_cast<double>(count - 3);
  return u * u * (3.0 - 2.0 * u);
}

void carry(Edge& edge, const std::optional<Affine>& start, const std::optional<Affine>& end) {
  std::vector<Vec2>& points = edge.curve.points;
  const auto moved = [](const std::optional<Affine>& m, Vec2 p) { return m ? apply(*m, p) : p; };
  if (edge.role == EdgeRole::neckline && !edge.straight && edge.curve.segments() > 0) {
    const Vec2 a = moved(start, points.front());
    const Vec2 b = moved(end, points.back());
    const Vec2 from = moved(start, points.front() + start_tangent(edge.curve)) - a;
    const Vec2 to = b - moved(end, points.back() - end_tangent(edge.curve));
    if (auto hollow = redraw_hollow(edge.curve, {a, b, from, to, {}, {}, 0.0})) {
      edge.curve = std::move(*hollow);
      return;
    }
  }
  for (std::size_t i = 0; i < points.size(); ++i) {
    const double w = passage(i, points.size());
    const Vec2 p = points[i];
    if (w == 0.0) {
      points[i] = moved(start, p);
    } else if (w == 1.0) {
      points[i] = moved(end, p);
    } else {
      points[i] = lerp(moved(start, p), moved(end, p), w);
    }
  }
  if (edge.straight) edge.curve = straight_curve(points.front(), points.back());
}

bool is_dart_point(const Piece& piece, std::size_t corner) {
  for (const Dart& d : piece.darts)
    if (edge_index(piece, d.leg_in) == corner) return true;
  return false;
}

void true_dart(Piece& piece, const Dart& dart, Vec2 wish) {
  Edge& in = *find_edge(piece, dart.leg_in);
  Edge& out = *find_edge(piece, dart.leg_out);
  const Vec2 a = in.curve.start();
  const Vec2 b = out.curve.end();
  const Vec2 middle = lerp(a, b, 0.5);
  const Vec2 along = left_normal(unit(b - a));
  const Vec2 tip = a == b ? wish : middle + dot(wish - middle, along) * along;
  in.curve = straight_curve(a, tip);
  out.curve = straight_curve(tip, b);
}

}  // namespace

void move_corners(Edit& edit, std::size_t piece_at, const CornerMotions& motions,
                  const std::optional<Affine>& dart_point) {
  Piece& piece = edit.block.pieces[piece_at];
  const Piece& old = edit.before.pieces[piece_at];
  const std::size_t n = piece.edges.size();
  for (std::size_t i = 0; i < n; ++i) {
    const std::size_t before = (i + n - 1) % n;
    if (piece.edges[i].role == EdgeRole::dart_leg) continue;
    if (edit.drawn.contains({piece_at, i})) {
      std::vector<Vec2>& points = piece.edges[i].curve.points;
      if (motions[before]) points.front() = apply(*motions[before], old.edges[i].curve.start());
      if (motions[i]) points.back() = apply(*motions[i], old.edges[i].curve.end());
    } else if (motions[before] || motions[i]) {
      carry(piece.edges[i], motions[before], motions[i]);
    }
  }
  for (const Dart& dart : old.darts) {
    const std::size_t in = edge_index(piece, dart.leg_in);
    const std::size_t out = edge_index(piece, dart.leg_out);
    const std::size_t before = (in + n - 1) % n;
    if (!motions[before] && !motions[out] && !motions[in]) continue;
    Vec2 wish = old.edges[in].curve.end();
    if (motions[in]) {
      wish = apply(*motions[in], wish);
    } else if (dart_point) {
      wish = apply(*dart_point, wish);
    }
    piece.edges[in].curve.points.front() = piece.edges[before].curve.end();
    piece.edges[out].curve.points.back() = piece.edges[(out + 1) % n].curve.start();
    true_dart(piece, dart, wish);
  }
  for (Landmark& mark : piece.landmarks) {
    for (std::size_t i = 0; i < n; ++i) {
      if (mark.at == old.edges[i].curve.end() && !is_dart_point(old, i)) {
        mark.at = piece.edges[i].curve.end();
        break;
      }
    }
  }
}

CornerMotions still(const Piece& piece) { return CornerMotions(piece.edges.size()); }

void set_from_to(const Piece& piece, CornerMotions& motions, std::size_t first, std::size_t last,
                 const Affine& motion) {
  for (std::size_t i = first;; i = next_in(piece, i)) {
    motions[i] = motion;
    if (i == last) break;
  }
}

Problem not_here(const std::string& what, const std::string& mend) {
  return {"operation-not-here", "", what, mend};
}

Problem too_large(const std::string& what, const std::string& mend) {
  return {"amount-too-large", "/amount_mm", what, mend};
}

std::string mm_text(double mm) {
  char text[32];
  const double tenth = std::round(std::abs(mm) * 10.0) / 10.0;
  std::snprintf(text, sizeof text, tenth == std::floor(tenth) ? "%.0f mm" : "%.1f mm", tenth);
  return text;
}

std::string whole_text(const Edit& edit, HalfMm amount) {
  return edit.side == Side::both ? mm_text(amount.whole().mm()) + " in all" : "this side only";
}

}  // namespace pinwright
