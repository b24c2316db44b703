#include "engine/proof/proof.h"

#include <cmath>
#include <cstdio>
#include <utility>

#include "engine/constraint/limits.h"
#include "engine/pattern/sides.h"
#include "engine/proof/moved.h"
#include "engine/proof/outline.h"
#include "engine/proof/references.h"
#include "engine/proof/walk.h"

namespace pinwright {
namespace {

std::string number(const char* format, double value) {
  char text[48];
  std::snprintf(text, sizeof text, format, value);
  return text;
}

void judge_seam(const SeamProof& s, Problems& failures) {
  for (const SectionProof& section : s.sections) {
    if (section.ok) continue;
    failures.push_back({"seam-unequal", "seam " + s.seam + ", up to " + section.upto,
                        "ease found " + number("%.2f mm", section.ease_found) + ", wanted " +
                            number("%.2f mm", section.ease_wanted) + ", notch off by " +
                            number("%.2f mm", section.notch_offset_mm),
                        "redraw the longer edge, or move the notch"});
  }
}

std::vector<MeasureProof> measure_proof(const Block& after, const Block* before,
                                        const Measurements& body) {
  std::vector<MeasureProof> all;
  const std::vector<GarmentMeasure> now = measures(after);
  const std::vector<GarmentMeasure> was = before != nullptr ? measures(*before) : now;
  for (const GarmentMeasure& m : now) {
    MeasureProof p{m.id, m.name, m.kind, m.value, m.value, {}};
    if (const GarmentMeasure* old = find_measure(was, m.id)) p.before = old->value;
    if (m.body) {
      const auto measured = body.find(*m.body);
      const auto ease = after.ease.find(*m.body);
      if (measured != body.end() && ease != after.ease.end())
        p.target = measured->second + ease->second;
    }
    all.push_back(std::move(p));
  }
  return all;
}

// Before, with its pieces opened where they are opened after, and closed where they are closed, so
// that limits can be told piece by piece.
Block with_parts_of(const Block& before, const Block& after) {
  if (is_opened(after)) return opened_like(before, after);
  const Result<Block> half = half_block(before, Side::left);
  return half ? *half : before;
}

std::vector<Limit> limits_before(const Block& before, const Block& after,
                                 const Measurements& body) {
  if (!is_opened(before) && !is_opened(after))
    return limits_of(before, body, before.fabric, Words::no);
  return limits_of(with_parts_of(before, after), body, before.fabric, Words::no);
}

void prove_limits(const Block& after, const Block* before, const Measurements& body, Proof& proof) {
  std::vector<Limit> were;
  if (before != nullptr) were = limits_before(*before, after, body);
  std::vector<Limit> now = limits_of(after, body, after.fabric);
  for (const Limit& l : now) {
    proof.limits.push_back({std::string(l.id), l.name, l.quantity, l.sense == Sense::at_most,
                            l.bound, l.found, l.holds()});
  }
  for (const Limit& l : newly_broken(were, std::move(now))) {
    proof.failures.push_back({"limit", l.quantity,
                              "it is " + number("%.0f mm", l.found) + ", against the limit that " +
                                  l.name + " (" + number("%.0f mm", l.bound) + ")",
                              l.relax});
  }
}

}  // namespace

Problems check_block(const Block& block) {
  Problems problems;
  for (std::size_t i = 0; i < block.pieces.size(); ++i) {
    const Problems found = outline_problems(block.pieces[i], "/pieces/" + std::to_string(i));
    problems.insert(problems.end(), found.begin(), found.end());
  }
  const Problems found = reference_problems(block);
  problems.insert(problems.end(), found.begin(), found.end());
  return problems;
}

Proof prove(const Block& after, const Block* before, const Measurements* body) {
  Proof proof;
  for (std::size_t i = 0; i < after.pieces.size(); ++i) {
    OutlineProof o;
    o.piece = after.pieces[i].id;
    o.problems = outline_problems(after.pieces[i], "/pieces/" + std::to_string(i));
    o.ok = o.problems.empty();
    proof.failures.insert(proof.failures.end(), o.problems.begin(), o.problems.end());
    proof.outlines.push_back(std::move(o));
  }
  const Problems references = reference_problems(after);
  proof.failures.insert(proof.failures.end(), references.begin(), references.end());
  if (!proof.failures.empty()) return proof;  // nothing further can be walked

  for (const Seam& seam : after.seams) {
    proof.seams.push_back(walk_seam(after, seam));
    judge_seam(proof.seams.back(), proof.failures);
  }
  for (const Binding& binding : after.bindings) {
    const BindingProof b = walk_binding(after, binding);
    if (!b.ok) {
      proof.failures.push_back({"binding-unequal", "binding " + b.binding,
                                "the strip is " + number("%.2f mm", b.strip_mm) + ", " +
                                    number("%.3f", b.ratio_wanted) + " x opening would be " +
                                    number("%.2f mm", b.ratio_wanted * b.opening_mm),
                                "cut the strip to that length"});
    }
    proof.bindings.push_back(b);
  }
  for (const Join& join : after.joins) {
    const JoinProof j = check_join(after, join);
    if (!j.ok) {
      proof.failures.push_back({"join-kinked", "join " + j.join,
                                j.name + " bends by " + number("%.2f degrees", j.deviation_deg),
                                "redraw the curves so that the line runs on"});
    }
    proof.joins.push_back(j);
  }
  if (before != nullptr) proof.moved = moved_edges(*before, after);
  const Measurements& on = body != nullptr ? *body : after.drafted_for.body;
  prove_limits(after, before, on, proof);
  proof.measures = measure_proof(after, before, on);
  proof.pass = proof.failures.empty();
  return proof;
}

}  // namespace pinwright
