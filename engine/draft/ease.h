#pragma once
// The usual ease of each kind, whole garment, mm, by ISO measurement; overrides replace it.

#include <map>
#include <string>

#include "engine/draft/draft.h"
#include "engine/draft/need.h"

namespace pinwright::drafting {

using EaseMap = std::map<std::string, double>;

/// Strip of a knit neckline : opening (common practice for jersey).
inline constexpr double kBindingRatio = 0.9;
/// The stretched strip is this much longer than the head's girth. Our own margin.
inline constexpr double kHeadMarginMm = 10.0;

/// The stitched neckline from which a strip of kBindingRatio, stretched as far as the fabric goes
/// across, passes the head.
double neckline_for_head(double head_girth_mm, double stretch);

/// Knit:
/// - bust 40 below 25 % stretch across, 20 below 50 %, 0 below 75 %, else -30: our own steps, on
///   the classes of stretch that are common practice;
/// - waist 60, but no more than 25 mm is taken in at one side edge; hip 30; upper arm 25;
/// - neck base: 90, or what the head needs if that is more;
/// - across back and across front 0.
EaseMap knit_ease(const Body& body, const DraftInput& input);

/// Woven:
/// - bust 80: 3 to 4 in (New Mexico State University, Guide C-228, Pattern Alteration);
/// - waist 22: 3/4 to 1 in (Central Washington University, costume textbook on line, ch. 16);
/// - upper arm 52: at least 2 in (Threads, Set-in sleeve solutions, 2021-09-27);
/// - across back 20 (1/2 to 1 in, common practice), across front 6; neck base 8 (from practice).
EaseMap woven_ease(const DraftInput& input);

}  // namespace pinwright::drafting
