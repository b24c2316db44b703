#include "engine/draft/knit_half.h"

#include <string>

#include "engine/draft/armhole.h"
#include "engine/draft/knit_side.h"
#include "engine/draft/parts.h"
#include "engine/draft/upper.h"

namespace pinwright::drafting {

Piece knit_half(const KnitHalfAsk& ask) {
  const Vec2 neck = ask.neckline.neck_point;
  const Vec2 shoulder = toward_neck(ask.slope);
  const Vec2 tip = neck - ask.shoulder_mm * shoulder;
  const Vec2 centre{0.0, neck.y - ask.neck_depth};
  const Vec2 underarm = ask.side.end();
  const ArmholeAsk armhole_ask{underarm, {0.0, 1.0},   tip,
                               shoulder, ask.across_x, ask.front ? kFrontHollow : kBackHollow};
  const EdgeRole centre_role = ask.front ? EdgeRole::centre_front : EdgeRole::centre_back;
  const std::string centre_id(to_text(centre_role));

  Piece piece;
  piece.id = ask.front ? "front" : "back";
  piece.name = ask.front ? "Front" : "Back";
  piece.edges = {
      hemmed(curved("hem", EdgeRole::hem, hem_line(ask.side.start(), ask.hem_slope), kKnitHemMm)),
      curved("side", EdgeRole::side, ask.side, kKnitAllowanceMm),
      curved("armhole", EdgeRole::armhole, armhole(armhole_ask), kKnitAllowanceMm),
      ruled("shoulder", EdgeRole::shoulder, tip, neck, kKnitAllowanceMm),
      curved("neckline", EdgeRole::neckline, neckline(ask.neckline, ask.neck_depth),
             kBindingWidthMm),
      folded_at(centre_id, centre_role, centre, {0.0, 0.0})};
  piece.landmarks = {{ask.front ? "front-neck-point" : "back-neck-point", centre},
                     {"neck-point", neck},
                     {"shoulder-point", tip},
                     {"underarm-point", underarm},
                     {"waist-level", {0.0, ask.waist_y}}};
  const double grain_x = 0.3 * underarm.x;
  piece.grainline = {"grainline", {grain_x, 0.2 * underarm.y}, {grain_x, 0.75 * underarm.y}};
  piece.fold = centre_id;
  return piece;
}

}  // namespace pinwright::drafting
