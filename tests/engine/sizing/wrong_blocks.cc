#include "wrong_blocks.h"

#include <algorithm>
#include <cmath>
#include <cstdio>

#include "engine/constraint/solve.h"
#include "engine/draft/draft.h"
#include "engine/geometry/arc_length.h"
#include "engine/proof/proof.h"

namespace pinwright {
namespace {

struct Fault {
  const char* name;
  double least;  // mm, either way
  double most;
  bool drawn;  // else drafted
};

// Drafted: the measurement was taken or read wrongly. Drawn: the line stands elsewhere.
const std::vector<Fault>& faults_of(const std::string& kind) {
  static const std::vector<Fault> knit = {
      {"bust-girth", 8, 30, false},        {"waist-girth", 8, 24, false},
      {"hip-girth", 8, 24, false},         {"neck-base-girth", 6, 20, false},
      {"upper-arm-girth", 6, 16, false},   {"shoulder-length", 3, 10, false},
      {"across-back-width", 5, 14, false}, {"back-waist-length", 5, 15, false},
      {"scye-depth", 4, 10, false},        {"shoulder-drop", 3, 8, false},
      {"front neck centre", 4, 14, true},  {"back neck centre", 3, 8, true},
      {"hem corner", 4, 9, true},
  };
  static const std::vector<Fault> woven = {
      {"bust-girth", 8, 30, false},         {"waist-girth", 8, 24, false},
      {"neck-base-girth", 6, 16, false},    {"upper-arm-girth", 6, 16, false},
      {"shoulder-length", 3, 10, false},    {"across-back-width", 5, 14, false},
      {"across-front-width", 5, 12, false}, {"back-waist-length", 5, 15, false},
      {"scye-depth", 4, 10, false},         {"shoulder-drop", 3, 8, false},
      {"front-waist-length", 4, 10, false}, {"arm-length", 8, 20, false},
      {"hand-girth", 6, 14, false},         {"front neck centre", 4, 14, true},
      {"back neck centre", 3, 8, true},
  };
  return kind == "knit-top" ? knit : woven;
}

// Runs each point of the edge after its moved start by a share that falls to nothing at the end.
void drag_start(Edge& edge, Vec2 by) {
  std::vector<Vec2>& p = edge.curve.points;
  if (edge.straight) {
    edge.curve = straight_curve(p.front() + by, p.back());
    return;
  }
  const auto n = static_cast<double>(p.size() - 1);
  for (std::size_t i = 0; i < p.size(); ++i) p[i] += (1.0 - static_cast<double>(i) / n) * by;
}

void drag_end(Edge& edge, Vec2 by) {
  edge.curve = reversed(edge.curve);
  drag_start(edge, by);
  edge.curve = reversed(edge.curve);
}

std::size_t index_of(const Block& block, const std::string& piece) {
  for (std::size_t i = 0; i < block.pieces.size(); ++i)
    if (block.pieces[i].id == piece) return i;
  return 0;
}

std::size_t role_at(const Piece& piece, EdgeRole role) {
  for (std::size_t i = 0; i < piece.edges.size(); ++i)
    if (piece.edges[i].role == role) return i;
  return 0;
}

// Neck edge and centre meet elsewhere; the right angle at the fold is solved again.
bool move_neck_centre(Block& block, const std::string& piece_id, EdgeRole centre, double down) {
  const std::size_t at = index_of(block, piece_id);
  Piece& piece = block.pieces[at];
  const std::size_t neck = role_at(piece, EdgeRole::neckline);
  // Neckline runs from the neck point to the centre, the centre edge on from there.
  drag_end(piece.edges[neck], {0.0, -down});
  drag_start(piece.edges[role_at(piece, centre)], {0.0, -down});
  System system;
  system.free_edges = {{at, neck}};
  for (const Join& join : block.joins) {
    bool here = false;
    AngleConstraint angle{join.name, {}, join.target_rad};
    for (const CornerRef& c : join.corners) {
      const std::size_t p = index_of(block, c.piece);
      const std::size_t e = edge_index(block.pieces[p], c.before);
      angle.corners.push_back({p, e});
      here = here ||
             (p == at && (c.before == piece.edges[neck].id || c.after == piece.edges[neck].id));
    }
    if (here) system.angles.push_back(std::move(angle));
  }
  return solve(block, system).ok();
}

// The side's foot stands further out on front and back; the sewn lengths are solved again.
bool move_hem_corner(Block& block, double out) {
  System system;
  LengthConstraint equal{"side", {}, 0.0};
  for (const char* id : {"front", "back"}) {
    const std::size_t at = index_of(block, id);
    Piece& piece = block.pieces[at];
    const std::size_t side = role_at(piece, EdgeRole::side);
    const std::size_t hem = role_at(piece, EdgeRole::hem);
    drag_start(piece.edges[side], {out, 0.0});
    drag_end(piece.edges[hem], {out, 0.0});
    system.free_edges.push_back({at, side});
    equal.terms.push_back({{at, side}, id == std::string("front") ? 1.0 : -1.0});
  }
  for (const SeamSection& s : find_seam(block, "side")->sections) equal.value += s.ease_mm;
  system.lengths.push_back(equal);
  for (const Join& join : block.joins) {
    AngleConstraint angle{join.name, {}, join.target_rad};
    bool here = false;
    for (const CornerRef& c : join.corners) {
      const std::size_t p = index_of(block, c.piece);
      const std::size_t e = edge_index(block.pieces[p], c.before);
      angle.corners.push_back({p, e});
      for (const EdgeAt free : system.free_edges) {
        const std::string& edge = block.pieces[free.piece].edges[free.edge].id;
        here = here || (free.piece == p && (c.before == edge || c.after == edge));
      }
    }
    if (here) system.angles.push_back(std::move(angle));
  }
  return solve(block, system).ok();
}

// The strip that belongs to the neckline as it is now; its notches at their shares.
void cut_strip(Block& block) {
  for (const Binding& binding : block.bindings) {
    double opening = 0.0;
    for (const RunPart& part : binding.opening)
      opening += length(find_edge(*find_piece(block, part.piece), part.edge)->curve);
    Piece& strip = *find_piece(block, binding.piece);
    const Edge* along = edge_of_role(strip, EdgeRole::opening);
    const double factor = binding.ratio * opening * binding.copies / length(along->curve);
    for (Edge& edge : strip.edges)
      for (Vec2& p : edge.curve.points) p.x *= factor;
    for (Notch& notch : strip.notches) notch.at_mm *= factor;
    for (Line* line : {&strip.grainline}) line->from.x *= factor, line->to.x *= factor;
  }
}

}  // namespace

std::optional<WrongBlock> wrong_block(const Block& right, std::mt19937& random, int count) {
  std::vector<Fault> all = faults_of(right.kind);
  std::shuffle(all.begin(), all.end(), random);
  all.resize(static_cast<std::size_t>(count));
  DraftInput input;
  input.id = right.id;
  input.name = right.name;
  input.size = right.size;
  input.wearer = right.drafted_for;
  input.fabric = right.fabric;
  WrongBlock wrong;
  std::vector<std::pair<std::string, double>> drawn;
  for (const Fault& fault : all) {
    const double size = std::uniform_real_distribution<double>(fault.least, fault.most)(random);
    const double by = std::uniform_int_distribution<int>(0, 1)(random) == 0 ? size : -size;
    char text[80];
    std::snprintf(text, sizeof text, "%s %+.1f", fault.name, by);
    wrong.faults.emplace_back(text);
    if (fault.drawn) {
      drawn.emplace_back(fault.name, by);
      continue;
    }
    const std::string id = fault.name;
    if (id == "shoulder-drop")
      input.wearer.body.try_emplace(
          id, input.wearer.body.at("shoulder-length") * std::sin(radians(20.5)));
    input.wearer.body.at(id) += by;
  }
  Result<Block> drafted = draft(right.kind, input);
  if (!drafted) return {};
  wrong.block = std::move(*drafted);
  wrong.block.drafted_for = right.drafted_for;
  wrong.block.ease = right.ease;
  for (const auto& [name, by] : drawn) {
    bool done = true;
    if (name == "front neck centre")
      done = move_neck_centre(wrong.block, "front", EdgeRole::centre_front, by);
    if (name == "back neck centre")
      done = move_neck_centre(wrong.block, "back", EdgeRole::centre_back, by);
    if (name == "hem corner") done = move_hem_corner(wrong.block, by);
    if (!done) return {};
  }
  if (!drawn.empty()) cut_strip(wrong.block);
  return wrong;
}

}  // namespace pinwright
