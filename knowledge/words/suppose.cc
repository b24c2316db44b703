#include "knowledge/words/suppose.h"

#include "knowledge/words/measuring.h"

#include <algorithm>

namespace pinwright::knowledge {
namespace {

constexpr std::size_t kMostStretches = 256;
constexpr double kLeastScore = 0.5;         ///< score from which a clause is supposed to be a sign
constexpr double kLeastScoreBeside = 0.62;  ///< the same where the clause has a finding already
constexpr double kLeastLead = 1.05;         ///< how much better than the next other sign
constexpr double kLeastScoreOfTest = 0.5;
constexpr std::size_t kMostOfTest = 4;      ///< clauses
constexpr std::size_t kFewItems = 3;        ///< of a phrase that may be met by chance
constexpr double kLeastScoreInstead = 0.5;  ///< of the sign that it is dropped for
constexpr double kMuchLess = 0.85;          ///< what its own score is of that, at most
constexpr std::size_t kMostWhole = 3;       ///< clauses that are read as a whole
constexpr double kLeastScoreWhole = 0.65;
constexpr double kLeastLeadWhole = 1.2;
constexpr double kMostSure =
    0.6;  ///< about as often as what is supposed was meant, in tellings kept apart

struct Guess {
  Like like;
  double lead = 0.0;
  std::vector<std::size_t> clauses;
  ToldWords told;
};

class Supposing {
 public:
  Supposing(Draft& draft, const Resemblance& resemblance, Shortlists& shortlists)
      : draft_(draft),
        reading_(draft.reading),
        resemblance_(resemblance),
        shortlists_(shortlists) {}

  void run() {
    reconsider();
    find_tests();
    std::optional<std::size_t> named;  // last clause that names a place
    for (std::size_t c = 0; c < reading_.clauses.size(); ++c) {
      const std::optional<std::size_t> before = named;
      if (reading_.clauses[c].has_place) named = c;
      std::optional<Guess> guess = look_up({c}, before);
      if (!has_finding(c) && c + 1 < reading_.clauses.size() && goes_with_next(c)) {
        const std::optional<Guess> next = look_up({c + 1}, named);
        std::optional<Guess> both = look_up({c, c + 1}, before);
        const double best =
            std::max(guess ? guess->like.score : 0.0, next ? next->like.score : 0.0);
        if (both && both->like.score > best) guess = std::move(both);
      }
      if (guess && good_enough(*guess)) keep(*guess);
    }
    read_whole();
  }

 private:
  /// What clauses tell as a whole, whatever phrases took of their words: one, two or three of a
  /// sentence. Words that are in another finding already are read with it too.
  void read_whole() {
    for (std::size_t c = 0; c < reading_.clauses.size(); ++c) {
      for (std::size_t n = 1; n <= kMostWhole && c + n <= reading_.clauses.size(); ++n) {
        if (reading_.clauses[c + n - 1].sentence != reading_.clauses[c].sentence) break;
        std::optional<Guess> guess = look_up_whole(c, n);
        if (guess && guess->like.score >= kLeastScoreWhole && guess->lead >= kLeastLeadWhole)
          keep(*guess);
      }
    }
  }

  std::optional<Guess> look_up_whole(std::size_t c, std::size_t n) {
    if (looked_up_ >= kMostStretches) return std::nullopt;
    Guess guess;
    std::vector<std::size_t> words;
    for (std::size_t other = c; other < c + n; ++other) {
      const Clause& clause = reading_.clauses[other];
      if (is_fine(clause)) return std::nullopt;
      guess.clauses.push_back(other);
      for (std::size_t i : all_telling_words(draft_, clause.first, clause.last)) words.push_back(i);
    }
    const bool all_read = std::all_of(words.begin(), words.end(),
                                      [&](std::size_t i) { return reading_.words[i].taken; });
    const bool each_has_one =
        n > 1 && std::all_of(guess.clauses.begin(), guess.clauses.end(),
                             [&](std::size_t other) { return has_finding(other); });
    if (words.size() < 2 || all_read || each_has_one) return std::nullopt;
    ++looked_up_;
    guess.told = resemblance_.told(reading_, words, {});
    const std::vector<Like> likes = rank(guess.told, guess.clauses, draft_.allowed, 8);
    if (likes.empty() || likes.front().words.size() < 2) return std::nullopt;
    guess.like = likes.front();
    for (const DraftFinding& finding : draft_.findings) {
      const bool here = std::any_of(guess.clauses.begin(), guess.clauses.end(),
                                    [&](auto other) { return has_part(draft_, finding, other); });
      const bool same =
          finding.sign == guess.like.sign || resemblance_.are_kin(finding.sign, guess.like.sign);
      if (here && same) return std::nullopt;
    }
    guess.lead = 10.0;
    for (std::size_t k = 1; k < likes.size(); ++k) {
      if (resemblance_.are_kin(likes.front().sign, likes[k].sign)) continue;
      guess.lead = likes.front().score / likes[k].score;
      break;
    }
    return guess;
  }

  /// The clauses are of one sentence.
  std::vector<Like> rank(const ToldWords& told, const std::vector<std::size_t>& clauses,
                         const std::vector<bool>& allowed, std::size_t most) {
    const std::size_t sentence = reading_.clauses[clauses.front()].sentence;
    std::vector<Like> likes =
        resemblance_.rank(told, shortlists_.of_sentence(sentence), allowed, most);
    const bool pinched = std::any_of(told.words.begin(), told.words.end(), [&](const auto& word) {
      return reading_.words[word.token].measuring;
    });
    if (pinched) {  // "I can pinch an inch" is that there is too much, or a test
      std::erase_if(likes, [&](const Like& like) {
        const bool test = draft_.lexicon.is_test(like.sign) && reading_.clauses[clauses[0]].tried;
        return !test && !draft_.lexicon.is_excess(like.sign);
      });
    }
    return likes;
  }

  bool has_finding(std::size_t c) const {
    return std::any_of(draft_.findings.begin(), draft_.findings.end(),
                       [&](const DraftFinding& finding) { return has_part(draft_, finding, c); });
  }

  /// A phrase of two words may say less than the whole clause: where another sign is much more like
  /// all of it, the phrase was met by chance and its words are free again.
  void reconsider() {
    std::vector<bool> dropped(draft_.findings.size());
    for (std::size_t f = 0; f < draft_.findings.size(); ++f) {
      const DraftFinding& finding = draft_.findings[f];
      if (finding.denied || finding.negated || finding.items > kFewItems || finding.borrowed_from) {
        continue;
      }
      const std::size_t c = finding.clause;
      if (*finding.tokens.begin() < reading_.clauses[c].first ||
          *finding.tokens.rbegin() >= reading_.clauses[c].last) {
        continue;
      }
      dropped[f] = is_chance(finding);
    }
    for (std::size_t f = 0; f < dropped.size(); ++f) {
      if (!dropped[f]) continue;
      for (std::size_t i : draft_.findings[f].tokens) reading_.words[i].taken = false;
    }
    std::size_t at = 0;
    std::erase_if(draft_.findings, [&](const DraftFinding&) { return dropped[at++]; });
    for (const DraftFinding& finding : draft_.findings) {
      for (std::size_t i : finding.tokens) reading_.words[i].taken = true;
    }
  }

  bool is_chance(const DraftFinding& finding) {
    const Clause& clause = reading_.clauses[finding.clause];
    if (looked_up_++ >= kMostStretches) return false;
    const std::vector<std::size_t> words = all_telling_words(draft_, clause.first, clause.last);
    const ToldWords told = resemblance_.told(reading_, words, {});
    const std::vector<Like> likes = rank(told, {finding.clause}, draft_.allowed, 16);
    if (likes.empty() || likes.front().score < kLeastScoreInstead) return false;
    const std::size_t best = likes.front().sign;
    if (best == finding.sign || resemblance_.are_kin(best, finding.sign)) return false;
    for (const DraftFinding& other : draft_.findings) {
      if (other.sign == best && has_part(draft_, other, finding.clause)) return false;
    }
    double own = 0.0;
    for (const Like& like : likes) {
      if (like.sign == finding.sign) own = like.score;
    }
    return own < kMuchLess * likes.front().score;
  }

  /// What was tried, and in the clauses after it what came of it, against the signs of tests.
  void find_tests() {
    std::vector<bool> tests = draft_.allowed;
    for (std::size_t s = 0; s < tests.size(); ++s) tests[s] = tests[s] && draft_.lexicon.is_test(s);
    for (std::size_t c = 0; c < reading_.clauses.size();) {
      std::vector<std::size_t> clauses;
      bool told = false;
      std::size_t last = c;
      for (; last < reading_.clauses.size() && reading_.clauses[last].tried &&
             clauses.size() < kMostOfTest &&
             reading_.clauses[last].sentence == reading_.clauses[c].sentence;
           ++last) {
        clauses.push_back(last);
        told = told || tells_of_test(last);
      }
      if (!told && !clauses.empty()) {
        const std::optional<std::size_t> named =
            c == 0 ? std::nullopt : std::optional<std::size_t>(c - 1);
        const auto guess = look_up(clauses, named, tests);
        if (guess && guess->like.score >= kLeastScoreOfTest && guess->lead >= kLeastLead) {
          keep(*guess);
        }
      }
      c = std::max(last, c + 1);
    }
  }

  bool tells_of_test(std::size_t c) const {
    return std::any_of(draft_.findings.begin(), draft_.findings.end(), [&](const auto& finding) {
      return has_part(draft_, finding, c) && draft_.lexicon.is_test(finding.sign);
    });
  }

  bool goes_with_next(std::size_t c) const {
    const Clause& next = reading_.clauses[c + 1];
    return next.sentence == reading_.clauses[c].sentence && next.joint != Joint::but &&
           !has_finding(c + 1);
  }

  bool is_fine(const Clause& clause) const {
    if (clause.foreign) return true;  // nothing is supposed of it either
    const std::optional<TermId> fine = draft_.lexicon.class_term("fine");
    if (!fine || clause.test) return false;
    return std::any_of(clause.runs.begin(), clause.runs.end(), [&](const Run& run) {
      return run.id == *fine && !reading_.words[run.tokens.front()].taken;
    });
  }

  std::optional<Guess> look_up(const std::vector<std::size_t>& clauses,
                               const std::optional<std::size_t>& named) {
    return look_up(clauses, named, draft_.allowed);
  }

  std::optional<Guess> look_up(const std::vector<std::size_t>& clauses,
                               const std::optional<std::size_t>& named,
                               const std::vector<bool>& allowed) {
    if (looked_up_ >= kMostStretches) return std::nullopt;
    std::vector<std::size_t> words;
    std::vector<std::size_t> lent;
    std::size_t free = 0;
    bool place = false;
    for (std::size_t c : clauses) {
      const Clause& clause = reading_.clauses[c];
      if (is_fine(clause)) return std::nullopt;
      // How much of what was told before is no sight of its own.
      if (tells_only_how_much(reading_, c) && !draft_.findings.empty()) return std::nullopt;
      for (std::size_t i : telling_words(draft_, clause.first, clause.last)) {
        words.push_back(i);
        if (reading_.words[i].place == PlaceWord::none) ++free;
      }
      for (std::size_t i = clause.first; i < clause.last; ++i) {
        const bool where = reading_.words[i].place != PlaceWord::none;
        if (where && reading_.words[i].taken) lent.push_back(i);
        place = place || reading_.words[i].place == PlaceWord::place;
      }
    }
    if (free == 0) return std::nullopt;
    const bool near = named && reading_.clauses[clauses.front()].sentence <=
                                   reading_.clauses[*named].sentence + 1;
    if (!place && near) {
      const Clause& clause = reading_.clauses[*named];
      for (std::size_t i = clause.first; i < clause.last; ++i) {
        if (reading_.words[i].place != PlaceWord::none) lent.push_back(i);
      }
    }
    ++looked_up_;
    Guess guess;
    guess.told = resemblance_.told(reading_, words, lent);
    guess.clauses = clauses;
    const std::vector<Like> likes = rank(guess.told, clauses, allowed, 8);
    if (likes.empty()) return std::nullopt;
    guess.like = likes.front();
    std::size_t own = 0;
    bool where = false;
    for (std::size_t w : guess.like.words) {
      const ToldWord& word = guess.told.words[w];
      if (!word.lent) ++own;
      where = where || word.place;
    }
    if (own < 2 && !(own == 1 && where && guess.told.words.size() < 4)) return std::nullopt;
    guess.lead = 10.0;
    for (std::size_t n = 1; n < likes.size(); ++n) {
      if (resemblance_.are_kin(likes.front().sign, likes[n].sign)) continue;
      guess.lead = likes.front().score / likes[n].score;
      break;
    }
    return guess;
  }

  bool good_enough(const Guess& guess) const {
    const bool beside = std::any_of(guess.clauses.begin(), guess.clauses.end(),
                                    [&](std::size_t c) { return has_finding(c); });
    const auto own = std::count_if(guess.like.words.begin(), guess.like.words.end(),
                                   [&](std::size_t w) { return !guess.told.words[w].lent; });
    if (beside && (own < 2 || !says_enough(guess))) return false;
    return guess.like.score >= (beside ? kLeastScoreBeside : kLeastScore) &&
           guess.lead >= kLeastLead;
  }

  /// Two words that count and are no mere direction ("running from").
  bool says_enough(const Guess& guess) const {
    const auto counts = [&](std::size_t w) {
      const ToldWord& word = guess.told.words[w];
      return !word.lent && reading_.words[word.token].load == Load::content;
    };
    return std::count_if(guess.like.words.begin(), guess.like.words.end(), counts) >= 2;
  }

  void keep(const Guess& guess) {
    DraftFinding finding;
    finding.sign = guess.like.sign;
    if (!resemblance_.tells_kind(guess.told, finding.sign)) {
      finding.sign = *resemblance_.plainer(finding.sign);
    }
    finding.clause = guess.clauses.front();
    finding.supposed = true;
    finding.sure = std::min(kMostSure, 0.15 + 0.35 * guess.like.score);
    for (std::size_t w : guess.like.words) {
      const ToldWord& word = guess.told.words[w];
      if (word.lent) {
        finding.lent.insert(word.token);
      } else {
        take(draft_, finding, word.token);
        if (const auto notion = reading_.words[word.token].notion) {  // as a whole
          for (std::size_t i : reading_.notions[*notion].tokens) take(draft_, finding, i);
        }
      }
    }
    if (finding.tokens.empty()) return;
    for (DraftFinding& other : draft_.findings) {
      if (other.sign != finding.sign || other.clause != finding.clause) continue;
      other.tokens.insert(finding.tokens.begin(), finding.tokens.end());  // said already
      return;
    }
    finding.negated = guess.like.absent && !turned(guess, finding.sign);
    for (std::size_t c : guess.clauses) negate(c, finding);
    draft_.findings.push_back(std::move(finding));
  }

  /// "When I pin it, it does not gape": it does else.
  bool turned(const Guess& guess, std::size_t sign) const {
    return !draft_.lexicon.is_test(sign) &&
           std::any_of(guess.clauses.begin(), guess.clauses.end(),
                       [&](std::size_t c) { return reading_.clauses[c].test; });
  }

  /// The "not"s are counted in the likeness; here they and what else denies become its words.
  void negate(std::size_t c, DraftFinding& finding) {
    using Kind = Notion::Kind;
    const bool of_test = draft_.lexicon.is_test(finding.sign);
    const auto [first, last] = notions_of(reading_, c);
    for (std::size_t n = first; n < last; ++n) {
      const Notion& notion = reading_.notions[n];
      const bool gone = notion.kind == Kind::gone;
      const bool no_effect = of_test && notion.kind == Kind::no_effect;
      if (notion.kind != Kind::negation && !gone && !no_effect) continue;
      if (reading_.words[notion.tokens.front()].taken) continue;
      for (std::size_t i : notion.tokens) take(draft_, finding, i);
      const bool turns = no_effect || (gone && !of_test && !reading_.clauses[c].test);
      if (turns) finding.negated = !finding.negated;
    }
  }

  Draft& draft_;
  Reading& reading_;
  const Resemblance& resemblance_;
  Shortlists& shortlists_;
  std::size_t looked_up_ = 0;
};

}  // namespace

namespace {

/// A light word ("behind") with which a member of a class begins.
bool begins_class(const Draft& draft, std::size_t token) {
  const std::vector<Clause>& clauses = draft.reading.clauses;
  const auto clause =
      std::upper_bound(clauses.begin(), clauses.end(), token,
                       [](std::size_t i, const Clause& one) { return i < one.last; });
  if (clause == clauses.end()) return false;
  return std::any_of(clause->runs.begin(), clause->runs.end(), [&](const Run& run) {
    return run.tokens.front() == token && draft.lexicon.is_class(run.id);
  });
}

}  // namespace

std::vector<std::size_t> telling_words(const Draft& draft, std::size_t first, std::size_t last) {
  std::vector<std::size_t> words = all_telling_words(draft, first, last);
  std::erase_if(words, [&](std::size_t i) { return draft.reading.words[i].taken; });
  return words;
}

std::vector<std::size_t> all_telling_words(const Draft& draft, std::size_t first,
                                           std::size_t last) {
  const Reading& reading = draft.reading;
  std::vector<std::size_t> words;
  for (std::size_t i = first; i < last; ++i) {
    const Word& word = reading.words[i];
    if (word.separator || reading.tokens[i].kind != Token::Kind::word) continue;
    if (word.number && reading.numbers[*word.number].has_unit) continue;
    if (word.notion) {
      using Kind = Notion::Kind;
      const Kind kind = reading.notions[*word.notion].kind;
      if (kind != Kind::taken && kind != Kind::gone && kind != Kind::posture) continue;
      if (word.load == Load::noise) continue;
      words.push_back(i);
      continue;
    }
    const bool than = i + 1 < last && reading.tokens[i + 1].text == "than";
    if (has_content(reading, i) || begins_class(draft, i) || than) words.push_back(i);
  }
  return words;
}

void suppose(Draft& draft, const Resemblance& resemblance, Shortlists& shortlists) {
  Supposing(draft, resemblance, shortlists).run();
}

}  // namespace pinwright::knowledge
