// Pass 1: phrases against clauses, places carried from clause to clause.

#include <algorithm>

#include "knowledge/words/draft_finding.h"
#include "knowledge/words/function_words.h"
#include "knowledge/words/matcher.h"

namespace pinwright::knowledge {
namespace {

class SightPass {
 public:
  explicit SightPass(Draft& draft)
      : draft_(draft),
        reading_(draft.reading),
        matcher_(draft.reading, draft.lexicon, draft.allowed) {}

  void run() {
    for (std::size_t c = 0; c < reading_.clauses.size(); ++c) {
      while (match_own(c) || match_with_lent(c)) {
      }
      if (reading_.clauses[c].has_place) named_ = c;
    }
    for (std::size_t c = 0; c < reading_.clauses.size(); ++c) borrow_what_happens(c);
    for (std::size_t c = 0; c < reading_.clauses.size(); ++c) absorb_zone_words(c);
  }

 private:
  /// Which of the two gives more is decided by the number of items; see consider().
  bool match_own(std::size_t c) {
    const Neighbours own{places_beside(c), {}, true};
    std::vector<Match> best = matcher_.best(c, own);
    const Neighbours with{own.joined, lent_to(c, best.empty()), true};
    if (!with.lent.empty()) {
      std::vector<Match> more = matcher_.best(c, with);
      if (!more.empty() && (best.empty() || more.front().items > best.front().items)) {
        best = std::move(more);
      }
    }
    for (const Match& match : best) keep(c, match);
    return !best.empty();
  }

  /// A clause at the head of its sentence may get its place from the one after it:
  /// "gaping and too low at the neckline".
  bool match_with_lent(std::size_t c) {
    const Clause& clause = reading_.clauses[c];
    if (clause.has_place || c + 1 >= reading_.clauses.size()) return false;
    const Clause& next = reading_.clauses[c + 1];
    if (next.sentence != clause.sentence || next.joint != Joint::with || !next.has_place) {
      return false;
    }
    const std::vector<Match> best = matcher_.best(c, {{}, places_of(c + 1), true});
    for (const Match& match : best) keep(c, match);
    return !best.empty();
  }

  /// Clauses beside this one that only name places and are not used yet: "between neck and tip".
  std::vector<std::size_t> places_beside(std::size_t c) const {
    std::vector<std::size_t> beside;
    const auto open = [&](std::size_t other) {
      const Clause& clause = reading_.clauses[other];
      return clause.only_place && clause.sentence == reading_.clauses[c].sentence && !used(other);
    };
    if (c > 0 && open(c - 1)) beside.push_back(c - 1);
    if (c + 1 < reading_.clauses.size() && open(c + 1)) beside.push_back(c + 1);
    return beside;
  }

  bool used(std::size_t c) const {
    const Clause& clause = reading_.clauses[c];
    for (std::size_t i = clause.first; i < clause.last; ++i) {
      if (reading_.words[i].taken) return true;
    }
    return false;
  }

  std::vector<std::size_t> places_of(std::size_t c) const {
    std::vector<std::size_t> places;
    const Clause& clause = reading_.clauses[c];
    for (std::size_t i = clause.first; i < clause.last; ++i) {
      if (reading_.words[i].place != PlaceWord::none) places.push_back(i);
    }
    return places;
  }

  /// The places last named, when this clause goes on about them. Over the end of a sentence only
  /// when it begins with "it" or has nothing of its own.
  std::vector<std::size_t> lent_to(std::size_t c, bool nothing_own) const {
    if (!named_) return {};
    const std::size_t ends = reading_.clauses[c].sentence - reading_.clauses[*named_].sentence;
    if (ends > 1 || (ends == 1 && !nothing_own && !begins_with_pronoun(c))) return {};
    std::vector<std::size_t> lent = places_of(*named_);
    std::erase_if(lent, [&](std::size_t i) { return joined_beside(c, i); });
    return lent;
  }

  /// Words of a clause that is joined anyway are not lent besides.
  bool joined_beside(std::size_t c, std::size_t token) const {
    for (std::size_t j : places_beside(c)) {
      if (token >= reading_.clauses[j].first && token < reading_.clauses[j].last) return true;
    }
    return false;
  }

  bool begins_with_pronoun(std::size_t c) const {
    return is_pronoun(reading_.tokens[reading_.clauses[c].first].text);
  }

  void keep(std::size_t c, const Match& match) {
    const ReadyPhrase& phrase = draft_.lexicon.phrases()[match.phrase];
    DraftFinding* finding = same_in_clause(c, phrase);
    if (!finding) {
      draft_.findings.emplace_back();
      finding = &draft_.findings.back();
      finding->sign = phrase.sign;
      finding->denied = phrase.denies;
      finding->items = match.items;
      finding->clause = c;
    }
    for (std::size_t i : match.tokens) take(draft_, *finding, i);
    for (std::size_t i : match.lent) {
      if (!reading_.words[i].taken && whole_place(i)) {
        take(draft_, *finding, i);  // "the neckline, which gapes"
      } else {
        finding->lent.insert(i);
      }
    }
  }

  /// The token stands in a clause of the same finding's sentence that only names places.
  bool whole_place(std::size_t token) const {
    for (const Clause& clause : reading_.clauses) {
      if (token >= clause.first && token < clause.last) return clause.only_place;
    }
    return false;
  }

  /// The same sign said with more words in one clause is one finding.
  DraftFinding* same_in_clause(std::size_t c, const ReadyPhrase& phrase) {
    for (auto f = draft_.findings.rbegin(); f != draft_.findings.rend() && f->clause == c; ++f) {
      if (f->sign == phrase.sign && f->denied == phrase.denies) return &*f;
    }
    return nullptr;
  }

  /// "The neckline gapes, the armhole too"; "the shoulder and the neckline are too wide".
  void borrow_what_happens(std::size_t c) {
    const Clause& clause = reading_.clauses[c];
    if (!clause.only_place || clause.excepted || used(c)) return;
    const std::optional<std::size_t> before = donor(c, false);
    const std::optional<std::size_t> after = donor(c, true);
    const bool looks_back = says_also(c);
    if (!looks_back && after && borrow_from(c, *after)) return;
    if (before && borrow_from(c, *before)) return;
    if (looks_back && after) borrow_from(c, *after);
  }

  bool says_also(std::size_t c) const {
    const Clause& clause = reading_.clauses[c];
    for (std::size_t i = clause.first; i < clause.last; ++i) {
      const std::string& word = reading_.tokens[i].text;
      if (word == "too" || word == "also" || word == "likewise" || word == "well") return true;
      if (word == "not" || word == "neither") return word == "not" || i + 1 == clause.last;
    }
    return false;
  }

  /// The nearest clause of the sentence with a finding, over clauses that only name places.
  std::optional<std::size_t> donor(std::size_t c, bool forward) const {
    const std::size_t sentence = reading_.clauses[c].sentence;
    for (std::size_t other = c; forward ? other + 1 < reading_.clauses.size() : other > 0;) {
      other = forward ? other + 1 : other - 1;
      if (reading_.clauses[other].sentence != sentence) break;
      if (forward && reading_.clauses[other].joint == Joint::but) break;
      for (const DraftFinding& finding : draft_.findings) {
        if (finding.clause == other) return other;
      }
      if (!reading_.clauses[other].only_place) break;
    }
    return std::nullopt;
  }

  bool borrow_from(std::size_t c, std::size_t other) {
    std::vector<std::size_t> lent;
    for (const DraftFinding& finding : draft_.findings) {
      if (finding.clause != other) continue;
      for (const auto* tokens : {&finding.tokens, &finding.lent}) {
        for (std::size_t i : *tokens) {
          if (reading_.words[i].place == PlaceWord::none) lent.push_back(i);
        }
      }
    }
    std::sort(lent.begin(), lent.end());
    lent.erase(std::unique(lent.begin(), lent.end()), lent.end());
    if (lent.empty()) return false;
    const std::vector<Match> best = matcher_.best(c, {{}, lent, false});
    const std::size_t first = draft_.findings.size();
    for (const Match& match : best) keep(c, match);
    for (std::size_t f = first; f < draft_.findings.size(); ++f) {
      draft_.findings[f].borrowed_from = other;
    }
    return !best.empty();
  }

  /// "front" beside a finding of the front neckline is said by its zone already.
  void absorb_zone_words(std::size_t c) {
    const Clause& clause = reading_.clauses[c];
    for (std::size_t i = clause.first; i < clause.last; ++i) {
      const Word& word = reading_.words[i];
      if (word.taken || word.notion || word.place == PlaceWord::none) continue;
      const std::optional<std::size_t> f = nearest_finding(draft_, c, i);
      if (!f || !draft_.lexicon.zone_has(draft_.findings[*f].sign, reading_.tokens[i].stem))
        continue;
      take(draft_, draft_.findings[*f], i);
    }
  }

  Draft& draft_;
  Reading& reading_;
  Matcher matcher_;
  std::optional<std::size_t> named_;
};

}  // namespace

void find_signs(Draft& draft) { SightPass(draft).run(); }

}  // namespace pinwright::knowledge
