#pragma once
// Several complaints, one set of amounts: from an advice to a joint sizing.
//
// Each proposal by itself says what its step would do to the measure that it is for (measure_of.h);
// that is what its finding asks of the garment. Done one after the other, the second step finds a
// measure that the first has changed already, and undoes or overdoes it. Here all that is asked is
// asked at once, and the amounts are found together (engine/sizing/sizing.h):
//
//     finding -> proposal -> step -> measure it is for: now + what the step alone changes = wanted
//                              '---> its amount is an unknown         all of them -> size_jointly

#include <optional>
#include <string>
#include <vector>

#include "engine/sizing/sizing.h"
#include "knowledge/advise.h"

namespace pinwright::knowledge {

struct JointWish {
  /// Ids of the advice's proposals; empty: for each finding seen, in the order told, the first
  /// proposal on the pattern of its most probable cause (the first cause of which it is a reason).
  std::vector<std::string> proposals;
  /// Besides, body + ease for all measures that have both and that no finding speaks of: the wearer
  /// of the try-on, else the one the block was drafted for. Each is cured by the first
  /// operation that is for it (measure_of.h), else by those of cures_for().
  bool body = false;
};

/// What is not in the set, and why, in words.
struct LeftOut {
  std::string sign;      ///< a finding for which nothing was chosen, or whose own amount no chosen
                         ///< proposal asks for (its cause shows elsewhere); or
  std::string proposal;  ///< the proposal whose step it is
  std::string text;
};

/// A step of a chosen proposal, in the set.
struct JointStep {
  enum class Part {
    sized,  ///< its amount is sought
    kept,   ///< no finished measure counts it: done before the others, by its own amount
    sewn,   ///< moves no line: passed through as it is
  };
  Part part = Part::sized;
  std::string proposal;
  std::string asked_by;
  ProposedStep proposed;  ///< as it is by itself
  std::size_t cure = 0;   ///< sized: index into JointInput::sizing.cures
};

struct JointInput {
  std::vector<std::string> proposals;  ///< chosen, in order
  std::vector<JointStep> steps;        ///< of all of them, in order, those left out not
  std::vector<LeftOut> left_out;
  Block start;         ///< the block after the steps that are kept
  SizingInput sizing;  ///< on `start`; without cures when nothing is to be sized
};

/// Cures: each step that moves a line, asked for by its finding in the fitter's words.
/// Targets: what the step alone would make of its measure, and on top what other steps only carry
/// along (measure_of.h). Where the block refuses the whole amount by itself, the change is reckoned
/// from the part of it that it takes; where it takes none, the step is left out with the reason.
/// Findings that ask for the same measure the same way are one wish, the larger; those that ask for
/// opposite ways stand against each other (and end in a conflict that names both). An assumed
/// amount is known less exactly than a told one.
/// Limits: those of the garment (measure_limits.h) for the wearer and the cloth of the try-on, else
/// of the block.
/// Problems: "proposal-unknown" (place "/together/proposals/<i>"; those there are offered),
/// "proposal-twice", "cause-twice" (two proposals for one cause would cure it twice), "none-chosen"
/// (place "/together"; says for each finding why), "nothing-to-size" (the chosen ones move no line,
/// lack their amounts, or this block refuses them).
inline constexpr double kToldTolerance = 1.0;
inline constexpr double kAssumedTolerance = 3.0;
inline constexpr double kBodyTolerance = 3.0;
Result<JointInput> joint_input(const Knowledge& k, const Block& block, const TryOn& tryon,
                               const Advice& advice, const JointWish& wish);

struct Joint {
  JointInput input;
  Sizing sizing;
  /// Ready for alter() on the block: those kept, those sized, those that are sewn.
  std::vector<Step> steps;
};

/// joint_input(), then size_jointly(). That not all can be had is no problem but an answer:
/// Sizing::met and conflicts.
Result<Joint> size_together(const Knowledge& k, const Block& block, const TryOn& tryon,
                            const Advice& advice, const JointWish& wish);

/// Where the step's amount stands in Sizing::cures: the same operation said by two findings is one
/// there.
const SizedCure& sized_cure(const Joint& joint, const JointStep& step);

}  // namespace pinwright::knowledge
