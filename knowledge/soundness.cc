#include "knowledge/soundness.h"

#include <algorithm>
#include <set>

#include "engine/alteration/catalogue.h"
#include "engine/base/nearest_word.h"
#include "knowledge/words/phrases.h"
#include "knowledge/yaml_tree.h"

namespace pinwright::knowledge {
namespace {

std::string at(const Place& place) { return at_line(place.file, place.line); }

class Prover {
 public:
  explicit Prover(const Knowledge& k) : k_(k) {}

  Problems run() {
    ids();
    for (const auto& f : k_.features) {
      features(f.with, f.place);
      features(f.without, f.place);
    }
    for (const auto& z : k_.zones) {
      kinds(z.kinds, z.place);
      features(z.features, z.place);
    }
    for (const auto& s : k_.signs) sign(s);
    for (const auto& c : k_.causes) cause(c);
    for (const auto& p : k_.problems) problem(p);
    for (const auto& t : k_.tellings)
      if (find_sign(k_, t.about) == nullptr && find_cause(k_, t.about) == nullptr)
        say(t.place, "sign-unknown", "a telling is about " + t.about + ", which is no sign or cause",
            offer(k_.signs, t.about, [](const auto& x) -> std::string_view { return x.id; }));
    const Problems words = check_phrases(k_);
    problems_.insert(problems_.end(), words.begin(), words.end());
    return std::move(problems_);
  }

 private:
  void say(const Place& place, std::string code, std::string what, std::string mend) {
    problems_.push_back({std::move(code), at(place), std::move(what), std::move(mend)});
  }

  template <class Range, class Id>
  static std::string offer(const Range& all, const std::string& wrong, Id id) {
    std::vector<std::string_view> names;
    for (const auto& one : all) names.push_back(id(one));
    const std::string near = nearest_word(wrong, names);
    return near.empty() ? "use one that is defined" : "did you mean " + near + "?";
  }

  template <class T>
  void once(const std::vector<T>& all, const std::string& sort) {
    std::set<std::string> seen;
    for (const auto& one : all) {
      if (one.id.empty()) say(one.place, "id-missing", "a " + sort + " has no id", "give it one");
      if (!one.id.empty() && !seen.insert(one.id).second)
        say(one.place, "id-twice", "the " + sort + " " + one.id + " stands twice",
            "rename one or take it out");
    }
  }

  void ids() {
    once(k_.features, "feature");
    once(k_.zones, "zone");
    once(k_.signs, "sign");
    once(k_.causes, "cause");
    once(k_.problems, "problem");
    once(k_.words, "word class");
    std::set<std::string> seen;
    for (const auto& c : k_.causes)
      for (const auto& r : c.remedies)
        if (!seen.insert(r.id).second)
          say(r.place, "id-twice", "the remedy " + r.id + " stands twice", "rename one of the two");
  }

  bool known_kind(const std::string& kind) const {
    return std::find(k_.kinds.begin(), k_.kinds.end(), kind) != k_.kinds.end();
  }
  void kinds(const std::vector<std::string>& all, const Place& place) {
    for (const auto& kind : all)
      if (!known_kind(kind))
        say(place, "kind-unknown", "there is no block kind " + kind,
            offer(k_.kinds, kind, [](const auto& x) -> std::string_view { return x; }));
  }

  void features(const std::vector<std::string>& all, const Place& place) {
    for (const auto& id : all) {
      const bool known =
          known_kind(id) || std::any_of(k_.features.begin(), k_.features.end(),
                                        [&](const Feature& f) { return f.id == id; });
      if (!known)
        say(place, "feature-unknown", "there is no feature " + id,
            offer(k_.features, id, [](const auto& x) -> std::string_view { return x.id; }));
    }
  }

  void sources(const std::vector<Source>& all, const Place& place) {
    for (const auto& s : all) {
      if (s.key == "common practice" || s.key == "from memory") continue;
      const bool known = std::any_of(k_.publications.begin(), k_.publications.end(),
                                     [&](const auto& p) { return p.key == s.key; });
      if (!known)
        say(place, "publication-unknown", "no publication has the key " + s.key,
            "list it under publications, or write: common practice, or: from memory");
    }
  }

  void sign(const Sign& s) {
    if (find_zone(k_, s.zone) == nullptr)
      say(s.place, "zone-unknown", "the sign " + s.id + " is in zone " + s.zone + ", which is none",
          offer(k_.zones, s.zone, [](const auto& x) -> std::string_view { return x.id; }));
    if (!(s.leak > 0.0 && s.leak < 1.0))
      say(s.place, "probability-range", "the leak of " + s.id + " is not between 0 and 1",
          "0.02 is usual");
    if (s.phrases.empty())
      say(s.place, "sign-without-words", "the sign " + s.id + " has no phrases",
          "say by which words a fitter tells it");
    if (!s.kind_of.empty()) plainer(s);
    const bool reached = std::any_of(k_.causes.begin(), k_.causes.end(), [&](const auto& c) {
      return std::any_of(c.makes.begin(), c.makes.end(),
                         [&](const auto& m) { return m.sign == s.id || is_kind_of(m.sign, s.id); });
    });
    if (!reached)
      say(s.place, "sign-unreachable", "no cause makes the sign " + s.id,
          "name it under `makes` of a cause, or take it out");
    sources(s.sources, s.place);
  }

  bool is_kind_of(const std::string& sign, const std::string& plainer) const {
    const Sign* s = find_sign(k_, sign);
    return s != nullptr && s->kind_of == plainer;
  }

  void plainer(const Sign& s) {
    const Sign* general = find_sign(k_, s.kind_of);
    if (general == nullptr)
      say(s.place, "sign-unknown",
          "the sign " + s.id + " is a kind of " + s.kind_of + ", which is no sign",
          offer(k_.signs, s.kind_of, [](const auto& x) -> std::string_view { return x.id; }));
    else if (!general->kind_of.empty())
      say(s.place, "kind-of-a-kind", s.kind_of + " is itself a kind of " + general->kind_of,
          "name the plainest sign only");
  }

  /// Whether the cause may hold at all on a block of this kind.
  static bool holds_in(const Cause& c, const std::string& kind) {
    const auto it = c.prior_by_kind.find(kind);
    return (it == c.prior_by_kind.end() ? c.prior : it->second) > 0.0;
  }

  void cause(const Cause& c) {
    if (!(c.prior > 0.0 && c.prior < 1.0))
      say(c.place, "probability-range", "the prior of " + c.id + " is not between 0 and 1",
          "0.05 is usual");
    for (const auto& [kind, p] : c.prior_by_kind) {
      kinds({kind}, c.place);
      if (!(p >= 0.0 && p < 1.0))
        say(c.place, "probability-range",
            "the prior of " + c.id + " for " + kind + " is not in [0, 1)",
            "0 where the cause cannot hold");
    }
    for (const auto& when : c.prior_when) {
      features(when.features, when.place);
      if (!(when.prior >= 0.0 && when.prior < 1.0))
        say(when.place, "probability-range", "a prior of " + c.id + " is not in [0, 1)",
            "0 where the cause cannot hold");
    }
    if (c.makes.empty())
      say(c.place, "cause-without-sign", "the cause " + c.id + " makes no sign", "name one");
    if (c.sources.empty())
      say(c.place, "cause-without-source", "the cause " + c.id + " has no source",
          "name a publication, or write: common practice");
    sources(c.sources, c.place);
    std::set<std::string> made;
    for (const auto& m : c.makes) {
      if (find_sign(k_, m.sign) == nullptr)
        say(m.place, "sign-unknown",
            "the cause " + c.id + " makes " + m.sign + ", which is no sign",
            offer(k_.signs, m.sign, [](const auto& x) -> std::string_view { return x.id; }));
      if (!(m.strength > 0.0 && m.strength < 1.0))
        say(m.place, "probability-range", "the strength of " + m.sign + " is not between 0 and 1",
            "0.8 is strong, 0.3 weak");
      if (!made.insert(m.sign).second)
        say(m.place, "makes-twice", "the cause " + c.id + " names " + m.sign + " twice",
            "keep one of the two");
    }
    const FoundDimensions found = found_dimensions(k_, c);
    for (const auto& r : c.remedies) remedy(r, found);
    for (const auto& kind : k_.kinds) {
      if (!holds_in(c, kind)) continue;
      const bool any = std::any_of(c.remedies.begin(), c.remedies.end(), [&](const Remedy& r) {
        return r.kinds.empty() || std::find(r.kinds.begin(), r.kinds.end(), kind) != r.kinds.end();
      });
      if (!any)
        say(c.place, "cause-without-remedy", "nothing is proposed for " + c.id + " on a " + kind,
            "add a remedy, or set prior_by_kind of " + kind + " to 0");
    }
  }

  void remedy(const Remedy& r, const FoundDimensions& found) {
    kinds(r.kinds, r.place);
    sources(r.sources, r.place);
    if (r.smallest_mm && r.largest_mm && *r.smallest_mm >= *r.largest_mm)
      say(r.place, "limits-crossed", "smallest_mm of " + r.id + " is not below largest_mm",
          "mend the two");
    if (r.largest_mm && r.beyond.empty())
      say(r.place, "beyond-missing", r.id + " has a largest amount, but no way beyond it",
          "say under `beyond` what is better then");
    for (const auto& s : r.steps) step(s, found);
  }

  void step(const RemedyStep& s, const FoundDimensions& found) {
    const OperationInfo* operation = find_operation(s.operation);
    Step trial;
    trial.operation = s.operation;
    trial.options = s.options;
    if (operation != nullptr)
      trial.amount = operation->amount == AmountKind::ratio  ? 0.9
                     : operation->amount == AmountKind::none ? 0.0
                                                             : operation->most;
    for (Problem p : check_step(trial, "")) {
      p.place = at(s.place);
      problems_.push_back(std::move(p));
    }
    const bool says_amount =
        s.text.find("{amount}") != std::string::npos || s.text.find("{fold}") != std::string::npos;
    if (s.amount.empty()) {
      if (operation != nullptr && operation->amount != AmountKind::none)
        say(s.place, "amount-missing", s.operation + " needs an amount", "write one");
      if (says_amount)
        say(s.place, "text-without-amount", "the text says an amount but the step has none",
            "write the amount, or the text without it");
      return;
    }
    const auto expression = parse_expression(s.amount, found, at(s.place));
    if (!expression) {
      problems_.insert(problems_.end(), expression.problems().begin(), expression.problems().end());
      return;
    }
    if (operation != nullptr) amount_suits(s, *operation, expression->dimension());
  }

  void amount_suits(const RemedyStep& s, const OperationInfo& operation, Dimension d) {
    using enum Dimension;
    bool suits = false;
    std::string wanted;
    switch (operation.amount) {
      case AmountKind::half:
        suits = d == half || d == whole;
        wanted = "half(..) or whole(..)";
        break;
      case AmountKind::whole:
        suits = d == length;
        wanted = "a length (of one sleeve)";
        break;
      case AmountKind::distance:
        suits = d == length;
        wanted = "a length, never halved";
        break;
      case AmountKind::ratio:
        suits = d == ratio;
        wanted = "a plain number";
        break;
      case AmountKind::none:
        suits = d == length || d == half || d == whole;
        wanted = "a length to note";
        break;
    }
    if (!suits)
      say(s.place, "amount-dimension",
          "\"" + s.amount + "\" is " + std::string(to_text(d)) + ", but " + s.operation +
              " takes " + wanted,
          "write the amount as " + wanted);
    if (s.of && ((d == half && *s.of == Of::whole) || (d == whole && *s.of == Of::half)))
      say(s.place, "amount-of", "`of` says one thing and \"" + s.amount + "\" is the other",
          "leave `of` out or mend the amount");
  }

  void problem(const FitProblem& p) {
    kinds(p.kinds, p.place);
    if (find_sign(k_, p.sign) == nullptr)
      say(p.place, "sign-unknown",
          "the problem " + p.id + " leads with " + p.sign + ", which is no sign",
          offer(k_.signs, p.sign, [](const auto& x) -> std::string_view { return x.id; }));
    if (std::set<std::string>(p.causes.begin(), p.causes.end()).size() < 2)
      say(p.place, "problem-of-one-cause", "the problem " + p.id + " has fewer than two causes",
          "name the rival that a fitter would also think of");
    for (const auto& id : p.causes) {
      const Cause* c = find_cause(k_, id);
      if (c == nullptr) {
        say(p.place, "cause-unknown",
            "the problem " + p.id + " names " + id + ", which is no cause",
            offer(k_.causes, id, [](const auto& x) -> std::string_view { return x.id; }));
      } else if (std::none_of(c->makes.begin(), c->makes.end(),
                              [&](const auto& m) { return m.sign == p.sign; })) {
        say(p.place, "rival-without-sign",
            "the cause " + id + " does not make the leading sign " + p.sign,
            "add the sign under its `makes`, or take the cause out of the problem");
      }
    }
  }

  const Knowledge& k_;
  Problems problems_;
};

}  // namespace

Problems prove_sound(const Knowledge& k) { return Prover(k).run(); }

FoundDimensions found_dimensions(const Knowledge& k, const Cause& cause) {
  FoundDimensions found;
  bool differ = false;
  for (const auto& m : cause.makes) {
    const Sign* s = find_sign(k, m.sign);
    const auto d = s == nullptr ? std::nullopt : dimension_of(s->counts);
    if (!d) continue;
    found.of_sign[m.sign] = *d;
    differ = differ || (found.any && *found.any != *d);
    found.any = *d;
  }
  if (differ) found.any.reset();
  return found;
}

}  // namespace pinwright::knowledge
