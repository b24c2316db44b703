#include "knowledge/words/leftovers.h"

#include <algorithm>
#include "knowledge/words/suppose.h"

namespace pinwright::knowledge {
namespace {

constexpr std::size_t kMostNearest = 3;
constexpr std::size_t kMostOffered = 256;

struct Span {
  std::size_t first = 0;  ///< tokens [first, last)
  std::size_t last = 0;
  bool whole = false;  ///< a whole clause or more
};

class LeftoverPass {
 public:
  LeftoverPass(const Draft& draft, const Resemblance& resemblance, Shortlists& shortlists)
      : draft_(draft),
        reading_(draft.reading),
        resemblance_(resemblance),
        shortlists_(shortlists) {}

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

  std::size_t sentence_of(const Span& span) const {
    const auto clause =
        std::upper_bound(reading_.clauses.begin(), reading_.clauses.end(), span.first,
                         [](std::size_t i, const Clause& one) { return i < one.last; });
    return clause->sentence;
  }

  std::vector<std::string> nearest(const Span& span) {
    if (looked_up_++ >= kMostOffered) return {};
    const std::vector<std::size_t> words = telling_words(draft_, span.first, span.last);
    const ToldWords told = resemblance_.told(reading_, words, {});
    std::vector<std::string> ids;
    for (std::size_t s : resemblance_.nearest(told, shortlists_.of_sentence(sentence_of(span)),
                                              draft_.allowed, kMostNearest)) {
      ids.push_back(draft_.k.signs[s].id);
    }
    return ids;
  }

  const Draft& draft_;
  const Reading& reading_;
  const Resemblance& resemblance_;
  Shortlists& shortlists_;
  std::size_t looked_up_ = 0;
};

}  // namespace

std::vector<NotUnderstood> leftovers(const Draft& draft, const Resemblance& resemblance,
                                     Shortlists& shortlists) {
  return LeftoverPass(draft, resemblance, shortlists).run();
}

}  // namespace pinwright::knowledge
