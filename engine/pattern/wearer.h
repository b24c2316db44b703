#pragma once
#include <map>
#include <string>
#include <vector>

namespace pinwright {

/// Body measurements in mm under the names of ISO 8559-1:2017 in kebab-case (names from memory):
/// bust-girth, waist-girth, hip-girth, neck-base-girth, upper-arm-girth, head-girth, hand-girth,
/// shoulder-length, across-back-width, across-front-width, back-waist-length, front-waist-length,
/// scye-depth, arm-length, bust-point-width, neck-shoulder-point-to-bust-point, ...
/// The full list with meaning and plausible range: measurement.h.
using Measurements = std::map<std::string, double>;

struct Wearer {
  std::string id;  ///< numbered, never named: deckhand-3
  Measurements body;
  std::vector<std::string> posture;  ///< notes in the fitter's words
  bool operator==(const Wearer&) const = default;
};

}  // namespace pinwright
