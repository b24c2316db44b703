#pragma once
// Branch and bound for one connected part: which causes together make its signs most probable.

#include <optional>
#include <vector>

#include "engine/diagnosis/inference.h"

namespace pinwright {

/// A sign to be explained, or to be spared where its likelihood leans to absent.
struct CoverSign {
  double leak = 0.0;
  Likelihood observed;
  std::vector<std::size_t> causes;  ///< indices into Cover::weights, ascending
  std::vector<double> strengths;
};

struct Cover {
  std::vector<double> weights;  ///< ln(on / off) of each cause that may be taken; finite
  std::vector<CoverSign> signs;
};

struct CoverSet {
  std::vector<std::size_t> taken;  ///< ascending
  double score = 0.0;              ///< sum of the weights taken + sum of ln P(observed | taken)
};

/// Best set and next best one; two sets unless there is no cause. Nothing after `most_nodes`.
/// A sign that no cause taken makes and that cannot be otherwise counts as ln 1e-300.
std::optional<std::vector<CoverSet>> best_two(const Cover& cover, std::size_t most_nodes);

}  // namespace pinwright
