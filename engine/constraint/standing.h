#pragma once
// What must hold on a block at all times, found once from its seams, joins, darts and limits.
//
//   sewn runs          equal in length up to the ease stated. Between notches too: a seam's total
//   is
//                      the solver's, and the notches of run a are then set so that every section
//                      has its own ease (a cap's lies above the notches, none under the arm)
//   lines run on       over a seam the interior angles at the corners that meet sum to half a turn,
//                      at a fold to a quarter: neckline and armhole over the shoulder, hem and
//                      armhole over the side, cap over the underarm
//   dart legs          equally long and straight
//   straight edges     stay straight; grainlines and points that are not listed as free stay put
//   limits             heads, hips, hands, arms pass, curves bend gently (limits.h)
//   strips, linings    are cut after their opening and their shell once those are solved: they are
//                      functions of them, not unknowns

#include <set>
#include <utility>
#include <vector>

#include "engine/constraint/limits.h"
#include "engine/constraint/system.h"

namespace pinwright {

struct SeamAt {
  std::size_t seam = 0;  ///< index in the block
  std::vector<EdgeAt> a;
  std::vector<EdgeAt> b;
  bool cap = false;  ///< run a is made of cap edges
};

struct JoinAt {
  std::size_t join = 0;
  /// The edge that ends and the edge that starts at each corner.
  std::vector<std::pair<EdgeAt, EdgeAt>> corners;
  std::vector<EdgeAt> edges;  ///< of all corners, in order, each once
  bool cap = false;           ///< a cap edge is among them
};

/// Costs n log n in the number of parts. Holds indices only: it stays true while edges, seams and
/// joins keep their places. REQUIRES: a block whose references are sound (proof/proof.h).
class Standing {
 public:
  explicit Standing(const Block& block);
  const std::vector<SeamAt>& seams() const { return seams_; }
  const std::vector<JoinAt>& joins() const { return joins_; }
  /// On a seam that is not a cap's.
  bool is_sewn(EdgeAt at) const { return sewn_.contains(at); }

 private:
  std::vector<SeamAt> seams_;
  std::vector<JoinAt> joins_;
  std::set<EdgeAt> sewn_;
};

/// Sum of the interior angles less the target, radians.
double join_residual(const Block& block, const JoinAt& join);
AngleConstraint angle_of(const Block& block, const JoinAt& join);
/// a - b = ease.
LengthConstraint equal_runs(const Block& block, const SeamAt& seam);

/// All of the above that touches one of the moving edges, as a system.
System standing_system(const Block& block, std::vector<EdgeAt> free_edges,
                       std::vector<FreeCorner> free_corners);

}  // namespace pinwright
