// Blocks that came in damaged: each fault by its code and place, all in one pass.
#include <gtest/gtest.h>

#include <functional>
#include <limits>

#include "skerry_blocks.h"

namespace pinwright {
namespace {

struct Damage {
  std::string name;
  std::function<void(Block&)> harm;
  std::string code;
  std::string place;  ///< start of the place
};

Piece& front(Block& b) { return *find_piece(b, "front"); }

class CheckBlock : public testing::TestWithParam<Damage> {};

TEST_P(CheckBlock, NamesTheFault) {
  Block block = woven_bodice();
  ASSERT_TRUE(check_block(block).empty());
  GetParam().harm(block);
  const Problems problems = check_block(block);
  bool found = false;
  for (const Problem& p : problems) {
    found = found || (p.code == GetParam().code && p.place.rfind(GetParam().place, 0) == 0);
    EXPECT_FALSE(p.mend.empty()) << p.code;
  }
  EXPECT_TRUE(found) << (problems.empty() ? "nothing found"
                                          : problems.front().code + " " + problems.front().place);
  EXPECT_FALSE(prove(block).pass);
}

const Damage kDamages[] = {
    {"OpenOutline", [](Block& b) { front(b).edges[3].curve.points.back().x += 3; }, "outline-open",
     "/pieces/0/edges/3"},
    {"NotANumber",
     [](Block& b) {
       front(b).edges[8].curve.points[2].y = std::numeric_limits<double>::quiet_NaN();
     },
     "not-finite", "/pieces/0/edges/8/points/2"},
    {"Infinite",
     [](Block& b) {
       front(b).edges[8].curve.points[2].y = std::numeric_limits<double>::infinity();
     },
     "not-finite", "/pieces/0/edges/8/points/2"},
    {"FarAway", [](Block& b) { front(b).edges[8].curve.points[2].y = 1e9; }, "not-finite",
     "/pieces/0/edges/8/points/2"},
    {"TooFewPoints", [](Block& b) { front(b).edges[8].curve.points.pop_back(); }, "curve-points",
     "/pieces/0/edges/8/points"},
    {"NoPoints", [](Block& b) { front(b).edges[8].curve.points.clear(); }, "curve-points",
     "/pieces/0/edges/8/points"},
    {"NoEdges", [](Block& b) { front(b).edges.clear(); }, "edge-missing", "/pieces/0/edges"},
    {"Crossing",
     [](Block& b) {
       Curve& c = find_edge(front(b), "armhole")->curve;
       c.points[3] = {-80, 250};
     },
     "outline-crosses", "/pieces/0/edges"},
    {"NotStraight", [](Block& b) { find_edge(front(b), "shoulder")->curve.points[1].y += 2; },
     "edge-not-straight", "/pieces/0/edges"},
    {"Kinked", [](Block& b) { find_edge(front(b), "armhole")->curve.points[4].x += 9; },
     "edge-kinked", "/pieces/0/edges"},
    {"UnequalLegs",
     [](Block& b) {
       Piece& p = front(b);
       Edge& in = *find_edge(p, "bust-dart-in");
       Edge& out = *find_edge(p, "bust-dart-out");
       const Vec2 tip = in.curve.end() + Vec2{0, 6};
       in.curve = straight_curve(in.curve.start(), tip);
       out.curve = straight_curve(tip, out.curve.end());
     },
     "dart-legs", "/pieces/0/darts"},
    {"DartWithoutMark", [](Block& b) { front(b).darts[0].toward = "elbow"; }, "dart-legs",
     "/pieces/0/darts/0/toward"},
    {"NotchOffItsEdge", [](Block& b) { front(b).notches[0].at_mm = 5000; }, "notch-off-edge",
     "/pieces/0/notches/0"},
    {"NotchOnNothing", [](Block& b) { front(b).notches[0].edge = "collar"; }, "notch-off-edge",
     "/pieces/0/notches/0"},
    {"FoldElsewhere", [](Block& b) { front(b).fold = "armhole"; }, "fold-edge", "/pieces/0/fold"},
    {"NoGrainline", [](Block& b) { front(b).grainline.to = front(b).grainline.from; },
     "grainline-missing", "/pieces/0/grainline"},
    {"NegativeAllowance", [](Block& b) { front(b).edges[1].allowance.width_mm = -5; },
     "allowance-range", "/pieces/0/edges/1"},
    {"IdTwice", [](Block& b) { front(b).edges[1].id = front(b).edges[0].id; }, "id-twice",
     "/pieces/0/edges/1"},
    {"PieceTwice", [](Block& b) { b.pieces.push_back(b.pieces[0]); }, "id-twice", "/pieces/"},
    {"SeamGone",
     [](Block& b) { std::erase_if(b.seams, [](const Seam& s) { return s.id == "side"; }); },
     "seam-missing", "/pieces/0/edges"},
    {"SeamToNowhere", [](Block& b) { b.seams[0].b[0].edge = "pocket"; }, "reference-unknown",
     "/seams/0/b/0"},
    {"SeamNotch", [](Block& b) { find_seam(b, "armhole-front")->sections[0].notch_a = "bell"; },
     "reference-unknown", "/seams/"},
    {"NoLastSection", [](Block& b) { b.seams[0].sections.clear(); }, "seam-sections",
     "/seams/0/sections"},
    {"AbsurdEase", [](Block& b) { b.seams[0].sections[0].ease_mm = 1e6; }, "ease-range",
     "/seams/0/sections/0"},
    {"JoinAtNoCorner", [](Block& b) { b.joins[0].corners[0].after = "hem"; }, "reference-unknown",
     "/joins/0/corners/0"},
    {"LiningOfNothing",
     [](Block& b) {
       b.linings.push_back({"front-lining", "front"});
     },
     "reference-unknown", "/linings/0"},
    {"AbsurdBody", [](Block& b) { b.drafted_for.body["bust-girth"] = 9; }, "measurement-range",
     "/drafted_for/body"},
    {"NoPieces", [](Block& b) { b.pieces.clear(); }, "piece-missing", "/pieces"},
};

INSTANTIATE_TEST_SUITE_P(Damages, CheckBlock, testing::ValuesIn(kDamages),
                         [](const auto& made) { return made.param.name; });

TEST(CheckBlock, ClockwiseOutlineIsNamed) {
  Block block = woven_bodice();
  Piece& piece = *find_piece(block, "front");
  std::vector<Edge> turned(piece.edges.rbegin(), piece.edges.rend());
  for (Edge& e : turned) e.curve = reversed(e.curve);
  piece.edges = std::move(turned);
  bool found = false;
  for (const Problem& p : check_block(block)) found = found || p.code == "outline-clockwise";
  EXPECT_TRUE(found);
}

TEST(CheckBlock, TellsAllFaultsAtOnce) {
  Block block = woven_bodice();
  front(block).notches[0].at_mm = 5000;
  block.seams[0].b[0].edge = "pocket";
  find_piece(block, "back")->fold = "armhole";
  EXPECT_GE(check_block(block).size(), 3u);
}

}  // namespace
}  // namespace pinwright
