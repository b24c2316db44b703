#include "engine/pattern/sides.h"

#include <algorithm>

#include "engine/pattern/opened_piece.h"
#include "engine/pattern/sides_sewn.h"
#include "engine/pattern/size_range.h"
#include "engine/pattern/strip.h"

namespace pinwright {
namespace {

/// A strip that goes round both sides: it follows its opening and is never compared.
bool goes_round(const Block& half, const std::string& piece) {
  return std::any_of(half.bindings.begin(), half.bindings.end(),
                     [&](const Binding& b) { return b.piece == piece && b.copies == 2; });
}

bool can_open(const Piece& piece) { return is_half(piece) || is_pair(piece); }

/// With a piece its lining, and with a lining its shell.
void add_linings(const Block& half, std::set<std::string>& open) {
  const auto openable = [&](const std::string& id) {
    const Piece* piece = find_piece(half, id);
    return piece != nullptr && can_open(*piece);
  };
  for (std::size_t round = 0; round <= half.linings.size(); ++round) {
    for (const Lining& one : half.linings) {
      if (!openable(one.piece) || !openable(one.shell)) continue;
      if (open.contains(one.piece) || open.contains(one.shell)) {
        open.insert(one.piece);
        open.insert(one.shell);
      }
    }
  }
}

/// A seam that is sewn otherwise left and right opens what carries its ease.
void add_seams(const Block& left, const Block& right, std::set<std::string>& open) {
  for (std::size_t i = 0; i < left.seams.size(); ++i) {
    if (left.seams[i] == right.seams[i]) continue;
    for (const RunPart& part : left.seams[i].a) {
      const Piece* piece = find_piece(left, part.piece);
      if (piece != nullptr && can_open(*piece)) open.insert(part.piece);
    }
  }
}

Problem shared(const std::string& what) {
  return {"one-sided", "/side", what + " serves both sides and can not differ left and right",
          "set side to both"};
}

Problems shared_problems(const Block& left, const Block& right, const std::set<std::string>& open) {
  Problems problems;
  for (std::size_t i = 0; i < left.bindings.size(); ++i) {
    const Binding& a = left.bindings[i];
    if (!(a == right.bindings[i])) problems.push_back(shared("the strip of the " + a.id));
  }
  for (std::size_t i = 0; i < left.pieces.size(); ++i) {
    const Piece& a = left.pieces[i];
    const Piece& b = right.pieces[i];
    if (!open.contains(a.id)) {
      if (!goes_round(left, a.id) && !same_piece(a, b)) problems.push_back(shared("the " + a.id));
      continue;
    }
    if (!is_half(a)) continue;
    if (find_edge(a, *a.fold)->curve == find_edge(b, *b.fold)->curve) continue;
    problems.push_back({"centre-apart", "/side",
                        "left and right of the " + a.id + " no longer meet at the " + *a.fold,
                        "set side to both, or choose a change that leaves the centre"});
  }
  return problems;
}

}  // namespace

bool is_opened(const Block& block) {
  return std::any_of(block.pieces.begin(), block.pieces.end(), [](const Piece& p) {
    return p.centre_line.has_value() || p.side != Side::both;
  });
}

Result<Block> half_block(const Block& block, Side side) {
  if (side == Side::both || !is_opened(block)) return block;
  Block half = block;
  half.pieces.clear();
  for (const Piece& piece : block.pieces) {
    if (piece.side == other_side(side)) continue;
    if (piece.side == side) {
      half.pieces.push_back(pair_again(piece));
    } else if (piece.centre_line) {
      Result<Piece> one = close_half(piece, side);
      if (!one) return one.problems();
      half.pieces.push_back(std::move(*one));
    } else {
      half.pieces.push_back(piece);
    }
  }
  const Result<Done> sewn = sew_half(half, block, side);
  if (!sewn) return sewn.problems();
  for (const Binding& was : block.bindings)
    for (const Binding& is : half.bindings)
      if (is.id == was.id) cut_strip(half, is, opening_stretches(block, was));
  return half;
}

Result<Block> join_halves(const Block& left, const Block& right,
                          const std::set<std::string>& named) {
  const Problems topology = topology_differences(left, right);
  if (!topology.empty() || is_opened(left) || is_opened(right)) {
    return Problem{"sides-differ", "block " + left.id,
                   topology.empty() ? "a half that is opened already can not be joined"
                                    : topology.front().what,
                   "join two halves of one block"};
  }
  std::set<std::string> open;
  for (std::size_t i = 0; i < left.pieces.size(); ++i) {
    const Piece& piece = left.pieces[i];
    if (!can_open(piece) || goes_round(left, piece.id)) continue;
    if (named.contains(piece.id) || !same_piece(piece, right.pieces[i])) open.insert(piece.id);
  }
  add_seams(left, right, open);
  add_linings(left, open);
  Problems problems = shared_problems(left, right, open);
  if (!problems.empty()) return problems;
  if (open.empty()) return left;

  Block joined = left;
  joined.pieces.clear();
  for (std::size_t i = 0; i < left.pieces.size(); ++i) {
    const Piece& a = left.pieces[i];
    const Piece& b = right.pieces[i];
    if (!open.contains(a.id)) {
      joined.pieces.push_back(a);
    } else if (is_half(a)) {
      joined.pieces.push_back(open_half(a, b));
    } else {
      joined.pieces.push_back(part_pair(a, Side::left));
      joined.pieces.push_back(part_pair(b, Side::right));
    }
  }
  sew_joined(joined, left, right, open);
  for (const Binding& is : joined.bindings)
    for (const Binding& was : left.bindings)
      if (is.id == was.id) cut_strip(joined, is, opening_stretches(left, was));
  return joined;
}

Block opened_like(const Block& block, const Block& like) {
  std::set<std::string> open;
  for (const Block* one : {&block, &like}) {
    for (const Piece& piece : one->pieces) {
      if (piece.centre_line) open.insert(piece.id);
      if (piece.side != Side::both)
        open.insert(without_side(piece.id, piece.side).value_or(piece.id));
    }
  }
  if (open.empty()) return block;
  const Result<Block> left = half_block(block, Side::left);
  const Result<Block> right = half_block(block, Side::right);
  if (!left || !right) return block;
  Result<Block> joined = join_halves(*left, *right, open);
  return joined ? *joined : block;
}

}  // namespace pinwright
