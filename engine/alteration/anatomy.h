#pragma once
// Where the named corners and edges of a bodice half or a sleeve lie in their rings.

#include <cstddef>
#include <optional>
#include <string_view>
#include <vector>

#include "engine/base/result.h"
#include "engine/pattern/block.h"

namespace pinwright {

/// A bodice half on the fold, counter-clockwise:
///
///        C neckline N
///        |          \ shoulder
///        |           P
///        |           ) armhole
///        | centre    U
///        |           | side (with or without a bust dart)
///        H ---hem--- S
///
/// Corners are given as the index of the edge that ends there.
struct BodiceAnatomy {
  std::size_t armhole = 0;
  std::size_t neckline = 0;
  std::size_t centre = 0;
  std::size_t side_corner = 0;        ///< S
  std::size_t underarm_corner = 0;    ///< U
  std::size_t shoulder_corner = 0;    ///< P, the shoulder point
  std::size_t neck_corner = 0;        ///< N
  std::size_t centre_corner = 0;      ///< C
  std::size_t hem_corner = 0;         ///< H
  std::vector<std::size_t> side;      ///< edges of role side, from S to U
  std::vector<std::size_t> shoulder;  ///< edges of role shoulder, from P to N
};

/// Nothing when the piece lacks one of the edges or has them in another order.
std::optional<BodiceAnatomy> bodice_anatomy(const Piece& piece);

/// A sleeve drawn whole: hem, underarm (front), cap (front), cap (back), underarm (back).
struct SleeveAnatomy {
  std::size_t underarm_front = 0;
  std::size_t cap_front = 0;
  std::size_t cap_back = 0;
  std::size_t underarm_back = 0;
};
std::optional<SleeveAnatomy> sleeve_anatomy(const Piece& piece);

/// Index of the piece in the block, kNowhere when there is none.
std::size_t piece_index(const Block& block, std::string_view id);
/// The first sleeve of the block, kNowhere when there is none.
std::size_t sleeve_index(const Block& block);
/// Next corner or edge of a ring.
inline std::size_t next_in(const Piece& piece, std::size_t i) {
  return (i + 1) % piece.edges.size();
}
inline std::size_t before_in(const Piece& piece, std::size_t i) {
  return (i + piece.edges.size() - 1) % piece.edges.size();
}

}  // namespace pinwright
