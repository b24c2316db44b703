#pragma once
// What must be true of a block, looked at without the engine's proof: lengths by chords, angles
// from the handles, outlines by GEOS, wiggles by how far the tangent swings back. So the proof
// itself is checked by something else.

#include <string>
#include <vector>

#include "engine/pattern/block.h"

namespace pinwright {

/// Each fault in words; empty when sound.
using Faults = std::vector<std::string>;

/// Chords, 48 a segment and half as many, extrapolated; within 0.001 mm on a pattern's curves.
double chord_length(const Curve& curve);

/// Closed to the bit, counter-clockwise, simple, no edge twice as long as its chord, straight edges
/// straight, legs equal, notches on their edges, folds on x = 0 and nothing beyond them.
void own_outline_faults(const Block& block, Faults& faults);
/// Every section of every seam within 0.1 mm of its ease, notches within 0.1 mm, every strip within
/// 0.1 mm of its ratio.
void own_seam_faults(const Block& block, Faults& faults);
/// Notches of an edge in the order of `start`, at least half a millimetre apart.
void own_notch_faults(const Block& start, const Block& after, Faults& faults);
/// Every join within 1 degree.
void own_join_faults(const Block& block, Faults& faults);
/// Every edge of a lining like its shell's.
void own_lining_faults(const Block& block, Faults& faults);

/// How often the tangent turns back by more than a tenth of a degree.
int own_wiggles(const Curve& curve);
/// Edges that bend to and fro more often than those of the same name at the start; edges that the
/// start lacks (a dart went in or out) are counted together with all of their role. Necklines and
/// armholes that were hollow and are not. `more`: so many more are allowed on a line that runs to
/// the centre. Both are blocks as one side sees them.
void own_wiggle_faults(const Block& start, const Block& after, int more, Faults& faults);

}  // namespace pinwright
