#include "tests/engine/draft/sewn_checks.h"

#include <cmath>
#include <cstdio>
#include <numbers>
#include <set>

#include "engine/base/units.h"
#include "engine/geometry/arc_length.h"
#include "engine/geometry/area.h"
#include "engine/geometry/intersect.h"
#include "engine/pattern/measures.h"

namespace pinwright::testing {
namespace {

constexpr double kSeamWithin = 0.01;
constexpr double kJoinWithin = 0.1;

using Faults = std::vector<std::string>;

std::string number(double x) {
  char text[40];
  std::snprintf(text, sizeof text, "%.4f", x);
  return text;
}

const Edge* edge_of(const Block& block, const RunPart& part) {
  const Piece* piece = find_piece(block, part.piece);
  return piece == nullptr ? nullptr : find_edge(*piece, part.edge);
}

/// Length of a run; negative when it names an edge that is not there.
double run_mm(const Block& block, const std::vector<RunPart>& run) {
  double sum = 0.0;
  for (const RunPart& part : run) {
    const Edge* edge = edge_of(block, part);
    if (edge == nullptr) return -1e9;
    sum += length(edge->curve);
  }
  return sum;
}

/// How far along a run a notch lies; negative when it is not on the run.
double place_on_run(const Block& block, const std::vector<RunPart>& run, const std::string& id) {
  double before = 0.0;
  for (const RunPart& part : run) {
    const Edge* edge = edge_of(block, part);
    if (edge == nullptr) return -1e9;
    const double mm = length(edge->curve);
    const Notch* notch = find_notch(*find_piece(block, part.piece), id);
    if (notch != nullptr && notch->edge == part.edge) {
      return before + (part.reversed ? mm - notch->at_mm : notch->at_mm);
    }
    before += mm;
  }
  return -1e9;
}

void check_seam(const Block& block, const Seam& seam, Faults& out) {
  double at_a = 0.0;
  double at_b = 0.0;
  for (std::size_t i = 0; i < seam.sections.size(); ++i) {
    const SeamSection& section = seam.sections[i];
    const bool last = i + 1 == seam.sections.size();
    if (last != section.notch_a.empty() || last != section.notch_b.empty()) {
      out.push_back("seam " + seam.id + ": sections are not closed by its end");
    }
    const double a = last ? run_mm(block, seam.a) : place_on_run(block, seam.a, section.notch_a);
    const double b = last ? run_mm(block, seam.b) : place_on_run(block, seam.b, section.notch_b);
    const double off = (a - at_a) - (b - at_b) - section.ease_mm;
    if (!(a > at_a && b > at_b)) out.push_back("seam " + seam.id + ": a section runs backward");
    if (!(std::abs(off) < kSeamWithin)) {
      out.push_back("seam " + seam.id + " section " + std::to_string(i) + " off by " + number(off));
    }
    at_a = a;
    at_b = b;
  }
}

void check_join(const Block& block, const Join& join, Faults& out) {
  double sum = 0.0;
  for (const CornerRef& corner : join.corners) {
    const Piece* piece = find_piece(block, corner.piece);
    const std::size_t i = piece == nullptr ? kNowhere : edge_index(*piece, corner.before);
    if (i == kNowhere || piece->edges[(i + 1) % piece->edges.size()].id != corner.after) {
      out.push_back("join " + join.id + ": no corner of " + corner.before + " and " + corner.after);
      return;
    }
    sum += corner_angle(*piece, i);
  }
  const double off = degrees(sum - join.target_rad);
  if (!(std::abs(off) < kJoinWithin)) {
    out.push_back("join " + join.id + " off by " + number(off) + " degrees");
  }
}

void check_crossings(const Piece& piece, Faults& out) {
  const std::size_t n = piece.edges.size();
  for (std::size_t i = 0; i < n; ++i) {
    if (!self_intersections(piece.edges[i].curve).empty()) {
      out.push_back(piece.id + " " + piece.edges[i].id + " crosses itself");
    }
    for (std::size_t j = i + 1; j < n; ++j) {
      for (const Crossing& c : intersections(piece.edges[i].curve, piece.edges[j].curve)) {
        const bool corner =
            (j == i + 1 && distance(c.point, piece.edges[i].curve.end()) < 1e-3) ||
            ((j + 1) % n == i && distance(c.point, piece.edges[j].curve.end()) < 1e-3);
        if (!corner) {
          out.push_back(piece.id + ": " + piece.edges[i].id + " crosses " + piece.edges[j].id);
        }
      }
    }
  }
}

void check_edges(const Piece& piece, Faults& out) {
  std::vector<Curve> ring;
  std::set<std::string> ids;
  for (std::size_t i = 0; i < piece.edges.size(); ++i) {
    const Edge& edge = piece.edges[i];
    const Edge& next = piece.edges[(i + 1) % piece.edges.size()];
    if (!ids.insert(edge.id).second) out.push_back(piece.id + ": two edges " + edge.id);
    if (edge.curve.end() != next.curve.start()) {
      out.push_back(piece.id + ": open after " + edge.id);
    }
    for (const Vec2 p : edge.curve.points) {
      if (!finite(p)) out.push_back(piece.id + " " + edge.id + " is not finite");
    }
    if (edge.straight && edge.curve != straight_curve(edge.curve.start(), edge.curve.end())) {
      out.push_back(piece.id + " " + edge.id + " is not straight at thirds");
    }
    if (length(edge.curve) < 3.0) out.push_back(piece.id + " " + edge.id + " is a stub");
    ring.push_back(edge.curve);
  }
  if (signed_area(ring) <= 0.0) out.push_back(piece.id + " runs clockwise");
  if (!piece.fold) return;
  const Edge* fold = find_edge(piece, *piece.fold);
  if (fold == nullptr || fold->curve.start().x != 0.0 || fold->curve.end().x != 0.0) {
    out.push_back(piece.id + ": fold off x = 0");
  }
  for (const Edge& edge : piece.edges) {
    if (bounds(edge.curve).low.x < -1e-9) out.push_back(piece.id + ": left of the fold");
  }
}

void check_darts(const Piece& piece, Faults& out) {
  for (const Dart& dart : piece.darts) {
    const std::size_t in = edge_index(piece, dart.leg_in);
    const Landmark* target = find_landmark(piece, dart.toward);
    if (in == kNowhere || target == nullptr || piece.edges[in + 1].id != dart.leg_out) {
      out.push_back(piece.id + ": dart " + dart.id + " has no legs or no target");
      continue;
    }
    const Curve& a = piece.edges[in].curve;
    const Curve& b = piece.edges[in + 1].curve;
    if (std::abs(length(a) - length(b)) > 1e-6) out.push_back("legs of " + dart.id + " differ");
    const Vec2 middle = lerp(a.start(), b.end(), 0.5);
    const double aim = turn(a.end() - middle, target->at - middle);
    if (std::abs(degrees(aim)) > 0.1) {
      out.push_back(dart.id + " misses " + dart.toward + " by " + number(degrees(aim)));
    }
    if (dart_intake(piece, dart) < 2.0) out.push_back(dart.id + " takes nothing in");
  }
}

/// The landmark must be the start of the edge, bit for bit.
void check_mark(const Piece& piece, const std::string& id, const std::string& edge_id, bool end,
                Faults& out) {
  const Landmark* mark = find_landmark(piece, id);
  const Edge* edge = find_edge(piece, edge_id);
  if (mark == nullptr || edge == nullptr ||
      mark->at != (end ? edge->curve.end() : edge->curve.start())) {
    out.push_back(piece.id + ": landmark " + id + " off its corner");
  }
}

void check_marks(const Piece& piece, Faults& out) {
  for (const Notch& notch : piece.notches) {
    const Edge* edge = find_edge(piece, notch.edge);
    if (edge == nullptr || notch.at_mm <= 0.0 || notch.at_mm >= length(edge->curve)) {
      out.push_back(piece.id + ": notch " + notch.id + " off its edge");
    }
  }
  if (piece.id == "front" || piece.id == "back") {
    check_mark(piece, "underarm-point", "armhole", false, out);
    check_mark(piece, "shoulder-point", "armhole", true, out);
    check_mark(piece, "neck-point", "neckline", false, out);
    check_mark(piece, piece.id + "-neck-point", "neckline", true, out);
    if (piece.lengthen_lines.size() != 1 || piece.lengthen_lines[0].from.x != 0.0) {
      out.push_back(piece.id + ": no lengthening line");
    }
  }
  if (piece.id == "sleeve") check_mark(piece, "crown-point", "cap-front", true, out);
}

}  // namespace

std::vector<std::string> faults(const Block& block) {
  Faults out;
  for (const Piece& piece : block.pieces) {
    check_edges(piece, out);
    check_crossings(piece, out);
    check_darts(piece, out);
    check_marks(piece, out);
  }
  for (const Seam& seam : block.seams) check_seam(block, seam, out);
  for (const Join& join : block.joins) check_join(block, join, out);
  for (const Binding& binding : block.bindings) {
    const double opening = binding.copies * run_mm(block, binding.opening);
    const double strip = run_mm(block, {{binding.piece, "opening", false}});
    if (!(std::abs(strip - binding.ratio * opening) < kSeamWithin)) {
      out.push_back("binding off by " + number(strip - binding.ratio * opening));
    }
  }
  return out;
}

std::vector<std::string> measure_faults(const Block& block) {
  Faults out;
  const auto all = measures(block);
  for (const auto& [id, ease] : block.ease) {
    bool found = false;
    for (const GarmentMeasure& measure : all) {
      if (measure.body != id) continue;
      found = true;
      const double off = measure.value - block.drafted_for.body.at(id) - ease;
      if (!(std::abs(off) < 0.5)) out.push_back(measure.id + " off by " + number(off));
    }
    if (!found) out.push_back("ease of " + id + " is measured nowhere");
  }
  return out;
}

std::string joined(const std::vector<std::string>& lines) {
  std::string all;
  for (const std::string& line : lines) all += line + "\n";
  return all;
}

DraftInput deckhand() {
  DraftInput input;
  input.id = "deck-top";
  input.size = "deckhand 3";
  input.fabric = {
      "mid-weight-jersey", "Mid-weight cotton jersey", FabricKind::knit, 0.30, 0.15, 0.9};
  input.wearer.id = "deckhand-3";
  input.wearer.body = {{"bust-girth", 940},        {"waist-girth", 770},
                       {"hip-girth", 1000},        {"neck-base-girth", 385},
                       {"head-girth", 570},        {"shoulder-length", 126},
                       {"across-back-width", 356}, {"back-waist-length", 410},
                       {"scye-depth", 198},        {"upper-arm-girth", 292}};
  return input;
}

DraftInput purser() {
  DraftInput input;
  input.id = "saloon-bodice";
  input.size = "purser 1";
  input.fabric = {"poplin", "Poplin", FabricKind::woven, 0.0, 0.0, 1.0};
  input.wearer.id = "purser-1";
  input.wearer.body = {{"bust-girth", 920},
                       {"waist-girth", 740},
                       {"neck-base-girth", 380},
                       {"shoulder-length", 125},
                       {"across-back-width", 350},
                       {"across-front-width", 330},
                       {"back-waist-length", 405},
                       {"front-waist-length", 448},
                       {"neck-shoulder-point-to-bust-point", 268},
                       {"bust-point-width", 184},
                       {"scye-depth", 195},
                       {"upper-arm-girth", 285},
                       {"arm-length", 590},
                       {"hand-girth", 200}};
  return input;
}

}  // namespace pinwright::testing
