#pragma once
// Random sequences of alterations over the whole catalogue, for rapidcheck.

#include <rapidcheck.h>

#include <iosfwd>
#include <vector>

#include "engine/alteration/step.h"

namespace pinwright {

struct Sequence {
  bool lined = false;  ///< the front has a lining that follows it
  std::vector<Step> steps;
  bool operator==(const Sequence&) const = default;
};
std::ostream& operator<<(std::ostream& os, const Sequence& sequence);

/// An amount between the least and the most of the catalogue, every option known and, where it must
/// be, given.
bool plausible(const Step& step);

/// 1 to 6 steps: every operation, every value of every option, both signs, amounts of the whole and
/// of the half. Four of five are plausible; the others go beyond the most, are too small to be
/// worth making, zero, huge or not a number, or carry an option that is not known. Shrinks to fewer
/// steps, fewer options, round and small amounts.
rc::Gen<Sequence> random_sequence();

}  // namespace pinwright
