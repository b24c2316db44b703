#pragma once
// A joint sizing as it is answered.

#include "api/exchange/json.h"
#include "engine/base/result.h"
#include "knowledge/joint.h"

namespace pinwright::api {

/// {proposals, met, steps, kept, sewn, left_out, targets, held, conflicts}.
/// A step: operation, options, amount_mm, of, side as anywhere; proposals: [ids]; asked_by: [the
/// findings in the fitter's words]; alone_mm: what its proposal asks for by itself (null when body
/// and ease alone ask for it); assumed: no amount was told, the usual one was taken; least_mm,
/// most_mm: its bounds; at_least, at_most: a bound holds it; bound_reason: why, where the pattern
/// sets the bound, else null; used: false when none of it is needed (amount_mm is 0 then); text:
/// what it did, null when not used. kept: steps that no finished measure counts, done first by
/// their own amount; sewn: steps that move no line. left_out: [{sign, proposal, text}], one of the
/// two null. A target: {measure, name, kind, before, wanted, after, left_over, met, asked_by,
/// shares}, its numbers in mm or degrees ("before_mm" or "before_deg"), a girth with "of": "whole";
/// shares:
/// [{step, operation, change_mm}], step counting `steps` from 0: what each gave of the change.
/// held: the same without wanted, left_over and asked_by, and with drift_mm.
/// conflicts: [{text, members: [{kind: "target" | "bound" | "limit", says, would_do_mm, relax}]}];
/// would_do: what would do if this one alone gave way, null when nothing would.
Json together_to_json(const knowledge::Joint& joint);

/// Why the set cannot be had: "together-conflict" for each conflict, or "together-not-met".
Problems not_met(const knowledge::Joint& joint);

}  // namespace pinwright::api
