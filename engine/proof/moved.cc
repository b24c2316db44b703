#include "engine/proof/moved.h"

#include <algorithm>
#include <optional>

#include "engine/geometry/arc_length.h"
#include "engine/geometry/even_points.h"
#include "engine/pattern/opened_piece.h"
#include "engine/pattern/sides.h"

namespace pinwright {
namespace {

constexpr int kPlaces = 32;

void compare(const Edge& old, const Edge& edge, Moved& m) {
  m.same_bits = old.curve == edge.curve;
  m.before_mm = length(old.curve);
  if (m.same_bits) return;
  const std::vector<Vec2> was = even_points(old.curve, kPlaces);
  const std::vector<Vec2> is = even_points(edge.curve, kPlaces);
  for (std::size_t k = 0; k < is.size(); ++k)
    m.most_mm = std::max(m.most_mm, distance(was[k], is[k]));
}

// What a closed edge was, when before the sides differed: of left and right the one that is
// further from it.
void compare_halves(const Block& left, const Block& right, const std::string& piece,
                    const Edge& edge, Moved& m) {
  for (const Block* half : {&left, &right}) {
    const Piece* old_piece = find_piece(*half, piece);
    const Edge* old = old_piece == nullptr ? nullptr : find_edge(*old_piece, edge.id);
    if (old == nullptr) continue;
    Moved one = m;
    one.most_mm = 0.0;
    compare(*old, edge, one);
    if (half == &left || one.most_mm > m.most_mm) m = one;
  }
}

}  // namespace

std::vector<Moved> moved_edges(const Block& before, const Block& after) {
  const bool was_opened = is_opened(before);
  std::optional<Block> opened;
  if (is_opened(after)) opened = opened_like(before, after);
  const Block& was = opened ? *opened : before;
  std::optional<Block> left;
  std::optional<Block> right;
  if (was_opened) {
    if (const auto half = half_block(before, Side::left)) left = *half;
    if (const auto half = half_block(before, Side::right)) right = *half;
  }
  std::vector<Moved> all;
  for (const Piece& piece : after.pieces) {
    const Piece* old_piece = find_piece(was, piece.id);
    for (const Edge& edge : piece.edges) {
      Moved m;
      m.piece = piece.id;
      m.edge = edge.id;
      m.after_mm = length(edge.curve);
      m.most_mm = m.after_mm;
      const Edge* old = old_piece == nullptr ? nullptr : find_edge(*old_piece, edge.id);
      if (old != nullptr) {
        m.most_mm = 0.0;
        compare(*old, edge, m);
      } else if (left && right) {
        compare_halves(*left, *right, piece.id, edge, m);
      }
      all.push_back(std::move(m));
    }
  }
  return all;
}

}  // namespace pinwright
