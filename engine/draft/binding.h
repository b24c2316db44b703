#pragma once
// The strip that binds a knit neckline.

#include "engine/pattern/piece.h"
#include "engine/pattern/seam.h"

namespace pinwright::drafting {

struct StripAsk {
  double front_neckline_mm = 0.0;  ///< half, on the stitching line
  double back_neckline_mm = 0.0;
  double ratio = 0.9;
  double finished_width_mm = 0.0;
  double allowance_mm = 0.0;
};

/// A rectangle as long as ratio x the whole neckline and twice as high as the finished width: it is
/// sewn on along `opening`, turned over the raw edges and caught down inside along `folded`. Joined
/// at the centre back; notches mark shoulder, centre front and shoulder at the shares that the
/// neckline's parts have. Cut with its length along the stretch (across the cloth).
Piece strip(const StripAsk& ask);

}  // namespace pinwright::drafting
