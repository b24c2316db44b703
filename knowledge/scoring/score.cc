#include "knowledge/scoring/score.h"

#include <algorithm>
#include <cmath>

#include "knowledge/advise.h"
#include "knowledge/told_signs.h"

namespace pinwright::knowledge {
namespace {

constexpr double kSameAmountMm = 0.5;

/// A block of the kind without geometry: causes are ranked by the words alone.
Block bare(const std::string& kind) {
  Block b;
  b.id = "described";
  b.kind = kind;
  b.fabric.kind = kind == "knit-top" ? FabricKind::knit : FabricKind::woven;
  return b;
}

bool same_sight(const Knowledge& k, const std::string& a, const std::string& b) {
  if (a == b) return true;
  const Sign* first = find_sign(k, a);
  const Sign* second = find_sign(k, b);
  return (first != nullptr && first->kind_of == b) || (second != nullptr && second->kind_of == a);
}

bool meets(const Knowledge& k, const Finding& f, const WantedFinding& wanted) {
  if (!same_sight(k, f.sign, wanted.sign)) return false;
  if ((f.state == FindingState::absent) != wanted.absent) return false;
  if (!wanted.mm) return true;
  return f.amount && std::abs(f.amount->cloth_mm() - *wanted.mm) <= kSameAmountMm &&
         (!wanted.of || f.amount->of == *wanted.of);
}

/// What was read and nobody told: a sight that is present, or one denied that was told as present.
/// "The bust is fine" denies many sights at once, and what tells a cause tells no sight.
bool counts_beside(const Knowledge& k, const Finding& f, const DescribedTryOn& tryon) {
  if (is_told_sign(f.sign)) return false;
  if (f.state != FindingState::absent) return true;
  return std::any_of(tryon.findings.begin(), tryon.findings.end(), [&](const WantedFinding& w) {
    return !w.absent && same_sight(k, f.sign, w.sign);
  });
}

std::string said(const std::string& sign, bool absent) { return (absent ? "no " : "") + sign; }

Problems placed(const Problems& problems, const Place& place) {
  Problems all = problems;
  for (Problem& p : all) p.place = place.file + ":" + std::to_string(place.line) + " " + p.place;
  return all;
}

}  // namespace

Result<Scored> score_one(const Knowledge& k, const Listener& listener,
                         const DescribedTryOn& tryon) {
  auto heard = listener.hear(tryon.words, tryon.kind);
  if (!heard) {
    Scored refused;
    refused.id = tryon.id;
    refused.wanted = tryon.findings.size();
    refused.refused = heard.problems().front().what;
    for (const WantedFinding& f : tryon.findings) refused.missed.push_back(said(f.sign, f.absent));
    return refused;
  }
  TryOn told;
  told.findings = heard->findings;
  const auto advice = advise(k, bare(tryon.kind), told, {});
  if (!advice) return placed(advice.problems(), tryon.place);

  Scored s;
  s.id = tryon.id;
  for (const CauseFound& c : advice->causes) {
    if (s.causes.size() == 3) break;
    const bool accepted =
        std::find(tryon.causes.begin(), tryon.causes.end(), c.id) != tryon.causes.end();
    s.first = s.first || (accepted && s.causes.empty());
    s.among_three = s.among_three || accepted;
    s.causes.push_back(c.id);
  }
  s.wanted = tryon.findings.size();
  std::vector<bool> used(told.findings.size(), false);
  for (const WantedFinding& wanted : tryon.findings) {
    bool found = false;
    for (std::size_t i = 0; i < told.findings.size(); ++i) {
      if (!meets(k, told.findings[i], wanted)) continue;
      used[i] = true;
      found = true;
    }
    if (found)
      ++s.read;
    else
      s.missed.push_back(said(wanted.sign, wanted.absent));
  }
  for (std::size_t i = 0; i < told.findings.size(); ++i) {
    if (used[i] || !counts_beside(k, told.findings[i], tryon)) continue;
    ++s.beside;
    s.invented.push_back(
        said(told.findings[i].sign, told.findings[i].state == FindingState::absent));
  }
  return s;
}

Score sum(const std::vector<Scored>& all) {
  Score total;
  for (const Scored& s : all) {
    ++total.tryons;
    total.first += s.first ? 1 : 0;
    total.among_three += s.among_three ? 1 : 0;
    total.wanted += s.wanted;
    total.read += s.read;
    total.beside += s.beside;
  }
  return total;
}

}  // namespace pinwright::knowledge
