#include "knowledge/amounts_told.h"

#include <algorithm>

namespace pinwright::knowledge {
namespace {

const Makes* made(const Cause& cause, const std::string& sign) {
  for (const auto& m : cause.makes)
    if (m.sign == sign) return &m;
  return nullptr;
}

bool leads(const Knowledge& k, const Cause& cause, const std::string& sign) {
  return std::any_of(k.problems.begin(), k.problems.end(), [&](const FitProblem& p) {
    return p.sign == sign &&
           std::find(p.causes.begin(), p.causes.end(), cause.id) != p.causes.end();
  });
}

ToldSide told_on(const Knowledge& k, const Cause& cause, const std::vector<const Finding*>& with,
                 Side side) {
  ToldSide told;
  told.side = side;
  double best = -1.0;
  for (const Finding* f : with) {
    if (side != Side::both && f->side != Side::both && f->side != side) continue;
    // The side's own amount goes before one told for both.
    const bool own = f->side == side;
    if (told.of_sign.contains(f->sign) && !own) continue;
    told.of_sign[f->sign] = *f->amount;
    const double rank = (leads(k, cause, f->sign) ? 1.0 : 0.0) + made(cause, f->sign)->strength;
    if (rank >= best) {
      best = rank;
      told.any = f->amount;
    }
  }
  return told;
}

}  // namespace

std::vector<ToldSide> amounts_told(const Knowledge& k, const Cause& cause,
                                   const std::vector<Finding>& findings) {
  std::vector<const Finding*> with;
  bool left = false;
  bool right = false;
  bool both = false;
  for (const auto& f : findings) {
    if (f.state != FindingState::present || made(cause, f.sign) == nullptr) continue;
    left = left || f.side == Side::left;
    right = right || f.side == Side::right;
    both = both || f.side == Side::both;
    if (f.amount) with.push_back(&f);
  }
  if (!left && !right) return {told_on(k, cause, with, Side::both)};
  const ToldSide on_left = told_on(k, cause, with, Side::left);
  const ToldSide on_right = told_on(k, cause, with, Side::right);
  if (left && !right && !both) return {on_left};
  if (right && !left && !both) return {on_right};
  if (on_left.of_sign == on_right.of_sign) {
    ToldSide same = on_left;
    // One side was told, the rest for both without an amount: the told side only.
    same.side = left && !right && !with.empty()   ? Side::left
                : right && !left && !with.empty() ? Side::right
                                                  : Side::both;
    if (left && right) same.side = Side::both;
    return {same};
  }
  return {on_left, on_right};
}

}  // namespace pinwright::knowledge
