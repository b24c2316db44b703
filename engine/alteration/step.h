#pragma once
// A step: one operation of the catalogue, on what, by how much.

#include <map>
#include <optional>
#include <string>
#include <string_view>

#include "engine/base/units.h"
#include "engine/pattern/tryon.h"

namespace pinwright {

/// As read from a remedy or a request; resolved against the catalogue before anything is touched.
struct Step {
  std::string operation;                       ///< id in the catalogue
  std::map<std::string, std::string> options;  ///< e.g. {"piece", "front"}, {"edge", "neckline"}
  double amount = 0.0;                         ///< mm, or a plain number for a ratio
  Of of = Of::half;                            ///< ignored for distances and ratios
  /// Left or right: that side alone (one_sided.h). A half amount is that side's own; a whole amount
  /// is said of both sides, and the one takes its half.
  Side side = Side::both;
  bool operator==(const Step&) const = default;
};

}  // namespace pinwright
