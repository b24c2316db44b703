#pragma once
// Control points as functions of the unknowns.

#include <Eigen/Core>
#include <array>
#include <map>
#include <set>
#include <utility>
#include <vector>

#include "engine/constraint/system.h"

namespace pinwright {

/// One coordinate of one control point: constant + sum of factor * unknown; at most two unknowns
/// (the ends of a straight edge).
struct Coordinate {
  double constant = 0.0;
  std::array<int, 2> unknown{-1, -1};
  std::array<double, 2> factor{0.0, 0.0};
  bool moves() const { return unknown[0] >= 0; }
};

struct ControlPoint {
  Coordinate x;
  Coordinate y;
  bool moves() const { return x.moves() || y.moves(); }
};

/// REQUIRES: every index in the system exists in the block.
class Variables {
 public:
  Variables(const Block& block, const System& system);

  int count() const { return static_cast<int>(start_.size()); }
  const Eigen::VectorXd& start() const { return start_; }
  /// The control points of an edge that has at least one moving point; nullptr otherwise.
  const std::vector<ControlPoint>* edge(EdgeAt at) const;
  /// All edges with a moving point, in order of piece and edge.
  const std::map<EdgeAt, std::vector<ControlPoint>>& edges() const { return edges_; }
  /// A straight edge: its inner points stay at the thirds of its ends.
  bool follows_its_ends(EdgeAt at) const { return straight_.contains(at); }
  static Vec2 value(const ControlPoint& p, const Eigen::VectorXd& x);
  /// The moving edges of the block with x in their moving coordinates; all others keep their bits.
  std::vector<std::pair<EdgeAt, Curve>> curves(const Eigen::VectorXd& x, const Block& block) const;

 private:
  int add(double value);

  Eigen::VectorXd start_;
  std::vector<double> values_;
  std::map<EdgeAt, std::vector<ControlPoint>> edges_;
  std::set<EdgeAt> straight_;
};

}  // namespace pinwright
