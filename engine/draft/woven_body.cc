#include <algorithm>
#include <cmath>
#include <numbers>
#include <optional>
#include <string>
#include <utility>

#include "engine/draft/armhole.h"
#include "engine/draft/parts.h"
#include "engine/draft/sewing.h"
#include "engine/draft/statement.h"
#include "engine/draft/waist.h"
#include "engine/draft/woven.h"
#include "engine/geometry/arc_length.h"
#include "engine/geometry/fairing.h"
#include "engine/pattern/level.h"

namespace pinwright::drafting {
namespace {

constexpr double kLeastBustDart = radians(1.0);
constexpr double kMostBustDart = radians(40.0);
constexpr double kMostFrontLean = radians(35.0);
constexpr double kMostBackLean = radians(35.0);
constexpr double kBelowUnderarmMm = 2.0;  // the bust is measured no higher
constexpr double kLeastLongerMm = 0.0;    // a front shorter than the back has no bust dart
constexpr double kMostLongerMm = 120.0;   // beyond, a failure is put down to the front's length
constexpr double kBustWithinMm = 0.1;
constexpr double kShortLeverMm = 15.0;  // of the side above the bust level, to hold a lean by

const Curve& edge(const Piece& piece, std::string_view id) { return find_edge(piece, id)->curve; }

/// What is told to the solver apart from the plan.
struct Stated {
  double front_bust = 0.0;  ///< corrected where a dart crosses the bust level
  double back_bust = 0.0;
  bool side_gives = false;           ///< else the underarm point stays and the side keeps its lean
  std::optional<double> waist_dart;  ///< angle held, radians; the side gives then
};

double level_of(const Piece& piece, std::string_view landmark) {
  const double underarm = find_landmark(piece, "underarm-point")->at.y;
  return std::min(find_landmark(piece, landmark)->at.y, underarm - kBelowUnderarmMm);
}

/// Half way up the armhole, where across front and back are measured; a millimetre above the joint
/// of its two parts, which lies there.
double half_way_up(const Piece& piece) {
  const Curve& line = edge(piece, "armhole");
  return (line.start().y + line.end().y) / 2.0 + 1.0;
}

double across(const Piece& piece, double wanted) {
  const Curve& line = edge(piece, "armhole");
  const Edge& side = piece.edges[edge_index(piece, "armhole") - 1];
  const Edge& shoulder = piece.edges[edge_index(piece, "armhole") + 1];
  return armhole_across(
      {line.start(), end_tangent(side.curve), line.end(), start_tangent(shoulder.curve), wanted});
}

void state_front(Statement& holds, const Piece& front, const WovenPlan& plan,
                 const Stated& stated) {
  for (const std::string_view curve : {"waist-inner", "waist-outer", "armhole", "neckline"}) {
    holds.bends("front", curve);
  }
  for (const std::string_view before : {"waist-inner", "waist-dart-out", "side-lower"}) {
    holds.moves("front", before, {true, true});
  }
  holds.moves("front", "bust-dart-out", {true, false});  // the upper leg stays below the bust level
  holds.moves("front", "waist-outer", {true, false});
  holds.moves("front", "side-upper", {stated.side_gives, false});
  holds.moves("front", "neckline", {false, true});
  holds.moves("front", "centre-front", {false, true});
  // The level may run through the open mouth of the bust dart: the width is then laid out just
  // above it and corrected by what the piece lacks as sewn.
  const double level = level_of(front, "bust-point");
  const bool lower = level <= edge(front, "side-lower").end().y;
  const double least = edge(front, "side-upper").start().y + 1.0;
  holds.width("the bust width of the front", "front", lower ? "side-lower" : "side-upper",
              lower ? level : std::max(level, least), stated.front_bust);
  holds.length("the waist of the front", {{"front", "waist-inner"}, {"front", "waist-outer"}},
               plan.front_waist);
  holds.length("the front's length over the bust", {{"front", "waist-dart-in"}},
               edge(front, "waist-dart-in").end().y);
  holds.length("the legs of the front's waist dart are equal",
               {{"front", "waist-dart-in"}, {"front", "waist-dart-out", -1.0}}, 0.0);
  holds.length("the legs of the bust dart are equal",
               {{"front", "bust-dart-in"}, {"front", "bust-dart-out", -1.0}}, 0.0);
  holds.width("the width across the front", "front", "armhole", half_way_up(front),
              across(front, plan.front_across));
  holds.gentle_start("the armhole of the front bends gently at the underarm", "front", "armhole",
                     kUnderarmRadiusMm);
  holds.gentle_start("the armhole of the front bends gently at the underarm", "front", "armhole",
                     kUnderarmRadiusMm);
  if (stated.waist_dart) {
    holds.angle("the front's waist dart keeps within its limits", "front", "waist-dart-in",
                2.0 * std::numbers::pi - *stated.waist_dart);
  }
}

void state_back(Statement& holds, const Piece& back, const WovenPlan& plan, const Stated& stated) {
  for (const std::string_view curve : {"waist-inner", "waist-outer", "armhole", "neckline"}) {
    holds.bends("back", curve);
  }
  for (const std::string_view before : {"waist-inner", "waist-dart-out"}) {
    holds.moves("back", before, {true, true});
  }
  holds.moves("back", "waist-outer", {true, false});
  holds.moves("back", "side", {true, false});
  holds.width("the bust width of the back", "back", "side", level_of(back, "bust-level"),
              stated.back_bust);
  holds.length("the waist of the back", {{"back", "waist-inner"}, {"back", "waist-outer"}},
               plan.back_waist);
  holds.length("the legs of the back's waist dart are equal",
               {{"back", "waist-dart-in"}, {"back", "waist-dart-out", -1.0}}, 0.0);
  holds.angle("the back's waist dart", "back", "waist-dart-in",
              2.0 * std::numbers::pi - 2.0 * std::asin(back_waist_intake(plan) / 2.0 /
                                                       length(edge(back, "waist-dart-in"))));
  holds.width("the width across the back", "back", "armhole", half_way_up(back),
              across(back, plan.back_across));
  holds.gentle_start("the armhole of the back bends gently at the underarm", "back", "armhole",
                     kUnderarmRadiusMm);
  holds.gentle_start("the armhole of the back bends gently at the underarm", "back", "armhole",
                     kUnderarmRadiusMm);
}

Statement state(const Block& sketch, const WovenPlan& plan, const Stated& stated) {
  Statement holds(sketch);
  state_front(holds, sketch.pieces[0], plan, stated);
  state_back(holds, sketch.pieces[1], plan, stated);
  holds.length("the neckline goes round the neck base with its ease",
               {{"front", "neckline"}, {"back", "neckline"}}, plan.shoulder.neckline_mm / 2.0);
  holds.length("the side seam sews together",
               {{"front", "side-lower"}, {"front", "side-upper"}, {"back", "side", -1.0}}, 0.0);
  holds.joins();
  return holds;
}

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
    Result<Statement::Solved> made = state(sketch, plan, stated).solved();
    if (!made && !stated.side_gives) {
      hold_waist_dart(stated, sketch.pieces[0], first_intake);
      sketch = sketched(plan, front_with_dart(plan, first_intake, true), of_back);
      made = state(sketch, plan, stated).solved();
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

std::vector<Join> woven_body_joins() {
  return {running_on("neckline-over-shoulder", "Neckline over the shoulder seam",
                     {{"front", "shoulder", "neckline"}, {"back", "shoulder-inner", "neckline"}}),
          running_on("armhole-over-shoulder", "Armhole over the shoulder seam",
                     {{"front", "armhole", "shoulder"}, {"back", "armhole", "shoulder-outer"}}),
          running_on("armhole-over-side", "Armhole over the side seam",
                     {{"front", "side-upper", "armhole"}, {"back", "side", "armhole"}}),
          running_on("waist-over-side", "Waist over the side seam",
                     {{"front", "waist-outer", "side-lower"}, {"back", "waist-outer", "side"}}),
          running_on(
              "side-over-bust-dart", "Side over the bust dart",
              {{"front", "side-lower", "bust-dart-in"}, {"front", "bust-dart-out", "side-upper"}}),
          running_on("waist-over-front-dart", "Waist over the front's waist dart",
                     {{"front", "waist-inner", "waist-dart-in"},
                      {"front", "waist-dart-out", "waist-outer"}}),
          running_on("waist-over-back-dart", "Waist over the back's waist dart",
                     {{"back", "waist-inner", "waist-dart-in"},
                      {"back", "waist-dart-out", "waist-outer"}}),
          running_on("shoulder-over-dart", "Shoulder over the shoulder dart",
                     {{"back", "shoulder-outer", "shoulder-dart-in"},
                      {"back", "shoulder-dart-out", "shoulder-inner"}}),
          square_at_fold("neckline-at-centre-front", "Neckline at the centre front",
                         {"front", "neckline", "centre-front"}),
          square_at_fold("neckline-at-centre-back", "Neckline at the centre back",
                         {"back", "neckline", "centre-back"}),
          square_at_fold("waist-at-centre-front", "Waist at the centre front",
                         {"front", "centre-front", "waist-inner"}),
          square_at_fold("waist-at-centre-back", "Waist at the centre back",
                         {"back", "centre-back", "waist-inner"})};
}

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
