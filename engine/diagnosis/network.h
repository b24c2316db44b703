#pragma once
// The network that diagnosis reasons on: causes above, signs below, noisy-OR with leak.
// Pearl, Probabilistic Reasoning in Intelligent Systems (1988), 4.3.2; the two-level network of
// QMR-DT, Shwe et al., Methods of Information in Medicine 30 (1991).

#include <cstddef>
#include <string>
#include <string_view>
#include <vector>

#include "engine/base/result.h"

namespace pinwright {

/// What kind of thing a cause is; only the first two are mended on the pattern.
enum class CauseKind { body, block, sewing, fabric };
std::string_view to_text(CauseKind kind);

struct CauseNode {
  std::string id;
  double prior = 0.0;  ///< in (0, 1)
  CauseKind kind = CauseKind::body;
};

struct SignNode {
  std::string id;
  double leak = 0.0;  ///< P(seen | no cause holds), in [0, 1)
};

/// P(sign not seen | only this cause holds) = 1 - strength.
struct Link {
  std::size_t cause = 0;
  std::size_t sign = 0;
  double strength = 0.0;  ///< in (0, 1]
};

struct Network {
  std::vector<CauseNode> causes;
  std::vector<SignNode> signs;
  std::vector<Link> links;
};

/// All unsound parts: "probability-range" (NaN too), "link-index", "link-twice", "id-twice" (among
/// causes or among signs). Place: "cause ID", "sign ID" or "link N".
Problems check(const Network& network);

}  // namespace pinwright
