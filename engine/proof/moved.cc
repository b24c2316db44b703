#include "engine/proof/moved.h"

#include <algorithm>

#include "engine/geometry/arc_length.h"

namespace pinwright {

std::vector<Moved> moved_edges(const Block& before, const Block& after) {
  constexpr int kPlaces = 32;
  std::vector<Moved> all;
  for (const Piece& piece : after.pieces) {
    const Piece* old_piece = find_piece(before, piece.id);
    for (const Edge& edge : piece.edges) {
      Moved m;
      m.piece = piece.id;
      m.edge = edge.id;
      m.after_mm = length(edge.curve);
      const Edge* old = old_piece == nullptr ? nullptr : find_edge(*old_piece, edge.id);
      if (old == nullptr) {
        m.most_mm = m.after_mm;
      } else {
        m.same_bits = old->curve == edge.curve;
        m.before_mm = length(old->curve);
        for (int k = 0; !m.same_bits && k <= kPlaces; ++k) {
          const double share = static_cast<double>(k) / kPlaces;
          m.most_mm = std::max(m.most_mm, distance(point_at(old->curve, share * m.before_mm),
                                                   point_at(edge.curve, share * m.after_mm)));
        }
      }
      all.push_back(std::move(m));
    }
  }
  return all;
}

}  // namespace pinwright
