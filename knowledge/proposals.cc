#include "knowledge/proposals.h"

#include <algorithm>
#include <cmath>

#include "engine/pattern/measurement.h"
#include "engine/pattern/measures.h"
#include "knowledge/amounts_told.h"
#include "knowledge/network_of.h"
#include "knowledge/soundness.h"
#include "knowledge/wording.h"

namespace pinwright::knowledge {
namespace {

// Smallest change worth a line on a knit, 1/4 in; on a woven the catalogue's 1/8 in. Common
// practice.
constexpr double kLeastOnKnitMm = 6.0;

/// What a name without a number means to the person who is to measure it.
std::string to_measure(const Knowledge& k, const std::string& name) {
  const std::size_t dot = name.find('.');
  const std::string group = name.substr(0, dot);
  const std::string id = dot == std::string::npos ? "" : name.substr(dot + 1);
  if (group == "found") {
    const Sign* sign = id.empty() ? nullptr : find_sign(k, id);
    return sign == nullptr ? "how much it is" : "by how much: " + small_first(sign->name);
  }
  if (group == "fabric") return "the cloth's stretch";
  if (group == "garment") return "the pattern's " + id;
  const MeasurementInfo* info = find_measurement(id);
  const std::string plain = info == nullptr ? id : std::string(info->name);
  return group == "body" ? "the wearer's " + plain : "the ease meant at the " + plain;
}

struct Amount {
  std::optional<double> value;
  Dimension dimension = Dimension::length;
  bool assumed = false;
  std::string measure_first;
};

Amount worked_out(const Knowledge& k, const Expression& e, const Remedy& remedy, Values values) {
  Amount amount;
  amount.dimension = e.dimension();
  Evaluated got = evaluate(e, values);
  if (!got.value && e.uses_found() && remedy.usual_mm) {
    const FoundAmount usual{*remedy.usual_mm, remedy.usual_of, Taken::cloth};
    for (const auto& name : e.found_names()) {
      if (name.empty()) {
        if (!values.found) values.found = usual;
      } else {
        values.found_of.emplace(name, usual);
      }
    }
    got = evaluate(e, values);
    amount.assumed = got.value.has_value();
  }
  amount.value = got.value;
  if (got.value && e.uses_found() && !got.used_found && !got.used_body) amount.assumed = true;
  if (!got.value) {
    std::vector<std::string> said;
    for (const auto& name : got.missing) {
      const std::string what = to_measure(k, name);
      if (std::find(said.begin(), said.end(), what) == said.end()) said.push_back(what);
    }
    for (const auto& what : said)
      amount.measure_first += (amount.measure_first.empty() ? "measure first " : ", or ") + what;
    if (said.empty()) amount.measure_first = "the amount cannot be worked out from these measures";
  }
  return amount;
}

/// Fits the amount into what the operation can do and says so.
void limit(ProposedStep& step, const OperationInfo& info, bool knit) {
  double& x = step.step.amount;
  if (info.amount == AmountKind::none) return;
  if (info.amount == AmountKind::ratio) {
    const double clamped = std::clamp(x, 0.5, 1.2);
    if (clamped != x) step.limit = "a strip can only be 0.5 to 1.2 times its opening";
    x = clamped;
    return;
  }
  const double least = knit ? std::max(info.least, kLeastOnKnitMm) : info.least;
  if (std::abs(x) > info.most) {
    step.limit = said_length(x) + " would be more than the " + said_length(info.most) +
                 " that this way can do: so far it goes, the rest another way or in another size";
    x = std::copysign(info.most, x);
  } else if (std::abs(x) < least) {
    step.worth_making = false;
    step.limit = std::abs(x) < 0.05 ? "by these measures nothing has to change here"
                                    : "less than " + said_length(least) + " is not worth a line";
  }
}

/// The remedy's own limits on what its first step takes, before the operation's.
void own_limits(ProposedStep& step, const Remedy& remedy, double wanted, std::string& beyond) {
  if (remedy.largest_mm && wanted > *remedy.largest_mm + 0.05) {
    beyond = remedy.beyond;
    step.limit = said_length(wanted) + " is more than the " + said_length(*remedy.largest_mm) +
                 " that this way suits; better then: " + small_first(remedy.beyond);
  } else if (remedy.smallest_mm && wanted < *remedy.smallest_mm - 0.05 && step.worth_making) {
    step.worth_making = false;
    step.limit = said_length(wanted) + " is less than the " + said_length(*remedy.smallest_mm) +
                 " from which this is worth making";
  }
}

/// Within its limits, worth making, its amount known: to be offered before those that are not.
bool suits(const Proposal& p) {
  if (!p.beyond.empty() || p.steps.empty()) return false;
  const ProposedStep& first = p.steps.front();
  const OperationInfo* info = find_operation(first.step.operation);
  const bool moves = info != nullptr && info->amount != AmountKind::none;
  return first.worth_making && (!moves || first.has_amount);
}

class Maker {
 public:
  Maker(const Knowledge& k, const Cause& cause, bool knit, const std::vector<ToldSide>& told,
        const Values& values)
      : k_(k), cause_(cause), knit_(knit), told_(told), values_(values) {}

  Proposal make(const Remedy& remedy) const {
    Proposal p;
    p.id = remedy.id;
    p.cause = cause_.id;
    p.name = remedy.name;
    p.suits = remedy.suits;
    p.follow = remedy.follow;
    p.sources = remedy.sources;
    for (const auto& s : remedy.steps) {
      const OperationInfo* info = find_operation(s.operation);
      if (info == nullptr) continue;  // load() has refused it
      const bool moves = info->amount != AmountKind::none;
      p.on_pattern = p.on_pattern || moves;
      const auto parsed = s.amount.empty()
                              ? std::nullopt
                              : std::optional(parse_expression(
                                    s.amount, found_dimensions(k_, cause_), s.operation));
      const Expression* e = parsed && parsed->ok() ? &parsed->value() : nullptr;
      const bool by_side = told_.size() > 1 && e != nullptr && e->uses_found();
      // The limits are those of the first step.
      std::string* const beyond = &s == &remedy.steps.front() ? &p.beyond : nullptr;
      if (by_side) {
        for (const auto& side : told_) p.steps.push_back(step(remedy, s, *info, e, side, beyond));
      } else {
        ProposedStep one = step(remedy, s, *info, e, told_.front(), beyond);
        if (told_.size() > 1) one.step.side = Side::both;
        p.steps.push_back(std::move(one));
      }
    }
    return p;
  }

 private:
  ProposedStep step(const Remedy& remedy, const RemedyStep& s, const OperationInfo& info,
                    const Expression* e, const ToldSide& side, std::string* beyond) const {
    ProposedStep out;
    out.step.operation = s.operation;
    out.step.options = s.options;
    out.step.side = side.side;
    if (e == nullptr) {
      out.text = filled(s.text, "", "");
      return out;
    }
    Values values = values_;
    values.found = side.any;
    values.found_of = side.of_sign;
    const Amount amount = worked_out(k_, *e, remedy, std::move(values));
    out.assumed = amount.assumed;
    if (!amount.value) {
      out.limit = amount.measure_first;
      out.text = filled(s.text, "the amount that is measured", "half the amount that is measured");
      return out;
    }
    out.has_amount = true;
    out.step.amount = *amount.value;
    out.step.of = Of::whole;
    if (info.amount == AmountKind::half) {
      out.step.of = Of::half;
      if (amount.dimension == Dimension::whole)
        out.step.amount = WholeMm(*amount.value).half().mm();
    } else if (amount.dimension == Dimension::half) {
      out.step.of = Of::half;
    }
    const double wanted = std::abs(out.step.amount);
    limit(out, info, knit_);
    if (beyond != nullptr && info.amount != AmountKind::ratio)
      own_limits(out, remedy, wanted, *beyond);
    const double shown = out.step.amount;
    out.text = info.amount == AmountKind::ratio
                   ? filled(s.text, said_ratio(shown), said_ratio(shown / 2.0))
                   : filled(s.text, said_length(shown), said_length(shown / 2.0));
    return out;
  }

  const Knowledge& k_;
  const Cause& cause_;
  bool knit_;
  const std::vector<ToldSide>& told_;
  const Values& values_;
};

/// The remedy asks for no told amount, or for one of a sign that was seen.
bool meets_what_was_seen(const Knowledge& k, const Cause& cause, const Remedy& remedy,
                         const std::vector<Finding>& findings) {
  bool asks = false;
  for (const auto& s : remedy.steps) {
    if (s.amount.empty()) continue;
    const auto e = parse_expression(s.amount, found_dimensions(k, cause), s.operation);
    if (!e) continue;
    for (const auto& name : e->found_names()) {
      if (name.empty()) return true;
      asks = true;
      for (const auto& f : findings)
        if (f.sign == name && f.state == FindingState::present) return true;
    }
  }
  return !asks;
}

}  // namespace

Values values_of(const Block& block, const TryOn& tryon) {
  Values v;
  for (const auto& m : measures(block)) v.garment[m.id] = m.value;
  if (tryon.wearer) v.body = tryon.wearer->body;
  v.ease = block.ease;
  v.fabric = tryon.fabric ? *tryon.fabric : block.fabric;
  return v;
}

std::vector<Proposal> proposals_for(const Knowledge& k, const Cause& cause, const Block& block,
                                    const TryOn& tryon, const Values& values) {
  std::vector<const Remedy*> here;
  for (const auto& r : cause.remedies)
    if (has_kind(r.kinds, block.kind)) here.push_back(&r);
  std::vector<const Remedy*> meeting;
  for (const Remedy* r : here)
    if (meets_what_was_seen(k, cause, *r, tryon.findings)) meeting.push_back(r);
  const std::vector<ToldSide> told = amounts_told(k, cause, tryon.findings);
  const bool knit = values.fabric && values.fabric->kind == FabricKind::knit;
  const Maker maker(k, cause, knit, told, values);
  std::vector<Proposal> all;
  for (const Remedy* r : meeting.empty() ? here : meeting) all.push_back(maker.make(*r));
  const bool any_beyond =
      std::any_of(all.begin(), all.end(), [](const Proposal& p) { return !p.beyond.empty(); });
  if (any_beyond) std::stable_partition(all.begin(), all.end(), suits);
  return all;
}

}  // namespace pinwright::knowledge
