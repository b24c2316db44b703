#pragma once
// What a garment has and is, as far as it weighs its causes: known from the block, or told.

#include <set>
#include <string>

#include "engine/pattern/block.h"
#include "engine/pattern/tryon.h"
#include "knowledge/model.h"

namespace pinwright::knowledge {

/// Ids of features; the block kind is one of them.
using Features = std::set<std::string>;

/// From the block alone:
///   sleeve, sleeveless   a piece with a cap, or none; a block without pieces is taken as sleeved
///   long-sleeve          longer than the upper arm of the body it is drafted for, or than 350 mm
///                        where that is not known (judged)
///   bound-neckline, bound-armhole   a binding whose opening is a neckline, an armhole
///   lined                a piece that lines another
///   bust-dart, shoulder-dart        a dart toward the bust point, toward the shoulder blade
/// What a pattern does not say (collar, princess-seams, v-neck, ...) has to be told.
Features features_of(const Block& block);

/// With what was told of the style, which wins over the block: each feature told brings those it is
/// `with` and takes away those it is `without` (a sleeveless try-on of a sleeved block). Then what
/// was seen: a finding in a zone that only some garments have says that this one has it, unless the
/// style told rules it out. Ids that the knowledge does not know change nothing.
Features features_of(const Knowledge& k, const Block& block, const TryOn& tryon);

/// Whether all of these are there.
bool has_all(const Features& features, const std::vector<std::string>& wanted);

}  // namespace pinwright::knowledge
