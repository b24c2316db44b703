#pragma once
// A block whose left and right differ, and the half block that each side sees.
//
// A block is drawn as halves on the fold and one of each pair. It serves both sides. When left and
// right differ, and only then, a half is opened and a pair is parted (opened_piece.h), and what is
// sewn is said for each side:
//   seams     one per side, "shoulder-left", "shoulder-right"; a piece that stays on the fold is
//             named in both; a seam of a pair with itself joins its left to its right;
//   joins     likewise; at a former fold one join, whose line runs on (twice the target);
//   bindings  the opening's runs of both sides in the order in which the strip is sewn round (from
//             the last run of the left over the first to the last of the right), one copy; a strip
//             of each side (copies 1) is parted;
//   linings   opened and parted with their shells.

#include <set>
#include <string>

#include "engine/base/result.h"
#include "engine/pattern/block.h"
#include "engine/pattern/side.h"

namespace pinwright {

/// Some piece is opened or parted.
bool is_opened(const Block& block);

/// The block as that side of it would be for both sides: halves on the fold, one of each pair.
/// Side::both, or nothing opened: the block itself. Strips that go round both sides are cut to
/// twice that side's opening. "sides-mixed" when an opened block from outside says something that
/// no two halves say (a seam that joins left to right, a side without its mate).
Result<Block> half_block(const Block& block, Side side);

/// Both halves as one block. Where they are equal (same_piece) the half stays on the fold and the
/// pair a pair; so two equal halves give back the block. `open` names pieces to open all the same.
/// half_block() of the result gives left and right back bit for bit, but for notches of the
/// mirrored half (1e-12 mm) and strips that go round both sides (1e-9 mm).
/// Problems: "sides-differ" (another topology), "one-sided" (what both sides share would differ),
/// "centre-apart" (the halves no longer meet along the fold).
Result<Block> join_halves(const Block& left, const Block& right,
                          const std::set<std::string>& open = {});

/// The block with every piece opened or parted that `like` has so; itself when it is so already or
/// cannot be. For comparing the two.
Block opened_like(const Block& block, const Block& like);

}  // namespace pinwright
