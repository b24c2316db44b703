#include "api/bodies/trial.h"

#include <algorithm>
#include <atomic>
#include <chrono>
#include <cmath>
#include <limits>
#include <thread>

#include "engine/draft/ease.h"
#include "engine/pattern/measures.h"
#include "engine/proof/proof.h"
#include "engine/sizing/targets.h"

namespace pinwright::api {
namespace {

struct Off {
  std::string measure;
  double mm = 0.0;
};

/// Garment less body + ease, for every measure that names a measurement of this body.
std::vector<Off> misfit(const Block& block, const Measurements& body) {
  std::vector<Off> all;
  for (const GarmentMeasure& measure : measures(block)) {
    if (!measure.body) continue;
    const auto of_body = body.find(*measure.body);
    const auto ease = block.ease.find(*measure.body);
    if (of_body == body.end() || ease == block.ease.end()) continue;
    all.push_back({measure.id, measure.value - of_body->second - ease->second});
  }
  return all;
}

/// The size as this wearer's: her measurements, and at a bound neck the ease that her head needs
/// where that is more than the size's, by the draft's own rule (engine/draft/ease.h).
Block worn_by(const Block& size, const Wearer& wearer) {
  Block block = size;
  block.drafted_for = wearer;
  const auto head = wearer.body.find("head-girth");
  const auto neck = wearer.body.find("neck-base-girth");
  const auto ease = block.ease.find("neck-base-girth");
  if (block.bindings.empty() || head == wearer.body.end() || neck == wearer.body.end() ||
      ease == block.ease.end()) {
    return block;
  }
  const double needed =
      drafting::neckline_for_head(head->second, block.fabric.stretch_across) - neck->second;
  ease->second = std::max(ease->second, needed);
  return block;
}

double worst(const std::vector<Off>& all) {
  double most = 0.0;
  for (const Off& off : all) most = std::max(most, std::abs(off.mm));
  return most;
}

double squares(const std::vector<Off>& all) {
  double sum = 0.0;
  for (const Off& off : all) sum += off.mm * off.mm;
  return sum;
}

const DraftedSize& nearest(const DraftedSizes& sizes, const Wearer& wearer) {
  const DraftedSize* best = &sizes.sizes.front();
  double least = std::numeric_limits<double>::infinity();
  for (const DraftedSize& size : sizes.sizes) {
    const double sum = squares(misfit(worn_by(size.block, wearer), wearer.body));
    if (sum < least) {
      least = sum;
      best = &size;
    }
  }
  return *best;
}

/// Why a target was not met, in the words of the sizing.
std::string why_left(const Sizing& sizing, std::string_view measure) {
  for (const SizingConflict& conflict : sizing.conflicts) {
    for (const ConflictMember& member : conflict.members) {
      if (member.kind != ConflictMember::Kind::target) continue;
      if (sizing.targets[member.index].measure != measure) continue;
      std::string why;
      for (const ConflictMember& other : conflict.members) {
        if (other.kind == ConflictMember::Kind::target) {
          if (sizing.targets[other.index].measure == measure) continue;
          why += (why.empty() ? "against " : ", ") + sizing.targets[other.index].measure;
        } else if (other.kind == ConflictMember::Kind::bound) {
          why +=
              (why.empty() ? "" : ", ") + ("most of " + sizing.cures[other.index].step.operation);
        } else {
          why += (why.empty() ? "" : ", ") + std::string("a limit that the garment must keep");
        }
      }
      return why.empty() ? "no operation of the catalogue does it" : why;
    }
  }
  return "left over by the sizing";
}

class Fitting {
 public:
  Fitting(const DraftedSize& size, const Wearer& wearer)
      : wearer_(wearer), start_(worn_by(size.block, wearer)), block_(start_) {
    out_.body = wearer.id;
    out_.size = size.label;
    for (const Off& off : misfit(block_, wearer.body)) {
      out_.misfits.push_back({off.measure, off.mm, off.mm, {}});
    }
  }

  BodyOutcome run() {
    for (int i = 0; i < kMostAlterations && worst(misfit(block_, wearer_.body)) > 1.0; ++i) {
      // What cannot be reached at once may be in two alterations, or in four.
      if (!alter(1.0) && !alter(0.5) && !alter(0.25)) break;
    }
    const Proof proof = prove(block_, &start_, &wearer_.body);
    out_.proved = proof.pass && check_block(block_).empty();
    const std::vector<Off> left = misfit(block_, wearer_.body);
    for (std::size_t i = 0; i < left.size(); ++i) {
      out_.misfits[i].after_mm = left[i].mm;
      if (std::abs(left[i].mm) <= kFitsMm) continue;
      const auto why = why_.find(left[i].measure);
      out_.misfits[i].why = why != why_.end() ? why->second : "no cure was found";
    }
    return std::move(out_);
  }

 private:
  /// One joint sizing that goes a share of the way; kept when it comes nearer and is
  /// proved.
  bool alter(double share) {
    SizingInput input;
    input.targets = targets_of(block_, wearer_.body);
    if (input.targets.empty()) return false;
    const std::vector<GarmentMeasure> now_measured = measures(block_);
    for (Target& target : input.targets) {
      const double here = find_measure(now_measured, target.measure)->value;
      target.wanted = here + share * (target.wanted - here);
    }
    input.cures = cures_for(block_, input.targets);
    if (input.cures.empty()) return false;
    Result<Sizing> sizing = size_jointly(block_, input);
    if (!sizing) {
      if (!out_.cured) out_.refused = sizing.problems();
      return false;
    }
    for (const SizedMeasure& target : sizing->targets) {
      if (target.met || share < 1.0) continue;
      why_[target.measure] = why_left(*sizing, target.measure);
    }
    const double now = squares(misfit(block_, wearer_.body));
    if (!(squares(misfit(sizing->block, wearer_.body)) < 0.98 * now)) return false;
    if (!prove(sizing->block, &start_, &wearer_.body).pass) return false;
    block_ = std::move(sizing->block);
    out_.cured = true;
    for (const Step& step : sizing->steps) out_.operations.push_back(step.operation);
    return true;
  }

  const Wearer& wearer_;
  const Block start_;
  Block block_;
  BodyOutcome out_;
  std::map<std::string, std::string> why_;
};

void count(TrialReport& report) {
  std::map<std::string, std::size_t> at;
  for (const BodyOutcome& body : report.bodies) {
    for (const Misfit& misfit : body.misfits) {
      const auto found = at.try_emplace(misfit.measure, report.measures.size());
      if (found.second) report.measures.push_back({misfit.measure, 0, 0, 0});
      MeasureShare& share = report.measures[found.first->second];
      ++share.bodies;
      if (std::abs(misfit.before_mm) <= kFitsMm) ++share.before;
      if (std::abs(misfit.after_mm) <= kFitsMm) ++share.after;
      if (!misfit.why.empty()) ++report.left_over[misfit.measure + ": " + misfit.why];
    }
    if (body.fits_before()) ++report.before;
    if (body.fits_after()) ++report.after;
    if (!body.proved) ++report.unproved;
    if (!body.refused.empty()) ++report.refused;
  }
}

}  // namespace

bool BodyOutcome::fits_before() const {
  return !misfits.empty() && std::all_of(misfits.begin(), misfits.end(), [](const Misfit& m) {
    return std::abs(m.before_mm) <= kFitsMm;
  });
}

bool BodyOutcome::fits_after() const {
  return proved && !misfits.empty() &&
         std::all_of(misfits.begin(), misfits.end(),
                     [](const Misfit& m) { return std::abs(m.after_mm) <= kFitsMm; });
}

TrialReport run_trial(const std::vector<Wearer>& bodies, DraftedSizes sizes, std::string_view kind,
                      const Fabric& fabric, unsigned threads) {
  const auto start = std::chrono::steady_clock::now();
  TrialReport report;
  report.kind = kind;
  report.fabric = fabric;
  report.sizes = std::move(sizes);
  if (report.sizes.sizes.empty()) return report;
  report.bodies.resize(bodies.size());
  std::atomic<std::size_t> next{0};
  const auto work = [&] {
    for (std::size_t i = next++; i < bodies.size(); i = next++) {
      report.bodies[i] = Fitting(nearest(report.sizes, bodies[i]), bodies[i]).run();
    }
  };
  std::vector<std::thread> others;
  for (unsigned i = 1; i < std::clamp(threads, 1u, 8u); ++i) others.emplace_back(work);
  work();
  for (std::thread& other : others) other.join();
  count(report);
  report.seconds = std::chrono::duration<double>(std::chrono::steady_clock::now() - start).count();
  return report;
}

TrialReport run_trial(const std::vector<Wearer>& bodies, std::string_view kind,
                      const Fabric& fabric, unsigned threads) {
  return run_trial(bodies, draft_sizes(bodies, kind, fabric), kind, fabric, threads);
}

}  // namespace pinwright::api
