#pragma once
// The woven bodice's halves. Heights count from the waist: both pieces' waist levels are near y =
// 0.

#include "engine/base/result.h"
#include "engine/draft/ease.h"
#include "engine/draft/need.h"
#include "engine/draft/upper.h"
#include "engine/draft/waist.h"
#include "engine/pattern/piece.h"
#include "engine/pattern/seam.h"

namespace pinwright::drafting {

inline constexpr double kWovenAllowanceMm = 15.0;  // common practice for home sewing: 5/8 in
inline constexpr double kWovenNeckAllowanceMm = 10.0;
inline constexpr double kWovenUnderarmBelowMm = 20.0;  // 1/2 to 1 in: common practice
inline constexpr double kLeastWaistDartMm = 12.0;      // front; our own limits
inline constexpr double kMostWaistDartMm = 48.0;
inline constexpr double kWovenShoulderEaseMm = 5.0;  // back eased into front, beside the dart

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
/// How much longer the front is than the back from neck point to waist.
double longer(const WovenPlan& plan);
/// What the back's waist dart takes: a good half of bust less waist, 8 to 48 mm.
double back_waist_intake(const WovenPlan& plan);

/// The corners that the solver moves; everything else of a sketch follows from them and the plan.
struct WovenBackLines {
  WaistCorners waist;
  Vec2 underarm;
};
struct WovenFrontLines {
  WaistCorners waist;
  Vec2 mouth_lower;  ///< of the bust dart
  Vec2 mouth_upper;
  Vec2 underarm;
  double neck_depth = 0.0;
};

/// ::
///      neck .--.
///          (    `--.__ shoulder-inner, shoulder-dart, shoulder-outer
///          |          \.
///   fold   |           |  armhole
///          |          _/
///          |   /\    /  side, leaning in by its share of bust less waist
///          |__/  \__/   waist-inner, waist dart, waist-outer
///
/// The first lines by proportion: the waist dart takes a good half of bust less waist. The open
/// shoulder is laid out about its dart, its slope found by bisection: a turn about a point, which
/// needs no system. Errors: "draft-impossible".
Result<WovenBackLines> first_back(const WovenPlan& plan);
Piece sketch_back(const WovenPlan& plan, const WovenBackLines& lines);

/// The front with the bust dart in the side: the side is laid out in one line as sewn, cut at the
/// dart, and its lower part swung about the dart's point by what the front is longer than the back.
/// Errors: "draft-impossible".
Result<WovenFrontLines> first_front(const WovenPlan& plan);
/// The same with the waist dart's intake given; with `side_gives` the side leans as that needs.
WovenFrontLines front_with_dart(const WovenPlan& plan, double intake, bool side_gives);
Piece sketch_front(const WovenPlan& plan, const WovenFrontLines& lines);

struct WovenBody {
  Piece front;
  Piece back;
};
std::vector<Join> woven_body_joins();

/// Sketches both halves and solves them as one system (statement.h): bust, waist and neckline,
/// across front and back, the side seam, the legs of the waist and bust darts, the front's length
/// over the bust, every join. Waist, armhole and neckline bend; underarm, waist and dart mouths
/// travel. Where a dart crosses the bust level the width stated is corrected by what the sewn piece
/// lacks, from round to round. The front's side leans as first sketched; a
/// waist dart that would come out too small or too deep is held at its limit, and the side gives.
/// Errors: "draft-impossible".
Result<WovenBody> draw_woven_body(const WovenPlan& plan);

}  // namespace pinwright::drafting
