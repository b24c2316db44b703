// Move the bust point: a high or low bust, or one closer or wider set.
//
//      |    ___|         up by d: mark and bust dart go up together, as if a box round the dart
//      were | B'<___|         cut out and set in higher; the seam above gets shorter and the one
//      below | B <   |         longer by the same. The waist dart's point goes with it. An eased
//      side moves |       |         its bust notches, on front and back alike. |   /\  | wider by d
//      (negative: closer): the mark and every dart's point go to the H--'  `-S         side; a
//      waist dart goes over whole.
// A bust notch does not come nearer to the underarm than 10 mm: there the eased part gets shorter.
//
// Steps: common practice. Inverse: the negative amount.
#include <algorithm>
#include <map>
#include <optional>

#include "engine/alteration/dart_topology.h"
#include "engine/alteration/edit.h"
#include "engine/alteration/operations.h"
#include "engine/geometry/arc_length.h"
#include "engine/geometry/fairing.h"

namespace pinwright {
namespace {

constexpr double kLeastPartMm = 10.0;

Curve redraw_hollow(const Curve& target, std::size_t segments) {
  const Result<Curve> line = refit(target, segments, start_tangent(target), end_tangent(target));
  return line ? *line : target;
}

// The dart that follows in the ring, toward the same mark.
std::optional<DartPlace> next_dart(const Piece& piece, const DartPlace& dart) {
  std::optional<DartPlace> next;
  for (std::size_t i = 0; i < piece.darts.size(); ++i) {
    if (piece.darts[i].toward != piece.darts[dart.dart].toward) continue;
    const DartPlace d = place_of_dart(piece, dart.piece, i);
    if (ring_order(piece, d.in) <= ring_order(piece, dart.in)) continue;
    if (!next || ring_order(piece, d.in) < ring_order(piece, next->in)) next = d;
  }
  return next;
}

// Slides a dart's mouth by d along its seam as sewn, its point by `by`: what the one edge gains the
// other loses. Cloth that turns by the dart's angle about another point lies elsewhere, by `over`:
// from a waist dart on the panel up to the next dart goes there, which that dart takes up.
void slide(Edit& edit, const DartPlace& dart, double d, Vec2 by, CornerMotions& motions) {
  const Piece& old = edit.before.pieces[dart.piece];
  Piece& piece = edit.piece(dart.piece);
  const Curve before = piece.edges[dart.before].curve;
  const Curve after = piece.edges[dart.after].curve;
  const Vec2 point = piece.edges[dart.in].curve.end();
  const double angle = turn(before.end() - point, after.start() - point);
  const auto [first, second] =
      split(sewn_line(piece, dart), place_at(sewn_line(piece, dart), length(before) + d));
  Curve back = apply(rotation_about(point, angle), second);
  back.points.back() = after.end();
  const auto next = next_dart(piece, dart);
  if (next && piece.edges[dart.before].role == EdgeRole::waist) {
    const Vec2 over = by - apply(rotation_about({}, angle), by);
    for (Vec2& p : back.points) p += over;
    if (dart.after != next->before)
      set_from_to(piece, motions, dart.after, next->before, translation(over));
    // What is drawn here has its far end moved by its own motion.
    back.points.back() = after.end();
  }
  // The mouth is set square to the line from its middle to the new point, so that the legs are
  // equal.
  const Vec2 middle = lerp(first.end(), back.start(), 0.5);
  const Vec2 across = left_normal(unit(point + by - middle));
  const double half = 0.5 * distance(first.end(), back.start());
  const Vec2 half_mouth = (dot(across, back.start() - middle) > 0.0 ? half : -half) * across;
  motions[dart.before] = translation(middle - half_mouth - old.edges[dart.before].curve.end());
  motions[dart.out] = translation(middle + half_mouth - old.edges[dart.after].curve.start());
  motions[dart.in] = translation(by);
  const auto draw = [&](std::size_t edge, const Curve& line) {
    if (piece.edges[edge].straight) return;
    piece.edges[edge].curve = redraw_hollow(line, piece.edges[edge].curve.segments());
    edit.drawn.insert({dart.piece, edge});
  };
  draw(dart.before, first);
  draw(dart.after, back);
}

// The bust notches of an eased side, up by d on both of its pieces.
Result<Done> slide_notches(Edit& edit, double up) {
  for (Piece& piece : edit.block.pieces) {
    for (const char* id : {"bust-notch-lower", "bust-notch-upper"}) {
      const std::size_t n = notch_index(piece, id);
      if (n == kNowhere) continue;
      const double room = length(find_edge(piece, piece.notches[n].edge)->curve);
      const std::size_t waist = notch_index(piece, "waist-notch");
      double& at = piece.notches[n].at_mm;
      at = std::min(at + up, std::max(room - kLeastPartMm, at));
      const bool under_waist = waist != kNowhere &&
                               piece.notches[waist].edge == piece.notches[n].edge &&
                               at < piece.notches[waist].at_mm + kLeastPartMm;
      if (at < kLeastPartMm || at > room - 1.0 || under_waist)
        return too_large("the bust notches would leave their place on the side seam",
                         "take a smaller amount");
    }
    const std::size_t lower = notch_index(piece, "bust-notch-lower");
    const std::size_t upper = notch_index(piece, "bust-notch-upper");
    if (lower != kNowhere && upper != kNowhere &&
        piece.notches[upper].at_mm - piece.notches[lower].at_mm < kLeastPartMm)
      return too_large("no length would be left to ease in below the underarm",
                       "take a smaller amount");
  }
  return Done{};
}

}  // namespace

Result<Done> move_bust_point(Edit& edit, DistanceMm amount, bool sideways) {
  const std::size_t at = piece_index(edit.block, "front");
  if (at == kNowhere) return not_here("this block has no front", "choose a block with a front");
  Piece& piece = edit.piece(at);
  const std::size_t mark = landmark_index(piece, "bust-point");
  if (mark == kNowhere || !bodice_anatomy(piece))
    return not_here("the front lacks a bust point or one of its edges",
                    "mark the bust point on the front");
  const double d = amount.mm();
  const Vec2 by = sideways ? Vec2{d, 0.0} : Vec2{0.0, d};
  if (sideways && piece.landmarks[mark].at.x + d < kLeastPartMm)
    return too_large("the bust point would lie on the centre front", "take a smaller amount");
  CornerMotions motions = still(piece);
  std::vector<DartPlace> sliding;
  bool side_dart = false;
  for (std::size_t i = 0; i < piece.darts.size(); ++i) {
    if (piece.darts[i].toward != "bust-point") continue;
    const DartPlace dart = place_of_dart(piece, at, i);
    const EdgeRole role = piece.edges[dart.before].role;
    side_dart = side_dart || role == EdgeRole::side;
    const bool over = sideways ? role == EdgeRole::waist : role == EdgeRole::side;
    if (over)
      sliding.push_back(dart);
    else
      motions[dart.in] = translation(by);
  }
  // What each edge gains; a strip between two darts goes over whole.
  std::map<std::size_t, double> longer;
  for (const DartPlace& dart : sliding) longer[dart.before] += d, longer[dart.after] -= d;
  for (const auto& [edge, more] : longer) {
    const double wanted = length(piece.edges[edge].curve) + more;
    if (wanted < kLeastPartMm)
      return too_large("the " + piece.edges[edge].id + " has no room for the dart so far along",
                       "take a smaller amount");
    edit.wanted_length[{at, edge}] = wanted;
  }
  // A strip between two darts first grows at the end that the darts go to.
  std::sort(sliding.begin(), sliding.end(), [&](const DartPlace& a, const DartPlace& b) {
    return d > 0.0 ? ring_order(piece, a.in) > ring_order(piece, b.in)
                   : ring_order(piece, a.in) < ring_order(piece, b.in);
  });
  for (const DartPlace& dart : sliding) {
    const double before_mm = length(piece.edges[dart.before].curve);
    const double after_mm = length(piece.edges[dart.after].curve);
    if (before_mm + d < 1.0 || after_mm - d < 1.0)
      return too_large("there is no room for the dart so far along", "take a smaller amount");
    slide(edit, dart, d, by, motions);
  }
  piece.landmarks[mark].at += by;
  if (!sideways && !side_dart) {
    const Result<Done> slid = slide_notches(edit, d);
    if (!slid) return slid;
  }
  edit.note.pieces.push_back("front");
  edit.note.text = piece.name + ": bust point moved " + mm_text(d) +
                   (sideways ? (d > 0 ? " outward" : " inward") : (d > 0 ? " up" : " down")) +
                   ", its darts with it";
  move_corners(edit, at, motions);
  return Done{};
}

}  // namespace pinwright
