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
  girth,     ///< round or across the body, both sides together: value is the whole garment's
  each,      ///< one armhole, one sleeve, one shoulder
  distance,  ///< up and down
  angle,     ///< value in radians
};

struct GarmentMeasure {
  /// bust-girth, front-bust-width, back-bust-width, waist-girth, hem-girth, upper-arm-girth,
  /// neckline-length, front-neckline-length, back-neckline-length, armhole-length,
  /// front-armhole-length, back-armhole-length, cap-length, cap-height, shoulder-length,
  /// shoulder-slope, front-shoulder-slope, back-shoulder-slope, front-length, back-length,
  /// front-neck-depth, back-neck-depth, across-front-width, across-back-width, armhole-depth,
  /// side-length, front-side-length, sleeve-length, sleeve-hem-girth, neck-binding-length
  std::string id;
  std::string name;
  MeasureKind kind = MeasureKind::girth;
  double value = 0.0;  ///< mm, or radians for an angle
  /// The body measurement it is compared with, when there is one: finished = body + ease.
  std::optional<std::string> body;
};

/// All measures that this block has pieces for, in a fixed order. Needs a valid block; a piece
/// without the edges for a measure leaves it out. Pieces are found by id: front, back, sleeve,
/// neck-binding. How they are taken:
/// - widths at a level: level.h (darts that the level crosses are taken as sewn), twice the front's
///   half and twice the back's half;
/// - bust-girth: the front at the height of its landmark bust-point, the back at its landmark
///   bust-level (the height that meets it in the side seam), or at the underarm point where a piece
///   lacks the landmark; never above the underarm point;
/// - front-bust-width, back-bust-width: its two parts, twice the half each;
/// - waist-girth: the edges of role waist, or the width at the landmark waist-level;
/// - hem-girth, neckline-length, armhole-length, cap-length, sleeve-hem-girth: along the edges;
/// - upper-arm-girth: straight between the two ends of the cap; cap-height: the crown above them;
/// - shoulder-length: the front's; shoulder-slope: from neck point to shoulder tip as drawn, mean
///   of front and back; front-shoulder-slope, back-shoulder-slope: each by itself;
/// - front-neckline-length, back-neckline-length: twice the half's edge; front-armhole-length,
///   back-armhole-length: one edge;
/// - front-length, back-length: along the centre edges; compared with the body only where the block
///   ends at the waist;
/// - front-neck-depth, back-neck-depth: neck point to the centre of the neckline, straight down;
/// - across-front-width, across-back-width: half way between shoulder tip and underarm point;
/// - armhole-depth: shoulder tip of the back to its underarm point, straight down;
/// - side-length: the back's, into which the front may be eased; front-side-length: the front's, a
///   bust dart in it left out;
/// - sleeve-length: from the crown to the middle of the hem, straight.
/// Where left and right differ (sides.h): a girth is the sum of both sides; any other measure the
/// mean of both, followed, where they differ, by each side's own with "-left" or "-right" at its
/// id.
std::vector<GarmentMeasure> measures(const Block& block);
/// A side's own measure, "shoulder-slope-left", is the common one where the sides are alike.
const GarmentMeasure* find_measure(const std::vector<GarmentMeasure>& all, std::string_view id);

}  // namespace pinwright
