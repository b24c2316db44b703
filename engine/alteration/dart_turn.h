#pragma once
// A dart's intake turned into another dart, exactly.

#include "engine/alteration/dart_topology.h"
#include "engine/alteration/edit.h"

namespace pinwright {

/// Where a new dart starts in a seam (side | shoulder | waist) of a bodice half, and puts it there
/// without intake, its legs meeting at `point`: on the side 15 mm below the mark's level, in the
/// middle of the shoulder, below the mark on the waist. "operation-not-here" where the piece has no
/// such seam.
Result<DartPlace> open_place(Block& block, std::size_t piece, const std::string& seam, Vec2 point,
                             const std::string& toward);

/// Lets a dart just opened end `short_of` mm before its mark instead of on it.
void end_short_of(Piece& piece, const DartPlace& dart, Vec2 mark, double short_of);
/// How far a new dart ends before its mark: 1/2 to 2 in, common practice.
inline constexpr double kNewDartShortMm = 25.0;

/// Draws the darts up to their mark (its nearest place on the middle line of the mouth), as is done
/// before one is moved, their mouths trued and the seams kept. Problems of restore()'s first part.
Result<Block> drawn_to_mark(const Block& before, std::size_t piece,
                            const std::vector<std::string>& darts);

/// How far a dart ends before its mark, mm.
double short_of_mark(const Piece& piece, const DartPlace& dart);

/// Turns the part of the piece between two darts about the point of `from` by `share` of its angle:
/// `from` closes by so much, `to` opens by as much. Everything that turns keeps its shape. With
/// share = 1 `from` is taken out.
void turn_intake(Block& block, std::size_t piece, const std::string& from, const std::string& to,
                 double share);

/// Sends the point of a dart to its place: `short_of` mm before the mark, on the line from the mark
/// to the middle of the mouth. The mouth is trued by restore().
void point_at_mark(Edit& edit, const DartPlace& dart, double short_of);

/// The index of a dart by id.
std::size_t dart_index(const Piece& piece, const std::string& id);

}  // namespace pinwright
