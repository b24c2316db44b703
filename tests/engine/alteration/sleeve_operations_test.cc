// Cap height, cap ease, turning, hem and elbow of the sleeve.
#include "engine/geometry/arc_length.h"
#include "expect_same.h"

namespace pinwright {
namespace {

double edge_length(const Block& block, const std::string& piece, const std::string& edge) {
  return length(find_edge(*find_piece(block, piece), edge)->curve);
}

double seam_ease(const Block& block, const std::string& id) {
  double sum = 0.0;
  for (const SeamSection& s : find_seam(block, id)->sections) sum += s.ease_mm;
  return sum;
}

const std::vector<std::string> kSleeve = {"cap-height", "cap-length", "upper-arm-girth",
                                          "sleeve-hem-girth", "armhole-length"};

void expect_body_same(const Block& before, const Block& after) {
  expect_piece_same(before, after, "front");
  expect_piece_same(before, after, "back");
}

TEST(RaiseCap, UpperArmGivesAndTheCapKeepsItsLength) {
  for (const Block* before : {&knit_top(), &woven_bodice()}) {
    for (const double d : {10.0, -10.0}) {
      const Block after = altered(*before, {step("raise-cap", d)});
      EXPECT_NEAR(garment(after, "cap-height"), garment(*before, "cap-height") + d, 1e-6);
      EXPECT_NEAR(garment(after, "cap-length"), garment(*before, "cap-length"), 1e-5);
      EXPECT_EQ(d > 0,
                garment(after, "upper-arm-girth") < garment(*before, "upper-arm-girth") - 3.0);
      expect_body_same(*before, after);
      const Block back = altered(after, {step("raise-cap", -d)});
      expect_measures(*before, back, kSleeve, 0.5);
    }
  }
}

TEST(RaiseCap, EaseGivesAndTheUpperArmStays) {
  for (const Block* before : {&knit_top(), &woven_bodice()}) {
    const Block after = altered(*before, {step("raise-cap", 7, {{"gives", "ease"}})});
    EXPECT_NEAR(garment(after, "cap-height"), garment(*before, "cap-height") + 7.0, 1e-6);
    EXPECT_NEAR(garment(after, "upper-arm-girth"), garment(*before, "upper-arm-girth"), 1e-9);
    const double more = seam_ease(after, "armhole-front") + seam_ease(after, "armhole-back") -
                        seam_ease(*before, "armhole-front") - seam_ease(*before, "armhole-back");
    EXPECT_GT(more, 5.0);
    EXPECT_NEAR(garment(after, "cap-length"), garment(*before, "cap-length") + more, 1e-5);
    expect_body_same(*before, after);
    expect_same(*before, after, "sleeve", {"hem", "underarm-front", "underarm-back"});
    const Block back = altered(after, {step("raise-cap", -7, {{"gives", "ease"}})});
    expect_measures(*before, back, kSleeve, 0.5);
  }
}

TEST(EaseCap, GoesAboveTheNotchesOnly) {
  for (const Block* before : {&knit_top(), &woven_bodice()}) {
    const Block after = altered(*before, {step("ease-cap", 8, {}, Of::whole)});
    EXPECT_NEAR(garment(after, "cap-length"), garment(*before, "cap-length") + 8.0, 1e-5);
    EXPECT_NEAR(seam_ease(after, "armhole-front"), seam_ease(*before, "armhole-front") + 3.6, 1e-9);
    EXPECT_NEAR(find_seam(after, "armhole-back")->sections.back().ease_mm,
                find_seam(*before, "armhole-back")->sections.back().ease_mm + 4.4, 1e-9);
    expect_body_same(*before, after);
    expect_same(*before, after, "sleeve", {"hem", "underarm-front", "underarm-back"});
    const Block back = altered(after, {step("ease-cap", -8, {}, Of::whole)});
    expect_measures(*before, back, kSleeve, 0.2);
  }
}

TEST(EaseCap, IsRefusedBeyondWhatTheClothEasesIn) {
  EXPECT_EQ(refused(knit_top(), step("ease-cap", 14, {}, Of::whole)), "amount-too-large");
  EXPECT_EQ(refused(knit_top(), step("ease-cap", -3, {}, Of::whole)), "amount-too-large");
  EXPECT_EQ(refused(woven_bodice(), step("ease-cap", -30, {}, Of::whole)), "amount-too-large");
}

TEST(TurnSleeve, TheCapGoesBackOverTheGrainByTheAmount) {
  const auto crown = [](const Block& b) {
    return find_edge(*find_piece(b, "sleeve"), "cap-front")->curve.end();
  };
  for (const Block* before : {&knit_top(), &woven_bodice()}) {
    for (const double r : {12.0, -12.0}) {
      const Block after = altered(*before, {step("turn-sleeve", r)});
      const double grain = find_piece(after, "sleeve")->grainline.from.x;
      EXPECT_EQ(grain, find_piece(*before, "sleeve")->grainline.from.x);
      EXPECT_NEAR(crown(after).x, crown(*before).x - r, 1e-9);
      for (const char* half : {"cap-front", "cap-back", "underarm-front", "underarm-back"})
        EXPECT_NEAR(edge_length(after, "sleeve", half), edge_length(*before, "sleeve", half), 1e-5)
            << half;
      expect_measures(*before, after, {"cap-height", "upper-arm-girth"}, 0.5);
      expect_body_same(*before, after);
      const Block back = altered(after, {step("turn-sleeve", -r)});
      expect_measures(*before, back, kSleeve, 0.5);
      EXPECT_NEAR(crown(back).x, crown(*before).x, 1e-9);
    }
  }
}

TEST(TurnSleeve, UnderarmLeftInPlaceOnlyTheCapIsRedrawn) {
  for (const Block* before : {&knit_top(), &woven_bodice()}) {
    const Block after = altered(*before, {step("turn-sleeve", 10, {{"underarm", "stays"}})});
    for (const char* half : {"cap-front", "cap-back"})
      EXPECT_NEAR(edge_length(after, "sleeve", half), edge_length(*before, "sleeve", half), 1e-5);
    expect_same(*before, after, "sleeve", {"hem", "underarm-front", "underarm-back"});
    expect_body_same(*before, after);
  }
}

TEST(SleeveHem, WidensAtTheHemAloneAndTheCapStays) {
  for (const Block* before : {&knit_top(), &woven_bodice()}) {
    for (const double b : {20.0, -20.0}) {
      const Block after = altered(*before, {step("widen-sleeve-hem", b, {}, Of::whole)});
      EXPECT_NEAR(garment(after, "sleeve-hem-girth"), garment(*before, "sleeve-hem-girth") + b,
                  1e-5);
      expect_measures(*before, after, {"cap-height", "upper-arm-girth"}, 1e-9);
      expect_measures(*before, after, {"cap-length"}, 1e-5);
      EXPECT_NEAR(edge_length(after, "sleeve", "underarm-front"),
                  edge_length(*before, "sleeve", "underarm-front"), 1e-5);
      expect_body_same(*before, after);
      const Block back = altered(after, {step("widen-sleeve-hem", -b, {}, Of::whole)});
      expect_measures(*before, back, kSleeve, 0.2);
    }
  }
}

TEST(Elbow, BackSeamIsLongerBetweenTheElbowNotchesOnly) {
  const Block& before = woven_bodice();
  const Block after = altered(before, {step("ease-elbow", 15)});
  EXPECT_NEAR(edge_length(after, "sleeve", "underarm-back"),
              edge_length(before, "sleeve", "underarm-back") + 15.0, 1e-5);
  const SeamProof walked = [&] {
    const Proof proof = prove(after);
    for (const SeamProof& s : proof.seams)
      if (s.seam == "underarm") return s;
    return SeamProof{};
  }();
  ASSERT_EQ(walked.sections.size(), 3u);
  EXPECT_NEAR(walked.sections[0].ease_found, 0.0, 1e-6);
  EXPECT_NEAR(walked.sections[1].ease_found, 15.0, 1e-6);
  EXPECT_NEAR(walked.sections[1].b_mm, 100.0, 1e-6);
  EXPECT_NEAR(walked.sections[2].ease_found, 0.0, 1e-6);
  expect_same(before, after, "sleeve", {"underarm-front", "cap-front", "cap-back"});
  expect_body_same(before, after);
  const Block back = altered(after, {step("ease-elbow", -15)});
  expect_measures(before, back, kSleeve, 0.2);
  EXPECT_NEAR(edge_length(back, "sleeve", "underarm-back"),
              edge_length(before, "sleeve", "underarm-back"), 1e-5);
}

TEST(Elbow, IsRefusedOnAShortSleeveAndBeyondItsEase) {
  EXPECT_EQ(refused(knit_top(), step("ease-elbow", 10)), "operation-not-here");
  EXPECT_EQ(refused(woven_bodice(), step("ease-elbow", -10)), "amount-too-large");
}

TEST(UpperArm, ThinArmUndoesTheLargeOne) {
  for (const Block* drafted : {&knit_top(), &woven_bodice()}) {
    Block thin_arm = *drafted;
    thin_arm.drafted_for.body["upper-arm-girth"] = 240.0;
    const Block* before = &thin_arm;
    const Block wide = altered(*before, {step("widen-upper-arm", 40, {}, Of::whole)});
    const Block thin = altered(wide, {step("widen-upper-arm", -40, {}, Of::whole)});
    expect_measures(*before, thin, kSleeve, 0.5);
    const Block narrow = altered(*before, {step("widen-upper-arm", -40, {}, Of::whole)});
    EXPECT_NEAR(garment(narrow, "upper-arm-girth"), garment(*before, "upper-arm-girth") - 40.0,
                1e-6);
    EXPECT_GT(garment(narrow, "cap-height"), garment(*before, "cap-height"));
    EXPECT_NEAR(garment(narrow, "cap-length"), garment(*before, "cap-length"), 1e-5);
    expect_body_same(*before, narrow);
  }
}

}  // namespace
}  // namespace pinwright
