#pragma once
// The checks that a block, and a changed block, must pass, as a report.

#include <optional>
#include <string>
#include <vector>

#include "engine/base/result.h"
#include "engine/pattern/block.h"
#include "engine/pattern/measures.h"

namespace pinwright {

struct SectionProof {
  std::string upto;   ///< notch ids "front-notch / cap-notch", or "end"
  double a_mm = 0.0;  ///< length of run a in this section
  double b_mm = 0.0;
  double ease_wanted = 0.0;
  double ease_found = 0.0;       ///< a - b
  double notch_offset_mm = 0.0;  ///< running a from its start to its notch, less that of b, less
                                 ///< the ease stated up to there
  bool ok = false;
};

struct SeamProof {
  std::string seam;
  std::string name;
  double a_mm = 0.0;
  double b_mm = 0.0;
  double ease_wanted = 0.0;
  double ease_found = 0.0;
  std::vector<SectionProof> sections;
  bool ok = false;
};

struct BindingProof {
  std::string binding;
  double opening_mm = 0.0;  ///< whole, on the stitching line
  double strip_mm = 0.0;
  double ratio_wanted = 0.0;
  double ratio_found = 0.0;
  bool ok = false;
};

struct JoinProof {
  std::string join;
  std::string name;
  double deviation_deg = 0.0;  ///< sum of interior angles less the target
  bool ok = false;
};

/// A limit (constraint/limits.h) looked at for the body: does the head pass, does the curve bend
/// gently enough?
struct LimitProof {
  std::string id;
  std::string name;      ///< what must be: "the neck opening, stretched, passes a head of 560 mm"
  std::string quantity;  ///< what was counted
  bool at_most = false;  ///< the bound is the most, else the least
  double bound_mm = 0.0;
  double found_mm = 0.0;
  bool ok = false;
};

struct OutlineProof {
  std::string piece;
  Problems problems;  ///< empty when closed, counter-clockwise, not crossing, darts equal, ...
  bool ok = false;
};

/// How far an edge moved: the greatest distance of the new edge from the old one (both ways, at
/// places of equal share of the length).
struct Moved {
  std::string piece;
  std::string edge;
  double most_mm = 0.0;
  double before_mm = 0.0;  ///< length
  double after_mm = 0.0;
  bool same_bits = false;  ///< not moved at all
};

struct MeasureProof {
  std::string id;
  std::string name;
  MeasureKind kind = MeasureKind::girth;
  double before = 0.0;
  double after = 0.0;
  std::optional<double> target;  ///< body + ease, where both are known
};

struct Proof {
  std::vector<SeamProof> seams;
  std::vector<BindingProof> bindings;
  std::vector<JoinProof> joins;
  std::vector<LimitProof> limits;
  std::vector<OutlineProof> outlines;
  std::vector<Moved> moved;            ///< every edge of every piece; empty without a before
  std::vector<MeasureProof> measures;  ///< before == after without a before
  Problems failures;                   ///< every failed check in words, with its mend
  bool pass = false;
};

/// Structural soundness of a block that came from outside: ids, references of seams, joins,
/// bindings and linings, finite numbers, closed counter-clockwise outlines that do not cross,
/// straight edges straight, equal dart legs, notches on their edges, folds on x = 0, at least the
/// seams that its pieces need ("seam-missing"). Empty when sound. Everything else here needs that.
Problems check_block(const Block& block);

/// Walks every seam, binding and join of `after`; with `before` also says what moved. A body to
/// hold the measures and the limits against may differ from the one the block was drafted for. A
/// limit that does not hold is a failure ("limit") unless `before` broke it already and `after` is
/// no worse; it is listed as not ok in either case.
Proof prove(const Block& after, const Block* before = nullptr, const Measurements* body = nullptr);

}  // namespace pinwright
