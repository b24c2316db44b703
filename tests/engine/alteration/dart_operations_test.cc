// Darts moved, divided, let go, made; the bust point moved.
#include <cmath>
#include <numbers>

#include "engine/base/units.h"
#include "engine/geometry/arc_length.h"
#include "expect_same.h"

namespace pinwright {
namespace {

// The angle that a dart's mouth takes up as seen from the mark: what the cloth turns by.
double turned_by(const Block& block, const std::string& piece, const std::string& dart) {
  const Piece& p = *find_piece(block, piece);
  for (const Dart& d : p.darts) {
    if (d.id != dart) continue;
    const Vec2 mark = find_landmark(p, d.toward)->at;
    return std::abs(turn(find_edge(p, d.leg_in)->curve.start() - mark,
                         find_edge(p, d.leg_out)->curve.end() - mark));
  }
  ADD_FAILURE() << "no dart " << dart;
  return 0.0;
}

double angle_of(const Block& block, const std::string& piece, const std::string& dart) {
  const Piece& p = *find_piece(block, piece);
  for (const Dart& d : p.darts)
    if (d.id == dart) return dart_angle(p, d);
  return 0.0;
}

double intake_of(const Block& block, const std::string& piece, const std::string& dart) {
  const Piece& p = *find_piece(block, piece);
  for (const Dart& d : p.darts)
    if (d.id == dart) return dart_intake(p, d);
  return 0.0;
}

double angle_sum(const Block& block, const std::string& piece) {
  double sum = 0.0;
  for (const Dart& d : find_piece(block, piece)->darts) sum += turned_by(block, piece, d.id);
  return sum;
}

double ease_of(const Block& block, const std::string& seam) {
  double sum = 0.0;
  for (const SeamSection& s : find_seam(block, seam)->sections) sum += s.ease_mm;
  return sum;
}

// Curves beside a mouth that is trued give a little; none of their points goes further than this.
void expect_near(const Block& before, const Block& after, const std::string& piece,
                 const std::vector<std::string>& edges, double within) {
  for (const std::string& id : edges) {
    const Curve& was = find_edge(*find_piece(before, piece), id)->curve;
    const Curve& is = find_edge(*find_piece(after, piece), id)->curve;
    ASSERT_EQ(was.points.size(), is.points.size());
    for (std::size_t i = 0; i < was.points.size(); ++i)
      EXPECT_LT(distance(was.points[i], is.points[i]), within) << piece << "." << id << " " << i;
  }
}

const std::vector<std::string> kKept = {"neckline-length", "armhole-length", "shoulder-length",
                                        "side-length", "waist-girth"};

// Moving a dart changes no seam; widths across the bust change as the cloth turns.
TEST(RotateDart, SideToANewShoulderDartKeepsTheAngleAndEverySeam) {
  const Block& before = woven_bodice();
  const Block after =
      altered(before, {step("rotate-dart", 1, {{"from", "side"}, {"to", "shoulder"}})});
  const Piece& front = *find_piece(after, "front");
  EXPECT_EQ(front.darts.size(), 2u);
  EXPECT_EQ(find_edge(front, "bust-dart-in"), nullptr);
  ASSERT_NE(find_edge(front, "side"), nullptr);
  EXPECT_TRUE(find_edge(front, "side")->straight);
  EXPECT_NEAR(turned_by(after, "front", "shoulder-dart"), turned_by(before, "front", "bust-dart"),
              radians(0.2));
  expect_measures(before, after, kKept, 1e-4);
  expect_same(before, after, "front", {"centre-front", "waist-inner", "waist-dart-in"});
  expect_near(before, after, "front", {"neckline", "waist-outer"}, 1.5);
  expect_piece_same(before, after, "back");
  expect_lines_same(before, after, "sleeve");
  const Block back =
      altered(after, {step("rotate-dart", 1, {{"from", "shoulder"}, {"to", "side"}})});
  EXPECT_NEAR(turned_by(back, "front", "bust-dart"), turned_by(before, "front", "bust-dart"),
              radians(1.0));
  expect_measures(before, back, kKept, 1e-4);
  expect_measures(before, back, {"across-front-width"}, 0.5);
  // The dart comes back a little higher; the bust level now meets it and bends there.
  expect_measures(before, back, {"bust-girth"}, 2.0);
}

TEST(RotateDart, AShareGoesAndTheRestStays) {
  const Block& before = woven_bodice();
  for (const char* to : {"waist", "shoulder"}) {
    const Block after = altered(before, {step("rotate-dart", 0.4, {{"from", "side"}, {"to", to}})});
    EXPECT_NEAR(turned_by(after, "front", "bust-dart"),
                0.6 * turned_by(before, "front", "bust-dart"), radians(0.2))
        << to;
    EXPECT_NEAR(angle_sum(after, "front"), angle_sum(before, "front"), radians(0.2)) << to;
    expect_measures(before, after, kKept, 1e-4);
    expect_same(before, after, "front", {"centre-front"});
    expect_near(before, after, "front", {"neckline"}, 1.5);
    expect_piece_same(before, after, "back");
  }
}

TEST(RotateDart, BackShoulderDartGoesToTheSide) {
  const Block& before = woven_bodice();
  const Block after = altered(
      before, {step("rotate-dart", 1, {{"piece", "back"}, {"from", "shoulder"}, {"to", "side"}})});
  EXPECT_NE(find_edge(*find_piece(after, "back"), "side-dart-in"), nullptr);
  EXPECT_NE(find_edge(*find_piece(after, "back"), "shoulder"), nullptr);
  expect_piece_same(before, after, "front");
  expect_measures(before, after, kKept, 1e-4);
}

TEST(RotateDart, IsRefusedWhereThereIsNoDartOrNoSeam) {
  EXPECT_EQ(refused(knit_top(), step("rotate-dart", 1, {{"from", "side"}, {"to", "shoulder"}})),
            "operation-not-here");
  EXPECT_EQ(refused(woven_bodice(), step("rotate-dart", 1, {{"from", "side"}, {"to", "side"}})),
            "operation-not-here");
  EXPECT_EQ(
      refused(woven_bodice(), step("rotate-dart", 1.5, {{"from", "side"}, {"to", "shoulder"}})),
      "amount-range");
}

TEST(DivideDart, TwoOfEqualAngleAndJoinedAgain) {
  const Block& before = woven_bodice();
  const Block after = altered(before, {step("divide-dart", 25)});
  ASSERT_EQ(find_piece(after, "front")->darts.size(), 3u);
  const double lower = turned_by(after, "front", "bust-dart");
  const double upper = turned_by(after, "front", "bust-dart-2");
  EXPECT_NEAR(lower, upper, radians(0.5));
  EXPECT_NEAR(lower + upper, turned_by(before, "front", "bust-dart"), radians(0.2));
  expect_measures(before, after, kKept, 1e-4);
  expect_same(before, after, "front", {"shoulder", "neckline", "centre-front"});
  expect_near(before, after, "front", {"armhole"}, 1.5);
  expect_piece_same(before, after, "back");
  const Block back = altered(after, {step("divide-dart", -25)});
  EXPECT_EQ(find_piece(back, "front")->darts.size(), 2u);
  EXPECT_NEAR(angle_sum(back, "front"), angle_sum(before, "front"), radians(0.2));
  expect_measures(before, back, kKept, 1e-4);
  EXPECT_EQ(refused(before, step("divide-dart", -25)), "operation-not-here");
}

TEST(EaseDart, APartOfTheShoulderDartBecomesEase) {
  const Block& before = woven_bodice();
  const std::map<std::string, std::string> at = {{"piece", "back"}, {"seam", "shoulder"}};
  const Block after = altered(before, {step("ease-dart", 4, at)});
  EXPECT_NEAR(ease_of(after, "shoulder"), ease_of(before, "shoulder") + 4.0, 1e-9);
  EXPECT_NEAR(intake_of(after, "back", "shoulder-dart"),
              intake_of(before, "back", "shoulder-dart") - 4.0, 0.3);
  expect_piece_same(before, after, "front");
  expect_measures(before, after, kKept, 1e-4);
  const Block back = altered(after, {step("ease-dart", -4, at)});
  EXPECT_NEAR(ease_of(back, "shoulder"), ease_of(before, "shoulder"), 1e-9);
  EXPECT_NEAR(intake_of(back, "back", "shoulder-dart"), intake_of(before, "back", "shoulder-dart"),
              0.3);
}

TEST(EaseDart, ADartThatGivesAllIsTakenOut) {
  const std::map<std::string, std::string> at = {{"piece", "back"}, {"seam", "shoulder"}};
  // First so much of it to the side that what is left can be eased in.
  const Block before = altered(
      woven_bodice(),
      {step("rotate-dart", 0.6, {{"piece", "back"}, {"from", "shoulder"}, {"to", "side"}})});
  const double intake = intake_of(before, "back", "shoulder-dart");
  ASSERT_LT(intake, 8.0);
  const Block after = altered(before, {step("ease-dart", intake, at)});
  EXPECT_NE(find_edge(*find_piece(after, "back"), "shoulder"), nullptr);
  EXPECT_GT(ease_of(after, "shoulder"), ease_of(before, "shoulder") + 0.8 * intake);
  EXPECT_LT(ease_of(after, "shoulder"), ease_of(before, "shoulder") + 1.2 * intake);
  expect_piece_same(before, after, "front");
  EXPECT_EQ(refused(before, step("ease-dart", intake + 4.0, at)), "amount-too-large");
  EXPECT_EQ(refused(woven_bodice(), step("ease-dart", 25.0)), "amount-too-large");
}

TEST(EaseDart, KnitEaseBecomesADartAndTheDartEase) {
  const Block& before = knit_top();
  const Block after = altered(before, {step("ease-dart", -6)});
  ASSERT_EQ(find_piece(after, "front")->darts.size(), 1u);
  EXPECT_NEAR(ease_of(after, "side"), ease_of(before, "side") - 6.0, 1e-9);
  EXPECT_NEAR(intake_of(after, "front", "bust-dart"), 6.0, 0.5);
  expect_piece_same(before, after, "back");
  const Block back = altered(after, {step("ease-dart", intake_of(after, "front", "bust-dart"))});
  EXPECT_TRUE(find_piece(back, "front")->darts.empty());
  EXPECT_NEAR(ease_of(back, "side"), ease_of(before, "side"), 0.5);
  expect_measures(before, back, {"bust-girth", "waist-girth", "hem-girth"}, 2.0);
}

TEST(LengthenDart, PointMovesAndNoSeamChanges) {
  const Block& before = woven_bodice();
  for (const auto& [seam, dart] :
       {std::pair{"side", "bust-dart"}, std::pair{"waist", "waist-dart"}}) {
    const Block after = altered(before, {step("lengthen-dart", -12, {{"seam", seam}})});
    const auto point = [&, name = std::string(dart)](const Block& b) {
      return find_edge(*find_piece(b, "front"), name + "-in")->curve.end();
    };
    EXPECT_NEAR(distance(point(before), point(after)), 12.0, 0.2);
    EXPECT_NEAR(intake_of(after, "front", dart), intake_of(before, "front", dart), 0.5);
    expect_measures(before, after, kKept, 1e-4);
    expect_same(before, after, "front", {"shoulder", "neckline", "centre-front"});
    expect_near(before, after, "front", {"armhole"}, 1.5);
    expect_piece_same(before, after, "back");
    const Block back = altered(after, {step("lengthen-dart", 12, {{"seam", seam}})});
    EXPECT_LT(distance(point(before), point(back)), 0.5);
  }
  EXPECT_EQ(refused(before, step("lengthen-dart", 60)), "amount-too-large");
}

TEST(BustPoint, UpAndDownWithItsDarts) {
  const Block& before = woven_bodice();
  const auto mark = [](const Block& b) {
    return find_landmark(*find_piece(b, "front"), "bust-point")->at;
  };
  const auto point = [](const Block& b) {
    return find_edge(*find_piece(b, "front"), "bust-dart-in")->curve.end();
  };
  for (const double d : {15.0, -15.0}) {
    const Block after = altered(before, {step("move-bust-point", d)});
    EXPECT_NEAR(mark(after).y - mark(before).y, d, 1e-9);
    EXPECT_NEAR(point(after).y - point(before).y, d, 1.0);
    const auto lower = [](const Block& b) {
      return length(find_edge(*find_piece(b, "front"), "side-lower")->curve);
    };
    EXPECT_NEAR(lower(after) - lower(before), d, 1e-5);
    EXPECT_NEAR(intake_of(after, "front", "bust-dart"), intake_of(before, "front", "bust-dart"),
                5.0);
    EXPECT_NEAR(angle_of(after, "front", "bust-dart"), angle_of(before, "front", "bust-dart"),
                radians(1.5));
    expect_measures(before, after, kKept, 1e-4);
    expect_same(before, after, "front", {"shoulder", "neckline", "centre-front"});
    expect_piece_same(before, after, "back");
    const Block back = altered(after, {step("move-bust-point", -d)});
    EXPECT_LT(distance(point(back), point(before)), 1.0);
    expect_measures(before, back, {"bust-girth", "across-front-width"}, 1.0);
  }
}

TEST(BustPoint, SidewaysTheWaistDartGoesOverWhole) {
  const Block& before = woven_bodice();
  for (const double d : {10.0, -10.0}) {
    const Block after = altered(before, {step("move-bust-point", d, {{"direction", "sideways"}})});
    const auto inner = [](const Block& b) {
      return length(find_edge(*find_piece(b, "front"), "waist-inner")->curve);
    };
    EXPECT_NEAR(inner(after) - inner(before), d, 1e-5);
    EXPECT_NEAR(intake_of(after, "front", "waist-dart"), intake_of(before, "front", "waist-dart"),
                1.0);
    expect_measures(before, after, kKept, 1e-4);
    expect_same(before, after, "front", {"shoulder", "neckline", "centre-front"});
    expect_near(before, after, "front", {"armhole"}, 1.5);
    expect_piece_same(before, after, "back");
  }
}

TEST(BustPoint, OfADartlessKnitMovesTheEasedPartOfTheSide) {
  const Block& before = knit_top();
  const Block after = altered(before, {step("move-bust-point", -12)});
  for (const char* piece : {"front", "back"}) {
    expect_lines_same(before, after, piece);
    EXPECT_NEAR(find_notch(*find_piece(after, piece), "bust-notch-lower")->at_mm,
                find_notch(*find_piece(before, piece), "bust-notch-lower")->at_mm - 12.0, 1e-9);
  }
  const Block back = altered(after, {step("move-bust-point", 12)});
  EXPECT_NEAR(find_landmark(*find_piece(back, "front"), "bust-point")->at.y,
              find_landmark(*find_piece(before, "front"), "bust-point")->at.y, 1e-9);
}

TEST(FullBust, DartlessFrontGetsADartAtTheSide) {
  const Block& before = knit_top();
  const Block after = altered(before, {step("full-bust", 15, {{"takes-up", "new-dart"}})});
  const Piece& front = *find_piece(after, "front");
  ASSERT_EQ(front.darts.size(), 1u);
  EXPECT_GT(intake_of(after, "front", "bust-dart"), 8.0);
  EXPECT_NEAR(ease_of(after, "side"), ease_of(before, "side"), 1e-9);
  EXPECT_NEAR(garment(after, "bust-girth"), garment(before, "bust-girth") + 30.0, 3.0);
  expect_measures(before, after, {"hem-girth", "armhole-length", "neckline-length"}, 0.5);
  expect_piece_same(before, after, "back");
  expect_same(before, after, "front", {"shoulder", "neckline"});
  // Smaller again, and what is left of the dart let go into ease.
  const Block smaller = altered(after, {step("full-bust", -9)});
  const double left = intake_of(smaller, "front", "bust-dart");
  const Block dartless = altered(smaller, {step("ease-dart", left)});
  EXPECT_TRUE(find_piece(dartless, "front")->darts.empty());
  EXPECT_NEAR(ease_of(dartless, "side"), ease_of(before, "side") + left, 0.25 * left);
}

TEST(FullBust, FrontWithItsDartElsewhereGetsOneAtTheSide) {
  const Block moved =
      altered(woven_bodice(), {step("rotate-dart", 1, {{"from", "side"}, {"to", "shoulder"}})});
  const Block after = altered(moved, {step("full-bust", 12)});
  EXPECT_EQ(find_piece(after, "front")->darts.size(), 3u);
  EXPECT_NEAR(garment(after, "bust-girth"), garment(moved, "bust-girth") + 24.0, 5.0);
  expect_piece_same(moved, after, "back");
}

TEST(Lining, GetsTheDartsOfItsShell) {
  Block block = knit_top();
  Piece lining = *find_piece(block, "front");
  lining.id = "front-lining";
  lining.cloth = "lining";
  block.pieces.push_back(lining);
  block.linings.push_back({"front-lining", "front"});
  const Block after =
      altered(block, {step("full-bust", 12, {{"takes-up", "new-dart"}}),
                      step("rotate-dart", 1, {{"from", "side"}, {"to", "shoulder"}})});
  const Piece& shell = *find_piece(after, "front");
  const Piece& follows = *find_piece(after, "front-lining");
  ASSERT_EQ(shell.edges.size(), follows.edges.size());
  EXPECT_EQ(shell.darts, follows.darts);
  for (std::size_t e = 0; e < shell.edges.size(); ++e) EXPECT_EQ(shell.edges[e], follows.edges[e]);
  EXPECT_TRUE(check_block(after).empty());
}

}  // namespace
}  // namespace pinwright
