#pragma once
// Several complaints, one set of amounts.
//
// The garment's measures are functions m(a) of the amounts a of the steps. Sought are the amounts
// that, in this order,
//   1. meet the targets (findings and body + ease), each as exactly as it was told, or else as
//      nearly as the bounds and limits allow,
//   2. leave the measures nobody complained of where they were,
//   3. change least in sum:
//
//     minimise  |miss / tolerance|^2  +  kHold |m_h(a) - m_h(0)|^2  +  kSmall |a|^2
//     such that least <= a <= most,  sum of factor * measure >= or <= limit
//     miss = what |m(a) - wanted| is more than exact_to
//
// by Gauss-Newton steps (bounded_least_squares.h solves each exactly) on the altered block itself,
// with everything that restore() makes follow. The first Jacobian is one small change of every
// amount alone; afterwards each evaluation of the whole set renews every column by the secant of
// its own step, so that few more alterations are needed. Overlapping cures are thereby sized once:
// what one step already does to a measure is not asked of the next.

#include <optional>
#include <string>
#include <vector>

#include "engine/alteration/alter.h"
#include "engine/pattern/measures.h"

namespace pinwright {

/// A step whose amount is sought.
struct Cure {
  Step step;  ///< operation, options, side, what the amount counts; its amount is ignored
  std::string asked_by;  ///< the finding in the fitter's words
  /// Bounds of the amount, in the step's own counting; where not given, plus and minus the
  /// catalogue's largest amount (a strip's ratio: 0.5 to 1.2).
  std::optional<double> least;
  std::optional<double> most;
};

/// What a measure is to become: from a finding, or body + ease (targets.h).
struct Target {
  std::string measure;     ///< id as measures() gives it
  double wanted = 0.0;     ///< mm (girths: whole garment), or radians for an angle
  double tolerance = 1.0;  ///< mm that may be left over; for an angle mm at 100 mm from its corner
  std::string asked_by;    ///< the finding in the fitter's words, or "body and ease"
  /// How exactly the target is known, as the tolerance: half a millimetre for a finding pinned to
  /// the full millimetre. Nearer than this nothing else is moved for its sake.
  double exact_to = 0.05;
};

/// sum of factor * measure, mm.
struct MeasureTerm {
  std::string measure;
  double factor = 1.0;
};

/// What the garment must keep to, whatever is asked of it (those of a block: measure_limits.h).
struct MeasureLimit {
  std::string name;  ///< "the neck opening, stretched, passes a head of 570 mm"
  std::vector<MeasureTerm> terms;
  std::optional<double> at_least;
  std::optional<double> at_most;
  std::string relax;  ///< "keep 548 mm or more, or take a cloth that stretches more"
};

struct SizingInput {
  std::vector<Cure> cures;      ///< at least one; done in this order
  std::vector<Target> targets;  ///< at least one
  /// Measures that may go where they will. All others are held that are no target, no part of one
  /// (front and back of a bust girth), and not the whole of which a part is a target.
  std::vector<std::string> let_go;
  std::vector<MeasureLimit> limits;
};

struct SizedCure {
  Step step;                          ///< with the amount found
  std::vector<std::string> asked_by;  ///< every finding that asked for this operation
  double least = 0.0;
  double most = 0.0;
  bool at_least = false;  ///< the bound holds it: more of it would serve the targets better
  bool at_most = false;
  std::string
      bound_reason;   ///< why no more, where the pattern and not the catalogue sets the bound
  bool used = false;  ///< false: no amount is needed, the step is left out
};

/// A step's part in the change of a measure, mm or radians: what the measure changed when that
/// step was done after those before it. The shares of a measure sum to its whole change.
struct Share {
  std::size_t cure = 0;  ///< index into Sizing::cures
  double change = 0.0;
};

struct SizedMeasure {
  std::string measure;
  std::string name;
  MeasureKind kind = MeasureKind::girth;
  double before = 0.0;
  double wanted = 0.0;  ///< for a held measure the same as before
  double after = 0.0;
  double left_over = 0.0;     ///< wanted - after
  bool met = false;           ///< within the tolerance; for a held measure within 1 mm
  std::string asked_by;       ///< empty for a held measure
  std::vector<Share> shares;  ///< where at least 0.05 mm (or 0.0005 rad)
};

/// One of the things that cannot all be had.
struct ConflictMember {
  enum class Kind { target, bound, limit };
  Kind kind = Kind::target;
  std::size_t index = 0;  ///< of Sizing::targets, Sizing::cures, SizingInput::limits
  std::string says;       ///< in the fitter's words, with its number
  /// The number that would do if this one alone gave way and the others stood: of the measure
  /// (target), of the amount (bound), of the sum (limit). Nothing where none would.
  std::optional<double> would_do;
  std::string relax;  ///< the same in words
};

/// The smallest set of targets, bounds and limits that contradict each other: leave out any one,
/// and the rest can be met (deletion filter; Chinneck & Dravnieks, ORSA J. Computing 3, 1991; on
/// the problem made linear at the amounts found).
struct SizingConflict {
  std::vector<ConflictMember> members;
  std::string text;  ///< one sentence: what cannot be had together, and what to relax
};

struct Sizing {
  std::vector<SizedCure> cures;  ///< one for each different operation asked for, in order
  std::vector<Step> steps;       ///< those used, ready for alter()
  Block block;                   ///< altered by them
  std::vector<StepNote> notes;
  std::vector<SizedMeasure> targets;
  std::vector<SizedMeasure> held;
  std::vector<SizingConflict> conflicts;  ///< empty when every target is met
  bool met = false;                       ///< every target within its tolerance, every limit kept
  int alterations = 0;                    ///< steps tried on the block: what it cost
};

/// Problems: those of check_step (place "/cures/<i>/..."), "cures-missing", "targets-missing",
/// "measure-unknown" (this block has no such measure, the nearest offered), "target-not-a-number",
/// "tolerance-range" (also of exact_to), "bounds-crossed", "limit-empty" (no terms, no bound or no
/// number). A target that cannot be met is no problem but an answer: see `conflicts`. A cure that
/// this block refuses at all is answered with least = most = 0 and the reason. Deterministic; the
/// block is not touched.
Result<Sizing> size_jointly(const Block& block, const SizingInput& input);

}  // namespace pinwright
