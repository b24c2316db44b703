#include "knowledge/joint.h"

#include <algorithm>
#include <cmath>

#include "engine/sizing/measure_limits.h"
#include "engine/sizing/targets.h"
#include "knowledge/joint_choice.h"
#include "knowledge/measure_of.h"

namespace pinwright::knowledge {
namespace {

constexpr double kNothing = 0.05;  // mm: a pencil line is 0.5 mm wide
constexpr int kHalvings = 6;       // of an amount that the block refuses by itself
constexpr double kSameWay = 1e-9;  // mm or radians

bool moves_a_line(const Step& step) {
  const OperationInfo* info = find_operation(step.operation);
  return info != nullptr && info->amount != AmountKind::none;
}

bool is_ratio(const Step& step) {
  const OperationInfo* info = find_operation(step.operation);
  return info != nullptr && info->amount == AmountKind::ratio;
}

double value_of(const Block& block, const std::string& id) {
  for (const GarmentMeasure& m : measures(block))
    if (m.id == id) return m.value;
  return 0.0;
}

/// The block after the step alone, and by how much of the amount (1: all of it).
struct Alone {
  Block block;
  double part = 1.0;
};

Result<Alone> alone(const Block& block, Step step) {
  Problems refused;
  double part = 1.0;
  for (int i = 0; i <= kHalvings; ++i, part /= 2.0, step.amount /= 2.0) {
    auto altered = alter(block, {step});
    if (altered) return Alone{std::move(altered).value().block, part};
    if (i == 0) refused = altered.problems();
    if (is_ratio(step)) break;
  }
  return refused;
}

/// A wish for a measure: mm or radians.
struct Wish {
  std::string measure;
  double change = 0.0;
  bool assumed = false;
  std::string asked_by;
  std::size_t step = 0;  ///< into JointInput::steps
};

class Collector {
 public:
  Collector(const Block& block, JointInput& out) : block_(block), out_(out) { out_.start = block; }

  void take(const Chosen& chosen) {
    for (const ProposedStep& proposed : chosen.proposal->steps) {
      JointStep step{JointStep::Part::sized, chosen.proposal->id, chosen.asked_by, proposed, 0};
      const auto leave = [&](const std::string& why) {
        out_.left_out.push_back({"", chosen.proposal->id, proposed.text + " - " + why});
      };
      if (!moves_a_line(proposed.step)) {
        step.part = JointStep::Part::sewn;
      } else if (!proposed.has_amount) {
        leave(proposed.limit.empty() ? "its amount is not known" : proposed.limit);
        continue;
      } else if (!is_ratio(proposed.step) && std::abs(proposed.step.amount) < kNothing) {
        leave("by these measures nothing has to change here");
        continue;
      } else if (measure_of(block_, proposed.step).empty()) {
        step.part = JointStep::Part::kept;
        auto done = alter(out_.start, {proposed.step});
        if (!done) {
          leave("this block does not take it so: " + done.problems().front().what);
          continue;
        }
        out_.start = std::move(done).value().block;
      }
      out_.steps.push_back(std::move(step));
    }
  }

  /// After all steps were taken.
  void make_cures() {
    std::vector<JointStep> taken;
    std::vector<Wish> wishes;
    std::vector<std::optional<Alone>> effects;
    for (JointStep& step : out_.steps) {
      if (step.part != JointStep::Part::sized) {
        taken.push_back(std::move(step));
        effects.emplace_back();
        continue;
      }
      auto effect = alone(out_.start, step.proposed.step);
      if (!effect) {
        out_.left_out.push_back({"", step.proposal,
                                 step.proposed.text + " - this block does not take it so: " +
                                     effect.problems().front().what});
        continue;
      }
      const std::string measure = measure_of(out_.start, step.proposed.step);
      wishes.push_back(
          {measure, change(measure, *effect), step.proposed.assumed, step.asked_by, taken.size()});
      step.cure = out_.sizing.cures.size();
      out_.sizing.cures.push_back({step.proposed.step, step.asked_by, {}, {}});
      taken.push_back(std::move(step));
      effects.emplace_back(std::move(effect).value());
    }
    out_.steps = std::move(taken);
    for (Wish& wish : wishes)
      for (std::size_t i = 0; i < effects.size(); ++i)
        if (effects[i] && i != wish.step && carries(out_.steps[i].proposed.step, wish.measure))
          wish.change += change(wish.measure, *effects[i]);
    for (const Wish& wish : wishes) add_target(wish);
  }

 private:
  double change(const std::string& measure, const Alone& effect) const {
    return (value_of(effect.block, measure) - value_of(out_.start, measure)) / effect.part;
  }

  void add_target(const Wish& wish) {
    const double now = value_of(out_.start, wish.measure);
    const double tolerance = wish.assumed ? kAssumedTolerance : kToldTolerance;
    for (Target& t : out_.sizing.targets) {
      const double before = t.wanted - now;
      if (t.measure != wish.measure || before * wish.change < -kSameWay) continue;
      if (t.asked_by != wish.asked_by) t.asked_by += " and " + wish.asked_by;
      if (std::abs(wish.change) > std::abs(before)) t.wanted = now + wish.change;
      t.tolerance = std::min(t.tolerance, tolerance);
      return;
    }
    out_.sizing.targets.push_back({wish.measure, now + wish.change, tolerance, wish.asked_by});
  }

  const Block& block_;
  JointInput& out_;
};

/// The same operation on the same side, an option left out standing for its default.
bool same_operation(const Step& a, const Step& b) {
  const OperationInfo* info = find_operation(a.operation);
  if (info == nullptr || a.operation != b.operation || a.side != b.side) return false;
  return std::all_of(info->options.begin(), info->options.end(), [&](const OptionInfo& o) {
    const auto said = [&o](const Step& step) {
      const auto found = step.options.find(std::string(o.key));
      if (found != step.options.end()) return std::string_view(found->second);
      return o.values.empty() ? std::string_view() : o.values.front();
    };
    return said(a) == said(b);
  });
}

/// Every way in which the operation's options can be said.
std::vector<Step> spelled(const OperationInfo& info) {
  Step plain;
  plain.operation = info.id;
  plain.of = info.amount == AmountKind::half ? Of::half : Of::whole;
  std::vector<Step> all = {plain};
  for (const OptionInfo& o : info.options) {
    std::vector<Step> more;
    for (const Step& step : all) {
      for (const std::string_view value : o.values) {
        more.push_back(step);
        more.back().options[std::string(o.key)] = std::string(value);
      }
    }
    all = std::move(more);
  }
  return all;
}

/// The first operation that is for this measure and that the block takes, as a fitter would: with
/// several for one measure, large amounts would stand against each other. Where none is, those that
/// serve it best.
std::vector<Cure> cures_of(const Block& block, const Target& target) {
  for (const OperationInfo& info : operation_catalogue()) {
    if (info.amount == AmountKind::none || info.amount == AmountKind::ratio) continue;
    for (Step& step : spelled(info)) {
      step.amount = 1.0;
      if (measure_of(block, step) != target.measure || !alter(block, {step})) continue;
      return {{std::move(step), target.asked_by, {}, {}}};
    }
  }
  return cures_for(block, {target});
}

void add_body(const Measurements& body, JointInput& out) {
  std::vector<Target> targets = targets_of(out.start, body, 0.5, kBodyTolerance);
  std::erase_if(targets, [&out](const Target& t) {
    return std::any_of(out.sizing.targets.begin(), out.sizing.targets.end(),
                       [&t](const Target& asked) { return asked.measure == t.measure; });
  });
  if (targets.empty()) return;
  for (const Target& target : targets) {
    for (Cure& cure : cures_of(out.start, target)) {
      const auto twin = std::find_if(
          out.sizing.cures.begin(), out.sizing.cures.end(),
          [&cure](const Cure& other) { return same_operation(other.step, cure.step); });
      if (twin == out.sizing.cures.end()) out.sizing.cures.push_back(std::move(cure));
    }
    out.sizing.targets.push_back(target);
  }
}

Problem none_chosen(const Choice& choice) {
  std::string why;
  for (const LeftOut& left : choice.left_out) why += (why.empty() ? "" : "; ") + left.text;
  return {"none-chosen", "/together",
          why.empty() ? "Nothing was found at the try-on that a change of the pattern would cure."
                      : "Nothing on the pattern is proposed: " + why + ".",
          "Say more of what was seen, or name proposals."};
}

Problem nothing_to_size(const JointInput& input) {
  std::string why;
  for (const LeftOut& left : input.left_out)
    if (!left.proposal.empty()) why += (why.empty() ? "" : "; ") + left.text;
  return {"nothing-to-size", "/together",
          "No step of the chosen proposals moves a line of this block" +
              (why.empty() ? "." : ": " + why + "."),
          "Choose a proposal that is on the pattern, and tell the amounts."};
}

}  // namespace

Result<JointInput> joint_input(const Knowledge& k, const Block& block, const TryOn& tryon,
                               const Advice& advice, const JointWish& wish) {
  auto choice = choose(k, advice, wish.proposals);
  if (!choice) return choice.problems();
  if (choice->chosen.empty() && !wish.body) return none_chosen(*choice);
  JointInput out;
  out.left_out = choice->left_out;
  Collector collector(block, out);
  for (const Chosen& chosen : choice->chosen) {
    out.proposals.push_back(chosen.proposal->id);
    collector.take(chosen);
  }
  collector.make_cures();
  const Measurements& body = tryon.wearer ? tryon.wearer->body : block.drafted_for.body;
  if (wish.body) add_body(body, out);
  const bool kept = std::any_of(out.steps.begin(), out.steps.end(),
                                [](const JointStep& s) { return s.part == JointStep::Part::kept; });
  if (out.sizing.cures.empty()) {
    out.sizing.targets.clear();
    if (!kept) return nothing_to_size(out);
  }
  out.sizing.limits = measure_limits(out.start, body, tryon.fabric ? *tryon.fabric : block.fabric);
  return out;
}

Result<Joint> size_together(const Knowledge& k, const Block& block, const TryOn& tryon,
                            const Advice& advice, const JointWish& wish) {
  auto input = joint_input(k, block, tryon, advice, wish);
  if (!input) return input.problems();
  Joint out;
  out.input = std::move(input).value();
  if (out.input.sizing.cures.empty()) {
    out.sizing.block = out.input.start;
    out.sizing.met = true;
  } else {
    auto sizing = size_jointly(out.input.start, out.input.sizing);
    if (!sizing) return sizing.problems();
    out.sizing = std::move(sizing).value();
  }
  const auto add = [&out](JointStep::Part part) {
    for (const JointStep& step : out.input.steps)
      if (step.part == part) out.steps.push_back(step.proposed.step);
  };
  add(JointStep::Part::kept);
  out.steps.insert(out.steps.end(), out.sizing.steps.begin(), out.sizing.steps.end());
  add(JointStep::Part::sewn);
  return out;
}

const SizedCure& sized_cure(const Joint& joint, const JointStep& step) {
  const auto found = std::find_if(
      joint.sizing.cures.begin(), joint.sizing.cures.end(),
      [&step](const SizedCure& cure) { return same_operation(cure.step, step.proposed.step); });
  return *found;
}

}  // namespace pinwright::knowledge
