#pragma once
#include <vector>

#include "engine/geometry/cubic.h"

namespace pinwright::api {

struct Layout {
  std::vector<Vec2> low;  ///< where each box's lower-left corner (least x, greatest y) comes to lie
  double width = 0.0;
  double height = 0.0;
};

/// Boxes side by side in their order, in rows of at most row_mm (a wider box has a row of its own),
/// standing on the row's foot, a low box on top of the one before it where the row is high enough,
/// at least gap_mm apart and from the border. Page coordinates with (0, 0) at the upper left. No
/// two overlap.
Layout lay_out(const std::vector<Box>& boxes, double row_mm, double gap_mm);

}  // namespace pinwright::api
