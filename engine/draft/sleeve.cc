#include "engine/draft/sleeve.h"

#include <algorithm>
#include <cmath>

#include "engine/draft/lines.h"
#include "engine/draft/parts.h"
#include "engine/draft/sewing.h"
#include "engine/draft/statement.h"
#include "engine/geometry/arc_length.h"
#include "engine/geometry/transform.h"

namespace pinwright::drafting {
namespace {

/// Where a half cap changes from hollow to round, as shares of its width (from the crown) and of
/// its height, and how steep it is there: `steep` < 1 is steeper than the half cap's diagonal.
struct CapShape {
  double across;
  double up;
  double steep;
};
constexpr CapShape kFront{0.50, 0.42, 0.55};
constexpr CapShape kBack{0.56, 0.46, 0.62};
constexpr double kHollow = 0.62;
constexpr double kFrontNotchShare = 0.40;  // of the armhole, from the underarm
constexpr double kBackNotchShare = 0.38;
constexpr double kRound = 0.66;
// A little inside the limits that every sleeve is held to (constraint/limits.h).
constexpr double kFlattestShare = 0.152;
constexpr double kSteepestShare = 0.648;

/// From the underarm (width, 0) to the crown (0, height).
Curve half_cap(double width, double height, Vec2 seam_up, const CapShape& shape) {
  const Vec2 start{width, 0.0};
  const Vec2 crown{0.0, height};
  const Vec2 change{shape.across * width, shape.up * height};
  const Vec2 steep = unit({-shape.steep * width, height});
  return chain({turned_line(start, left_normal(seam_up), change, steep, kHollow),
                turned_line(change, steep, crown, {-1.0, 0.0}, kRound)});
}

/// Where the crown lies: the sketch's only unknowns.
struct Crown {
  double height = 0.0;
  double front_x = 0.0;  ///< from the crown level out to the front's underarm point
};

/// First proportions: a half cap is nearly the diagonal of its width and height.
Crown first_crown(const SleeveAsk& ask, double front_mm, double cap_mm) {
  const double girth = ask.girth_mm;
  return {std::sqrt(std::max(0.22 * cap_mm * cap_mm - girth * girth / 4.0, 0.04 * girth * girth)),
          girth * front_mm / cap_mm};
}

/// The outline for a place of the crown, and the joins that must hold on it.
Block sketch_sleeve(const SleeveAsk& ask, const Crown& crown) {
  const double girth = ask.girth_mm;
  const double taper = (girth - ask.hem_girth_mm) / 2.0;
  const double below = std::max(ask.length_mm - crown.height, ask.least_below_mm);
  const Vec2 up = unit({taper, below});
  const Vec2 front_underarm{crown.front_x, 0.0};
  const Vec2 back_underarm{crown.front_x - girth, 0.0};
  // The hem is square to both seams: an arc that rises in the middle when the sleeve tapers.
  const Vec2 front_hem{crown.front_x - taper, -below};
  const Vec2 back_hem{crown.front_x - girth + taper, -below};
  const Vec2 hem_start{up.y, up.x};
  const Vec2 hem_end{up.y, -up.x};

  Curve cap_front = half_cap(crown.front_x, crown.height, up, kFront);
  Curve cap_back =
      reversed(apply(mirror_x(0.0), half_cap(girth - crown.front_x, crown.height, up, kBack)));
  cap_front.points.front() = front_underarm;
  cap_back.points.front() = cap_front.points.back();
  cap_back.points.back() = back_underarm;

  Piece piece;
  piece.id = "sleeve";
  piece.name = "Sleeve";
  piece.edges = {
      hemmed(curved("hem", EdgeRole::sleeve_hem,
                    chain({round_line(back_hem, hem_start, front_hem, hem_end)}),
                    ask.hem_allowance_mm)),
      ruled("underarm-front", EdgeRole::underarm, front_hem, front_underarm, ask.allowance_mm),
      curved("cap-front", EdgeRole::cap, cap_front, ask.allowance_mm),
      curved("cap-back", EdgeRole::cap, cap_back, ask.allowance_mm),
      ruled("underarm-back", EdgeRole::underarm, back_underarm, back_hem, ask.allowance_mm)};
  Block block;
  block.pieces = {std::move(piece)};
  add_sleeve_joins(block);
  return block;
}

}  // namespace

Result<Piece> sleeve(const SleeveAsk& ask) {
  const double girth = ask.girth_mm;
  const double front_mm = ask.front_armhole_mm + ask.front_ease_mm;
  const double back_mm = ask.back_armhole_mm + ask.back_ease_mm;
  Crown crown = first_crown(ask, front_mm, front_mm + back_mm);
  const Result<Block> solved = settled([&]() -> Result<Statement::Solved> {
    const Block sketch = sketch_sleeve(ask, crown);
    Statement holds(sketch);
    holds.bends("sleeve", "cap-front");
    holds.bends("sleeve", "cap-back");
    holds.moves("sleeve", "cap-front", {true, true});
    holds.length("the cap meets the front armhole and its ease", {{"sleeve", "cap-front"}},
                 front_mm);
    holds.length("the cap meets the back armhole and its ease", {{"sleeve", "cap-back"}}, back_mm);
    holds.joins();
    Result<Statement::Solved> made = holds.solved();
    if (!made) return made;
    const Vec2 found = find_edge(made->block.pieces[0], "cap-front")->curve.end();
    crown = {found.y, crown.front_x - found.x};
    return made;
  });
  if (!solved || crown.height < kFlattestShare * girth || crown.height > kSteepestShare * girth ||
      crown.front_x < 0.3 * girth || crown.front_x > 0.7 * girth) {
    return impossible(
        "upper-arm-girth",
        "No sleeve of " + mm_text(girth) + " round the upper arm fits armholes of " +
            mm_text(ask.front_armhole_mm + ask.back_armhole_mm) + ".",
        "Check upper-arm-girth against scye-depth, across-back-width and bust-girth.");
  }
  Piece piece = solved->pieces[0];
  const double back_length = length(find_edge(piece, "cap-back")->curve);
  piece.notches = {
      {"front-notch", "cap-front", ask.front_notch_mm},
      {"back-notch-1", "cap-back", back_length - ask.back_notch_mm},
      {"back-notch-2", "cap-back", back_length - ask.back_notch_mm - kBackNotchStepMm}};
  const Vec2 top = find_edge(piece, "cap-front")->curve.end();
  const Curve& seam = find_edge(piece, "underarm-front")->curve;
  const Curve& back_seam = find_edge(piece, "underarm-back")->curve;
  piece.landmarks = {{"crown-point", top},
                     {"underarm-point-front", seam.end()},
                     {"underarm-point-back", back_seam.start()}};
  piece.lengthen_lines = {{"sleeve", lerp(back_seam.start(), back_seam.end(), 0.5),
                           lerp(seam.start(), seam.end(), 0.5)}};
  piece.grainline = {"grainline", {0.0, 0.6 * seam.start().y}, {0.0, 0.75 * top.y}};
  piece.cut = {2, true};
  return piece;
}

Result<Piece> sleeve_for(SleeveAsk ask, Piece& front, Piece& back) {
  ask.front_armhole_mm = length(find_edge(front, "armhole")->curve);
  ask.back_armhole_mm = length(find_edge(back, "armhole")->curve);
  ask.front_notch_mm = kFrontNotchShare * ask.front_armhole_mm;
  ask.back_notch_mm = kBackNotchShare * ask.back_armhole_mm;
  front.notches.push_back({"front-notch", "armhole", ask.front_notch_mm});
  back.notches.push_back({"back-notch-1", "armhole", ask.back_notch_mm});
  back.notches.push_back({"back-notch-2", "armhole", ask.back_notch_mm + kBackNotchStepMm});
  return sleeve(ask);
}

}  // namespace pinwright::drafting
