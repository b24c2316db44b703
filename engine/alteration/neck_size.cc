// Make the whole neckline larger or smaller.
//
//      C          N  N'      every point of the neckline goes out from the neck by the same a,
//      square C' .     .' .'        to the line, on front and back alike: C down the centre, N out
//      along the
//         ` `''  .'          shoulder.
//           ` ` '            The shoulder gets shorter by a, armhole and the rest stay; the strip
//                            follows (a quarter circle gains pi/2 times a).
//
// Common practice: mark the true line at the neck base and redraw parallel; cut 1/8 to 1/4 in at a
// time. Inverse: the negative amount.
#include <vector>

#include "engine/alteration/operations.h"
#include "engine/alteration/upper_body.h"
#include "engine/geometry/arc_length.h"
#include "engine/geometry/fairing.h"

namespace pinwright {
namespace {

constexpr int kOffsetPoints = 33;

// The neckline moved into the cloth by a (it runs with the cloth to its left): points beside it,
// evenly spaced, the ends where the corners go, and a curve of as many segments fitted to them that
// leaves both ends in the old directions.
Result<Curve> beside(const Curve& curve, double a, Vec2 start, Vec2 end) {
  std::vector<Vec2> points = {start};
  const double whole = length(curve);
  for (int i = 1; i + 1 < kOffsetPoints; ++i) {
    const double s = whole * i / (kOffsetPoints - 1);
    points.push_back(point_at(curve, s) + a * left_normal(tangent_at(curve, s)));
  }
  points.push_back(end);
  const Result<Curve> fair = fair_through(points, start_tangent(curve), end_tangent(curve));
  if (!fair) return fair.problems();
  return refit(*fair, curve.segments(), start_tangent(curve), end_tangent(curve));
}

}  // namespace

Result<Done> resize_neckline(Edit& edit, DistanceMm amount) {
  const Result<Bodice> found = bodice(edit);
  if (!found) return found.problems();
  const double a = amount.mm();
  const std::pair<std::size_t, const BodiceAnatomy*> halves[] = {{found->front, &found->front_at},
                                                                 {found->back, &found->back_at}};
  for (const auto& [at, body] : halves) {
    Piece& piece = edit.piece(at);
    const Edge& shoulder = piece.edges[body->shoulder.back()];
    Edge& neckline = piece.edges[body->neckline];
    const double half_width = neckline.curve.start().x;
    if (a > 0.6 * length(shoulder.curve) || a > 0.5 * length(piece.edges[body->centre].curve)) {
      return too_large("the " + piece.id + " has not so much to give at the neck",
                       "take a smaller amount");
    }
    if (-a > 0.5 * half_width)
      return too_large("the neckline of the " + piece.id + " is only " + mm_text(half_width) +
                           " wide on the half pattern",
                       "take a smaller amount");
    const Affine out = translation(-a * end_tangent(shoulder.curve));
    const Affine down = translation({0.0, -a});
    const Result<Curve> moved = beside(neckline.curve, a, apply(out, neckline.curve.start()),
                                       apply(down, neckline.curve.end()));
    if (!moved) {
      return too_large("the neckline of the " + piece.id + " cannot be redrawn so far in",
                       "take a smaller amount");
    }
    neckline.curve = *moved;
    edit.drawn.insert({at, body->neckline});
    CornerMotions motions = still(piece);
    motions[body->neck_corner] = out;
    motions[body->centre_corner] = down;
    move_corners(edit, at, motions);
    edit.note.pieces.push_back(piece.id);
  }
  edit.note.text = std::string("front and back: whole neckline ") +
                   (a > 0 ? "enlarged " : "made smaller ") + mm_text(a) + " all round";
  return Done{};
}

}  // namespace pinwright
