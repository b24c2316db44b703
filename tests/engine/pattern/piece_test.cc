#include "engine/pattern/piece.h"

#include <gtest/gtest.h>

#include <cmath>

#include "engine/base/units.h"
#include "tests/engine/pattern/shapes.h"

namespace pinwright {
namespace {

/// A rectangle 100 x 80 with a dart of 20 mm at the bottom, its point 60 up.
Piece darted() {
  Piece piece = testing::ring("front", {{"a", EdgeRole::waist, {0.0, 0.0}},
                                        {"in", EdgeRole::dart_leg, {40.0, 0.0}},
                                        {"out", EdgeRole::dart_leg, {50.0, 60.0}},
                                        {"b", EdgeRole::waist, {60.0, 0.0}},
                                        {"right", EdgeRole::side, {100.0, 0.0}},
                                        {"top", EdgeRole::neckline, {100.0, 80.0}},
                                        {"left", EdgeRole::centre_front, {0.0, 80.0}}});
  piece.darts = {{"dart", "in", "out", "bust-point"}};
  piece.landmarks = {{"bust-point", {50.0, 70.0}}};
  piece.notches = {{"notch", "right", 30.0}};
  return piece;
}

TEST(Piece, FindsItsPartsById) {
  Piece piece = darted();
  EXPECT_EQ(edge_index(piece, "out"), 2u);
  EXPECT_EQ(edge_index(piece, "hem"), kNowhere);
  EXPECT_EQ(notch_index(piece, "notch"), 0u);
  EXPECT_EQ(notch_index(piece, "no"), kNowhere);
  EXPECT_EQ(landmark_index(piece, "bust-point"), 0u);
  EXPECT_EQ(landmark_index(piece, "no"), kNowhere);
  EXPECT_EQ(find_edge(piece, "right"), &piece.edges[4]);
  EXPECT_EQ(find_edge(piece, "hem"), nullptr);
  EXPECT_EQ(find_notch(piece, "notch")->at_mm, 30.0);
  EXPECT_EQ(find_notch(piece, "no"), nullptr);
  EXPECT_EQ(find_landmark(piece, "no"), nullptr);
  EXPECT_EQ(edge_of_role(piece, EdgeRole::waist)->id, "a");
  EXPECT_EQ(edge_of_role(piece, EdgeRole::cap), nullptr);
  EXPECT_EQ(dart_toward(piece, "bust-point")->id, "dart");
  EXPECT_EQ(dart_toward(piece, "shoulder-blade-point"), nullptr);
}

TEST(Piece, DartIntakeIsTheChordOfItsAngle) {
  const Piece piece = darted();
  const Dart& dart = piece.darts[0];
  EXPECT_DOUBLE_EQ(dart_intake(piece, dart), 20.0);
  EXPECT_NEAR(dart_angle(piece, dart), 2.0 * std::atan(10.0 / 60.0), 1e-12);
  // 2 r sin(angle / 2), the chord of an arc.
  const double leg = std::hypot(10.0, 60.0);
  EXPECT_NEAR(2.0 * leg * std::sin(dart_angle(piece, dart) / 2.0), 20.0, 1e-9);
}

TEST(Piece, ADartWithoutLegsTakesNothing) {
  const Piece piece = darted();
  EXPECT_EQ(dart_intake(piece, {"x", "no", "out", ""}), 0.0);
  EXPECT_EQ(dart_angle(piece, {"x", "in", "no", ""}), 0.0);
}

TEST(Piece, CornerAnglesAreInteriorAndSumToThePolygons) {
  const Piece piece = darted();
  double sum = 0.0;
  for (std::size_t i = 0; i < piece.edges.size(); ++i) sum += corner_angle(piece, i);
  EXPECT_NEAR(degrees(sum), 180.0 * 5.0, 1e-9);  // (7 - 2) x 180
  EXPECT_NEAR(degrees(corner_angle(piece, 4)), 90.0, 1e-9);
  // At the dart's point the cloth lies all round but for the dart.
  EXPECT_NEAR(corner_angle(piece, 1), radians(360.0) - dart_angle(piece, piece.darts[0]), 1e-12);
}

}  // namespace
}  // namespace pinwright
