#include "engine/draft/knit_body.h"

#include <algorithm>
#include <cmath>
#include <string>
#include <utility>

#include "engine/draft/armhole.h"
#include "engine/draft/knit_half.h"
#include "engine/draft/knit_side.h"
#include "engine/draft/parts.h"
#include "engine/draft/statement.h"
#include "engine/geometry/arc_length.h"
#include "engine/geometry/fairing.h"
#include "engine/geometry/intersect.h"
#include "engine/pattern/level.h"

namespace pinwright::drafting {
namespace {

constexpr double kFirstDepthShare = 1.2;  // front neckline, of its half width
constexpr double kBustWithinMm = 0.1;
constexpr double kBelowUnderarmMm = 2.0;  // the bust is measured no higher

/// What one half's sketch is drawn from.
struct Half {
  Vec2 hem;
  Vec2 underarm;
  double neck_depth = 0.0;
};

Half first_half(const KnitPlan& plan) {
  Half half;
  const Vec2 waist{plan.waist_half / 2.0, plan.waist_y};
  half.hem.x = plan.hem_half / 2.0;
  half.hem.y = hem_rise(half.hem, waist);
  half.underarm = {plan.bust_half / 2.0, plan.underarm_y};
  return half;
}

class KnitSketch {
 public:
  explicit KnitSketch(const KnitPlan& plan)
      : plan_(plan), front_(first_half(plan)), back_(first_half(plan)) {
    front_.underarm.y += plan.extra_mm;
    front_.neck_depth = kFirstDepthShare * plan.shoulder.neck_width;
    // The back neckline is lowered by a third of what the neckline is widened.
    const double lowered = 0.35 * (plan.shoulder.neck_width - plan.shoulder.base_width);
    back_.neck_depth =
        std::max(neck(false).y - (plan.nape_y - lowered), 0.18 * plan.shoulder.neck_width);
  }

  double bust_front() const { return neck_base(true).y - plan_.bust_below_neck; }
  double across(bool front) const {
    const Half& half = front ? front_ : back_;
    const Vec2 shoulder = toward_neck(slope(front));
    return armhole_across({half.underarm,
                           {0.0, 1.0},
                           neck(front) - plan_.shoulder.length * shoulder,
                           shoulder,
                           front ? plan_.across_front : plan_.across_back});
  }

  Block drawn() const {
    Block block;
    block.pieces = {piece(true), piece(false)};
    block.joins = knit_body_joins();
    return block;
  }

  void take(const Block& solved) {
    for (const bool front : {true, false}) {
      Half& half = front ? front_ : back_;
      const Piece& piece = solved.pieces[front ? 0 : 1];
      half.hem = find_edge(piece, "side")->curve.start();
      half.underarm = find_edge(piece, "side")->curve.end();
      half.neck_depth = neck(front).y - find_edge(piece, "neckline")->curve.end().y;
    }
  }

 private:
  double slope(bool front) const {
    return front ? plan_.shoulder.front_slope : plan_.shoulder.back_slope;
  }
  /// The front is as much higher as its longer side makes its underarm point.
  Vec2 neck_base(bool front) const {
    const double raise = front ? front_.underarm.y - plan_.underarm_y : 0.0;
    return plan_.base + Vec2{0.0, raise};
  }
  Vec2 neck(bool front) const { return neck_point(plan_.shoulder, neck_base(front), slope(front)); }

  Piece piece(bool front) const {
    const Half& half = front ? front_ : back_;
    const Vec2 waist{plan_.waist_half / 2.0, plan_.waist_y};
    KnitHalfAsk ask;
    ask.front = front;
    ask.side = knit_side(half.hem, waist, half.underarm);
    ask.hem_slope = hem_slope(half.hem, waist);
    ask.slope = slope(front);
    ask.shoulder_mm = plan_.shoulder.length;
    const double turn = plan_.shoulder.neck_turn;
    ask.neckline = front
                       ? NecklineAsk{neck(true), front_neckline_start(slope(true), turn), 0.56, 2}
                       : NecklineAsk{neck(false), back_neckline_start(slope(false), turn), 0.60, 1};
    ask.neck_depth = half.neck_depth;
    ask.across_x = front ? plan_.across_front : plan_.across_back;
    ask.waist_y = plan_.waist_y;
    return knit_half(ask);
  }

  const KnitPlan& plan_;
  Half front_;
  Half back_;
};

/// Half way up the armhole, where across front and back are measured; a millimetre above the joint
/// of its two parts, which lies there.
double half_way_up(const Block& sketch, std::size_t piece) {
  const Curve& armhole = find_edge(sketch.pieces[piece], "armhole")->curve;
  return (armhole.start().y + armhole.end().y) / 2.0 + 1.0;
}

Problem side_impossible() {
  return impossible("bust-girth",
                    "No side seam can be drawn between this hip, waist and bust with the front "
                    "eased over the bust.",
                    "Check bust-girth, waist-girth and hip-girth, and back-waist-length against "
                    "scye-depth.");
}

/// Where the easing lies on the sketch: the back's bust level follows from it.
bool place_bust(const Block& sketch, const KnitPlan& plan, double bust_front, BustEasing& easing,
                double& bust_back) {
  const Curve& front = find_edge(sketch.pieces[0], "side")->curve;
  const Curve& back = find_edge(sketch.pieces[1], "side")->curve;
  if (!place_easing(front, bust_front, plan.extra_mm, easing)) return false;
  bust_back = point_at(back, length(back) - easing.below_back).y;
  return true;
}

/// What front and back together lack of half the bust, as drawn.
double bust_lack(const Block& solved, const KnitPlan& plan, double bust_front, double bust_back) {
  double half = 0.0;
  for (std::size_t p = 0; p < 2; ++p) {
    const double underarm = find_edge(solved.pieces[p], "side")->curve.end().y;
    const double level = std::min(p == 0 ? bust_front : bust_back, underarm);
    half += cloth_width(solved.pieces[p], level - 1e-6).value_or(0.0);
  }
  return plan.bust_half - half;
}

Statement stated(const Block& sketch, const KnitPlan& plan, const KnitSketch& lines,
                 double front_bust) {
  Statement holds(sketch);
  const std::string_view pieces[2] = {"front", "back"};
  const double bust_level = lines.bust_front();
  for (std::size_t p = 0; p < 2; ++p) {
    const bool front = p == 0;
    const std::string of = " of the " + std::string(pieces[p]);
    for (const std::string_view edge : {"hem", "side", "armhole", "neckline"}) {
      holds.bends(pieces[p], edge);
    }
    holds.moves(pieces[p], "hem", {true, true});
    holds.moves(pieces[p], "side", {true, front});
    const double underarm = find_edge(sketch.pieces[p], "side")->curve.end().y;
    if (front) {
      holds.width("the bust width" + of, pieces[p], "side",
                  std::min(bust_level, underarm - kBelowUnderarmMm), front_bust);
    }
    holds.width("the waist width" + of, pieces[p], "side", plan.waist_y, plan.waist_half / 2.0);
    holds.length("the hem" + of, {{pieces[p], "hem"}}, plan.hem_half / 2.0);
    holds.width("the width across" + of, pieces[p], "armhole", half_way_up(sketch, p),
                lines.across(front));
    holds.gentle_start("the armhole" + of + " bends gently at the underarm", pieces[p], "armhole",
                       kUnderarmRadiusMm);
  }
  holds.level_with("front and back meet at the hem", "front", "hem", "back", "hem", {0.0, 1.0});
  // Front and back share the quarter at the underarm; the bust is met by both together.
  holds.level_with("front and back meet at the underarm", "front", "side", "back", "side",
                   {1.0, 0.0});
  holds.moves("front", "neckline", {false, true});
  holds.length("the neckline goes round the neck base with its ease",
               {{"front", "neckline"}, {"back", "neckline"}}, plan.shoulder.neckline_mm / 2.0);
  holds.length("the side seam sews together, the front eased over the bust",
               {{"front", "side"}, {"back", "side", -1.0}}, plan.extra_mm);
  holds.joins();
  return holds;
}

/// Landmarks, notches and lines of the solved pieces.
void mark(Piece& piece, const KnitPlan& plan, const BustEasing& easing, double waist_mm) {
  const bool front = piece.id == "front";
  const Curve& side = find_edge(piece, "side")->curve;
  const double end = length(side);
  const double lower = easing.upper_notch + easing.span - (front ? 0.0 : plan.extra_mm);
  piece.notches = {{"waist-notch", "side", waist_mm},
                   {"bust-notch-lower", "side", end - lower},
                   {"bust-notch-upper", "side", end - easing.upper_notch}};
  for (Landmark& landmark : piece.landmarks) {
    if (landmark.id == "underarm-point") landmark.at = side.end();
    if (landmark.id == "front-neck-point") landmark.at = find_edge(piece, "neckline")->curve.end();
  }
}

void add_lengthen_line(Piece& piece, double y) {
  piece.lengthen_lines = {{"body", {0.0, y}, {side_x(find_edge(piece, "side")->curve, y), y}}};
}

}  // namespace

Result<KnitBody> draw_knit_body(const KnitPlan& plan) {
  if (plan.underarm_y - plan.waist_y < 40.0 + 4.0 * plan.extra_mm) {
    return impossible("scye-depth",
                      "The underarm point lies only " + mm_text(plan.underarm_y - plan.waist_y) +
                          " above the waist.",
                      "Check scye-depth against back-waist-length.");
  }
  KnitSketch lines(plan);
  BustEasing easing;
  double bust_back = 0.0;
  double front_bust = plan.bust_half / 2.0;
  double last_bust = front_bust;
  double last_lack = 0.0;
  Result<Block> solved = settled([&]() -> Result<Statement::Solved> {
    const Block sketch = lines.drawn();
    if (!place_bust(sketch, plan, lines.bust_front(), easing, bust_back)) return side_impossible();
    Result<Statement::Solved> made = stated(sketch, plan, lines, front_bust).solved();
    if (!made) return made;
    lines.take(made->block);
    if (!place_bust(made->block, plan, lines.bust_front(), easing, bust_back)) {
      return side_impossible();
    }
    const double lack = bust_lack(made->block, plan, lines.bust_front(), bust_back);
    // By the secant through the last two rounds: the next sketch moves the back as well.
    const double step = front_bust - last_bust;
    const double slope = step == 0.0 ? -3.0 : std::clamp((lack - last_lack) / step, -5.0, -1.0);
    last_lack = lack;
    last_bust = front_bust;
    front_bust -= lack / slope;
    made->off_mm = std::abs(lack);
    return made;
  });
  if (!solved) return solved.problems();
  Piece& front = solved->pieces[0];
  Piece& back = solved->pieces[1];
  if (!place_bust(*solved, plan, lines.bust_front(), easing, bust_back) ||
      std::abs(bust_lack(*solved, plan, lines.bust_front(), bust_back)) > kBustWithinMm) {
    return side_impossible();
  }
  const Curve& neckline = find_edge(front, "neckline")->curve;
  const double depth = neckline.start().y - neckline.end().y;
  if (depth < neckline.start().x / 3.0 || neckline.end().y < lines.bust_front() ||
      inflections(neckline) > 0) {
    return impossible("neck-base-girth",
                      "No front neckline of " + mm_text(length(neckline)) + " can be drawn.",
                      "Check neck-base-girth and head-girth.");
  }
  Problems problems = check_armhole(front);
  for (Problem& problem : check_armhole(back)) problems.push_back(std::move(problem));
  if (!problems.empty()) return problems;

  const Curve& side = find_edge(front, "side")->curve;
  const double waist_mm = length_to(side, at_height(side, plan.waist_y).front());
  mark(front, plan, easing, waist_mm);
  mark(back, plan, easing, waist_mm);
  front.landmarks.insert(front.landmarks.begin(),
                         {"bust-point", {plan.bust_x, lines.bust_front()}});
  back.landmarks.push_back({"bust-level", {0.0, bust_back}});
  back.landmarks.push_back(
      {"shoulder-blade-point", {0.5 * plan.across_back, plan.nape_y - 0.6 * plan.scye_depth}});
  const double lowest_notch =
      find_edge(back, "side")->curve.end().y - easing.upper_notch - easing.span + plan.extra_mm;
  for (Piece* piece : {&front, &back})
    add_lengthen_line(*piece, (plan.waist_y + lowest_notch) / 2.0);
  return KnitBody{std::move(front), std::move(back)};
}

}  // namespace pinwright::drafting
