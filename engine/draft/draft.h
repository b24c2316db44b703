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

// Both drafts: the pieces in rings that run counter-clockwise, fold at x = 0, hem or waist at the
// bottom; seams, joins and notches complete; `ease` of the block says what the garment really has,
// so that measures(block) = body + ease within 0.5 mm for every measure that names a body
// measurement. Usual ease, with sources: ease.h. Where the arm is too large for the armhole the
// underarm points are lowered: arm_room.h. A first sketch is drawn by proportions, which are our
// own; what must hold (lengths, widths, angles: statement.h) is then stated to the constraint
// solver, which moves the sketch's control points: front and back together, then the sleeve to
// their armholes. Laid out and not solved: the shoulder along its slope, the open shoulder dart
// (turns about a point), the lowered underarm (one number, by bisection). Deterministic. Errors:
// those of check_measurements (place "/wearer/body/..."), "measurement-missing", "ease-unknown",
// "ease-range", "fabric-stretch" and "draft-impossible", which says what contradicts what.
//
// Optional measurements, and what stands in for a missing one (our own estimates):
//   shoulder-drop                      shoulder-length x sin 20.5 degrees
//   knit top only:
//   across-front-width                 across-back-width - 15
//   bust-point-width                   0.2 x bust-girth
//   neck-shoulder-point-to-bust-point  125 + 0.155 x bust-girth
//   under-bust-girth, front-waist-length: how much longer the front is over the bust (else 9 mm)
//   waist-to-hip-height                hip-depth, else 200
//   upper-arm-length                   0.57 x arm-length, else 330

/// Half front and half back on the fold down to the hip (at least 130 mm below the waist), short
/// sleeve without cap ease, neck
/// binding 0.9 of the opening; no darts. The front's side is 6 to 12 mm longer than the back's and
/// is eased in between bust-notch-lower and bust-notch-upper. The neckline is as long as the neck
/// base plus 90 mm, or as the head needs to pass its stretched binding. Needs a knit fabric with
/// its stretch. The binding is turned over the raw edge of the neckline (whose allowance fills it)
/// to the inside: cut twice as wide as it finishes.
Result<Block> draft_knit_top(const DraftInput& input);
/// Half front with bust dart in the side and waist dart, half back with shoulder and waist dart,
/// both to the waist; long straight set-in sleeve with 25 mm of cap ease (11 front, 14 back, none
/// below the notches) whose hem passes the hand. Darts end 25 mm short of the bust point and 15 mm
/// short of the shoulder blade point.
Result<Block> draft_woven_bodice(const DraftInput& input);

/// By kind name "knit-top" or "woven-bodice"; "draft-kind-unknown" otherwise.
Result<Block> draft(std::string_view kind, const DraftInput& input);
std::span<const std::string_view> required_measurements(std::string_view kind);

}  // namespace pinwright
