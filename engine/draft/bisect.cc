#include "engine/draft/bisect.h"

#include <cmath>

namespace pinwright::drafting {
bool bisect(double low, double high, const std::function<double(double)>& f, double& t) {
  double at_low = f(low);
  const double at_high = f(high);
  if (!std::isfinite(at_low) || !std::isfinite(at_high) || (at_low > 0.0) == (at_high > 0.0)) {
    return false;
  }
  for (int i = 0; i < 200; ++i) {
    const double middle = low + (high - low) / 2.0;
    if (middle == low || middle == high) break;
    const double here = f(middle);
    if ((here > 0.0) == (at_low > 0.0)) {
      low = middle;
      at_low = here;
    } else {
      high = middle;
    }
  }
  t = low + (high - low) / 2.0;
  return true;
}

}  // namespace pinwright::drafting
