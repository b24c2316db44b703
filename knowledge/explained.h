#pragma once
// The set of causes that explains all findings best, in words.

#include <string>
#include <vector>

#include "engine/base/result.h"
#include "engine/diagnosis/inference.h"
#include "knowledge/network_of.h"

namespace pinwright::knowledge {

struct ExplanationSaid {
  std::vector<std::string> causes;  ///< ids, most probable by itself first
  std::vector<std::string> next;    ///< ids of the next best set; may be empty: none of them
  double times_next = 1.0;          ///< how many times as probable as the next best set
  std::string text;  ///< "Hollow chest and neck binding too long together explain ..."
};

/// Nothing when no cause makes what was seen. Errors: those of best_explanation().
Result<std::optional<ExplanationSaid>> explained(const KindNetwork& network,
                                                 const Evidence& evidence,
                                                 const Posterior& posterior);

}  // namespace pinwright::knowledge
