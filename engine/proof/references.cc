#include "engine/proof/references.h"

#include <cmath>
#include <set>
#include <string>

#include "engine/pattern/measurement.h"
#include "engine/pattern/sides.h"
#include "engine/pattern/size_range.h"

namespace pinwright {
namespace {

constexpr double kMostEaseMm = 150.0;

class ReferenceChecker {
 public:
  explicit ReferenceChecker(const Block& block) : block_(block) {}

  Problems run() {
    ids(block_.pieces, "/pieces/");
    ids(block_.seams, "/seams/");
    ids(block_.joins, "/joins/");
    ids(block_.bindings, "/bindings/");
    if (block_.pieces.empty())
      add("piece-missing", "/pieces", "the block has no piece", "add its pieces");
    seams();
    joins();
    bindings();
    linings();
    sewn();
    numbers();
    sides();
    return std::move(problems_);
  }

 private:
  void add(const char* code, const std::string& place, const std::string& what,
           const std::string& mend) {
    problems_.push_back({code, place, what, mend});
  }

  template <class Items>
  void ids(const Items& items, const char* where) {
    std::set<std::string> seen;
    for (std::size_t i = 0; i < items.size(); ++i)
      if (!seen.insert(items[i].id).second)
        add("id-twice", where + std::to_string(i) + "/id", "'" + items[i].id + "' stands twice",
            "give each its own id");
  }

  const Edge* edge(const std::string& piece, const std::string& id) const {
    const Piece* p = find_piece(block_, piece);
    return p == nullptr ? nullptr : find_edge(*p, id);
  }

  void run_parts(const std::vector<RunPart>& run, const std::string& place) {
    if (run.empty())
      add("reference-unknown", place, "a run of no edges can not be sewn",
          "name the edges of this run");
    for (std::size_t i = 0; i < run.size(); ++i) {
      if (edge(run[i].piece, run[i].edge) != nullptr) continue;
      add("reference-unknown", place + "/" + std::to_string(i),
          "there is no edge '" + run[i].edge + "' on a piece '" + run[i].piece + "'",
          "name a piece and one of its edges");
    }
  }

  bool on_run(const std::vector<RunPart>& run, const std::string& notch) const {
    for (const RunPart& part : run) {
      const Piece* p = find_piece(block_, part.piece);
      const Notch* n = p == nullptr ? nullptr : find_notch(*p, notch);
      if (n != nullptr && n->edge == part.edge) return true;
    }
    return false;
  }

  void seams() {
    for (std::size_t i = 0; i < block_.seams.size(); ++i) {
      const Seam& s = block_.seams[i];
      const std::string place = "/seams/" + std::to_string(i);
      run_parts(s.a, place + "/a");
      run_parts(s.b, place + "/b");
      if (s.sections.empty() || !s.sections.back().notch_a.empty() ||
          !s.sections.back().notch_b.empty()) {
        add("seam-sections", place + "/sections",
            "the last section of the seam '" + s.id + "' does not run to the end",
            "end with a section without notches");
      }
      for (std::size_t k = 0; k < s.sections.size(); ++k) {
        const SeamSection& section = s.sections[k];
        const std::string at = place + "/sections/" + std::to_string(k);
        if (!(std::abs(section.ease_mm) <= kMostEaseMm))
          add("ease-range", at + "/ease_mm", "the ease of this section is out of range",
              "give -150 to 150 mm");
        const bool last = k + 1 == s.sections.size();
        if (last) continue;
        if (!on_run(s.a, section.notch_a))
          add("reference-unknown", at + "/notch_a",
              "run a of '" + s.id + "' has no notch '" + section.notch_a + "'",
              "name a notch on this run");
        if (!on_run(s.b, section.notch_b))
          add("reference-unknown", at + "/notch_b",
              "run b of '" + s.id + "' has no notch '" + section.notch_b + "'",
              "name a notch on this run");
      }
    }
  }

  void joins() {
    for (std::size_t i = 0; i < block_.joins.size(); ++i) {
      const Join& j = block_.joins[i];
      const std::string place = "/joins/" + std::to_string(i);
      if (j.corners.empty())
        add("reference-unknown", place + "/corners", "the join '" + j.id + "' has no corner",
            "name its corners");
      if (!std::isfinite(j.target_rad))
        add("not-finite", place + "/target_rad", "the join '" + j.id + "' has no target angle",
            "give radians");
      for (std::size_t k = 0; k < j.corners.size(); ++k) {
        const CornerRef& c = j.corners[k];
        const Piece* p = find_piece(block_, c.piece);
        const std::size_t before = p == nullptr ? kNowhere : edge_index(*p, c.before);
        const std::size_t after = p == nullptr ? kNowhere : edge_index(*p, c.after);
        if (before != kNowhere && after != kNowhere && (before + 1) % p->edges.size() == after)
          continue;
        add("reference-unknown", place + "/corners/" + std::to_string(k),
            "on '" + c.piece + "' no corner lies between '" + c.before + "' and '" + c.after + "'",
            "name two edges that follow each other");
      }
    }
  }

  void bindings() {
    for (std::size_t i = 0; i < block_.bindings.size(); ++i) {
      const Binding& b = block_.bindings[i];
      const std::string place = "/bindings/" + std::to_string(i);
      run_parts(b.opening, place + "/opening");
      const Piece* strip = find_piece(block_, b.piece);
      if (strip == nullptr || edge_of_role(*strip, EdgeRole::opening) == nullptr)
        add("reference-unknown", place + "/piece",
            "the binding '" + b.id + "' has no strip with an edge of role opening",
            "name the strip's piece");
      if (!(b.ratio >= 0.5 && b.ratio <= 1.2))
        add("ratio-range", place + "/ratio", "the ratio of '" + b.id + "' is out of range",
            "give 0.5 to 1.2, e.g. 0.9");
      if (b.copies < 1 || b.copies > 2)
        add("ratio-range", place + "/copies", "the garment has one or two of each run",
            "give 1 or 2");
    }
  }

  void linings() {
    for (std::size_t i = 0; i < block_.linings.size(); ++i) {
      const Lining& l = block_.linings[i];
      if (find_piece(block_, l.piece) == nullptr || find_piece(block_, l.shell) == nullptr ||
          l.piece == l.shell)
        add("reference-unknown", "/linings/" + std::to_string(i),
            "the lining '" + l.piece + "' of '" + l.shell + "' names a piece that is not there",
            "name two pieces of the block");
    }
  }

  // Edges that must be sewn to something.
  void sewn() {
    std::set<std::pair<std::string, std::string>> in_seam;
    for (const Seam& s : block_.seams)
      for (const auto* run : {&s.a, &s.b})
        for (const RunPart& part : *run) in_seam.insert({part.piece, part.edge});
    std::set<std::string> lining;
    for (const Lining& l : block_.linings) lining.insert(l.piece);
    bool sleeved = false;
    for (const Piece& p : block_.pieces)
      sleeved = sleeved || edge_of_role(p, EdgeRole::cap) != nullptr;
    for (std::size_t p = 0; p < block_.pieces.size(); ++p) {
      const Piece& piece = block_.pieces[p];
      if (lining.contains(piece.id)) continue;
      for (std::size_t e = 0; e < piece.edges.size(); ++e) {
        const EdgeRole role = piece.edges[e].role;
        const bool must = role == EdgeRole::shoulder || role == EdgeRole::side ||
                          role == EdgeRole::cap || role == EdgeRole::underarm ||
                          (role == EdgeRole::armhole && sleeved);
        if (must && !in_seam.contains({piece.id, piece.edges[e].id})) {
          add("seam-missing", "/pieces/" + std::to_string(p) + "/edges/" + std::to_string(e),
              "the " + piece.edges[e].id + " of the " + piece.id + " is sewn to nothing",
              "add the seam that joins it to its mate");
        }
      }
    }
  }

  void numbers() {
    const Fabric& f = block_.fabric;
    const auto share = [&](double v, const char* where, double most) {
      if (!(v >= 0.0 && v <= most))
        add("fabric-range", std::string("/fabric/") + where, "this share is out of range",
            "give a fraction: 0.25 is 25 %");
    };
    share(f.stretch_across, "stretch_across", 3.0);
    share(f.stretch_along, "stretch_along", 3.0);
    share(f.recovery, "recovery", 1.0);
    const Problems body = check_measurements(block_.drafted_for.body, "/drafted_for/body");
    problems_.insert(problems_.end(), body.begin(), body.end());
    for (const auto& [id, value] : block_.ease)
      if (!(std::abs(value) <= 400.0))
        add("ease-range", "/ease/" + id, "an ease of this size can not be meant",
            "give -400 to 400 mm");
  }

  // A block whose left and right differ is two halves, each sound by itself.
  void sides() {
    if (!problems_.empty() || !is_opened(block_)) return;
    for (const Side side : {Side::left, Side::right}) {
      const Result<Block> half = half_block(block_, side);
      const Problems found = half ? reference_problems(*half) : half.problems();
      for (const Problem& p : found)
        add("sides-mixed", p.place, std::string(to_text(side)) + " side: " + p.what, p.mend);
    }
    if (!problems_.empty()) return;
    const Problems differ =
        topology_differences(*half_block(block_, Side::left), *half_block(block_, Side::right));
    for (const Problem& p : differ) add("sides-mixed", p.place, p.what, p.mend);
  }

  const Block& block_;
  Problems problems_;
};

}  // namespace

Problems reference_problems(const Block& block) { return ReferenceChecker(block).run(); }

}  // namespace pinwright
