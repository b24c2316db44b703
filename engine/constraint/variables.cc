#include "engine/constraint/variables.h"

#include <algorithm>
#include <set>

namespace pinwright {
namespace {

constexpr double kThirds[4] = {0.0, 1.0 / 3.0, 2.0 / 3.0, 1.0};

Coordinate constant(double value) { return {value, {-1, -1}, {0.0, 0.0}}; }

double evaluate(const Coordinate& c, const Eigen::VectorXd& x) {
  double value = c.constant;
  for (std::size_t k = 0; k < 2; ++k)
    if (c.unknown[k] >= 0) value += c.factor[k] * x[c.unknown[k]];
  return value;
}

// (1 - t) a + t b
Coordinate between(const Coordinate& a, const Coordinate& b, double t) {
  Coordinate c = constant((1.0 - t) * a.constant + t * b.constant);
  std::size_t k = 0;
  if (a.unknown[0] >= 0) c.unknown[k] = a.unknown[0], c.factor[k++] = 1.0 - t;
  if (b.unknown[0] >= 0) c.unknown[k] = b.unknown[0], c.factor[k] = t;
  return c;
}

}  // namespace

int Variables::add(double value) {
  values_.push_back(value);
  return static_cast<int>(values_.size()) - 1;
}

Variables::Variables(const Block& block, const System& system) {
  const auto ring_size = [&](std::size_t piece) { return block.pieces[piece].edges.size(); };

  std::map<CornerAt, Freedom> freedom;
  for (const FreeCorner& free : system.free_corners) {
    Freedom& f = freedom[free.corner];
    f.x = f.x || free.freedom.x;
    f.y = f.y || free.freedom.y;
  }
  std::set<EdgeAt> touched(system.free_edges.begin(), system.free_edges.end());
  for (const auto& [at, f] : freedom) {
    if (!f.x && !f.y) continue;
    touched.insert({at.piece, at.edge});
    touched.insert({at.piece, (at.edge + 1) % ring_size(at.piece)});
  }
  const std::set<EdgeAt> free_edges(system.free_edges.begin(), system.free_edges.end());

  // Unknowns are numbered along the ring, so that what hangs together lies together.
  std::map<CornerAt, ControlPoint> corners;
  const auto corner = [&](std::size_t piece, std::size_t edge, Vec2 at) {
    const auto [found, fresh] =
        corners.try_emplace({piece, edge}, ControlPoint{constant(at.x), constant(at.y)});
    const auto f = freedom.find({piece, edge});
    if (fresh && f != freedom.end()) {
      if (f->second.x) found->second.x = {0.0, {add(at.x), -1}, {1.0, 0.0}};
      if (f->second.y) found->second.y = {0.0, {add(at.y), -1}, {1.0, 0.0}};
    }
    return found->second;
  };

  for (const EdgeAt at : touched) {
    const Edge& edge = block.pieces[at.piece].edges[at.edge];
    const std::vector<Vec2>& points = edge.curve.points;
    const std::size_t last = points.size() - 1;
    const std::size_t before = (at.edge + ring_size(at.piece) - 1) % ring_size(at.piece);
    const bool inner_free = !edge.straight && free_edges.contains(at);
    if (edge.straight && last == 3) straight_.insert(at);
    std::vector<ControlPoint> controls(points.size());
    controls.front() = corner(at.piece, before, points.front());
    if (inner_free) {
      for (std::size_t i = 1; i < last; ++i) {
        controls[i].x = {0.0, {add(points[i].x), -1}, {1.0, 0.0}};
        controls[i].y = {0.0, {add(points[i].y), -1}, {1.0, 0.0}};
      }
    }
    controls.back() = corner(at.piece, at.edge, points.back());
    for (std::size_t i = 1; i < last && !inner_free; ++i) {
      if (edge.straight && last == 3) {
        controls[i].x = between(controls.front().x, controls.back().x, kThirds[i]);
        controls[i].y = between(controls.front().y, controls.back().y, kThirds[i]);
      } else {
        controls[i] = {constant(points[i].x), constant(points[i].y)};
      }
    }
    if (std::any_of(controls.begin(), controls.end(),
                    [](const ControlPoint& p) { return p.moves(); }))
      edges_.emplace(at, std::move(controls));
  }
  start_ =
      Eigen::Map<const Eigen::VectorXd>(values_.data(), static_cast<Eigen::Index>(values_.size()));
}

const std::vector<ControlPoint>* Variables::edge(EdgeAt at) const {
  const auto found = edges_.find(at);
  return found == edges_.end() ? nullptr : &found->second;
}

Vec2 Variables::value(const ControlPoint& p, const Eigen::VectorXd& x) {
  return {evaluate(p.x, x), evaluate(p.y, x)};
}

std::vector<std::pair<EdgeAt, Curve>> Variables::curves(const Eigen::VectorXd& x,
                                                        const Block& block) const {
  std::vector<std::pair<EdgeAt, Curve>> all;
  all.reserve(edges_.size());
  for (const auto& [at, controls] : edges_) {
    const Edge& edge = block.pieces[at.piece].edges[at.edge];
    Curve curve = edge.curve;
    for (std::size_t i = 0; i < controls.size(); ++i) {
      if (controls[i].x.moves()) curve.points[i].x = evaluate(controls[i].x, x);
      if (controls[i].y.moves()) curve.points[i].y = evaluate(controls[i].y, x);
    }
    if (edge.straight) curve = straight_curve(curve.points.front(), curve.points.back());
    all.emplace_back(at, std::move(curve));
  }
  return all;
}

}  // namespace pinwright
