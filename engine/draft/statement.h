#pragma once
// What must hold on a sketch, stated in the trade's words and handed to the constraint solver.
//
//   sketch ──► Statement: what may move, what must hold ──► solve() ──► the drawn block
//
// A draft is sketched by proportions first; no length of the sketch is right. Its lengths, widths
// and angles are then stated, and one system (engine/constraint/system.h) moves the control points
// until all of them hold at once.

#include <functional>
#include <string>
#include <string_view>
#include <vector>

#include "engine/base/result.h"
#include "engine/constraint/system.h"

namespace pinwright::drafting {

/// An edge by names; `factor` as in LengthTerm.
struct Term {
  std::string_view piece;
  std::string_view edge;
  double factor = 1.0;
};

class Statement {
 public:
  /// The sketch must outlive the statement. REQUIRES: every piece and edge named below is in it.
  explicit Statement(const Block& sketch);

  /// The inner points of an edge may move.
  void bends(std::string_view piece, std::string_view edge);
  /// The corner in which an edge ends may move.
  void moves(std::string_view piece, std::string_view edge, Freedom freedom);
  /// The edges together are `mm` long.
  void length(std::string name, const std::vector<Term>& terms, double mm);
  /// The edge lies at x where it crosses a level.
  void width(std::string name, std::string_view piece, std::string_view edge, double level,
             double x);
  /// The angle inside a piece at the corner in which an edge ends.
  void angle(std::string name, std::string_view piece, std::string_view edge, double radians);
  /// Two corners lie level with each other, seen along a direction.
  void level_with(std::string name, std::string_view piece_a, std::string_view edge_a,
                  std::string_view piece_b, std::string_view edge_b, Vec2 along);
  /// The edge starts no more sharply bent than a circle of radius `least`.
  void gentle_start(std::string name, std::string_view piece, std::string_view edge, double least);
  /// All joins of the sketch: lines run on over seams and darts, and are square to the fold.
  void joins();

  struct Solved {
    Block block;
    double most_moved_mm = 0.0;
    double off_mm = 0.0;  ///< what the round knows to be still to correct in the next one
    /// "armhole of the back": turns more often than its sketch, and lies more than kInvisibleMm off
    /// it; else empty.
    std::string wiggle;
  };
  /// Where the sketch is too far off for one solve, the values stated are approached in parts.
  /// Errors: "draft-impossible", naming what could not be met. The lines keep their shape: bending
  /// costs kStiffness times as much as moving, so that corners travel and curves follow.
  Result<Solved> solved() const;

 private:
  EdgeAt at(std::string_view piece, std::string_view edge) const;

  const Block& sketch_;
  System system_;
};

inline constexpr double kStiffness = 400.0;
inline constexpr double kInvisibleMm = 0.3;  // less than a pencil line

/// What a round of sketch() and statement leaves, for the next sketch; see settled().
using Round = std::function<Result<Statement::Solved>()>;

/// Sketches and solves until nothing is left to correct and the solver moves nothing by more than
/// kSettledMm, or comes to the same lines as the round before (a limit holds them off their
/// sketch), at most kMostRounds times: each
/// round sketches anew through the corners that the one before found, so that the lines keep the
/// fairness of a sketch. The last round's block is exact in any case.
Result<Block> settled(const Round& round);
inline constexpr double kSettledMm = 2e-3;
inline constexpr int kMostRounds = 16;

}  // namespace pinwright::drafting
