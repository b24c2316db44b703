#pragma once
// A step on a block whose left and right differ, or will.
//
//   block ─► left half ─► step ─┐
//        └─► right half ─► step ─┴─► both halves meet at the centre ─► joined; a piece is opened
//                                    only where they differ, and closes again where they do not
//
// The line of the centre serves both sides. When a step for one side moves the corners on it (a
// longer hem, a full bust that lowers the waist), they are held where the other side has them, and
// what was moved runs out to nothing there:
//
//      H--------.          H: the hem's correction is whole at the centre and nothing at the side
//                `--.S     seam, the neckline's goes over from the centre to the neck point; right
//                          angles at the fold are restored with the rest. Such an edge may gain
//                          one change of curvature, and no more.

#include <functional>
#include <map>
#include <string>

#include "engine/alteration/edit.h"
#include "engine/alteration/step.h"

namespace pinwright {

/// The centre edge that a piece must end up with, by piece id.
using CentreLines = std::map<std::string, Curve>;

/// Moves the corners C and H of bodice halves to where `lines` wants them. To be called after the
/// primary change and before restore(). Pieces without a line, or with it already, keep their bits.
/// "one-sided" when the change had moved nothing but corners that are held.
Result<Done> hold_centre(Edit& edit, const CentreLines& lines);

struct StepDone {
  Block block;
  StepNote note;
};

/// A step on a half block, its centre held along the lines given.
using HalfStep =
    std::function<Result<StepDone>(const Block& half, const Step& step, const CentreLines& lines)>;

/// A half with what the step needs to be there (notches, a dart); HalfStep has it done itself.
using Prepare = std::function<Result<Block>(const Block& half, const Step& step)>;

/// Side::left or Side::right: that half only; Side::both: each half by itself. The note names the
/// side and the pieces of the joined block. Problems: those of the step, the side named;
/// "one-sided" when the step changes nothing but what both sides share, or when left and right
/// would no longer have the same parts (a dart on one of them only; notches are set on both); those
/// of join_halves().
Result<StepDone> step_by_sides(const Block& block, const Step& step, const Prepare& prepare,
                               const HalfStep& half_step);

}  // namespace pinwright
