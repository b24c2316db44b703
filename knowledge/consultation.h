#pragma once
// A session of questions: which one comes next, how many are left, and why it ends.

#include <optional>
#include <string>
#include <vector>

#include "engine/base/result.h"
#include "engine/diagnosis/inference.h"
#include "engine/pattern/tryon.h"
#include "knowledge/network_of.h"

namespace pinwright::knowledge {

inline constexpr std::size_t kMostQuestions = 5;

struct QuestionAsked {
  std::string sign;
  std::string ask;
  double gain_bits = 0.0;
  double cost = 1.0;
};

/// Either a question, or why there is none any more.
struct NextStep {
  std::optional<QuestionAsked> question;
  std::size_t questions_left = 0;  ///< with the one here; 0 when it ends
  std::string stopped;             ///< one sentence; empty while a question stands
};

/// Stops when it is `settled`, when kMostQuestions were asked (tryon.asked), and when nothing that
/// can still be asked tells enough. Not asked: what is certain, what was asked before or could not
/// be told (a finding not looked at), the plainer sign of one that was seen, and signs that speak
/// mainly of causes that nothing seen points to. Errors: those of next_question().
Result<NextStep> next_step(const KindNetwork& network, const Evidence& evidence,
                           const Posterior& posterior, const TryOn& tryon, bool settled);

}  // namespace pinwright::knowledge
