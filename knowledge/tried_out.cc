#include "knowledge/tried_out.h"

#include "engine/alteration/largest.h"

namespace pinwright::knowledge {
namespace {

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
    // The first when the problem names none.
    const std::size_t at = step_named(p.place, proposal.steps.size()).value_or(0);
    say(proposal.steps[at], "this block does not take it so: " + p.what + "; " + p.mend);
  } else if (tried->block == block) {
    say(proposal.steps.front(), "the pattern has this already: cut and sew by it");
  }
}

}  // namespace pinwright::knowledge
