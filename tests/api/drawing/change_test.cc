#include <gtest/gtest.h>

#include <algorithm>

#include "api/drawing/draw.h"
#include "tests/api/drawing/svg_reader.h"
#include "tests/api/exchange/hand_block.h"

namespace pinwright::api {
namespace {

using testing::Drawn;
using testing::read_drawing;

/// The neck point of front and back moved in by 9 mm along a falling shoulder, the hem by nothing.
Block changed() {
  Block block = testing::hand_block();
  Piece& front = block.pieces[0];
  front.edges[6].curve = straight_curve({170, 432}, {70, 470});
  front.edges[5].curve.points.back() = {170, 432};
  front.edges[7].curve.points[2].y -= 9.0;
  front.edges[7].curve.points[3].y -= 9.0;
  front.edges[8].curve = straight_curve({0, 391}, {0, 0});
  return block;
}

const std::vector<StepNote> kNotes = {
    {0, "front: neckline lowered 9 mm at the centre", {"front"}, {"neck-binding"}},
    {1, "front: shoulder point lowered 8 mm", {"front"}, {}}};

bool has(const std::vector<std::string>& all, const std::string& part) {
  return std::any_of(all.begin(), all.end(),
                     [&](const std::string& text) { return text.find(part) != std::string::npos; });
}

TEST(Change, ShowsBeforeAfterAndWhatStayed) {
  const Block before = testing::hand_block();
  const Drawn drawn = read_drawing(draw_change_svg(before, changed(), kNotes));
  ASSERT_TRUE(drawn.well_formed);
  EXPECT_EQ(drawn.view_box[2], drawn.width_mm);
  const auto edges = [&](const char* css_class, const char* piece) {
    std::vector<std::string> out;
    for (const auto& path : drawn.of_class(css_class)) {
      if (path.piece == piece) out.push_back(path.edge);
    }
    return out;
  };
  EXPECT_EQ(edges("after", "front"), (std::vector<std::string>{"armhole", "shoulder", "neckline"}));
  EXPECT_EQ(edges("before", "front"),
            (std::vector<std::string>{"armhole", "shoulder", "neckline"}));
  EXPECT_EQ(edges("same", "front").size(), 5u);
  EXPECT_TRUE(edges("before", "back").empty());
  EXPECT_TRUE(edges("after", "back").empty());
  const std::string svg = draw_change_svg(before, changed(), kNotes);
  EXPECT_NE(svg.find(".before{stroke-width:.35;stroke-dasharray:9 3}"), std::string::npos);
  EXPECT_EQ(svg.find("stroke:red"), std::string::npos);  // black and grey only
}

TEST(Change, BothVersionsLieOnTheSameCoordinates) {
  const Block before = testing::hand_block();
  const Block after = changed();
  const Drawn drawn = read_drawing(draw_change_svg(before, after, kNotes));
  Vec2 old_start;
  Vec2 new_start;
  for (const auto& path : drawn.paths) {
    if (path.piece != "front" || path.edge != "neckline") continue;
    (path.css_class == "before" ? old_start : new_start) = testing::path_curve(path.data).end();
  }
  EXPECT_NEAR(new_start.x, old_start.x, 1e-3);
  EXPECT_NEAR(new_start.y - old_start.y, 9.0, 1e-3);  // lower on the page
}

TEST(Change, SaysByHowMuchAndWhatWasDone) {
  Proof proof;
  proof.pass = true;
  proof.measures = {{"neckline-length", "Neckline", MeasureKind::girth, 400.0, 418.0, 410.0},
                    {"bust-girth", "Bust", MeasureKind::girth, 960.0, 960.0, {}}};
  const Drawn drawn =
      read_drawing(draw_change_svg(testing::hand_block(), changed(), kNotes, &proof));
  const auto moved = drawn.words_of_class("move-words");
  EXPECT_TRUE(has(moved, "9 mm"));
  EXPECT_TRUE(has(moved, "8 mm"));
  EXPECT_LE(moved.size(), 4u);
  const auto words = drawn.words_of_class("words");
  EXPECT_TRUE(has(words, "1. front: neckline lowered 9 mm"));
  EXPECT_TRUE(has(words, "followed: neck binding"));
  EXPECT_TRUE(has(words, "Proof: passed"));
  EXPECT_TRUE(has(words, "Neckline: 400 mm"));
  EXPECT_FALSE(has(words, "Bust: 960"));
  EXPECT_TRUE(has(words, "stitching line before"));
  EXPECT_TRUE(has(words, "not changed"));
}

TEST(Change, AFailedProofSaysDoNotCut) {
  Proof proof;
  proof.failures = {{"seam-length", "seam side", "The runs differ by 4 mm.", "Match them."}};
  const Drawn drawn = read_drawing(draw_change_svg(testing::hand_block(), changed(), {}, &proof));
  const auto words = drawn.words_of_class("words");
  EXPECT_TRUE(has(words, "NOT passed"));
  EXPECT_TRUE(has(words, "seam side: The runs differ by 4 mm."));
}

TEST(Change, DistancesKeepClearOfLinesAndOfEachOther) {
  const Drawn drawn = read_drawing(draw_change_svg(testing::hand_block(), changed(), kNotes));
  Clearance lines;
  for (const auto& path : drawn.paths) {
    if (path.piece.empty() || path.css_class == "lead" || path.css_class == "head") continue;
    const auto points = testing::path_points(path.data);
    lines.add_line(path.data.find('C') == std::string::npos ? points
                                                            : flatten(Curve{points}, 0.05));
  }
  Clearance words;
  for (const auto& text : drawn.texts) {
    if (text.css_class == "move-words") {
      EXPECT_TRUE(lines.is_free(text.box, 0.0)) << text.words;
    }
    EXPECT_TRUE(words.is_free(text.box, 0.0)) << text.words;
    words.add_box(text.box);
  }
}

TEST(Change, TheSameBlockTwiceShowsNoMove) {
  const Block block = testing::hand_block();
  const Drawn drawn = read_drawing(draw_change_svg(block, block, {}));
  EXPECT_TRUE(drawn.words_of_class("move-words").empty());
  for (const char* css_class : {"before", "after"}) {
    for (const auto& path : drawn.of_class(css_class)) EXPECT_TRUE(path.piece.empty());
  }
}

TEST(Change, PiecesOfOnlyOneBlockAreDrawn) {
  Block before = testing::hand_block();
  Block after = before;
  before.pieces.pop_back();
  after.pieces.erase(after.pieces.begin() + 1);
  const Drawn drawn = read_drawing(draw_change_svg(before, after, {}));
  const auto words = drawn.words_of_class("words");
  EXPECT_TRUE(has(words, "new piece"));
  EXPECT_TRUE(has(words, "no longer a piece"));
  EXPECT_EQ(drawn.edge("back", "side")->css_class, "before");
  EXPECT_EQ(drawn.edge("neck-binding", "opening")->css_class, "after");
}

TEST(Change, TheSameChangeGivesTheSameBytes) {
  EXPECT_EQ(draw_change_svg(testing::hand_block(), changed(), kNotes),
            draw_change_svg(testing::hand_block(), changed(), kNotes));
}

}  // namespace
}  // namespace pinwright::api
