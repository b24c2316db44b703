#pragma once
// The cutting line of a piece with its darts still open.

#include <optional>
#include <vector>

#include "engine/base/result.h"
#include "engine/pattern/piece.h"

namespace pinwright::api {

/// How the stitching line crosses the mouth of a dart so that the dart, folded and pressed, is
/// caught in the seam: from the mouth's first point to the peak on the dart's middle line, and on
/// to the mouth's second point. The half next to the side that the dart is pressed to is that
/// side's edge mirrored at the leg; the other half is its mirror image at the middle line (common
/// practice: fold the dart on paper, trace the seam through all layers, unfold).
///
/// ::
///                 | A
///          _ . - '+.
///   P o -' - - - -  > peak     P: point of the dart; A, B: the ends of its mouth
///        ` - . _ +'
///                | B
///
/// Pressed to the lower side when the mouth lies in a side seam or armhole, else to the centre
/// (smaller x): common practice for bust darts, and for waist and shoulder darts.
struct DartCap {
  std::size_t dart = 0;  ///< index into piece.darts
  Curve to_peak;         ///< from the end of the edge before the dart
  Curve from_peak;       ///< to the start of the edge after the dart
  Vec2 point;            ///< of the dart
  bool bridged = false;  ///< no such peak exists: both halves lie on the line over the mouth
};

/// One for each dart whose legs are consecutive edges, in the order of piece.darts.
std::vector<DartCap> dart_caps(const Piece& piece);

struct CuttingLine {
  std::vector<Vec2> points;  ///< closed, counter-clockwise, the piece's coordinates
  /// Edge of the piece that the line from points[i] to points[i + 1] belongs to; kNowhere over the
  /// mouth of a dart.
  std::vector<std::size_t> edge_of;
};

/// offset_outline of the edges by their allowances, with the caps over the darts' mouths (each with
/// the wider of the allowances beside it). Errors: those of offset_outline.
Result<CuttingLine> cutting_line(const Piece& piece, const std::vector<DartCap>& caps);

}  // namespace pinwright::api
