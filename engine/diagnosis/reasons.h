#pragma once
// Why a cause stands where it stands.

#include <vector>

#include "engine/diagnosis/inference.h"

namespace pinwright {

/// Weight of one finding for one cause: log-odds of the cause with all evidence minus log-odds
/// with this finding taken out (natural log; positive speaks for, negative against).
struct Reason {
  std::size_t sign = 0;
  double log_odds = 0.0;
};

/// For one cause, every known finding with |log_odds| >= 0.05, strongest first (ties by index).
Result<std::vector<Reason>> reasons(const Network& network, const Evidence& evidence,
                                    std::size_t cause);

}  // namespace pinwright
