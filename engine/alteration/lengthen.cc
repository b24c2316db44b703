// Lengthen or shorten on a line.
//
//      |        |         the piece is cut across on its line and what lies below goes down by d:
//      |--------|  line   the same on front and back, so that the side seams stay equal
//      :   d    :
//      |--------|
//      H--------S        (the sleeve's straight seams run on along their own lines)
//
// Inverse: the negative amount.
#include <algorithm>

#include "engine/alteration/operations.h"
#include "engine/geometry/arc_length.h"
#include "engine/geometry/intersect.h"

namespace pinwright {
namespace {

const Line* line_of(const Piece& piece, std::string_view id) {
  for (const Line& l : piece.lengthen_lines)
    if (l.id == id) return &l;
  return nullptr;
}

// Where the height of a place on an edge goes: below the line down by d, above it nothing moves;
// but where so much is folded out that points from below come to lie over the line, what is above
// makes room for them in proportion.
class Heights {
 public:
  Heights(const Curve& curve, double level, double d) : level_(level), d_(d), floor_(level) {
    for (const Vec2 p : curve.points) {
      if (p.y < level) floor_ = std::max(floor_, p.y - d);
      top_ = std::max(top_, p.y);
    }
  }
  double at(double y) const {
    if (y < level_) return y - d_;
    if (floor_ <= level_ || top_ <= floor_) return y;
    return floor_ + (y - level_) / (top_ - level_) * (top_ - floor_);
  }

 private:
  double level_;
  double d_;
  double floor_;
  double top_ = -1e9;
};

void shift_below(Edit& edit, EdgeAt at, const Heights& heights) {
  std::vector<Vec2>& points = edit.block.pieces[at.piece].edges[at.edge].curve.points;
  for (std::size_t i = 1; i + 1 < points.size(); ++i) points[i].y = heights.at(points[i].y);
  edit.drawn.insert(at);
}

// A waist above the line keeps its width.
void hold_waist(Edit& edit, EdgeAt at, double level) {
  const Piece& old = edit.before.pieces[at.piece];
  const Landmark* waist = find_landmark(old, "waist-level");
  if (waist == nullptr || waist->at.y <= level) return;
  const Curve& curve = old.edges[at.edge].curve;
  const std::vector<CurvePlace> places = at_height(curve, waist->at.y);
  if (places.size() != 1) return;
  edit.widths.push_back({"the " + old.id + " keeps its width at the waist", at, waist->at.y,
                         point(curve, places.front()).x});
}

Result<Done> lengthen_piece(Edit& edit, std::size_t at, std::string_view line_id, double d) {
  Piece& piece = edit.piece(at);
  const Line* line = line_of(piece, line_id);
  if (line == nullptr) {
    return not_here(
        "the " + piece.id + " has no line '" + std::string(line_id) + "' to lengthen at",
        "mark the line on the piece");
  }
  const double level = line->from.y;
  const Affine down = translation({0.0, -d});
  CornerMotions motions = still(piece);
  double highest_below = level - 1e9;
  for (std::size_t i = 0; i < piece.edges.size(); ++i) {
    const double y = piece.edges[i].curve.end().y;
    if (y >= level) continue;
    motions[i] = down;
    highest_below = std::max(highest_below, y);
  }
  const double room = level - highest_below;
  if (-d > 0.8 * room) {
    return too_large("there are only " + mm_text(room) + " of the " + piece.id + " below its line",
                     "take a smaller amount");
  }
  for (std::size_t i = 0; i < piece.edges.size(); ++i) {
    const Edge& edge = piece.edges[i];
    const bool crosses = motions[i].has_value() != motions[before_in(piece, i)].has_value();
    if (!crosses || (edge.role != EdgeRole::side && edge.role != EdgeRole::underarm)) continue;
    if (!edge.straight) {
      edit.wanted_length[{at, i}] = length(edge.curve) + d;
      shift_below(edit, {at, i}, Heights(edge.curve, level, d));
      hold_waist(edit, {at, i}, level);
    } else if (edge.role == EdgeRole::underarm) {
      // The sleeve's seam runs on along its own line, so that the cap stays.
      edit.wanted_length[{at, i}] = length(edge.curve) + d;
      const bool end_is_lower = motions[i].has_value();
      const Vec2 outward = end_is_lower ? end_tangent(edge.curve) : -start_tangent(edge.curve);
      motions[end_is_lower ? i : before_in(piece, i)] = translation(d * outward);
    }
  }
  // As they lay before any point was shifted.
  const Piece& was = edit.before.pieces[at];
  for (const Notch& n : was.notches) {
    const Edge* edge = find_edge(was, n.edge);
    if (edge == nullptr) continue;
    const Vec2 p = point_at(edge->curve, n.at_mm);
    edit.notch_to[{at, n.id}] = {p.x, Heights(edge->curve, level, d).at(p.y)};
  }
  const Piece old = piece;
  move_corners(edit, at, motions);
  for (std::size_t i = 0; i < piece.landmarks.size(); ++i)
    if (piece.landmarks[i].at == old.landmarks[i].at && old.landmarks[i].at.y < level)
      piece.landmarks[i].at = apply(down, old.landmarks[i].at);
  edit.note.pieces.push_back(piece.id);
  return Done{};
}

}  // namespace

Result<Done> lengthen(Edit& edit, DistanceMm amount, const std::string& piece) {
  const double d = amount.mm();
  const std::string how =
      std::string(d > 0 ? "lengthened " : "shortened ") + mm_text(d) + " on the line";
  if (piece == "sleeve") {
    const std::size_t at = sleeve_index(edit.block);
    if (at == kNowhere) return not_here("this block has no sleeve", "leave the step out");
    edit.note.text = edit.block.pieces[at].name + ": " + how;
    return lengthen_piece(edit, at, "sleeve", d);
  }
  const Result<Bodice> found = bodice(edit);
  if (!found) return found.problems();
  edit.note.text = "front and back: " + how;
  for (const std::size_t at : {found->front, found->back}) {
    const Result<Done> done = lengthen_piece(edit, at, "body", d);
    if (!done) return done;
  }
  return Done{};
}

}  // namespace pinwright
