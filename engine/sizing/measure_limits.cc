#include "engine/sizing/measure_limits.h"

#include <algorithm>
#include <array>
#include <cmath>

#include "engine/constraint/limits.h"

namespace pinwright {
namespace {

// A measure counts what the limit counts when both find the same, mm.
constexpr double kSameMm = 0.01;

struct Counted {
  std::string_view limit;
  std::string_view measure;
  std::string_view less;  ///< a share of this measure is the bound, not a fixed length
};

constexpr std::array<Counted, 6> kCounted = {{
    {"opening-passes-head", "neckline-length", {}},
    {"hem-passes-hips", "hem-girth", {}},
    {"sleeve-hem-passes-hand", "sleeve-hem-girth", {}},
    {"upper-arm-has-room", "upper-arm-girth", {}},
    {"cap-not-too-flat", "cap-height", "upper-arm-girth"},
    {"cap-not-too-steep", "cap-height", "upper-arm-girth"},
}};

}  // namespace

std::vector<MeasureLimit> measure_limits(const Block& block, const Measurements& body,
                                         const Fabric& fabric) {
  std::vector<MeasureLimit> all;
  const std::vector<GarmentMeasure> now = measures(block);
  for (const Limit& limit : limits_of(block, body, fabric)) {
    for (const Counted& counted : kCounted) {
      if (counted.limit != limit.id) continue;
      const GarmentMeasure* measure = find_measure(now, counted.measure);
      if (measure == nullptr || std::abs(measure->value - limit.found) > kSameMm) continue;
      MeasureLimit m{limit.name, {{measure->id, 1.0}}, {}, {}, limit.relax};
      double bound = limit.bound;
      double found = limit.found;
      if (!counted.less.empty()) {
        const GarmentMeasure* whole = find_measure(now, counted.less);
        if (whole == nullptr || whole->value <= 0.0) continue;
        m.terms.push_back({whole->id, -bound / whole->value});
        found -= bound;
        bound = 0.0;
      }
      if (limit.sense == Sense::at_most) {
        m.at_most = std::max(bound, found);
      } else {
        m.at_least = std::min(bound, found);
      }
      all.push_back(std::move(m));
    }
  }
  return all;
}

}  // namespace pinwright
