#pragma once
// Where a piece's lines moved, and by how much: what the arrows of a change drawing show.

#include <vector>

#include "engine/pattern/piece.h"

namespace pinwright::api {

/// Whether the place lies on the stitching line (within 1 mm).
bool on_outline(const Piece& piece, Vec2 at);

inline constexpr double kLeastMoveMm = 0.5;  ///< a pencil line: less is not worth an arrow

struct Move {
  Vec2 from;  ///< on the line before, or where the corner or landmark was; the piece's coordinates
  Vec2 to;
  double mm = 0.0;
};

/// One move at each place where the distance between the new line and the old one is greatest along
/// an edge (a stretch moved alike has one, in its middle), one for a corner that moved and is not
/// the end of such a stretch, one for a landmark. Distances: from points of the new edge, about 4
/// mm apart, to the nearest point of the old one; a corner's from its own old place. Smaller ones
/// than kLeastMoveMm are left out. Edges and landmarks are matched by id.
std::vector<Move> moves(const Piece& before, const Piece& after);

/// The greatest distance of the new edge from the old one, measured as above; 0 for the same bits.
double greatest_move(const Curve& before, const Curve& after);

}  // namespace pinwright::api
