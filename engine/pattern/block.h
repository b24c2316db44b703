#pragma once
// A block: pieces, how they are sewn, the ease that is meant, the cloth and the body it is for.

#include <map>
#include <string>
#include <string_view>
#include <vector>

#include "engine/pattern/fabric.h"
#include "engine/pattern/piece.h"
#include "engine/pattern/seam.h"
#include "engine/pattern/wearer.h"

namespace pinwright {

struct Block {
  std::string id;  ///< kebab-case
  std::string name;
  std::string kind;  ///< "knit-top" or "woven-bodice"
  std::string size;  ///< label of this size; a range of sizes: size_range.h
  Fabric fabric;
  Wearer drafted_for;
  /// Intended ease, mm, keyed by the ISO measurement it is added to (negative for a knit worn
  /// closer than the body): finished girth = body + ease. Whole-garment amounts.
  std::map<std::string, double> ease;
  std::vector<Piece> pieces;
  std::vector<Seam> seams;
  std::vector<Join> joins;
  std::vector<Binding> bindings;
  std::vector<Lining> linings;
  bool operator==(const Block&) const = default;
};

Piece* find_piece(Block& block, std::string_view id);
const Piece* find_piece(const Block& block, std::string_view id);
const Seam* find_seam(const Block& block, std::string_view id);
Seam* find_seam(Block& block, std::string_view id);

}  // namespace pinwright
