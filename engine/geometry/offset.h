#pragma once
// The cutting line from the stitching line: a closed outline moved outward, each edge by its own
// seam allowance, with mitred corners; hems folded back.

#include <vector>

#include "engine/base/result.h"
#include "engine/geometry/curve.h"

namespace pinwright {

enum class AllowanceKind {
  plain,  ///< parallel to the stitching line, mitred into its neighbours
  hem,    ///< folded back: its ends mirror the neighbouring edges about the fold (the edge itself),
          ///< so that the turned-up hem lies on the piece edge to edge
};

struct OffsetEdge {
  Curve curve;
  double allowance_mm = 0.0;  ///< >= 0; 0 keeps the edge (a fold, a bound edge)
  AllowanceKind kind = AllowanceKind::plain;
};

/// A closed polyline, counter-clockwise, last point not repeated; within kFlatnessMm of the true
/// offset. `edge_of[i]` is the index of the edge that the line from points[i] to points[i+1] is
/// parallel to (for drawing and for measuring the allowance). Where `parallel[i]` is false the line
/// only belongs to that edge and is not at its allowance: the turned-back end of a hem, a mitre cut
/// off square, a step between two allowances.
struct CutLine {
  std::vector<Vec2> points;
  std::vector<std::size_t> edge_of;
  std::vector<bool> parallel;
};

/// REQUIRES of ring: closed, counter-clockwise, not crossing itself.
/// Corners: neighbouring cutting lines are carried on, or cut back, to where they meet, whatever
/// the two allowances. A mitre longer than four times the wider allowance is cut off square; where
/// edges of different allowance run on smoothly the line steps across at the corner. Hems: at both
/// ends the neighbour's cutting line runs down to the fold (the tangent of the hem edge at the
/// corner), then its mirror image at the fold runs down to the hem's cutting line. Loops that a
/// wide allowance makes on a tight hollow curve, and allowances of two near parts that overlap, are
/// merged with a library (GEOS). The stitching line always lies inside or on the result. Errors:
/// "allowance-range" (negative, not finite, or over 200 mm), "outline-points" (an edge empty or not
/// finite), "outline-open", "outline-crosses", "outline-clockwise", "offset-failed" (nothing left).
Result<CutLine> offset_outline(const std::vector<OffsetEdge>& ring);

}  // namespace pinwright
