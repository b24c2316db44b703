#pragma once
// The next question: the sign not yet looked at that settles most for its cost.

#include <optional>
#include <vector>

#include "engine/diagnosis/inference.h"

namespace pinwright {

struct Question {
  std::size_t sign = 0;
  double gain = 0.0;   ///< expected information about the causes, bits
  double value = 0.0;  ///< gain / cost
};

struct QuestionOptions {
  std::vector<double> cost;       ///< per sign, > 0; a look is 1, unpicking a seam about 5
  std::vector<bool> may_ask;      ///< per sign
  double least_gain_bits = 0.02;  ///< below it there is nothing worth asking
  double settled = 0.9;           ///< leading cause at or above and next below 1 - settled: done
};

/// Expected information = sum over causes of mutual information between the cause and the sign
/// given the evidence (C. E. Shannon, "A Mathematical Theory of Communication", 1948). Only signs
/// that are not certain and that may be asked are weighed; highest value wins, ties by index. Cost:
/// once through the parts that a sign touches for each sign; where that would pass some 5 ms in all
/// (many entangled findings), only the signs that seem to tell most when their causes are taken by
/// themselves, twelve at least, are weighed in full. Nothing when it is settled or nothing gains
/// enough. Errors: "options-size", "cost-range" (not above 0), and those of posterior().
Result<std::optional<Question>> next_question(const Network& network, const Evidence& evidence,
                                              const QuestionOptions& options);

}  // namespace pinwright
