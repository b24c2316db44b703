#pragma once
// When it is settled, and the sentence that says so or that it cannot be told yet.

#include <string>
#include <vector>

#include "engine/diagnosis/inference.h"
#include "knowledge/network_of.h"

namespace pinwright::knowledge {

inline constexpr double kLeadingAtLeast = 0.7;  ///< a leading cause is believed from here
inline constexpr double kRivalAtMost = 0.35;    ///< and only when no rival reaches this
inline constexpr double kSeenOdds = 10.0;       ///< a sign counts as seen from here: told as sure by a half

/// Whether this much was observed that the sign needs a cause: certain, or likely enough.
bool counts_as_seen(const Likelihood& observed);

struct Verdict {
  bool settled = false;
  std::string text;
};

/// Settled when every sign that counts as seen (one at least) has a cause of at least
/// kLeadingAtLeast that makes it, and every other cause of that sign is at most kRivalAtMost or is
/// itself believed (two causes may hold at once). Else the text begins "Cannot tell yet".
Verdict verdict(const KindNetwork& network, const Evidence& evidence, const Posterior& posterior);

/// Indices of the causes that make at least one sign that leans to present, most probable first.
std::vector<std::size_t> causes_in_play(const KindNetwork& network, const Evidence& evidence,
                                        const Posterior& posterior);

}  // namespace pinwright::knowledge
