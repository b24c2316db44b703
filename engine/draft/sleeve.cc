#include "engine/draft/sleeve.h"

#include <algorithm>
#include <cmath>

#include "engine/draft/lines.h"
#include "engine/draft/parts.h"
#include "engine/draft/solve.h"
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

/// From the underarm (width, 0) to the crown (0, height).
Curve half_cap(double width, double height, Vec2 seam_up, const CapShape& shape) {
  const Vec2 start{width, 0.0};
  const Vec2 crown{0.0, height};
  const Vec2 change{shape.across * width, shape.up * height};
  const Vec2 steep = unit({-shape.steep * width, height});
  return chain({turned_line(start, left_normal(seam_up), change, steep, kHollow),
                turned_line(change, steep, crown, {-1.0, 0.0}, kRound)});
}

}  // namespace

Result<Piece> sleeve(const SleeveAsk& ask) {
  const double girth = ask.girth_mm;
  const double front_mm = ask.front_armhole_mm + ask.front_ease_mm;
  const double back_mm = ask.back_armhole_mm + ask.back_ease_mm;
  const double cap_mm = front_mm + back_mm;
  const double taper = (girth - ask.hem_girth_mm) / 2.0;

  const auto below = [&](double h) { return std::max(ask.length_mm - h, ask.least_below_mm); };
  const auto seam_up = [&](double h) { return unit({taper, below(h)}); };
  const auto front_cap = [&](double h, double x) { return half_cap(x, h, seam_up(h), kFront); };
  const auto back_cap = [&](double h, double x) {
    return half_cap(girth - x, h, seam_up(h), kBack);
  };
  Unknowns x{
      std::sqrt(std::max(0.22 * cap_mm * cap_mm - girth * girth / 4.0, 0.04 * girth * girth)),
      girth * front_mm / cap_mm};
  const bool solved = solve(
      x,
      [&](const Unknowns& u) {
        return std::vector<double>{length(front_cap(u[0], u[1])) - front_mm,
                                   length(back_cap(u[0], u[1])) - back_mm};
      },
      1e-9);
  const double height = x[0];
  const double front_x = x[1];
  if (!solved || height < 0.12 * girth || height > 0.95 * girth || front_x < 0.3 * girth ||
      front_x > 0.7 * girth) {
    return impossible(
        "upper-arm-girth",
        "No sleeve of " + mm_text(girth) + " round the upper arm fits armholes of " +
            mm_text(ask.front_armhole_mm + ask.back_armhole_mm) + ".",
        "Check upper-arm-girth against scye-depth, across-back-width and bust-girth.");
  }
  const double hem_y = -below(height);
  const Vec2 front_underarm{front_x, 0.0};
  const Vec2 back_underarm{front_x - girth, 0.0};
  const Vec2 up = seam_up(height);
  // The hem is square to both seams: an arc that rises in the middle when the sleeve tapers.
  const Vec2 front_hem{front_x - taper, hem_y};
  const Vec2 back_hem{front_x - girth + taper, hem_y};
  const Vec2 hem_start{up.y, up.x};
  const Vec2 hem_end{up.y, -up.x};

  Curve cap_front = front_cap(height, front_x);
  Curve cap_back = reversed(apply(mirror_x(0.0), back_cap(height, front_x)));
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
  const double back_length = length(cap_back);
  piece.notches = {
      {"front-notch", "cap-front", ask.front_notch_mm},
      {"back-notch-1", "cap-back", back_length - ask.back_notch_mm},
      {"back-notch-2", "cap-back", back_length - ask.back_notch_mm - kBackNotchStepMm}};
  piece.landmarks = {{"crown-point", cap_front.end()},
                     {"underarm-point-front", front_underarm},
                     {"underarm-point-back", back_underarm}};
  const double line_y = hem_y / 2.0;
  const double in = taper * (line_y / hem_y);
  piece.lengthen_lines = {
      {"sleeve", {back_underarm.x + in, line_y}, {front_underarm.x - in, line_y}}};
  piece.grainline = {"grainline", {0.0, 0.6 * hem_y}, {0.0, 0.75 * height}};
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
