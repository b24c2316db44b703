#pragma once
// Front and back of a knit top: sketched, then solved together.

#include "engine/base/result.h"
#include "engine/draft/upper.h"
#include "engine/pattern/piece.h"
#include "engine/pattern/seam.h"

namespace pinwright::drafting {

/// Heights count from the hem at the centre; front and back share hem and waist.
struct KnitPlan {
  ShoulderPlan shoulder;
  Vec2 base;               ///< the body's neck point on the back
  double bust_half = 0.0;  ///< half the finished girths
  double waist_half = 0.0;
  double hem_half = 0.0;
  double waist_y = 0.0;
  double nape_y = 0.0;
  double scye_depth = 0.0;
  double underarm_y = 0.0;  ///< of the back
  double extra_mm = 0.0;    ///< front side longer than the back's, over the bust
  double bust_x = 0.0;
  double bust_below_neck = 0.0;  ///< plumb
  double across_front = 0.0;     ///< half
  double across_back = 0.0;
};

struct KnitBody {
  Piece front;
  Piece back;
};

std::vector<Join> knit_body_joins();

/// ::
///       .-. neckline: half the whole, front and back together
///      /   `--.  shoulder: laid out along its slope, fixed
///     |       |  armhole: as wide as front and back across at half its height
///     |      _/  underarm: the back's height given, the front's what its longer side takes
///     |     |    side: quarter of bust and waist at their levels, front = back + extra
///     |    /
///     `---'      hem: quarter of the hip along its curve
///
/// The first sketch is by proportion: quarters, the front raised by the extra length, the neckline
/// 1.2 times as deep as wide. One system over both pieces (statement.h) then states neckline, bust,
/// waist and hem, across front and back, the side seam and every join; hem, side, armhole and
/// neckline bend, the corners of hem, underarm and the front's neckline travel. The shoulder is
/// laid out and not solved: a length along a direction is exact as drawn. Errors:
/// "draft-impossible".
Result<KnitBody> draw_knit_body(const KnitPlan& plan);

}  // namespace pinwright::drafting
