// Move a dart to another seam, all of it or a share; divide a dart in two.
//
//        N---. P              the darts are drawn up to their mark B; the part between them turns
//        |    \ |/            about it until the first is closed by the share of its angle; the
//        other |     B  P'          opens by the same angle: a dart's value is its angle, not its
//        width. |    / \  )          All that turns keeps its shape. Then both end short of the
//        mark again; |   /   `.U'         where there is no other dart yet, one is made. A dart
//        that has given H---------S          all is taken out and its seam is one line.
//
//      |--.                   divide: a second mouth is opened in the same seam, the strip between
//      |== >                  them turns by half of the angle. A negative amount joins the two
//      again.
//      |--'
//      |== >                  Steps: common practice. Inverse of the move: the same share of what
//      the
//      |--'                   other dart got, back (from and to exchanged).
#include <cmath>
#include <cstdio>

#include "engine/alteration/dart_turn.h"
#include "engine/alteration/operations.h"
#include "engine/base/units.h"
#include "engine/geometry/arc_length.h"

namespace pinwright {
namespace {

constexpr double kLeastStripMm = 10.0;
constexpr double kAllOfIt = 0.999;

// The dart of the seam before `upper` in the ring, if there is one.
std::optional<DartPlace> dart_below(const Piece& piece, const DartPlace& upper,
                                    const std::string& seam) {
  for (std::size_t i = 0; i < piece.darts.size(); ++i) {
    const DartPlace d = place_of_dart(piece, upper.piece, i);
    if (d.after == upper.before && lies_in(piece.edges[d.before], seam)) return d;
  }
  return {};
}

std::string degrees_text(double angle) {
  char text[32];
  std::snprintf(text, sizeof text, "%.1f degrees", degrees(std::abs(angle)));
  return text;
}

}  // namespace

Result<Block> with_dart_rotated(const Block& before, double share, const std::string& piece_id,
                                const std::string& from, const std::string& to) {
  if (from == to)
    return not_here("the dart lies in the " + from + " already", "name another seam to move it to");
  const Result<DartPlace> source = find_dart(before, piece_id, from);
  if (!source) return source.problems();
  const std::size_t at = source->piece;
  const Dart dart = before.pieces[at].darts[source->dart];
  std::vector<std::string> drawn = {dart.id};
  const Result<DartPlace> there = find_dart(before, piece_id, to);
  if (there) {
    const Dart& other = before.pieces[at].darts[there->dart];
    if (other.toward != dart.toward)
      return not_here("the darts of the " + from + " and the " + to + " point at different places",
                      "name darts that point at one mark");
    drawn.push_back(other.id);
  }
  Result<Block> block = drawn_to_mark(before, at, drawn);
  if (!block) return block;
  std::string target = there ? drawn.back() : "";
  if (!there) {
    const Piece& piece = block->pieces[at];
    const Vec2 tip = find_edge(piece, dart.leg_in)->curve.end();
    const Result<DartPlace> made = open_place(*block, at, to, tip, dart.toward);
    if (!made) return made.problems();
    target = piece.darts[made->dart].id;
  }
  turn_intake(*block, at, dart.id, target, share >= kAllOfIt ? 1.0 : share);
  return block;
}

Result<Done> rotate_dart(Edit& edit, double share, const std::string& piece_id,
                         const std::string& from, const std::string& to) {
  const Result<DartPlace> there = find_dart(edit.block, piece_id, to);
  if (!there) return there.problems();
  const Piece& piece = edit.block.pieces[there->piece];
  char text[64];
  std::snprintf(text, sizeof text, "%.0f %% of the dart", 100.0 * share);
  edit.note.pieces.push_back(piece_id);
  edit.note.text = piece.name + ": " + (share >= kAllOfIt ? "the dart" : text) +
                   " moved from the " + from + " to the " + to + ", which has " +
                   degrees_text(dart_angle(piece, piece.darts[there->dart])) + " now";
  const Result<DartPlace> was = find_dart(*edit.given, piece_id, from);
  const Result<DartPlace> had = find_dart(*edit.given, piece_id, to);
  const Piece& old = edit.given->pieces[was->piece];
  const double gap = short_of_mark(old, *was);
  point_at_mark(edit, *there, had ? short_of_mark(old, *had) : gap);
  const std::size_t left = dart_index(piece, old.darts[was->dart].id);
  if (left != kNowhere) point_at_mark(edit, place_of_dart(piece, there->piece, left), gap);
  return Done{};
}

Result<Block> with_dart_divided(const Block& before, double apart, const std::string& piece_id,
                                const std::string& seam) {
  const Result<DartPlace> found = find_dart(before, piece_id, seam);
  if (!found) return found.problems();
  const std::size_t at = found->piece;
  const Dart dart = before.pieces[at].darts[found->dart];
  if (apart < 0.0) {
    const auto lower = dart_below(before.pieces[at], *found, seam);
    if (!lower)
      return not_here("the " + seam + " of the " + piece_id + " has no second dart to join",
                      "give a positive distance to divide the dart");
    const std::string into = before.pieces[at].darts[lower->dart].id;
    Result<Block> block = drawn_to_mark(before, at, {dart.id, into});
    if (block) turn_intake(*block, at, dart.id, into, 1.0);
    return block;
  }
  Result<Block> block = drawn_to_mark(before, at, {dart.id});
  if (!block) return block;
  const Piece& piece = block->pieces[at];
  const double above = length(piece.edges[found->after].curve);
  const double below = length(piece.edges[found->before].curve);
  const bool upward = above > apart + kLeastStripMm;
  if (!upward && below < apart + kLeastStripMm)
    return too_large("the " + seam + " has no room for a second dart " + mm_text(apart) + " away",
                     "take a smaller distance");
  const DartPlace made =
      insert_dart(*block, at, upward ? found->after : found->before, upward ? apart : below - apart,
                  piece.edges[found->in].curve.end(), dart.toward);
  turn_intake(*block, at, dart.id, std::string(piece.darts[made.dart].id), 0.5);
  return block;
}

Result<Done> divide_dart(Edit& edit, double apart, const std::string& piece_id,
                         const std::string& seam) {
  const Result<DartPlace> found = find_dart(edit.block, piece_id, seam);
  if (!found) return found.problems();
  const Piece& piece = edit.block.pieces[found->piece];
  edit.note.pieces.push_back(piece_id);
  edit.note.text =
      piece.name + ": " +
      (apart > 0.0
           ? "dart in the " + seam + " divided into two, " + mm_text(apart) + " apart, of " +
                 degrees_text(dart_angle(piece, piece.darts[found->dart])) + " each"
           : "the two darts in the " + seam + " joined into one");
  const auto other = dart_below(piece, *found, seam);
  const Result<DartPlace> was = find_dart(*edit.given, piece_id, seam);
  const double gap = short_of_mark(edit.given->pieces[was->piece], *was);
  point_at_mark(edit, *found, gap);
  if (apart > 0.0 && other) point_at_mark(edit, *other, gap);
  return Done{};
}

}  // namespace pinwright
