#pragma once
// What is sewn to what: seams with ease, joins that must run on smoothly, bindings, linings.

#include <string>
#include <vector>

namespace pinwright {

/// One edge of a seam's run. `reversed`: walked from the edge's end to its start.
struct RunPart {
  std::string piece;
  std::string edge;
  bool reversed = false;
  bool operator==(const RunPart&) const = default;
};

/// A stretch of a seam, from the end of the one before (or the start of the run) to a pair of
/// notches that meet, or to the end of the run when both ids are empty.
struct SeamSection {
  std::string notch_a;  ///< id of a notch on a part of run a; empty: the end of the run
  std::string notch_b;
  double ease_mm = 0.0;  ///< wanted length of a minus length of b in this section
  bool operator==(const SeamSection&) const = default;
};

/// Run a is the one that may carry ease (cap, front side over the bust, back shoulder).
/// Both runs are walked in the same direction when sewn.
struct Seam {
  std::string id;    ///< kebab-case: shoulder, side, armhole-front, armhole-back, underarm
  std::string name;  ///< as a fitter says it
  std::vector<RunPart> a;
  std::vector<RunPart> b;
  std::vector<SeamSection> sections;  ///< at least one; the last one has empty notches
  bool operator==(const Seam&) const = default;
};

/// Sum of the ease that a seam states, mm.
inline double stated_ease(const Seam& seam) {
  double sum = 0.0;
  for (const SeamSection& s : seam.sections) sum += s.ease_mm;
  return sum;
}

/// The corner of a piece where edge `before` ends and edge `after` starts.
struct CornerRef {
  std::string piece;
  std::string before;
  std::string after;
  bool operator==(const CornerRef&) const = default;
};

/// A line that runs on over a seam or a fold without a kink: the interior angles at the corners
/// that meet sum to `target_rad` (pi over a seam; pi / 2 at a fold, whose mirror image gives pi).
struct Join {
  std::string id;  ///< neckline-over-shoulder, armhole-over-shoulder, hem-over-side, ...
  std::string name;
  std::vector<CornerRef> corners;
  double target_rad = 0.0;
  bool operator==(const Join&) const = default;
};

/// A strip whose long edge (length = ratio x opening on the stitching line) is sewn to an opening
/// while stretched. The opening's runs are those of the drawn (half) pieces; the garment has
/// `copies` of each, so that whole opening = copies x sum of runs.
struct Binding {
  std::string id;     ///< neck-binding
  std::string piece;  ///< the strip: a rectangle with edges opening, join-end, folded, join-start
  std::vector<RunPart> opening;
  int copies = 2;
  double ratio = 1.0;  ///< strip : opening, both on the stitching line, without allowances
  double finished_width_mm = 0.0;
  bool operator==(const Binding&) const = default;
};

/// A lining piece whose edges with the same ids follow those of its shell bit for bit.
struct Lining {
  std::string piece;
  std::string shell;
  bool operator==(const Lining&) const = default;
};

}  // namespace pinwright
