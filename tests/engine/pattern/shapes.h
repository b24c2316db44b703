#pragma once
// Small pieces with known sizes for the tests of the pattern's parts.

#include <string>
#include <vector>

#include "engine/pattern/block.h"

namespace pinwright::testing {

struct Side3 {
  std::string id;
  EdgeRole role;
  Vec2 from;
};

/// A ring of straight edges through the corners, each edge from its corner to the next.
inline Piece ring(std::string id, const std::vector<Side3>& corners) {
  Piece piece;
  piece.id = std::move(id);
  for (std::size_t i = 0; i < corners.size(); ++i) {
    const Vec2 to = corners[(i + 1) % corners.size()].from;
    piece.edges.push_back(
        {corners[i].id, corners[i].role, straight_curve(corners[i].from, to), true, {}});
  }
  return piece;
}

/// A half bodice of straight lines: 200 wide, 400 high, underarm at (200, 250), tip at (180, 390),
/// neck point at (60, 400).
inline Piece half(std::string id, EdgeRole centre, double neck_depth) {
  Piece piece = ring(std::move(id), {{"hem", EdgeRole::hem, {0.0, 0.0}},
                                     {"side", EdgeRole::side, {190.0, 0.0}},
                                     {"armhole", EdgeRole::armhole, {200.0, 250.0}},
                                     {"shoulder", EdgeRole::shoulder, {180.0, 390.0}},
                                     {"neckline", EdgeRole::neckline, {60.0, 400.0}},
                                     {"centre", centre, {0.0, 400.0 - neck_depth}}});
  piece.fold = "centre";
  return piece;
}

}  // namespace pinwright::testing
