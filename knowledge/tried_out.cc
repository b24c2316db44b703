#include "knowledge/tried_out.h"

#include <algorithm>
#include <charconv>
#include <string_view>

#include "engine/alteration/largest.h"

namespace pinwright::knowledge {
namespace {

/// The step that a problem's place "/steps/1/..." names; the first when it names none.
std::size_t step_of(const Problem& problem) {
  constexpr std::string_view kHead = "/steps/";
  std::size_t step = 0;
  if (problem.place.rfind(kHead, 0) == 0)
    std::from_chars(problem.place.data() + kHead.size(),
                    problem.place.data() + problem.place.size(), step);
  return step;
}

void say(ProposedStep& step, std::string limit) {
  if (step.limit.empty()) step.limit = std::move(limit);
}

}  // namespace

void try_out(const Block& block, Proposal& proposal) {
  if (!proposal.on_pattern || proposal.steps.empty() || block.pieces.empty()) return;
  std::vector<Step> steps;
  for (const auto& s : proposal.steps) {
    const OperationInfo* info = find_operation(s.step.operation);
    const bool moves = info != nullptr && info->amount != AmountKind::none;
    if (moves && (!s.has_amount || s.step.amount == 0.0)) return;
    steps.push_back(s.step);
  }
  const Result<Altered> tried = alter(block, steps);
  if (!tried) {
    const Problem p = with_largest(block, steps, tried.problems()).front();
    const std::size_t at = std::min(step_of(p), proposal.steps.size() - 1);
    say(proposal.steps[at], "this block does not take it so: " + p.what + "; " + p.mend);
  } else if (tried->block == block) {
    say(proposal.steps.front(), "the pattern has this already: cut and sew by it");
  }
}

}  // namespace pinwright::knowledge
