#include <Eigen/Dense>
#include <algorithm>
#include <cmath>

#include "engine/geometry/arc_length.h"
#include "engine/geometry/fairing.h"
#include "engine/geometry/fairing_input.h"
#include "engine/geometry/nearest.h"

namespace pinwright {
namespace {

constexpr std::size_t kMostSegments = 64;
constexpr std::size_t kSamplesPerSegment = 24;
constexpr int kRounds = 60;

/// One unknown's share in a point of the curve.
struct Share {
  Eigen::Index unknown = 0;
  Vec2 per_unit;
};

/// A point of the curve as a fixed part plus shares of the unknowns.
struct Row {
  Vec2 fixed;
  std::vector<Share> shares;

  void add(double weight, const Row& r) {
    fixed += weight * r.fixed;
    for (const Share& s : r.shares) shares.push_back({s.unknown, weight * s.per_unit});
  }
};

/// n cubic segments on equal knots. Unknowns: the first and the last handle's length, and the two
/// handles' ends at every inner joint; the joint lies midway between these, which makes it smooth.
class Fit {
 public:
  Fit(const Curve& target, std::size_t n, Vec2 first, Vec2 last, double lead = 1.0)
      : n_(n), start_(target.start()), end_(target.end()), first_(first), last_(last) {
    const double total = length(target);
    const std::size_t samples = kSamplesPerSegment * n;
    // the first guess follows the target with handles of a third of a segment's length
    const double handle = total / (3.0 * static_cast<double>(n));
    x_.resize(static_cast<Eigen::Index>(2 + 4 * (n - 1)));
    x_(0) = lead * handle, x_(1) = (2.0 - lead) * handle;
    for (std::size_t k = 1; k < n; ++k) {
      const CurvePlace at =
          place_at(target, total * static_cast<double>(k) / static_cast<double>(n));
      const Vec2 joint = point(target, at), step = handle * tangent(target, at);
      const Eigen::Index i = index(k);
      x_(i) = joint.x - step.x, x_(i + 1) = joint.y - step.y;
      x_(i + 2) = joint.x + step.x, x_(i + 3) = joint.y + step.y;
    }
    least_handle_ = 1e-3 * handle;
    for (std::size_t i = 1; i < samples; ++i) {
      const double part = static_cast<double>(i) / static_cast<double>(samples);
      goal_.push_back(point_at(target, total * part));
      place_.push_back(part * static_cast<double>(n));
    }
    find_places(curve(x_), place_);
  }

  /// Sum of the squared distances, mm^2.
  double worth() const { return error(curve(x_), place_); }

  Curve run() {
    double least = worth();
    double slide = 1.0;  // weight of the tangential part: 1 is plain least squares
    for (int round = 0; round < kRounds && least > 0.0; ++round) {
      Eigen::VectorXd x = solve(slide);
      x(0) = std::max(x(0), least_handle_), x(1) = std::max(x(1), least_handle_);
      const Curve c = curve(x);
      std::vector<double> place = place_;
      find_places(c, place);
      const double now = error(c, place);
      if (!(now < least)) {
        if (slide >= 1.0) break;
        slide = std::min(1.0, 10.0 * slide);
        continue;
      }
      const bool settled = least - now <= 1e-8 * least;
      x_ = x, place_ = place, least = now;
      slide = std::max(1e-5, 0.1 * slide);
      if (settled && !find_places_anew(least)) break;
    }
    return curve(x_);
  }

 private:
  static Eigen::Index index(std::size_t joint) {
    return static_cast<Eigen::Index>(2 + 4 * (joint - 1));
  }

  Row handle_end(std::size_t joint, bool after) const {
    if (joint == 0) return {start_, {{0, first_}}};
    if (joint == n_) return {end_, {{1, -last_}}};
    const Eigen::Index i = index(joint) + (after ? 2 : 0);
    return {{}, {{i, {1, 0}}, {i + 1, {0, 1}}}};
  }

  Row joint_point(std::size_t joint) const {
    if (joint == 0) return {start_, {}};
    if (joint == n_) return {end_, {}};
    Row r;
    r.add(0.5, handle_end(joint, false));
    r.add(0.5, handle_end(joint, true));
    return r;
  }

  Vec2 value(const Row& r, const Eigen::VectorXd& x) const {
    Vec2 p = r.fixed;
    for (const Share& s : r.shares) p += x(s.unknown) * s.per_unit;
    return p;
  }

  Curve curve(const Eigen::VectorXd& x) const {
    Curve c;
    for (std::size_t k = 0; k < n_; ++k) {
      c.points.push_back(value(joint_point(k), x));
      c.points.push_back(value(handle_end(k, true), x));
      c.points.push_back(value(handle_end(k + 1, false), x));
    }
    c.points.push_back(end_);
    return c;
  }

  CurvePlace on(double u) const {
    const std::size_t k = std::min(static_cast<std::size_t>(u), n_ - 1);
    return {k, u - static_cast<double>(k)};
  }

  Row row(double u) const {
    const auto [k, t] = on(u);
    const double s = 1.0 - t;
    Row r;
    r.add(s * s * s, joint_point(k));
    r.add(3.0 * s * s * t, handle_end(k, true));
    r.add(3.0 * s * t * t, handle_end(k + 1, false));
    r.add(t * t * t, joint_point(k + 1));
    return r;
  }

  /// Newton steps to the nearest place of c, from where each goal was last.
  void find_places(const Curve& c, std::vector<double>& place) const {
    for (std::size_t i = 0; i < goal_.size(); ++i) {
      double u = place[i];
      for (int step = 0; step < 12; ++step) {
        const auto [k, t] = on(u);
        const Cubic s = c.segment(k);
        const Vec2 miss = point(s, t) - goal_[i], d = derivative(s, t);
        const double bend = dot(d, d) + dot(miss, second_derivative(s, t));
        const double by = -dot(miss, d) / (bend > 0.0 ? bend : dot(d, d));
        if (!std::isfinite(by)) break;
        const double next =
            std::clamp(u + std::clamp(by, -0.25, 0.25), 0.0, static_cast<double>(n_));
        const bool there = std::abs(next - u) < 1e-13;
        u = next;
        if (there) break;
      }
      place[i] = u;
    }
  }

  /// Near a sharp bend a goal may be held on the wrong side of it. True when looking at the whole
  /// curve brings the error down.
  bool find_places_anew(double& least) {
    const Curve c = curve(x_);
    std::vector<double> place;
    for (const Vec2& g : goal_) {
      const CurvePlace at = nearest(c, g).at;
      place.push_back(static_cast<double>(at.segment) + at.t);
    }
    const double now = error(c, place);
    if (!(now < 0.999 * least)) return false;
    place_ = place, least = now;
    return true;
  }

  double error(const Curve& c, const std::vector<double>& place) const {
    double sum = 0.0;
    for (std::size_t i = 0; i < goal_.size(); ++i) {
      const Vec2 miss = point(c, on(place[i])) - goal_[i];
      sum += dot(miss, miss);
    }
    return sum;
  }

  Eigen::VectorXd solve(double slide) const {
    const Eigen::Index size = x_.size();
    Eigen::MatrixXd normal = Eigen::MatrixXd::Zero(size, size);
    Eigen::VectorXd right = Eigen::VectorXd::Zero(size);
    const Curve now = curve(x_);
    for (std::size_t i = 0; i < goal_.size(); ++i) {
      const Row r = row(place_[i]);
      const Vec2 along = tangent(now, on(place_[i])), across = left_normal(along);
      const Vec2 miss = goal_[i] - value(r, x_);
      for (const Share& p : r.shares) {
        const double pa = dot(p.per_unit, across), pl = slide * dot(p.per_unit, along);
        right(p.unknown) += pa * dot(miss, across) + pl * dot(miss, along);
        for (const Share& q : r.shares) {
          normal(p.unknown, q.unknown) +=
              pa * dot(q.per_unit, across) + pl * dot(q.per_unit, along);
        }
      }
    }
    const double ridge = 1e-12 * std::max(normal.diagonal().maxCoeff(), 1e-300);
    normal.diagonal().array() += ridge;
    const Eigen::VectorXd step = normal.ldlt().solve(right);
    return step.allFinite() ? Eigen::VectorXd(x_ + step) : x_;
  }

  std::size_t n_;
  Vec2 start_, end_, first_, last_;
  double least_handle_ = 0.0;
  Eigen::VectorXd x_;
  std::vector<Vec2> goal_;
  std::vector<double> place_;
};

/// A cubic whose handles do not pass the crossing of its end tangents has no change of curvature.
Curve kept_convex(Curve c, Vec2 first, Vec2 last) {
  const Vec2 a = c.points[0], b = c.points[3];
  const double turning = cross(first, last);
  const double p = cross(b - a, last) / turning, q = cross(first, b - a) / turning;
  if (!(p > 0.0 && q > 0.0 && std::isfinite(p) && std::isfinite(q))) return c;
  c.points[1] = a + std::min(distance(a, c.points[1]), 0.98 * p) * first;
  c.points[2] = b - std::min(distance(b, c.points[2]), 0.98 * q) * last;
  return c;
}

Curve fitted(const Curve& target, std::size_t n, Vec2 first, Vec2 last) {
  Fit fit(target, n, first, last);
  Curve best = fit.run();
  if (n > 1) return best;
  // one segment round a sharp bend has more than one best: start with either handle the longer
  double least = fit.worth();
  for (const double lead : {0.4, 1.6}) {
    Fit other(target, n, first, last, lead);
    Curve c = other.run();
    if (other.worth() < 0.99 * least) best = std::move(c), least = other.worth();
  }
  return best;
}

/// One segment after the other between places of the target, joined along the target's tangents.
Curve segment_by_segment(const Curve& target, std::size_t n, Vec2 first, Vec2 last) {
  Curve whole, rest = target;
  const double step = length(target) / static_cast<double>(n);
  for (std::size_t k = 0; k < n; ++k) {
    Curve part = rest;
    Vec2 leave = last;
    if (k + 1 < n) {
      const CurvePlace at = place_at(rest, step);
      leave = tangent(rest, at);
      std::tie(part, rest) = split(rest, at);
    }
    if (part.segments() == 0 || leave == Vec2{}) continue;
    whole = joined(whole, kept_convex(fitted(part, 1, first, leave), first, leave));
    first = leave;
  }
  return whole;
}

}  // namespace

Result<Curve> refit(const Curve& target, std::size_t segments, Vec2 start_tangent,
                    Vec2 end_tangent) {
  // a handle may lie on its end point; for the rest the target is judged as a whole
  Problems found = fairing_problems({{0, 0}, {1, 0}}, start_tangent, end_tangent);
  const bool usable =
      target.segments() > 0 &&
      std::all_of(target.points.begin(), target.points.end(), [](Vec2 p) { return finite(p); });
  const double total = usable ? length(target) : 0.0;
  if (!(total > 0.0) || !std::isfinite(total)) {
    found.push_back({"fairing-points", "target", "The curve to follow has no finite length.",
                     "Give at least one segment with finite points and some length."});
  }
  if (segments == 0 || segments > kMostSegments) {
    found.push_back({"fairing-segments", "segments",
                     std::to_string(segments) + " segments were asked for.",
                     "Ask for 1 to " + std::to_string(kMostSegments) + " segments."});
  }
  if (!found.empty()) return found;

  const Vec2 first = unit(start_tangent), last = unit(end_tangent);
  Curve c = fitted(target, segments, first, last);
  if (inflections(target) == 0 && inflections(c) != 0) {
    Curve convex = segment_by_segment(target, segments, first, last);
    if (convex.segments() == segments && inflections(convex) == 0) c = std::move(convex);
  }
  c.points.front() = target.start();
  c.points.back() = target.end();
  return c;
}

}  // namespace pinwright
