#pragma once
// The body measurements that drafting and sizing use.

#include <span>
#include <string_view>

#include "engine/base/result.h"
#include "engine/base/units.h"
#include "engine/pattern/wearer.h"

namespace pinwright {

struct MeasurementInfo {
  std::string_view id;       ///< ISO 8559-1 name in kebab-case
  std::string_view name;     ///< the same in plain words
  std::string_view meaning;  ///< how it is taken, in our own words
  double least_mm;           ///< outside [least, most] it is refused as a slip of pen or unit
  double most_mm;
};

/// All known measurements, in a fixed order. Every one is a length in mm: the standard's shoulder
/// slope, an angle, is kept as "shoulder-drop", the height of the neck shoulder point above the
/// shoulder point.
std::span<const MeasurementInfo> known_measurements();
const MeasurementInfo* find_measurement(std::string_view id);
/// Every unknown id ("measurement-unknown", the nearest known one offered), every value that is
/// not finite or out of range ("measurement-range"); place = prefix + "/" + id.
Problems check_measurements(const Measurements& body, std::string_view prefix);

}  // namespace pinwright
