#pragma once
// One piece, from its half or its pair to what each side of the wearer gets, and back.
//
//        C               C
//        |`-. N        .-|-. N          A half on the fold becomes one full piece: the half that is
//        |   \ P   P  /  |  \ P         drawn keeps its place at x >= 0, the other side's half lies
//   fold |   ) U   U (   |   ) U        mirrored at x <= 0, its edges in reversed order, so that
//   the
//        |   |       |   |   |          ring runs counter-clockwise. The fold becomes a drawn line.
//        H---S       S---H---S
//
// Everything that both halves have twice gets the suffix -left or -right; a landmark on x = 0 that
// both have in the same place keeps its plain id.

#include <string>
#include <utility>

#include "engine/base/result.h"
#include "engine/pattern/piece.h"

namespace pinwright {

/// "-left", "-right"; "" for both.
std::string_view suffix(Side side);
std::string with_side(const std::string& id, Side side);
/// The id without the side's suffix; nothing when it does not end so.
std::optional<std::string> without_side(const std::string& id, Side side);
Side other_side(Side side);

/// Which side of the wearer a half, or one of a pair, is drawn for: the right for a back and for a
/// sleeve with its front at x >= 0, as their right side of the cloth is looked at; else the left.
Side drawn_side(const Piece& piece);

/// A half on its fold, and not opened yet.
bool is_half(const Piece& piece);
/// Can be parted into one for the left and one for the right: a mirrored pair, or a strip of which
/// an even number is cut.
bool is_pair(const Piece& piece);

/// Both halves, bit for bit, as one full piece. REQUIRES: is_half of both, the same ids in the same
/// order, the same bits along the fold.
Piece open_half(const Piece& left, const Piece& right);
/// One half of an opened piece. "sides-mixed" when its edges are not those of two halves.
/// Bit for bit what was opened, but for notches of the mirrored half, which may differ by rounding
/// (1e-12 mm): there they are measured from the other end.
Result<Piece> close_half(const Piece& opened, Side side);

/// One of a pair as the piece of one side, mirrored where it has to be; and back.
Piece part_pair(const Piece& pair, Side side);
Piece pair_again(const Piece& parted);

/// The piece with its notches, by rounding at most, where open_half() and close_half() leave them:
/// what is done to such halves is the same to the last bit on either side.
Piece settled(const Piece& half);

/// The same lines, bit for bit, and notches at the same places up to rounding (1e-9 mm).
bool same_piece(const Piece& a, const Piece& b);

}  // namespace pinwright
