#include <gtest/gtest.h>

#include <bit>
#include <cmath>
#include <cstdint>
#include <limits>
#include <random>

#include "api/exchange/block_json.h"
#include "api/exchange/exchange.h"
#include "api/exchange/parse.h"
#include "api/exchange/piece_json.h"
#include "api/exchange/seam_json.h"
#include "engine/draft/draft.h"
#include "engine/pattern/sides.h"
#include "tests/api/exchange/hand_block.h"

namespace pinwright::api {
namespace {

std::string told(const Problems& problems) {
  std::string out;
  for (const Problem& p : problems) out += p.code + " at " + p.place + ": " + p.what + "\n";
  return out;
}

TEST(RoundTrip, ABlockReadsBackEqual) {
  const Block block = testing::hand_block();
  const std::string text = write_block(block);
  const auto read = read_block(text);
  ASSERT_TRUE(read.ok()) << told(read.problems());
  EXPECT_EQ(read.value(), block);
  EXPECT_EQ(write_block(read.value()), text);
}

TEST(RoundTrip, DraftedBlocksReadBackEqual) {
  for (const std::string_view kind : {"knit-top", "woven-bodice"}) {
    const DraftInput in{"block",
                        "Block",
                        "M",
                        {"deckhand-3",
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
                         {}},
                        {"cloth", "Cloth",
                         kind == "knit-top" ? FabricKind::knit : FabricKind::woven, 0.4, 0.2, 0.9},
                        {}};
    const auto block = draft(kind, in);
    ASSERT_TRUE(block.ok()) << told(block.problems());
    const auto read = read_block(write_block(block.value()));
    ASSERT_TRUE(read.ok()) << told(read.problems());
    EXPECT_EQ(read.value(), block.value());
    EXPECT_EQ(to_json(block.value())["version"], 1);
    // left and right different: its own version, the same bits
    const auto opened = join_halves(block.value(), block.value(), {"front", "back", "sleeve"});
    ASSERT_TRUE(opened.ok());
    EXPECT_EQ(to_json(opened.value())["version"], 2);
    const auto again = read_block(write_block(opened.value()));
    ASSERT_TRUE(again.ok()) << told(again.problems());
    EXPECT_EQ(again.value(), opened.value());
  }
}

TEST(RoundTrip, EveryFieldOfAPieceIsWritten) {
  // every field away from its default: one forgotten would come back as the default
  Piece piece = testing::hand_block().pieces[0];
  piece.cloth = "lining";
  piece.cut = {3, true};
  piece.grainline.id = "grain";
  piece.edges[0].straight = false;
  piece.edges[1].allowance = {12.7, AllowanceKind::hem};
  EXPECT_EQ(piece_from(to_json(piece)), piece);
  piece.side = Side::right;
  piece.centre_line = piece.edges[0];
  EXPECT_EQ(piece_from(to_json(piece)), piece);
  piece.fold.reset();
  EXPECT_EQ(piece_from(to_json(piece)), piece);
}

TEST(RoundTrip, PartsOfSeamsReadBackEqual) {
  const Block block = testing::hand_block();
  for (const Seam& s : block.seams) EXPECT_EQ(seam_from(to_json(s)), s);
  for (const Join& j : block.joins) EXPECT_EQ(join_from(to_json(j)), j);
  for (const Binding& b : block.bindings) EXPECT_EQ(binding_from(to_json(b)), b);
  const Lining lining{"front-lining", "front"};
  EXPECT_EQ(lining_from(to_json(lining)), lining);
}

TEST(RoundTrip, AnyDoubleReadsBackToTheSameBits) {
  std::mt19937_64 random(20250101);
  std::vector<double> values = {0.0,
                                -0.0,
                                1.0 / 3.0,
                                -1e-310,
                                std::numeric_limits<double>::denorm_min(),
                                -std::numeric_limits<double>::denorm_min(),
                                std::numeric_limits<double>::min(),
                                std::numeric_limits<double>::max(),
                                -std::numeric_limits<double>::max(),
                                std::nextafter(100.0, 200.0),
                                0.1 + 0.2,
                                123456789012345678.0,
                                5e-324};
  std::uniform_real_distribution<double> paper(-2000.0, 2000.0);
  for (int i = 0; i < 20000; ++i) values.push_back(paper(random));
  while (values.size() < 60000) {
    const double any = std::bit_cast<double>(random());
    if (std::isfinite(any)) values.push_back(any);
  }
  for (int i = 0; i < 2000; ++i) {  // denormals: exponent bits all zero
    values.push_back(std::bit_cast<double>(random() & 0x800FFFFFFFFFFFFFull));
  }
  const auto read = parse_json(dump(Json(values)));
  ASSERT_TRUE(read.ok()) << told(read.problems());
  ASSERT_EQ(read.value().size(), values.size());
  for (std::size_t i = 0; i < values.size(); ++i) {
    ASSERT_EQ(std::bit_cast<std::uint64_t>(read.value()[i].get<double>()),
              std::bit_cast<std::uint64_t>(values[i]))
        << values[i];
  }
}

TEST(RoundTrip, PointsOfABlockKeepTheirBits) {
  Block block = testing::hand_block();
  std::mt19937_64 random(7);
  std::uniform_real_distribution<double> nudge(-1e-9, 1e-9);
  for (Landmark& l : block.pieces[0].landmarks) l.at = l.at + Vec2{nudge(random), nudge(random)};
  block.pieces[0].edges[5].curve.points[1].x += nudge(random);
  block.pieces[0].edges[8].curve.points[1] = {-0.0, 300.0 * (1.0 - 1e-16)};
  const Json value = parse_json(write_block(block)).value();
  for (std::size_t p = 0; p < block.pieces.size(); ++p) {
    for (std::size_t e = 0; e < block.pieces[p].edges.size(); ++e) {
      const auto& points = block.pieces[p].edges[e].curve.points;
      const Json& written = value["pieces"][p]["edges"][e]["points"];
      ASSERT_EQ(written.size(), points.size());
      for (std::size_t i = 0; i < points.size(); ++i) {
        EXPECT_EQ(std::bit_cast<std::uint64_t>(written[i][0].get<double>()),
                  std::bit_cast<std::uint64_t>(points[i].x));
        EXPECT_EQ(std::bit_cast<std::uint64_t>(written[i][1].get<double>()),
                  std::bit_cast<std::uint64_t>(points[i].y));
      }
    }
  }
}

}  // namespace
}  // namespace pinwright::api
