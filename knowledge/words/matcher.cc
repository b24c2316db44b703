#include "knowledge/words/matcher.h"

#include <algorithm>
#include <map>
#include <optional>
#include <tuple>

namespace pinwright::knowledge {
namespace {

constexpr std::size_t kLongestGap = 4;
constexpr std::size_t kFar = 1000;  ///< distance of a lent word: own ones come first

enum class Role : unsigned char { none, own, joined, lent };

using Runs = std::vector<const Run*>;

/// All that one search works on.
class Search {
 public:
  Search(const Reading& reading, const Lexicon& lexicon, const std::vector<bool>& allowed,
         std::size_t clause, const Neighbours& neighbours)
      : reading_(reading),
        lexicon_(lexicon),
        allowed_(allowed),
        clause_(reading.clauses[clause]),
        neighbours_(neighbours) {
    give_roles(clause_, Role::own);
    for (std::size_t j : neighbours.joined) give_roles(reading.clauses[j], Role::joined);
    for (std::size_t i : neighbours.lent) roles_[i] = Role::lent;
    collect(clause_);
    for (std::size_t j : neighbours.joined) collect(reading.clauses[j]);
    collect_lent();
  }

  std::vector<Match> best() {
    for (const Run* anchor : all_) {
      for (std::size_t p : lexicon_.phrases_with(anchor->id)) {
        const ReadyPhrase& phrase = lexicon_.phrases()[p];
        if (!allowed_[phrase.sign]) continue;
        if (phrase.ordered) {
          ordered(p, *anchor);
        } else {
          unordered(p, *anchor);
        }
      }
    }
    return std::move(kept_);
  }

 private:
  using Score =
      std::tuple<std::size_t, std::size_t, std::ptrdiff_t, std::ptrdiff_t, std::ptrdiff_t>;

  void give_roles(const Clause& clause, Role role) {
    for (std::size_t i = clause.first; i < clause.last; ++i) {
      const Word& word = reading_.words[i];
      if (!word.taken) roles_[i] = role;
      if (word.taken && word.place != PlaceWord::none && role == Role::own) roles_[i] = Role::lent;
    }
  }

  void collect(const Clause& clause) {
    for (const Run& run : clause.runs) keep_run(run);
  }

  void collect_lent() {
    std::vector<std::size_t> clauses;
    for (std::size_t i : neighbours_.lent) {
      const std::size_t c = clause_of(i);
      if (clauses.empty() || clauses.back() != c) clauses.push_back(c);
    }
    for (std::size_t lender : clauses) {
      if (&reading_.clauses[lender] == &clause_) continue;
      const auto& joined = neighbours_.joined;
      if (std::find(joined.begin(), joined.end(), lender) != joined.end()) continue;
      collect(reading_.clauses[lender]);
    }
  }

  std::size_t clause_of(std::size_t token) const {
    const auto after =
        std::upper_bound(reading_.clauses.begin(), reading_.clauses.end(), token,
                         [](std::size_t i, const Clause& clause) { return i < clause.first; });
    return static_cast<std::size_t>(after - reading_.clauses.begin()) - 1;
  }

  Role role(std::size_t token) const {
    const auto found = roles_.find(token);
    return found == roles_.end() ? Role::none : found->second;
  }

  void keep_run(const Run& run) {
    const bool usable = std::all_of(run.tokens.begin(), run.tokens.end(),
                                    [&](std::size_t i) { return role(i) != Role::none; });
    if (!usable) return;
    all_.push_back(&run);
    by_term_[run.id].push_back(&run);
  }

  const Runs& runs_of(TermId term) const {
    static const Runs none;
    const auto found = by_term_.find(term);
    return found == by_term_.end() ? none : found->second;
  }

  static bool overlaps(const Run& run, const std::vector<std::size_t>& tokens) {
    return std::any_of(run.tokens.begin(), run.tokens.end(), [&](std::size_t i) {
      return std::find(tokens.begin(), tokens.end(), i) != tokens.end();
    });
  }

  std::size_t distance(const Run& run, const Run& anchor) const {
    const std::size_t a = run.tokens.front();
    const std::size_t b = anchor.tokens.front();
    return (a < b ? b - a : a - b) + (role(a) == Role::lent ? kFar : 0);
  }

  /// The nearest run of the term that is still free.
  const Run* nearest(TermId term, const Run& anchor, const std::vector<std::size_t>& used) const {
    const Run* best = nullptr;
    for (const Run* run : runs_of(term)) {
      if (overlaps(*run, used)) continue;
      if (!best || distance(*run, anchor) < distance(*best, anchor) ||
          (distance(*run, anchor) == distance(*best, anchor) &&
           run->tokens.size() > best->tokens.size())) {
        best = run;
      }
    }
    return best;
  }

  void unordered(std::size_t p, const Run& anchor) {
    const ReadyPhrase& phrase = lexicon_.phrases()[p];
    std::vector<std::size_t> used = anchor.tokens;
    std::size_t items = 1;
    bool anchored = false;
    for (const ReadyItem& item : phrase.items) {
      if (item.term == anchor.id && !anchored) {
        anchored = true;
        continue;
      }
      const Run* run = nearest(item.term, anchor, used);
      if (!run) return;
      used.insert(used.end(), run->tokens.begin(), run->tokens.end());
      ++items;
    }
    for (const std::vector<TermId>& option : phrase.options) {
      std::vector<std::size_t> with = used;
      const bool said = std::all_of(option.begin(), option.end(), [&](TermId term) {
        const Run* run = nearest(term, anchor, with);
        if (run) with.insert(with.end(), run->tokens.begin(), run->tokens.end());
        return run != nullptr;
      });
      if (!said) continue;
      used = std::move(with);
      items += option.size();
    }
    consider(p, items, std::move(used));
  }

  /// From every place where the first item can stand, once a phrase: its first anchor is enough.
  void ordered(std::size_t p, const Run& anchor) {
    if (runs_of(anchor.id).front() != &anchor) return;
    for (const Run* first : all_) follow(p, 0, first->tokens.front(), true, 0, {});
  }

  /// Matches the items from `item` on, the first of them at token `at`, the others from there on.
  bool follow(std::size_t p, std::size_t item, std::size_t at, bool first, std::size_t items,
              std::vector<std::size_t> used) {
    const ReadyPhrase& phrase = lexicon_.phrases()[p];
    if (item == phrase.items.size()) return consider(p, items, std::move(used));
    const ReadyItem& wanted = phrase.items[item];
    const bool after_gap = item > 0 && phrase.items[item - 1].gap;
    if (wanted.gap) return follow(p, item + 1, at, first, items, std::move(used));
    for (const Run* run : runs_of(wanted.term)) {
      if (run->tokens.front() < at || overlaps(*run, used)) continue;
      if (first ? run->tokens.front() != at
                : between(at, run->tokens.front()) > (after_gap ? kLongestGap : 0)) {
        continue;
      }
      std::vector<std::size_t> with = used;
      with.insert(with.end(), run->tokens.begin(), run->tokens.end());
      if (follow(p, item + 1, run->tokens.back() + 1, false, items + 1, std::move(with))) {
        return true;
      }
    }
    if (wanted.option == 0) return false;
    std::size_t next = item;
    while (next < phrase.items.size() && phrase.items[next].option == wanted.option) ++next;
    return follow(p, next, at, first, items, std::move(used));
  }

  /// How many words that count stand in [from, to).
  std::size_t between(std::size_t from, std::size_t to) const {
    std::size_t count = 0;
    for (std::size_t i = from; i < to; ++i) {
      const Word& word = reading_.words[i];
      const bool unit = word.number && reading_.numbers[*word.number].has_unit;
      if (has_content(reading_, i) && !unit) ++count;
    }
    return count;
  }

  /// Keeps the match when the rules allow it and nothing better is known. True when allowed.
  bool consider(std::size_t p, std::size_t items, std::vector<std::size_t> used) {
    Match match;
    match.phrase = p;
    match.items = items;
    std::sort(used.begin(), used.end());
    for (std::size_t i : used) {
      (role(i) == Role::lent ? match.lent : match.tokens).push_back(i);
    }
    if (!allowed(match) || breaks_a_group(used) || takes_a_doing(p, used) ||
        jumps_a_place(p, used)) {
      return false;
    }
    const Score score = score_of(match);
    if (!kept_.empty()) {
      const bool same = match.tokens == kept_.front().tokens && match.lent == kept_.front().lent;
      const bool both_deny = denies(p) && denies(kept_.front().phrase);
      if (same && both_deny) {
        const std::size_t sign = lexicon_.phrases()[p].sign;
        const bool known = std::any_of(kept_.begin(), kept_.end(), [&](const Match& other) {
          return lexicon_.phrases()[other.phrase].sign == sign;
        });
        if (!known) kept_.push_back(std::move(match));
        return true;
      }
      if (score <= best_) return true;
    }
    best_ = score;
    kept_.clear();
    kept_.push_back(std::move(match));
    return true;
  }

  bool denies(std::size_t p) const { return lexicon_.phrases()[p].denies; }

  bool allowed(const Match& match) const {
    const auto own = [&](std::size_t i) { return role(i) == Role::own; };
    const auto other = [&](std::size_t i) {
      const Word& word = reading_.words[i];
      return word.place == PlaceWord::none && role(i) == Role::own &&
             (word.load == Load::content || !relent(match));
    };
    if (std::none_of(match.tokens.begin(), match.tokens.end(), own)) return false;
    const bool joined = std::any_of(match.tokens.begin(), match.tokens.end(),
                                    [&](std::size_t i) { return role(i) == Role::joined; });
    if (match.lent.empty() && !joined) return true;
    if (!match.lent.empty() && neighbours_.must_keep_places) {
      if (std::none_of(match.tokens.begin(), match.tokens.end(), other)) return false;
      if (relent(match) ? inside_another(match) : !is_most_of_clause(match)) return false;
    }
    return keeps_places(match);
  }

  /// A place of the clause itself is used again: "a good 2 cm" then says nothing more about it.
  bool relent(const Match& match) const {
    return std::any_of(match.lent.begin(), match.lent.end(),
                       [&](std::size_t i) { return i >= clause_.first && i < clause_.last; });
  }

  /// With a place of its own clause that is taken: what it adds stands among the words of the
  /// finding that took it ("loose up HIGH near the shoulders") and so is no second one.
  bool inside_another(const Match& match) const {
    const std::size_t first = match.tokens.front();
    bool before = false;
    bool after = false;
    for (std::size_t i = clause_.first; i < clause_.last; ++i) {
      const Word& word = reading_.words[i];
      if (!word.taken || word.place != PlaceWord::none) continue;
      (i < first ? before : after) = true;
    }
    for (std::size_t i : match.tokens) {
      const bool place_after =
          std::any_of(match.lent.begin(), match.lent.end(), [&](std::size_t lent) {
            return lent > i && lent >= clause_.first && lent < clause_.last;
          });
      after = after || place_after;
    }
    return before && after && match.tokens.size() < 2;
  }

  /// A place of another clause is only meant where little else is said: nothing besides a denial
  /// ("and is fine"), two words at most besides what happens.
  bool is_most_of_clause(const Match& match) const {
    const std::size_t most = denies(match.phrase) ? 0 : 2;
    std::size_t besides = 0;
    for (std::size_t i = clause_.first; i < clause_.last; ++i) {
      const Word& word = reading_.words[i];
      if (word.taken || word.notion || word.number || !has_content(reading_, i)) continue;
      if (!std::binary_search(match.tokens.begin(), match.tokens.end(), i)) ++besides;
    }
    return besides <= most;
  }

  /// Every place the clause names by itself, and that is still free, is part of the match.
  bool keeps_places(const Match& match) const {
    for (std::size_t i = clause_.first; i < clause_.last; ++i) {
      if (reading_.words[i].place != PlaceWord::place || role(i) != Role::own) continue;
      if (!std::binary_search(match.tokens.begin(), match.tokens.end(), i)) return false;
    }
    return true;
  }

  /// Of a notion of several words a phrase takes all that count or none ("side" of "each side").
  bool breaks_a_group(const std::vector<std::size_t>& used) const {
    for (std::size_t i : used) {
      if (!reading_.words[i].notion || reading_.words[i].load == Load::noise) continue;
      for (std::size_t other : reading_.notions[*reading_.words[i].notion].tokens) {
        if (reading_.words[other].load == Load::noise) continue;
        if (!std::binary_search(used.begin(), used.end(), other)) return true;
      }
    }
    return false;
  }

  /// What was done for a test is no sight: "pinching" is not that it pinches.
  bool takes_a_doing(std::size_t p, const std::vector<std::size_t>& used) const {
    const std::size_t sign = lexicon_.phrases()[p].sign;
    const bool test = lexicon_.is_test(sign);
    const bool lack = lexicon_.is_lack(sign);
    return std::any_of(used.begin(), used.end(), [&](std::size_t i) {
      return (reading_.words[i].doing && !test) || (reading_.words[i].measuring && lack);
    });
  }

  /// "when I lean forward the NECK stands away": words on both sides of a place that is neither in
  /// the match nor of its sign's zone are not said of one thing.
  bool jumps_a_place(std::size_t p, const std::vector<std::size_t>& used) const {
    const ReadyPhrase& phrase = lexicon_.phrases()[p];
    if (phrase.ordered) return false;
    const auto is_place = [&](std::size_t i) {
      return reading_.words[i].place == PlaceWord::place;
    };
    if (std::any_of(used.begin(), used.end(), is_place)) return false;
    for (std::size_t i = used.front(); i < used.back(); ++i) {
      if (!is_place(i) || i < clause_.first || i >= clause_.last) continue;
      if (!lexicon_.zone_has(phrase.sign, reading_.tokens[i].stem)) return true;
    }
    return false;
  }

  Score score_of(const Match& match) const {
    const ReadyPhrase& phrase = lexicon_.phrases()[match.phrase];
    const std::size_t span = match.tokens.back() - match.tokens.front();
    return {match.items, match.tokens.size(), -static_cast<std::ptrdiff_t>(span),
            -static_cast<std::ptrdiff_t>(match.lent.size()),
            -static_cast<std::ptrdiff_t>(phrase.sign)};
  }

  const Reading& reading_;
  const Lexicon& lexicon_;
  const std::vector<bool>& allowed_;
  const Clause& clause_;
  const Neighbours& neighbours_;
  std::map<std::size_t, Role> roles_;
  Runs all_;
  std::map<TermId, Runs> by_term_;
  std::vector<Match> kept_;
  Score best_;
};

}  // namespace

std::vector<Match> Matcher::best(std::size_t clause, const Neighbours& neighbours) const {
  return Search(reading_, lexicon_, allowed_, clause, neighbours).best();
}

}  // namespace pinwright::knowledge
