#pragma once
// What must hold on a block, and which of its points may move to make it hold.
//
// The unknowns are the control points of the block's own curves; nothing is turned into polylines.
// Let x be the free coordinates and x0 their values as the primary change left them. Sought is
//
//     minimise   1/2 |x - x0|^2_W  +  s/2 |D2 (x - x0)|^2      movement, and loss of smoothness
//     such that  c(x) = 0 and d(x) >= 0
//
// where D2 takes second differences of the movement along each edge's control points: a change that
// runs out evenly costs little, a dent costs much.

#include <cstddef>
#include <string>
#include <vector>

#include "engine/geometry/vec2.h"
#include "engine/pattern/block.h"

namespace pinwright {

/// An edge of a block by position.
struct EdgeAt {
  std::size_t piece = 0;
  std::size_t edge = 0;
  auto operator<=>(const EdgeAt&) const = default;
};

/// The corner where an edge ends (and the next of the ring starts).
struct CornerAt {
  std::size_t piece = 0;
  std::size_t edge = 0;
  auto operator<=>(const CornerAt&) const = default;
};

/// Which coordinates of a corner may move.
struct Freedom {
  bool x = false;
  bool y = false;
};

struct FreeCorner {
  CornerAt corner;
  Freedom freedom;
};

/// How a quantity stands to its value.
enum class Sense { equal, at_least, at_most };

/// sum of factor * length(edge) = value (or at least, at most), mm.
struct LengthTerm {
  EdgeAt edge;
  double factor = 1.0;
};
struct LengthConstraint {
  std::string name;  ///< in the fitter's words: "the cap meets the front armhole"
  std::vector<LengthTerm> terms;
  double value = 0.0;
  Sense sense = Sense::equal;
  std::string relax = {};  ///< what to give up, with the number that would do; may be empty
};

/// The edge passes through (x, level), mm: the half width of a piece at a height.
struct WidthConstraint {
  std::string name;
  EdgeAt edge;
  double level = 0.0;
  double x = 0.0;
};

/// sum of the interior angles at the corners = target, radians.
struct AngleConstraint {
  std::string name;
  std::vector<CornerAt> corners;
  double target = 0.0;
};

/// How far a corner lies from another one in a direction (unit vector): a cap's height, a sleeve's
/// width at the upper arm, mm.
struct SpanConstraint {
  std::string name;
  CornerAt from;
  CornerAt to;
  Vec2 along{0.0, 1.0};
  double value = 0.0;
  Sense sense = Sense::equal;
  std::string relax = {};
};

/// The curve bends no more sharply than a circle of radius `least`, mm, at its start or its end.
struct RadiusConstraint {
  std::string name;
  EdgeAt edge;
  bool at_start = true;
  double least = 0.0;
  std::string relax = {};
};

/// Inner control points of free edges may move (those of straight edges stay at the thirds of
/// their ends); corners only where listed. An edge that is neither free nor has a free corner
/// keeps every point bit for bit; a straight edge follows its corners. Inner joints of free edges
/// that are smooth stay smooth.
struct System {
  std::vector<EdgeAt> free_edges;
  std::vector<FreeCorner> free_corners;
  std::vector<LengthConstraint> lengths;
  std::vector<WidthConstraint> widths;
  std::vector<AngleConstraint> angles;
  std::vector<SpanConstraint> spans;
  std::vector<RadiusConstraint> radii;
  double smoothness = 4.0;  ///< s above
};

}  // namespace pinwright
