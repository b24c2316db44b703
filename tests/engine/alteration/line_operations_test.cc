// Hem flare, hollowed edges, the waist dart.
#include "engine/geometry/arc_length.h"
#include "engine/geometry/nearest.h"
#include "expect_same.h"

namespace pinwright {
namespace {

const std::vector<std::string> kBody = {"bust-girth",         "waist-girth",       "hem-girth",
                                        "neckline-length",    "armhole-length",    "side-length",
                                        "across-front-width", "across-back-width", "front-length"};

std::vector<std::string> body_of(const Block& block) {
  std::vector<std::string> ids;
  const std::vector<GarmentMeasure> all = measures(block);
  for (const std::string& id : kBody)
    if (find_measure(all, id) != nullptr) ids.push_back(id);
  return ids;
}

TEST(FlareHem, WidensTheHemAndLeavesTheWaist) {
  const Block& before = knit_top();
  for (const double w : {24.0, -24.0}) {
    const Block after = altered(before, {step("flare-hem", w)});
    EXPECT_NEAR(garment(after, "hem-girth"), garment(before, "hem-girth") + 2.0 * w, 1e-5);
    EXPECT_NEAR(garment(after, "bust-girth"), garment(before, "bust-girth"), 0.5);
    EXPECT_NEAR(garment(after, "waist-girth"), garment(before, "waist-girth"), 1e-5);
    EXPECT_NEAR(garment(after, "side-length"), garment(before, "side-length"), 1e-5);
    for (const char* piece : {"front", "back"})
      expect_same(before, after, piece, {"armhole", "shoulder", "neckline"});
    expect_piece_same(before, after, "sleeve");
    const Block back = altered(after, {step("flare-hem", -w)});
    expect_measures(before, back, body_of(before), 1.0);
  }
}

TEST(FlareHem, IsRefusedOnABodiceThatEndsAtTheWaist) {
  EXPECT_EQ(refused(woven_bodice(), step("flare-hem", 20)), "operation-not-here");
}

TEST(ScoopEdge, GoesInByTheAmountAndTheEndsStay) {
  for (const Block* before : {&knit_top(), &woven_bodice()}) {
    for (const char* piece : {"front", "back"}) {
      const std::string notch = std::string(piece) == "front" ? "front-notch" : "back-notch-1";
      for (const double a : {8.0, -8.0}) {
        const Block after =
            altered(*before, {step("scoop-edge", a, {{"piece", piece}, {"edge", "armhole"}})});
        const Curve& was = find_edge(*find_piece(*before, piece), "armhole")->curve;
        const Curve& is = find_edge(*find_piece(after, piece), "armhole")->curve;
        EXPECT_EQ(is.start(), was.start());
        EXPECT_EQ(is.end(), was.end());
        const double at = find_notch(*find_piece(*before, piece), notch)->at_mm;
        const Vec2 to = point_at(was, at) + a * left_normal(tangent_at(was, at));
        EXPECT_LT(nearest(is, to).distance, 1e-6) << piece << a;
        const char* other = std::string(piece) == "front" ? "back" : "front";
        expect_lines_same(*before, after, other);
        expect_same(*before, after, piece, {"neckline"});
        EXPECT_NEAR(garment(after, "cap-length") - garment(after, "armhole-length"),
                    garment(*before, "cap-length") - garment(*before, "armhole-length"), 1e-5);
        const Block back =
            altered(after, {step("scoop-edge", -a, {{"piece", piece}, {"edge", "armhole"}})});
        expect_measures(*before, back, body_of(*before), 2.0);
      }
    }
  }
}

TEST(ScoopEdge, NecklineTakesItsStripAlong) {
  const Block& before = knit_top();
  const Block after = altered(before, {step("scoop-edge", 6, {{"edge", "neckline"}})});
  EXPECT_GT(garment(after, "neckline-length"), garment(before, "neckline-length") + 1.0);
  EXPECT_NEAR(garment(after, "neck-binding-length"),
              before.bindings.front().ratio * garment(after, "neckline-length"), 1e-6);
  expect_piece_same(before, after, "back");
  expect_same(before, after, "front", {"armhole", "shoulder", "side", "hem", "centre-front"});
  EXPECT_EQ(refused(before, step("scoop-edge", 6, {{"edge", "neckline"}, {"piece", "back"}})),
            "operation-not-here");
}

TEST(WaistDart, LetOutWidensTheWaistAlone) {
  const Block& before = woven_bodice();
  for (const char* piece : {"front", "back"}) {
    for (const double a : {8.0, -8.0}) {
      const Block after = altered(before, {step("let-out-dart", a, {{"piece", piece}})});
      EXPECT_NEAR(garment(after, "waist-girth"), garment(before, "waist-girth") + 2.0 * a, 1e-5);
      expect_measures(before, after, {"side-length", "armhole-length", "neckline-length"}, 1e-9);
      expect_piece_same(before, after, std::string(piece) == "front" ? "back" : "front");
      expect_piece_same(before, after, "sleeve");
      expect_same(before, after, piece, {"armhole", "neckline"});
      const Block back = altered(after, {step("let-out-dart", -a, {{"piece", piece}})});
      expect_measures(before, back, body_of(before), 0.2);
    }
  }
}

TEST(WaistDart, HasNoMoreToGiveThanItsIntake) {
  EXPECT_EQ(refused(woven_bodice(), step("let-out-dart", 50)), "amount-too-large");
  EXPECT_EQ(refused(knit_top(), step("let-out-dart", 5)), "operation-not-here");
}

}  // namespace
}  // namespace pinwright
