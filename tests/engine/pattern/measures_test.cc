#include "engine/pattern/measures.h"

#include <gtest/gtest.h>

#include <cmath>

#include "tests/engine/pattern/shapes.h"

namespace pinwright {
namespace {

Block plain_block() {
  Block block;
  Piece front = testing::half("front", EdgeRole::centre_front, 90.0);
  front.landmarks = {{"bust-point", {80.0, 200.0}}, {"waist-level", {0.0, 50.0}}};
  Piece back = testing::half("back", EdgeRole::centre_back, 20.0);
  back.landmarks = {{"bust-level", {0.0, 175.0}}, {"waist-level", {0.0, 50.0}}};
  Piece sleeve = testing::ring("sleeve", {{"hem", EdgeRole::sleeve_hem, {-100.0, -80.0}},
                                          {"underarm-front", EdgeRole::underarm, {100.0, -80.0}},
                                          {"cap-front", EdgeRole::cap, {120.0, 0.0}},
                                          {"cap-back", EdgeRole::cap, {0.0, 90.0}},
                                          {"underarm-back", EdgeRole::underarm, {-120.0, 0.0}}});
  Piece strip = testing::ring("neck-binding", {{"opening", EdgeRole::opening, {0.0, 0.0}},
                                               {"join-end", EdgeRole::join, {300.0, 0.0}},
                                               {"folded", EdgeRole::folded, {300.0, 20.0}},
                                               {"join-start", EdgeRole::join, {0.0, 20.0}}});
  block.pieces = {front, back, sleeve, strip};
  return block;
}

double value(const Block& block, const char* id) {
  const auto all = measures(block);
  const GarmentMeasure* measure = find_measure(all, id);
  if (measure == nullptr) {
    ADD_FAILURE() << "no " << id;
    return 0.0;
  }
  return measure->value;
}

TEST(Measures, OfAPlainBlock) {
  const Block block = plain_block();
  EXPECT_NEAR(value(block, "bust-girth"), 2.0 * (198.0 + 197.0), 1e-9);
  EXPECT_NEAR(value(block, "waist-girth"), 4.0 * 192.0, 1e-9);
  EXPECT_NEAR(value(block, "hem-girth"), 4.0 * 190.0, 1e-9);
  EXPECT_NEAR(value(block, "upper-arm-girth"), 240.0, 1e-9);
  EXPECT_NEAR(value(block, "neckline-length"),
              2.0 * (std::hypot(60.0, 90.0) + std::hypot(60.0, 20.0)), 1e-6);
  EXPECT_NEAR(value(block, "armhole-length"), 2.0 * std::hypot(20.0, 140.0), 1e-6);
  EXPECT_NEAR(value(block, "cap-length"), 2.0 * 150.0, 1e-6);
  EXPECT_NEAR(value(block, "cap-height"), 90.0, 1e-12);
  EXPECT_NEAR(value(block, "shoulder-length"), std::hypot(120.0, 10.0), 1e-6);
  EXPECT_NEAR(value(block, "shoulder-slope"), std::atan(10.0 / 120.0), 1e-12);
  EXPECT_NEAR(value(block, "front-length"), 310.0, 1e-6);
  EXPECT_NEAR(value(block, "back-length"), 380.0, 1e-6);
  EXPECT_NEAR(value(block, "front-neck-depth"), 90.0, 1e-12);
  EXPECT_NEAR(value(block, "across-front-width"), 2.0 * 190.0, 1e-9);
  EXPECT_NEAR(value(block, "across-back-width"), 2.0 * 190.0, 1e-9);
  EXPECT_NEAR(value(block, "armhole-depth"), 140.0, 1e-12);
  EXPECT_NEAR(value(block, "side-length"), std::hypot(10.0, 250.0), 1e-6);
  EXPECT_NEAR(value(block, "sleeve-hem-girth"), 200.0, 1e-6);
  EXPECT_NEAR(value(block, "neck-binding-length"), 300.0, 1e-6);
}

TEST(Measures, PartsMakeUpTheWhole) {
  const Block block = plain_block();
  EXPECT_NEAR(value(block, "front-bust-width"), 2.0 * 198.0, 1e-9);
  EXPECT_NEAR(value(block, "back-bust-width"), 2.0 * 197.0, 1e-9);
  EXPECT_NEAR(value(block, "front-neckline-length"), 2.0 * std::hypot(60.0, 90.0), 1e-6);
  EXPECT_NEAR(value(block, "back-neckline-length"), 2.0 * std::hypot(60.0, 20.0), 1e-6);
  EXPECT_NEAR(value(block, "front-armhole-length"), std::hypot(20.0, 140.0), 1e-6);
  EXPECT_NEAR(value(block, "back-armhole-length"), std::hypot(20.0, 140.0), 1e-6);
  EXPECT_NEAR(value(block, "front-shoulder-slope"), std::atan(10.0 / 120.0), 1e-12);
  EXPECT_NEAR(value(block, "back-shoulder-slope"), std::atan(10.0 / 120.0), 1e-12);
  EXPECT_NEAR(value(block, "back-neck-depth"), 20.0, 1e-12);
  EXPECT_NEAR(value(block, "front-side-length"), std::hypot(10.0, 250.0), 1e-6);
  EXPECT_NEAR(value(block, "sleeve-length"), 170.0, 1e-12);
}

TEST(Measures, BustIsNeverTakenThroughTheArmhole) {
  Block block = plain_block();
  find_piece(block, "front")->landmarks[0].at.y = 300.0;  // above the underarm point
  EXPECT_NEAR(value(block, "bust-girth"), 2.0 * (200.0 + 197.0), 1e-3);
}

TEST(Measures, WithoutTheLandmarkTheUnderarmStandsIn) {
  Block block = plain_block();
  find_piece(block, "back")->landmarks.clear();
  EXPECT_NEAR(value(block, "bust-girth"), 2.0 * (198.0 + 200.0), 1e-3);
  EXPECT_EQ(find_measure(measures(block), "waist-girth"), nullptr);
}

TEST(Measures, ABlockToTheWaistIsMeasuredAlongIt) {
  Block block = plain_block();
  for (const char* id : {"front", "back"}) {
    find_piece(block, id)->edges[0].role = EdgeRole::waist;
  }
  EXPECT_NEAR(value(block, "waist-girth"), 4.0 * 190.0, 1e-6);
  const auto all = measures(block);
  EXPECT_EQ(find_measure(all, "hem-girth"), nullptr);
  EXPECT_EQ(find_measure(all, "back-length")->body, "back-waist-length");
  EXPECT_EQ(find_measure(measures(plain_block()), "back-length")->body, std::nullopt);
}

TEST(Measures, WhatIsMissingIsLeftOut) {
  EXPECT_TRUE(measures(Block{}).empty());
  Block block = plain_block();
  block.pieces.erase(block.pieces.begin() + 2);
  const auto all = measures(block);
  EXPECT_EQ(find_measure(all, "cap-height"), nullptr);
  EXPECT_EQ(find_measure(all, "upper-arm-girth"), nullptr);
  EXPECT_NE(find_measure(all, "bust-girth"), nullptr);
}

}  // namespace
}  // namespace pinwright
