#pragma once
// From the command line to the same requests that come over HTTP.

#include "api/cli/options.h"
#include "api/exchange/json.h"
#include "engine/base/result.h"

namespace pinwright::api::cli {

/// Words, answers, findings, wearer, fabric, and what is to be sized together. "answer-malformed",
/// "together-missing" (--body, or proposals, without --together).
Result<Json> told_request(const Options& options);
/// Wearer and fabric alone.
Result<Json> foresight_request(const Options& options);
/// Steps (--steps, --step), or proposal with amounts and what was told, or proposals sized
/// together; "step-malformed", "together-missing".
Result<Json> change_request(const Options& options);
/// "measure-malformed".
Result<Json> draft_request(const Options& options);

/// "close-wedge piece=front edge=neckline hinge=bust-point amount=9 mm of=half" as a step's JSON:
/// words without "=" belong to the value before them. Whether operation and options are known is
/// asked of the catalogue later. place names the step in problems.
Result<Json> step_from_text(const std::string& text, const std::string& place);

}  // namespace pinwright::api::cli
