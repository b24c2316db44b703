#include "engine/draft/ease.h"

#include <algorithm>

namespace pinwright::drafting {
namespace {

EaseMap overridden(EaseMap usual, const EaseMap& by) {
  for (const auto& [id, mm] : by) usual[id] = mm;
  return usual;
}

double bust_ease(double stretch) {
  if (stretch < 0.25) return 40.0;
  if (stretch < 0.50) return 20.0;
  if (stretch < 0.75) return 0.0;
  return -30.0;
}

}  // namespace

double neckline_for_head(double head_girth_mm, double stretch) {
  return (head_girth_mm + kHeadMarginMm) / (kBindingRatio * (1.0 + stretch));
}

EaseMap knit_ease(const Body& body, const DraftInput& input) {
  const double stretch = input.fabric.stretch_across;
  EaseMap ease = overridden({{"bust-girth", bust_ease(stretch)},
                             {"hip-girth", 30.0},
                             {"upper-arm-girth", 25.0},
                             {"across-back-width", 0.0},
                             {"across-front-width", 0.0}},
                            input.ease);
  constexpr double kMostTakenIn = 4.0 * 25.0;
  const double bust = body["bust-girth"] + ease["bust-girth"];
  ease.try_emplace("waist-girth", std::max(60.0, bust - kMostTakenIn - body["waist-girth"]));
  const double neck = neckline_for_head(body["head-girth"], stretch) - body["neck-base-girth"];
  ease.try_emplace("neck-base-girth", std::max(90.0, neck));
  return ease;
}

EaseMap woven_ease(const DraftInput& input) {
  return overridden({{"bust-girth", 80.0},
                     {"waist-girth", 22.0},
                     {"neck-base-girth", 8.0},
                     {"upper-arm-girth", 52.0},
                     {"across-back-width", 20.0},
                     {"across-front-width", 6.0}},
                    input.ease);
}

}  // namespace pinwright::drafting
