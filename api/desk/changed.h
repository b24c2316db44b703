#pragma once
// A change worked out on a block, not yet saved.

#include <vector>

#include "api/desk/desk.h"
#include "engine/alteration/alter.h"
#include "engine/proof/proof.h"

namespace pinwright::api {

struct Desk::Changed {
  std::vector<Step> steps;  ///< as they were applied, amounts filled in
  Altered altered;
  Proof proof;
  Json together;  ///< together_json.h, when proposals were sized together, else null
  Json tryon;     ///< what was told, for the record; null when nothing was
};

/// "proof-failed" and every failed check after it.
Problems proof_failed(const std::string& block, const Proof& proof);

}  // namespace pinwright::api
