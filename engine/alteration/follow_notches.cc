// Part 3 of restore(): notches stay with the cloth, and meet.
#include <cmath>

#include "engine/alteration/follow.h"
#include "engine/geometry/arc_length.h"
#include "engine/geometry/nearest.h"

namespace pinwright {
namespace {

constexpr double kSamePlaceMm = 1e-9;

struct RunPlace {
  EdgeAt edge{kNowhere, kNowhere};
  std::size_t notch = kNowhere;
  double edge_start = 0.0;  // length of the run before this part
  double edge_length = 0.0;
  bool reversed = false;
};

// `edges` are those of the run's parts.
RunPlace find_on_run(const Block& block, const std::vector<RunPart>& run,
                     const std::vector<EdgeAt>& edges, const std::string& id) {
  double walked = 0.0;
  for (std::size_t i = 0; i < run.size(); ++i) {
    const EdgeAt at = edges[i];
    const Piece& piece = block.pieces[at.piece];
    const double len = length(piece.edges[at.edge].curve);
    const std::size_t n = notch_index(piece, id);
    if (n != kNowhere && piece.notches[n].edge == run[i].edge)
      return {at, n, walked, len, run[i].reversed};
    walked += len;
  }
  return {};
}

double along_run(const Block& block, const RunPlace& p) {
  const double at = block.pieces[p.edge.piece].notches[p.notch].at_mm;
  return p.edge_start + (p.reversed ? p.edge_length - at : at);
}

// Sets the notch to the place `along` mm from the run's start, if it is not there already.
bool set_along(Block& block, const RunPlace& p, double along) {
  const double in_part = along - p.edge_start;
  const double at = p.reversed ? p.edge_length - in_part : in_part;
  if (!(at >= 0.0 && at <= p.edge_length)) return false;
  double& place = block.pieces[p.edge.piece].notches[p.notch].at_mm;
  if (std::abs(place - at) > kSamePlaceMm) place = at;
  return true;
}

void carry_notches(Edit& edit, const std::set<EdgeAt>& changed) {
  for (const EdgeAt at : changed) {
    const Piece& old = edit.before.pieces[at.piece];
    Piece& piece = edit.block.pieces[at.piece];
    const Curve& from = old.edges[at.edge].curve;
    const Curve& to = piece.edges[at.edge].curve;
    for (Notch& notch : piece.notches) {
      if (notch.edge != piece.edges[at.edge].id) continue;
      const CurvePlace place = place_at(from, notch.at_mm);
      const auto wish = edit.notch_to.find({at.piece, notch.id});
      if (wish != edit.notch_to.end()) {
        notch.at_mm = length_to(to, nearest(to, wish->second).at);
      } else {
        notch.at_mm = length_to(to, place);  // the same place of the curve, which went with it
      }
    }
  }
}

}  // namespace

Result<Done> follow_notches(Edit& edit) {
  const std::set<EdgeAt> changed = changed_edges(edit);
  carry_notches(edit, changed);
  Block& block = edit.block;
  for (const SeamAt& at : edit.standing.seams()) {
    const Seam& seam = block.seams[at.seam];
    double ease = 0.0;
    for (const SeamSection& section : seam.sections) {
      ease += section.ease_mm;
      if (section.notch_a.empty()) continue;
      const RunPlace a = find_on_run(block, seam.a, at.a, section.notch_a);
      const RunPlace b = find_on_run(block, seam.b, at.b, section.notch_b);
      if (a.notch == kNowhere || b.notch == kNowhere) continue;
      const bool met = std::abs(along_run(block, a) - along_run(block, b) - ease) <= kSamePlaceMm;
      const bool touched = changed.contains(a.edge) || changed.contains(b.edge);
      if (met || (!touched && seam == edit.before.seams[at.seam])) continue;
      if (!set_along(block, a, along_run(block, b) + ease)) {
        return Problem{"no-solution", seam.name,
                       "the notches " + section.notch_a + " and " + section.notch_b +
                           " can no longer meet on this seam",
                       "take a smaller amount"};
      }
    }
  }
  return Done{};
}

}  // namespace pinwright
