#pragma once
// In which order the causes are taken, so that few present signs are open at one time.

#include <cstddef>
#include <vector>

#include "engine/diagnosis/fold.h"

namespace pinwright {

/// One cause's turn in the sweep. Bit positions count the open signs after `opens` are appended.
struct Turn {
  struct Bit {
    std::size_t position = 0;
    double strength = 0.0;
  };
  struct Close {
    std::size_t position = 0;
    Likelihood observed;
  };
  std::size_t cause = 0;
  std::vector<double> opens;  ///< leaks of the signs appended as new highest bits
  std::vector<Bit> bits;      ///< the signs this cause can switch on
  std::vector<Close> closes;  ///< signs that are weighed and then go, by descending position
  std::size_t before = 0;     ///< open signs before this turn
  std::size_t within = 0;     ///< open signs once `opens` are appended
};

/// A turn for every cause that has a shared sign. Greedy: next comes the cause that leaves the
/// fewest signs open, then the one that opens fewest, then by number; when that grows wide, every
/// cause is tried as the first and the cheapest order is kept.
std::vector<Turn> order_turns(const Folded& folded);

}  // namespace pinwright
