#include "engine/pattern/block.h"

#include <gtest/gtest.h>

namespace pinwright {
namespace {

TEST(Block, FindsPiecesAndSeamsById) {
  Block block;
  block.pieces.resize(2);
  block.pieces[0].id = "front";
  block.pieces[1].id = "back";
  block.seams.resize(1);
  block.seams[0].id = "side";
  EXPECT_EQ(find_piece(block, "back"), &block.pieces[1]);
  EXPECT_EQ(find_piece(block, "sleeve"), nullptr);
  EXPECT_EQ(find_seam(block, "side"), &block.seams[0]);
  EXPECT_EQ(find_seam(block, ""), nullptr);
  const Block& fixed = block;
  EXPECT_EQ(find_piece(fixed, "front"), &block.pieces[0]);
  EXPECT_EQ(find_seam(fixed, "side"), &block.seams[0]);
  EXPECT_EQ(find_piece(Block{}, "front"), nullptr);
}

}  // namespace
}  // namespace pinwright
