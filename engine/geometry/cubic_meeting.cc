#include "engine/geometry/cubic_meeting.h"

#include <algorithm>
#include <cmath>
#include <numbers>

#include "engine/geometry/arc_length.h"
#include "engine/geometry/nearest.h"
#include "engine/geometry/tolerance.h"

namespace pinwright {
namespace {

constexpr int kMostPairs = 100000;
/// An arc this straight is compared as a line.
constexpr double kStraightMm = 0.1 * kCoincidentMm;
/// Parameter stretches are not halved below this.
constexpr double kShortest = 1e-12;
/// Newton's method has found the crossing.
constexpr double kFoundMm = 1e-10;

struct Arc {
  Cubic c;
  double t0 = 0.0, t1 = 1.0;
  Vec2 low, high;        // box of the control points
  double off_low = 0.0;  // control points' distances from the chord line, left positive
  double off_high = 0.0;
  Vec2 along;               // unit chord
  bool cone_known = false;  // directions stay within [cone_low, cone_high] of the chord
  double cone_low = 0.0, cone_high = 0.0;
  double reach = 0.0;  // size of the box

  Arc(const Cubic& q, double from, double to) : c(q), t0(from), t1(to), low(q.p[0]), high(q.p[0]) {
    for (const Vec2& p : q.p) {
      low = {std::min(low.x, p.x), std::min(low.y, p.y)};
      high = {std::max(high.x, p.x), std::max(high.y, p.y)};
    }
    reach = std::max(high.x - low.x, high.y - low.y);
    along = unit(q.p[3] - q.p[0]);
    for (std::size_t i = 1; i < 4; ++i) {
      const double off = cross(along, q.p[i] - q.p[0]);
      off_low = std::min(off_low, off), off_high = std::max(off_high, off);
      const Vec2 step = q.p[i] - q.p[i - 1];
      if (step == Vec2{}) continue;
      const double angle = turn(along, step);
      cone_low = std::min(cone_low, angle), cone_high = std::max(cone_high, angle);
    }
    cone_known = along != Vec2{} && cone_high - cone_low < 0.5 * std::numbers::pi;
  }
  bool tiny() const { return reach <= kStraightMm || t1 - t0 <= kShortest; }
  bool is_straight() const { return tiny() || (cone_known && off_high - off_low <= kStraightMm); }
};

bool apart(const Arc& a, const Arc& b) {
  // written so that NaN counts as apart
  return !(a.low.x <= b.high.x + kCoincidentMm && b.low.x <= a.high.x + kCoincidentMm &&
           a.low.y <= b.high.y + kCoincidentMm && b.low.y <= a.high.y + kCoincidentMm);
}

/// True when b lies wholly on one side of a's fat line.
bool beside(const Arc& a, const Arc& b) {
  if (a.along == Vec2{}) return false;
  double low = 1e300, high = -1e300;
  for (const Vec2& p : b.c.p) {
    const double off = cross(a.along, p - a.c.p[0]);
    low = std::min(low, off), high = std::max(high, off);
  }
  return low > a.off_high + kCoincidentMm || high < a.off_low - kCoincidentMm;
}

/// Directions of a and of b never agree (as lines without arrow): at most one crossing.
bool cones_disjoint(const Arc& a, const Arc& b) {
  if (!a.cone_known || !b.cone_known) return false;
  const double between = turn(a.along, b.along);
  for (int k = -2; k <= 2; ++k) {
    const double shift = between + k * std::numbers::pi;
    if (shift + b.cone_low <= a.cone_high + 1e-9 && shift + b.cone_high >= a.cone_low - 1e-9) {
      return false;
    }
  }
  return true;
}

/// Newton's method for a(u) = b(v), both kept in [0, 1].
bool newton(const Cubic& a, const Cubic& b, double& u, double& v) {
  for (int i = 0; i < 24; ++i) {
    const Vec2 miss = point(b, v) - point(a, u);
    if (norm(miss) <= kFoundMm) return true;
    const Vec2 da = derivative(a, u), db = derivative(b, v);
    const double det = cross(da, db);
    if (!(std::abs(det) > 1e-14 * norm(da) * norm(db))) return false;
    const double nu = std::clamp(u + cross(miss, db) / det, 0.0, 1.0);
    const double nv = std::clamp(v + cross(miss, da) / det, 0.0, 1.0);
    if (nu == u && nv == v) return false;
    u = nu, v = nv;
  }
  return norm(point(b, v) - point(a, u)) <= kFoundMm;
}

/// The nearest places of two straight arcs: from every end to the other arc, and the crossing.
Meeting closest(const Arc& a, const Arc& b) {
  double u = 0.5, v = 0.5;
  double gap = 1e300;
  const auto offer = [&](double uu, double vv, double d) {
    if (d < gap) u = uu, v = vv, gap = d;
  };
  double nu = 0.5, nv = 0.5;
  if (newton(a.c, b.c, nu, nv)) offer(nu, nv, distance(point(a.c, nu), point(b.c, nv)));
  if (gap > kFoundMm) {
    const Curve ca{{a.c.p.begin(), a.c.p.end()}}, cb{{b.c.p.begin(), b.c.p.end()}};
    for (const double end : {0.0, 1.0}) {
      const Nearest on_b = nearest(cb, point(a.c, end));
      offer(end, on_b.at.t, on_b.distance);
      const Nearest on_a = nearest(ca, point(b.c, end));
      offer(on_a.at.t, end, on_a.distance);
    }
  }
  return {a.t0 + u * (a.t1 - a.t0), b.t0 + v * (b.t1 - b.t0), gap, false, a.t0, a.t1, b.t0, b.t1};
}

/// An end that Newton's method reached but for rounding.
double snapped(double t) { return t < kShortest ? 0.0 : t > 1.0 - kShortest ? 1.0 : t; }

bool finite(const Cubic& c) {
  return std::all_of(c.p.begin(), c.p.end(), [](Vec2 p) { return finite(p); });
}

}  // namespace

std::vector<Meeting> meetings(const Cubic& a, const Cubic& b) {
  std::vector<Meeting> found;
  if (!finite(a) || !finite(b)) return found;
  std::vector<std::pair<Arc, Arc>> open{{Arc(a, 0.0, 1.0), Arc(b, 0.0, 1.0)}};
  int looked_at = 0;
  while (!open.empty()) {
    const auto [x, y] = open.back();
    open.pop_back();
    if (apart(x, y) || beside(x, y) || beside(y, x)) continue;
    const bool crossing_once = cones_disjoint(x, y);
    if (crossing_once) {
      double u = 0.5, v = 0.5;
      if (newton(x.c, y.c, u, v)) {
        found.push_back({x.t0 + u * (x.t1 - x.t0), y.t0 + v * (y.t1 - y.t0),
                         distance(point(x.c, u), point(y.c, v)), false, 0, 0, 0, 0});
        continue;
      }
    }
    const bool last = ++looked_at >= kMostPairs;
    if (last || (x.is_straight() && y.is_straight())) {
      Meeting m = closest(x, y);
      m.touching = !crossing_once || m.gap > kFoundMm;
      if (m.gap <= kCoincidentMm) found.push_back(m);
      continue;
    }
    const bool halve_x = !x.is_straight() && (y.is_straight() || x.reach >= y.reach);
    const Arc& longer = halve_x ? x : y;
    const auto [left, right] = split(longer.c, 0.5);
    const double mid = 0.5 * (longer.t0 + longer.t1);
    const Arc first(left, longer.t0, mid), second(right, mid, longer.t1);
    if (halve_x) {
      open.emplace_back(second, y), open.emplace_back(first, y);
    } else {
      open.emplace_back(x, second), open.emplace_back(x, first);
    }
  }
  for (Meeting& m : found) m.t = snapped(m.t), m.s = snapped(m.s);
  return found;
}

std::optional<Shared> shared_stretch(const Cubic& a, const Cubic& b) {
  if (!finite(a) || !finite(b) || apart(Arc(a, 0, 1), Arc(b, 0, 1))) return std::nullopt;
  const Curve ca{{a.p.begin(), a.p.end()}}, cb{{b.p.begin(), b.p.end()}};
  std::vector<std::pair<double, double>> ends;
  for (const double end : {0.0, 1.0}) {
    const Nearest on_b = nearest(cb, point(a, end));
    if (on_b.distance <= kCoincidentMm) ends.emplace_back(end, on_b.at.t);
    const Nearest on_a = nearest(ca, point(b, end));
    if (on_a.distance <= kCoincidentMm) ends.emplace_back(on_a.at.t, end);
  }
  for (auto& [t, s] : ends) t = snapped(t), s = snapped(s);
  std::sort(ends.begin(), ends.end());
  std::optional<Shared> stretch;
  for (std::size_t i = 1; i < ends.size(); ++i) {
    const auto [t0, s0] = ends[i - 1];
    const auto [t1, s1] = ends[i];
    if (length(a, t0, t1) < 1e-4) continue;
    bool along = true;
    for (int k = 1; k < 8 && along; ++k) {
      along = nearest(cb, point(a, t0 + (t1 - t0) * k / 8.0)).distance <= kCoincidentMm;
    }
    if (!along) continue;
    if (stretch) {
      stretch->t1 = t1, stretch->s1 = s1;
    } else {
      stretch = Shared{t0, t1, s0, s1};
    }
  }
  return stretch;
}

}  // namespace pinwright
