// Let out or take in the side seam.
//
//        U  U'      level all:   U and S both go out by e
//        |   \      level bust:  all from the bust level upward goes out, running out to S
//        |    |     level hem:   S goes out, running out to U (in a bodice that ends at the waist:
//        S-----S'                level waist)
//                   level waist, side longer than to the waist: there only, running out both ways
//
// e is half of the amount on the half pattern, on the front's side edge and on the back's alike.
// Where U moves, the sleeve's underarm corners go out by the same. The side seams keep their
// length, but for level waist in a longer body: there they stay equal to each other. Inverse: the
// negative amount.
#include <algorithm>
#include <cmath>
#include <numbers>
#include <optional>

#include "engine/alteration/operations.h"
#include "engine/geometry/arc_length.h"
#include "engine/geometry/intersect.h"

namespace pinwright {
namespace {

enum class Level { all, bust, waist_inside, foot };

struct SideChange {
  Level level = Level::all;
  double out = 0.0;  ///< e, mm
};

std::optional<double> mark_height(const Piece& piece, std::string_view id) {
  const Landmark* mark = find_landmark(piece, id);
  if (mark == nullptr) return {};
  return mark->at.y;
}

// The height from which upward the bust level counts: the dart's mouth, else the bust mark; a
// straight side without a dart has only its ends.
double bust_height(const Piece& piece, const BodiceAnatomy& body) {
  const double top = piece.edges[body.underarm_corner].curve.end().y;
  if (body.side.size() > 1) return piece.edges[body.side.front()].curve.end().y;
  if (piece.edges[body.side.front()].straight) return top;
  const auto front = mark_height(piece, "bust-point");
  const auto back = mark_height(piece, "bust-level");
  return std::min(front.value_or(back.value_or(top)), top);
}

// Share of e at a height.
double share_at(const Piece& piece, const BodiceAnatomy& body, Level level, double y) {
  const double low = piece.edges[body.side_corner].curve.end().y;
  const double high = piece.edges[body.underarm_corner].curve.end().y;
  const auto ramp = [&](double from, double to) {
    return std::clamp((y - from) / (to - from), 0.0, 1.0);
  };
  switch (level) {
    case Level::all:
      return 1.0;
    case Level::bust:
      return ramp(low, bust_height(piece, body));
    case Level::foot:
      return 1.0 - ramp(low, high);
    case Level::waist_inside: {
      const double waist = mark_height(piece, "waist-level").value_or(0.5 * (low + high));
      const double u = y < waist ? ramp(low, waist) : 1.0 - ramp(waist, high);
      return u * u * (3.0 - 2.0 * u);
    }
  }
  return 0.0;
}

// Where the curved side must pass at the level that was asked for.
void hold_width(Edit& edit, std::size_t at, const BodiceAnatomy& body, const SideChange& change) {
  const Piece& old = edit.before.pieces[at];
  const Edge& side = old.edges[body.side.front()];
  if (body.side.size() > 1 || side.straight) return;
  std::optional<double> level;
  if (change.level == Level::bust) level = bust_height(old, body);
  if (change.level == Level::waist_inside) level = mark_height(old, "waist-level");
  if (!level) return;
  const std::vector<CurvePlace> places = at_height(side.curve, *level);
  if (places.size() != 1 || *level > side.curve.end().y - 1.0) return;
  edit.widths.push_back({"the side of the " + old.id + " goes out by the amount",
                         {at, body.side.front()},
                         *level,
                         point(side.curve, places.front()).x + change.out});
}

Result<Done> change_half(Edit& edit, std::size_t at, const BodiceAnatomy& body,
                         const SideChange& change) {
  Piece& piece = edit.piece(at);
  const Piece& old = edit.before.pieces[at];
  const double width = old.edges[body.side_corner].curve.end().x;
  if (-change.out > 0.4 * width) {
    return too_large("the " + piece.id + " is only " + mm_text(width) + " wide",
                     "take a smaller amount");
  }
  const auto out_at = [&](double y) { return change.out * share_at(old, body, change.level, y); };
  // Curved sides: each handle by its own height.
  for (const std::size_t s : body.side) {
    if (old.edges[s].straight) {
      if (change.level == Level::waist_inside)
        return not_here("the side seam is a straight line", "use level all, bust or hem");
      continue;
    }
    std::vector<Vec2>& points = piece.edges[s].curve.points;
    for (std::size_t i = 1; i + 1 < points.size(); ++i) points[i].x += out_at(points[i].y);
    edit.drawn.insert({at, s});
  }
  // Corners from S to U; a dart's point stays behind its mouth (it is trued).
  CornerMotions motions = still(piece);
  for (std::size_t i = body.side_corner;; i = next_in(piece, i)) {
    const double by = out_at(old.edges[i].curve.end().y);
    const bool dart_point = std::any_of(old.darts.begin(), old.darts.end(), [&](const Dart& d) {
      return edge_index(old, d.leg_in) == i;
    });
    if (!dart_point && by != 0.0) motions[i] = translation({by, 0.0});
    if (i == body.underarm_corner) break;
  }
  move_corners(edit, at, motions);
  hold_width(edit, at, body, change);
  // Inside the side both ends stay, so that a deeper curve is a longer one: front and back alike.
  if (change.level == Level::all || change.level == Level::waist_inside) return Done{};
  // A side in two parts, over a dart, follows its mate's length as a whole.
  if (body.side.size() == 1)
    edit.wanted_length[{at, body.side.front()}] = length(old.edges[body.side.front()].curve);
  // A slanted side that keeps its length and swings out ends a little higher or lower.
  const std::size_t gives = change.level == Level::foot ? body.side_corner : body.underarm_corner;
  edit.free_corners.push_back({{at, gives}, {false, true}});
  return Done{};
}

}  // namespace

Result<Done> let_out_side(Edit& edit, HalfMm amount, const std::string& level) {
  const Result<Bodice> found = bodice(edit);
  if (!found) return found.problems();
  const Piece& front = edit.before.pieces[found->front];
  const bool to_waist = front.edges[next_in(front, found->front_at.centre)].role == EdgeRole::waist;
  if (level == "hem" && to_waist)
    return not_here("this bodice ends at the waist", "use level waist");
  SideChange change{Level::all, amount.mm() / 2.0};
  if (level == "bust") change.level = Level::bust;
  if (level == "hem" || (level == "waist" && to_waist)) change.level = Level::foot;
  if (level == "waist" && !to_waist) change.level = Level::waist_inside;

  const std::pair<std::size_t, const BodiceAnatomy*> halves[] = {{found->front, &found->front_at},
                                                                 {found->back, &found->back_at}};
  for (const auto& [at, body] : halves) {
    const Result<Done> done = change_half(edit, at, *body, change);
    if (!done) return done;
    edit.note.pieces.push_back(edit.block.pieces[at].id);
  }
  const std::size_t sleeve = sleeve_index(edit.block);
  if ((change.level == Level::all || change.level == Level::bust) && sleeve != kNowhere) {
    widen_sleeve_underarm(edit, sleeve, change.out, change.out);
    edit.note.pieces.push_back(edit.block.pieces[sleeve].id);
  }
  edit.note.text = std::string("front and back: side seam ") +
                   (change.out > 0 ? "let out " : "taken in ") + mm_text(change.out) +
                   " on each edge (" + mm_text(amount.mm()) + " on the half pattern, " +
                   whole_text(edit, amount) + "), level: " + level;
  return Done{};
}

}  // namespace pinwright
