#pragma once
// Advice as it is answered: the same object on the command line and over HTTP.

#include <vector>

#include "api/exchange/json.h"
#include "engine/pattern/tryon.h"
#include "knowledge/advise.h"

namespace pinwright::api {

/// [{sign, zone, side, amount_mm, of, taken, takes_up_mm, state, posture, words, begin, end,
/// sure}, ...]; amount_mm,
/// of, taken and takes_up_mm are null where no amount was told. takes_up_mm: the cloth that the
/// amount takes up, twice the depth of a pinned fold.
Json findings_to_json(const std::vector<Finding>& findings);

/// [{words, at, nearest}, ...]; at counts bytes from the start of the text.
Json not_understood_to_json(const std::vector<knowledge::NotUnderstood>& words);

/// What else the words told: {style: [feature], beyond_pattern: [{words, at, note}], ask_back:
/// [{finding, question, answers: [{text, finding: as in findings_to_json}]}], contradictions:
/// [{present, absent, what}]}; finding, present and absent are places in the list of findings.
Json remarks_to_json(const knowledge::Understood& heard);

/// {findings, not_understood, verdict, settled, causes, explanation, question, questions_left,
/// stopped, proposals, cautions}. explanation: null or {causes: [id], next: [id], times_next,
/// text}. stopped: why there is no question any more, null while there is one. A cause: {id, name,
/// kind, probability, for, against, what, check, sources}; for and against:
/// [{sign, text, log_odds}]. question: null or {sign, asks, gain_bits, cost}. A proposal: {id,
/// cause, name, on_pattern, suits, beyond, steps, follow, sources}. A step: operation, its options,
/// amount_mm and of (null where there is none; a ratio stands under `amount`), side, assumed,
/// worth_making, limit (null when there is none), text.
/// beyond: null, or what is better where the amount is more than this way suits.
Json proposals_to_json(const knowledge::Knowledge& k,
                       const std::vector<knowledge::Proposal>& proposals);
Json causes_to_json(const knowledge::Knowledge& k,
                    const std::vector<knowledge::CauseFound>& causes);
Json advice_to_json(const knowledge::Knowledge& k, const knowledge::Advice& advice);

}  // namespace pinwright::api
