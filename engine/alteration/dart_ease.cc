// Let a dart go into ease, or take ease up into a dart.
//
//      P                       P          the mouth's corners go toward each other by e / 2 each,
//      so
//       \                       \         that the seam gets longer by e; its mate does not, and e
//       is
//        m                       |        eased in. A dart that gives all its width is taken out
//        and
//       <==. B   ---->           |  B     its seam drawn in one line from end to end.
//        m'                      |
//       /                       /
//
// Only where the seam's longer run carries the ease: the front's side, the back's shoulder. Limits:
// 1/2 in eased in on a shoulder, 1 in on a side. Common practice. Inverse: the negative amount,
// which makes a dart where there is none.
#include <algorithm>
#include <cmath>

#include "engine/alteration/dart_turn.h"
#include "engine/alteration/follow.h"
#include "engine/alteration/operations.h"
#include "engine/geometry/arc_length.h"
#include "engine/geometry/fairing.h"

namespace pinwright {
namespace {

constexpr double kMostShoulderMm = 12.7;
constexpr double kMostSideMm = 25.4;

// The section of the seam's eased run (a) in which the edge's end lies.
SeamSection* section_at(Block& block, const Piece& piece, const std::string& edge) {
  for (Seam& seam : block.seams) {
    double walked = 0.0;
    for (const RunPart& part : seam.a) {
      const Piece& owner = *find_piece(block, part.piece);
      walked += length(find_edge(owner, part.edge)->curve);
      if (part.piece != piece.id || part.edge != edge) continue;
      // Where the edge ends along the run: the mouth of its dart.
      const double mouth = part.reversed ? walked - length(find_edge(owner, edge)->curve) : walked;
      for (SeamSection& s : seam.sections) {
        if (s.notch_a.empty()) return &s;
        double before = 0.0;
        for (const RunPart& q : seam.a) {
          const Piece& holder = *find_piece(block, q.piece);
          const double part_length = length(find_edge(holder, q.edge)->curve);
          const Notch* n = find_notch(holder, s.notch_a);
          if (n != nullptr && n->edge == q.edge) {
            before += q.reversed ? part_length - n->at_mm : n->at_mm;
            break;
          }
          before += part_length;
        }
        if (mouth < before) return &s;
      }
    }
  }
  return nullptr;
}

Result<Done> add_ease(Block& block, const Piece& piece, const std::string& edge, double more,
                      const std::string& seam_name) {
  SeamSection* section = section_at(block, piece, edge);
  if (section == nullptr)
    return not_here("the " + seam_name + " of the " + piece.id +
                        " is the shorter run of its seam and carries no ease",
                    "move the dart to another seam instead");
  section->ease_mm += more;
  const double most = seam_name == "shoulder" ? kMostShoulderMm : kMostSideMm;
  if (more > 0.0 && section->ease_mm > most + 1e-9)
    return too_large("the " + seam_name + " would have " + mm_text(section->ease_mm) +
                         " to ease in, more than " + mm_text(most),
                     "take a smaller amount, and leave the rest in the dart");
  if (section->ease_mm < -1e-9)
    return too_large("the " + seam_name + " has only " + mm_text(section->ease_mm - more) +
                         " of ease to take up",
                     "take a smaller amount");
  section->ease_mm = std::max(section->ease_mm, 0.0);
  return Done{};
}

// A curve whose end (or start) goes over to m, the points before it less and less.
Curve drawn_to(const Curve& curve, bool at_end, Vec2 m) {
  Curve made = curve;
  const std::size_t n = curve.points.size();
  const Vec2 by = m - (at_end ? curve.end() : curve.start());
  for (std::size_t i = 0; i < n; ++i) {
    const std::size_t from_there = at_end ? n - 1 - i : i;
    if (from_there + 2 >= n) continue;  // the far end keeps its tangent
    const double u = from_there <= 1 ? 0.0
                                     : static_cast<double>(from_there - 1) /
                                           static_cast<double>(n > 4 ? n - 3 : 1);
    made.points[i] += (1.0 - u * u * (3.0 - 2.0 * u)) * by;
  }
  return made;
}

// One line in place of both edges and the gap between them: both run to the middle of the gap and
// go over into each other there.
Result<Curve> bridged(const Edge& first, const Edge& second) {
  const Curve& a = first.curve;
  const Curve& b = second.curve;
  if (first.straight && second.straight) return straight_curve(a.start(), b.end());
  const Vec2 m = lerp(a.end(), b.start(), 0.5);
  Curve low = drawn_to(a, true, m);
  Curve high = drawn_to(b, false, m);
  const Vec2 along = unit(end_tangent(low) + start_tangent(high));
  Vec2& before = low.points[low.points.size() - 2];
  Vec2& after = high.points[1];
  before = m - distance(before, m) * along;
  after = m + distance(after, m) * along;
  const Curve line = joined(low, high);
  if (inflections(line) > inflections(a) + inflections(b))
    return too_large("the seam cannot be drawn fair without its dart",
                     "leave a part of the dart, or move it to another seam first");
  return line;
}

}  // namespace

Result<Block> with_dart_eased(const Block& before, double amount, const std::string& piece_id,
                              const std::string& seam) {
  Block block = before;
  const Result<DartPlace> found = find_dart(before, piece_id, seam);
  if (!found) {
    const std::size_t at = piece_index(before, piece_id);
    if (amount > 0.0 || at == kNowhere || seam == "waist") return found.problems();
    const Piece& piece = block.pieces[at];
    const std::string toward = piece_id == "front" ? "bust-point" : "shoulder-blade-point";
    const Landmark* mark = find_landmark(piece, toward);
    if (mark == nullptr)
      return not_here("the " + piece_id + " has no " + toward, "mark it on the piece");
    const Vec2 point = mark->at;
    const Result<DartPlace> made = open_place(block, at, seam, point, toward);
    if (!made) return made.problems();
    end_short_of(block.pieces[at], *made, point, kNewDartShortMm);
    return block;
  }
  const Piece& piece = block.pieces[found->piece];
  const double intake = dart_intake(piece, piece.darts[found->dart]);
  if (amount > intake + kLeastIntakeMm)
    return too_large("the dart takes up only " + mm_text(intake), "take at most that");
  if (amount < intake - kLeastIntakeMm) return block;
  const Edge& first = piece.edges[found->before];
  const Edge& second = piece.edges[found->after];
  const Result<Curve> line = bridged(first, second);
  if (!line) return line.problems();
  const double more = length(*line) - length(first.curve) - length(second.curve);
  const Result<Done> eased = add_ease(block, piece, first.id, more, seam);
  if (!eased) return eased.problems();
  remove_dart(block, *found, *line, first.straight && second.straight);
  return block;
}

Result<Done> ease_dart(Edit& edit, double amount, const std::string& piece_id,
                       const std::string& seam) {
  const Result<DartPlace> found = find_dart(edit.block, piece_id, seam);
  edit.note.pieces.push_back(piece_id);
  if (!found) {
    const std::size_t at = piece_index(edit.block, piece_id);
    Piece& piece = edit.piece(at);
    for (std::size_t i = 0; i < piece.edges.size(); ++i)
      if (lies_in(piece.edges[i], seam)) edit.redrawn.insert({at, i});
    edit.note.text =
        piece.name + ": the dart in the " + seam + " let go, " + mm_text(amount) + " eased in";
    return Done{};
  }
  const DartPlace& d = *found;
  const Piece& piece = edit.block.pieces[d.piece];
  const Result<Done> eased = add_ease(edit.block, piece, piece.edges[d.before].id, amount, seam);
  if (!eased) return eased;
  const Vec2 a = piece.edges[d.in].curve.start();
  const Vec2 b = piece.edges[d.out].curve.end();
  CornerMotions motions = still(piece);
  const Vec2 across = a == b ? unit(end_tangent(piece.edges[d.before].curve)) : unit(b - a);
  motions[d.before] = translation(0.5 * amount * across);
  motions[d.out] = translation(-0.5 * amount * across);
  for (const std::size_t e : {d.before, d.after})
    edit.wanted_length[{d.piece, e}] = length(piece.edges[e].curve) + 0.5 * amount;
  edit.note.text = piece.name + ": " + mm_text(amount) + " of the " + seam +
                   (amount > 0.0 ? "'s dart let go into ease" : "'s ease taken up into the dart");
  move_corners(edit, d.piece, motions);
  return Done{};
}

}  // namespace pinwright
