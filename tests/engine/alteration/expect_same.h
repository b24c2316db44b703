#pragma once
// What a step must leave alone.

#include <gtest/gtest.h>

#include <string>
#include <vector>

#include "skerry_blocks.h"

namespace pinwright {

inline void expect_same(const Block& before, const Block& after, const std::string& piece,
                        const std::vector<std::string>& edges) {
  for (const std::string& e : edges)
    EXPECT_TRUE(same_bits(before, after, piece, e)) << piece << "." << e;
}

inline void expect_piece_same(const Block& before, const Block& after, const std::string& piece) {
  EXPECT_TRUE(*find_piece(before, piece) == *find_piece(after, piece)) << piece;
}

/// The lines of a piece; its notches may have gone to meet their mates.
inline void expect_lines_same(const Block& before, const Block& after, const std::string& piece) {
  for (const Edge& e : find_piece(before, piece)->edges)
    EXPECT_TRUE(same_bits(before, after, piece, e.id)) << piece << "." << e.id;
}

/// Measures that an operation must not change.
inline void expect_measures(const Block& before, const Block& after,
                            const std::vector<std::string>& ids, double within) {
  for (const std::string& id : ids)
    EXPECT_NEAR(garment(after, id), garment(before, id), within) << id;
}

/// The first problem's code of a step that must be refused.
inline std::string refused(const Block& block, const Step& s) {
  const Result<Altered> result = alter(block, {s});
  if (result) return "done";
  EXPECT_FALSE(result.problems().front().what.empty());
  EXPECT_FALSE(result.problems().front().mend.empty());
  return result.problems().front().code;
}

}  // namespace pinwright
