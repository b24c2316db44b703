#include "engine/draft/armhole.h"

#include <algorithm>
#include <cmath>

#include "engine/draft/lines.h"
#include "engine/draft/parts.h"

namespace pinwright::drafting {
namespace {

constexpr double kUpperFullness = 0.62;
constexpr double kHollowMm = 24.0;  // wanted between plumb place and underarm point, level
constexpr double kLeastHollowMm = 8.0;
constexpr double kLeastDepthMm = 90.0;

}  // namespace

double armhole_across(const ArmholeAsk& ask) {
  const Vec2 arriving = right_normal(ask.shoulder);
  const double height = (ask.tip.y - ask.underarm.y) / 2.0;
  // The upper quarter's end tangents meet between its ends while the swing stays below this.
  const double most = 0.85 * height * std::max(0.0, arriving.x / arriving.y);
  const double least = std::min(3.0, most);
  const double wanted = std::min(ask.across_x, ask.underarm.x - kHollowMm);
  return ask.tip.x - std::clamp(ask.tip.x - wanted, least, most);
}

Curve armhole(const ArmholeAsk& ask) {
  const Vec2 up{0.0, 1.0};
  const Vec2 plumb{armhole_across(ask), (ask.tip.y + ask.underarm.y) / 2.0};
  return chain({turned_line(ask.underarm, left_normal(ask.side_up), plumb, up, ask.hollow),
                turned_line(plumb, up, ask.tip, right_normal(ask.shoulder), kUpperFullness)});
}

Problems check_armhole(const Piece& piece) {
  const Curve& line = find_edge(piece, "armhole")->curve;
  const double depth = line.end().y - line.start().y;
  Problems problems;
  if (depth < kLeastDepthMm) {
    problems.push_back(
        impossible("scye-depth",
                   "The armhole of the " + piece.id + " would be only " + mm_text(depth) + " deep.",
                   "Check scye-depth against shoulder-drop and neck-base-girth."));
  }
  const double hollow = line.start().x - line.points[3].x;
  if (hollow < kLeastHollowMm) {
    problems.push_back(impossible(
        "shoulder-length",
        "The shoulder reaches " + mm_text(line.end().x - line.start().x) +
            " past the underarm point of the " + piece.id + ": no armhole can be hollowed out.",
        "Check shoulder-length and neck-base-girth against bust-girth, or give more ease at "
        "bust-girth."));
  }
  return problems;
}

}  // namespace pinwright::drafting
