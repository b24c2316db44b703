#include "engine/draft/arm_room.h"

#include <algorithm>

#include "engine/pattern/measures.h"

namespace pinwright::drafting {
namespace {

bool arm_does_not_fit(const Problems& problems) {
  return std::any_of(problems.begin(), problems.end(), [](const Problem& problem) {
    return problem.place == "/wearer/body/upper-arm-girth";
  });
}

bool high_enough(const Result<Block>& drawn) {
  if (!drawn) return false;
  const auto all = measures(*drawn);
  const GarmentMeasure* height = find_measure(all, "cap-height");
  const GarmentMeasure* girth = find_measure(all, "upper-arm-girth");
  return height == nullptr || girth == nullptr || height->value >= kFlattestCap * girth->value;
}

}  // namespace

Result<Block> with_room_for_arm(const std::function<Result<Block>(double)>& draw) {
  Result<Block> plain = draw(0.0);
  if (high_enough(plain) || (!plain && !arm_does_not_fit(plain.problems()))) return plain;
  Result<Block> best = draw(kMostLoweredMm);
  if (!high_enough(best)) return best ? best : plain;
  double low = 0.0;
  double high = kMostLoweredMm;
  for (int i = 0; i < 14; ++i) {
    const double middle = (low + high) / 2.0;
    Result<Block> drawn = draw(middle);
    if (high_enough(drawn)) {
      high = middle;
      best = std::move(drawn);
    } else {
      low = middle;
    }
  }
  return best;
}

}  // namespace pinwright::drafting
