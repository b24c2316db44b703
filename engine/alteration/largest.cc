#include "engine/alteration/largest.h"

#include <cmath>
#include <cstdio>

#include "engine/alteration/catalogue.h"

namespace pinwright {
namespace {

constexpr int kHalvings = 6;

bool is_of_size(const Problem& p) {
  return p.code == "amount-too-large" || p.code == "no-solution" || p.code == "conflict" ||
         p.code == "limit";
}

// A ratio is counted from 1: there nothing is stretched and nothing slack.
double rest_of(const Step& step) {
  const OperationInfo* info = find_operation(step.operation);
  return info != nullptr && info->amount == AmountKind::ratio ? 1.0 : 0.0;
}

std::string said(const Step& step, double amount) {
  char text[64];
  const OperationInfo* info = find_operation(step.operation);
  if (info != nullptr && info->amount == AmountKind::ratio) {
    std::snprintf(text, sizeof text, "%.2f", amount);
  } else {
    const bool two_readings = info != nullptr && info->amount == AmountKind::half;
    std::snprintf(text, sizeof text, "%.1f mm%s", amount,
                  !two_readings          ? ""
                  : step.of == Of::whole ? " on the whole"
                                         : " on the half");
  }
  return text;
}

}  // namespace

std::optional<double> largest_amount(const Block& block, const Step& step) {
  const double rest = rest_of(step);
  const double asked = step.amount - rest;
  if (!std::isfinite(asked) || asked == 0.0) return {};
  const auto refusal = [&](double share) -> Problems {
    Step part = step;
    part.amount = rest + share * asked;
    return alter(block, {part}).problems();
  };
  const Problems first = refusal(1.0);
  if (first.empty() || !is_of_size(first.front())) return {};
  double done = 0.0;
  double refused = 1.0;
  for (int i = 0; i < kHalvings; ++i) {
    const double middle = 0.5 * (done + refused);
    (refusal(middle).empty() ? done : refused) = middle;
  }
  const double step_size = rest != 0.0 ? 0.01 : 0.1;
  const double rounded = std::floor(std::abs(done * asked) / step_size) * step_size;
  return rest + std::copysign(rounded, asked);
}

Problems with_largest(const Block& block, const std::vector<Step>& steps, Problems problems) {
  if (problems.empty() || !is_of_size(problems.front())) return problems;
  const std::optional<std::size_t> at = step_named(problems.front().place, steps.size());
  if (!at) return problems;
  Block before = block;
  if (*at > 0) {
    Result<Altered> up_to =
        alter(block, {steps.begin(), steps.begin() + static_cast<std::ptrdiff_t>(*at)});
    if (!up_to) return problems;
    before = std::move(up_to->block);
  }
  const std::optional<double> most = largest_amount(before, steps[*at]);
  if (!most) return problems;
  problems.front().mend += *most == rest_of(steps[*at]) ? "; here none of it can be done"
                                                        : "; here " + said(steps[*at], *most) +
                                                              " is about as far as it goes";
  return problems;
}

}  // namespace pinwright
