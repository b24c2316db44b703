#pragma once
// Which proposals are to be sized together, and who asked for them.

#include <string>
#include <vector>

#include "knowledge/joint.h"

namespace pinwright::knowledge {

struct Chosen {
  const Proposal* proposal = nullptr;  ///< of the advice
  std::string asked_by;                ///< the finding in the fitter's words; two: "... and ..."
};

struct Choice {
  std::vector<Chosen> chosen;
  std::vector<LeftOut> left_out;
};

/// Named: those, each asked for by the strongest reason for its cause. Else see JointWish. An empty
/// choice is no problem here. Problems: "proposal-unknown", "proposal-twice", "cause-twice".
Result<Choice> choose(const Knowledge& k, const Advice& advice,
                      const std::vector<std::string>& named);

}  // namespace pinwright::knowledge
