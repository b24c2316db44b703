#pragma once
// The parts of restore(), one file each.

#include <set>
#include <utility>
#include <vector>

#include "engine/alteration/edit.h"
#include "engine/constraint/conflict.h"

namespace pinwright {

/// Edges whose points differ from those before the step.
std::set<EdgeAt> changed_edges(const Edit& edit);
/// Those edges with their curves as they are now.
std::vector<std::pair<EdgeAt, Curve>> changed_curves(const Edit& edit);
/// The problem "conflict" (of several statements) or "no-solution" (of one).
Problem conflict_problem(const Conflict& conflict);

/// Part 1 of restore(): solve_body.cc.
Result<Done> solve_body(Edit& edit);
/// Part 2: follow_cap.cc.
Result<Done> follow_cap(Edit& edit);
/// Part 3: follow_notches.cc.
Result<Done> follow_notches(Edit& edit);
/// Part 4: follow_strips.cc.
void follow_strips(Edit& edit);
void follow_linings(Edit& edit);
void follow_lines(Edit& edit);
/// The first of these curves that changes its curvature's sign more often than the edge did before
/// the step; piece == kNowhere when there is none. sound.cc.
EdgeAt first_wiggle(const Edit& edit, const std::vector<std::pair<EdgeAt, Curve>>& edges);
/// How stiff the curves are taken to be, in turn: a stiffer one moves more and bends less.
inline constexpr double kStiffness[] = {4.0, 60.0, 1000.0};
/// What a step must not do: sound.cc.
Result<Done> check_sound(const Edit& edit);

}  // namespace pinwright
