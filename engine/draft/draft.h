#pragma once
// Blocks drafted from body measurements by our own constructions.

#include <span>
#include <string>
#include <string_view>

#include "engine/base/result.h"
#include "engine/pattern/block.h"

namespace pinwright {

struct DraftInput {
  std::string id = "block";
  std::string name;
  std::string size;
  Wearer wearer;
  Fabric fabric;
  /// Overrides of the kind's usual ease, keyed by ISO measurement, whole garment, mm.
  std::map<std::string, double> ease;
};

/// Half front and half back on the fold, short sleeve, neck binding; no darts; no cap ease to speak
/// of; the front side seam carries extra length over the bust, eased into the back between two
/// notches. Needs: see required_measurements. Errors: those of check_measurements,
/// "measurement-missing", "draft-impossible" (which measurement contradicts which).
Result<Block> draft_knit_top(const DraftInput& input);
/// Half front with bust and waist dart, half back with shoulder and waist dart, set-in sleeve with
/// cap ease. Woven.
Result<Block> draft_woven_bodice(const DraftInput& input);

/// By kind name "knit-top" or "woven-bodice"; "draft-kind-unknown" otherwise.
Result<Block> draft(std::string_view kind, const DraftInput& input);
std::span<const std::string_view> required_measurements(std::string_view kind);

}  // namespace pinwright
