#include "engine/pattern/size_range.h"

#include <set>
#include <string>

namespace pinwright {
namespace {

class Comparison {
 public:
  /// Ids of two lists, in order; true when they are the same so that members can be compared.
  template <class List>
  bool same_ids(const List& a, const List& b, const std::string& place, const char* what) {
    bool same = a.size() == b.size();
    for (std::size_t i = 0; same && i < a.size(); ++i) same = a[i].id == b[i].id;
    if (!same) tell(place, std::string(what) + " differ: " + ids(a) + " against " + ids(b) + ".");
    return same;
  }

  void tell(const std::string& place, const std::string& what) {
    problems_.push_back({"topology-differs", place, what,
                         "Give every size the same parts, by the same ids and in the same order."});
  }

  Problems take() { return std::move(problems_); }

 private:
  template <class List>
  static std::string ids(const List& list) {
    std::string all;
    for (const auto& one : list) all += (all.empty() ? "" : ", ") + one.id;
    return all.empty() ? "none" : all;
  }

  Problems problems_;
};

bool same_run(const std::vector<RunPart>& a, const std::vector<RunPart>& b) { return a == b; }

bool same_sections(const std::vector<SeamSection>& a, const std::vector<SeamSection>& b) {
  if (a.size() != b.size()) return false;
  for (std::size_t i = 0; i < a.size(); ++i) {
    if (a[i].notch_a != b[i].notch_a || a[i].notch_b != b[i].notch_b) return false;
  }
  return true;
}

void compare_pieces(const Piece& a, const Piece& b, Comparison& found) {
  const std::string place = "piece " + a.id;
  if (found.same_ids(a.edges, b.edges, place, "Edges")) {
    for (std::size_t i = 0; i < a.edges.size(); ++i) {
      const Edge& p = a.edges[i];
      const Edge& q = b.edges[i];
      const std::string where = place + ", edge " + p.id;
      if (p.role != q.role) found.tell(where, "Roles differ.");
      if (p.straight != q.straight) found.tell(where, "One is straight and the other is not.");
      if (p.curve.segments() != q.curve.segments()) {
        found.tell(where, "Segments differ: " + std::to_string(p.curve.segments()) + " against " +
                              std::to_string(q.curve.segments()) + ".");
      }
    }
  }
  if (found.same_ids(a.notches, b.notches, place, "Notches")) {
    for (std::size_t i = 0; i < a.notches.size(); ++i) {
      if (a.notches[i].edge != b.notches[i].edge) {
        found.tell(place + ", notch " + a.notches[i].id, "The notch lies on another edge.");
      }
    }
  }
  if (found.same_ids(a.darts, b.darts, place, "Darts")) {
    for (std::size_t i = 0; i < a.darts.size(); ++i) {
      if (!(a.darts[i] == b.darts[i])) {
        found.tell(place + ", dart " + a.darts[i].id, "Legs or the point aimed at differ.");
      }
    }
  }
  found.same_ids(a.landmarks, b.landmarks, place, "Landmarks");
  found.same_ids(a.lengthen_lines, b.lengthen_lines, place, "Lengthening lines");
  if (a.fold != b.fold) found.tell(place, "The fold lies on different edges.");
}

}  // namespace

Problems topology_differences(const Block& a, const Block& b) {
  Comparison found;
  if (found.same_ids(a.pieces, b.pieces, "block " + b.id, "Pieces")) {
    for (std::size_t i = 0; i < a.pieces.size(); ++i) {
      compare_pieces(a.pieces[i], b.pieces[i], found);
    }
  }
  if (found.same_ids(a.seams, b.seams, "block " + b.id, "Seams")) {
    for (std::size_t i = 0; i < a.seams.size(); ++i) {
      const Seam& p = a.seams[i];
      const Seam& q = b.seams[i];
      if (!same_run(p.a, q.a) || !same_run(p.b, q.b)) {
        found.tell("seam " + p.id, "The seam joins different edges.");
      }
      if (!same_sections(p.sections, q.sections)) {
        found.tell("seam " + p.id, "The notches that meet differ.");
      }
    }
  }
  if (found.same_ids(a.joins, b.joins, "block " + b.id, "Joins")) {
    for (std::size_t i = 0; i < a.joins.size(); ++i) {
      if (a.joins[i].corners != b.joins[i].corners) {
        found.tell("join " + a.joins[i].id, "The join names different corners.");
      }
    }
  }
  if (found.same_ids(a.bindings, b.bindings, "block " + b.id, "Bindings")) {
    for (std::size_t i = 0; i < a.bindings.size(); ++i) {
      const Binding& p = a.bindings[i];
      const Binding& q = b.bindings[i];
      if (p.piece != q.piece || !same_run(p.opening, q.opening) || p.copies != q.copies) {
        found.tell("binding " + p.id, "The strip or the opening it is sewn to differs.");
      }
    }
  }
  if (!(a.linings == b.linings)) found.tell("block " + b.id, "Linings differ.");
  return found.take();
}

Problems check(const SizeRange& range) {
  Problems all;
  std::set<std::string> labels;
  for (std::size_t i = 0; i < range.sizes.size(); ++i) {
    const Block& block = range.sizes[i];
    if (!labels.insert(block.size).second) {
      all.push_back({"size-twice", "size " + block.size, "Two blocks of the range bear this label.",
                     "Give every size its own label."});
    }
    if (i == 0) continue;
    for (Problem& problem : topology_differences(range.sizes.front(), block)) {
      problem.place = "size " + block.size + ", " + problem.place;
      all.push_back(std::move(problem));
    }
  }
  return all;
}

}  // namespace pinwright
