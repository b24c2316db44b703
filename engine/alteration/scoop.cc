// Hollow or fill a curve at one place.
//
//        P                  the armhole (at its notch) or the neckline (half way) goes in by a,
//         \  a              square to the curve, running out to nothing at both ends; the ends and
//     p' <-- p              their angles stay. The sleeve, the strip and the lining follow.
//         `-.__U
//
// Steps: common practice. Inverse: the negative amount, which fills.
#include <algorithm>
#include <cmath>
#include <numbers>

#include "engine/alteration/operations.h"
#include "engine/geometry/arc_length.h"
#include "engine/geometry/fairing.h"

namespace pinwright {
namespace {

// Where along the edge the change is greatest, as a share of its length.
double place_of(const Piece& piece, const Edge& edge) {
  if (edge.role != EdgeRole::armhole) return 0.5;
  for (const Notch& n : piece.notches)
    if (n.edge == edge.id) return std::clamp(n.at_mm / length(edge.curve), 0.35, 0.5);
  return 0.42;
}

// 0 at both ends of the edge, 1 at the place, level at all three.
double bump(double share, double place) {
  const double u = share <= place ? share / place : (1.0 - share) / (1.0 - place);
  return 0.5 * (1.0 - std::cos(std::numbers::pi * std::clamp(u, 0.0, 1.0)));
}

void dent(Curve& curve, double place, Vec2 by) {
  const Curve old = curve;
  const double total = length(old);
  double walked = 0.0;
  for (std::size_t s = 0; s < old.segments(); ++s) {
    const double part = length(old.segment(s));
    for (std::size_t k = 1; k <= 3 && 3 * s + k + 1 < curve.points.size(); ++k) {
      const double share = (walked + part * static_cast<double>(k) / 3.0) / total;
      curve.points[3 * s + k] += bump(share, place) * by;
    }
    walked += part;
  }
}

}  // namespace

Result<Done> scoop_edge(Edit& edit, DistanceMm amount, const std::string& piece_id,
                        const std::string& edge_name) {
  const std::size_t at = piece_index(edit.block, piece_id);
  const auto body = at == kNowhere ? std::nullopt : bodice_anatomy(edit.block.pieces[at]);
  if (!body)
    return not_here("this block has no " + piece_id + " with a neckline and an armhole",
                    "name a piece of the block");
  Piece& piece = edit.piece(at);
  const std::size_t e = edge_name == "armhole" ? body->armhole : body->neckline;
  const Curve curve = piece.edges[e].curve;
  const double total = length(curve);
  const double place = place_of(piece, piece.edges[e]);
  const Vec2 p = point_at(curve, place * total);
  const Vec2 inward = left_normal(tangent_at(curve, place * total));  // the ring runs with the
                                                                      // cloth on its left
  const Vec2 to = p + amount.mm() * inward;
  if (edge_name == "neckline" && std::abs(inward.x) < 0.5)
    return not_here("the neckline of the " + piece_id + " is too shallow to be hollowed half way",
                    "lower it at the centre instead");
  if (std::abs(amount.mm()) > 0.12 * total)
    return too_large("the " + edge_name + " is only " + mm_text(total) + " long",
                     "take a smaller amount");
  if (edge_name == "neckline" && amount.mm() < 0.0) {
    // Filled, the round line gets flatter and would dent: it is drawn through the new place.
    const Result<Curve> through =
        fair_through({curve.start(), to, curve.end()}, start_tangent(curve), end_tangent(curve));
    if (through) {
      const Result<Curve> fitted =
          refit(*through, curve.segments(), start_tangent(curve), end_tangent(curve));
      if (fitted) piece.edges[e].curve = *fitted;
    }
  } else {
    dent(piece.edges[e].curve, place, amount.mm() * inward);
  }
  edit.widths.push_back(
      {"the " + edge_name + " of the " + piece_id + " goes in by the amount", {at, e}, to.y, to.x});
  edit.note.pieces.push_back(piece_id);
  edit.note.text = piece.name + ": " + edge_name + (amount.mm() > 0 ? " hollowed " : " filled ") +
                   mm_text(amount.mm());
  return Done{};
}

}  // namespace pinwright
