#pragma once
// The shaped side seam of a knit top, with the front eased into the back over the bust.

#include "engine/geometry/curve.h"

namespace pinwright::drafting {

/// The side edge, two segments that meet at the waist. As x over height it is the cubic Hermite
/// curve with slopes that keep it monotone between its points (Fritsch & Butland's harmonic mean at
/// the waist, plumb there when the waist is the narrowest or the widest place), plumb at the
/// underarm. REQUIRES: hem.y < waist.y < underarm.y.
Curve knit_side(Vec2 hem, Vec2 waist, Vec2 underarm);
/// Slope dx/dy with which it leaves the hem.
double hem_slope(Vec2 hem, Vec2 waist);
/// The hem from the fold (0, 0) to its corner, square to both.
Curve hem_line(Vec2 corner, double slope);

struct KnitSideAsk {
  double bust_half = 0.0;  ///< half the finished girths
  double hem_half = 0.0;
  double waist_quarter = 0.0;
  double waist_y = 0.0;
  double back_underarm_y = 0.0;
  double extra_mm = 0.0;         ///< front side longer than the back's, over the bust
  double neck_y = 0.0;           ///< the body's neck point on the back
  double bust_below_neck = 0.0;  ///< plumb
};

/// Where hem, waist and underarm meet the mean quarter, and where the easing lies.
struct KnitSide {
  Vec2 hem;
  Vec2 waist;
  Vec2 underarm;  ///< the back's height
  double extra = 0.0;
  double raise = 0.0;  ///< front underarm point above the back's
  Curve front;
  Curve back;
  double upper_notch = 0.0;  ///< from the underarm point, front and back
  double span = 0.0;         ///< between the front's two notches; the back's are `extra` closer
  double bust_front = 0.0;   ///< height of the bust point on the front
  double bust_back = 0.0;    ///< height that meets it on the back
};

/// Solves the widths so that bust and hem measure what is asked, and the front's raise so that its
/// side is longer by exactly `extra_mm`. False when no such side can be drawn.
bool draw_knit_side(const KnitSideAsk& ask, KnitSide& side);

/// x of a side edge at a height; its upper end's above it.
double side_x(const Curve& side, double y);

}  // namespace pinwright::drafting
