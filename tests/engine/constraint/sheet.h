#pragma once
// A small block to solve on: one piece with a curved top, as a front's neckline would be.
//
//   (0,300) ~~~ top ~~~ (200,340)
//      | left             \ right (straight)
//   (0,0) ---- foot ----- (220,0)

#include "engine/pattern/block.h"

namespace pinwright {

inline Block sheet() {
  Piece piece;
  piece.id = "sheet";
  const auto edge = [](std::string id, Curve curve, bool straight) {
    Edge e;
    e.id = std::move(id);
    e.curve = std::move(curve);
    e.straight = straight;
    return e;
  };
  const Vec2 a{0, 0};
  const Vec2 b{220, 0};
  const Vec2 c{200, 340};
  const Vec2 d{0, 300};
  piece.edges.push_back(edge("foot", straight_curve(a, b), true));
  piece.edges.push_back(edge("right", straight_curve(b, c), true));
  piece.edges.push_back(edge(
      "top", Curve{{c, {170, 320}, {150, 300}, {110, 290}, {80, 282.5}, {40, 300}, d}}, false));
  piece.edges.push_back(edge("left", straight_curve(d, a), true));
  Block block;
  block.id = "sheet";
  block.pieces.push_back(std::move(piece));
  return block;
}

inline constexpr std::size_t kFoot = 0;
inline constexpr std::size_t kRight = 1;
inline constexpr std::size_t kTop = 2;
inline constexpr std::size_t kLeft = 3;

}  // namespace pinwright
