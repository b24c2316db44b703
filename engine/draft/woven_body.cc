#include <algorithm>
#include <cmath>
#include <string>
#include <utility>

#include "engine/draft/armhole.h"
#include "engine/draft/parts.h"
#include "engine/draft/waist.h"
#include "engine/draft/woven_statement.h"
#include "engine/geometry/arc_length.h"
#include "engine/pattern/level.h"

namespace pinwright::drafting {
namespace {

constexpr double kLeastBustDart = radians(1.0);
constexpr double kMostBustDart = radians(40.0);
constexpr double kMostFrontLean = radians(35.0);
constexpr double kMostBackLean = radians(35.0);
constexpr double kLeastLongerMm = 0.0;   // a front shorter than the back has no bust dart
constexpr double kMostLongerMm = 120.0;  // beyond, a failure is put down to the front's length
constexpr double kBustWithinMm = 0.1;
constexpr double kShortLeverMm = 15.0;  // of the side above the bust level, to hold a lean by

const Curve& edge(const Piece& piece, std::string_view id) { return find_edge(piece, id)->curve; }

WaistCorners waist_corners(const Piece& piece) {
  return {edge(piece, "waist-inner").start(), edge(piece, "waist-inner").end(),
          edge(piece, "waist-outer").start(), edge(piece, "waist-outer").end()};
}

/// The solved corners for the next sketch.
WovenFrontLines front_lines(const Piece& front) {
  return {waist_corners(front), edge(front, "side-lower").end(), edge(front, "side-upper").start(),
          edge(front, "side-upper").end(),
          edge(front, "neckline").start().y - edge(front, "neckline").end().y};
}

WovenBackLines back_lines(const Piece& back) {
  return {waist_corners(back), edge(back, "side").end()};
}

/// What the piece lacks of the wanted half width at its bust level.
double lack(const Piece& piece, std::string_view landmark, double wanted) {
  const double underarm = find_landmark(piece, "underarm-point")->at.y;
  const double y = std::min(find_landmark(piece, landmark)->at.y, underarm - 0.01);
  return wanted - cloth_width(piece, y).value_or(wanted);
}

Block sketched(const WovenPlan& plan, const WovenFrontLines& front, const WovenBackLines& back) {
  Block sketch;
  sketch.pieces = {sketch_front(plan, front), sketch_back(plan, back)};
  sketch.joins = woven_body_joins();
  return sketch;
}

/// Signed: with nothing left for it the dart would turn inside out.
double intake_of(const WovenFrontLines& lines) {
  return lines.waist.mouth_out.x - lines.waist.mouth_in.x;
}

/// The front's waist dart keeps its intake, and the side leans as that needs.
void hold_waist_dart(Stated& stated, const Piece& front, double intake) {
  stated.side_gives = true;
  stated.waist_dart = 2.0 * std::asin(intake / 2.0 / length(edge(front, "waist-dart-in")));
}

/// Landmarks that the solver moved along with their corners.
void follow(Piece& piece, const WovenPlan& plan) {
  const Curve& armhole = edge(piece, "armhole");
  const Vec2 up = end_tangent(piece.edges[edge_index(piece, "armhole") - 1].curve);
  for (Landmark& mark : piece.landmarks) {
    if (mark.id == "underarm-point") mark.at = armhole.start();
    if (mark.id == "waist-level") mark.at = edge(piece, "waist-inner").start();
    if (mark.id == "front-neck-point") mark.at = edge(piece, "neckline").end();
    if (mark.id == "bust-level") {
      mark.at.y = armhole.start().y - bust_below_underarm(plan) * up.y;
    }
  }
}

Problem front_impossible(const WovenPlan& plan) {
  return impossible(
      "front-waist-length",
      "The front is " + mm_text(longer(plan)) +
          " longer than the back from neck point to waist: no bust dart can take that up.",
      "Check front-waist-length against back-waist-length, and waist-girth against bust-girth.");
}

Problems front_limits(const Piece& front, const WovenPlan& plan) {
  const double dart = dart_angle(front, front.darts[0]);
  const Vec2 up = end_tangent(edge(front, "side-upper"));
  Problems problems;
  if (std::abs(std::atan2(up.x, up.y)) > kMostFrontLean || dart < kLeastBustDart ||
      dart > kMostBustDart) {
    problems.push_back(front_impossible(plan));
  }
  const Curve& neckline = edge(front, "neckline");
  const double depth = neckline.start().y - neckline.end().y;
  if (depth < neckline.start().x / 3.0 || neckline.end().y < plan.bust_point.y) {
    problems.push_back(impossible(
        "neck-base-girth", "No front neckline of " + mm_text(length(neckline)) + " can be drawn.",
        "Check neck-base-girth."));
  }
  return problems;
}

Problems back_limits(const Piece& back) {
  const Vec2 up = end_tangent(edge(back, "side"));
  const double lean = std::atan2(up.x, up.y);
  if (std::abs(lean) <= kMostBackLean &&
      edge(back, "side").start().x >= find_landmark(back, "shoulder-blade-point")->at.x + 30.0) {
    return {};
  }
  return {impossible(
      "waist-girth",
      "The back's side would lean " + std::to_string(std::lround(degrees(lean))) + " degrees.",
      "Check waist-girth against bust-girth.")};
}

Problem bust_impossible() {
  return impossible("neck-shoulder-point-to-bust-point",
                    "The bust level runs into a dart where the width cannot be laid out.",
                    "Check neck-shoulder-point-to-bust-point and front-waist-length against "
                    "scye-depth and back-waist-length.");
}

/// One drawing from these lines and statements.
Result<WovenBody> attempt(const WovenPlan& plan, WovenBackLines of_back, WovenFrontLines of_front,
                          Stated stated) {
  const double first_intake = intake_of(of_front);
  Result<Block> solved = settled([&]() -> Result<Statement::Solved> {
    Block sketch = sketched(plan, of_front, of_back);
    Result<Statement::Solved> made = state_woven(sketch, plan, stated).solved();
    if (!made && !stated.side_gives) {
      hold_waist_dart(stated, sketch.pieces[0], first_intake);
      sketch = sketched(plan, front_with_dart(plan, first_intake, true), of_back);
      made = state_woven(sketch, plan, stated).solved();
    }
    if (!made) return made;
    Piece& front = made->block.pieces[0];
    Piece& back = made->block.pieces[1];
    follow(front, plan);
    follow(back, plan);
    of_front = front_lines(front);
    of_back = back_lines(back);
    const double front_lack = lack(front, "bust-point", plan.front_bust);
    const double back_lack = lack(back, "bust-level", plan.back_bust);
    stated.front_bust += front_lack;
    if (!stated.side_gives) of_front.underarm.x += front_lack;
    stated.back_bust += back_lack;
    made->off_mm = std::max(std::abs(front_lack), std::abs(back_lack));
    const double intake = intake_of(of_front);
    const double held = std::clamp(intake, kLeastWaistDartMm, kMostWaistDartMm);
    if (held != intake && !stated.waist_dart) {
      hold_waist_dart(stated, front, held);
      of_front = front_with_dart(plan, held, true);
      made->off_mm = std::max(made->off_mm, std::abs(held - intake));
    }
    return made;
  });
  if (!solved) {
    if (longer(plan) > kMostLongerMm) return front_impossible(plan);
    return solved.problems();
  }
  Piece& front = solved->pieces[0];
  Piece& back = solved->pieces[1];
  Problems problems = front_limits(front, plan);
  for (const Problems& more : {back_limits(back), check_armhole(front), check_armhole(back)}) {
    problems.insert(problems.end(), more.begin(), more.end());
  }
  if (problems.empty() && std::abs(lack(front, "bust-point", plan.front_bust)) +
                                  std::abs(lack(back, "bust-level", plan.back_bust)) >
                              kBustWithinMm) {
    problems.push_back(bust_impossible());
  }
  if (!problems.empty()) return problems;
  return WovenBody{std::move(front), std::move(back)};
}

}  // namespace

Result<WovenBody> draw_woven_body(const WovenPlan& plan) {
  const Result<WovenBackLines> back = first_back(plan);
  if (!back) return back.problems();
  if (longer(plan) < kLeastLongerMm) return front_impossible(plan);
  const Result<WovenFrontLines> front = first_front(plan);
  if (!front) return front.problems();
  Stated stated{plan.front_bust, plan.back_bust, bust_below_underarm(plan) < kShortLeverMm,
                std::nullopt};
  Result<WovenBody> drawn = attempt(plan, *back, *front, stated);
  // The less the waist dart takes, the more the side leans and the larger the bust dart becomes.
  for (const double intake : {36.0, 24.0, kLeastWaistDartMm}) {
    if (drawn) break;
    const WovenFrontLines lines = front_with_dart(plan, intake, true);
    hold_waist_dart(stated, sketch_front(plan, lines), intake);
    Result<WovenBody> again = attempt(plan, *back, lines, stated);
    if (again) drawn = std::move(again);
  }
  return drawn;
}

}  // namespace pinwright::drafting
