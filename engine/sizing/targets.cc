#include "engine/sizing/targets.h"

#include <cmath>

namespace pinwright {

std::vector<Target> targets_of(const Block& block, const Measurements& body, double off_by,
                               double tolerance) {
  std::vector<Target> targets;
  for (const GarmentMeasure& m : measures(block)) {
    if (!m.body) continue;
    const auto measured = body.find(*m.body);
    const auto ease = block.ease.find(*m.body);
    if (measured == body.end() || ease == block.ease.end()) continue;
    const double wanted = measured->second + ease->second;
    if (std::isfinite(wanted) && std::abs(wanted - m.value) > off_by)
      targets.push_back({m.id, wanted, tolerance, "body and ease"});
  }
  return targets;
}

}  // namespace pinwright
