#pragma once
// Steps applied to a block: the primary change, then everything that must follow it.

#include <optional>
#include <string>
#include <string_view>
#include <vector>

#include "engine/alteration/catalogue.h"
#include "engine/alteration/step.h"
#include "engine/base/result.h"
#include "engine/pattern/block.h"

namespace pinwright {

/// What one step did, for the proof and the drawing.
struct StepNote {
  std::size_t step = 0;  ///< index into the steps
  std::string text;      ///< "front: closed 9 mm at the neckline, hinge at the bust point"
  std::vector<std::string> pieces;  ///< pieces the step itself changed
  std::vector<std::string> follow;  ///< pieces that followed (sleeve, binding, lining)
};

struct Altered {
  Block block;
  std::vector<StepNote> notes;
};

/// Applies the steps in order; after each, sewn runs are matched again (the cap to its armhole, the
/// strip to its opening, the lining to its shell), notches meet, lines run on over seams, curves
/// are fair. Edges that no step and no seam asked to change keep their points bit for bit. Either
/// every step is applied or none: on error the problems name the step ("/steps/1/...") and why:
/// those of check_step, "operation-not-here" (this block has no such piece, edge, dart or line),
/// "amount-too-large" (the geometry does not allow it), "no-solution" (with the constraint that
/// cannot be met), "conflict" (the smallest set of constraints that cannot hold together), "limit"
/// (a head, a hip, a hand would no longer pass; see constraint/limits.h).
Result<Altered> alter(const Block& block, const std::vector<Step>& steps);

/// Index of the step that a problem's place names: 3 of "/steps/3" and of what hangs on it; nothing
/// when it names none of `count` steps.
std::optional<std::size_t> step_named(std::string_view place, std::size_t count);

}  // namespace pinwright
