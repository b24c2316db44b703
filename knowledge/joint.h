#pragma once
// Several complaints, one set of amounts: from an advice to a joint sizing.
//
// Each proposal by itself says what its step would do to the measure that it is for (measure_of.h);
// that is what its finding asks of the garment. Done one after the other, the second step finds a
// measure that the first has changed already, and undoes or overdoes it. Here all that is asked is
// asked at once, and the amounts are found together (engine/sizing/sizing.h):
//
//     finding ─► proposal ─► step ─► measure it is for: now + what the step alone changes = wanted
//                              └──► its amount is an unknown            all of them ─► size_jointly

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
  /// Besides, body + ease for all measures that have both: the wearer of the try-on, else the one
  /// the block was drafted for.
  bool body = false;
};

/// What is not in the set, and why, in words.
struct LeftOut {
  std::string sign;      ///< a finding for which nothing was chosen, or
  std::string proposal;  ///< the proposal whose step it is
  std::string text;
};

/// A step of a chosen proposal.
struct JointStep {
  std::string proposal;
  ProposedStep proposed;  ///< as it is by itself
  /// Index into JointInput::sizing.cures; nothing for a step that moves no line (sewn, chosen): it
  /// is passed through as it is.
  std::optional<std::size_t> cure;
};

struct JointInput {
  std::vector<std::string> proposals;  ///< chosen, in order
  std::vector<JointStep> steps;        ///< of all of them, in order, those left out not
  std::vector<LeftOut> left_out;
  SizingInput sizing;
};

/// Cures: each step that moves a line, asked for by its finding in the fitter's words. A step that
/// no finished measure counts keeps its amount (least = most).
/// Targets: what the step alone would make of its measures. Where the block refuses the whole
/// amount by itself, the change is reckoned from the part of it that it takes. Findings that ask
/// for the same measure the same way are one wish, the larger; those that ask for opposite ways
/// stand against each other (and end in a conflict, told by both). An assumed amount is known less
/// exactly (kAssumedTolerance) than a told one.
/// Limits: those of the garment (measure_limits.h) for the wearer and the cloth of the try-on, else
/// of the block.
/// Problems: "proposal-unknown" (place "/together/proposals/<i>", those there are offered),
/// "proposal-twice", "cause-twice" (two proposals for one cause would cure it twice),
/// "none-chosen" (nothing was found, or no probable cause has a proposal on the pattern: says for
/// each finding why), "nothing-to-size" (the chosen ones move no line, or lack their amounts).
inline constexpr double kToldTolerance = 1.0;
inline constexpr double kAssumedTolerance = 3.0;
Result<JointInput> joint_input(const Knowledge& k, const Block& block, const TryOn& tryon,
                               const Advice& advice, const JointWish& wish);

}  // namespace pinwright::knowledge
