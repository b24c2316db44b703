#include "engine/alteration/one_sided.h"

#include <algorithm>

#include "engine/pattern/opened_piece.h"
#include "engine/pattern/sides.h"
#include "engine/pattern/size_range.h"

namespace pinwright {
namespace {

// An edge of which each end moves by its own; between, from one to the other smoothly.
void shift(Edge& edge, Vec2 start, Vec2 end) {
  std::vector<Vec2>& p = edge.curve.points;
  const std::size_t n = p.size();
  for (std::size_t i = 0; i < n; ++i) {
    double u = i <= 1 ? 0.0 : 1.0;
    if (i > 1 && i + 2 < n) {
      const double t = static_cast<double>(i - 1) / static_cast<double>(n - 3);
      u = t * t * (3.0 - 2.0 * t);
    }
    p[i] = p[i] + lerp(start, end, u);
  }
  if (edge.straight) edge.curve = straight_curve(p.front(), p.back());
}

// The dart's point back on the middle line of its mouth.
void true_legs(Piece& piece, const Dart& dart) {
  Edge& in = *find_edge(piece, dart.leg_in);
  Edge& out = *find_edge(piece, dart.leg_out);
  const Vec2 a = in.curve.start();
  const Vec2 b = out.curve.end();
  Vec2 tip = in.curve.end();
  if (!(a == b)) {
    const Vec2 middle = lerp(a, b, 0.5);
    const Vec2 along = left_normal(unit(b - a));
    tip = middle + dot(tip - middle, along) * along;
  }
  in.curve = straight_curve(a, tip);
  out.curve = straight_curve(tip, b);
}

void hold_neckline(Piece& piece, const BodiceAnatomy& at, Vec2 wanted) {
  Edge& neckline = piece.edges[at.neckline];
  const Vec2 was = neckline.curve.end();
  if (was == wanted) return;
  shift(neckline, {}, wanted - was);
  neckline.curve.points.back() = wanted;
  for (Landmark& mark : piece.landmarks)
    if (mark.at == was) mark.at = wanted;
}

void hold_hem(Piece& piece, const BodiceAnatomy& at, Vec2 wanted) {
  const Vec2 was = piece.edges[at.hem_corner].curve.end();
  if (was == wanted) return;
  const double side_x = piece.edges[at.side_corner].curve.end().x;
  const Vec2 by = wanted - was;
  const auto share = [&](Vec2 p) { return std::clamp(1.0 - p.x / side_x, 0.0, 1.0) * by; };
  Vec2 start = by;
  for (std::size_t i = next_in(piece, at.centre);; i = next_in(piece, i)) {
    Edge& edge = piece.edges[i];
    const bool last = i == at.side_corner;
    const Vec2 end = last ? Vec2{} : share(edge.curve.end());
    shift(edge, start, end);
    if (i == next_in(piece, at.centre))
      edge.curve.points.front() = wanted;
    else
      edge.curve.points.front() = piece.edges[before_in(piece, i)].curve.end();
    if (last) break;
    start = end;
  }
  for (const Dart& dart : piece.darts) {
    const std::size_t in = edge_index(piece, dart.leg_in);
    for (std::size_t i = next_in(piece, at.centre); i != at.side_corner; i = next_in(piece, i))
      if (i == in) true_legs(piece, dart);
  }
  for (Landmark& mark : piece.landmarks)
    if (mark.at == was) mark.at = wanted;
}

bool moves_a_corner(const Edit& edit) {
  for (std::size_t p = 0; p < edit.block.pieces.size(); ++p)
    for (std::size_t e = 0; e < edit.block.pieces[p].edges.size(); ++e)
      if (!(edit.block.pieces[p].edges[e].curve.end() ==
            edit.before.pieces[p].edges[e].curve.end()))
        return true;
  return false;
}

Problem centre_only() {
  return {"one-sided", "/side",
          "this moves only what lies on the centre line, which serves both sides",
          "set side to both, or choose a change at the shoulder, the side or the sleeve"};
}

CentreLines centre_lines(const Block& half) {
  CentreLines lines;
  for (const Piece& piece : half.pieces)
    if (const auto at = bodice_anatomy(piece)) lines[piece.id] = piece.edges[at->centre].curve;
  return lines;
}

CentreLines between(const CentreLines& a, const CentreLines& b) {
  CentreLines lines;
  for (const auto& [piece, curve] : a) {
    const Curve& other = b.at(piece);
    lines[piece] = straight_curve(lerp(curve.start(), other.start(), 0.5),
                                  lerp(curve.end(), other.end(), 0.5));
  }
  return lines;
}

Problems said_of(Problems problems, Side side) {
  for (Problem& p : problems) p.what = std::string(to_text(side)) + " side: " + p.what;
  return problems;
}

bool same_pattern(const Block& a, const Block& b) {
  return a.pieces == b.pieces && a.seams == b.seams && a.bindings == b.bindings;
}

void add_once(std::vector<std::string>& to, const std::string& id) {
  if (std::find(to.begin(), to.end(), id) == to.end()) to.push_back(id);
}

// The half's piece as the joined block calls it.
void add_names(std::vector<std::string>& to, const std::vector<std::string>& half, Side side,
               const Block& joined) {
  for (const std::string& id : half)
    add_once(to, find_piece(joined, id) != nullptr ? id : with_side(id, side));
}

struct Halves {
  Block left;
  Block right;
};

Result<Halves> halves_of(const Block& block) {
  Result<Block> left = half_block(block, Side::left);
  if (!left) return left.problems();
  Result<Block> right = half_block(block, Side::right);
  if (!right) return right.problems();
  for (Block* half : {&*left, &*right})
    for (Piece& piece : half->pieces) piece = settled(piece);
  return Halves{std::move(*left), std::move(*right)};
}

// Pieces that the step left alone keep every bit.
void keep_untouched(Block& now, const Block& before) {
  for (Piece& piece : now.pieces) {
    const Piece* was = find_piece(before, piece.id);
    if (was != nullptr && same_piece(piece, *was)) piece = *was;
  }
}

bool same_lines(const Block& a, const Block& b) {
  for (std::size_t p = 0; p < a.pieces.size(); ++p)
    if (p >= b.pieces.size() || a.pieces[p].edges != b.pieces[p].edges ||
        a.pieces[p].darts != b.pieces[p].darts)
      return false;
  return a.pieces.size() == b.pieces.size();
}

// The half that is not to be changed, with the parts that the changed one has got.
Result<Block> with_same_parts(const Block& other, const Block& changed, const Step& step,
                              const Prepare& prepare) {
  if (topology_differences(other, changed).empty()) return other;
  Result<Block> ready = prepare(other, step);
  if (ready && same_lines(*ready, other) && topology_differences(*ready, changed).empty())
    return ready;
  return Problem{"one-sided", "/side",
                 "left and right would no longer have the same darts and edges",
                 "make the dart on both sides first, then change its amount on one"};
}

Result<StepDone> one_side(const Halves& was, const Step& step, const Prepare& prepare,
                          const HalfStep& half_step) {
  const bool left = step.side == Side::left;
  const Block& half = left ? was.left : was.right;
  Result<StepDone> done = half_step(half, step, centre_lines(half));
  if (!done) return said_of(done.problems(), step.side);
  if (same_pattern(done->block, half)) return centre_only();
  const Result<Block> other =
      with_same_parts(left ? was.right : was.left, done->block, step, prepare);
  if (!other) return other.problems();
  const Result<Block> joined =
      left ? join_halves(done->block, *other) : join_halves(*other, done->block);
  if (!joined) return joined.problems();
  StepDone out{*joined, done->note};
  out.note.text = std::string(to_text(step.side)) + " side: " + done->note.text;
  out.note.pieces.clear();
  out.note.follow.clear();
  add_names(out.note.pieces, done->note.pieces, step.side, out.block);
  add_names(out.note.follow, done->note.follow, step.side, out.block);
  return out;
}

Result<StepDone> both_sides(const Halves& was, const Step& step, const HalfStep& half_step) {
  const auto run = [&](const CentreLines& lines) -> Result<std::pair<StepDone, StepDone>> {
    Result<StepDone> left = half_step(was.left, step, lines);
    if (!left) return said_of(left.problems(), Side::left);
    Result<StepDone> right = half_step(was.right, step, lines);
    if (!right) return said_of(right.problems(), Side::right);
    return std::pair{std::move(*left), std::move(*right)};
  };
  auto done = run({});
  if (!done) return done.problems();
  const CentreLines a = centre_lines(done->first.block);
  const CentreLines b = centre_lines(done->second.block);
  // Halves that differ may wish to end at different places: they meet half way.
  if (a != b) done = run(between(a, b));
  if (!done) return done.problems();
  const Result<Block> joined = join_halves(done->first.block, done->second.block);
  if (!joined) return joined.problems();
  StepDone out{*joined, done->first.note};
  out.note.pieces.clear();
  out.note.follow.clear();
  for (const auto& [half, side] :
       {std::pair{&done->first, Side::left}, std::pair{&done->second, Side::right}}) {
    add_names(out.note.pieces, half->note.pieces, side, out.block);
    add_names(out.note.follow, half->note.follow, side, out.block);
  }
  return out;
}

}  // namespace

Result<Done> hold_centre(Edit& edit, const CentreLines& lines) {
  bool held = false;
  for (const auto& [id, line] : lines) {
    const std::size_t p = piece_index(edit.block, id);
    if (p == kNowhere) continue;
    Piece& piece = edit.block.pieces[p];
    const auto at = bodice_anatomy(piece);
    if (!at || piece.edges[at->centre].curve == line) continue;
    hold_neckline(piece, *at, line.start());
    hold_hem(piece, *at, line.end());
    for (std::size_t i = at->neckline; i != at->side_corner; i = next_in(piece, i))
      edit.runs_out.insert({p, next_in(piece, i)});
    edit.runs_out.insert({p, at->neckline});
    piece.edges[at->centre].curve = line;
    edit.wanted_length.erase({p, at->centre});
    held = true;
  }
  if (held && !moves_a_corner(edit) && edit.wanted_length.empty()) return centre_only();
  return Done{};
}

Result<StepDone> step_by_sides(const Block& block, const Step& step, const Prepare& prepare,
                               const HalfStep& half_step) {
  const Result<Halves> was = halves_of(block);
  if (!was) return was.problems();
  Result<StepDone> done = step.side == Side::both ? both_sides(*was, step, half_step)
                                                  : one_side(*was, step, prepare, half_step);
  if (done) keep_untouched(done->block, block);
  return done;
}

}  // namespace pinwright
