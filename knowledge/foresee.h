#pragma once
// What a toile of this block would show on this body, before it is sewn.
//
//   block, body, cloth -> measures (garment - body - ease) -> measured evidence --.
//   posture notes      -> priors of the causes they speak of ---------------------+-> causes
//                                                                                 |     |
//   signs to expect: those measured, with amounts; and what the causes further <--'     '->
//   proposals make, with their probability

#include <optional>
#include <string>
#include <vector>

#include "knowledge/advise.h"
#include "knowledge/posture.h"

namespace pinwright::knowledge {

/// A finished measure against what body and ease ask for; amounts as the measure itself counts them
/// (girths and widths of the whole garment).
struct Compared {
  std::string measure;  ///< id as measures() gives it: bust-girth
  std::string name;
  double garment_mm = 0.0;
  double body_mm = 0.0;
  double ease_mm = 0.0;  ///< the block's intended ease, 0 where it states none
  bool of_girth = false;
  /// What the garment lacks; negative: what it has too much.
  double lacks_mm() const { return body_mm + ease_mm - garment_mm; }
};

struct Foreseen {
  std::string sign;
  std::string name;
  std::string zone;
  std::optional<FoundAmount> amount;  ///< of what was measured
  bool of_girth = false;              ///< the amount goes round the body
  double probability = 0.0;           ///< that a try-on shows it
  bool measured = false;              ///< read off the measures; else expected from the causes
  std::string why;                    ///< one sentence
  std::vector<std::string> cures;     ///< ids of the proposals that stand for it, best first
};

struct Foresight {
  std::vector<Compared> measures;  ///< all that have a body measurement to stand against
  std::vector<Foreseen> findings;  ///< measured ones, most probable first, then the others
  std::vector<PostureHeard> posture;
  std::vector<CauseFound> causes;  ///< most probable first; reasons_for are what was measured
  std::vector<Proposal> proposals;
  std::string verdict;  ///< one sentence
};

/// `block` with the wearer (else the one it was drafted for) and the fabric (else its own) of the
/// try-on; its findings are not looked at. Findings expected from causes alone: those of
/// probability kLeastForeseen and more that the measures and notes have raised by kLeastRaised.
/// Causes: those raised, of 0.1 and more, at most five, with their proposals as advise() makes
/// them, amounts from the measures. A block that has body and ease throughout, for a wearer without
/// posture notes: no findings. The knowledge must outlive the result (posture).
/// Errors: "wearer-missing" ("/wearer"), those of check_measurements, "block-kind-unknown".
inline constexpr double kLeastForeseen = 0.25;
inline constexpr double kLeastRaised = 0.15;
Result<Foresight> foresee(const Knowledge& k, const Block& block, const TryOn& tryon);

}  // namespace pinwright::knowledge
