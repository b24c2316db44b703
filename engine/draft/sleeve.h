#pragma once
// A set-in sleeve to given armholes.

#include "engine/base/result.h"
#include "engine/pattern/piece.h"

namespace pinwright::drafting {

struct SleeveAsk {
  double front_armhole_mm = 0.0;
  double back_armhole_mm = 0.0;
  double front_ease_mm = 0.0;  ///< cap longer than armhole, front half
  double back_ease_mm = 0.0;
  double girth_mm = 0.0;  ///< finished, at the underarm
  double hem_girth_mm = 0.0;
  double length_mm = 0.0;       ///< crown to hem, plumb
  double least_below_mm = 0.0;  ///< underarm to hem, plumb, at least; the length gives way to it
  double front_notch_mm = 0.0;  ///< along the armhole from the underarm
  double back_notch_mm = 0.0;   ///< the first of the back's two
  double allowance_mm = 0.0;
  double hem_allowance_mm = 0.0;
};

/// The second back notch lies this far above the first, on armhole and cap alike.
inline constexpr double kBackNotchStepMm = 10.0;

/// The sleeve drawn whole, front of the arm on +x, crown at x = 0 (within a hundredth of a mm),
/// underarm at y = 0. One system (statement.h) moves crown and cap until each half of the cap is
/// its armhole plus its ease and the cap runs on over crown and underarm seam; each half is an S
/// with one inflection, the front's more hollow. Errors: "draft-impossible" when no cap between 12
/// % and 95 % of the girth in height does it.
Result<Piece> sleeve(const SleeveAsk& ask);

/// Sets the notches into the armholes of front and back (front-notch; back-notch-1, back-notch-2)
/// and makes the sleeve for them; armhole lengths and notch places of `ask` are filled in here.
Result<Piece> sleeve_for(SleeveAsk ask, Piece& front, Piece& back);

}  // namespace pinwright::drafting
