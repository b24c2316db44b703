// Pass 3: sides, postures and amounts go to the finding they belong to.

#include <algorithm>
#include <numeric>

#include "knowledge/words/amount_rules.h"
#include "knowledge/words/draft_finding.h"
#include "knowledge/words/measuring.h"

namespace pinwright::knowledge {
namespace {

using Kind = Notion::Kind;

class Pass {
 public:
  explicit Pass(Draft& draft) : draft_(draft), reading_(draft.reading) {}

  void run() {
    for (std::size_t c = 0; c < reading_.clauses.size(); ++c) {
      const std::vector<std::size_t> parts = findings_in(c);
      if (!parts.empty()) {
        in_clause(c, parts);
      } else if (const auto target = says_nothing_else(c) ? target_of(c) : std::nullopt) {
        from_clause(c, *target);
      } else {
        refuse_wild_pinches(draft_, c);
      }
    }
    for (std::size_t f = 0; f < draft_.findings.size(); ++f) carry_side(draft_.findings[f]);
    merge_repeats();
  }

 private:
  std::vector<std::size_t> findings_in(std::size_t c) const {
    std::vector<std::size_t> parts;
    for (std::size_t f = 0; f < draft_.findings.size(); ++f) {
      if (has_part(draft_, draft_.findings[f], c)) parts.push_back(f);
    }
    return parts;
  }

  std::vector<std::size_t> notions_in(std::size_t c) const {
    std::vector<std::size_t> found;
    const auto [first, last] = notions_of(reading_, c);
    for (std::size_t n = first; n < last; ++n) {
      if (!reading_.words[reading_.notions[n].tokens.front()].taken) found.push_back(n);
    }
    return found;
  }

  std::vector<std::size_t> numbers_in(std::size_t c) const {
    const auto [first, last] = numbers_of(reading_, c);
    std::vector<std::size_t> found(last - first);
    std::iota(found.begin(), found.end(), first);
    return found;
  }

  const Sign& sign(const DraftFinding& finding) const { return draft_.k.signs[finding.sign]; }

  bool wants_number(const DraftFinding& finding) const {
    return sign(finding).counts != Counts::none && !finding.absent() && !finding.number;
  }

  void take_notion(std::size_t n, std::size_t f) {
    for (std::size_t i : reading_.notions[n].tokens) take(draft_, draft_.findings[f], i);
  }

  void give_number(std::size_t n, std::size_t f) {
    const SaidNumber& said = reading_.numbers[n];
    for (std::size_t i = said.first; i < said.last; ++i) take(draft_, draft_.findings[f], i);
    if (!said.has_unit) return refuse_unitless(draft_, draft_.findings[f], said);
    draft_.findings[f].number = n;
    read_depth(said, f);
    refuse_out_of_range(draft_, draft_.findings[f], said);
  }

  /// "a fold 1 cm deep" tells how deep the fold is, though its words stand in the finding.
  void read_depth(const SaidNumber& said, std::size_t f) {
    if (is_pinched(said)) add_taken(draft_.findings[f], Taken::fold_depth);
    if (!is_depth_of_fold(reading_, said)) return;
    add_taken(draft_.findings[f], Taken::fold_depth);
    if (!reading_.words[said.last].taken) take(draft_, draft_.findings[f], said.last);
  }

  /// "pinch an inch", also where a phrase took the pinch for its own word.
  bool is_pinched(const SaidNumber& said) const {
    for (std::size_t back = 1; back <= 3 && back <= said.first; ++back) {
      const Word& word = reading_.words[said.first - back];
      if (word.measuring && !word.doing && word.taken) return true;
    }
    return false;
  }

  void in_clause(std::size_t c, const std::vector<std::size_t>& parts) {
    std::optional<std::size_t> counted;  // the finding that got this clause's last amount
    for (std::size_t n : numbers_in(c)) {
      const SaidNumber& said = reading_.numbers[n];
      const auto f = nearest_that_wants(parts, said.first);
      const bool unitless = !said.has_unit && f && is_unitless_amount(draft_, *f, c, said);
      if (f && is_measure(draft_, *f, c, said)) continue;  // reported
      if (f && (said.has_unit || unitless)) {
        give_number(n, *f);
        counted = f;
      } else if (!said.has_unit) {
        absorb_count(said, parts);
      }
    }
    for (std::size_t n : notions_in(c)) {
      const Notion& notion = reading_.notions[n];
      if (reading_.words[notion.tokens.front()].taken) continue;
      const std::size_t near = *nearest_finding(draft_, c, notion.tokens.front());
      apply(n, near, counted, parts);
    }
  }

  /// "two folds": the number belongs to the word it counts.
  void absorb_count(const SaidNumber& said, const std::vector<std::size_t>& parts) {
    for (std::size_t f : parts) {
      if (!draft_.findings[f].tokens.contains(said.last)) continue;
      for (std::size_t i = said.first; i < said.last; ++i) take(draft_, draft_.findings[f], i);
      return;
    }
  }

  std::optional<std::size_t> nearest_that_wants(const std::vector<std::size_t>& parts,
                                                std::size_t token) const {
    std::optional<std::size_t> best;
    std::size_t best_distance = 0;
    for (std::size_t f : parts) {
      if (!wants_number(draft_.findings[f])) continue;
      for (std::size_t own : draft_.findings[f].tokens) {
        const std::size_t distance = own < token ? token - own : own - token;
        if (!best || distance < best_distance) best = f, best_distance = distance;
      }
    }
    return best;
  }

  void apply(std::size_t n, std::size_t near, std::optional<std::size_t> counted,
             const std::vector<std::size_t>& parts) {
    const Notion notion = reading_.notions[n];
    DraftFinding& finding = draft_.findings[near];
    switch (notion.kind) {
      case Kind::side:
        if (!sign(finding).sided && notion.side != Side::both) return;
        add_side(finding, notion.side);
        return take_notion(n, near);
      case Kind::side_and_half:
        add_side(finding, Side::both);
        if (counted) add_of(draft_.findings[*counted], Of::half);
        return take_notion(n, near);
      case Kind::of:
        if (counted) add_of(draft_.findings[*counted], notion.of);
        return take_notion(n, counted.value_or(near));
      case Kind::taken:
        if (!counted) return;
        add_taken(draft_.findings[*counted], notion.taken);
        return take_notion(n, *counted);
      case Kind::posture:
        for (std::size_t f : parts) {
          if (draft_.findings[f].posture.empty()) draft_.findings[f].posture = notion.posture;
        }
        return take_notion(n, near);
      case Kind::negation:
      case Kind::gone:
      case Kind::no_effect:
      case Kind::hedge:
      case Kind::noise:
        return;
    }
  }

  void add_side(DraftFinding& finding, Side side) const {
    if (!sign(finding).sided) return;
    finding.side = finding.side && *finding.side != side ? Side::both : side;
  }

  static void add_of(DraftFinding& finding, Of of) {
    if (!finding.of) finding.of = of;
  }

  /// Cloth counts more than the fold it was taken in; then letting out, a gap, a fold.
  static void add_taken(DraftFinding& finding, Taken taken) {
    const auto weight = [](Taken how) {
      return how == Taken::cloth ? 4 : how == Taken::let_out ? 3 : how == Taken::gap ? 2 : 1;
    };
    if (!finding.taken || weight(taken) > weight(*finding.taken)) finding.taken = taken;
  }

  bool denies(std::size_t token) const {
    const Word& word = reading_.words[token];
    if (!word.notion) return false;
    const Kind kind = reading_.notions[*word.notion].kind;
    return kind == Kind::negation || kind == Kind::gone;
  }

  /// The side that the clause names and says "not" of: "but not on the left".
  std::optional<Side> denied_side(std::size_t c) const {
    bool denied = false;
    std::optional<Side> side;
    for (std::size_t n : notions_in(c)) {
      const Notion& notion = reading_.notions[n];
      denied = denied || denies(notion.tokens.front());
      if (notion.kind == Kind::side && notion.side != Side::both) side = notion.side;
    }
    return denied && numbers_in(c).empty() ? side : std::nullopt;
  }

  /// The sign is absent on that side, and what was said before holds for the other one.
  void deny_side(std::size_t c, std::size_t target, Side side) {
    if (!draft_.findings[target].side) {
      draft_.findings[target].side = side == Side::left ? Side::right : Side::left;
    }
    DraftFinding other;
    other.sign = draft_.findings[target].sign;
    other.clause = c;
    other.side = side;
    other.negated = !draft_.findings[target].absent();
    other.posture = draft_.findings[target].posture;
    const std::vector<std::size_t> notions = notions_in(c);
    draft_.findings.push_back(std::move(other));
    for (std::size_t n : notions) take_notion(n, draft_.findings.size() - 1);
  }

  /// The clause holds amounts, sides, postures and nothing else that counts.
  bool says_nothing_else(std::size_t c) const {
    bool says = false;
    const bool side_denied = denied_side(c).has_value();
    if (tells_only_how_much(reading_, c)) return true;
    const Clause& clause = reading_.clauses[c];
    for (std::size_t i = clause.first; i < clause.last; ++i) {
      if (!has_content(reading_, i)) continue;
      const Word& word = reading_.words[i];
      if ((denies(i) && !side_denied) || (!word.notion && !word.number)) return false;
      says = true;
    }
    return says;
  }

  /// The finding before, of this sentence or of the one before it; else the next of this sentence.
  std::optional<std::size_t> target_of(std::size_t c) const {
    std::optional<std::size_t> before;
    std::optional<std::size_t> after;
    const std::size_t sentence = reading_.clauses[c].sentence;
    for (std::size_t f = 0; f < draft_.findings.size(); ++f) {
      const std::size_t there = draft_.findings[f].clause;
      const std::size_t its_sentence = reading_.clauses[there].sentence;
      const bool near = its_sentence + 1 >= sentence;
      if (there < c && near && (!before || there >= draft_.findings[*before].clause)) before = f;
      if (there > c && its_sentence == sentence &&
          (!after || there < draft_.findings[*after].clause)) {
        after = f;
      }
    }
    const bool same =
        before && reading_.clauses[draft_.findings[*before].clause].sentence == sentence;
    return same || !after ? before : after;
  }

  /// An amount looks past findings that take none, as long as nothing unread stands between:
  /// "the neckline gapes. The edge is not stretched. 2 cm in all."
  std::size_t counted_before(std::size_t c, std::size_t target) const {
    const DraftFinding& near = draft_.findings[target];
    if (sign(near).counts != Counts::none && !near.absent()) return target;
    for (std::size_t there = c; there-- > 0;) {
      const std::vector<std::size_t> parts = findings_in(there);
      if (parts.empty() && reading_.clauses[there].sentence + 1 < reading_.clauses[c].sentence)
        return target;
      for (std::size_t i = parts.size(); i-- > 0;)
        if (wants_number(draft_.findings[parts[i]])) return parts[i];
    }
    return target;
  }

  void from_clause(std::size_t c, std::size_t target) {
    if (const auto side = denied_side(c)) {
      if (sign(draft_.findings[target]).sided) deny_side(c, target, *side);
      return;
    }
    const std::vector<std::size_t> numbers = numbers_in(c);
    std::optional<std::size_t> counted;
    std::size_t f = numbers.empty() ? target : counted_before(c, target);
    for (std::size_t n : numbers) {
      const SaidNumber& said = reading_.numbers[n];
      if (!said.has_unit && !is_unitless_amount(draft_, f, c, said)) continue;
      if (is_measure(draft_, f, c, said)) continue;
      if (!wants_number(draft_.findings[f])) {
        const std::optional<std::size_t> other = other_side(c, f);
        if (!other) continue;
        f = *other;
      }
      give_number(n, f);
      counted = f;
    }
    if (!numbers.empty() && !counted) return;  // a second amount of the same finding: reported
    if (!counted && draft_.findings[f].number) counted = f;
    const std::vector<std::size_t> parts = {f};
    for (std::size_t n : notions_in(c)) {
      apply(n, f, counted, parts);
    }
    if (!counted) return;
    for (std::size_t i = reading_.clauses[c].first; i < reading_.clauses[c].last; ++i)
      if (is_measuring_word(reading_, i) && !reading_.words[i].taken)
        take(draft_, draft_.findings[f], i);
  }

  /// "2 cm on the left and 3 cm on the right": the same sign once more, for the side named here.
  std::optional<std::size_t> other_side(std::size_t c, std::size_t f) {
    const DraftFinding first = draft_.findings[f];
    if (!first.number || !sign(first).sided || first.absent()) return std::nullopt;
    for (std::size_t n : notions_in(c)) {
      const Notion& notion = reading_.notions[n];
      if (notion.kind != Kind::side || notion.side == Side::both) continue;
      if (first.side == notion.side) return std::nullopt;
      DraftFinding other;
      other.sign = first.sign;
      other.clause = c;
      other.posture = first.posture;
      other.taken = first.taken;
      draft_.findings.push_back(other);
      return draft_.findings.size() - 1;
    }
    return std::nullopt;
  }

  /// The side goes with the place: "the left armhole gapes and is too low".
  void carry_side(DraftFinding& finding) const {
    if (finding.side || finding.lent.empty() || !sign(finding).sided) return;
    for (const DraftFinding& other : draft_.findings) {
      const Clause& lender = reading_.clauses[other.clause];
      const auto lent = finding.lent.lower_bound(lender.first);
      if (&other != &finding && other.clause != finding.clause && other.side &&
          !finding.borrowed_from && lent != finding.lent.end() && *lent < lender.last) {
        finding.side = other.side;
      }
    }
  }

  /// Said twice in one sentence is one finding, unless sides, postures or amounts differ.
  void merge_repeats() {
    std::vector<DraftFinding> kept;
    for (DraftFinding& finding : draft_.findings) {
      const auto same = std::find_if(kept.begin(), kept.end(), [&](const DraftFinding& other) {
        return other.sign == finding.sign && other.absent() == finding.absent() &&
               reading_.clauses[other.clause].sentence ==
                   reading_.clauses[finding.clause].sentence &&
               !(other.number && finding.number) &&
               (!other.side || !finding.side || other.side == finding.side) &&
               (other.posture.empty() || finding.posture.empty() ||
                other.posture == finding.posture);
      });
      if (same == kept.end()) {
        kept.push_back(std::move(finding));
        continue;
      }
      same->tokens.insert(finding.tokens.begin(), finding.tokens.end());
      if (!same->side) same->side = finding.side;
      if (!same->of) same->of = finding.of;
      if (!same->taken) same->taken = finding.taken;
      if (!same->number) same->number = finding.number;
      if (same->posture.empty()) same->posture = finding.posture;
    }
    draft_.findings = std::move(kept);
  }

  Draft& draft_;
  Reading& reading_;
};

}  // namespace

void attach(Draft& draft) { Pass(draft).run(); }

}  // namespace pinwright::knowledge
