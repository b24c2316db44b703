#include "engine/draft/arm_room.h"

#include <algorithm>
#include <array>
#include <optional>

#include "engine/pattern/measures.h"

namespace pinwright::drafting {
namespace {

constexpr std::array<double, 5> kTrials = {60.0, 48.0, 36.0, 24.0, 12.0};
constexpr double kHighEnough = 0.003;  // above kFlattestCap: no nearer is needed
constexpr int kMostSteps = 8;

static_assert(kTrials.front() == kMostLoweredMm);

bool arm_does_not_fit(const Problems& problems) {
  return std::any_of(problems.begin(), problems.end(), [](const Problem& problem) {
    return problem.place == "/wearer/body/upper-arm-girth";
  });
}

/// Cap height as a share of the sleeve's girth; kFlattestCap for a block without a sleeve.
std::optional<double> cap_share(const Result<Block>& drawn) {
  if (!drawn) return std::nullopt;
  const auto all = measures(*drawn);
  const GarmentMeasure* height = find_measure(all, "cap-height");
  const GarmentMeasure* girth = find_measure(all, "upper-arm-girth");
  if (height == nullptr || girth == nullptr) return kFlattestCap;
  return height->value / girth->value;
}

bool enough(std::optional<double> share) { return share && *share >= kFlattestCap; }

}  // namespace

Result<Block> with_room_for_arm(const std::function<Result<Block>(double)>& draw) {
  Result<Block> plain = draw(0.0);
  std::optional<double> at_low = cap_share(plain);
  if (enough(at_low) || (!plain && !arm_does_not_fit(plain.problems()))) return plain;
  // As far down as can be drawn.
  Result<Block> best = plain;
  double high = 0.0;
  for (const double lowered : kTrials) {
    Result<Block> drawn = draw(lowered);
    if (!drawn) continue;
    best = std::move(drawn);
    high = lowered;
    break;
  }
  std::optional<double> at_high = cap_share(best);
  if (!enough(at_high)) return best;
  // The least that is enough: the share grows nearly in proportion.
  double low = 0.0;
  for (int i = 0; i<kMostSteps&& * at_high> kFlattestCap + kHighEnough && high - low > 0.5; ++i) {
    const double part =
        at_low ? (kFlattestCap + kHighEnough / 2.0 - *at_low) / (*at_high - *at_low) : 0.5;
    const double middle = low + std::clamp(part, 0.05, 0.95) * (high - low);
    Result<Block> drawn = draw(middle);
    const std::optional<double> share = cap_share(drawn);
    if (enough(share)) {
      high = middle;
      at_high = share;
      best = std::move(drawn);
    } else {
      low = middle;
      at_low = share;
    }
  }
  return best;
}

}  // namespace pinwright::drafting
