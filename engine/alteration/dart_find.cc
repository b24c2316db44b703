#include "engine/alteration/dart_find.h"

#include <optional>

#include "engine/alteration/edit.h"

namespace pinwright {

bool lies_in(const Edge& edge, const std::string& seam) {
  if (seam == "side") return edge.role == EdgeRole::side;
  if (seam == "shoulder") return edge.role == EdgeRole::shoulder;
  return seam == "waist" && edge.role == EdgeRole::waist;
}

std::size_t ring_order(const Piece& piece, std::size_t edge) {
  const std::size_t n = piece.edges.size();
  std::size_t centre = n - 1;
  for (std::size_t i = 0; i < n; ++i)
    if (piece.edges[i].role == EdgeRole::centre_front ||
        piece.edges[i].role == EdgeRole::centre_back)
      centre = i;
  return (edge + n - 1 - centre) % n;
}

DartPlace place_of_dart(const Piece& piece, std::size_t piece_at, std::size_t dart) {
  DartPlace d;
  d.piece = piece_at;
  d.dart = dart;
  d.in = edge_index(piece, piece.darts[dart].leg_in);
  d.out = next_in(piece, d.in);
  d.before = before_in(piece, d.in);
  d.after = next_in(piece, d.out);
  return d;
}

Result<DartPlace> find_dart(const Block& block, const std::string& piece_id,
                            const std::string& seam) {
  const std::size_t at = piece_index(block, piece_id);
  if (at == kNowhere) return not_here("this block has no " + piece_id, "name a piece of the block");
  const Piece& piece = block.pieces[at];
  std::optional<DartPlace> best;
  for (std::size_t i = 0; i < piece.darts.size(); ++i) {
    const DartPlace d = place_of_dart(piece, at, i);
    if (!lies_in(piece.edges[d.before], seam) || !lies_in(piece.edges[d.after], seam)) continue;
    if (!best || ring_order(piece, d.in) > ring_order(piece, best->in)) best = d;
  }
  if (!best)
    return not_here("the " + piece_id + " has no dart in the " + seam,
                    "name a seam with a dart, or open a dart there first");
  return *best;
}

Vec2 dart_mark(const Piece& piece, const Dart& dart) {
  if (const Landmark* mark = find_landmark(piece, dart.toward)) return mark->at;
  return find_edge(piece, dart.leg_in)->curve.end();
}

}  // namespace pinwright
