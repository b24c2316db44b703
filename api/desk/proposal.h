#pragma once
#include <vector>

#include "api/desk/request.h"
#include "engine/base/result.h"
#include "knowledge/advise.h"

namespace pinwright::api {

/// The steps of the proposal that the request names, with the amounts it sets. "proposal-unknown"
/// (those there are offered), "proposal-not-on-pattern" (it is sewn, pressed or chosen: no line
/// moves), "amounts-count" (more amounts than steps that take one), "of-missing" (an amount that
/// could be meant of the half pattern or of the whole garment), "amount-without-unit", and those of
/// check_step.
Result<std::vector<Step>> proposed_steps(const knowledge::Advice& advice,
                                         const ChangeRequest& request);

}  // namespace pinwright::api
