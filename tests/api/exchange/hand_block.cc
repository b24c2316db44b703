#include "tests/api/exchange/hand_block.h"

#include <numbers>

#include "engine/geometry/arc_length.h"

namespace pinwright::testing {
namespace {

Edge line(const char* id, EdgeRole role, Vec2 a, Vec2 b, double allowance,
          AllowanceKind kind = AllowanceKind::plain) {
  return {id, role, straight_curve(a, b), true, {allowance, kind}};
}

Edge curve(const char* id, EdgeRole role, std::vector<Vec2> points, double allowance) {
  return {id, role, Curve{std::move(points)}, false, {allowance, AllowanceKind::plain}};
}

Piece front() {
  Piece p;
  p.id = "front";
  p.name = "Front";
  p.edges = {
      line("hem", EdgeRole::hem, {0, 0}, {240, 0}, 20, AllowanceKind::hem),
      line("side-lower", EdgeRole::side, {240, 0}, {240, 170}, 10),
      line("bust-dart-in", EdgeRole::dart_leg, {240, 170}, {130, 185}, 0),
      line("bust-dart-out", EdgeRole::dart_leg, {130, 185}, {240, 200}, 0),
      line("side-upper", EdgeRole::side, {240, 200}, {240, 260}, 10),
      curve("armhole", EdgeRole::armhole, {{240, 260}, {190, 260}, {170, 330}, {170, 440}}, 10),
      line("shoulder", EdgeRole::shoulder, {170, 440}, {70, 470}, 10),
      curve("neckline", EdgeRole::neckline, {{70, 470}, {65, 420}, {35, 400}, {0, 400}}, 6),
      line("centre-front", EdgeRole::centre_front, {0, 400}, {0, 0}, 0)};
  p.notches = {{"side-notch", "side-lower", 80}, {"front-notch", "armhole", 90}};
  p.darts = {{"bust-dart", "bust-dart-in", "bust-dart-out", "bust-point"}};
  p.landmarks = {{"bust-point", {105, 185}}};
  p.lengthen_lines = {{"body-line", {0, 90}, {240, 90}}};
  p.grainline = {"grainline", {30, 60}, {30, 340}};
  p.fold = "centre-front";
  return p;
}

Piece back() {
  Piece p;
  p.id = "back";
  p.name = "Back";
  p.edges = {
      line("hem", EdgeRole::hem, {0, 0}, {240, 0}, 20, AllowanceKind::hem),
      line("side", EdgeRole::side, {240, 0}, {240, 230}, 10),
      curve("armhole", EdgeRole::armhole, {{240, 230}, {200, 230}, {180, 330}, {180, 440}}, 10),
      line("shoulder", EdgeRole::shoulder, {180, 440}, {80, 470}, 10),
      curve("neckline", EdgeRole::neckline, {{80, 470}, {75, 455}, {40, 450}, {0, 450}}, 6),
      line("centre-back", EdgeRole::centre_back, {0, 450}, {0, 0}, 0)};
  p.notches = {{"side-notch", "side", 80},
               {"back-notch-lower", "armhole", 90},
               {"back-notch-upper", "armhole", 100}};
  p.landmarks = {{"shoulder-blade-point", {95, 350}}};
  p.lengthen_lines = {{"body-line", {0, 90}, {240, 90}}};
  p.grainline = {"grainline", {30, 60}, {30, 400}};
  p.fold = "centre-back";
  return p;
}

Piece strip(double length) {
  Piece p;
  p.id = "neck-binding";
  p.name = "Neck binding";
  p.cloth = "rib";
  p.edges = {line("opening", EdgeRole::opening, {0, 0}, {length, 0}, 6),
             line("join-end", EdgeRole::join, {length, 0}, {length, 32}, 10),
             line("folded", EdgeRole::folded, {length, 32}, {0, 32}, 0),
             line("join-start", EdgeRole::join, {0, 32}, {0, 0}, 10)};
  p.grainline = {"grainline", {length / 2, 4}, {length / 2, 28}};
  return p;
}

}  // namespace

Block hand_block() {
  Block b;
  b.id = "hand-block";
  b.name = "Block made by hand";
  b.kind = "woven-bodice";
  b.size = "M";
  b.fabric = {"poplin", "Poplin", FabricKind::woven, 0.02, 0.0, 0.98};
  b.drafted_for = {"purser-1", {{"bust-girth", 920.0}, {"waist-girth", 740.25}}, {"stands erect"}};
  b.ease = {{"bust-girth", 80.0}, {"waist-girth", -12.5}};
  b.pieces = {front(), back()};
  const double opening = length(b.pieces[0].edges[7].curve) + length(b.pieces[1].edges[4].curve);
  b.pieces.push_back(strip(2.0 * opening * 0.9));
  b.seams = {{"shoulder",
              "Shoulder",
              {{"back", "shoulder", false}},
              {{"front", "shoulder", false}},
              {{"", "", 0.0}}},
             {"side",
              "Side seam",
              {{"front", "side-lower", false}, {"front", "side-upper", false}},
              {{"back", "side", false}},
              {{"side-notch", "side-notch", 0.0}, {"", "", 0.0}}}};
  b.joins = {{"hem-over-side",
              "Hem over the side seam",
              {{"front", "hem", "side-lower"}, {"back", "hem", "side"}},
              std::numbers::pi},
             {"neckline-at-centre-front",
              "Neckline at the fold",
              {{"front", "neckline", "centre-front"}},
              std::numbers::pi / 2}};
  b.bindings = {{"neck-binding",
                 "neck-binding",
                 {{"front", "neckline", false}, {"back", "neckline", true}},
                 2,
                 0.9,
                 16.0}};
  return b;
}

}  // namespace pinwright::testing
