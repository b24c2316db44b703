// What each operation does to the measures, and what it must leave alone.
#include "engine/geometry/arc_length.h"
#include "expect_same.h"

namespace pinwright {
namespace {

TEST(CloseWedge, NeckWedgeAtTheBustPointOpensTheBustDartByItsAngle) {
  const Block& before = woven_bodice();
  const Block after =
      altered(before, {step("close-wedge", 9,
                            {{"piece", "front"}, {"edge", "neckline"}, {"hinge", "bust-point"}})});
  EXPECT_NEAR(garment(after, "neckline-length"), garment(before, "neckline-length") - 18.0, 1e-6);
  const Piece& old_front = *find_piece(before, "front");
  const Piece& front = *find_piece(after, "front");
  const double was = dart_angle(old_front, *dart_toward(old_front, "bust-point"));
  const double is = dart_angle(front, *dart_toward(front, "bust-point"));
  // The wedge of 9 mm subtends this angle at the bust point; the dart's point lies nearer to the
  // mouth than the bust point, so that its angle grows by a little more.
  const Vec2 hinge = find_landmark(old_front, "bust-point")->at;
  const Curve& neck = find_edge(old_front, "neckline")->curve;
  const double wedge = 9.0 / distance(hinge, point_at(neck, 0.5 * length(neck)));
  EXPECT_GT(is - was, wedge);
  EXPECT_LT(is - was, 1.45 * wedge);
  expect_same(before, after, "front",
              {"centre-front", "waist-inner", "waist-dart-in", "waist-dart-out"});
  expect_piece_same(before, after, "back");
}

TEST(CloseWedge, BindingFollowsTheNeckline) {
  const Block& before = knit_top();
  const Block after = altered(
      before,
      {step("close-wedge", 9, {{"piece", "front"}, {"edge", "neckline"}, {"hinge", "armhole"}})});
  const double ratio = before.bindings.front().ratio;
  EXPECT_NEAR(garment(before, "neck-binding-length") - garment(after, "neck-binding-length"),
              18.0 * ratio, 1e-6);
  expect_piece_same(before, after, "back");
  expect_lines_same(before, after, "sleeve");
  expect_same(before, after, "front", {"hem", "side", "centre-front"});
}

TEST(CloseWedge, DartlessFrontTakesItUpAsEasedSideLength) {
  const Block& before = knit_top();
  const Block after = altered(
      before,
      {step("close-wedge", 6, {{"piece", "front"}, {"edge", "armhole"}, {"hinge", "bust-point"}})});
  const auto ease = [](const Block& b) {
    double sum = 0.0;
    for (const SeamSection& s : find_seam(b, "side")->sections) sum += s.ease_mm;
    return sum;
  };
  EXPECT_GT(ease(after), ease(before) + 2.0);
  EXPECT_NEAR(garment(after, "armhole-length"), garment(before, "armhole-length") - 6.0, 1e-6);
  EXPECT_NEAR(garment(after, "cap-length"), garment(before, "cap-length") - 6.0, 1e-6);
  expect_piece_same(before, after, "back");
}

TEST(CloseWedge, OpeningUndoesClosing) {
  const std::map<std::string, std::string> at = {
      {"piece", "front"}, {"edge", "neckline"}, {"hinge", "bust-point"}};
  const Block& before = woven_bodice();
  const Block back =
      altered(altered(before, {step("close-wedge", 8, at)}), {step("close-wedge", -8, at)});
  EXPECT_NEAR(garment(back, "neckline-length"), garment(before, "neckline-length"), 1e-6);
  EXPECT_NEAR(garment(back, "bust-girth"), garment(before, "bust-girth"), 1.0);
  EXPECT_NEAR(garment(back, "across-front-width"), garment(before, "across-front-width"), 1.0);
}

TEST(Neckline, LowersAtTheCentreOnly) {
  const Block& before = knit_top();
  const Block after = altered(before, {step("lower-neckline", 12)});
  EXPECT_NEAR(garment(after, "front-neck-depth"), garment(before, "front-neck-depth") + 12.0, 1e-9);
  EXPECT_NEAR(garment(after, "neck-binding-length"),
              before.bindings.front().ratio * garment(after, "neckline-length"), 1e-6);
  expect_same(before, after, "front", {"hem", "side", "armhole", "shoulder"});
  expect_piece_same(before, after, "back");
  expect_piece_same(before, after, "sleeve");
}

TEST(Neckline, WidensFrontAndBackAlike) {
  const Block& before = woven_bodice();
  const Block after = altered(before, {step("widen-neckline", 8)});
  EXPECT_NEAR(garment(after, "shoulder-length"), garment(before, "shoulder-length") - 8.0, 1e-6);
  expect_same(before, after, "front", {"armhole", "side-upper", "centre-front"});
  expect_same(before, after, "back", {"armhole", "shoulder-outer", "side", "centre-back"});
}

TEST(Shoulder, SwingKeepsShoulderArmholeNecklineAndSleeve) {
  for (const Block* before : {&knit_top(), &woven_bodice()}) {
    for (const double drop : {8.0, -6.0}) {
      const Block after = altered(*before, {step("swing-shoulder", drop)});
      for (const char* id : {"shoulder-length", "armhole-length", "neckline-length"})
        EXPECT_NEAR(garment(after, id), garment(*before, id), 1e-5) << id;
      const double old_tip = find_edge(*find_piece(*before, "front"), "armhole")->curve.end().y;
      const double tip = find_edge(*find_piece(after, "front"), "armhole")->curve.end().y;
      EXPECT_NEAR(old_tip - tip, drop, 1e-6);
      EXPECT_EQ(drop > 0, garment(after, "shoulder-slope") > garment(*before, "shoulder-slope"));
      expect_lines_same(*before, after, "sleeve");
    }
  }
}

TEST(Shoulder, TipMovesAlongTheShoulderAndTheCapFollows) {
  for (const Block* before : {&knit_top(), &woven_bodice()}) {
    const Block after = altered(*before, {step("move-shoulder-tip", 10)});
    EXPECT_NEAR(garment(after, "shoulder-length"), garment(*before, "shoulder-length") - 10.0,
                1e-6);
    EXPECT_NEAR(garment(after, "cap-length") - garment(after, "armhole-length"),
                garment(*before, "cap-length") - garment(*before, "armhole-length"), 1e-5);
    EXPECT_NEAR(garment(after, "upper-arm-girth"), garment(*before, "upper-arm-girth"), 1e-9);
  }
}

TEST(Underarm, GoesDownOnFrontBackAndSleeveAlike) {
  for (const Block* before : {&knit_top(), &woven_bodice()}) {
    const Block after = altered(*before, {step("lower-underarm", 10)});
    EXPECT_NEAR(garment(after, "side-length"), garment(*before, "side-length") - 10.0, 1e-5);
    const auto seam_length = [](const Block& b) {
      return length(find_edge(*find_piece(b, "sleeve"), "underarm-front")->curve);
    };
    EXPECT_NEAR(seam_length(after), seam_length(*before) - 10.0, 1e-6);
    EXPECT_GT(garment(after, "armhole-length"), garment(*before, "armhole-length") + 10.0);
  }
}

TEST(Side, TwentyMillimetresInAllAreFiveOnEachEdge) {
  for (const Block* before : {&knit_top(), &woven_bodice()}) {
    const Block after = altered(*before, {step("let-out-side", 20, {}, Of::whole)});
    const auto corner = [](const Block& b, const char* piece) {
      return find_edge(*find_piece(b, piece), "armhole")->curve.start().x;
    };
    for (const char* piece : {"front", "back"})
      EXPECT_NEAR(corner(after, piece) - corner(*before, piece), 5.0, 1e-9) << piece;
    EXPECT_NEAR(garment(after, "bust-girth"), garment(*before, "bust-girth") + 20.0, 0.5);
    EXPECT_NEAR(garment(after, "waist-girth"), garment(*before, "waist-girth") + 20.0, 0.5);
    EXPECT_NEAR(garment(after, "upper-arm-girth"), garment(*before, "upper-arm-girth") + 10.0,
                1e-6);
  }
}

TEST(Side, AtOneLevelTheOthersStay) {
  const Block& before = knit_top();
  const Block bust = altered(before, {step("let-out-side", 10, {{"level", "bust"}})});
  EXPECT_NEAR(garment(bust, "bust-girth"), garment(before, "bust-girth") + 20.0, 0.5);
  EXPECT_NEAR(garment(bust, "hem-girth"), garment(before, "hem-girth"), 0.01);
  const Block waist = altered(before, {step("let-out-side", 10, {{"level", "waist"}})});
  EXPECT_NEAR(garment(waist, "waist-girth"), garment(before, "waist-girth") + 20.0, 0.5);
  EXPECT_NEAR(garment(waist, "hem-girth"), garment(before, "hem-girth"), 0.01);
  const Block hem = altered(before, {step("let-out-side", 10, {{"level", "hem"}})});
  EXPECT_NEAR(garment(hem, "hem-girth"), garment(before, "hem-girth") + 20.0, 0.5);
}

TEST(Bust, DartedFrontSpreadsAndTheRestOfTheGarmentStays) {
  const Block& before = woven_bodice();
  const Block after = altered(before, {step("full-bust", 15)});
  EXPECT_NEAR(garment(after, "bust-girth"), garment(before, "bust-girth") + 30.0, 1.0);
  for (const char* id :
       {"waist-girth", "armhole-length", "neckline-length", "shoulder-length", "side-length"})
    EXPECT_NEAR(garment(after, id), garment(before, id), 0.01) << id;
  EXPECT_NEAR(garment(after, "across-front-width"), garment(before, "across-front-width"), 0.5);
  const Piece& was = *find_piece(before, "front");
  const Piece& is = *find_piece(after, "front");
  EXPECT_GT(dart_intake(is, *dart_toward(is, "bust-point")),
            dart_intake(was, *dart_toward(was, "bust-point")) + 10.0);
  EXPECT_GT(garment(after, "front-length"), garment(before, "front-length") + 5.0);
  expect_same(before, after, "front", {"shoulder", "neckline"});
  expect_piece_same(before, after, "back");
  expect_lines_same(before, after, "sleeve");
}

TEST(Bust, DartlessKnitEasesTheLengthIn) {
  const Block& before = knit_top();
  const Block after = altered(before, {step("full-bust", 10)});
  EXPECT_NEAR(garment(after, "bust-girth"), garment(before, "bust-girth") + 20.0, 0.5);
  EXPECT_NEAR(garment(after, "hem-girth"), garment(before, "hem-girth"), 0.01);
  EXPECT_NEAR(garment(after, "armhole-length"), garment(before, "armhole-length"), 1e-5);
  expect_piece_same(before, after, "back");
}

TEST(Bust, LengthOverTheBustGoesIntoTheDartOrTheEase) {
  const Block woven = altered(woven_bodice(), {step("lengthen-over-bust", 10)});
  EXPECT_NEAR(garment(woven, "front-length"), garment(woven_bodice(), "front-length") + 10.0, 1e-9);
  EXPECT_NEAR(garment(woven, "side-length"), garment(woven_bodice(), "side-length"), 1e-9);
  const Block knit = altered(knit_top(), {step("lengthen-over-bust", 8)});
  EXPECT_NEAR(garment(knit, "front-length"), garment(knit_top(), "front-length") + 8.0, 1e-9);
  EXPECT_TRUE(*find_piece(knit, "back") == *find_piece(knit_top(), "back"));
}

TEST(Lengthen, BothPiecesAlikeAndAboveTheLineNothingMoves) {
  for (const Block* before : {&knit_top(), &woven_bodice()}) {
    const Block after = altered(*before, {step("lengthen", 25)});
    EXPECT_NEAR(garment(after, "front-length"), garment(*before, "front-length") + 25.0, 1e-9);
    EXPECT_NEAR(garment(after, "back-length"), garment(*before, "back-length") + 25.0, 1e-9);
    expect_same(*before, after, "front", {"neckline", "shoulder"});
    expect_lines_same(*before, after, "sleeve");
  }
}

TEST(Lengthen, AWaistThatComesToLieOverTheLineMakesRoom) {
  for (const double d : {-70.0, -100.0}) {
    const Block after = altered(knit_top(), {step("lengthen", d)});
    EXPECT_NEAR(garment(after, "side-length"), garment(knit_top(), "side-length") + d, 1e-5);
    // The waist comes so near to the bust that it takes a little of the width there.
    EXPECT_NEAR(garment(after, "bust-girth"), garment(knit_top(), "bust-girth"), 10.0);
  }
}

TEST(Lengthen, NotchesStayWithTheCloth) {
  const auto height = [](const Block& b, const char* piece, const char* notch) {
    const Piece& p = *find_piece(b, piece);
    const Notch& n = *find_notch(p, notch);
    return point_at(find_edge(p, n.edge)->curve, n.at_mm).y;
  };
  for (const double d : {-40.0, 25.0, 100.0}) {
    const Block after = altered(knit_top(), {step("lengthen", d)});
    for (const char* piece : {"front", "back"}) {
      EXPECT_NEAR(height(after, piece, "waist-notch"), height(knit_top(), piece, "waist-notch") - d,
                  0.5);
      for (const char* notch : {"bust-notch-lower", "bust-notch-upper"})
        EXPECT_NEAR(height(after, piece, notch), height(knit_top(), piece, notch), 0.5);
    }
  }
}

TEST(Sleeve, WidensAndTheCapStillFits) {
  for (const Block* before : {&knit_top(), &woven_bodice()}) {
    const Block after = altered(*before, {step("widen-upper-arm", 20, {}, Of::whole)});
    EXPECT_NEAR(garment(after, "upper-arm-girth"), garment(*before, "upper-arm-girth") + 20.0,
                1e-6);
    EXPECT_NEAR(garment(after, "cap-length"), garment(*before, "cap-length"), 1e-5);
    EXPECT_LT(garment(after, "cap-height"), garment(*before, "cap-height"));
    expect_piece_same(*before, after, "front");
    expect_piece_same(*before, after, "back");
  }
}

TEST(Strip, RatioChangesTheStripAlone) {
  const Block& before = knit_top();
  const Block after =
      altered(before, {step("set-binding-ratio", 0.85, {{"binding", "neck-binding"}})});
  EXPECT_NEAR(garment(after, "neck-binding-length"), 0.85 * garment(before, "neckline-length"),
              1e-6);
  for (const char* piece : {"front", "back", "sleeve"}) expect_piece_same(before, after, piece);
}

TEST(Lining, FollowsItsShellBitForBit) {
  Block block = woven_bodice();
  Piece lining = *find_piece(block, "front");
  lining.id = "front-lining";
  lining.cloth = "lining";
  block.pieces.push_back(lining);
  block.linings.push_back({"front-lining", "front"});
  const Block after = altered(block, {step("full-bust", 12)});
  const Piece& shell = *find_piece(after, "front");
  const Piece& follows = *find_piece(after, "front-lining");
  for (std::size_t e = 0; e < shell.edges.size(); ++e)
    EXPECT_TRUE(shell.edges[e].curve == follows.edges[e].curve) << shell.edges[e].id;
}

TEST(Sew, MovesNothing) {
  const Result<Altered> result = alter(knit_top(), {step("sew", 0)});
  ASSERT_TRUE(result.ok());
  EXPECT_TRUE(result->block == knit_top());
}

TEST(Alter, TheSameStepsGiveTheSameBits) {
  const std::vector<Step> steps = {step("full-bust", 12), step("swing-shoulder", 6),
                                   step("lower-underarm", 5)};
  EXPECT_TRUE(altered(woven_bodice(), steps) == altered(woven_bodice(), steps));
}

}  // namespace
}  // namespace pinwright
