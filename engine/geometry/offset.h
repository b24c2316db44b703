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
/// parallel to (for drawing and for measuring the allowance).
struct CutLine {
  std::vector<Vec2> points;
  std::vector<std::size_t> edge_of;
};

/// REQUIRES of ring: closed, counter-clockwise, not crossing itself. Mitres longer than four
/// allowances are cut off square. Loops that a wide allowance makes on a tight concave curve are
/// removed with a library (GEOS). Errors: "allowance-range" (negative, not finite, or over 200 mm),
/// "outline-open", "outline-crosses", "offset-failed" (nothing left).
Result<CutLine> offset_outline(const std::vector<OffsetEdge>& ring);

}  // namespace pinwright
