#include "engine/constraint/limits.h"

#include <algorithm>
#include <cmath>
#include <cstdio>
#include <limits>
#include <set>

#include "engine/geometry/arc_length.h"

namespace pinwright {
namespace {

constexpr double kWovenArmRoomMm = 25.0;
constexpr double kFlattest = 0.15;
constexpr double kSteepest = 0.65;
constexpr double kLeastRadiusMm = 10.0;
// A sleeve with an underarm seam at least this long ends near the wrist: its hem has to pass the
// hand. Shorter ones end where the arm is wider than the hand. Our own figure.
constexpr double kLongSleeveMm = 250.0;

std::string whole_mm(double mm) {
  char text[32];
  std::snprintf(text, sizeof text, "%.0f mm", std::ceil(mm - 1e-6));
  return text;
}

double copies(const Piece& piece) { return piece.fold || piece.cut.mirrored_pair ? 2.0 : 1.0; }

class Collector {
 public:
  Collector(const Block& block, const Measurements& body, const Fabric& fabric, Words words)
      : block_(block),
        body_(body),
        words_(words == Words::yes),
        stretch_(fabric.kind == FabricKind::knit ? fabric.stretch_across : 0.0),
        knit_(fabric.kind == FabricKind::knit) {}

  std::vector<Limit> take() {
    opening();
    hem();
    bindings();
    for (std::size_t p = 0; p < block_.pieces.size(); ++p) sleeve(p);
    for (std::size_t p = 0; p < block_.pieces.size(); ++p) underarm(p);
    return std::move(all_);
  }

 private:
  const double* body(const char* id) const {
    const auto found = body_.find(id);
    return found == body_.end() ? nullptr : &found->second;
  }

  // Linings follow their shell and are not counted with it.
  bool follows(const Piece& piece) const {
    return std::any_of(block_.linings.begin(), block_.linings.end(),
                       [&](const Lining& l) { return l.piece == piece.id; });
  }

  // The stretch of another cloth (a rib) is not known here.
  bool of_the_shell(const Binding& b) const {
    const Piece* strip = find_piece(block_, b.piece);
    return strip == nullptr || strip->cloth == "shell";
  }

  std::vector<LengthTerm> round_of(EdgeRole role) const {
    std::vector<LengthTerm> terms;
    for (std::size_t p = 0; p < block_.pieces.size(); ++p) {
      const Piece& piece = block_.pieces[p];
      if (follows(piece)) continue;
      for (std::size_t e = 0; e < piece.edges.size(); ++e)
        if (piece.edges[e].role == role) terms.push_back({{p, e}, copies(piece)});
    }
    return terms;
  }

  double sum(const std::vector<LengthTerm>& terms) const {
    double total = 0.0;
    for (const LengthTerm& t : terms)
      total += t.factor * length(block_.pieces[t.edge.piece].edges[t.edge.edge].curve);
    return total;
  }

  // Texts are made by functions, and only when they are wanted.
  template <class Name, class Quantity, class Relax>
  Limit& add(std::string_view id, std::size_t piece, const Name& name, const Quantity& quantity,
             const Relax& relax) {
    Limit limit;
    limit.id = id;
    limit.piece = piece;
    if (words_) {
      limit.name = name();
      limit.quantity = quantity();
      limit.relax = relax();
    }
    all_.push_back(std::move(limit));
    return all_.back();
  }

  void opening() {
    const double* head = body("head-girth");
    if (!knit_ || head == nullptr) return;
    double ratio = 1.0;
    for (const Binding& b : block_.bindings)
      for (const RunPart& part : b.opening) {
        const Piece* piece = find_piece(block_, part.piece);
        const Edge* edge = piece == nullptr ? nullptr : find_edge(*piece, part.edge);
        if (edge != nullptr && edge->role == EdgeRole::neckline && of_the_shell(b)) ratio = b.ratio;
      }
    const double bound = *head / (ratio * (1.0 + stretch_));
    std::vector<LengthTerm> terms = round_of(EdgeRole::neckline);
    if (terms.empty()) return;
    Limit& limit = add(
        "opening-passes-head", kNowhere,
        [&] { return "the neck opening, stretched, passes a head of " + whole_mm(*head); },
        [] { return std::string("the neck opening on its stitching line"); },
        [&] {
          return "keep the neck opening at " + whole_mm(bound) +
                 " or more, or take a cloth that stretches more";
        });
    limit.found = sum(terms);
    limit.lengths = std::move(terms);
    limit.bound = bound;
  }

  void hem() {
    const double* hips = body("hip-girth");
    if (!knit_ || hips == nullptr) return;
    const double bound = *hips / (1.0 + stretch_);
    std::vector<LengthTerm> terms = round_of(EdgeRole::hem);
    if (terms.empty()) return;
    Limit& limit = add(
        "hem-passes-hips", kNowhere,
        [&] { return "the hem, stretched, passes hips of " + whole_mm(*hips); },
        [] { return std::string("the hem on its stitching line"); },
        [&] {
          return "keep the hem at " + whole_mm(bound) +
                 " or more, or take a cloth that stretches more";
        });
    limit.found = sum(terms);
    limit.lengths = std::move(terms);
    limit.bound = bound;
  }

  void bindings() {
    for (std::size_t k = 0; k < block_.bindings.size(); ++k) {
      const Binding& b = block_.bindings[k];
      if (!of_the_shell(b)) continue;
      std::vector<LengthTerm> terms;
      for (const RunPart& part : b.opening) {
        for (std::size_t p = 0; p < block_.pieces.size(); ++p) {
          if (block_.pieces[p].id != part.piece) continue;
          const std::size_t e = edge_index(block_.pieces[p], part.edge);
          if (e != kNowhere)
            terms.push_back({{p, e}, b.copies * (b.ratio * (1.0 + stretch_) - 1.0)});
        }
      }
      if (terms.empty()) continue;
      Limit& limit = add(
          "binding-reaches", k, [&] { return "the " + b.id + " stretches to its opening"; },
          [&] { return "what the " + b.id + ", stretched, is longer than its opening"; },
          [&] {
            char least[32];
            std::snprintf(least, sizeof least, "%.2f", std::ceil(100.0 / (1.0 + stretch_)) / 100.0);
            return "keep the binding at " + std::string(least) +
                   " of its opening or more, or take a strip that stretches more";
          });
      limit.found = sum(terms);
      limit.lengths = std::move(terms);
    }
  }

  void sleeve(std::size_t p) {
    const Piece& piece = block_.pieces[p];
    const std::size_t n = piece.edges.size();
    std::size_t crown = kNowhere;
    std::size_t first = kNowhere;  // corner before the first cap edge
    std::size_t last = kNowhere;   // corner after the last
    for (std::size_t i = 0; i < n; ++i) {
      if (piece.edges[i].role != EdgeRole::cap) continue;
      if (piece.edges[(i + n - 1) % n].role != EdgeRole::cap) first = (i + n - 1) % n;
      (piece.edges[(i + 1) % n].role != EdgeRole::cap ? last : crown) = i;
    }
    if (crown == kNowhere || first == kNowhere || last == kNowhere || follows(piece)) return;
    const Vec2 from = piece.edges[first].curve.end();
    const Vec2 to = piece.edges[last].curve.end();
    const Vec2 across = unit(to - from);
    const double width = distance(from, to);
    const std::string& id = piece.id;

    if (const double* arm = body("upper-arm-girth")) {
      const double bound = knit_ ? *arm / (1.0 + stretch_) : *arm + kWovenArmRoomMm;
      Limit& limit = add(
          "upper-arm-has-room", p,
          [&] { return "the " + id + " takes an upper arm of " + whole_mm(*arm); },
          [&] { return "the width of the " + id + " under its cap"; },
          [&] { return "keep the " + id + " at " + whole_mm(bound) + " or more under its cap"; });
      span(limit, {p, first}, {p, last}, across, Sense::at_least, bound);
    }
    const Vec2 up = left_normal(across).y >= 0.0 ? left_normal(across) : -left_normal(across);
    const auto height = [&] { return "the cap height of the " + id; };
    Limit& flat = add(
        "cap-not-too-flat", p,
        [&] { return "the cap of the " + id + " is not too flat to set in"; }, height,
        [&] { return "keep the cap " + whole_mm(kFlattest * width) + " high or more"; });
    span(flat, {p, first}, {p, crown}, up, Sense::at_least, kFlattest * width);
    Limit& steep = add(
        "cap-not-too-steep", p,
        [&] { return "the cap of the " + id + " is not too steep to lift the arm"; }, height,
        [&] { return "keep the cap " + whole_mm(kSteepest * width) + " high or less"; });
    span(steep, {p, first}, {p, crown}, up, Sense::at_most, kSteepest * width);
    sleeve_hem(p);
  }

  void sleeve_hem(std::size_t p) {
    const Piece& piece = block_.pieces[p];
    const double* hand = body("hand-girth");
    std::vector<LengthTerm> hem;
    double underarm = 0.0;
    for (std::size_t i = 0; i < piece.edges.size(); ++i) {
      if (piece.edges[i].role == EdgeRole::sleeve_hem) hem.push_back({{p, i}, 1.0});
      if (piece.edges[i].role == EdgeRole::underarm)
        underarm = std::max(underarm, length(piece.edges[i].curve));
    }
    if (hand == nullptr || hem.empty() || underarm < kLongSleeveMm) return;
    const double bound = *hand / (1.0 + stretch_);
    Limit& limit = add(
        "sleeve-hem-passes-hand", p,
        [&] { return "the hem of the " + piece.id + " passes a hand of " + whole_mm(*hand); },
        [&] { return "the hem of the " + piece.id; },
        [&] {
          return "keep the sleeve's hem at " + whole_mm(bound) + " or more, or give it a slit";
        });
    limit.found = sum(hem);
    limit.lengths = std::move(hem);
    limit.bound = bound;
  }

  void span(Limit& limit, CornerAt from, CornerAt to, Vec2 along, Sense sense, double bound) const {
    const auto at = [&](CornerAt c) { return block_.pieces[c.piece].edges[c.edge].curve.end(); };
    limit.span = SpanConstraint{limit.name, from, to, along, bound, sense, limit.relax};
    limit.sense = sense;
    limit.bound = bound;
    limit.found = dot(at(to) - at(from), along);
  }

  void underarm(std::size_t p) {
    const Piece& piece = block_.pieces[p];
    const std::size_t n = piece.edges.size();
    for (std::size_t i = 0; i < n; ++i) {
      const Edge& edge = piece.edges[i];
      if (edge.role != EdgeRole::armhole) continue;
      const bool starts_there = piece.edges[(i + n - 1) % n].role == EdgeRole::side;
      const bool ends_there = piece.edges[(i + 1) % n].role == EdgeRole::side;
      if ((!starts_there && !ends_there) || follows(piece)) continue;
      const double bend = std::abs(
          curvature(edge.curve, starts_there ? CurvePlace{0, 0.0}
                                             : CurvePlace{edge.curve.segments() - 1, 1.0}));
      Limit& limit = add(
          "underarm-bends-gently", p,
          [&] {
            return "the " + edge.id + " of the " + piece.id + " bends gently at the underarm";
          },
          [&] { return "the radius of the " + edge.id + " of the " + piece.id; },
          [&] {
            return "take a smaller amount, so that the curve stays wider than " +
                   whole_mm(kLeastRadiusMm);
          });
      limit.bound = kLeastRadiusMm;
      // As good as straight: a kilometre is far enough.
      limit.found = bend > 1e-6 ? 1.0 / bend : 1e6;
      limit.radius =
          RadiusConstraint{limit.name, {p, i}, starts_there, kLeastRadiusMm, limit.relax};
    }
  }

  const Block& block_;
  const Measurements& body_;
  bool words_;
  double stretch_;
  bool knit_;
  std::vector<Limit> all_;
};

double lack(const Limit& limit) {
  return limit.sense == Sense::at_most ? limit.found - limit.bound : limit.bound - limit.found;
}

}  // namespace

bool Limit::holds() const { return lack(*this) <= kLimitSlackMm; }

std::vector<Limit> limits_of(const Block& block, const Measurements& body, const Fabric& fabric,
                             Words words) {
  return Collector(block, body, fabric, words).take();
}

namespace {

const Limit* same_in(const std::vector<Limit>& all, const Limit& limit) {
  // A full piece has an armhole left and right.
  for (const Limit& l : all)
    if (limit.radius && l.radius && l.id == limit.id && l.radius->edge == limit.radius->edge)
      return &l;
  const auto found = std::find_if(all.begin(), all.end(), [&](const Limit& l) {
    return l.id == limit.id && l.piece == limit.piece;
  });
  return found == all.end() ? nullptr : &*found;
}

}  // namespace

void add_limits(const std::vector<Limit>& before, const Block& block, System& system, Words words) {
  std::set<EdgeAt> moving(system.free_edges.begin(), system.free_edges.end());
  std::set<CornerAt> corners;
  for (const FreeCorner& c : system.free_corners) {
    corners.insert(c.corner);
    moving.insert({c.corner.piece, c.corner.edge});
    moving.insert(
        {c.corner.piece, (c.corner.edge + 1) % block.pieces[c.corner.piece].edges.size()});
  }
  for (Limit& limit : limits_of(block, block.drafted_for.body, block.fabric, words)) {
    double bound = limit.bound;
    if (const Limit* was = same_in(before, limit); was != nullptr && !was->holds())
      bound =
          limit.sense == Sense::at_most ? std::max(bound, was->found) : std::min(bound, was->found);
    if (!limit.lengths.empty()) {
      const bool moves = std::any_of(limit.lengths.begin(), limit.lengths.end(),
                                     [&](const LengthTerm& t) { return moving.contains(t.edge); });
      if (moves)
        system.lengths.push_back({std::move(limit.name), std::move(limit.lengths), bound,
                                  limit.sense, std::move(limit.relax)});
    } else if (limit.span) {
      if (!corners.contains(limit.span->from) && !corners.contains(limit.span->to)) continue;
      limit.span->value = bound;
      system.spans.push_back(std::move(*limit.span));
    } else if (limit.radius && moving.contains(limit.radius->edge)) {
      limit.radius->least = bound;
      system.radii.push_back(std::move(*limit.radius));
    }
  }
}

namespace {

bool is_worse(const std::vector<Limit>& before, const Limit& limit) {
  if (limit.holds()) return false;
  const Limit* was = same_in(before, limit);
  return was == nullptr || lack(limit) > std::max(lack(*was), 0.0) + kLimitSlackMm;
}

}  // namespace

std::vector<Limit> newly_broken(const std::vector<Limit>& before, std::vector<Limit> now) {
  std::erase_if(now, [&](const Limit& l) { return !is_worse(before, l); });
  return now;
}

std::vector<Limit> newly_broken(const std::vector<Limit>& before, const Block& after,
                                const Measurements& body, const Fabric& fabric) {
  const std::vector<Limit> now = limits_of(after, body, fabric, Words::no);
  if (std::none_of(now.begin(), now.end(), [&](const Limit& l) { return is_worse(before, l); }))
    return {};
  return newly_broken(before, limits_of(after, body, fabric, Words::yes));
}

}  // namespace pinwright
