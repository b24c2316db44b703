#pragma once
// The raw cutting line before its loops are cleaned; used by offset.cc alone.

#include <vector>

#include "engine/geometry/offset.h"

namespace pinwright {

/// A closed polyline; line i runs from points[i] to points[i + 1].
struct RawLine {
  std::vector<Vec2> points;
  std::vector<std::size_t> edge_of;
  std::vector<bool> parallel;
};

/// A stretch of an edge without corners, and its points moved outward by the edge's allowance.
struct Run {
  std::size_t edge = 0;
  double allowance = 0.0;
  AllowanceKind kind = AllowanceKind::plain;
  Vec2 start, end;          ///< on the stitching line
  Vec2 start_dir, end_dir;  ///< unit tangents there
  std::vector<Vec2> moved;  ///< at least two points
};

/// Runs of a closed counter-clockwise ring, in order. Edges are parted at their inner corners of
/// more than 1e-3 radians. Between neighbouring points the true offset lies within
/// kFlatnessMm / 2 of the chord.
std::vector<Run> offset_runs(const std::vector<OffsetEdge>& ring);

/// The runs joined: mitred, trimmed, stepped, or folded back. May cross itself where an allowance
/// is wider than a concave curve is round, or where two parts come near to each other; every point
/// that belongs to the cut piece then has a positive winding number or lies in a hole.
RawLine joined_runs(const std::vector<Run>& runs);

}  // namespace pinwright
