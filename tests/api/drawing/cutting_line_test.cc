#include "api/drawing/cutting_line.h"

#include <gtest/gtest.h>

#include "engine/base/units.h"
#include "engine/geometry/nearest.h"
#include "engine/geometry/transform.h"
#include "tests/api/exchange/hand_block.h"

namespace pinwright::api {
namespace {

/// A skirt-like quarter with a waist dart 20 mm wide at the top, the centre at x = 0.
Piece with_waist_dart() {
  Piece p;
  p.id = "front";
  const auto edge = [](const char* id, EdgeRole role, Vec2 a, Vec2 b, double width) {
    return Edge{id, role, straight_curve(a, b), true, {width, AllowanceKind::plain}};
  };
  p.edges = {edge("hem", EdgeRole::hem, {0, 0}, {200, 0}, 20),
             edge("side", EdgeRole::side, {200, 0}, {200, 310}, 15),
             edge("waist-outer", EdgeRole::waist, {200, 310}, {110, 302}, 10),
             edge("dart-in", EdgeRole::dart_leg, {110, 302}, {100, 200}, 0),
             edge("dart-out", EdgeRole::dart_leg, {100, 200}, {90, 302}, 0),
             edge("waist-inner", EdgeRole::waist, {90, 302}, {0, 300}, 10),
             edge("centre", EdgeRole::centre_front, {0, 300}, {0, 0}, 0)};
  p.darts = {{"waist-dart", "dart-in", "dart-out", ""}};
  p.fold = "centre";
  return p;
}

Vec2 mirrored(Vec2 p, Vec2 on, Vec2 along) {
  const Vec2 u = unit(along);
  const Vec2 d = p - on;
  return on + 2.0 * dot(d, u) * u - d;
}

double distance_to_line(const std::vector<Vec2>& ring, Vec2 p) {
  double best = 1e9;
  for (std::size_t i = 0; i < ring.size(); ++i) {
    const Curve side = straight_curve(ring[i], ring[(i + 1) % ring.size()]);
    best = std::min(best, nearest(side, p).distance);
  }
  return best;
}

TEST(DartCap, IsSymmetricAboutTheMiddleLine) {
  for (const Piece& piece : {testing::hand_block().pieces[0], with_waist_dart()}) {
    const auto caps = dart_caps(piece);
    ASSERT_EQ(caps.size(), 1u);
    EXPECT_FALSE(caps[0].bridged);
    const Vec2 peak = caps[0].to_peak.end();
    EXPECT_EQ(peak, caps[0].from_peak.start());
    const Vec2 a = caps[0].to_peak.start();
    const Vec2 b = caps[0].from_peak.end();
    EXPECT_NEAR(distance(peak, a), distance(peak, b), 1e-9);
    EXPECT_LT(distance(mirrored(a, caps[0].point, peak - caps[0].point), b), 1e-9);
  }
}

TEST(DartCap, FoldedItLiesOnTheSideThatItIsPressedTo) {
  // waist dart: to the centre, that is to the inner waist edge
  const Piece waist = with_waist_dart();
  const DartCap cap = dart_caps(waist)[0];
  for (const Vec2 p : flatten(cap.from_peak, 0.1)) {
    const Vec2 folded = mirrored(p, cap.point, cap.from_peak.end() - cap.point);
    EXPECT_LT(nearest(waist.edges[5].curve, folded).distance, 1e-6);
  }
  // bust dart in the side: downward, to the lower side edge
  const Piece front = testing::hand_block().pieces[0];
  const DartCap bust = dart_caps(front)[0];
  for (const Vec2 p : flatten(bust.to_peak, 0.1)) {
    const Vec2 folded = mirrored(p, bust.point, bust.to_peak.start() - bust.point);
    EXPECT_LT(nearest(front.edges[1].curve, folded).distance, 1e-6);
  }
}

TEST(DartCap, ItsPeakReachesOutOfTheMouth) {
  // legs at right angles to the edge would need no peak: here it is worked out by hand.
  // bust dart of the hand block: leg from (130,185) to (240,170), side edge runs down along (0,-1).
  const Piece front = testing::hand_block().pieces[0];
  const DartCap cap = dart_caps(front)[0];
  // mirror of (0,-1) at the leg's direction u = (110,-15)/|.|: 2 (d.u) u - d
  const double n2 = 110.0 * 110.0 + 15.0 * 15.0;
  const Vec2 d{2.0 * 15.0 * 110.0 / n2, 2.0 * 15.0 * -15.0 / n2 + 1.0};
  const double t = 15.0 / d.y;  // up to the middle line y = 185
  EXPECT_NEAR(cap.to_peak.end().x, 240.0 + t * d.x, 1e-6);
  EXPECT_NEAR(cap.to_peak.end().y, 185.0, 1e-6);
  EXPECT_GT(cap.to_peak.end().x, 240.0);
}

TEST(CuttingLine, RunsAtTheAllowanceAndOverTheMouth) {
  const Piece piece = with_waist_dart();
  const auto caps = dart_caps(piece);
  const auto line = cutting_line(piece, caps);
  ASSERT_TRUE(line.ok()) << line.problems()[0].what;
  // the sewn edge and the cutting line 10 mm outside it, seen with the dart folded away
  const Vec2 on_cap = lerp(caps[0].from_peak.end(), caps[0].to_peak.end(), 0.4);
  EXPECT_NEAR(distance_to_line(line.value().points, on_cap), 10.0, 0.02);
  EXPECT_NEAR(distance_to_line(line.value().points, {45, 301}), 10.0, 0.02);
  EXPECT_NEAR(distance_to_line(line.value().points, {200, 150}), 15.0, 0.02);
  EXPECT_NEAR(distance_to_line(line.value().points, {0, 150}), 0.0, 1e-6);
  bool over_mouth = false;
  for (const std::size_t e : line.value().edge_of) {
    over_mouth = over_mouth || e == kNowhere;
    EXPECT_NE(e, 3u);  // never into the dart
    EXPECT_NE(e, 4u);
  }
  EXPECT_TRUE(over_mouth);
}

TEST(CuttingLine, ADartWithoutAPeakIsBridged) {
  // the lower side turns off so sharply that its mirror image never meets the middle line
  Piece piece = with_waist_dart();
  piece.edges[5].curve = straight_curve({90, 302}, {88, 480});
  piece.edges[6].curve = straight_curve({88, 480}, {0, 0});
  const auto caps = dart_caps(piece);
  ASSERT_EQ(caps.size(), 1u);
  EXPECT_TRUE(caps[0].bridged);
  EXPECT_EQ(caps[0].to_peak.end(), lerp(Vec2{110, 302}, Vec2{90, 302}, 0.5));
}

TEST(CuttingLine, ABrokenPieceIsAProblemAndNoLine) {
  Piece piece = with_waist_dart();
  piece.edges[1].allowance.width_mm = -3.0;
  EXPECT_FALSE(cutting_line(piece, dart_caps(piece)).ok());
  piece = with_waist_dart();
  piece.darts[0].leg_out = "none";
  EXPECT_TRUE(dart_caps(piece).empty());
}

}  // namespace
}  // namespace pinwright::api
