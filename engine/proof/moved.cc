#include "engine/proof/moved.h"

#include <algorithm>

#include "engine/geometry/arc_length.h"
#include "engine/geometry/even_points.h"

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
        if (!m.same_bits) {
          const std::vector<Vec2> was = even_points(old->curve, kPlaces);
          const std::vector<Vec2> is = even_points(edge.curve, kPlaces);
          for (std::size_t k = 0; k < is.size(); ++k)
            m.most_mm = std::max(m.most_mm, distance(was[k], is[k]));
        }
      }
      all.push_back(std::move(m));
    }
  }
  return all;
}

}  // namespace pinwright
