#include "engine/proof/outline.h"

#include <cmath>
#include <cstdio>
#include <set>
#include <string>

#include "engine/base/units.h"
#include "engine/geometry/arc_length.h"
#include "engine/geometry/area.h"
#include "engine/geometry/intersect.h"
#include "engine/geometry/tolerance.h"

namespace pinwright {
namespace {

constexpr double kStraightMm = 1e-6;  // inner points of a straight edge from its thirds
constexpr double kLegsMm = 0.01;      // difference of a dart's legs
constexpr double kLeastEdgeMm = 0.5;
constexpr double kMostCoordinateMm = 5000.0;
constexpr double kMostAllowanceMm = 100.0;

std::string mm(double value) {
  char text[48];
  std::snprintf(text, sizeof text, "%.2f mm", value);
  return text;
}

class Checker {
 public:
  Checker(const Piece& piece, std::string_view place) : piece_(piece), place_(place) {}

  Problems run() {
    ids();
    if (!points()) return std::move(problems_);
    ring();
    straight_edges();
    darts();
    notches();
    fold();
    centre();
    return std::move(problems_);
  }

 private:
  void add(const char* code, const std::string& where, const std::string& what,
           const std::string& mend) {
    problems_.push_back({code, place_ + where, what, mend});
  }
  std::string edge_place(std::size_t i) const { return "/edges/" + std::to_string(i); }
  std::string said(const Edge& e) const { return "the " + e.id + " of the " + piece_.id; }

  template <class Items>
  void ids_of(const Items& items, const char* where) {
    std::set<std::string> seen;
    for (std::size_t i = 0; i < items.size(); ++i) {
      if (!seen.insert(items[i].id).second) {
        add("id-twice", where + std::to_string(i) + "/id",
            "'" + items[i].id + "' stands twice in the " + piece_.id, "give each its own id");
      }
    }
  }

  void ids() {
    ids_of(piece_.edges, "/edges/");
    ids_of(piece_.notches, "/notches/");
    ids_of(piece_.darts, "/darts/");
    ids_of(piece_.landmarks, "/landmarks/");
    ids_of(piece_.lengthen_lines, "/lengthen_lines/");
  }

  // Numbers and counts; false when the rest cannot be looked at.
  bool points() {
    bool sound = true;
    const auto usable = [](Vec2 p) {
      return finite(p) && std::abs(p.x) <= kMostCoordinateMm && std::abs(p.y) <= kMostCoordinateMm;
    };
    if (piece_.edges.size() < 3) {
      add("edge-missing", "/edges", "the " + piece_.id + " has fewer than three edges",
          "an outline needs at least three");
      sound = false;
    }
    for (std::size_t i = 0; i < piece_.edges.size(); ++i) {
      const Edge& e = piece_.edges[i];
      if (e.curve.points.size() < 4 || e.curve.points.size() % 3 != 1) {
        add("curve-points", edge_place(i) + "/points",
            said(e) + " has " + std::to_string(e.curve.points.size()) + " points",
            "a chain of cubic curves has 4, 7, 10, ... points: ends and two handles between");
        sound = false;
        continue;
      }
      for (std::size_t k = 0; k < e.curve.points.size(); ++k) {
        if (usable(e.curve.points[k])) continue;
        add("not-finite", edge_place(i) + "/points/" + std::to_string(k),
            said(e) + " has a point that is no place on a pattern",
            "give x and y in millimetres, each within 5000 of the origin");
        sound = false;
      }
      const double a = e.allowance.width_mm;
      if (!(a >= 0.0 && a <= kMostAllowanceMm)) {
        add("allowance-range", edge_place(i) + "/allowance",
            "the seam allowance of " + said(e) + " is out of range", "give 0 to 100 mm");
      }
    }
    for (std::size_t i = 0; i < piece_.landmarks.size(); ++i) {
      if (usable(piece_.landmarks[i].at)) continue;
      add("not-finite", "/landmarks/" + std::to_string(i),
          "the mark '" + piece_.landmarks[i].id + "' is no place on a pattern",
          "give x and y in millimetres");
    }
    for (std::size_t i = 0; i < piece_.lengthen_lines.size(); ++i) {
      const Line& l = piece_.lengthen_lines[i];
      if (usable(l.from) && usable(l.to)) continue;
      add("not-finite", "/lengthen_lines/" + std::to_string(i),
          "the line '" + l.id + "' is no place on a pattern", "give x and y in millimetres");
    }
    const Line& grain = piece_.grainline;
    if (!usable(grain.from) || !usable(grain.to) || distance(grain.from, grain.to) < 10.0) {
      add("grainline-missing", "/grainline",
          "the " + piece_.id + " has no grainline of at least 10 mm", "draw the grainline");
    }
    return sound;
  }

  void ring() {
    bool closed = true;
    const std::size_t n = piece_.edges.size();
    for (std::size_t i = 0; i < n; ++i) {
      const Edge& e = piece_.edges[i];
      const Edge& next = piece_.edges[(i + 1) % n];
      if (length(e.curve) < kLeastEdgeMm) {
        add("edge-too-short", edge_place(i), said(e) + " is shorter than " + mm(kLeastEdgeMm),
            "draw it, or leave the edge out");
      }
      if (!(e.curve.end() == next.curve.start())) {
        add("outline-open", edge_place(i),
            said(e) + " ends " + mm(distance(e.curve.end(), next.curve.start())) +
                " from where the " + next.id + " starts",
            "let the two share the very same point");
        closed = false;
      }
      for (std::size_t j = 3; j + 3 < e.curve.points.size(); j += 3) {
        const double bend = turn(e.curve.points[j] - e.curve.points[j - 1],
                                 e.curve.points[j + 1] - e.curve.points[j]);
        if (std::abs(degrees(bend)) > kJoinDegrees) {
          add("edge-kinked", edge_place(i) + "/points/" + std::to_string(j),
              said(e) + " has a corner in it", "split it into two edges there, or smooth it");
        }
      }
    }
    if (!closed) return;
    std::vector<Curve> curves;
    for (const Edge& e : piece_.edges) curves.push_back(e.curve);
    if (signed_area(curves) <= 0.0) {
      add("outline-clockwise", "/edges",
          "the outline of the " + piece_.id + " runs clockwise or encloses nothing",
          "list the edges counter-clockwise");
    }
    Curve whole = curves.front();
    for (std::size_t i = 1; i < n; ++i) whole = joined(whole, curves[i]);
    const std::vector<Crossing> crossings = self_intersections(whole);
    if (!crossings.empty()) {
      const Vec2 at = crossings.front().point;
      add("outline-crosses", "/edges",
          "the outline of the " + piece_.id + " crosses itself at (" + mm(at.x) + ", " + mm(at.y) +
              ")",
          "redraw the edges there");
    }
  }

  void straight_edges() {
    for (std::size_t i = 0; i < piece_.edges.size(); ++i) {
      const Edge& e = piece_.edges[i];
      if (!e.straight) continue;
      const Curve line = straight_curve(e.curve.start(), e.curve.end());
      bool right = e.curve.points.size() == 4;
      for (std::size_t k = 0; right && k < 4; ++k)
        right = distance(line.points[k], e.curve.points[k]) <= kStraightMm;
      if (!right) {
        add("edge-not-straight", edge_place(i), said(e) + " is marked straight and is not",
            "give four points with the inner ones at thirds, or unmark it");
      }
    }
  }

  void darts() {
    for (std::size_t i = 0; i < piece_.darts.size(); ++i) {
      const Dart& d = piece_.darts[i];
      const std::string place = "/darts/" + std::to_string(i);
      const std::size_t in = edge_index(piece_, d.leg_in);
      const std::size_t out = edge_index(piece_, d.leg_out);
      if (in == kNowhere || out == kNowhere || (in + 1) % piece_.edges.size() != out) {
        add("dart-legs", place, "the dart '" + d.id + "' has no two legs that follow each other",
            "name two neighbouring edges of role dart-leg");
        continue;
      }
      const double a = length(piece_.edges[in].curve);
      const double b = length(piece_.edges[out].curve);
      if (std::abs(a - b) > kLegsMm) {
        add("dart-legs", place,
            "the legs of the dart '" + d.id + "' are " + mm(a) + " and " + mm(b),
            "make them equal");
      }
      if (!d.toward.empty() && landmark_index(piece_, d.toward) == kNowhere) {
        add("dart-legs", place + "/toward",
            "the dart '" + d.id + "' points at '" + d.toward + "', which the piece lacks",
            "mark it on the piece");
      }
    }
    for (std::size_t i = 0; i < piece_.edges.size(); ++i) {
      if (piece_.edges[i].role != EdgeRole::dart_leg) continue;
      bool owned = false;
      for (const Dart& d : piece_.darts)
        owned = owned || d.leg_in == piece_.edges[i].id || d.leg_out == piece_.edges[i].id;
      if (!owned)
        add("dart-legs", edge_place(i), said(piece_.edges[i]) + " belongs to no dart",
            "list its dart");
    }
  }

  void notches() {
    for (std::size_t i = 0; i < piece_.notches.size(); ++i) {
      const Notch& n = piece_.notches[i];
      const std::string place = "/notches/" + std::to_string(i);
      const Edge* e = find_edge(piece_, n.edge);
      if (e == nullptr) {
        add("notch-off-edge", place + "/edge",
            "the notch '" + n.id + "' lies on '" + n.edge + "', which the piece lacks",
            "name an edge of the piece");
        continue;
      }
      const double len = length(e->curve);
      if (!(n.at_mm >= 0.0 && n.at_mm <= len)) {
        add("notch-off-edge", place + "/at_mm",
            "the notch '" + n.id + "' is not on the " + n.edge + " (" + mm(len) + " long)",
            "give 0 to the length of the edge");
      }
    }
  }

  void fold() {
    if (!piece_.fold) return;
    const Edge* e = find_edge(piece_, *piece_.fold);
    if (e == nullptr) {
      add("fold-edge", "/fold",
          "the " + piece_.id + " folds on '" + *piece_.fold + "', which it lacks",
          "name an edge of the piece");
      return;
    }
    bool on_axis = e->straight;
    for (const Vec2 p : e->curve.points) on_axis = on_axis && p.x == 0.0;
    if (!on_axis) {
      add("fold-edge", "/fold", "the fold of the " + piece_.id + " is not the straight line x = 0",
          "move the piece so that its fold lies on x = 0");
    }
    for (std::size_t i = 0; i < piece_.edges.size(); ++i) {
      if (bounds(piece_.edges[i].curve).low.x >= -kCoincidentMm) continue;
      add("fold-edge", edge_place(i), said(piece_.edges[i]) + " lies beyond the fold",
          "draw the half piece at x >= 0");
    }
  }

  void centre() {
    if (!piece_.centre_line) return;
    const Curve& c = piece_.centre_line->curve;
    bool on_axis = c.points.size() == 4 && !piece_.fold && piece_.side == Side::both;
    for (const Vec2 p : c.points) on_axis = on_axis && p.x == 0.0 && std::isfinite(p.y);
    if (!on_axis || !(length(c) >= kLeastEdgeMm)) {
      add("centre-line", "/centre_line",
          "the centre line of the " + piece_.id +
              " is not a straight line on x = 0 of a full piece",
          "give the line that was the fold, and neither a fold nor a side");
    }
  }

  const Piece& piece_;
  std::string place_;
  Problems problems_;
};

}  // namespace

Problems outline_problems(const Piece& piece, std::string_view place) {
  return Checker(piece, place).run();
}

}  // namespace pinwright
