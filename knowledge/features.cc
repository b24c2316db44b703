#include "knowledge/features.h"

#include <algorithm>

#include "engine/pattern/measures.h"
#include "engine/pattern/piece.h"

namespace pinwright::knowledge {
namespace {

constexpr double kElbowMm = 350.0;

bool has_sleeve(const Block& block) {
  return block.pieces.empty() ||
         std::any_of(block.pieces.begin(), block.pieces.end(), [](const Piece& piece) {
           return edge_of_role(piece, EdgeRole::cap) != nullptr;
         });
}

bool has_long_sleeve(const Block& block) {
  if (block.pieces.empty()) return false;
  const auto arm = block.drafted_for.body.find("upper-arm-length");
  const double from = arm == block.drafted_for.body.end() ? kElbowMm : arm->second;
  for (const GarmentMeasure& measure : measures(block))
    if (measure.id == "sleeve-length") return measure.value > from;
  return false;
}

bool is_bound(const Block& block, EdgeRole role) {
  return std::any_of(block.bindings.begin(), block.bindings.end(), [&](const Binding& binding) {
    return std::any_of(binding.opening.begin(), binding.opening.end(), [&](const RunPart& part) {
      const Piece* piece = find_piece(block, part.piece);
      const Edge* edge = piece == nullptr ? nullptr : find_edge(*piece, part.edge);
      return edge != nullptr && edge->role == role;
    });
  });
}

bool has_dart(const Block& block, std::string_view landmark) {
  return std::any_of(block.pieces.begin(), block.pieces.end(),
                     [&](const Piece& piece) { return dart_toward(piece, landmark) != nullptr; });
}

const Feature* find_feature(const Knowledge& k, const std::string& id) {
  const auto at = std::find_if(k.features.begin(), k.features.end(),
                               [&](const Feature& feature) { return feature.id == id; });
  return at == k.features.end() ? nullptr : &*at;
}

/// Puts a feature in with all that follows; `ruled_out` gathers what cannot be besides.
void tell(const Knowledge& k, const std::string& id, Features& features, Features& ruled_out) {
  const Feature* feature = find_feature(k, id);
  if (feature == nullptr) return;
  features.insert(id);
  for (const std::string& other : feature->without) {
    features.erase(other);
    ruled_out.insert(other);
  }
  for (const std::string& other : feature->with)
    if (!features.contains(other)) tell(k, other, features, ruled_out);
}

}  // namespace

bool has_all(const Features& features, const std::vector<std::string>& wanted) {
  return std::all_of(wanted.begin(), wanted.end(),
                     [&](const std::string& one) { return features.contains(one); });
}

Features features_of(const Block& block) {
  Features features = {block.kind, has_sleeve(block) ? "sleeve" : "sleeveless"};
  if (has_long_sleeve(block)) features.insert("long-sleeve");
  if (is_bound(block, EdgeRole::neckline)) features.insert("bound-neckline");
  if (is_bound(block, EdgeRole::armhole)) features.insert("bound-armhole");
  if (!block.linings.empty()) features.insert("lined");
  if (has_dart(block, "bust-point")) features.insert("bust-dart");
  if (has_dart(block, "shoulder-blade-point")) features.insert("shoulder-dart");
  return features;
}

Features features_of(const Knowledge& k, const Block& block, const TryOn& tryon) {
  Features features = features_of(block);
  Features ruled_out;
  for (const std::string& told : tryon.style) tell(k, told, features, ruled_out);
  for (const Finding& finding : tryon.findings) {
    if (finding.state != FindingState::present) continue;
    const Sign* sign = find_sign(k, finding.sign);
    const Zone* zone = sign == nullptr ? nullptr : find_zone(k, sign->zone);
    if (zone == nullptr) continue;
    Features besides = ruled_out;
    for (const std::string& wanted : zone->features)
      if (!ruled_out.contains(wanted) && !features.contains(wanted))
        tell(k, wanted, features, besides);
  }
  return features;
}

}  // namespace pinwright::knowledge
