#pragma once
// A small size range out of many bodies.

#include <string>
#include <vector>

#include "engine/draft/draft.h"
#include "engine/pattern/block.h"

namespace pinwright::api {

/// Bust girths of neighbouring sizes lie this far apart: common practice for tops.
inline constexpr double kBustStepMm = 40.0;
/// Within a bust class the bodies are parted by waist less bust into so many figures.
inline constexpr std::size_t kFigures = 5;
/// A class of fewer bodies is put to the figure or bust class beside it.
inline constexpr std::size_t kLeastBodies = 12;

struct DraftedSize {
  std::string label;  ///< "bust 920, figure 2"
  std::size_t bodies = 0;
  Block block;
};

struct SizeRefusal {
  std::string label;
  Problems problems;
};

struct DraftedSizes {
  std::vector<DraftedSize> sizes;
  std::vector<SizeRefusal> refused;
};

/// Classes of bust girth, kBustStepMm wide; in each the bodies in order of waist less bust, parted
/// into kFigures of equal number; a size is drafted to the median of every measurement of its
/// bodies. Nothing but medians of the bodies given enters. Deterministic.
DraftedSizes draft_sizes(const std::vector<Wearer>& bodies, std::string_view kind,
                         const Fabric& fabric);

}  // namespace pinwright::api
