#pragma once
// Darts by the seam that they start from.

#include <string>

#include "engine/alteration/anatomy.h"
#include "engine/base/result.h"

namespace pinwright {

/// A dart is not narrowed below this at its mouth (it is dropped instead), mm.
inline constexpr double kLeastIntakeMm = 1.0;

/// Where a dart lies in the ring of its piece:  before, in, out, after.
struct DartPlace {
  std::size_t piece = 0;
  std::size_t dart = 0;  ///< index into the piece's darts
  std::size_t before = 0;
  std::size_t in = 0;  ///< the corner where this edge ends is the dart's point
  std::size_t out = 0;
  std::size_t after = 0;
};

/// The edges that `seam` (side | shoulder | waist) names: waist only where the bodice ends there.
bool lies_in(const Edge& edge, const std::string& seam);
/// Position in the ring counted from the edge that follows the centre: the bodice half runs
/// waist or hem, side, armhole, shoulder, neckline, centre.
std::size_t ring_order(const Piece& piece, std::size_t edge);
/// Place of the dart with this index.
DartPlace place_of_dart(const Piece& piece, std::size_t piece_at, std::size_t dart);
/// The dart of a bodice half (front | back) in a seam; of several in one seam the one nearest to
/// the neck in the ring's order (the upper one of a side). "operation-not-here" without piece or
/// dart.
Result<DartPlace> find_dart(const Block& block, const std::string& piece, const std::string& seam);
/// The landmark that a dart points at; its point when the landmark is missing.
Vec2 dart_mark(const Piece& piece, const Dart& dart);

}  // namespace pinwright
