#include "knowledge/words/leftovers.h"

#include <algorithm>
#include <map>
#include <set>

#include "engine/base/nearest_word.h"

namespace pinwright::knowledge {
namespace {

constexpr std::size_t kMostNearest = 3;
constexpr std::size_t kMostSpelled = 64;  ///< unknown words that are compared with known ones

struct Span {
  std::size_t first = 0;  ///< tokens [first, last)
  std::size_t last = 0;
  bool whole = false;  ///< a whole clause or more
};

class LeftoverPass {
 public:
  explicit LeftoverPass(const Draft& draft) : draft_(draft), reading_(draft.reading) {}

  std::vector<NotUnderstood> run() {
    std::vector<NotUnderstood> items;
    for (const Span& span : spans()) {
      const std::size_t begin = reading_.tokens[span.first].begin;
      const std::size_t end = reading_.tokens[span.last - 1].end;
      items.push_back(
          {std::string(reading_.text.substr(begin, end - begin)), begin, nearest(span)});
    }
    return items;
  }

 private:
  bool left(std::size_t i) const { return has_content(reading_, i) && !reading_.words[i].taken; }

  std::vector<Span> spans() const {
    std::vector<Span> found;
    for (std::size_t c = 0; c < reading_.clauses.size(); ++c) {
      const Clause& clause = reading_.clauses[c];
      bool some_left = false;
      bool some_taken = false;
      for (std::size_t i = clause.first; i < clause.last; ++i) {
        some_left = some_left || left(i);
        some_taken = some_taken || reading_.words[i].taken;
      }
      if (!some_left) continue;
      if (some_taken) {
        add_runs(clause, found);
      } else {
        add_whole(c, found);
      }
    }
    return found;
  }

  void add_runs(const Clause& clause, std::vector<Span>& found) const {
    bool open = false;
    for (std::size_t i = clause.first; i < clause.last; ++i) {
      if (left(i)) {
        if (!open) found.push_back({i, i + 1, false});
        found.back().last = i + 1;
        open = true;
      } else if (reading_.words[i].taken) {
        open = false;
      }
    }
  }

  void add_whole(std::size_t c, std::vector<Span>& found) const {
    const Clause& clause = reading_.clauses[c];
    Span span{clause.first, clause.last, true};
    const auto mark = [&](std::size_t i) { return reading_.tokens[i].kind == Token::Kind::mark; };
    while (mark(span.first)) ++span.first;
    while (mark(span.last - 1)) --span.last;
    const bool tied = c > 0 && clause.joint == Joint::with && !found.empty() &&
                      found.back().whole && found.back().last <= reading_.clauses[c - 1].last &&
                      found.back().last > reading_.clauses[c - 1].first;
    if (tied) {
      found.back().last = span.last;
    } else {
      found.push_back(span);
    }
  }

  /// Shared words count the more, the fewer signs share them.
  std::vector<std::string> nearest(const Span& span) {
    std::map<std::size_t, double> scores;
    const auto give = [&](const std::vector<std::size_t>& signs) {
      for (std::size_t s : signs) {
        if (draft_.allowed[s]) scores[s] += 1.0 / static_cast<double>(signs.size());
      }
    };
    for (TermId term : terms_in(span)) give(draft_.lexicon.signs_of_term(term));
    std::set<std::string> stems;
    for (std::size_t i = span.first; i < span.last; ++i) {
      if (left(i) && reading_.tokens[i].kind == Token::Kind::word)
        stems.insert(reading_.tokens[i].stem);
    }
    for (const std::string& stem : stems) {
      const std::vector<std::size_t>* signs = draft_.lexicon.signs_of_stem(stem);
      if (signs) give(*signs);
      if (!signs) {
        for (const std::string& other : spelled_like(stem))
          give(*draft_.lexicon.signs_of_stem(other));
      }
    }
    std::vector<std::size_t> order;
    for (const auto& [s, score] : scores) order.push_back(s);
    std::stable_sort(order.begin(), order.end(),
                     [&](std::size_t a, std::size_t b) { return scores[a] > scores[b]; });
    std::vector<std::string> ids;
    for (std::size_t s : order) {
      if (ids.size() < kMostNearest) ids.push_back(draft_.k.signs[s].id);
    }
    return ids;
  }

  std::set<TermId> terms_in(const Span& span) const {
    std::set<TermId> terms;
    for (const Clause& clause : reading_.clauses) {
      if (clause.last <= span.first || clause.first >= span.last) continue;
      for (const Run& run : clause.runs) {
        const bool inside = run.tokens.front() >= span.first && run.tokens.back() < span.last;
        const bool counts = std::any_of(run.tokens.begin(), run.tokens.end(),
                                        [&](std::size_t i) { return left(i); });
        if (inside && counts) terms.insert(run.id);
      }
    }
    return terms;
  }

  /// Known stems at one letter's distance, at two for long words.
  std::vector<std::string> spelled_like(const std::string& stem) {
    std::vector<std::string> like;
    if (stem.size() < 4 || stem.size() > 24 || spelled_++ >= kMostSpelled) return like;
    const std::size_t most = stem.size() >= 8 ? 2 : 1;
    for (const auto& [known, signs] : draft_.lexicon.known()) {
      const std::size_t longer = std::max(known.size(), stem.size());
      if (longer - std::min(known.size(), stem.size()) > most) continue;
      if (edit_distance(known, stem) <= most) like.push_back(known);
    }
    return like;
  }

  const Draft& draft_;
  const Reading& reading_;
  std::size_t spelled_ = 0;
};

}  // namespace

std::vector<NotUnderstood> leftovers(const Draft& draft) { return LeftoverPass(draft).run(); }

}  // namespace pinwright::knowledge
