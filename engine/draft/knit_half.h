#pragma once
// One half piece of a knit top from its numbers.

#include "engine/draft/neckline.h"
#include "engine/pattern/piece.h"

namespace pinwright::drafting {

// 3/8 in, about 1 cm, on a knit and 5/8 in for its hem: common practice.
inline constexpr double kKnitAllowanceMm = 10.0;
inline constexpr double kKnitHemMm = 16.0;
/// The binding's finished width; the neckline's allowance is the same and fills the binding.
inline constexpr double kBindingWidthMm = 10.0;

struct KnitHalfAsk {
  bool front = false;
  Curve side;              ///< hem to underarm
  double hem_slope = 0.0;  ///< dx/dy of the side at the hem
  double slope = 0.0;      ///< of the shoulder
  double shoulder_mm = 0.0;
  NecklineAsk neckline;
  double neck_depth = 0.0;
  double across_x = 0.0;
  double waist_y = 0.0;
};

/// Edges hem, side, armhole, shoulder, neckline, centre-front or centre-back; the landmarks at its
/// corners and waist-level; grainline and fold. Notches and further landmarks are the caller's.
Piece knit_half(const KnitHalfAsk& ask);

}  // namespace pinwright::drafting
