#include "engine/alteration/alter.h"

#include <charconv>
#include <functional>

#include "engine/alteration/edit.h"
#include "engine/alteration/one_sided.h"
#include "engine/alteration/operations.h"
#include "engine/alteration/restore.h"
#include "engine/pattern/sides.h"

namespace pinwright {
namespace {

// The option that was given, or the catalogue's default.
std::string option(const Step& step, std::string_view key) {
  const auto given = step.options.find(std::string(key));
  if (given != step.options.end()) return given->second;
  for (const OptionInfo& o : find_operation(step.operation)->options)
    if (o.key == key) return std::string(o.values.front());
  return {};
}

HalfMm half_of(const Step& step) {
  return step.of == Of::whole ? WholeMm(step.amount).half() : HalfMm(step.amount);
}
DistanceMm distance_of(const Step& step) { return DistanceMm(step.amount); }

using Operation = std::function<Result<Done>(Edit&, const Step&)>;

// Nothing for operations that move no line.
Operation operation_of(std::string_view id) {
  if (id == "close-wedge") {
    return [](Edit& e, const Step& s) {
      return close_wedge(e, half_of(s), option(s, "piece"), option(s, "edge"), option(s, "hinge"));
    };
  }
  if (id == "lower-neckline")
    return [](Edit& e, const Step& s) {
      return lower_neckline(e, distance_of(s), option(s, "piece"));
    };
  if (id == "widen-neckline")
    return [](Edit& e, const Step& s) { return widen_neckline(e, distance_of(s)); };
  if (id == "swing-shoulder") {
    return [](Edit& e, const Step& s) {
      return swing_shoulder(e, distance_of(s), option(s, "armhole") == "follows");
    };
  }
  if (id == "move-shoulder-tip")
    return [](Edit& e, const Step& s) { return move_shoulder_tip(e, distance_of(s)); };
  if (id == "shift-shoulder-seam") {
    return [](Edit& e, const Step& s) {
      return shift_shoulder_seam(e, distance_of(s), option(s, "from") == "whole");
    };
  }
  if (id == "shorten-chest")
    return [](Edit& e, const Step& s) { return shorten_chest(e, distance_of(s)); };
  if (id == "lengthen-upper-back") {
    return [](Edit& e, const Step& s) {
      return lengthen_upper_back(e, distance_of(s), option(s, "surplus") == "eased");
    };
  }
  if (id == "raise-back-neck")
    return [](Edit& e, const Step& s) { return lower_neckline(e, DistanceMm(-s.amount), "back"); };
  if (id == "move-armhole-forward")
    return [](Edit& e, const Step& s) { return move_armhole_forward(e, distance_of(s)); };
  if (id == "widen-back" || id == "widen-chest") {
    return [](Edit& e, const Step& s) {
      return widen_across(e, half_of(s), s.operation == "widen-back" ? "back" : "front",
                          option(s, "way") == "whole");
    };
  }
  if (id == "tuck-back-waist")
    return [](Edit& e, const Step& s) { return tuck_back_waist(e, distance_of(s)); };
  if (id == "resize-neckline")
    return [](Edit& e, const Step& s) { return resize_neckline(e, distance_of(s)); };
  if (id == "move-neck-forward")
    return [](Edit& e, const Step& s) { return move_neck_forward(e, distance_of(s)); };
  if (id == "deepen-blade-dart") {
    return [](Edit& e, const Step& s) {
      return deepen_blade_dart(e, half_of(s), option(s, "hinge") == "waist");
    };
  }
  if (id == "lower-underarm")
    return [](Edit& e, const Step& s) { return lower_underarm(e, distance_of(s)); };
  if (id == "let-out-side")
    return [](Edit& e, const Step& s) { return let_out_side(e, half_of(s), option(s, "level")); };
  if (id == "full-bust") return [](Edit& e, const Step& s) { return full_bust(e, half_of(s)); };
  if (id == "lengthen-over-bust")
    return [](Edit& e, const Step& s) { return lengthen_over_bust(e, distance_of(s)); };
  if (id == "lengthen")
    return [](Edit& e, const Step& s) { return lengthen(e, distance_of(s), option(s, "piece")); };
  if (id == "widen-upper-arm")
    return [](Edit& e, const Step& s) { return widen_upper_arm(e, WholeMm(s.amount)); };
  if (id == "raise-cap")
    return [](Edit& e, const Step& s) {
      return raise_cap(e, distance_of(s), option(s, "gives") == "upper-arm");
    };
  if (id == "ease-cap")
    return [](Edit& e, const Step& s) { return ease_cap(e, WholeMm(s.amount)); };
  if (id == "turn-sleeve")
    return [](Edit& e, const Step& s) {
      return turn_sleeve(e, distance_of(s), option(s, "underarm") == "follows");
    };
  if (id == "widen-sleeve-hem")
    return [](Edit& e, const Step& s) { return widen_sleeve_hem(e, WholeMm(s.amount)); };
  if (id == "ease-elbow")
    return [](Edit& e, const Step& s) { return ease_elbow(e, distance_of(s)); };
  if (id == "flare-hem") return [](Edit& e, const Step& s) { return flare_hem(e, half_of(s)); };
  if (id == "scoop-edge")
    return [](Edit& e, const Step& s) {
      return scoop_edge(e, distance_of(s), option(s, "piece"), option(s, "edge"));
    };
  if (id == "let-out-dart")
    return [](Edit& e, const Step& s) { return let_out_dart(e, half_of(s), option(s, "piece")); };
  if (id == "move-bust-point")
    return [](Edit& e, const Step& s) {
      return move_bust_point(e, distance_of(s), option(s, "direction") == "sideways");
    };
  if (id == "rotate-dart")
    return [](Edit& e, const Step& s) {
      return rotate_dart(e, s.amount, option(s, "piece"), option(s, "from"), option(s, "to"));
    };
  if (id == "divide-dart")
    return [](Edit& e, const Step& s) {
      return divide_dart(e, s.amount, option(s, "piece"), option(s, "seam"));
    };
  if (id == "ease-dart")
    return [](Edit& e, const Step& s) {
      return ease_dart(e, s.amount, option(s, "piece"), option(s, "seam"));
    };
  if (id == "lengthen-dart")
    return [](Edit& e, const Step& s) {
      return lengthen_dart(e, distance_of(s), option(s, "piece"), option(s, "seam"));
    };
  if (id == "set-binding-ratio") {
    return [](Edit& e, const Step& s) {
      return set_binding_ratio(e, s.amount, option(s, "binding"), option(s, "cloth"));
    };
  }
  return {};
}

// What changes the parts that a block has, before the step itself: notches, a dart without intake,
// a dart turned into another. Nothing for most.
using Preparation = std::function<Result<Block>(const Block&, const Step&)>;

Preparation preparation_of(std::string_view id) {
  if (id == "ease-elbow") return [](const Block& b, const Step&) { return with_elbow_notches(b); };
  if (id == "full-bust")
    return [](const Block& b, const Step& s) {
      return with_bust_dart(b, option(s, "takes-up") == "new-dart");
    };
  if (id == "lengthen-over-bust")
    return [](const Block& b, const Step&) { return with_bust_dart(b, false); };
  if (id == "rotate-dart")
    return [](const Block& b, const Step& s) {
      return with_dart_rotated(b, s.amount, option(s, "piece"), option(s, "from"), option(s, "to"));
    };
  if (id == "divide-dart")
    return [](const Block& b, const Step& s) {
      return with_dart_divided(b, s.amount, option(s, "piece"), option(s, "seam"));
    };
  if (id == "ease-dart")
    return [](const Block& b, const Step& s) {
      return with_dart_eased(b, s.amount, option(s, "piece"), option(s, "seam"));
    };
  return {};
}

Problems placed(Problems problems, const std::string& prefix) {
  for (Problem& p : problems)
    if (p.place.empty() || p.place.front() == '/')
      p.place = prefix + p.place;
    else
      p.place = prefix + " (" + p.place + ")";
  return problems;
}

// A block with what the step needs to be there; itself for most.
Result<Block> prepared(const Block& block, const Step& step) {
  const Preparation prepare = preparation_of(step.operation);
  return prepare ? prepare(block, step) : Result<Block>(block);
}

// On halves that serve both sides, or on the half of one side, its centre held.
Result<StepDone> do_on_half(const Block& half, const Step& step, const CentreLines& centre) {
  std::optional<Block> ready;
  if (preparation_of(step.operation)) {
    Result<Block> made = prepared(half, step);
    if (!made) return made.problems();
    ready = std::move(*made);
  }
  Edit edit(ready ? *ready : half);
  edit.given = &half;
  edit.side = step.side;
  const Result<Done> changed = operation_of(step.operation)(edit, step);
  if (!changed) return changed.problems();
  const Result<Done> held = hold_centre(edit, centre);
  if (!held) return held.problems();
  const Result<Done> restored = restore(edit);
  if (!restored) return restored.problems();
  return StepDone{std::move(edit.block), std::move(edit.note)};
}

Result<StepDone> do_step(const Block& start, const Step& step) {
  if (!operation_of(step.operation)) {
    StepDone done{start, {}};
    done.note.text = std::string(find_operation(step.operation)->name) + ": no line moves";
    return done;
  }
  if (step.side == Side::both && !is_opened(start)) return do_on_half(start, step, {});
  return step_by_sides(start, step, prepared, do_on_half);
}

}  // namespace

Result<Altered> alter(const Block& block, const std::vector<Step>& steps) {
  Problems problems;
  for (std::size_t i = 0; i < steps.size(); ++i) {
    const Problems found = check_step(steps[i], "/steps/" + std::to_string(i));
    problems.insert(problems.end(), found.begin(), found.end());
  }
  if (steps.empty()) {
    problems.push_back({"steps-missing", "/steps", "there is no step to do",
                        "give at least one step, or name a proposal"});
  }
  if (!problems.empty()) return problems;
  Altered altered{block, {}};
  for (std::size_t i = 0; i < steps.size(); ++i) {
    Result<StepDone> done = do_step(altered.block, steps[i]);
    if (!done) return placed(done.problems(), "/steps/" + std::to_string(i));
    done->note.step = i;
    altered.notes.push_back(std::move(done->note));
    altered.block = std::move(done->block);
  }
  return altered;
}

std::optional<std::size_t> step_named(std::string_view place, std::size_t count) {
  constexpr std::string_view kHead = "/steps/";
  if (!place.starts_with(kHead)) return {};
  std::size_t step = count;
  std::from_chars(place.data() + kHead.size(), place.data() + place.size(), step);
  return step < count ? std::optional<std::size_t>(step) : std::nullopt;
}

}  // namespace pinwright
