#pragma once
// The woven bodice's halves. Heights count from the waist: both pieces' waist levels are near y =
// 0.

#include "engine/base/result.h"
#include "engine/draft/ease.h"
#include "engine/draft/need.h"
#include "engine/draft/upper.h"
#include "engine/pattern/piece.h"

namespace pinwright::drafting {

inline constexpr double kWovenAllowanceMm = 15.0;  // common practice for home sewing: 5/8 in
inline constexpr double kWovenNeckAllowanceMm = 10.0;
inline constexpr double kWovenUnderarmBelowMm = 20.0;  // 1/2 to 1 in: common practice
inline constexpr double kWovenShoulderEaseMm = 5.0;    // back eased into front, beside the dart

struct WovenPlan {
  ShoulderPlan shoulder;
  double front_bust = 0.0;  ///< half the finished front at the bust level
  double back_bust = 0.0;
  double front_waist = 0.0;  ///< half the finished waist line of the front, dart sewn
  double back_waist = 0.0;
  double front_across = 0.0;  ///< half
  double back_across = 0.0;
  double nape_y = 0.0;               ///< back neck point
  double underarm_below_neck = 0.0;  ///< underarm point below the body's neck point, both pieces
  double neck_y = 0.0;               ///< front neck point
  Vec2 bust_point;
};

/// How far the front's underarm point lies above its bust level; 0 when the bust is higher.
double bust_below_underarm(const WovenPlan& plan);

/// ::
///      neck .--.
///          (    `--.__ shoulder-inner, shoulder-dart, shoulder-outer
///          |          \.
///   fold   |           |  armhole
///          |          _/
///          |   /\    /  side, leaning in by its share of bust less waist
///          |__/  \__/   waist-inner, waist dart, waist-outer
///
/// The front's bust level meets the back's side as far below the underarm point as on the front.
/// Errors: "draft-impossible".
Result<Piece> woven_back(const WovenPlan& plan);

/// The front with the bust dart in the side: the side is laid out in one line as sewn, cut at the
/// dart, and its lower part swung about the dart's point until the waist is level with the centre.
/// The dart's angle is what that swing takes; the waist dart takes what the swing leaves of bust
/// less waist. `side_mm`: the back's side, with which the front's two parts together agree.
/// Errors: "draft-impossible".
Result<Piece> woven_front(const WovenPlan& plan, double side_mm, double neckline_mm);

}  // namespace pinwright::drafting
