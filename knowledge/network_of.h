#pragma once
// The knowledge, restricted to one block kind and what the garment has, as the network that
// diagnosis reasons on.

#include <string>
#include <utility>
#include <vector>

#include "engine/diagnosis/inference.h"
#include "knowledge/features.h"
#include "knowledge/model.h"

namespace pinwright::knowledge {

/// network.causes[i] is *causes[i], network.signs[i] is *signs[i]; the knowledge must outlive it.
struct KindNetwork {
  Network network;
  std::vector<const Cause*> causes;
  std::vector<const Sign*> signs;
};

/// The prior of a cause for a block kind; 0 when it cannot hold there.
double prior_of(const Cause& cause, const std::string& kind);
/// The same on a garment: the first of prior_when whose features are all there, else by kind.
double prior_of(const Cause& cause, const std::string& kind, const Features& features);
/// Whether a list of kinds (empty: all) has this one.
bool has_kind(const std::vector<std::string>& kinds, const std::string& kind);

/// The signs a cause makes, with their strengths: those it names, and the plainer sign of each.
std::vector<std::pair<std::string, double>> made_by(const Knowledge& k, const Cause& cause);

/// Causes that can hold on the garment, signs whose zone is on it, in the knowledge's order.
KindNetwork network_of(const Knowledge& k, const std::string& kind, const Features& features);
/// Whatever the garment: every zone of the kind, priors by kind alone.
KindNetwork network_of(const Knowledge& k, const std::string& kind);

/// Evidence from findings. Of a sign that some finding has present, the surest of those counts,
/// else the surest that has it absent (stated() of likelihood.h), else it is unknown. A sign surely
/// present says all that its plainer one would (kind_of), which then counts as unknown; a plainer
/// sign that is absent takes its kinds with it, as surely. Signs that are not on the garment are
/// returned in `elsewhere`.
Evidence evidence_of(const KindNetwork& network, const std::vector<Finding>& findings,
                     std::vector<std::string>& elsewhere);

/// Multiplies in what was observed of a sign beside the findings (a measured lack or surplus); a
/// sign that is not in the network is left alone. What is certain stays certain.
void weigh_in(const KindNetwork& network, const std::string& sign, const Likelihood& observed,
              Evidence& evidence);

}  // namespace pinwright::knowledge
