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

// clang-format off
/// The operations, one a line: id, what its amount counts, options (the first value is the default).
/// What each does, which pieces follow and how far it goes stands in the entry itself; its picture
/// and its inverse on top of its file. A negative amount does the reverse.
///
///  close-wedge           half      piece=front|back edge=neckline|armhole hinge=bust-point|shoulder-blade-point|armhole|hem
///  lower-neckline        distance  piece=front|back
///  widen-neckline        distance
///  resize-neckline       distance
///  move-neck-forward     distance
///  raise-back-neck       distance
///  swing-shoulder        distance  armhole=follows|stays
///  move-shoulder-tip     distance
///  shift-shoulder-seam   distance  from=tip|whole
///  shorten-chest         distance
///  lengthen-upper-back   distance  surplus=taken-up|eased
///  move-armhole-forward  distance
///  widen-back            half      way=armhole|whole
///  widen-chest           half      way=armhole|whole
///  deepen-blade-dart     half      hinge=armhole|waist
///  tuck-back-waist       distance
///  lower-underarm        distance
///  let-out-side          half      level=all|bust|waist|hem
///  full-bust             half      takes-up=as-drawn|new-dart
///  lengthen-over-bust    distance
///  lengthen              distance  piece=body|sleeve
///  widen-upper-arm       whole
///  raise-cap             distance  gives=upper-arm|ease
///  ease-cap              whole
///  turn-sleeve           distance  underarm=follows|stays
///  widen-sleeve-hem      whole
///  ease-elbow            distance
///  flare-hem             half
///  scoop-edge            distance  piece=front|back edge=armhole|neckline
///  let-out-dart          half      piece=front|back
///  move-bust-point       distance  direction=up-down|sideways
///  rotate-dart           ratio     piece=front|back from and to=side|shoulder|waist
///  divide-dart           distance  piece=front|back seam=side|shoulder|waist
///  ease-dart             distance  piece=front|back seam=side|shoulder
///  lengthen-dart         distance  piece=front|back seam=side|shoulder|waist
///  set-binding-ratio     ratio     binding cloth=as-is|shell|rib
///  sew, choose           none      (sewing, pressing, cutting out; another size or cloth: no line moves)
// clang-format on
std::span<const OperationInfo> operation_catalogue();
const OperationInfo* find_operation(std::string_view id);

/// Everything wrong with a step before any block is known: "operation-unknown" (nearest offered),
/// "option-unknown", "option-value", "option-missing", "amount-not-a-number", "amount-range"
/// (|amount| over four times `most`, or under 0.0001 mm where an amount is needed). place = prefix
/// + "/...".
Problems check_step(const Step& step, std::string_view prefix);

}  // namespace pinwright
