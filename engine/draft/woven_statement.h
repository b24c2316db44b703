#pragma once
// What must hold on the woven bodice's halves, told to the solver.

#include <optional>

#include "engine/draft/statement.h"
#include "engine/draft/woven.h"

namespace pinwright::drafting {

/// What is told to the solver apart from the plan.
struct Stated {
  double front_bust = 0.0;  ///< corrected where a dart crosses the bust level
  double back_bust = 0.0;
  bool side_gives = false;           ///< else the underarm point stays and the side keeps its lean
  std::optional<double> waist_dart;  ///< angle held, radians; the side gives then
};

/// REQUIRES: sketch holds the front and the back, in this order, and their joins.
Statement state_woven(const Block& sketch, const WovenPlan& plan, const Stated& stated);

}  // namespace pinwright::drafting
