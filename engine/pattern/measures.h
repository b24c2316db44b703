#pragma once
// Finished measures of a garment, taken from the block's geometry.

#include <optional>
#include <string>
#include <string_view>
#include <vector>

#include "engine/base/units.h"
#include "engine/pattern/block.h"

namespace pinwright {

/// How a measure relates to the garment.
enum class MeasureKind {
  girth,     ///< round the body: value is the whole garment's
  each,      ///< one armhole, one sleeve, one shoulder
  distance,  ///< up and down
  angle,     ///< value in radians
};

struct GarmentMeasure {
  std::string id;        ///< bust-girth, waist-girth, hem-girth, upper-arm-girth, neckline-length,
                         ///< armhole-length, cap-length, cap-height, shoulder-length,
                         ///< shoulder-slope, front-length, back-length, front-neck-depth,
                         ///< across-front-width, across-back-width, armhole-depth, side-length,
                         ///< sleeve-hem-girth, neck-binding-length
  std::string name;
  MeasureKind kind = MeasureKind::girth;
  double value = 0.0;    ///< mm, or radians for an angle
  /// The body measurement it is compared with, when there is one: finished = body + ease.
  std::optional<std::string> body;
};

/// All measures that this block has pieces for, in a fixed order. Darts that cross a level are
/// taken as sewn (closed). Needs a valid block; a piece without the edges for a measure leaves it
/// out.
std::vector<GarmentMeasure> measures(const Block& block);
const GarmentMeasure* find_measure(const std::vector<GarmentMeasure>& all, std::string_view id);

}  // namespace pinwright
