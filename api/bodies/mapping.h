#pragma once
// clang-format off
// From the columns of the 2012 Anthropometric Survey of U.S. Army Personnel (Gordon et al., Methods
// and Summary Statistics, NATICK/TR-15/007, December 2014) to measurements by their ISO 8559-1
// names. The survey was not taken for dressmaking: where a landmark or a way of taking differs,
// the difference is said here, and nothing is corrected in secret.
//
// measurement                        column, and what differs
// bust-girth                         chestcircumference, at the bust points
// waist-girth                        waistcircumference: at the navel, lower and some cm larger than
//                                    the natural waist; the block's waist then lies at the navel
// hip-girth                          buttockcircumference
// neck-base-girth, neck-girth        neckcircumferencebase, neckcircumference (below the larynx)
// head-girth, hand-girth             headcircumference, handcircumference
// shoulder-length                    shoulderlength, neck side to acromion
// across-back-width                  interscyei: between the back folds of the arms, over the
//                                    surface (the wider interscyeii runs half way up to the
//                                    acromion, beyond the joint where a sleeve is set in)
// back-waist-length                  waistbacklength: down to the navel's level
// upper-arm-girth                    bicepscircumferenceflexed: bent and flexed, larger than relaxed
// arm-length, upper-arm-length       sleeveoutseam, shoulderelbowlength
// trunk-girth                        verticaltrunkcircumferenceusa
// stature, back-neck-height          stature, cervicaleheight
// waist-to-hip-height                waistheightomphalion - buttockheight, plumb, at least 100
//
// Estimates, for what the survey did not take (our own; means of the 1988 survey, DTIC ADA225094,
// where they are named):
// scye-depth                         1.065 (cervicaleheight - axillaheight): over the surface; the
//                                    1988 means are 185.7 for the depth and 174.4 for the heights
// shoulder-drop                      neck side (12 mm below the cervicale: 1988 means 1396.5 and
//                                    1408.0) - acromialheight, kept between 8 and 34 degrees of the
//                                    shoulder's length: both heights are taken over soft parts
// across-front-width                 across-back-width - 15, as the draft estimates it
// bust-point-width                   0.2 bust girth, as the draft estimates it
// under-bust-girth                   0.849 bust girth: 1988 means 769.7 and 907.1
// neck-shoulder-point-to-bust-point  slant of (neck side - chestheight) plumb, 0.62 chestdepth
//                                    forward and the way from neck to bust point across: 0.62 gives
//                                    the 1988 mean of 268.0 from the other 1988 means
// front-waist-length                 back-waist-length, the neck's rise over the nape as the draft
//                                    draws it, and a sixth of bust less under-bust
// clang-format on

#include <string>
#include <string_view>
#include <vector>

#include "api/bodies/survey.h"
#include "engine/pattern/wearer.h"

namespace pinwright::api {

/// The columns that are read.
const std::vector<std::string_view>& survey_columns();

/// REQUIRES: the row has every column of survey_columns().
Measurements measurements_of(const SurveyRow& row);

/// Every row as a wearer, numbered by its place ("body-1"), out of the text of a file called
/// `name`. Problems: those of read_survey, and "measurement-range" with the line as place.
Result<std::vector<Wearer>> read_bodies(std::string_view text, std::string_view name);

/// The comparison above as lines to print: measurement, from what.
struct MappingLine {
  std::string_view measurement;
  std::string_view from;
};
const std::vector<MappingLine>& mapping_lines();

}  // namespace pinwright::api
