#pragma once
// From findings to causes in order, the one question, and proposals with amounts.

#include <optional>
#include <string>
#include <vector>

#include "engine/alteration/step.h"
#include "engine/base/result.h"
#include "engine/pattern/block.h"
#include "engine/pattern/tryon.h"
#include "knowledge/consultation.h"
#include "knowledge/explained.h"
#include "knowledge/model.h"
#include "knowledge/understand.h"

namespace pinwright::knowledge {

struct ReasonSaid {
  std::string sign;
  std::string text;  ///< in the fitter's words: "the front neckline stands off the chest (2 cm)"
  double log_odds = 0.0;
};

struct CauseFound {
  std::string id;
  std::string name;
  CauseKind kind = CauseKind::body;
  std::string what;
  std::string check;
  double probability = 0.0;
  std::vector<ReasonSaid> reasons_for;
  std::vector<ReasonSaid> reasons_against;
  std::vector<Source> sources;
};

struct ProposedStep {
  Step step;  ///< ready for alter(); operation sew / choose moves no line
  bool has_amount = false;
  bool assumed = false;      ///< no amount was told: the usual one was taken
  bool worth_making = true;  ///< false: below the smallest change worth making
  std::string limit;  ///< why the amount is at its limit or another way is better; may be empty
  std::string text;   ///< one sentence with the amount in it
};

struct Proposal {
  std::string id;  ///< remedy id, unique in the advice
  std::string cause;
  std::string name;
  bool on_pattern = false;  ///< some step moves a line of the block
  std::string suits;
  /// The amount is larger than this way suits: what is better then. Such proposals come after those
  /// of their cause that suit. Empty: within its limits.
  std::string beyond;
  std::vector<ProposedStep> steps;
  std::vector<std::string> follow;
  std::vector<Source> sources;
};

struct Advice {
  std::vector<Finding> findings;
  std::vector<NotUnderstood> not_understood;
  /// Most probable first; those under 0.02 and those that make nothing of what was seen left out.
  std::vector<CauseFound> causes;
  bool settled = false;
  std::string verdict;  ///< one sentence; "cannot tell yet" is one
  /// The causes that together explain all of it best; not there when nothing was seen.
  std::optional<ExplanationSaid> explanation;
  std::optional<QuestionAsked> question;
  std::size_t questions_left = 0;   ///< of kMostQuestions, with the one above; 0 when it ends
  std::string stopped;              ///< why there is no question any more; empty while there is one
  std::vector<Proposal> proposals;  ///< in order of their cause, then of preference
  std::vector<std::string> cautions;
};

/// `block` gives kind, geometry for measures, fabric; `tryon` may override fabric and wearer.
/// Findings, style (features.h) and what was asked (consultation.h) are taken from tryon;
/// not_understood is passed through. Proposals are those of the causes of probability 0.1 or more,
/// at most five causes. What the wearer's measurements say against the block (measured.h) weighs as
/// soft evidence for signs that no finding tells of, posture notes (posture.h) as priors; both
/// stand among the reasons. Errors: those of check_findings (place "/findings/0/sign"), of
/// check_measurements
/// ("/wearer/body/<id>"), "block-kind-unknown" ("/block/kind"), "evidence-too-wide".
Result<Advice> advise(const Knowledge& k, const Block& block, const TryOn& tryon,
                      std::vector<NotUnderstood> not_understood);

}  // namespace pinwright::knowledge
