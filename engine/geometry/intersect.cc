#include "engine/geometry/intersect.h"

#include <algorithm>
#include <cmath>

#include "engine/geometry/arc_length.h"
#include "engine/geometry/cubic_meeting.h"
#include "engine/geometry/tolerance.h"

namespace pinwright {
namespace {

/// A touch that holds for longer than this is told as a shared stretch: by its two ends.
constexpr double kLongTouchMm = 1.0;
/// Places nearer than this along a curve are one place; a loop shorter than this is none.
constexpr double kOnePlaceMm = 1e-4;

double along(CurvePlace at) { return static_cast<double>(at.segment) + at.t; }
bool before(CurvePlace p, CurvePlace q) { return along(p) < along(q); }

bool closed(const Curve& c) { return distance(c.start(), c.end()) <= kCoincidentMm; }

/// Length of c between two places, the shorter way round when c is closed.
double between(const Curve& c, CurvePlace p, CurvePlace q) {
  if (before(q, p)) std::swap(p, q);
  double run = 0.0;
  if (p.segment == q.segment) {
    run = length(c.segment(p.segment), p.t, q.t);
  } else {
    run = length_to(c, q) - length_to(c, p);
  }
  return closed(c) ? std::min(run, length(c) - run) : run;
}

/// Bounding box of the control points.
struct Hull {
  Vec2 low, high;
  explicit Hull(const Cubic& c) : low(c.p[0]), high(c.p[0]) {
    for (const Vec2& p : c.p) {
      low = {std::min(low.x, p.x), std::min(low.y, p.y)};
      high = {std::max(high.x, p.x), std::max(high.y, p.y)};
    }
  }
  bool meets(const Hull& o) const {
    return low.x <= o.high.x + kCoincidentMm && o.low.x <= high.x + kCoincidentMm &&
           low.y <= o.high.y + kCoincidentMm && o.low.y <= high.y + kCoincidentMm;
  }
};

std::vector<Hull> hulls(const Curve& c) {
  std::vector<Hull> all;
  all.reserve(c.segments());
  for (std::size_t i = 0; i < c.segments(); ++i) all.emplace_back(c.segment(i));
  return all;
}

/// b goes on where a ends, and a line through the joint parts all of a from all of b with some
/// degrees to spare: nothing but the joint is common to them.
bool parted_at_joint(const Cubic& a, const Cubic& b) {
  if (!(a.p[3] == b.p[0])) return false;
  const Vec2 joint = a.p[3];
  Vec2 way;
  for (std::size_t k = 1; k < 4; ++k) way += unit(b.p[k] - joint) - unit(a.p[3 - k] - joint);
  way = unit(way);
  constexpr double kToSpare = 0.1;  // sine of about six degrees
  for (std::size_t k = 1; k < 4; ++k) {
    const Vec2 on = b.p[k] - joint, back = joint - a.p[3 - k];
    if (!(dot(on, way) >= kToSpare * norm(on)) || !(dot(back, way) >= kToSpare * norm(back)))
      return false;
  }
  return true;
}

struct Stretch {
  Crossing from, to;
};

/// What was found so far between two curves.
class Collection {
 public:
  Collection(const Curve& a, const Curve& b) : a_(a), b_(b) {}

  void pair(std::size_t i, std::size_t j) {
    const Cubic p = a_.segment(i), q = b_.segment(j);
    if (const auto shared = shared_stretch(p, q)) {
      stretches_.push_back({at(i, shared->t0, j, shared->s0), at(i, shared->t1, j, shared->s1)});
      return;
    }
    std::vector<Meeting> touches, crossings;
    for (const Meeting& m : meetings(p, q)) (m.touching ? touches : crossings).push_back(m);
    std::vector<std::vector<Meeting>> groups = grouped(touches);
    for (const Meeting& m : crossings) {
      // a crossing in the midst of a touch is its tightest place
      const auto holds = [&](const Meeting& o) {
        const double dt = o.t1 - o.t0, ds = o.s1 - o.s0;
        return o.t0 - dt <= m.t && m.t <= o.t1 + dt && o.s0 - ds <= m.s && m.s <= o.s1 + ds;
      };
      const auto group = std::find_if(
          groups.begin(), groups.end(),
          [&](const std::vector<Meeting>& g) { return std::any_of(g.begin(), g.end(), holds); });
      if (group == groups.end()) {
        points_.push_back(at(i, m.t, j, m.s));
      } else {
        group->push_back(m);
      }
    }
    for (const std::vector<Meeting>& g : groups) take(i, j, g);
  }

  std::vector<Crossing> told() {
    join_stretches();
    std::vector<Crossing> all;
    for (const Stretch& s : stretches_) all.push_back(s.from), all.push_back(s.to);
    const std::size_t ends = all.size();
    for (const Crossing& c : points_) {
      if (!within_stretch(c)) all.push_back(c);
    }
    std::vector<Crossing> once;
    for (std::size_t k = 0; k < all.size(); ++k) {
      const bool again =
          std::any_of(once.begin(), once.end(), [&](const Crossing& o) { return same(o, all[k]); });
      if (!again || k < ends) once.push_back(all[k]);
    }
    std::stable_sort(once.begin(), once.end(), [](const Crossing& x, const Crossing& y) {
      return along(x.on_a) != along(y.on_a) ? before(x.on_a, y.on_a) : before(x.on_b, y.on_b);
    });
    return once;
  }

 private:
  Crossing at(std::size_t i, double t, std::size_t j, double s) const {
    return {{i, t}, {j, s}, point(a_.segment(i), t)};
  }

  bool same(const Crossing& x, const Crossing& y) const {
    return distance(x.point, y.point) <= 10.0 * kCoincidentMm &&
           between(a_, x.on_a, y.on_a) <= kOnePlaceMm && between(b_, x.on_b, y.on_b) <= kOnePlaceMm;
  }

  /// Touching stretches that adjoin on both curves are one touch.
  static std::vector<std::vector<Meeting>> grouped(std::vector<Meeting>& touches) {
    std::sort(touches.begin(), touches.end(),
              [](const Meeting& x, const Meeting& y) { return x.t0 < y.t0; });
    std::vector<std::vector<Meeting>> groups;
    for (const Meeting& m : touches) {
      auto group = std::find_if(groups.begin(), groups.end(), [&](const std::vector<Meeting>& g) {
        // the newest few are enough: stretches come in order of t
        const auto newest = g.rbegin();
        return std::any_of(
            newest, newest + std::min<std::ptrdiff_t>(8, std::ssize(g)), [&](const Meeting& o) {
              return m.t0 <= o.t1 + 1e-9 && m.s0 <= o.s1 + 1e-9 && o.s0 <= m.s1 + 1e-9;
            });
      });
      if (group == groups.end()) {
        groups.push_back({m});
      } else {
        group->push_back(m);
      }
    }
    return groups;
  }

  /// A touch is told by its tightest place, or by both of its ends when it is long.
  void take(std::size_t i, std::size_t j, const std::vector<Meeting>& g) {
    const auto [first, last] = std::minmax_element(
        g.begin(), g.end(), [](const Meeting& x, const Meeting& y) { return x.t < y.t; });
    if (length(a_.segment(i), first->t, last->t) > kLongTouchMm) {
      stretches_.push_back({at(i, first->t, j, first->s), at(i, last->t, j, last->s)});
      return;
    }
    const auto best = std::min_element(
        g.begin(), g.end(), [](const Meeting& x, const Meeting& y) { return x.gap < y.gap; });
    points_.push_back(at(i, best->t, j, best->s));
  }

  /// A stretch that runs on over a joint is one stretch.
  void join_stretches() {
    std::stable_sort(stretches_.begin(), stretches_.end(), [](const Stretch& x, const Stretch& y) {
      return before(x.from.on_a, y.from.on_a);
    });
    for (std::size_t k = 0; k < stretches_.size(); ++k) {
      for (std::size_t m = k + 1; m < stretches_.size();) {
        if (same(stretches_[k].to, stretches_[m].from)) {
          stretches_[k].to = stretches_[m].to;
          stretches_.erase(stretches_.begin() + static_cast<std::ptrdiff_t>(m));
        } else {
          ++m;
        }
      }
    }
  }

  bool within_stretch(const Crossing& c) const {
    return std::any_of(stretches_.begin(), stretches_.end(), [&](const Stretch& s) {
      const double b0 = std::min(along(s.from.on_b), along(s.to.on_b));
      const double b1 = std::max(along(s.from.on_b), along(s.to.on_b));
      const bool inside = along(s.from.on_a) <= along(c.on_a) &&
                          along(c.on_a) <= along(s.to.on_a) && b0 <= along(c.on_b) &&
                          along(c.on_b) <= b1;
      return inside || same(c, s.from) || same(c, s.to);
    });
  }

  const Curve& a_;
  const Curve& b_;
  std::vector<Crossing> points_;
  std::vector<Stretch> stretches_;
};

/// The loop of a single cubic: the two parameters of its double point. With
/// B = a0 + a1 t + a2 t^2 + a3 t^3, B(t) = B(s) and t != s mean a3 (m^2 - n) + a2 m + a1 = 0 for
/// m = t + s, n = t s: two linear equations for m and for m^2 - n.
void loop_of(const Cubic& c, std::size_t i, std::vector<Crossing>& found) {
  const Vec2 a1 = 3.0 * (c.p[1] - c.p[0]);
  const Vec2 a2 = 3.0 * (c.p[2] - 2.0 * c.p[1] + c.p[0]);
  const Vec2 a3 = c.p[3] - c.p[0] + 3.0 * (c.p[1] - c.p[2]);
  const double scale = norm(a1) + norm(a2) + norm(a3);
  const double tiny = 1e-12 * scale * scale;
  const double a32 = cross(a3, a2), a31 = cross(a3, a1), a21 = cross(a2, a1);
  if (std::abs(a32) <= tiny && std::abs(a31) <= tiny && std::abs(a21) <= tiny) {
    // on one line: where it turns back it runs over itself
    const Vec2 way = norm(a1) >= norm(a2) ? unit(a1) : unit(a2);
    double last = 0.0;
    for (int k = 0; k <= 64; ++k) {
      const double v = dot(derivative(c, k / 64.0), way);
      if (v * last < 0.0) {
        double low = (k - 1) / 64.0, high = k / 64.0;
        for (int n = 0; n < 60; ++n) {
          const double mid = 0.5 * (low + high);
          (dot(derivative(c, mid), way) * last > 0.0 ? low : high) = mid;
        }
        found.push_back({{i, high}, {i, high}, point(c, high)});
      }
      if (v != 0.0) last = v;
    }
    return;
  }
  if (std::abs(a32) <= tiny) return;
  const double m = -a31 / a32;
  const double n = m * m + dot(m * a2 + a1, a3) / dot(a3, a3);
  const double discriminant = m * m - 4.0 * n;
  if (!(discriminant > 1e-12)) return;
  const double root = std::sqrt(discriminant);
  const double t = 0.5 * (m - root), s = 0.5 * (m + root);
  if (!(t >= -1e-9 && s <= 1.0 + 1e-9)) return;
  const double t_in = std::max(t, 0.0), s_in = std::min(s, 1.0);
  found.push_back({{i, t_in}, {i, s_in}, point(c, t_in)});
}

}  // namespace

std::vector<Crossing> intersections(const Curve& a, const Curve& b) {
  Collection found(a, b);
  const std::vector<Hull> of_a = hulls(a), of_b = hulls(b);
  for (std::size_t i = 0; i < a.segments(); ++i) {
    for (std::size_t j = 0; j < b.segments(); ++j)
      if (of_a[i].meets(of_b[j])) found.pair(i, j);
  }
  return found.told();
}

std::vector<Crossing> self_intersections(const Curve& c) {
  Collection found(c, c);
  const std::vector<Hull> hull = hulls(c);
  const std::size_t n = c.segments();
  for (std::size_t i = 0; i < n; ++i) {
    for (std::size_t j = i + 1; j < n; ++j) {
      if (!hull[i].meets(hull[j])) continue;
      if (j == i + 1 && parted_at_joint(c.segment(i), c.segment(j))) continue;
      if (i == 0 && j == n - 1 && n > 2 && parted_at_joint(c.segment(j), c.segment(i))) continue;
      found.pair(i, j);
    }
  }
  std::vector<Crossing> all = found.told();
  // the joint that two neighbours share, and the shared point of a closed curve
  std::erase_if(all, [&](const Crossing& x) { return between(c, x.on_a, x.on_b) <= kOnePlaceMm; });
  for (std::size_t i = 0; i < c.segments(); ++i) {
    const std::size_t had = all.size();
    loop_of(c.segment(i), i, all);
    if (all.size() > had && all.back().on_a.t != all.back().on_b.t &&
        between(c, all.back().on_a, all.back().on_b) <= kOnePlaceMm) {
      all.pop_back();
    }
  }
  std::stable_sort(all.begin(), all.end(),
                   [](const Crossing& x, const Crossing& y) { return before(x.on_a, y.on_a); });
  return all;
}

}  // namespace pinwright
