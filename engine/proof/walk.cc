#include "engine/proof/walk.h"

#include <cmath>

#include "engine/base/units.h"
#include "engine/geometry/arc_length.h"
#include "engine/geometry/tolerance.h"

namespace pinwright {
namespace {

const Curve& curve_of(const Block& block, const RunPart& part) {
  return find_edge(*find_piece(block, part.piece), part.edge)->curve;
}

double run_length(const Block& block, const std::vector<RunPart>& run) {
  double sum = 0.0;
  for (const RunPart& part : run) sum += length(curve_of(block, part));
  return sum;
}

// Length of the run up to a notch; to its end when the id is empty.
double along(const Block& block, const std::vector<RunPart>& run, const std::string& notch) {
  double walked = 0.0;
  for (const RunPart& part : run) {
    const Piece& piece = *find_piece(block, part.piece);
    const double len = length(curve_of(block, part));
    const Notch* n = notch.empty() ? nullptr : find_notch(piece, notch);
    if (n != nullptr && n->edge == part.edge)
      return walked + (part.reversed ? len - n->at_mm : n->at_mm);
    walked += len;
  }
  return walked;
}

}  // namespace

SeamProof walk_seam(const Block& block, const Seam& seam) {
  SeamProof proof;
  proof.seam = seam.id;
  proof.name = seam.name;
  proof.a_mm = run_length(block, seam.a);
  proof.b_mm = run_length(block, seam.b);
  proof.ok = true;
  double a_before = 0.0;
  double b_before = 0.0;
  for (const SeamSection& section : seam.sections) {
    SectionProof s;
    const bool to_end = section.notch_a.empty();
    s.upto = to_end ? "end" : section.notch_a + " / " + section.notch_b;
    const double a = along(block, seam.a, section.notch_a);
    const double b = along(block, seam.b, section.notch_b);
    s.a_mm = a - a_before;
    s.b_mm = b - b_before;
    s.ease_wanted = section.ease_mm;
    s.ease_found = s.a_mm - s.b_mm;
    proof.ease_wanted += section.ease_mm;
    s.notch_offset_mm = to_end ? 0.0 : a - b - proof.ease_wanted;
    s.ok = s.a_mm >= 0.0 && s.b_mm >= 0.0 && std::abs(s.ease_found - s.ease_wanted) <= kSeamMm &&
           std::abs(s.notch_offset_mm) <= kSeamMm;
    proof.ok = proof.ok && s.ok;
    a_before = a;
    b_before = b;
    proof.sections.push_back(std::move(s));
  }
  proof.ease_found = proof.a_mm - proof.b_mm;
  proof.ok = proof.ok && std::abs(proof.ease_found - proof.ease_wanted) <= kSeamMm;
  return proof;
}

BindingProof walk_binding(const Block& block, const Binding& binding) {
  BindingProof proof;
  proof.binding = binding.id;
  proof.opening_mm = binding.copies * run_length(block, binding.opening);
  proof.strip_mm =
      length(edge_of_role(*find_piece(block, binding.piece), EdgeRole::opening)->curve);
  proof.ratio_wanted = binding.ratio;
  proof.ratio_found = proof.strip_mm / proof.opening_mm;
  proof.ok = std::abs(proof.strip_mm - binding.ratio * proof.opening_mm) <= kSeamMm;
  return proof;
}

JoinProof check_join(const Block& block, const Join& join) {
  JoinProof proof;
  proof.join = join.id;
  proof.name = join.name;
  double sum = -join.target_rad;
  for (const CornerRef& c : join.corners) {
    const Piece& piece = *find_piece(block, c.piece);
    sum += corner_angle(piece, edge_index(piece, c.before));
  }
  proof.deviation_deg = degrees(sum);
  proof.ok = std::abs(proof.deviation_deg) <= kJoinDegrees;
  return proof;
}

}  // namespace pinwright
