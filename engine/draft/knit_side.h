#pragma once
// The shaped side seam of a knit top, and where the front is eased into the back over the bust.

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

/// Height of the hem's corner above its middle: the hem is an arc square to the fold and the side.
double hem_rise(Vec2 hem, Vec2 waist);

/// Where the easing over the bust lies on a front side, from its underarm point.
struct BustEasing {
  double upper_notch = 0.0;
  double span = 0.0;        ///< between the front's two notches; the back's are `extra` closer
  double below = 0.0;       ///< underarm point to the bust's level along the front
  double below_back = 0.0;  ///< the same along the back, where the bust's level meets it
};

/// REQUIRES: front has its waist between its two segments. False when the side above the waist is
/// too short to take up `extra`.
bool place_easing(const Curve& front, double bust_y, double extra, BustEasing& easing);

/// x of a side edge at a height; its upper end's above it.
double side_x(const Curve& side, double y);

}  // namespace pinwright::drafting
