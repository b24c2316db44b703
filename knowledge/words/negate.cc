// Pass 2: which findings are said not to be so.

#include <algorithm>
#include <string_view>

#include "knowledge/words/draft_finding.h"

namespace pinwright::knowledge {
namespace {

constexpr double kGoneInTest = 0.8;  ///< that it is there otherwise; by our own judgement

class Denials {
 public:
  explicit Denials(Draft& draft) : draft_(draft), reading_(draft.reading) {}

  void run() {
    counts_.resize(draft_.findings.size());
    for (std::size_t c = 0; c < reading_.clauses.size(); ++c) count_in(c);
    for (std::size_t f = 0; f < counts_.size(); ++f) {
      draft_.findings[f].negated = counts_[f] % 2 == 1;
    }
    carry();
    turn_tests();
    drop_denials([](const DraftFinding& finding) { return finding.negated || finding.test; });
  }

 private:
  void count_in(std::size_t c) {
    const auto [first, last] = notions_of(reading_, c);
    for (std::size_t n = first; n < last; ++n) {
      const Notion& notion = reading_.notions[n];
      const bool gone = notion.kind == Notion::Kind::gone;
      const bool denies = notion.kind == Notion::Kind::negation || gone;
      const std::size_t at = notion.tokens.front();
      if (!denies || reading_.words[at].taken) continue;
      const std::optional<std::size_t> f =
          gone ? nearest_finding(draft_, c, at) : next_finding(c, at);
      if (!f) continue;
      // That the folds go when it is pinned is what the sign of a test says.
      if (gone && draft_.lexicon.is_test(draft_.findings[*f].sign)) continue;
      for (std::size_t i : notion.tokens) take(draft_, draft_.findings[*f], i);
      // A denial told by several signs at once ("fine") is negated as a whole.
      const std::set<std::size_t> words = draft_.findings[*f].tokens;
      for (std::size_t g = 0; g < draft_.findings.size(); ++g) {
        const bool twin =
            draft_.findings[g].clause == draft_.findings[*f].clause &&
            std::includes(words.begin(), words.end(), draft_.findings[g].tokens.begin(),
                          draft_.findings[g].tokens.end());
        if (g == *f || twin) ++counts_[g];
      }
    }
  }

  /// The first finding of the clause with a word that happens after the negation. Where what
  /// happens is borrowed, any negation of the clause counts.
  std::optional<std::size_t> next_finding(std::size_t c, std::size_t at) const {
    std::optional<std::size_t> best;
    std::size_t best_end = 0;
    for (std::size_t f = 0; f < draft_.findings.size(); ++f) {
      const DraftFinding& finding = draft_.findings[f];
      if (!has_part(draft_, finding, c)) continue;
      const std::size_t end = last_word(finding, c);
      if (end < at && !finding.borrowed_from) continue;
      if (!best || end < best_end) best = f, best_end = end;
    }
    return best;
  }

  /// Last token in the clause that is no place; of places only, the last of them.
  std::size_t last_word(const DraftFinding& finding, std::size_t c) const {
    const Clause& clause = reading_.clauses[c];
    std::size_t last = 0;
    bool other = false;
    for (std::size_t i : finding.tokens) {
      if (i < clause.first || i >= clause.last) continue;
      const bool place = reading_.words[i].place != PlaceWord::none;
      if (place && other) continue;
      other = other || !place;
      last = i;
    }
    return last;
  }

  /// "does not gape or pull", "no gaping and pulling", and what is borrowed with its negation.
  void carry() {
    for (std::size_t f = 0; f < draft_.findings.size(); ++f) {
      DraftFinding& finding = draft_.findings[f];
      if (counts_[f] > 0) {
        if (finding.borrowed_from) finding.negated = true;  // "and the armhole neither"
        continue;
      }
      if (finding.borrowed_from) {
        finding.negated = negated_in(*finding.borrowed_from);
        continue;
      }
      const Clause& clause = reading_.clauses[finding.clause];
      if (finding.clause == 0 || clause.joint != Joint::with) continue;
      const std::size_t before = finding.clause - 1;
      if (reading_.clauses[before].sentence != clause.sentence || has_verb(clause)) continue;
      const bool goes_on = clause.alternative || opens_with_no(before);
      if (goes_on && negated_in(before)) finding.negated = true;
    }
  }

  bool negated_in(std::size_t c) const {
    return std::any_of(draft_.findings.begin(), draft_.findings.end(),
                       [&](const auto& finding) { return finding.clause == c && finding.negated; });
  }

  bool has_word(const Clause& clause, std::initializer_list<std::string_view> words) const {
    for (std::size_t i = clause.first; i < clause.last; ++i) {
      for (const std::string_view word : words) {
        if (reading_.tokens[i].text == word) return true;
      }
    }
    return false;
  }

  bool has_verb(const Clause& clause) const {
    return has_word(clause, {"is", "are", "was", "were", "does", "do", "did", "has", "have", "it"});
  }
  bool opens_with_no(std::size_t c) const {
    return has_word(reading_.clauses[c], {"no", "without"});
  }

  /// What is gone when it is pinned was there before: "when I lift the shoulder it does not gape".
  /// And what lies fine when it is pinned says nothing of how it lies else.
  void turn_tests() {
    for (DraftFinding& finding : draft_.findings) {
      finding.test = reading_.clauses[finding.clause].test && !draft_.lexicon.is_test(finding.sign);
      if (!finding.test || finding.denied || !finding.negated) continue;
      finding.negated = false;
      finding.sure *= kGoneInTest;
    }
  }

  /// Denials that say too little; their words are free again.
  template <class Says>
  void drop_denials(const Says& too_little) {
    const auto dropped = [&](const DraftFinding& finding) {
      return finding.denied && too_little(finding);
    };
    for (const DraftFinding& finding : draft_.findings) {
      if (!dropped(finding)) continue;
      for (std::size_t i : finding.tokens) reading_.words[i].taken = false;
    }
    std::erase_if(draft_.findings, dropped);
    for (DraftFinding& finding : draft_.findings) {
      for (std::size_t i : finding.tokens) reading_.words[i].taken = true;
    }
  }

  Draft& draft_;
  Reading& reading_;
  std::vector<std::size_t> counts_;
};

}  // namespace

void negate(Draft& draft) { Denials(draft).run(); }

}  // namespace pinwright::knowledge
