// Tuck the back at the waist.
//
//      |          U          a tuck of d at the centre back, at the waist, running out to nothing
//      at |          |          the side seam: what lies below turns about the side until it has
//      come up
//    d >----------s          by d at the centre; the centre back is drawn straight again on the
//    fold.
//      |          |          The side seam keeps every point. The lower edge rises by d at the
//      centre H----------S          on paper; on the body, whose back is shorter there by d, it
//      lies level.
//                            A bodice that ends at the waist: its lower edge turns about S and
//                            keeps its length, the waist dart with it.
//
// The amount is what was pinned at the centre back, the whole of it, never halved (fitting pages
// after Liechty, pp. 140-143; the simple tuck: common practice). Inverse: the negative amount.
#include <algorithm>
#include <cmath>

#include "engine/alteration/hollow.h"
#include "engine/alteration/operations.h"
#include "engine/alteration/upper_body.h"
#include "engine/geometry/arc_length.h"

namespace pinwright {

namespace {

// Where along the hem its end tangents may meet, as shares of the width from the side.
constexpr double kFlattest = 0.88;
constexpr double kSteepest = 0.12;

double slope_of(Vec2 direction) { return direction.y / direction.x; }

// How much of d a place at the share u of the width rises: all at the centre, where the line stays
// square to the fold, nothing at the side; with either bend the second derivative keeps its sign,
// so that a line that bends one way still does.
double rises(double u, double d) {
  const double end = d > 0.0 ? 1.5 : 2.0;  // minus the slope at the side
  return d * (1.0 - (3.0 - end) * u * u + (2.0 - end) * u * u * u);
}

// The lower edge of a bodice that ends at the waist, its dart's mouth with it.
void raise_waist(Edit& edit, const BodiceHalf& back, CornerMotions& motions, double d) {
  Piece& piece = edit.block.pieces[back.at];
  const double width = piece.edges[back.body.side_corner].curve.end().x;
  const auto rise_at = [&](Vec2 p) { return rises(p.x / width, d); };
  for (std::size_t i = next_in(piece, back.body.centre); i != back.body.side.front();
       i = next_in(piece, i)) {
    Edge& edge = piece.edges[i];
    if (edge.role != EdgeRole::waist) continue;
    edit.wanted_length[{back.at, i}] = length(edge.curve);
    for (const std::size_t corner : {before_in(piece, i), i}) {
      if (corner == back.body.hem_corner || corner == back.body.side_corner) continue;
      const Vec2 p = piece.edges[corner].curve.end();
      motions[corner] = translation({0.0, rise_at(p)});
    }
  }
  for (std::size_t i = 0; i < piece.edges.size(); ++i) {
    if (piece.edges[i].role != EdgeRole::waist) continue;
    std::vector<Vec2>& points = piece.edges[i].curve.points;
    for (std::size_t k = 1; k + 1 < points.size(); ++k) points[k].y += rise_at(points[k]);
    edit.drawn.insert({back.at, i});
  }
}

// The hem drawn anew from the square corner at the fold; at the side it keeps its direction where a
// line without a wiggle can have it.
void redraw_hem(Edit& edit, const BodiceHalf& back) {
  Piece& piece = edit.block.pieces[back.at];
  const Curve& was = edit.before.pieces[back.at].edges[next_in(piece, back.body.centre)].curve;
  Curve& hem = piece.edges[next_in(piece, back.body.centre)].curve;
  const double width = hem.end().x - hem.start().x;
  const double rise = (hem.end().y - hem.start().y) / width;
  const double kept = slope_of(end_tangent(was));
  const double slope = rise > 0.0 ? std::clamp(kept, rise / kFlattest, rise / kSteepest)
                                  : std::clamp(kept, rise / kSteepest, rise / kFlattest);
  const auto anew =
      redraw_hollow(was, {hem.start(), hem.end(), {1.0, 0.0}, {1.0, slope}, {}, {}, 0.0});
  if (anew) hem = *anew;
}

// Where the back's lower edge meets the side seam at another angle, the front's meets it so that
// the line still runs on.
void turn_front_to_match(Edit& edit, const BodiceHalf& back) {
  const Result<BodiceHalf> front = bodice_half(edit, "front");
  if (!front) return;
  const auto lower = [&](const BodiceHalf& half) {
    const Piece& piece = edit.block.pieces[half.at];
    return EdgeAt{half.at, before_in(piece, half.body.side.front())};
  };
  const EdgeAt of_back = lower(back);
  const EdgeAt of_front = lower(*front);
  const Vec2 was = end_tangent(edit.before.pieces[back.at].edges[of_back.edge].curve);
  const Vec2 is = end_tangent(edit.block.pieces[back.at].edges[of_back.edge].curve);
  const double by = turn(was, is);
  if (std::abs(by) < 1e-9) return;
  Curve& edge = edit.block.pieces[front->at].edges[of_front.edge].curve;
  const Vec2 end = apply(rotation_about({}, -by), end_tangent(edge));
  const auto anew =
      redraw_hollow(edge, {edge.start(), edge.end(), start_tangent(edge), end, {}, {}, 0.0});
  if (anew) edge = *anew;
}

}  // namespace

Result<Done> tuck_back_waist(Edit& edit, DistanceMm amount) {
  const Result<BodiceHalf> found = bodice_half(edit, "back");
  if (!found) return found.problems();
  const BodiceAnatomy& body = found->body;
  const Piece& piece = edit.block.pieces[found->at];
  const double d = amount.mm();
  const Vec2 foot = piece.edges[body.hem_corner].curve.end();
  const Vec2 side = piece.edges[body.side_corner].curve.end();
  const double room = length(piece.edges[body.centre].curve);
  const Landmark* waist = find_landmark(piece, "waist-level");
  const bool to_waist = piece.edges[next_in(piece, body.centre)].role == EdgeRole::waist;
  if (!to_waist && (waist == nullptr || waist->at.y - foot.y < std::max(d, 1.0))) {
    return not_here("the back does not reach below the waist by the tuck",
                    "mark the waist level on the back, or take a smaller amount");
  }
  if (d > 0.3 * room || std::abs(d) > 0.4 * (side.x - foot.x))
    return too_large("the back is only " + mm_text(room) + " long", "take a smaller amount");
  CornerMotions motions = still(piece);
  motions[body.hem_corner] = translation({0.0, d});
  if (to_waist) raise_waist(edit, *found, motions, d);
  edit.note.text = piece.name + ": " + (d > 0 ? "tucked " : "let out ") + mm_text(d) +
                   " at the centre back waist, running out to nothing at the side seam";
  edit.note.pieces.push_back(piece.id);
  move_corners(edit, found->at, motions);
  if (!to_waist) redraw_hem(edit, *found);
  turn_front_to_match(edit, *found);
  return Done{};
}

}  // namespace pinwright
