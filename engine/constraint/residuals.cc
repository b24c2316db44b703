#include "engine/constraint/residuals.h"

#include <algorithm>
#include <array>
#include <cmath>
#include <limits>
#include <numbers>

#include "engine/geometry/arc_length.h"
#include "engine/geometry/intersect.h"

namespace pinwright {
namespace {

// Gauss-Legendre, n = 16; Abramowitz & Stegun, table 25.4. The gradient only steers the steps: the
// lengths themselves are arc_length.h's.
constexpr std::array<double, 8> kNode = {0.0950125098376374, 0.2816035507792589, 0.4580167776572274,
                                         0.6178762444026438, 0.7554044083550030, 0.8656312023878318,
                                         0.9445750230732326, 0.9894009349916499};
constexpr std::array<double, 8> kWeight = {
    0.1894506104550685, 0.1826034150449236, 0.1691565193950025, 0.1495959888165767,
    0.1246289712555339, 0.0951585116824928, 0.0622535239386479, 0.0271524594117541};
constexpr double kOutOfReachMm = 1e3;

// Interior angle at a corner from the handles on both sides, and its derivative by them.
struct Corner {
  double angle = 0.0;
  Vec2 by_in;   // by the last control point but one of the edge before
  Vec2 by_at;   // by the corner
  Vec2 by_out;  // by the second control point of the edge after
};

Corner corner_of(Vec2 in, Vec2 at, Vec2 out) {
  const Vec2 back = in - at;
  const Vec2 ahead = out - at;
  Corner c;
  // The ring runs counter-clockwise: the inside lies to the left, from `ahead` round to `back`.
  c.angle = turn(ahead, back);
  if (c.angle < 0.0) c.angle += 2.0 * std::numbers::pi;
  const double b2 = dot(back, back);
  const double a2 = dot(ahead, ahead);
  if (b2 > 0.0) c.by_in = (1.0 / b2) * left_normal(back);
  if (a2 > 0.0) c.by_out = (-1.0 / a2) * left_normal(ahead);
  c.by_at = -(c.by_in + c.by_out);
  return c;
}

void accumulate(const ControlPoint& p, Vec2 gradient, double scale,
                std::vector<Residuals::Entry>& entries) {
  for (std::size_t k = 0; k < 2; ++k) {
    if (p.x.unknown[k] >= 0)
      entries.push_back({p.x.unknown[k], scale * gradient.x * p.x.factor[k]});
    if (p.y.unknown[k] >= 0)
      entries.push_back({p.y.unknown[k], scale * gradient.y * p.y.factor[k]});
  }
}

// The wish of a row: sign it so that an inequality wants value >= 0.
double sign_of(Sense sense) { return sense == Sense::at_most ? -1.0 : 1.0; }

// Signed curvature where a cubic starts, and its derivative by the first three control points.
struct Bend {
  double curvature = 0.0;
  std::array<Vec2, 3> by_point;
};

Bend bend_at_start(Vec2 p0, Vec2 p1, Vec2 p2) {
  const Vec2 a = p1 - p0;
  const Vec2 b = p2 - p1;
  const double n = norm(a);
  if (!(n > 1e-9)) return {};
  Bend bend;
  const double scale = 2.0 / (3.0 * n * n * n);
  bend.curvature = scale * cross(a, b);
  const Vec2 by_a = scale * Vec2{b.y, -b.x} - (3.0 * bend.curvature / (n * n)) * a;
  const Vec2 by_b = scale * Vec2{-a.y, a.x};
  bend.by_point = {-by_a, by_a - by_b, by_b};
  return bend;
}

}  // namespace

double Residuals::worst() const {
  double most = 0.0;
  for (int i = 0; i < count(); ++i) {
    const double m = miss(i);
    if (!std::isfinite(value[index(i)])) return std::numeric_limits<double>::infinity();
    most = std::max(most, m);
  }
  return most;
}

Eigen::MatrixXd Residuals::jacobian(int unknowns) const {
  Eigen::MatrixXd j = Eigen::MatrixXd::Zero(count(), unknowns);
  for (int i = 0; i < count(); ++i)
    for (const Entry* e = begin(i); e != end(i); ++e) j(i, e->unknown) += e->factor;
  return j;
}

LengthGradient length_gradient(const Curve& curve) {
  LengthGradient g;
  g.length = length(curve);
  g.by_point.assign(curve.points.size(), Vec2{});
  for (std::size_t s = 0; s < curve.segments(); ++s) {
    const Cubic c = curve.segment(s);
    const Vec2 d0 = c.p[1] - c.p[0];
    const Vec2 d1 = c.p[2] - c.p[1];
    const Vec2 d2 = c.p[3] - c.p[2];
    Vec2* by = &g.by_point[3 * s];
    for (std::size_t k = 0; k < 16; ++k) {
      const double t = 0.5 * (1.0 + (k < 8 ? kNode[k] : -kNode[k - 8]));
      const double u = 1.0 - t;
      const Vec2 way = unit(u * u * d0 + 2.0 * u * t * d1 + t * t * d2);
      const Vec2 d = (1.5 * kWeight[k % 8]) * way;
      by[0] += (-u * u) * d;
      by[1] += (u * u - 2.0 * u * t) * d;
      by[2] += (2.0 * u * t - t * t) * d;
      by[3] += (t * t) * d;
    }
  }
  return g;
}

Constraints::Constraints(const Block& block, const System& system, const Variables& variables)
    : block_(block), system_(system), variables_(variables) {
  for (const EdgeAt at : system.free_edges) {
    const Edge& edge = block.pieces[at.piece].edges[at.edge];
    if (edge.straight) continue;
    for (std::size_t j = 3; j + 3 < edge.curve.points.size(); j += 3) joints_.push_back({at, j});
  }
}

int Constraints::count() const {
  return static_cast<int>(system_.lengths.size() + system_.widths.size() + system_.angles.size() +
                          system_.spans.size() + system_.radii.size() + joints_.size());
}

Curve Constraints::curve(EdgeAt at, const Eigen::VectorXd& x) const {
  Curve c = block_.pieces[at.piece].edges[at.edge].curve;
  if (const std::vector<ControlPoint>* controls = variables_.edge(at))
    for (std::size_t i = 0; i < controls->size(); ++i)
      c.points[i] = Variables::value((*controls)[i], x);
  return c;
}

Vec2 Constraints::corner(CornerAt at, const Eigen::VectorXd& x) const {
  if (const std::vector<ControlPoint>* controls = variables_.edge({at.piece, at.edge}))
    return Variables::value(controls->back(), x);
  return block_.pieces[at.piece].edges[at.edge].curve.end();
}

void Constraints::at(const Eigen::VectorXd& x, Residuals& r) const {
  r.value.clear();
  r.inequality.clear();
  r.entries.clear();
  r.row_start.assign(1, 0);
  const auto row = [&](double value, bool inequality = false) {
    r.value.push_back(value);
    r.inequality.push_back(inequality);
    r.row_start.push_back(static_cast<int>(r.entries.size()));
  };
  for (const LengthConstraint& c : system_.lengths) {
    double sum = -c.value;
    const double sign = sign_of(c.sense);
    for (const LengthTerm& term : c.terms) {
      const Edge& edge = block_.pieces[term.edge.piece].edges[term.edge.edge];
      const std::vector<ControlPoint>* controls = variables_.edge(term.edge);
      if (controls == nullptr) {
        sum += term.factor * length(edge.curve);
        continue;
      }
      if (edge.straight) {
        const Vec2 run =
            Variables::value(controls->back(), x) - Variables::value(controls->front(), x);
        sum += term.factor * norm(run);
        accumulate(controls->back(), unit(run), sign * term.factor, r.entries);
        accumulate(controls->front(), -unit(run), sign * term.factor, r.entries);
        continue;
      }
      const LengthGradient g = length_gradient(curve(term.edge, x));
      sum += term.factor * g.length;
      for (std::size_t i = 0; i < controls->size(); ++i)
        accumulate((*controls)[i], g.by_point[i], sign * term.factor, r.entries);
    }
    row(sign * sum, c.sense != Sense::equal);
  }
  for (const WidthConstraint& c : system_.widths) {
    const Curve now = curve(c.edge, x);
    const std::vector<CurvePlace> places = at_height(now, c.level);
    const std::vector<ControlPoint>* controls = variables_.edge(c.edge);
    if (places.empty()) {
      row(kOutOfReachMm);  // the line search turns back from here
      continue;
    }
    const CurvePlace at = places.front();
    if (controls != nullptr) {
      // The place slides along the curve to stay at the level: dx - (x'/y') dy.
      const Vec2 d = derivative(now.segment(at.segment), at.t);
      const double slide = d.y != 0.0 ? d.x / d.y : 0.0;
      const double t = at.t;
      const double u = 1.0 - t;
      const std::array<double, 4> share = {u * u * u, 3.0 * u * u * t, 3.0 * u * t * t, t * t * t};
      for (std::size_t i = 0; i < 4; ++i)
        accumulate((*controls)[3 * at.segment + i], {share[i], -slide * share[i]}, 1.0, r.entries);
    }
    row(point(now, at).x - c.x);
  }
  for (const AngleConstraint& c : system_.angles) {
    double sum = -c.target;
    for (const CornerAt at : c.corners) {
      const std::size_t next = (at.edge + 1) % block_.pieces[at.piece].edges.size();
      const EdgeAt before{at.piece, at.edge};
      const EdgeAt after{at.piece, next};
      const std::vector<ControlPoint>* in_controls = variables_.edge(before);
      const std::vector<ControlPoint>* out_controls = variables_.edge(after);
      const std::vector<Vec2>& in = block_.pieces[at.piece].edges[at.edge].curve.points;
      const std::vector<Vec2>& out = block_.pieces[at.piece].edges[next].curve.points;
      const std::size_t last = in.size() - 1;
      const Vec2 handle_in =
          in_controls != nullptr ? Variables::value((*in_controls)[last - 1], x) : in[last - 1];
      const Vec2 middle =
          in_controls != nullptr ? Variables::value((*in_controls)[last], x) : in[last];
      const Vec2 handle_out =
          out_controls != nullptr ? Variables::value((*out_controls)[1], x) : out[1];
      const Corner corner = corner_of(handle_in, middle, handle_out);
      sum += corner.angle;
      if (in_controls != nullptr) {
        accumulate((*in_controls)[last - 1], corner.by_in, kAngleScaleMm, r.entries);
        accumulate((*in_controls)[last], corner.by_at, kAngleScaleMm, r.entries);
      }
      if (out_controls != nullptr)
        accumulate((*out_controls)[1], corner.by_out, kAngleScaleMm, r.entries);
    }
    row(kAngleScaleMm * sum);
  }
  for (const SpanConstraint& c : system_.spans) {
    const double sign = sign_of(c.sense);
    const auto* from = variables_.edge({c.from.piece, c.from.edge});
    const auto* to = variables_.edge({c.to.piece, c.to.edge});
    if (from != nullptr) accumulate(from->back(), -c.along, sign, r.entries);
    if (to != nullptr) accumulate(to->back(), c.along, sign, r.entries);
    row(sign * (dot(corner(c.to, x) - corner(c.from, x), c.along) - c.value),
        c.sense != Sense::equal);
  }
  for (const RadiusConstraint& c : system_.radii) {
    const Curve now = curve(c.edge, x);
    const std::size_t last = now.points.size() - 1;
    const auto index = [&](std::size_t i) { return c.at_start ? i : last - i; };
    const Bend bend =
        bend_at_start(now.points[index(0)], now.points[index(1)], now.points[index(2)]);
    // R - R^2 |k|: near the limit the millimetres by which the radius is larger than R.
    const double scale = -c.least * c.least * (bend.curvature < 0.0 ? -1.0 : 1.0);
    if (const std::vector<ControlPoint>* controls = variables_.edge(c.edge))
      for (std::size_t i = 0; i < 3; ++i)
        accumulate((*controls)[index(i)], bend.by_point[i], scale, r.entries);
    row(c.least + scale * bend.curvature, true);
  }
  for (const SmoothJoint& j : joints_) {
    const std::vector<ControlPoint>* controls = variables_.edge(j.edge);
    if (controls == nullptr) {
      row(0.0);
      continue;
    }
    const Vec2 before = Variables::value((*controls)[j.joint - 1], x);
    const Vec2 at = Variables::value((*controls)[j.joint], x);
    const Vec2 after = Variables::value((*controls)[j.joint + 1], x);
    const Vec2 in = at - before;
    const Vec2 out = after - at;
    const double a2 = dot(in, in);
    const double b2 = dot(out, out);
    const Vec2 by_in = a2 > 0.0 ? (-1.0 / a2) * left_normal(in) : Vec2{};
    const Vec2 by_out = b2 > 0.0 ? (1.0 / b2) * left_normal(out) : Vec2{};
    accumulate((*controls)[j.joint - 1], -by_in, kAngleScaleMm, r.entries);
    accumulate((*controls)[j.joint], by_in - by_out, kAngleScaleMm, r.entries);
    accumulate((*controls)[j.joint + 1], by_out, kAngleScaleMm, r.entries);
    row(kAngleScaleMm * turn(in, out));
  }
}

std::string Constraints::name(int row) const {
  std::size_t i = static_cast<std::size_t>(row);
  if (i < system_.lengths.size()) return system_.lengths[i].name;
  i -= system_.lengths.size();
  if (i < system_.widths.size()) return system_.widths[i].name;
  i -= system_.widths.size();
  if (i < system_.angles.size()) return system_.angles[i].name;
  i -= system_.angles.size();
  if (i < system_.spans.size()) return system_.spans[i].name;
  i -= system_.spans.size();
  if (i < system_.radii.size()) return system_.radii[i].name;
  i -= system_.radii.size();
  const SmoothJoint& j = joints_[i];
  const Piece& piece = block_.pieces[j.edge.piece];
  return "the " + piece.edges[j.edge.edge].id + " of the " + piece.id + " stays smooth";
}

std::string Constraints::relax(int row) const {
  std::size_t i = static_cast<std::size_t>(row);
  if (i < system_.lengths.size()) return system_.lengths[i].relax;
  i -= system_.lengths.size();
  const std::size_t unrelaxed = system_.widths.size() + system_.angles.size();
  if (i < unrelaxed) return {};
  i -= unrelaxed;
  if (i < system_.spans.size()) return system_.spans[i].relax;
  i -= system_.spans.size();
  return i < system_.radii.size() ? system_.radii[i].relax : std::string();
}

}  // namespace pinwright
