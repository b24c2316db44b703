#pragma once
// The operations by name: what each takes, so that knowledge and requests can be checked before
// anything is touched.

#include <span>
#include <string_view>
#include <vector>

#include "engine/alteration/step.h"
#include "engine/base/result.h"

namespace pinwright {

enum class AmountKind {
  half,      ///< on the half pattern (one front, one armhole); a whole amount is halved
  whole,     ///< of one piece drawn whole (a sleeve's girth); "whole" means all of that piece
  distance,  ///< up, down or along an edge; never divided
  ratio,     ///< a plain number
  none,      ///< the step is not cut but sewn, pressed or chosen; no amount, or a length to note
};

struct OptionInfo {
  std::string_view key;
  std::vector<std::string_view> values;  ///< allowed; the first is the default
  bool required = false;
};

struct OperationInfo {
  std::string_view id;    ///< kebab-case, the trade's words
  std::string_view name;  ///< one sentence head: "Close a wedge"
  std::string_view does;  ///< what happens to which piece, which pieces follow
  AmountKind amount = AmountKind::half;
  std::string_view positive;  ///< what a positive amount does ("closes"); negative does the reverse
  double least = 0.0;         ///< smallest |amount| worth making, mm (3 mm: common practice 1/8 in)
  double most = 0.0;          ///< largest |amount| before another way is better; least and most
                              ///< are the range of a ratio
  std::vector<OptionInfo> options;
};

/// In a fixed order:
///  close-wedge          half      piece=front|back edge=neckline|armhole
///  hinge=bust-point|shoulder-blade-point|armhole|hem
///                                 (close a wedge that opens at the edge; at the bust point the
///                                 bust dart, or in a dartless knit the eased side length, takes it
///                                 up; hinged at the armhole only the neckline and the shoulder
///                                 turn)
///  lower-neckline       distance  piece=front|back   (negative raises)
///  widen-neckline       distance  (at the neck point along the shoulder, front and back alike)
///  swing-shoulder       distance  armhole=follows|stays (lower the shoulder tip; negative raises;
///  the
///                                 armhole base moves by the same when it follows)
///  shift-shoulder-seam  distance  from=tip|whole (front tip down, back tip up by the same; the
///                                 crown goes with it; negative backward)
///  shorten-chest        distance  (centre front above the bust; negative lengthens)
///  lengthen-upper-back  distance  surplus=taken-up|eased (centre back across the blades; negative
///                                 shortens)
///  raise-back-neck      distance  (at the centre; negative lowers)
///  move-armhole-forward distance  (front scooped, back filled; negative backward)
///  widen-back, widen-chest  half  way=armhole|whole (across; negative narrows)
///  deepen-blade-dart    half      hinge=armhole|waist (shoulder dart's intake, or shoulder ease)
///  tuck-back-waist      distance  (centre back, to nothing at the side; negative lets out)
///  resize-neckline      distance  (parallel, front and back; negative makes smaller)
///  move-neck-forward    distance  (front down, back up by the same; negative backward)
///  move-shoulder-tip    distance  (shorten the shoulder at the tip; negative lengthens; armhole
///  recut) lower-underarm       distance  (front, back and sleeve; negative raises) let-out-side
///  half      level=all|bust|waist|hem (half the amount on the front's, half on
///                                 the back's side edge; the sleeve follows; negative takes in)
///  full-bust            half      takes-up=as-drawn|new-dart (spread the half front by so much at
///  the bust point, negative
///                                 overlaps; the bust dart or the eased side length takes it up)
///  lengthen-over-bust   distance  (more length over the bust; the dart or the side ease takes it
///  up) lengthen             distance  piece=body|sleeve (parallel, at the piece's line; negative
///  shortens) widen-upper-arm      whole     (spread the sleeve at the upper arm; the cap keeps its
///  length) set-binding-ratio    ratio     (strip : opening) sew                  none      (a
///  change in sewing, pressing or cutting out; no line moves) choose               none (another
///  size or another cloth; no line moves)
std::span<const OperationInfo> operation_catalogue();
const OperationInfo* find_operation(std::string_view id);

/// Everything wrong with a step before any block is known: "operation-unknown" (nearest offered),
/// "option-unknown", "option-value", "option-missing", "amount-not-a-number", "amount-range"
/// (|amount| over four times `most`, or under 0.0001 mm where an amount is needed). place = prefix
/// + "/...".
Problems check_step(const Step& step, std::string_view prefix);

}  // namespace pinwright
