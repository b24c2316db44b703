#pragma once
// Why a cause stands where it stands.

#include <vector>

#include "engine/diagnosis/inference.h"

namespace pinwright {

/// Weight of one finding for one cause: log-odds of the cause with all evidence minus log-odds
/// with this finding taken out (natural log; positive speaks for, negative against). Log-odds are
/// held within +-50 (odds of 1 in 10^21), so that certainty stays a number.
struct Reason {
  std::size_t sign = 0;
  double log_odds = 0.0;
};

/// For one cause, every known finding with |log_odds| >= 0.05, strongest first (ties by index).
/// Errors: "cause-index", and those of posterior().
Result<std::vector<Reason>> reasons(const Network& network, const Evidence& evidence,
                                    std::size_t cause);
/// The same for several causes, one list a cause in their order: one sweep a finding in all.
Result<std::vector<std::vector<Reason>>> reasons(const Network& network, const Evidence& evidence,
                                                 const std::vector<std::size_t>& causes);

}  // namespace pinwright
