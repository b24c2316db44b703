#include "knowledge/words/suppose.h"

#include "knowledge/words/measuring.h"

#include <algorithm>

namespace pinwright::knowledge {
namespace {

constexpr std::size_t kMostStretches = 256;
constexpr double kLeastScore = 0.42;        ///< score from which a clause is supposed to be a sign
constexpr double kLeastScoreBeside = 0.55;  ///< the same where the clause has a finding already
constexpr double kLeastLead = 1.12;         ///< how much better than the next other sign
constexpr double kLeastScoreOfTest = 0.33;
constexpr std::size_t kMostOfTest = 4;  ///< clauses
constexpr double kMostSure = 0.85;

struct Guess {
  Like like;
  double lead = 0.0;
  std::vector<std::size_t> clauses;
  ToldWords told;
};

class Supposing {
 public:
  Supposing(Draft& draft, const Resemblance& resemblance)
      : draft_(draft), reading_(draft.reading), resemblance_(resemblance) {}

  void run() {
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
  }

 private:
  bool has_finding(std::size_t c) const {
    return std::any_of(draft_.findings.begin(), draft_.findings.end(),
                       [&](const DraftFinding& finding) { return has_part(draft_, finding, c); });
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
    const std::vector<Like> likes = resemblance_.rank(guess.told, allowed, 8);
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
    if (beside && own < 2) return false;
    return guess.like.score >= (beside ? kLeastScoreBeside : kLeastScore) &&
           guess.lead >= kLeastLead;
  }

  void keep(const Guess& guess) {
    DraftFinding finding;
    finding.sign = guess.like.sign;
    if (!resemblance_.tells_kind(guess.told, finding.sign)) {
      finding.sign = *resemblance_.plainer(finding.sign);
    }
    finding.clause = guess.clauses.front();
    finding.supposed = true;
    finding.sure = std::min(kMostSure, 0.35 + 0.6 * guess.like.score);
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
    for (std::size_t c : guess.clauses) negate(c, finding);
    draft_.findings.push_back(std::move(finding));
  }

  void negate(std::size_t c, DraftFinding& finding) {
    using Kind = Notion::Kind;
    const bool of_test = draft_.lexicon.is_test(finding.sign);
    const bool turned = !of_test && reading_.clauses[c].test;
    const auto [first, last] = notions_of(reading_, c);
    for (std::size_t n = first; n < last; ++n) {
      const Notion& notion = reading_.notions[n];
      const bool denies = notion.kind == Kind::negation || notion.kind == Kind::gone ||
                          (of_test && notion.kind == Kind::no_effect);
      if (!denies || reading_.words[notion.tokens.front()].taken) continue;
      for (std::size_t i : notion.tokens) take(draft_, finding, i);
      if (turned || (of_test && notion.kind == Kind::gone)) continue;
      finding.negated = !finding.negated;
    }
  }

  Draft& draft_;
  Reading& reading_;
  const Resemblance& resemblance_;
  std::size_t looked_up_ = 0;
};

}  // namespace

std::vector<std::size_t> telling_words(const Draft& draft, std::size_t first, std::size_t last) {
  const Reading& reading = draft.reading;
  std::vector<std::size_t> words;
  for (std::size_t i = first; i < last; ++i) {
    const Word& word = reading.words[i];
    if (word.taken || word.separator || reading.tokens[i].kind != Token::Kind::word) continue;
    if (word.number && reading.numbers[*word.number].has_unit) continue;
    if (word.notion) {
      using Kind = Notion::Kind;
      const Kind kind = reading.notions[*word.notion].kind;
      if (kind != Kind::taken && kind != Kind::gone && kind != Kind::posture) continue;
      if (word.load == Load::noise) continue;
      words.push_back(i);
      continue;
    }
    if (has_content(reading, i)) words.push_back(i);
  }
  return words;
}

void suppose(Draft& draft, const Resemblance& resemblance) { Supposing(draft, resemblance).run(); }

}  // namespace pinwright::knowledge
