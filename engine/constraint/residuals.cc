#include "engine/constraint/residuals.h"

#include <array>
#include <cmath>
#include <numbers>

#include "engine/geometry/arc_length.h"
#include "engine/geometry/intersect.h"

namespace pinwright {
namespace {

// Gauss-Legendre on [0, 1], 8 points a panel; Abramowitz & Stegun, table 25.4.
constexpr std::array<double, 4> kNode = {0.1834346424956498, 0.5255324099163290, 0.7966664774136267,
                                         0.9602898564975363};
constexpr std::array<double, 4> kWeight = {0.3626837833783620, 0.3137066458778873,
                                           0.2223810344533745, 0.1012285362903763};
constexpr int kPanels = 4;
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

void accumulate(const ControlPoint& p, Vec2 gradient, double scale, Eigen::MatrixXd& jacobian,
                int row) {
  for (std::size_t k = 0; k < 2; ++k) {
    if (p.x.unknown[k] >= 0) jacobian(row, p.x.unknown[k]) += scale * gradient.x * p.x.factor[k];
    if (p.y.unknown[k] >= 0) jacobian(row, p.y.unknown[k]) += scale * gradient.y * p.y.factor[k];
  }
}

}  // namespace

LengthGradient length_gradient(const Curve& curve) {
  LengthGradient g;
  g.length = length(curve);
  g.by_point.assign(curve.points.size(), Vec2{});
  for (std::size_t s = 0; s < curve.segments(); ++s) {
    const Cubic c = curve.segment(s);
    for (int panel = 0; panel < kPanels; ++panel) {
      for (std::size_t k = 0; k < 8; ++k) {
        const double node = k < 4 ? kNode[k] : -kNode[k - 4];
        const double weight = kWeight[k % 4] / (2.0 * kPanels);
        const double t = (panel + 0.5 * (1.0 + node)) / kPanels;
        const double u = 1.0 - t;
        const Vec2 d = unit(derivative(c, t));
        const std::array<double, 4> slope = {-3.0 * u * u, 3.0 * u * u - 6.0 * u * t,
                                             6.0 * u * t - 3.0 * t * t, 3.0 * t * t};
        for (std::size_t i = 0; i < 4; ++i) g.by_point[3 * s + i] += (weight * slope[i]) * d;
      }
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
                          joints_.size());
}

Curve Constraints::curve(EdgeAt at, const Eigen::VectorXd& x) const {
  Curve c = block_.pieces[at.piece].edges[at.edge].curve;
  if (const std::vector<ControlPoint>* controls = variables_.edge(at))
    for (std::size_t i = 0; i < controls->size(); ++i)
      c.points[i] = Variables::value((*controls)[i], x);
  return c;
}

Residuals Constraints::at(const Eigen::VectorXd& x) const {
  Residuals r;
  r.value = Eigen::VectorXd::Zero(count());
  r.jacobian = Eigen::MatrixXd::Zero(count(), variables_.count());
  int row = 0;
  for (const LengthConstraint& c : system_.lengths) {
    double sum = -c.value;
    for (const LengthTerm& term : c.terms) {
      const std::vector<ControlPoint>* controls = variables_.edge(term.edge);
      if (controls == nullptr) {
        sum += term.factor * length(block_.pieces[term.edge.piece].edges[term.edge.edge].curve);
        continue;
      }
      const LengthGradient g = length_gradient(curve(term.edge, x));
      sum += term.factor * g.length;
      for (std::size_t i = 0; i < controls->size(); ++i)
        accumulate((*controls)[i], g.by_point[i], term.factor, r.jacobian, row);
    }
    r.value[row++] = sum;
  }
  for (const WidthConstraint& c : system_.widths) {
    const Curve now = curve(c.edge, x);
    const std::vector<CurvePlace> places = at_height(now, c.level);
    const std::vector<ControlPoint>* controls = variables_.edge(c.edge);
    if (places.empty()) {
      r.value[row++] = kOutOfReachMm;  // the line search turns back from here
      continue;
    }
    const CurvePlace at = places.front();
    r.value[row] = point(now, at).x - c.x;
    if (controls != nullptr) {
      // The place slides along the curve to stay at the level: dx - (x'/y') dy.
      const Vec2 d = derivative(now.segment(at.segment), at.t);
      const double slide = d.y != 0.0 ? d.x / d.y : 0.0;
      const double t = at.t;
      const double u = 1.0 - t;
      const std::array<double, 4> share = {u * u * u, 3.0 * u * u * t, 3.0 * u * t * t, t * t * t};
      for (std::size_t i = 0; i < 4; ++i) {
        accumulate((*controls)[3 * at.segment + i], {share[i], -slide * share[i]}, 1.0, r.jacobian,
                   row);
      }
    }
    ++row;
  }
  for (const AngleConstraint& c : system_.angles) {
    double sum = -c.target;
    for (const CornerAt at : c.corners) {
      const std::size_t next = (at.edge + 1) % block_.pieces[at.piece].edges.size();
      const EdgeAt before{at.piece, at.edge};
      const EdgeAt after{at.piece, next};
      const Curve in = curve(before, x);
      const Curve out = curve(after, x);
      const std::size_t last = in.points.size() - 1;
      const Corner corner = corner_of(in.points[last - 1], in.points[last], out.points[1]);
      sum += corner.angle;
      const std::vector<ControlPoint>* in_controls = variables_.edge(before);
      const std::vector<ControlPoint>* out_controls = variables_.edge(after);
      if (in_controls != nullptr) {
        accumulate((*in_controls)[last - 1], corner.by_in, kAngleScaleMm, r.jacobian, row);
        accumulate((*in_controls)[last], corner.by_at, kAngleScaleMm, r.jacobian, row);
      }
      if (out_controls != nullptr)
        accumulate((*out_controls)[1], corner.by_out, kAngleScaleMm, r.jacobian, row);
    }
    r.value[row++] = kAngleScaleMm * sum;
  }
  for (const SmoothJoint& j : joints_) {
    const std::vector<ControlPoint>* controls = variables_.edge(j.edge);
    if (controls == nullptr) {
      ++row;
      continue;
    }
    const Curve c = curve(j.edge, x);
    const Vec2 in = c.points[j.joint] - c.points[j.joint - 1];
    const Vec2 out = c.points[j.joint + 1] - c.points[j.joint];
    const double a2 = dot(in, in);
    const double b2 = dot(out, out);
    r.value[row] = kAngleScaleMm * turn(in, out);
    const Vec2 by_in = a2 > 0.0 ? (-1.0 / a2) * left_normal(in) : Vec2{};
    const Vec2 by_out = b2 > 0.0 ? (1.0 / b2) * left_normal(out) : Vec2{};
    accumulate((*controls)[j.joint - 1], -by_in, kAngleScaleMm, r.jacobian, row);
    accumulate((*controls)[j.joint], by_in - by_out, kAngleScaleMm, r.jacobian, row);
    accumulate((*controls)[j.joint + 1], by_out, kAngleScaleMm, r.jacobian, row);
    ++row;
  }
  return r;
}

std::string Constraints::name(int row) const {
  std::size_t i = static_cast<std::size_t>(row);
  if (i < system_.lengths.size()) return system_.lengths[i].name;
  i -= system_.lengths.size();
  if (i < system_.widths.size()) return system_.widths[i].name;
  i -= system_.widths.size();
  if (i < system_.angles.size()) return system_.angles[i].name;
  i -= system_.angles.size();
  const SmoothJoint& j = joints_[i];
  const Piece& piece = block_.pieces[j.edge.piece];
  return "the " + piece.edges[j.edge.edge].id + " of the " + piece.id + " stays smooth";
}

}  // namespace pinwright
