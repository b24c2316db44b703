#include "engine/pattern/block.h"

namespace pinwright {
namespace {

template <class List>
auto* by_id(List& list, std::string_view id) {
  for (auto& one : list) {
    if (one.id == id) return &one;
  }
  return static_cast<decltype(&list.front())>(nullptr);
}

}  // namespace

Piece* find_piece(Block& block, std::string_view id) { return by_id(block.pieces, id); }
const Piece* find_piece(const Block& block, std::string_view id) { return by_id(block.pieces, id); }
const Seam* find_seam(const Block& block, std::string_view id) { return by_id(block.seams, id); }
Seam* find_seam(Block& block, std::string_view id) { return by_id(block.seams, id); }

}  // namespace pinwright
