#include "knowledge/understand.h"

#include <algorithm>
#include <utility>

#include "knowledge/words/ask_back.h"
#include "knowledge/words/clauses.h"
#include "knowledge/words/draft_finding.h"
#include "knowledge/words/garment_words.h"
#include "knowledge/words/leftovers.h"
#include "knowledge/words/lexicon.h"
#include "knowledge/words/listener.h"
#include "knowledge/words/notions.h"
#include "knowledge/words/suppose.h"

namespace pinwright::knowledge {
namespace {

/// By sign: its zone is found on blocks of this kind; all when the kind is not told.
std::vector<bool> signs_on(const Knowledge& k, std::string_view block_kind) {
  std::vector<bool> allowed;
  for (const Sign& sign : k.signs) {
    const auto zone = std::find_if(k.zones.begin(), k.zones.end(),
                                   [&](const Zone& known) { return known.id == sign.zone; });
    const bool anywhere = block_kind.empty() || zone == k.zones.end() || zone->kinds.empty();
    allowed.push_back(anywhere || std::find(zone->kinds.begin(), zone->kinds.end(), block_kind) !=
                                      zone->kinds.end());
  }
  return allowed;
}

/// What the amount counts: as said; else one side's when one side was named, else the sign's habit.
Of counted_of(const DraftFinding& draft, const Sign& sign) {
  if (sign.counts == Counts::distance) return Of::whole;
  if (draft.of) return *draft.of;
  if (draft.side && *draft.side != Side::both) return Of::half;
  return sign.default_of;
}

FoundAmount amount_of(const Draft& draft, const DraftFinding& finding) {
  const Sign& sign = draft.k.signs[finding.sign];
  FoundAmount amount;
  amount.mm = draft.reading.numbers[*finding.number].value;
  amount.of = counted_of(finding, sign);
  amount.taken =
      finding.taken.value_or(sign.counts == Counts::distance ? Taken::distance : Taken::unsaid);
  const bool in_all = finding.of && *finding.of == Of::whole;
  if (in_all && amount.taken == Taken::fold_depth) amount.taken = Taken::cloth;
  return amount;
}

Finding made(const Draft& draft, const DraftFinding& from) {
  const Sign& sign = draft.k.signs[from.sign];
  Finding finding;
  finding.sign = sign.id;
  finding.zone = sign.zone;
  finding.side = from.side.value_or(Side::both);
  finding.state = from.absent() ? FindingState::absent : FindingState::present;
  finding.posture = from.posture;
  finding.sure = from.sure;
  if (from.number) finding.amount = amount_of(draft, from);
  std::size_t begin = draft.reading.text.size();
  std::size_t end = 0;
  for (std::size_t i : from.tokens) {
    begin = std::min(begin, draft.reading.tokens[i].begin);
    end = std::max(end, draft.reading.tokens[i].end);
  }
  finding.words = std::string(draft.reading.text.substr(begin, end - begin));
  finding.begin = begin;
  finding.end = end;
  return finding;
}

}  // namespace

struct Listener::Ready {
  Ready(const Knowledge& knowledge, std::shared_ptr<const Dictionary> dictionary)
      : k(knowledge),
        lexicon(knowledge, stemmer),
        notions(knowledge, stemmer),
        spelling(knowledge, stemmer, std::move(dictionary)),
        resemblance(knowledge, lexicon, stemmer),
        garment(knowledge, stemmer) {}
  const Knowledge& k;
  Stemmer stemmer;
  Lexicon lexicon;
  Notions notions;
  SpellingMender spelling;
  Resemblance resemblance;
  GarmentWords garment;
};

Listener::Listener(const Knowledge& k, std::shared_ptr<const Dictionary> dictionary)
    : ready_(std::make_unique<Ready>(
          k, dictionary ? std::move(dictionary) : std::make_shared<const Dictionary>())) {}
Listener::~Listener() = default;
Listener::Listener(Listener&&) noexcept = default;
Listener& Listener::operator=(Listener&&) noexcept = default;

Result<Understood> Listener::hear(std::string_view text, std::string_view block_kind) const {
  if (Problems problems = check_text(text); !problems.empty()) return problems;
  const Stemmer stemmer;
  Draft draft{ready_->k,
              ready_->lexicon,
              signs_on(ready_->k, block_kind),
              cut_clauses(text, ready_->lexicon, ready_->notions, ready_->spelling, stemmer),
              {},
              {}};
  find_signs(draft);
  negate(draft);
  find_unmeasured(draft);
  Understood understood;
  understood.style = ready_->garment.style(draft, stemmer);
  understood.beyond_pattern = ready_->garment.beyond_pattern(draft, stemmer);
  Shortlists shortlists(draft.reading, ready_->resemblance);
  suppose(draft, ready_->resemblance, shortlists);
  attach(draft);
  hedge(draft);
  if (!draft.problems.empty()) return draft.problems;
  std::stable_sort(draft.findings.begin(), draft.findings.end(),
                   [](const DraftFinding& a, const DraftFinding& b) {
                     return *a.tokens.begin() < *b.tokens.begin();
                   });
  for (const DraftFinding& finding : draft.findings) {
    understood.findings.push_back(made(draft, finding));
  }
  understood.ask_back = ask_back(draft, understood.findings);
  understood.contradictions = contradictions(understood.findings);
  understood.not_understood = leftovers(draft, ready_->resemblance, shortlists);
  return understood;
}

Result<Understood> understand(const Knowledge& k, std::string_view text,
                              std::string_view block_kind) {
  return Listener(k).hear(text, block_kind);
}

}  // namespace pinwright::knowledge
