#include "engine/pattern/measures.h"

#include <algorithm>
#include <cmath>
#include <numbers>

#include "engine/geometry/arc_length.h"
#include "engine/pattern/level.h"
#include "engine/pattern/opened_piece.h"
#include "engine/pattern/sides.h"

namespace pinwright {
namespace {

/// A level is taken this far below the underarm point at the highest: at the very corner it is
/// chance whether a line meets the side or the armhole.
constexpr double kBelowCornerMm = 0.01;

using Amount = std::optional<double>;

Amount role_length(const Piece* piece, EdgeRole role) {
  if (piece == nullptr || edge_of_role(*piece, role) == nullptr) return std::nullopt;
  double sum = 0.0;
  for (const Edge& edge : piece->edges) {
    if (edge.role == role) sum += length(edge.curve);
  }
  return sum;
}

Amount sum(Amount a, Amount b) {
  if (!a || !b) return std::nullopt;
  return *a + *b;
}

Amount twice(Amount a) {
  if (!a) return std::nullopt;
  return 2.0 * *a;
}

const Edge* last_of_role(const Piece& piece, EdgeRole role) {
  const Edge* last = nullptr;
  for (const Edge& edge : piece.edges) {
    if (edge.role == role) last = &edge;
  }
  return last;
}

/// Half width at the height of a landmark; never above the underarm point.
Amount width_at(const Piece* piece, std::string_view landmark, bool else_underarm) {
  if (piece == nullptr) return std::nullopt;
  const Edge* armhole = edge_of_role(*piece, EdgeRole::armhole);
  const Landmark* mark = find_landmark(*piece, landmark);
  if (mark == nullptr && (!else_underarm || armhole == nullptr)) return std::nullopt;
  double y = mark != nullptr ? mark->at.y : armhole->curve.start().y;
  if (armhole != nullptr) y = std::min(y, armhole->curve.start().y - kBelowCornerMm);
  return cloth_width(*piece, y);
}

Amount waist_half(const Piece* piece) {
  const Amount sewn = role_length(piece, EdgeRole::waist);
  return sewn ? sewn : width_at(piece, "waist-level", false);
}

Amount across(const Piece* piece) {
  if (piece == nullptr) return std::nullopt;
  const Edge* armhole = edge_of_role(*piece, EdgeRole::armhole);
  if (armhole == nullptr) return std::nullopt;
  const double y = (armhole->curve.start().y + armhole->curve.end().y) / 2.0;
  return twice(cloth_width(*piece, y));
}

Amount height_between(const Piece* piece, EdgeRole role) {
  const Edge* edge = piece == nullptr ? nullptr : edge_of_role(*piece, role);
  if (edge == nullptr) return std::nullopt;
  return std::abs(edge->curve.end().y - edge->curve.start().y);
}

/// Fall of the shoulder from neck to tip.
Amount slope(const Piece* piece) {
  const Edge* first = piece == nullptr ? nullptr : edge_of_role(*piece, EdgeRole::shoulder);
  if (first == nullptr) return std::nullopt;
  const Vec2 d = last_of_role(*piece, EdgeRole::shoulder)->curve.end() - first->curve.start();
  return std::atan2(d.y, std::abs(d.x));
}

Amount mean(Amount a, Amount b) {
  if (!a || !b) return a ? a : b;
  return (*a + *b) / 2.0;
}

class List {
 public:
  void add(const char* id, const char* name, MeasureKind kind, Amount value,
           std::optional<std::string> body = std::nullopt) {
    if (value && std::isfinite(*value)) all_.push_back({id, name, kind, *value, std::move(body)});
  }
  std::vector<GarmentMeasure> take() { return std::move(all_); }

 private:
  std::vector<GarmentMeasure> all_;
};

void add_sleeve(const Piece* sleeve, List& list) {
  list.add("cap-length", "Sleeve cap length", MeasureKind::each,
           role_length(sleeve, EdgeRole::cap));
  if (sleeve != nullptr) {
    const Edge* first = edge_of_role(*sleeve, EdgeRole::cap);
    const Edge* last = last_of_role(*sleeve, EdgeRole::cap);
    if (first != nullptr && first != last) {
      const double base = (first->curve.start().y + last->curve.end().y) / 2.0;
      list.add("cap-height", "Sleeve cap height", MeasureKind::each, first->curve.end().y - base);
    }
  }
}

Amount upper_arm(const Piece* sleeve) {
  if (sleeve == nullptr) return std::nullopt;
  const Edge* first = edge_of_role(*sleeve, EdgeRole::cap);
  const Edge* last = last_of_role(*sleeve, EdgeRole::cap);
  if (first == nullptr || first == last) return std::nullopt;
  return distance(first->curve.start(), last->curve.end());
}

/// Crown to the middle of the hem.
Amount sleeve_length(const Piece* sleeve) {
  if (sleeve == nullptr) return std::nullopt;
  const Edge* cap = edge_of_role(*sleeve, EdgeRole::cap);
  const Edge* hem = edge_of_role(*sleeve, EdgeRole::sleeve_hem);
  if (cap == nullptr || hem == nullptr) return std::nullopt;
  return distance(cap->curve.end(), lerp(hem->curve.start(), hem->curve.end(), 0.5));
}

// Of a block whose sides are alike.
std::vector<GarmentMeasure> half_measures(const Block& block) {
  const Piece* front = find_piece(block, "front");
  const Piece* back = find_piece(block, "back");
  const Piece* sleeve = find_piece(block, "sleeve");
  const Piece* strip = find_piece(block, "neck-binding");
  const bool to_waist = role_length(back, EdgeRole::waist).has_value();
  using enum MeasureKind;

  List list;
  list.add("bust-girth", "Bust girth", girth,
           twice(sum(width_at(front, "bust-point", true), width_at(back, "bust-level", true))),
           "bust-girth");
  list.add("front-bust-width", "Front width at the bust", girth,
           twice(width_at(front, "bust-point", true)));
  list.add("back-bust-width", "Back width at the bust", girth,
           twice(width_at(back, "bust-level", true)));
  list.add("waist-girth", "Waist girth", girth, twice(sum(waist_half(front), waist_half(back))),
           "waist-girth");
  list.add("hem-girth", "Hem girth", girth,
           twice(sum(role_length(front, EdgeRole::hem), role_length(back, EdgeRole::hem))),
           "hip-girth");
  list.add("upper-arm-girth", "Upper arm girth", each, upper_arm(sleeve), "upper-arm-girth");
  list.add(
      "neckline-length", "Neckline length", girth,
      twice(sum(role_length(front, EdgeRole::neckline), role_length(back, EdgeRole::neckline))),
      "neck-base-girth");
  list.add("front-neckline-length", "Front neckline length", girth,
           twice(role_length(front, EdgeRole::neckline)));
  list.add("back-neckline-length", "Back neckline length", girth,
           twice(role_length(back, EdgeRole::neckline)));
  list.add("armhole-length", "Armhole length", each,
           sum(role_length(front, EdgeRole::armhole), role_length(back, EdgeRole::armhole)));
  list.add("front-armhole-length", "Front armhole length", each,
           role_length(front, EdgeRole::armhole));
  list.add("back-armhole-length", "Back armhole length", each,
           role_length(back, EdgeRole::armhole));
  add_sleeve(sleeve, list);
  list.add("shoulder-length", "Shoulder length", each, role_length(front, EdgeRole::shoulder),
           "shoulder-length");
  list.add("shoulder-slope", "Shoulder slope", angle, mean(slope(front), slope(back)));
  list.add("front-shoulder-slope", "Front shoulder slope", angle, slope(front));
  list.add("back-shoulder-slope", "Back shoulder slope", angle, slope(back));
  list.add("front-length", "Centre front length", MeasureKind::distance,
           role_length(front, EdgeRole::centre_front),
           to_waist ? std::optional<std::string>("centre-front-waist-length") : std::nullopt);
  list.add("back-length", "Centre back length", MeasureKind::distance,
           role_length(back, EdgeRole::centre_back),
           to_waist ? std::optional<std::string>("back-waist-length") : std::nullopt);
  list.add("front-neck-depth", "Front neck depth", MeasureKind::distance,
           height_between(front, EdgeRole::neckline));
  list.add("back-neck-depth", "Back neck depth", MeasureKind::distance,
           height_between(back, EdgeRole::neckline));
  list.add("across-front-width", "Across front width", girth, across(front), "across-front-width");
  list.add("across-back-width", "Across back width", girth, across(back), "across-back-width");
  list.add("armhole-depth", "Armhole depth", MeasureKind::distance,
           height_between(back, EdgeRole::armhole));
  list.add("side-length", "Side seam length", MeasureKind::distance,
           role_length(back, EdgeRole::side));
  list.add("front-side-length", "Front side length", MeasureKind::distance,
           role_length(front, EdgeRole::side));
  list.add("sleeve-length", "Sleeve length", MeasureKind::distance, sleeve_length(sleeve));
  list.add("sleeve-hem-girth", "Sleeve hem girth", each, role_length(sleeve, EdgeRole::sleeve_hem));
  list.add("neck-binding-length", "Neck binding length", girth,
           role_length(strip, EdgeRole::opening));
  return list.take();
}

/// Sides that differ by less are alike: what the solver leaves, and a pencil does not show.
constexpr double kSameMm = 0.01;
constexpr double kSameAngle = 1e-4;

}  // namespace

std::vector<GarmentMeasure> measures(const Block& block) {
  if (!is_opened(block)) return half_measures(block);
  const Result<Block> left = half_block(block, Side::left);
  const Result<Block> right = half_block(block, Side::right);
  if (!left || !right) return {};
  const std::vector<GarmentMeasure> of_left = half_measures(*left);
  const std::vector<GarmentMeasure> of_right = half_measures(*right);
  std::vector<GarmentMeasure> all;
  for (const GarmentMeasure& l : of_left) {
    const GarmentMeasure* r = find_measure(of_right, l.id);
    if (r == nullptr) continue;
    all.push_back(l);
    all.back().value = (l.value + r->value) / 2.0;
    const double alike = l.kind == MeasureKind::angle ? kSameAngle : kSameMm;
    if (l.kind == MeasureKind::girth || std::abs(l.value - r->value) <= alike) continue;
    for (const auto& [side, one] : {std::pair{Side::left, &l}, std::pair{Side::right, r}}) {
      all.push_back(*one);
      all.back().id = with_side(one->id, side);
      all.back().name = one->name + ", " + std::string(to_text(side));
    }
  }
  return all;
}

const GarmentMeasure* find_measure(const std::vector<GarmentMeasure>& all, std::string_view id) {
  for (const GarmentMeasure& measure : all) {
    if (measure.id == id) return &measure;
  }
  for (const Side side : {Side::left, Side::right})
    if (const auto plain = without_side(std::string(id), side)) return find_measure(all, *plain);
  return nullptr;
}

}  // namespace pinwright
