#pragma once
// What a finding leaves open, and findings that stand against each other.

#include <vector>

#include "knowledge/understand.h"
#include "knowledge/words/draft_finding.h"

namespace pinwright::knowledge {

/// `findings` were made of draft.findings, in the same order. Asked, in this order, a finding:
///   - an amount of too much cloth, not said how taken: depth of a fold, or cloth?
///   - a girth, not said of what: each side, or in all?
///   - a range of which the middle was taken: nearer to which end?
///   - "a finger's width": how much is it? (no answers offered)
///   - a plain sign that has kinds: which of them?
std::vector<AskBack> ask_back(const Draft& draft, const std::vector<Finding>& findings);

/// Both stay findings, neither surer than a half.
std::vector<Contradiction> contradictions(std::vector<Finding>& findings);

}  // namespace pinwright::knowledge
