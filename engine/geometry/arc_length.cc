#include "engine/geometry/arc_length.h"

#include <algorithm>
#include <array>
#include <cmath>

#include "engine/geometry/roots.h"
#include "engine/geometry/tolerance.h"

namespace pinwright {
namespace {

/// Positive nodes and their weights, n = 16 (Abramowitz & Stegun, table 25.4).
constexpr std::array<double, 8> kNodes{0.0950125098376374, 0.2816035507792589, 0.4580167776572274,
                                       0.6178762444026438, 0.7554044083550030, 0.8656312023878318,
                                       0.9445750230732326, 0.9894009349916499};
constexpr std::array<double, 8> kWeights{0.1894506104550685, 0.1826034150449236, 0.1691565193950025,
                                         0.1495959888165767, 0.1246289712555339, 0.0951585116824928,
                                         0.0622535239386479, 0.0271524594117541};
/// Halvings of one panel at most: past that a panel is too short to matter.
constexpr int kDeepest = 40;
/// Two estimates that agree to this part of the control polygon are believed.
constexpr double kAgree = 1e-12;
/// n = 8, and how near its sum must come to that of n = 16: on a speed without slow places the
/// error falls geometrically with n, so that twice the nodes square it (L. N. Trefethen,
/// Approximation Theory and Approximation Practice, ch. 19).
constexpr std::array<double, 4> kFewNodes{0.1834346424956498, 0.5255324099163290,
                                          0.7966664774136267, 0.9602898564975363};
constexpr std::array<double, 4> kFewWeights{0.3626837833783620, 0.3137066458778873,
                                            0.2223810344533745, 0.1012285362903763};
constexpr double kFewAgree = 1e-7;
/// Second differences below this part of the first: a straight segment run at an even pace.
constexpr double kEven = 1e-12;

/// |B'(t)| by Horner in the power basis.
struct Speed {
  Vec2 a, b, c;

  explicit Speed(const Cubic& q)
      : a(3.0 * (q.p[1] - q.p[0])),
        b(6.0 * (q.p[2] - 2.0 * q.p[1] + q.p[0])),
        c(3.0 * (q.p[3] - q.p[0] + 3.0 * (q.p[1] - q.p[2]))) {}

  bool even() const {
    const double least = kEven * (std::abs(a.x) + std::abs(a.y));
    return std::max({std::abs(b.x), std::abs(b.y), std::abs(c.x), std::abs(c.y)}) <= least;
  }
  double operator()(double t) const {
    const double x = a.x + t * (b.x + t * c.x);
    const double y = a.y + t * (b.y + t * c.y);
    return std::sqrt(x * x + y * y);
  }
};

template <std::size_t n>
double sum_over(const Speed& v, double t0, double t1, const std::array<double, n>& nodes,
                const std::array<double, n>& weights) {
  const double mid = 0.5 * (t0 + t1), half = 0.5 * (t1 - t0);
  double sum = 0.0;
  for (std::size_t i = 0; i < n; ++i) {
    sum += weights[i] * (v(mid - half * nodes[i]) + v(mid + half * nodes[i]));
  }
  return half * sum;
}

double panel(const Speed& v, double t0, double t1) { return sum_over(v, t0, t1, kNodes, kWeights); }

double halved(const Speed& v, double t0, double t1, double whole, double agree, int depth) {
  const double mid = 0.5 * (t0 + t1);
  const double left = panel(v, t0, mid), right = panel(v, mid, t1);
  // written so that a NaN ends the halving
  if (!(std::abs(left + right - whole) > agree) || depth >= kDeepest) return left + right;
  return halved(v, t0, mid, left, agree, depth + 1) + halved(v, mid, t1, right, agree, depth + 1);
}

/// True while all of B' keeps to one side of its middle direction and away from nothing.
bool never_slow(const Speed& v) {
  const Vec2 first = v.a, last = v.a + v.b + v.c, middle = v.a + 0.5 * v.b;
  const Vec2 sum = first + 2.0 * middle + last;
  const double least = std::min({dot(first, sum), dot(middle, sum), dot(last, sum)});
  const double most = std::max({dot(first, first), dot(middle, middle), dot(last, last)});
  return least > 0.0 && least * least > 0.01 * most * dot(sum, sum);
}

/// Where the speed is least inside (t0, t1), when it may come near to nothing there. A cusp just
/// inside the end of a panel is hidden from every node, so panels have to end at it.
std::vector<double> slow_places(const Speed& v, double t0, double t1) {
  // half of d|B'|^2/dt
  std::vector<double> places;
  for (const double t : unit_roots({dot(v.a, v.b), dot(v.b, v.b) + 2.0 * dot(v.a, v.c),
                                    3.0 * dot(v.b, v.c), 2.0 * dot(v.c, v.c)},
                                   0.0)) {
    if (t > t0 && t < t1) places.push_back(t);
  }
  return places;
}

/// Length of c from t0 to t1 >= t0, to kAgree of that length's own estimate.
double measured(const Speed& v, double t0, double t1) {
  if (v.even()) return norm(v.a) * (t1 - t0);
  const double whole = panel(v, t0, t1);
  if (never_slow(v)) {
    const double few = sum_over(v, t0, t1, kFewNodes, kFewWeights);
    if (std::abs(few - whole) <= kFewAgree * whole) return whole;
    return halved(v, t0, t1, whole, kAgree * whole, 0);
  }
  const double agree = kAgree * whole;
  double sum = 0.0;
  for (const double t : slow_places(v, t0, t1)) {
    sum += halved(v, t0, t, panel(v, t0, t), agree, 0);
    t0 = t;
  }
  return sum + halved(v, t0, t1, panel(v, t0, t1), agree, 0);
}

double clamped(double t) { return t >= 0.0 ? std::min(t, 1.0) : 0.0; }

/// t at which c has run s mm, 0 < s < total.
double t_at(const Cubic& c, double s, double total, double allowed) {
  const Speed v(c);
  double low = 0.0, high = 1.0, low_length = 0.0, high_length = total;
  double t = s / total;
  for (int i = 0; i < 100; ++i) {
    // only the part between the bracket's nearer end and t is measured anew
    const double run =
        t - low <= high - t ? low_length + measured(v, low, t) : high_length - measured(v, t, high);
    const double miss = run - s;
    if (!(std::abs(miss) > allowed)) break;
    if (miss > 0.0) {
      high = t, high_length = run;
    } else {
      low = t, low_length = run;
    }
    double next = t - miss / v(t);
    if (!(next > low && next < high)) next = 0.5 * (low + high);
    if (next <= low || next >= high) break;
    t = next;
  }
  return t;
}

}  // namespace

double length(const Cubic& c) { return measured(Speed(c), 0.0, 1.0); }

double length(const Cubic& c, double t0, double t1) {
  t0 = clamped(t0), t1 = clamped(t1);
  if (t0 == t1) return 0.0;
  const Speed v(c);
  return t0 < t1 ? measured(v, t0, t1) : -measured(v, t1, t0);
}

double length(const Curve& c) {
  double sum = 0.0;
  for (std::size_t i = 0; i < c.segments(); ++i) sum += length(c.segment(i));
  return sum;
}

double length_to(const Curve& c, CurvePlace at) {
  double sum = 0.0;
  for (std::size_t i = 0; i < c.segments() && i < at.segment; ++i) sum += length(c.segment(i));
  if (at.segment < c.segments()) sum += length(c.segment(at.segment), 0.0, at.t);
  return sum;
}

CurvePlace place_at(const Curve& c, double s) {
  const std::size_t n = c.segments();
  if (n == 0 || !(s > 0.0)) return {};
  double before = 0.0;
  for (std::size_t i = 0; i < n; ++i) {
    const Cubic q = c.segment(i);
    const double own = length(q);
    if (s < before + own) {
      // a tenth of the promise, of the segment's own length: the total is at least that
      const double rest = s - before;
      return {i, rest > 0.0 ? t_at(q, rest, own, 0.01 * kLengthRelative * own) : 0.0};
    }
    before += own;
    if (s == before) return {i, 1.0};
  }
  return {n - 1, 1.0};
}

Vec2 point_at(const Curve& c, double s) { return point(c, place_at(c, s)); }
Vec2 tangent_at(const Curve& c, double s) { return tangent(c, place_at(c, s)); }

}  // namespace pinwright
