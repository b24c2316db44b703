#include "engine/draft/woven_statement.h"

#include <algorithm>
#include <cmath>
#include <numbers>
#include <string_view>

#include "engine/draft/armhole.h"
#include "engine/geometry/arc_length.h"

namespace pinwright::drafting {
namespace {

constexpr double kBelowUnderarmMm = 2.0;  // the bust is measured no higher

const Curve& edge(const Piece& piece, std::string_view id) { return find_edge(piece, id)->curve; }

double level_of(const Piece& piece, std::string_view landmark) {
  const double underarm = find_landmark(piece, "underarm-point")->at.y;
  return std::min(find_landmark(piece, landmark)->at.y, underarm - kBelowUnderarmMm);
}

/// Half way up the armhole, where across front and back are measured; a millimetre above the joint
/// of its two parts, which lies there.
double half_way_up(const Piece& piece) {
  const Curve& line = edge(piece, "armhole");
  return (line.start().y + line.end().y) / 2.0 + 1.0;
}

double across(const Piece& piece, double wanted) {
  const Curve& line = edge(piece, "armhole");
  const Edge& side = piece.edges[edge_index(piece, "armhole") - 1];
  const Edge& shoulder = piece.edges[edge_index(piece, "armhole") + 1];
  return armhole_across(
      {line.start(), end_tangent(side.curve), line.end(), start_tangent(shoulder.curve), wanted});
}

void state_front(Statement& holds, const Piece& front, const WovenPlan& plan,
                 const Stated& stated) {
  for (const std::string_view curve : {"waist-inner", "waist-outer", "armhole", "neckline"}) {
    holds.bends("front", curve);
  }
  for (const std::string_view before : {"waist-inner", "waist-dart-out", "side-lower"}) {
    holds.moves("front", before, {true, true});
  }
  holds.moves("front", "bust-dart-out", {true, false});  // the upper leg stays below the bust level
  holds.moves("front", "waist-outer", {true, false});
  holds.moves("front", "side-upper", {stated.side_gives, false});
  holds.moves("front", "neckline", {false, true});
  holds.moves("front", "centre-front", {false, true});
  // The level may run through the open mouth of the bust dart: the width is then laid out just
  // above it and corrected by what the piece lacks as sewn.
  const double level = level_of(front, "bust-point");
  const bool lower = level <= edge(front, "side-lower").end().y;
  const double least = edge(front, "side-upper").start().y + 1.0;
  holds.width("the bust width of the front", "front", lower ? "side-lower" : "side-upper",
              lower ? level : std::max(level, least), stated.front_bust);
  holds.length("the waist of the front", {{"front", "waist-inner"}, {"front", "waist-outer"}},
               plan.front_waist);
  holds.length("the front's length over the bust", {{"front", "waist-dart-in"}},
               edge(front, "waist-dart-in").end().y);
  holds.length("the legs of the front's waist dart are equal",
               {{"front", "waist-dart-in"}, {"front", "waist-dart-out", -1.0}}, 0.0);
  holds.length("the legs of the bust dart are equal",
               {{"front", "bust-dart-in"}, {"front", "bust-dart-out", -1.0}}, 0.0);
  holds.width("the width across the front", "front", "armhole", half_way_up(front),
              across(front, plan.front_across));
  holds.gentle_start("the armhole of the front bends gently at the underarm", "front", "armhole",
                     kUnderarmRadiusMm);
  holds.gentle_start("the armhole of the front bends gently at the underarm", "front", "armhole",
                     kUnderarmRadiusMm);
  if (stated.waist_dart) {
    holds.angle("the front's waist dart keeps within its limits", "front", "waist-dart-in",
                2.0 * std::numbers::pi - *stated.waist_dart);
  }
}

void state_back(Statement& holds, const Piece& back, const WovenPlan& plan, const Stated& stated) {
  for (const std::string_view curve : {"waist-inner", "waist-outer", "armhole", "neckline"}) {
    holds.bends("back", curve);
  }
  for (const std::string_view before : {"waist-inner", "waist-dart-out"}) {
    holds.moves("back", before, {true, true});
  }
  holds.moves("back", "waist-outer", {true, false});
  holds.moves("back", "side", {true, false});
  holds.width("the bust width of the back", "back", "side", level_of(back, "bust-level"),
              stated.back_bust);
  holds.length("the waist of the back", {{"back", "waist-inner"}, {"back", "waist-outer"}},
               plan.back_waist);
  holds.length("the legs of the back's waist dart are equal",
               {{"back", "waist-dart-in"}, {"back", "waist-dart-out", -1.0}}, 0.0);
  holds.angle("the back's waist dart", "back", "waist-dart-in",
              2.0 * std::numbers::pi - 2.0 * std::asin(back_waist_intake(plan) / 2.0 /
                                                       length(edge(back, "waist-dart-in"))));
  holds.width("the width across the back", "back", "armhole", half_way_up(back),
              across(back, plan.back_across));
  holds.gentle_start("the armhole of the back bends gently at the underarm", "back", "armhole",
                     kUnderarmRadiusMm);
  holds.gentle_start("the armhole of the back bends gently at the underarm", "back", "armhole",
                     kUnderarmRadiusMm);
}

}  // namespace

Statement state_woven(const Block& sketch, const WovenPlan& plan, const Stated& stated) {
  Statement holds(sketch);
  state_front(holds, sketch.pieces[0], plan, stated);
  state_back(holds, sketch.pieces[1], plan, stated);
  holds.length("the neckline goes round the neck base with its ease",
               {{"front", "neckline"}, {"back", "neckline"}}, plan.shoulder.neckline_mm / 2.0);
  holds.length("the side seam sews together",
               {{"front", "side-lower"}, {"front", "side-upper"}, {"back", "side", -1.0}}, 0.0);
  holds.joins();
  return holds;
}

}  // namespace pinwright::drafting
