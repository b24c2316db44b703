#pragma once
// Darts put into a seam and taken out of it: what the ring, its seams, joins, notches and linings
// must say then. Neither moves a line: the operations do.

#include <string>

#include "engine/alteration/dart_find.h"
#include "engine/geometry/transform.h"

namespace pinwright {

/// Parts edge `edge` of the piece at s mm from its start and sets a dart without intake between the
/// parts: both legs run from there to `point`. The parts are named after the edge ("side" becomes
/// "side-lower" and "side-upper", others "-1" and "-2"), the dart after the seam ("bust-dart" on a
/// front's side, "shoulder-dart", "waist-dart"), a number behind it where the name is taken. Seams,
/// openings, joins and notches follow, a join lets the line run on over the dart, and linings get
/// the same dart.
/// REQUIRES: s lies at least 1 mm inside the edge. Returns the new dart's place.
DartPlace insert_dart(Block& block, std::size_t piece, std::size_t edge, double s, Vec2 point,
                      const std::string& toward);

/// Takes the dart out: the two edges beside it become one, drawn as `line` (the caller's: it starts
/// where the first starts and ends where the second ends), named by what their names have in
/// common. Notches keep the place that is nearest on the new line. Returns the index of the one
/// edge.
std::size_t remove_dart(Block& block, const DartPlace& dart, const Curve& line, bool straight);

/// The second edge beside the dart as it lies when the dart is sewn, behind the first.
Curve sewn_line(const Piece& piece, const DartPlace& dart);
/// The corners of a ring from `first` to `last` (both included, in ring order), with the edges
/// between them, turned rigidly; landmarks at the corners and notches go with them.
void turn_part(Piece& piece, std::size_t first, std::size_t last, const Affine& motion);

}  // namespace pinwright
