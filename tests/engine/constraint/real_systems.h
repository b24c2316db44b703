#pragma once
// Systems as alterations make them, on the demo blocks: for tests and benchmarks of the solver.

#include <string>
#include <vector>

#include "engine/constraint/system.h"

namespace pinwright {

struct RealSystem {
  std::string name;
  Block block;
  System system;
};

/// Necklines and armholes made longer and shorter, shoulder tips lowered, caps redrawn, with every
/// join that they touch running on; on the knit top and on the woven bodice. Equalities only.
std::vector<RealSystem> real_systems();

}  // namespace pinwright
