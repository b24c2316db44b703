// Neck, shoulder, back and chest: the measure that was asked for changes by the amount, what must
// be left alone keeps its bits, and the negative amount brings the measures back.
#include <gtest/gtest.h>

#include "engine/geometry/arc_length.h"
#include "engine/geometry/nearest.h"
#include "skerry_blocks.h"

namespace pinwright {
namespace {

using Options = std::map<std::string, std::string>;

const Curve& curve(const Block& block, const std::string& piece, const std::string& edge) {
  return find_edge(*find_piece(block, piece), edge)->curve;
}

Vec2 neck_point(const Block& block, const std::string& piece) {
  return curve(block, piece, "neckline").start();
}
Vec2 centre(const Block& block, const std::string& piece) {
  return curve(block, piece, "neckline").end();
}
Vec2 tip(const Block& block, const std::string& piece) {
  return curve(block, piece, "armhole").end();
}
double armhole(const Block& block, const std::string& piece) {
  return length(curve(block, piece, "armhole"));
}
double shoulder(const Block& block, const std::string& piece) {
  double sum = 0.0;
  for (const Edge& e : find_piece(block, piece)->edges)
    if (e.role == EdgeRole::shoulder) sum += length(e.curve);
  return sum;
}
double ease(const Block& block) {
  double sum = 0.0;
  for (const SeamSection& s : find_seam(block, "shoulder")->sections) sum += s.ease_mm;
  return sum;
}

void expect_same_measure_lines(const Block& before, const Block& after, const std::string& piece) {
  for (const Edge& e : find_piece(before, piece)->edges)
    EXPECT_TRUE(same_bits(before, after, piece, e.id)) << piece << "." << e.id;
}

// All edges of a piece with these roles keep their bits.
void expect_roles_same(const Block& before, const Block& after, const std::string& piece,
                       const std::vector<EdgeRole>& roles) {
  for (const Edge& e : find_piece(before, piece)->edges)
    for (const EdgeRole role : roles)
      if (e.role == role) {
        EXPECT_TRUE(same_bits(before, after, piece, e.id)) << piece << "." << e.id;
      }
}

const std::vector<EdgeRole> kBelow = {EdgeRole::side, EdgeRole::hem, EdgeRole::waist};

// The step, then the same step with the opposite amount: every measure is back within `mm`.
Block expect_undone(const Block& before, const std::string& operation, double amount,
                    const Options& options, double mm) {
  Block after = altered(before, {step(operation, amount, options)});
  const Block again = altered(after, {step(operation, -amount, options)});
  for (const GarmentMeasure& m : measures(before)) {
    EXPECT_NEAR(garment(again, m.id), m.value, m.kind == MeasureKind::angle ? 0.015 : mm)
        << operation << " " << amount << " " << m.id;
  }
  EXPECT_NEAR(ease(again), ease(before), mm);
  return after;
}

struct Change {
  const Block* block;
  double amount;
};
std::vector<Change> cases(double amount) {
  return {{&knit_top(), amount},
          {&knit_top(), -amount},
          {&woven_bodice(), amount},
          {&woven_bodice(), -amount}};
}

TEST(ShortenChest, TheCentreFrontLosesTheAmountAndBelowNothingMoves) {
  for (const auto& [before, d] : cases(10)) {
    const Block after = expect_undone(*before, "shorten-chest", d, {}, 0.7);
    EXPECT_NEAR(garment(after, "front-length"), garment(*before, "front-length") - d, 1e-9);
    EXPECT_NEAR(shoulder(after, "front"), shoulder(*before, "front"), 1e-9);
    EXPECT_NEAR(armhole(after, "front"), armhole(*before, "front"), 1e-5);
    EXPECT_NEAR(garment(after, "neckline-length"), garment(*before, "neckline-length"), 1e-5);
    EXPECT_EQ(centre(after, "front").x, 0.0);
    expect_roles_same(*before, after, "front", kBelow);
    expect_roles_same(*before, after, "front", {EdgeRole::dart_leg});
    expect_same_measure_lines(*before, after, "sleeve");
    EXPECT_TRUE(*find_piece(*before, "back") == *find_piece(after, "back"));
  }
}

TEST(ShortenChest, NeckAndShoulderTurnAboutTheNotch) {
  const Block after = altered(woven_bodice(), {step("shorten-chest", 12)});
  const Piece& was = *find_piece(woven_bodice(), "front");
  const Vec2 hinge =
      point_at(find_edge(was, "armhole")->curve, find_notch(was, "front-notch")->at_mm);
  for (const auto place : {&neck_point, &tip}) {
    const Vec2 from = place(woven_bodice(), "front");
    const Vec2 to = place(after, "front");
    EXPECT_NEAR(distance(to, hinge), distance(from, hinge), 1e-6);
    EXPECT_NEAR(turn(from - hinge, to - hinge), std::asin(12.0 / hinge.x), 1e-6);
  }
}

TEST(LengthenUpperBack, TheCentreBackGainsTheAmountOnTheFold) {
  for (const auto& [before, d] : cases(12)) {
    const Block after = expect_undone(*before, "lengthen-upper-back", d, {}, 1.0);
    EXPECT_NEAR(garment(after, "back-length"), garment(*before, "back-length") + d, 1e-9);
    EXPECT_EQ(centre(after, "back").x, 0.0);
    EXPECT_NEAR(armhole(after, "back"), armhole(*before, "back"), 1e-5);
    EXPECT_NEAR(shoulder(after, "back"), shoulder(*before, "back"), 1e-5);
    EXPECT_NEAR(garment(after, "neckline-length"), garment(*before, "neckline-length"), 1e-5);
    expect_roles_same(*before, after, "back", kBelow);
    EXPECT_TRUE(same_bits(*before, after, "front", "centre-front"));
    expect_roles_same(*before, after, "front", kBelow);
  }
}

TEST(LengthenUpperBack, TheShoulderDartTakesUpTheTurn) {
  const Piece& was = *find_piece(woven_bodice(), "back");
  const Block longer = altered(woven_bodice(), {step("lengthen-upper-back", 12)});
  const Block shorter = altered(woven_bodice(), {step("lengthen-upper-back", -12)});
  const auto intake = [](const Block& b) {
    const Piece& back = *find_piece(b, "back");
    return dart_intake(back, *dart_toward(back, "shoulder-blade-point"));
  };
  // The turn at the hinge, seen at the dart's mouth from the blade point.
  const Vec2 blade = find_landmark(was, "shoulder-blade-point")->at;
  const Vec2 hinge =
      point_at(find_edge(was, "armhole")->curve, find_notch(was, "back-notch-1")->at_mm);
  const double at_mouth =
      12.0 / hinge.x * distance(blade, find_edge(was, "shoulder-inner")->curve.start());
  EXPECT_NEAR(intake(longer) - intake(woven_bodice()), at_mouth, 1.5);
  EXPECT_NEAR(intake(woven_bodice()) - intake(shorter), at_mouth, 1.5);
  EXPECT_EQ(ease(longer), ease(woven_bodice()));
}

TEST(LengthenUpperBack, EasedTheShoulderGetsLongerAndTheSeamSaysSo) {
  for (const Block* before : {&knit_top(), &woven_bodice()}) {
    const Block after = altered(*before, {step("lengthen-upper-back", 9, {{"surplus", "eased"}})});
    EXPECT_GT(ease(after), ease(*before) + 2.0);
    EXPECT_NEAR(shoulder(after, "back") - shoulder(after, "front"), ease(after), 1e-5);
    EXPECT_NEAR(shoulder(after, "front"), shoulder(*before, "front"), 1e-9);
  }
  // Nothing is eased in a knit that could be taken out: the tip comes in with the neck.
  const Block erect =
      altered(knit_top(), {step("lengthen-upper-back", -9, {{"surplus", "eased"}})});
  EXPECT_NEAR(ease(erect), 0.0, 1e-6);
}

TEST(RaiseBackNeck, OnlyTheBackNecklineAndItsStripFollow) {
  for (const auto& [before, d] : cases(8)) {
    const Block after = expect_undone(*before, "raise-back-neck", d, {}, 0.7);
    EXPECT_NEAR(garment(after, "back-length"), garment(*before, "back-length") + d, 1e-9);
    expect_roles_same(*before, after, "back", kBelow);
    expect_roles_same(*before, after, "back",
                      {EdgeRole::shoulder, EdgeRole::armhole, EdgeRole::dart_leg});
    EXPECT_TRUE(*find_piece(*before, "front") == *find_piece(after, "front"));
    EXPECT_TRUE(*find_piece(*before, "sleeve") == *find_piece(after, "sleeve"));
  }
}

TEST(ShiftShoulderSeam, WhatTheFrontLosesTheBackGains) {
  for (const auto& [before, f] : cases(9)) {
    const Block after = expect_undone(*before, "shift-shoulder-seam", f, {}, 0.7);
    EXPECT_NEAR(distance(tip(after, "front"), tip(*before, "front")), std::abs(f), 1e-5);
    EXPECT_NEAR(distance(tip(after, "back"), tip(*before, "back")), std::abs(f), 0.3);
    EXPECT_EQ(tip(after, "front").y<tip(*before, "front").y, f> 0);
    EXPECT_EQ(neck_point(after, "front"), neck_point(*before, "front"));
    EXPECT_NEAR(armhole(after, "front"), armhole(*before, "front") - f, 1e-5);
    EXPECT_NEAR(armhole(after, "back"), armhole(*before, "back") + f, 1e-5);
    EXPECT_NEAR(shoulder(after, "front"), shoulder(*before, "front"), 1e-5);
    EXPECT_NEAR(shoulder(after, "back"), shoulder(*before, "back"), 1e-5);
    EXPECT_NEAR(garment(after, "cap-length"), garment(*before, "cap-length"), 1e-5);
    for (const char* piece : {"front", "back"}) expect_roles_same(*before, after, piece, kBelow);
    expect_roles_same(*before, after, "sleeve", {EdgeRole::underarm, EdgeRole::sleeve_hem});
  }
}

TEST(ShiftShoulderSeam, TheCrownGoesForwardWithTheSeam) {
  for (const auto& [before, f] : cases(9)) {
    const Block after = altered(*before, {step("shift-shoulder-seam", f)});
    const double front = length(curve(after, "sleeve", "cap-front"));
    EXPECT_NEAR(front, length(curve(*before, "sleeve", "cap-front")) - f, 1e-5);
    const double goes =
        curve(after, "sleeve", "cap-front").end().x - curve(*before, "sleeve", "cap-front").end().x;
    EXPECT_EQ(goes > 0, f > 0);  // the front of the sleeve lies to the right
    EXPECT_GT(std::abs(goes), 0.3 * std::abs(f));
    EXPECT_NEAR(garment(after, "cap-height"), garment(*before, "cap-height"), 4.0);
  }
}

TEST(ShiftShoulderSeam, WholeTheNecklinesGiveAndTakeToo) {
  for (const auto& [before, f] : cases(6)) {
    const Block after = expect_undone(*before, "shift-shoulder-seam", f, {{"from", "whole"}}, 1.0);
    EXPECT_NEAR(distance(neck_point(after, "front"), neck_point(*before, "front")), std::abs(f),
                1e-9);
    EXPECT_NEAR(distance(tip(after, "front"), tip(*before, "front")), std::abs(f), 1e-9);
    EXPECT_NEAR(armhole(after, "front") + armhole(after, "back"),
                armhole(*before, "front") + armhole(*before, "back"), 1e-5);
    EXPECT_NEAR(shoulder(after, "back"), shoulder(*before, "back"), 1e-5);
    EXPECT_NEAR(garment(after, "neckline-length"), garment(*before, "neckline-length"), 1.5);
  }
}

TEST(MoveArmholeForward, MovedNotEnlarged) {
  for (const auto& [before, f] : cases(5)) {
    const Block after = expect_undone(*before, "move-armhole-forward", f, {}, 0.7);
    EXPECT_NEAR(garment(after, "across-front-width"),
                garment(*before, "across-front-width") - 2 * f, 1e-5);
    EXPECT_NEAR(garment(after, "across-back-width"), garment(*before, "across-back-width") + 2 * f,
                1e-5);
    EXPECT_NEAR(garment(after, "armhole-length"), garment(*before, "armhole-length"), 1e-5);
    for (const char* piece : {"front", "back"}) {
      EXPECT_EQ(tip(after, piece), tip(*before, piece));
      expect_roles_same(
          *before, after, piece,
          {EdgeRole::shoulder, EdgeRole::neckline, EdgeRole::side, EdgeRole::hem, EdgeRole::waist});
    }
  }
}

TEST(WidenAcross, ByTwiceTheHalfAmountAtTheArmholeAlone) {
  for (const auto& [before, w] : cases(8)) {
    const Block back = expect_undone(*before, "widen-back", w, {}, 1.0);
    EXPECT_NEAR(garment(back, "across-back-width"), garment(*before, "across-back-width") + 2 * w,
                1e-5);
    EXPECT_TRUE(*find_piece(*before, "front") == *find_piece(back, "front"));
    expect_roles_same(*before, back, "back", kBelow);
    EXPECT_TRUE(same_bits(*before, back, "back", "neckline"));
    EXPECT_NEAR(shoulder(back, "back") - shoulder(back, "front"), ease(back), 1e-5);

    const Block chest = expect_undone(*before, "widen-chest", w, {}, 1.0);
    EXPECT_NEAR(garment(chest, "across-front-width"),
                garment(*before, "across-front-width") + 2 * w, 1e-5);
    EXPECT_EQ(tip(chest, "front"), tip(*before, "front"));
    EXPECT_TRUE(*find_piece(*before, "back") == *find_piece(chest, "back"));
    expect_roles_same(*before, chest, "front", kBelow);
    expect_roles_same(*before, chest, "front", {EdgeRole::shoulder, EdgeRole::neckline});
  }
}

TEST(WidenAcross, AWholeAmountIsHalved) {
  const Block half = altered(knit_top(), {step("widen-back", 6)});
  const Block whole = altered(knit_top(), {step("widen-back", 12, {}, Of::whole)});
  EXPECT_TRUE(half == whole);
}

TEST(WidenAcross, AStripFromShoulderToHem) {
  for (const auto& [before, w] : cases(8)) {
    // A dartless back without ease cannot give at the shoulder, and does not get it back.
    const bool undone = w > 0 || before == &woven_bodice();
    const Options whole = {{"way", "whole"}};
    const Block after = undone ? expect_undone(*before, "widen-back", w, whole, 1.0)
                               : altered(*before, {step("widen-back", w, whole)});
    EXPECT_NEAR(garment(after, "across-back-width"), garment(*before, "across-back-width") + 2 * w,
                1e-5);
    EXPECT_NEAR(garment(after, "bust-girth"), garment(*before, "bust-girth") + 2 * w, 0.3);
    EXPECT_NEAR(garment(after, "waist-girth"), garment(*before, "waist-girth") + 2 * w, 0.5);
    EXPECT_NEAR(garment(after, "side-length"), garment(*before, "side-length"), 1e-5);
    EXPECT_EQ(neck_point(after, "back"), neck_point(*before, "back"));
    EXPECT_TRUE(same_bits(*before, after, "back", "centre-back"));
  }
  // The strip goes through the shoulder dart, which takes it up.
  const Block woven = altered(woven_bodice(), {step("widen-back", 8, {{"way", "whole"}})});
  const Piece& was = *find_piece(woven_bodice(), "back");
  const Piece& is = *find_piece(woven, "back");
  EXPECT_NEAR(dart_intake(is, *dart_toward(is, "shoulder-blade-point")),
              dart_intake(was, *dart_toward(was, "shoulder-blade-point")) + 8.0, 1.5);
}

TEST(TuckBackWaist, TheCentreBackAloneGetsShorter) {
  for (const auto& [before, d] : cases(14)) {
    const Block after = expect_undone(*before, "tuck-back-waist", d, {}, 1.0);
    EXPECT_NEAR(garment(after, "back-length"), garment(*before, "back-length") - d, 1e-9);
    expect_roles_same(*before, after, "back",
                      {EdgeRole::side, EdgeRole::armhole, EdgeRole::shoulder, EdgeRole::neckline});
    expect_same_measure_lines(*before, after, "sleeve");
    expect_roles_same(*before, after, "front",
                      {EdgeRole::side, EdgeRole::armhole, EdgeRole::centre_front});
    EXPECT_NEAR(garment(after, "waist-girth"), garment(*before, "waist-girth"), 0.5);
  }
}

TEST(ResizeNeckline, EveryPointGoesOutByTheAmount) {
  for (const auto& [before, a] : cases(8)) {
    const Block after = expect_undone(*before, "resize-neckline", a, {}, 1.5);
    for (const char* piece : {"front", "back"}) {
      const Curve& was = curve(*before, piece, "neckline");
      const Curve& is = curve(after, piece, "neckline");
      for (const double share : {0.0, 0.25, 0.5, 0.75, 1.0})
        EXPECT_NEAR(nearest(was, point_at(is, share * length(is))).distance, std::abs(a), 1.0)
            << piece << " " << share;
      EXPECT_NEAR(shoulder(after, piece), shoulder(*before, piece) - a, 1e-5);
      expect_roles_same(*before, after, piece, kBelow);
      EXPECT_TRUE(same_bits(*before, after, piece, "armhole"));
    }
    EXPECT_EQ(garment(after, "neckline-length") > garment(*before, "neckline-length"), a > 0);
  }
}

TEST(MoveNeckForward, FrontDownBackUpTheHoleKeepsItsSize) {
  for (const auto& [before, f] : cases(6)) {
    const Block after = expect_undone(*before, "move-neck-forward", f, {}, 1.0);
    EXPECT_NEAR(centre(after, "front").y, centre(*before, "front").y - f, 1e-9);
    EXPECT_NEAR(centre(after, "back").y, centre(*before, "back").y + f, 1e-9);
    EXPECT_NEAR(distance(neck_point(after, "front"), neck_point(*before, "front")), std::abs(f),
                1e-5);
    EXPECT_NEAR(garment(after, "neckline-length"), garment(*before, "neckline-length"), 2.0);
    EXPECT_NEAR(shoulder(after, "front"), shoulder(*before, "front"), 1e-5);
    for (const char* piece : {"front", "back"}) {
      EXPECT_EQ(tip(after, piece), tip(*before, piece));
      expect_roles_same(*before, after, piece, kBelow);
    }
    expect_same_measure_lines(*before, after, "sleeve");
  }
}

TEST(DeepenBladeDart, TheDartTakesUpMoreAndTheSewnShoulderStays) {
  for (const char* hinge : {"armhole", "waist"}) {
    for (const double w : {7.0, -6.0}) {
      const Block& before = woven_bodice();
      const Block after = expect_undone(before, "deepen-blade-dart", w, {{"hinge", hinge}}, 1.0);
      const auto intake = [](const Block& b) {
        const Piece& back = *find_piece(b, "back");
        return dart_intake(back, *dart_toward(back, "shoulder-blade-point"));
      };
      EXPECT_NEAR(intake(after), intake(before) + w, 1.5) << hinge;
      EXPECT_NEAR(shoulder(after, "back"), shoulder(before, "back"), 1e-5);
      EXPECT_NEAR(armhole(after, "back"), armhole(before, "back"), 1e-5);
      EXPECT_EQ(neck_point(after, "back"), neck_point(before, "back"));
      EXPECT_NEAR(garment(after, "neckline-length"), garment(before, "neckline-length"), 1e-5);
      EXPECT_TRUE(same_bits(before, after, "back", "centre-back"));
      if (std::string(hinge) == "armhole") expect_roles_same(before, after, "back", kBelow);
    }
  }
}

TEST(DeepenBladeDart, WithoutADartTheShoulderIsEased) {
  const Block after = altered(knit_top(), {step("deepen-blade-dart", 6)});
  EXPECT_NEAR(shoulder(after, "back"), shoulder(knit_top(), "back") + 6.0, 1e-6);
  EXPECT_NEAR(ease(after), ease(knit_top()) + 6.0, 1e-9);
  EXPECT_NEAR(armhole(after, "back"), armhole(knit_top(), "back"), 1e-5);
  const Result<Altered> less = alter(knit_top(), {step("deepen-blade-dart", -6)});
  ASSERT_FALSE(less.ok());
  EXPECT_EQ(less.problems().front().code, "operation-not-here");
  const Result<Altered> more = alter(after, {step("deepen-blade-dart", 9)});
  ASSERT_FALSE(more.ok());
  EXPECT_EQ(more.problems().front().code, "amount-too-large");
}

TEST(SwingShoulder, WithTheArmholeLeftTheSleeveFollows) {
  for (const auto& [before, d] : cases(9)) {
    const Block after = altered(*before, {step("swing-shoulder", d, {{"armhole", "stays"}})});
    for (const char* piece : {"front", "back"}) {
      EXPECT_NEAR(tip(*before, piece).y - tip(after, piece).y, d, 1e-6);
      expect_roles_same(*before, after, piece, kBelow);  // the base of the armhole stays
    }
    EXPECT_NEAR(garment(after, "shoulder-length"), garment(*before, "shoulder-length"), 1e-5);
    // A pad under the shoulder lengthens armhole and cap by about its height on front and back.
    const double longer = garment(after, "armhole-length") - garment(*before, "armhole-length");
    EXPECT_EQ(longer<0, d> 0);
    EXPECT_NEAR(garment(after, "cap-length") - garment(*before, "cap-length"), longer, 1e-5);
  }
}

TEST(UpperBody, WhatABlockLacksIsNamed) {
  Block no_back = knit_top();
  std::erase_if(no_back.pieces, [](const Piece& p) { return p.id == "back"; });
  for (const char* id : {"lengthen-upper-back", "widen-back", "tuck-back-waist",
                         "shift-shoulder-seam", "deepen-blade-dart", "resize-neckline",
                         "move-neck-forward", "move-armhole-forward", "raise-back-neck"}) {
    const Result<Altered> result = alter(no_back, {step(id, 6)});
    ASSERT_FALSE(result.ok()) << id;
    EXPECT_EQ(result.problems().front().code, "operation-not-here") << id;
  }
}

// What a fitter may plausibly ask for: nearly always done, and what is done is proved.
TEST(UpperBody, PlausibleAmountsSucceed) {
  struct Share {
    int done = 0;
    int asked = 0;
  };
  std::map<std::string, Share> shares;
  for (const char* id :
       {"shorten-chest", "lengthen-upper-back", "raise-back-neck", "shift-shoulder-seam",
        "move-armhole-forward", "widen-back", "widen-chest", "tuck-back-waist", "resize-neckline",
        "move-neck-forward", "deepen-blade-dart", "swing-shoulder", "move-shoulder-tip"}) {
    const OperationInfo& info = *find_operation(id);
    std::vector<Options> all = {{}};
    for (const OptionInfo& o : info.options) {
      all.clear();
      for (const std::string_view v : o.values)
        all.push_back({{std::string(o.key), std::string(v)}});
    }
    for (const Options& options : all) {
      for (const Block* block : {&knit_top(), &woven_bodice()}) {
        for (int k = -5; k <= 5; ++k) {
          if (k == 0) continue;
          const double amount = k / 5.0 * info.most;
          const Result<Altered> result = alter(*block, {step(id, amount, options)});
          // A dartless knit has no ease in its shoulder to take out, and its neck must pass a head.
          if (!result &&
              (result.problems().front().code == "operation-not-here" ||
               result.problems().front().what.find("passes a head") != std::string::npos))
            continue;
          ++shares[id].asked;
          if (!result) continue;
          EXPECT_TRUE(prove(result->block, block).pass) << id << " " << amount;
          ++shares[id].done;
        }
      }
    }
  }
  for (const auto& [id, share] : shares) {
    EXPECT_GE(share.asked, 15) << id;
    EXPECT_GE(share.done, 0.95 * share.asked) << id;
  }
}

}  // namespace
}  // namespace pinwright
