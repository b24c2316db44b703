#include "own_checks.h"

#include <geos_c.h>

#include <cmath>
#include <map>
#include <numbers>

#include "engine/geometry/fairing.h"

namespace pinwright {
namespace {

constexpr double kSeam = 0.1;    // mm
constexpr double kHandle = 0.5;  // mm; with a shorter one the direction at the end cannot be seen
constexpr double kDegree = std::numbers::pi / 180.0;

Vec2 bezier(const Cubic& c, double t) {
  const double u = 1.0 - t;
  return u * u * u * c.p[0] + 3.0 * u * u * t * c.p[1] + 3.0 * u * t * t * c.p[2] +
         t * t * t * c.p[3];
}

std::vector<Vec2> sampled(const Curve& curve, int chords) {
  std::vector<Vec2> points{curve.points.front()};
  for (std::size_t s = 0; s < curve.segments(); ++s)
    for (int k = 1; k <= chords; ++k)
      points.push_back(bezier(curve.segment(s), static_cast<double>(k) / chords));
  return points;
}

std::string said(double value) {
  char text[48];
  std::snprintf(text, sizeof text, "%.4f", value);
  return text;
}

// Direction in which an edge leaves its first point, from the first handle that differs from it.
Vec2 leaving(const std::vector<Vec2>& points) {
  for (const Vec2 p : points)
    if (std::hypot(p.x - points.front().x, p.y - points.front().y) > 1e-9)
      return p - points.front();
  return {};
}

double interior_angle(const Piece& piece, std::size_t before, std::size_t after) {
  const Vec2 out = leaving(piece.edges[after].curve.points);
  const std::vector<Vec2>& points = piece.edges[before].curve.points;
  const Vec2 back = leaving(std::vector<Vec2>(points.rbegin(), points.rend()));
  double angle = std::atan2(back.y, back.x) - std::atan2(out.y, out.x);
  while (angle < 0.0) angle += 2.0 * std::numbers::pi;
  while (angle >= 2.0 * std::numbers::pi) angle -= 2.0 * std::numbers::pi;
  return angle;
}

class Geos {
 public:
  Geos() : handle_(GEOS_init_r()) {}
  ~Geos() { GEOS_finish_r(handle_); }
  Geos(const Geos&) = delete;
  Geos& operator=(const Geos&) = delete;

  bool simple_ring(const std::vector<Vec2>& ring) const {
    GEOSCoordSequence* places =
        GEOSCoordSeq_create_r(handle_, static_cast<unsigned>(ring.size()), 2);
    for (unsigned i = 0; i < ring.size(); ++i)
      GEOSCoordSeq_setXY_r(handle_, places, i, ring[i].x, ring[i].y);
    GEOSGeometry* shell = GEOSGeom_createLinearRing_r(handle_, places);
    if (shell == nullptr) return false;
    GEOSGeometry* polygon = GEOSGeom_createPolygon_r(handle_, shell, nullptr, 0);
    const bool valid = polygon != nullptr && GEOSisValid_r(handle_, polygon) == 1;
    GEOSGeom_destroy_r(handle_, polygon);
    return valid;
  }

 private:
  GEOSContextHandle_t handle_;
};

double area_of(const std::vector<Vec2>& ring) {
  double twice = 0.0;
  for (std::size_t i = 0; i + 1 < ring.size(); ++i)
    twice += ring[i].x * ring[i + 1].y - ring[i].y * ring[i + 1].x;
  return 0.5 * twice;
}

void ring_faults(const Piece& piece, Faults& faults) {
  std::vector<Vec2> ring;
  for (std::size_t i = 0; i < piece.edges.size(); ++i) {
    const Edge& e = piece.edges[i];
    const std::string at = piece.id + "." + e.id;
    for (const Vec2 p : e.curve.points)
      if (!std::isfinite(p.x) || !std::isfinite(p.y)) return faults.push_back(at + " not finite");
    const Vec2 next = piece.edges[(i + 1) % piece.edges.size()].curve.points.front();
    if (!(e.curve.points.back() == next)) faults.push_back(at + " does not meet the next edge");
    const std::vector<Vec2> points = sampled(e.curve, e.straight ? 1 : 12);
    ring.insert(ring.end(), points.begin(), points.end() - 1);
    for (const Vec2 p : points)
      if (piece.fold && !(p.x >= -1e-6)) return faults.push_back(at + " lies beyond the fold");
    if (chord_length(e.curve) > 2.0 * distance(e.curve.start(), e.curve.end()))
      faults.push_back(at + " bulges");
    const std::vector<Vec2>& control = e.curve.points;
    if (!e.straight && std::min(distance(control[0], control[1]),
                                distance(control.back(), control[control.size() - 2])) <
                           std::min(kHandle, 0.1 * distance(e.curve.start(), e.curve.end())))
      faults.push_back(at + " bends at once at its end");
    if (!e.straight) continue;
    const Vec2 a = e.curve.points.front();
    const Vec2 b = e.curve.points.back();
    for (const Vec2 p : e.curve.points) {
      const double off = std::abs(cross(b - a, p - a)) / std::hypot(b.x - a.x, b.y - a.y);
      if (!(off < 1e-5)) faults.push_back(at + " is not straight");
    }
  }
  ring.push_back(ring.front());
  if (!(area_of(ring) > 0.0)) faults.push_back(piece.id + " runs clockwise");
  static const Geos geos;
  if (!geos.simple_ring(ring)) faults.push_back(piece.id + " crosses itself");
}

// Lengths of all edges, each walked once.
class Walk {
 public:
  explicit Walk(const Block& block) : block_(block) {}

  double edge(const std::string& piece, const std::string& edge) {
    const auto [at, fresh] = lengths_.try_emplace({piece, edge}, 0.0);
    if (fresh) at->second = chord_length(find_edge(*find_piece(block_, piece), edge)->curve);
    return at->second;
  }
  double run(const std::vector<RunPart>& run) {
    double sum = 0.0;
    for (const RunPart& part : run) sum += edge(part.piece, part.edge);
    return sum;
  }
  // To a notch; to the end when the id is empty. NaN when the run has no such notch.
  double up_to(const std::vector<RunPart>& run, const std::string& notch) {
    double walked = 0.0;
    for (const RunPart& part : run) {
      const double length = edge(part.piece, part.edge);
      for (const Notch& n : find_piece(block_, part.piece)->notches)
        if (n.id == notch && n.edge == part.edge)
          return walked + (part.reversed ? length - n.at_mm : n.at_mm);
      walked += length;
    }
    return notch.empty() ? walked : std::nan("");
  }

 private:
  const Block& block_;
  std::map<std::pair<std::string, std::string>, double> lengths_;
};

}  // namespace

double chord_length(const Curve& curve) {
  constexpr int kChords = 48;
  const std::vector<Vec2> points = sampled(curve, kChords);
  double fine = 0.0;
  double coarse = 0.0;
  for (std::size_t i = 1; i < points.size(); ++i)
    fine += std::hypot(points[i].x - points[i - 1].x, points[i].y - points[i - 1].y);
  for (std::size_t i = 2; i < points.size(); i += 2)
    coarse += std::hypot(points[i].x - points[i - 2].x, points[i].y - points[i - 2].y);
  return fine + (fine - coarse) / 3.0;
}

void own_outline_faults(const Block& block, Faults& faults) {
  for (const Piece& piece : block.pieces) {
    ring_faults(piece, faults);
    for (const Dart& d : piece.darts) {
      const Edge* in = find_edge(piece, d.leg_in);
      const Edge* out = find_edge(piece, d.leg_out);
      if (in == nullptr || out == nullptr ||
          std::abs(chord_length(in->curve) - chord_length(out->curve)) > 0.01)
        faults.push_back(piece.id + ": legs of " + d.id);
    }
    for (const Notch& n : piece.notches) {
      const Edge* e = find_edge(piece, n.edge);
      if (e == nullptr || !(n.at_mm >= 0.0 && n.at_mm <= chord_length(e->curve) + 1e-3))
        faults.push_back(piece.id + ": notch " + n.id + " is off its edge");
    }
    if (!piece.fold) continue;
    const Edge* fold = find_edge(piece, *piece.fold);
    if (fold == nullptr) {
      faults.push_back(piece.id + ": its fold is gone");
      continue;
    }
    for (const Vec2 p : fold->curve.points)
      if (p.x != 0.0) faults.push_back(piece.id + ": the fold left x = 0");
  }
}

void own_seam_faults(const Block& block, Faults& faults) {
  Walk walk(block);
  for (const Seam& seam : block.seams) {
    double a_before = 0.0;
    double b_before = 0.0;
    double ease = 0.0;
    for (const SeamSection& s : seam.sections) {
      const double a = walk.up_to(seam.a, s.notch_a);
      const double b = walk.up_to(seam.b, s.notch_b);
      ease += s.ease_mm;
      const double off = (a - a_before) - (b - b_before) - s.ease_mm;
      const double in_all = a - b - ease;
      if (!(std::abs(off) <= kSeam) || !(std::abs(in_all) <= kSeam) || !(a >= a_before - 1e-3))
        faults.push_back("seam " + seam.id + " up to '" + s.notch_a + "': off its ease by " +
                         said(off) + " mm, in all by " + said(in_all) + " mm");
      a_before = a;
      b_before = b;
    }
  }
  for (const Binding& binding : block.bindings) {
    const double wanted = binding.ratio * binding.copies * walk.run(binding.opening);
    const Edge* strip = edge_of_role(*find_piece(block, binding.piece), EdgeRole::opening);
    const double off = chord_length(strip->curve) - wanted;
    if (!(std::abs(off) <= kSeam))
      faults.push_back("strip " + binding.id + " off by " + said(off) + " mm");
  }
}

void own_notch_faults(const Block& start, const Block& after, Faults& faults) {
  for (const Piece& was : start.pieces) {
    const Piece* is = find_piece(after, was.id);
    if (is == nullptr) continue;
    for (const Notch& a : was.notches) {
      for (const Notch& b : was.notches) {
        if (a.edge != b.edge || a.at_mm >= b.at_mm) continue;
        const Notch* first = find_notch(*is, a.id);
        const Notch* second = find_notch(*is, b.id);
        if (first == nullptr || second == nullptr || first->edge != second->edge) continue;
        if (!(first->at_mm + 0.5 <= second->at_mm))
          faults.push_back(was.id + ": the notch " + b.id + " comes before " + a.id);
      }
    }
  }
}

void own_join_faults(const Block& block, Faults& faults) {
  for (const Join& join : block.joins) {
    double sum = -join.target_rad;
    for (const CornerRef& c : join.corners) {
      const Piece& piece = *find_piece(block, c.piece);
      sum += interior_angle(piece, edge_index(piece, c.before), edge_index(piece, c.after));
    }
    // The angle before the first and behind the second meet at any whole turn.
    const double off = std::remainder(sum, 2.0 * std::numbers::pi) / kDegree;
    if (!(std::abs(off) <= 1.0)) faults.push_back("join " + join.id + " bends by " + said(off));
  }
}

void own_lining_faults(const Block& block, Faults& faults) {
  for (const Lining& l : block.linings) {
    const Piece& lining = *find_piece(block, l.piece);
    const Piece& shell = *find_piece(block, l.shell);
    for (const Edge& e : shell.edges) {
      const Edge* follows = find_edge(lining, e.id);
      if (follows == nullptr || !(follows->curve == e.curve))
        faults.push_back(lining.id + "." + e.id + " does not follow its shell");
    }
    if (lining.edges.size() != shell.edges.size())
      faults.push_back(lining.id + " has other edges than its shell");
  }
}

int own_wiggles(const Curve& curve) {
  constexpr double kSwing = 0.1 * kDegree;
  const std::vector<Vec2> points = sampled(curve, 24);
  double direction = 0.0;  // of the chord, from the first one on
  double turning = 0.0;    // +1 or -1 once it has turned by more than the swing
  double extreme = 0.0;
  double low = 0.0;
  double high = 0.0;
  int changes = 0;
  for (std::size_t i = 2; i < points.size(); ++i) {
    const Vec2 a = points[i - 1] - points[i - 2];
    const Vec2 b = points[i] - points[i - 1];
    if (std::hypot(a.x, a.y) < 1e-6 || std::hypot(b.x, b.y) < 1e-6) continue;
    direction += std::atan2(cross(a, b), dot(a, b));
    if (turning == 0.0) {
      low = std::min(low, direction);
      high = std::max(high, direction);
      if (direction - low > kSwing) turning = 1.0, extreme = direction;
      if (high - direction > kSwing) turning = -1.0, extreme = direction;
    } else if (turning * (direction - extreme) > 0.0) {
      extreme = direction;
    } else if (turning * (extreme - direction) > kSwing) {
      turning = -turning;
      extreme = direction;
      ++changes;
    }
  }
  return changes;
}

static bool to_centre(EdgeRole role) {
  return role == EdgeRole::neckline || role == EdgeRole::hem || role == EdgeRole::waist;
}

// From the first direction to the last one, radians; a hollow edge turns clockwise.
static double turned(const Curve& curve) {
  const std::vector<Vec2> points = sampled(curve, 24);
  double sum = 0.0;
  for (std::size_t i = 2; i < points.size(); ++i) {
    const Vec2 a = points[i - 1] - points[i - 2];
    const Vec2 b = points[i] - points[i - 1];
    sum += std::atan2(cross(a, b), dot(a, b));
  }
  return sum;
}

void own_wiggle_faults(const Block& start, const Block& after, int more, Faults& faults) {
  const auto of_role = [](const Piece& piece, EdgeRole role, int (*count)(const Curve&)) {
    int sum = 0;
    for (const Edge& e : piece.edges)
      if (e.role == role) sum += count(e.curve);
    return sum;
  };
  for (const Piece& is : after.pieces) {
    const Piece* was = find_piece(start, is.id);
    if (was == nullptr) continue;
    for (const Edge& e : is.edges) {
      const Edge* old = find_edge(*was, e.id);
      if (old != nullptr && old->curve == e.curve) continue;
      const bool hollow = e.role == EdgeRole::neckline || e.role == EdgeRole::armhole;
      if (old != nullptr && hollow && turned(old->curve) < -2.0 * kDegree &&
          turned(e.curve) > -0.5 * kDegree)
        faults.push_back(is.id + "." + e.id + " is no longer hollow");
      for (const auto count : {&own_wiggles, &inflections}) {
        const int now = old != nullptr ? count(e.curve) : of_role(is, e.role, count);
        const int then = old != nullptr ? count(old->curve) : of_role(*was, e.role, count);
        const int lines = old != nullptr ? 1 : of_role(is, e.role, [](const Curve&) { return 1; });
        if (now > then + (to_centre(e.role) ? more * lines : 0))
          faults.push_back(is.id + "." + e.id + " wiggles: " + std::to_string(then) + " -> " +
                           std::to_string(now) +
                           (count == &own_wiggles ? " by the tangent" : " by the curvature"));
      }
    }
  }
}

}  // namespace pinwright
