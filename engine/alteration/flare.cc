// Flare the hem.
//
//      |  waist          from the waist down the side goes out, more the nearer to the hem (as the
//       )                square of the way), e on the front's and e on the back's edge; the waist
//      |  `              and all above stays. e is half of the amount on the half pattern.
//      H---S -- S'
//
// The side seams keep their length; the hem is squared to them again. Steps: common practice.
// Inverse: the negative amount (peg).
#include <algorithm>
#include <cmath>

#include "engine/alteration/operations.h"
#include "engine/geometry/arc_length.h"
#include "engine/geometry/intersect.h"

namespace pinwright {
namespace {

// Every point below the level goes out by the square of its share of the way down, the foot by
// `by`.
Curve flared(const Curve& side, double level, Vec2 by) {
  Curve curve = side;
  for (Vec2& p : curve.points) {
    const double u = std::clamp((level - p.y) / (level - side.start().y), 0.0, 1.0);
    p += u * u * by;
  }
  return curve;
}

void hold_width(Edit& edit, EdgeAt side, const char* level_name, double level) {
  const Piece& old = edit.before.pieces[side.piece];
  const Curve& curve = old.edges[side.edge].curve;
  const std::vector<CurvePlace> places = at_height(curve, level);
  if (places.size() != 1) return;
  edit.widths.push_back({"the " + old.id + " keeps its width at the " + level_name, side, level,
                         point(curve, places.front()).x});
}

Result<Done> flare_half(Edit& edit, std::size_t at, const BodiceAnatomy& body, double out) {
  Piece& piece = edit.piece(at);
  const Landmark* waist = find_landmark(piece, "waist-level");
  const Vec2 foot = piece.edges[body.side_corner].curve.end();
  const std::size_t side = body.side.front();
  if (waist == nullptr || piece.edges[next_in(piece, body.centre)].role != EdgeRole::hem ||
      waist->at.y < foot.y + 40.0 || piece.edges[side].straight)
    return not_here("the " + piece.id + " has no curved side below the waist to flare",
                    "widen the hem of a top that runs past the waist");
  if (-out > 0.3 * foot.x)
    return too_large("the hem is only " + mm_text(2.0 * foot.x) + " wide on the half pattern",
                     "take a smaller amount");
  const Curve old = piece.edges[side].curve;
  // The foot rises by as much as keeps the seam's length.
  double rise = 0.0;
  Curve made = flared(old, waist->at.y, {out, rise});
  for (int i = 0; i < 20; ++i) {
    const double longer = length(made) - length(old);
    if (std::abs(longer) < 1e-9) break;
    rise += longer;
    made = flared(old, waist->at.y, {out, rise});
  }
  piece.edges[side].curve = made;
  edit.drawn.insert({at, side});
  CornerMotions motions = still(piece);
  motions[body.side_corner] = translation({out, rise});
  move_corners(edit, at, motions);
  const std::size_t hem = next_in(piece, body.centre);
  if (hem == body.side_corner)
    edit.wanted_length[{at, hem}] = length(edit.before.pieces[at].edges[hem].curve) + out;
  hold_width(edit, {at, side}, "waist", waist->at.y);
  const Landmark* bust = find_landmark(piece, "bust-point");
  if (bust == nullptr) bust = find_landmark(piece, "bust-level");
  if (bust != nullptr) hold_width(edit, {at, side}, "bust", bust->at.y);
  if (body.side.size() == 1) edit.wanted_length[{at, side}] = length(old);
  edit.free_corners.push_back({{at, body.side_corner}, {true, true}});
  edit.note.pieces.push_back(piece.id);
  return Done{};
}

}  // namespace

Result<Done> flare_hem(Edit& edit, HalfMm amount) {
  const Result<Bodice> found = bodice(edit);
  if (!found) return found.problems();
  const double out = 0.5 * amount.mm();
  for (const auto& [at, body] :
       {std::pair{found->front, &found->front_at}, std::pair{found->back, &found->back_at}}) {
    const Result<Done> done = flare_half(edit, at, *body, out);
    if (!done) return done;
  }
  edit.note.text = std::string("front and back: hem ") + (out > 0 ? "flared " : "pegged ") +
                   mm_text(out) + " on each side edge (" + whole_text(edit, amount) +
                   "), from the waist down";
  return Done{};
}

}  // namespace pinwright
