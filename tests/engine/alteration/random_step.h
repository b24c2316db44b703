#pragma once
// Any operation with any amount that its catalogue entry allows.

#include <random>

#include "engine/alteration/catalogue.h"
#include "engine/alteration/step.h"

namespace pinwright {

inline Step random_step(std::mt19937& rng) {
  const auto operations = operation_catalogue();
  const OperationInfo& info = operations[rng() % operations.size()];
  Step s;
  s.operation = info.id;
  for (const OptionInfo& o : info.options)
    s.options[std::string(o.key)] = std::string(o.values[rng() % o.values.size()]);
  const double share = static_cast<double>(rng() % 10000) / 9999.0;
  s.amount = info.least + share * (info.most - info.least);
  if (rng() % 2 == 0) s.amount = -s.amount;
  if (info.amount == AmountKind::ratio) s.amount = 0.66 + 0.3 * share;
  return s;
}

}  // namespace pinwright
