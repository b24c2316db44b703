#pragma once
// What is to be expected before sewing, as it is answered.

#include "api/exchange/json.h"
#include "knowledge/foresee.h"

namespace pinwright::api {

/// {verdict, findings, measures, posture, causes, proposals}.
/// A finding: {sign, name, zone, measured, probability, amount_mm, of, why, cures: [proposal ids]};
/// amount_mm is null where nothing was measured, `of` null where the amount does not go round the
/// body. A measure: {measure, name, garment_mm, body_mm, ease_mm, lacks_mm, of}; lacks_mm is
/// negative where the garment has too much. posture: [{note, cause, text}], cause null where a note
/// says nothing that is known. Causes and proposals as in advice_json.h.
Json foresight_to_json(const knowledge::Knowledge& k, const knowledge::Foresight& foresight);

}  // namespace pinwright::api
