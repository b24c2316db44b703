#include "api/drawing/draw.h"

#include <gtest/gtest.h>

#include <algorithm>

#include "api/drawing/marks.h"
#include "engine/draft/draft.h"
#include "engine/geometry/arc_length.h"
#include "tests/api/drawing/svg_reader.h"
#include "tests/api/exchange/hand_block.h"

namespace pinwright::api {
namespace {

using testing::Drawn;
using testing::read_drawing;

Block drafted(std::string_view kind) {
  DraftInput in;
  in.id = kind == "knit-top" ? "deck-top" : "saloon-blouse";
  in.name = kind == "knit-top" ? "Deck top" : "Saloon blouse";
  in.size = "M";
  in.wearer = {"deckhand-3",
               {{"bust-girth", 960},
                {"waist-girth", 800},
                {"hip-girth", 1020},
                {"neck-base-girth", 385},
                {"upper-arm-girth", 300},
                {"head-girth", 570},
                {"shoulder-length", 125},
                {"across-back-width", 360},
                {"across-front-width", 335},
                {"back-waist-length", 410},
                {"front-waist-length", 435},
                {"scye-depth", 205},
                {"arm-length", 580},
                {"bust-point-width", 190},
                {"neck-shoulder-point-to-bust-point", 270},
                {"wrist-girth", 165},
                {"hand-girth", 200}},
               {}};
  in.fabric = {"cloth", "Cloth", kind == "knit-top" ? FabricKind::knit : FabricKind::woven,
               0.4,     0.2,     0.9};
  auto block = draft(kind, in);
  EXPECT_TRUE(block.ok()) << (block.ok() ? "" : block.problems()[0].what);
  return block.ok() ? block.value() : Block{};
}

std::vector<Block> blocks() {
  return {testing::hand_block(), drafted("knit-top"), drafted("woven-bodice")};
}

TEST(Draw, IsWellFormedAndTrueToScale) {
  for (const Block& block : blocks()) {
    const Drawn drawn = read_drawing(draw_svg(block));
    ASSERT_TRUE(drawn.well_formed) << block.id;
    ASSERT_EQ(drawn.view_box.size(), 4u);
    EXPECT_EQ(drawn.view_box[0], 0.0);
    EXPECT_EQ(drawn.view_box[1], 0.0);
    EXPECT_EQ(drawn.view_box[2], drawn.width_mm);  // one unit is one millimetre
    EXPECT_EQ(drawn.view_box[3], drawn.height_mm);
  }
}

TEST(Draw, EveryEdgeHasItsLengthOnPaper) {
  for (const Block& block : blocks()) {
    const Drawn drawn = read_drawing(draw_svg(block));
    for (const Piece& piece : block.pieces) {
      for (const Edge& edge : piece.edges) {
        const auto* path = drawn.edge(piece.id, edge.id);
        ASSERT_NE(path, nullptr) << piece.id << " " << edge.id;
        const Curve on_paper = testing::path_curve(path->data);
        ASSERT_EQ(on_paper.points.size(), edge.curve.points.size());
        EXPECT_NEAR(length(on_paper), length(edge.curve), 1e-3) << piece.id << " " << edge.id;
        EXPECT_EQ(path->css_class, edge.id == piece.fold ? "fold" : "stitch");
      }
    }
  }
}

TEST(Draw, EverythingLiesOnThePage) {
  for (const Block& block : blocks()) {
    const Drawn drawn = read_drawing(draw_svg(block));
    for (const auto& path : drawn.paths) {
      for (const Vec2 p : testing::path_points(path.data)) {
        EXPECT_TRUE(p.x >= 0 && p.y >= 0 && p.x <= drawn.width_mm && p.y <= drawn.height_mm)
            << path.css_class << " " << p.x << "," << p.y;
      }
    }
    for (const auto& text : drawn.texts) {
      const double half = text.box.angle == 0.0 ? text.box.width / 2 : 0.0;
      EXPECT_GE(text.box.centre.x - half, 0.0) << text.words;
      EXPECT_LE(text.box.centre.x + half, drawn.width_mm) << text.words;
    }
  }
}

TEST(Draw, WordsKeepClearOfLinesAndOfEachOther) {
  for (const Block& block : blocks()) {
    const Drawn drawn = read_drawing(draw_svg(block));
    Clearance lines;
    for (const auto& path : drawn.paths) {
      if (path.css_class == "head" || path.piece.empty()) continue;
      const auto points = testing::path_points(path.data);
      if (path.data.find('C') != std::string::npos) {
        lines.add_line(flatten(Curve{points}, 0.05));
      } else {
        lines.add_line(points, path.data.back() == 'Z');
      }
    }
    Clearance words;
    for (const auto& text : drawn.texts) {
      EXPECT_TRUE(lines.is_free(text.box, 0.0)) << block.id << ": " << text.words;
      EXPECT_TRUE(words.is_free(text.box, 0.0)) << block.id << ": " << text.words;
      words.add_box(text.box);
    }
  }
}

TEST(Draw, CuttingAndStitchingLinesDifferAndAreExplained) {
  const Drawn drawn = read_drawing(draw_svg(testing::hand_block()));
  EXPECT_FALSE(drawn.of_class("cut").empty());
  EXPECT_FALSE(drawn.of_class("stitch").empty());
  const std::string svg = draw_svg(testing::hand_block());
  EXPECT_NE(svg.find(".stitch{stroke-width:.35;stroke-dasharray"), std::string::npos);
  EXPECT_NE(svg.find(".cut{stroke-width:.8}"), std::string::npos);
  const auto words = drawn.words_of_class("words");
  const auto has = [&](const char* text) {
    return std::find(words.begin(), words.end(), text) != words.end();
  };
  for (const char* text :
       {"cutting line", "centre front: place on fold", "bust point", "10 mm", "6 mm", "grain",
        "20 mm hem, fold back on the dashed line", "Cut 1 on the fold, shell", "bust dart, 30 mm",
        "lengthen or shorten here", "no allowance", "Size M"}) {
    EXPECT_TRUE(has(text)) << text;
  }
}

TEST(Draw, ANotchReachesFromTheStitchingToTheCuttingLine) {
  const Block block = testing::hand_block();
  const Drawn drawn = read_drawing(draw_svg(block));
  std::size_t back = 0;
  for (const auto& path : drawn.of_class("notch")) {
    if (path.piece.empty()) continue;  // the legend's sample
    const auto points = testing::path_points(path.data);
    ASSERT_EQ(points.size(), 2u);
    if (path.piece == "back") ++back;
    EXPECT_GT(distance(points[0], points[1]), 9.9);
    EXPECT_LT(distance(points[0], points[1]), 10.6);
  }
  EXPECT_EQ(back, 3u);  // one at the side, two in the armhole
}

TEST(Draw, TheSquareHasFiftyMillimetres) {
  const std::string svg = draw_svg(testing::hand_block());
  EXPECT_NE(svg.find("width=\"50\" height=\"50\""), std::string::npos);
}

TEST(Draw, NamesCannotBreakTheDrawing) {
  Block block = testing::hand_block();
  block.name = "<script>\"&'\x02 & co";
  block.pieces[0].name = "]]><!-- ";
  block.pieces[1].cloth = "\xC3\xA9toffe";
  DrawOptions options;
  options.revision = 7;
  const Drawn drawn = read_drawing(draw_svg(block, options));
  ASSERT_TRUE(drawn.well_formed);
  const auto words = drawn.words_of_class("words");
  EXPECT_NE(std::find(words.begin(), words.end(), "<script>\"&' & co, revision 7"), words.end());
}

TEST(Draw, TheSameBlockGivesTheSameBytes) {
  for (const Block& block : blocks()) EXPECT_EQ(draw_svg(block), draw_svg(block));
}

TEST(Draw, APieceWithoutACuttingLineIsStillDrawn) {
  Block block = testing::hand_block();
  block.pieces.resize(1);
  for (Edge& edge : block.pieces[0].edges) edge.allowance.width_mm = -1.0;
  const Drawn drawn = read_drawing(draw_svg(block));
  ASSERT_TRUE(drawn.well_formed);
  EXPECT_NE(drawn.edge("front", "armhole"), nullptr);
}

TEST(Draw, CutWordsSayHowOften) {
  Piece piece;
  piece.cut = {2, true};
  EXPECT_EQ(cut_words(piece), "Cut 2, left and right");
  piece.cut = {1, false};
  piece.fold = "centre-back";
  EXPECT_EQ(cut_words(piece), "Cut 1 on the fold");
}

}  // namespace
}  // namespace pinwright::api
