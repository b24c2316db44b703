#pragma once
// Necklines: running on over the shoulder, level at the centre.

#include "engine/geometry/curve.h"

namespace pinwright::drafting {

/// Half width of the neck opening as a share of the whole stitched neckline. Our own proportion: a
/// neckline drawn with it is a little deeper in front than wide, as a neck's base is.
inline constexpr double kNeckWidthShare = 0.178;
/// How far the neck point stands above the back neck point, as a share of that half width.
inline constexpr double kNeckRiseShare = 0.30;

/// How a half neckline is to run.
struct NecklineAsk {
  Vec2 neck_point;
  Vec2 start;             ///< unit direction in which it leaves the neck point
  double fullness = 0.6;  ///< lines.h
  int segments = 1;       ///< 1 or 2; both give the same line
};

/// From the neck point to the centre (at x = 0, `depth` below the neck point).
Curve neckline(const NecklineAsk& ask, double depth);

}  // namespace pinwright::drafting
