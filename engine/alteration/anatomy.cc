#include "engine/alteration/anatomy.h"

namespace pinwright {
namespace {

std::size_t only_of_role(const Piece& piece, EdgeRole role) {
  std::size_t found = kNowhere;
  for (std::size_t i = 0; i < piece.edges.size(); ++i) {
    if (piece.edges[i].role != role) continue;
    if (found != kNowhere) return kNowhere;
    found = i;
  }
  return found;
}

}  // namespace

std::optional<BodiceAnatomy> bodice_anatomy(const Piece& piece) {
  BodiceAnatomy a;
  a.armhole = only_of_role(piece, EdgeRole::armhole);
  a.neckline = only_of_role(piece, EdgeRole::neckline);
  const std::size_t front = only_of_role(piece, EdgeRole::centre_front);
  const std::size_t back = only_of_role(piece, EdgeRole::centre_back);
  if (a.armhole == kNowhere || a.neckline == kNowhere) return {};
  if ((front == kNowhere) == (back == kNowhere)) return {};
  a.centre = front != kNowhere ? front : back;
  a.shoulder_corner = a.armhole;
  a.underarm_corner = before_in(piece, a.armhole);
  a.neck_corner = before_in(piece, a.neckline);
  a.centre_corner = a.neckline;
  a.hem_corner = a.centre;
  for (std::size_t i = next_in(piece, a.centre); i != a.armhole; i = next_in(piece, i))
    if (piece.edges[i].role == EdgeRole::side) a.side.push_back(i);
  for (std::size_t i = next_in(piece, a.armhole); i != a.neckline; i = next_in(piece, i)) {
    if (i == a.centre) return {};
    if (piece.edges[i].role == EdgeRole::shoulder) a.shoulder.push_back(i);
  }
  if (a.side.empty() || a.shoulder.empty()) return {};
  if (next_in(piece, a.neckline) != a.centre) return {};
  a.side_corner = before_in(piece, a.side.front());
  return a;
}

std::optional<SleeveAnatomy> sleeve_anatomy(const Piece& piece) {
  for (std::size_t i = 0; i < piece.edges.size(); ++i) {
    const std::size_t j = next_in(piece, i);
    const std::size_t k = next_in(piece, j);
    if (piece.edges[i].role != EdgeRole::cap || piece.edges[j].role != EdgeRole::cap) continue;
    const SleeveAnatomy a{before_in(piece, i), i, j, k};
    if (piece.edges[a.underarm_front].role == EdgeRole::underarm &&
        piece.edges[a.underarm_back].role == EdgeRole::underarm)
      return a;
  }
  return {};
}

std::size_t piece_index(const Block& block, std::string_view id) {
  for (std::size_t i = 0; i < block.pieces.size(); ++i)
    if (block.pieces[i].id == id) return i;
  return kNowhere;
}

std::size_t sleeve_index(const Block& block) {
  for (std::size_t i = 0; i < block.pieces.size(); ++i)
    if (sleeve_anatomy(block.pieces[i])) return i;
  return kNowhere;
}

}  // namespace pinwright
