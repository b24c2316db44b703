#include <gtest/gtest.h>

#include "engine/base/units.h"
#include "engine/geometry/arc_length.h"
#include "engine/geometry/fairing.h"
#include "engine/pattern/measures.h"
#include "tests/engine/draft/sewn_checks.h"

namespace pinwright {
namespace {

using testing::faults;
using testing::joined;
using testing::measure_faults;
using testing::purser;

Block drafted(const DraftInput& input) {
  const Result<Block> block = draft_woven_bodice(input);
  EXPECT_TRUE(block.ok()) << block.problems()[0].what;
  return *block;
}

double edge_mm(const Block& block, const char* piece, const char* edge) {
  return length(find_edge(*find_piece(block, piece), edge)->curve);
}

double angle_of(const Block& block, const char* piece_id, const char* dart_id) {
  const Piece& piece = *find_piece(block, piece_id);
  for (const Dart& dart : piece.darts) {
    if (dart.id == dart_id) return dart_angle(piece, dart);
  }
  ADD_FAILURE() << "no " << dart_id;
  return 0.0;
}

TEST(WovenBodice, CanBeSewn) {
  const Block block = drafted(purser());
  EXPECT_EQ(joined(faults(block)), "");
  EXPECT_EQ(joined(measure_faults(block)), "");
}

TEST(WovenBodice, HasItsEdgesInRingOrder) {
  const Block block = drafted(purser());
  const std::vector<std::vector<std::string>> wanted = {
      {"waist-inner", "waist-dart-in", "waist-dart-out", "waist-outer", "side-lower",
       "bust-dart-in", "bust-dart-out", "side-upper", "armhole", "shoulder", "neckline",
       "centre-front"},
      {"waist-inner", "waist-dart-in", "waist-dart-out", "waist-outer", "side", "armhole",
       "shoulder-outer", "shoulder-dart-in", "shoulder-dart-out", "shoulder-inner", "neckline",
       "centre-back"},
      {"hem", "underarm-front", "cap-front", "cap-back", "underarm-back"}};
  ASSERT_EQ(block.pieces.size(), wanted.size());
  for (std::size_t i = 0; i < wanted.size(); ++i) {
    std::vector<std::string> ids;
    for (const Edge& edge : block.pieces[i].edges) ids.push_back(edge.id);
    EXPECT_EQ(ids, wanted[i]);
  }
}

TEST(WovenBodice, GivesTheUsualEase) {
  const Block block = drafted(purser());
  EXPECT_DOUBLE_EQ(block.ease.at("bust-girth"), 80.0);
  EXPECT_DOUBLE_EQ(block.ease.at("waist-girth"), 22.0);
  EXPECT_DOUBLE_EQ(block.ease.at("upper-arm-girth"), 52.0);
  EXPECT_NEAR(block.ease.at("back-waist-length"), 0.0, 1e-6);
  EXPECT_NEAR(block.ease.at("across-back-width"), 20.0, 0.01);
}

TEST(WovenBodice, EasesTheCapAboveTheNotchesOnly) {
  const Block block = drafted(purser());
  EXPECT_NEAR(edge_mm(block, "sleeve", "cap-front") - edge_mm(block, "front", "armhole"), 11.0,
              1e-6);
  EXPECT_NEAR(edge_mm(block, "sleeve", "cap-back") - edge_mm(block, "back", "armhole"), 14.0, 1e-6);
  const Piece& sleeve = *find_piece(block, "sleeve");
  const Piece& front = *find_piece(block, "front");
  EXPECT_DOUBLE_EQ(find_notch(sleeve, "front-notch")->at_mm,
                   find_notch(front, "front-notch")->at_mm);
  const Piece& back = *find_piece(block, "back");
  EXPECT_NEAR(find_notch(back, "back-notch-2")->at_mm - find_notch(back, "back-notch-1")->at_mm,
              10.0, 1e-9);
}

TEST(WovenBodice, FrontIsAsLongOverTheBustAsTheBody) {
  const Block block = drafted(purser());
  const Piece& front = *find_piece(block, "front");
  const Vec2 bust = find_landmark(front, "bust-point")->at;
  // The draft starts from the body's neck point: the garment's lies some hair further out.
  const double above = distance(find_landmark(front, "neck-point")->at, bust);
  const Vec2 dart_point = find_edge(front, "waist-dart-in")->curve.end();
  const double below = distance(bust, dart_point) + edge_mm(block, "front", "waist-dart-in");
  EXPECT_NEAR(above, 268.0, 1.0);
  EXPECT_NEAR(below, 448.0 - 268.0, 1e-6);
}

TEST(WovenBodice, ALongerFrontMakesALargerBustDart) {
  DraftInput longer = purser();
  longer.wearer.body["front-waist-length"] += 15.0;
  EXPECT_GT(angle_of(drafted(longer), "front", "bust-dart"),
            angle_of(drafted(purser()), "front", "bust-dart") + radians(3.0));
}

TEST(WovenBodice, ASmallerWaistMakesLargerWaistDarts) {
  DraftInput small = purser();
  small.wearer.body["waist-girth"] -= 40.0;
  for (const char* piece : {"front", "back"}) {
    EXPECT_GT(angle_of(drafted(small), piece, "waist-dart"),
              angle_of(drafted(purser()), piece, "waist-dart") + radians(0.5));
  }
}

TEST(WovenBodice, DartsEndShortOfTheirPoints) {
  const Block block = drafted(purser());
  const Piece& front = *find_piece(block, "front");
  const Vec2 bust = find_landmark(front, "bust-point")->at;
  EXPECT_NEAR(distance(find_edge(front, "bust-dart-in")->curve.end(), bust), 25.0, 1e-6);
  EXPECT_NEAR(distance(find_edge(front, "waist-dart-in")->curve.end(), bust), 25.0, 1e-6);
  EXPECT_EQ(dart_toward(front, "bust-point")->id, "bust-dart");
  EXPECT_EQ(dart_toward(*find_piece(block, "back"), "shoulder-blade-point")->id, "shoulder-dart");
}

TEST(WovenBodice, LooksLikeOne) {
  const Block block = drafted(purser());
  const auto all = measures(block);
  EXPECT_NEAR(degrees(find_measure(all, "shoulder-slope")->value), 20.5, 0.1);
  EXPECT_LT(find_measure(all, "front-length")->value, find_measure(all, "back-length")->value);
  for (const char* id : {"front", "back"}) {
    const Piece& piece = *find_piece(block, id);
    for (const char* edge : {"armhole", "neckline", "waist-inner", "waist-outer"}) {
      EXPECT_EQ(inflections(find_edge(piece, edge)->curve), 0) << id << " " << edge;
    }
  }
  const Piece& sleeve = *find_piece(block, "sleeve");
  EXPECT_EQ(inflections(find_edge(sleeve, "cap-front")->curve), 1);
  EXPECT_EQ(inflections(find_edge(sleeve, "cap-back")->curve), 1);
  EXPECT_NEAR(find_measure(all, "sleeve-hem-girth")->value, 225.0, 2.0);
}

TEST(WovenBodice, AWaistLargerThanTheBustStillHasADart) {
  DraftInput input = purser();
  input.wearer.body["waist-girth"] = 960;
  const Block block = drafted(input);
  EXPECT_EQ(joined(faults(block)), "");
  EXPECT_EQ(joined(measure_faults(block)), "");
}

TEST(WovenBodice, AFrontShorterThanTheBackIsRefusedByName) {
  DraftInput input = purser();
  input.wearer.body["front-waist-length"] = 400;
  const Result<Block> block = draft_woven_bodice(input);
  ASSERT_FALSE(block.ok());
  EXPECT_EQ(block.problems()[0].code, "draft-impossible");
  EXPECT_EQ(block.problems()[0].place, "/wearer/body/front-waist-length");
}

}  // namespace
}  // namespace pinwright
