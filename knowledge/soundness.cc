#include "knowledge/soundness.h"

#include <algorithm>
#include <set>

#include "knowledge/alike.h"
#include "knowledge/network_of.h"
#include "knowledge/soundness_measured.h"
#include "knowledge/soundness_remedies.h"
#include "knowledge/told_problems.h"
#include "knowledge/words/phrases.h"

namespace pinwright::knowledge {
namespace {

std::string nth(const char* field, std::size_t i) {
  return std::string(field) + "/" + std::to_string(i);
}

class Prover {
 public:
  explicit Prover(const Knowledge& k) : k_(k) {}

  Problems run() {
    ids();
    for (const auto& f : k_.features) {
      features(f.with, f.place, "with");
      features(f.without, f.place, "without");
    }
    for (const auto& z : k_.zones) {
      kinds(z.kinds, z.place);
      features(z.features, z.place, "features");
    }
    for (const auto& s : k_.signs) sign(s);
    for (const auto& c : k_.causes) cause(c);
    for (const auto& p : k_.problems) problem(p);
    for (const auto& t : k_.tellings)
      if (find_sign(k_, t.about) == nullptr && find_cause(k_, t.about) == nullptr)
        told_.say(t.place, "about", "sign-unknown",
                  "a telling is about " + t.about + ", which is no sign or cause",
                  offer_id(k_.signs, t.about));
    for (const auto& m : k_.measured) {
      kinds(m.kinds, m.place);
      sources(m.sources, m.place, "the measured evidence " + m.id);
      prove_measured(k_, m, told_);
    }
    for (const auto& p : k_.postures) posture(p);
    told_.add(check_phrases(k_));
    told_.add(alike(k_));
    return told_.take();
  }

 private:
  template <class T>
  void once(const std::vector<T>& all, const std::string& sort) {
    std::set<std::string> seen;
    for (const auto& one : all) {
      if (one.id.empty())
        told_.say(one.place, "", "id-missing", "a " + sort + " has no id", "give it one");
      if (!one.id.empty() && !seen.insert(one.id).second)
        told_.say(one.place, "id", "id-twice", "the " + sort + " " + one.id + " stands twice",
                  "rename one or take it out");
    }
  }

  void ids() {
    once(k_.features, "feature");
    once(k_.zones, "zone");
    once(k_.signs, "sign");
    once(k_.causes, "cause");
    once(k_.problems, "problem");
    once(k_.measured, "measured evidence");
    once(k_.postures, "posture note");
    once(k_.words, "word class");
    std::set<std::string> seen;
    for (const auto& c : k_.causes)
      for (const auto& r : c.remedies)
        if (!seen.insert(r.id).second)
          told_.say(r.place, "id", "id-twice", "the remedy " + r.id + " stands twice",
                    "rename one of the two");
    seen.clear();
    for (const auto& p : k_.publications)
      if (!seen.insert(p.key).second)
        told_.say(p.place, "key", "id-twice", "the publication " + p.key + " stands twice",
                  "rename one or take it out");
  }

  bool known_kind(const std::string& kind) const {
    return std::find(k_.kinds.begin(), k_.kinds.end(), kind) != k_.kinds.end();
  }
  bool known_feature(const std::string& id) const {
    return known_kind(id) || std::any_of(k_.features.begin(), k_.features.end(),
                                         [&](const Feature& f) { return f.id == id; });
  }
  void kind(const std::string& id, const Place& place, const std::string& field) {
    if (!known_kind(id))
      told_.say(place, field, "kind-unknown", "there is no block kind " + id,
                offer(k_.kinds, id, [](const auto& x) -> std::string_view { return x; }));
  }
  void kinds(const std::vector<std::string>& all, const Place& place) {
    for (std::size_t i = 0; i < all.size(); ++i) kind(all[i], place, nth("kinds", i));
  }
  void features(const std::vector<std::string>& all, const Place& place, const char* field) {
    for (std::size_t i = 0; i < all.size(); ++i)
      if (!known_feature(all[i]))
        told_.say(place, nth(field, i), "feature-unknown", "there is no feature " + all[i],
                  offer_id(k_.features, all[i]));
  }

  void sources(const std::vector<Source>& all, const Place& place, const std::string& whose) {
    if (all.empty())
      told_.say(place, "sources", "source-missing", whose + " has no source",
                "name a publication, or write: common practice, or: from memory");
    for (std::size_t i = 0; i < all.size(); ++i) {
      const Source& s = all[i];
      if (s.key == "common practice" || s.key == "from memory") continue;
      const bool known = std::any_of(k_.publications.begin(), k_.publications.end(),
                                     [&](const auto& p) { return p.key == s.key; });
      if (!known)
        told_.say(place, nth("sources", i), "publication-unknown",
                  "no publication has the key " + s.key,
                  "list it under publications, or write: common practice, or: from memory");
    }
  }

  void sign(const Sign& s) {
    if (find_zone(k_, s.zone) == nullptr)
      told_.say(s.place, "zone", "zone-unknown",
                "the sign " + s.id + " is in zone " + s.zone + ", which is none",
                offer_id(k_.zones, s.zone));
    if (!(s.leak > 0.0 && s.leak < 1.0))
      told_.say(s.place, "leak", "probability-range",
                "the leak of " + s.id + " is not between 0 and 1", "0.02 is usual");
    if (s.phrases.empty())
      told_.say(s.place, "phrases", "sign-without-words", "the sign " + s.id + " has no phrases",
                "say by which words a fitter tells it");
    if (!s.kind_of.empty()) plainer(s);
    const bool reached = std::any_of(k_.causes.begin(), k_.causes.end(), [&](const auto& c) {
      return std::any_of(c.makes.begin(), c.makes.end(),
                         [&](const auto& m) { return m.sign == s.id || is_kind_of(m.sign, s.id); });
    });
    if (!reached)
      told_.say(s.place, "", "sign-unreachable", "no cause makes the sign " + s.id,
                "name it under `makes` of a cause, or take it out");
    sources(s.sources, s.place, "the sign " + s.id);
  }

  bool is_kind_of(const std::string& sign, const std::string& plainer) const {
    const Sign* s = find_sign(k_, sign);
    return s != nullptr && s->kind_of == plainer;
  }

  void plainer(const Sign& s) {
    const Sign* general = find_sign(k_, s.kind_of);
    if (general == nullptr)
      told_.say(s.place, "kind_of", "sign-unknown",
                "the sign " + s.id + " is a kind of " + s.kind_of + ", which is no sign",
                offer_id(k_.signs, s.kind_of));
    else if (general->id == s.id)
      told_.say(s.place, "kind_of", "kind-of-itself", "the sign " + s.id + " is a kind of itself",
                "name the plainer sign, or leave kind_of out");
    else if (!general->kind_of.empty())
      told_.say(s.place, "kind_of", "kind-of-a-kind",
                s.kind_of + " is itself a kind of " + general->kind_of,
                "name the plainest sign only");
  }

  void priors(const Cause& c) {
    if (!(c.prior > 0.0 && c.prior < 1.0))
      told_.say(c.place, "prior", "probability-range",
                "the prior of " + c.id + " is not between 0 and 1", "0.05 is usual");
    for (const auto& [id, p] : c.prior_by_kind) {
      kind(id, c.place, "prior_by_kind/" + id);
      if (!(p >= 0.0 && p < 1.0))
        told_.say(c.place, "prior_by_kind/" + id, "probability-range",
                  "the prior of " + c.id + " for " + id + " is not in [0, 1)",
                  "0 where the cause cannot hold");
    }
    for (std::size_t i = 0; i < c.prior_when.size(); ++i) {
      const PriorWhen& when = c.prior_when[i];
      features(when.features, when.place, "features");
      if (!(when.prior >= 0.0 && when.prior < 1.0))
        told_.say(when.place, "prior", "probability-range",
                  "a prior of " + c.id + " is not in [0, 1)", "0 where the cause cannot hold");
      if (const std::string why = never(c, i); !why.empty())
        told_.say(when.place, "features", "prior-never",
                  "this prior of " + c.id + " never applies: " + why,
                  "mend the features, or take it out");
    }
  }

  /// The features, and those that they bring.
  std::vector<std::string> brought(std::vector<std::string> all) const {
    for (std::size_t i = 0; i < all.size(); ++i)
      for (const auto& f : k_.features)
        if (f.id == all[i])
          for (const auto& one : f.with)
            if (std::find(all.begin(), all.end(), one) == all.end()) all.push_back(one);
    return all;
  }

  /// Why the i-th prior_when can never be the one that counts; empty when it can.
  std::string never(const Cause& c, std::size_t i) const {
    const std::vector<std::string> mine = brought(c.prior_when[i].features);
    std::string one_kind;
    for (const auto& id : mine) {
      if (known_kind(id)) {
        if (!one_kind.empty() && one_kind != id)
          return "no garment is both " + one_kind + " and " + id;
        one_kind = id;
      }
      for (const auto& f : k_.features)
        if (f.id == id)
          for (const auto& other : f.without)
            if (std::find(mine.begin(), mine.end(), other) != mine.end())
              return "no garment has both " + id + " and " + other;
    }
    for (std::size_t j = 0; j < i; ++j) {
      const auto& before = c.prior_when[j].features;
      const bool taken = std::all_of(before.begin(), before.end(), [&](const auto& id) {
        return std::find(mine.begin(), mine.end(), id) != mine.end();
      });
      if (taken)
        return "the one at line " + std::to_string(c.prior_when[j].place.line) +
               " applies wherever it would";
    }
    return "";
  }

  void cause(const Cause& c) {
    priors(c);
    if (c.makes.empty())
      told_.say(c.place, "makes", "cause-without-sign", "the cause " + c.id + " makes no sign",
                "name one");
    sources(c.sources, c.place, "the cause " + c.id);
    std::set<std::string> made;
    for (const auto& m : c.makes) {
      if (find_sign(k_, m.sign) == nullptr)
        told_.say(m.place, "sign", "sign-unknown",
                  "the cause " + c.id + " makes " + m.sign + ", which is no sign",
                  offer_id(k_.signs, m.sign));
      if (!(m.strength > 0.0 && m.strength < 1.0))
        told_.say(m.place, "strength", "probability-range",
                  "the strength of " + m.sign + " is not between 0 and 1",
                  "0.8 is strong, 0.3 weak");
      if (!made.insert(m.sign).second)
        told_.say(m.place, "sign", "makes-twice",
                  "the cause " + c.id + " names " + m.sign + " twice", "keep one of the two");
    }
    for (const auto& r : c.remedies) {
      kinds(r.kinds, r.place);
      sources(r.sources, r.place, "the remedy " + r.id);
      prove_remedy(k_, c, r, told_);
    }
    for (const auto& id : k_.kinds) {
      if (prior_of(c, id) <= 0.0) continue;
      const bool any = std::any_of(c.remedies.begin(), c.remedies.end(),
                                   [&](const Remedy& r) { return has_kind(r.kinds, id); });
      if (!any)
        told_.say(c.place, "remedies", "cause-without-remedy",
                  "nothing is proposed for " + c.id + " on a " + id,
                  "add a remedy, or set prior_by_kind of " + id + " to 0");
    }
  }

  void posture(const PostureNote& p) {
    sources(p.sources, p.place, "the posture note " + p.id);
    if (find_cause(k_, p.cause) == nullptr)
      told_.say(p.place, "cause", "cause-unknown",
                "the posture note " + p.id + " speaks of " + p.cause + ", which is no cause",
                offer_id(k_.causes, p.cause));
  }

  void problem(const FitProblem& p) {
    kinds(p.kinds, p.place);
    if (find_sign(k_, p.sign) == nullptr)
      told_.say(p.place, "sign", "sign-unknown",
                "the problem " + p.id + " leads with " + p.sign + ", which is no sign",
                offer_id(k_.signs, p.sign));
    if (std::set<std::string>(p.causes.begin(), p.causes.end()).size() < 2)
      told_.say(p.place, "causes", "problem-of-one-cause",
                "the problem " + p.id + " has fewer than two causes",
                "name the rival that a fitter would also think of");
    for (std::size_t i = 0; i < p.causes.size(); ++i) {
      const std::string& id = p.causes[i];
      const Cause* c = find_cause(k_, id);
      if (c == nullptr) {
        told_.say(p.place, nth("causes", i), "cause-unknown",
                  "the problem " + p.id + " names " + id + ", which is no cause",
                  offer_id(k_.causes, id));
        continue;
      }
      const auto made = made_by(k_, *c);
      if (std::none_of(made.begin(), made.end(), [&](const auto& m) { return m.first == p.sign; }))
        told_.say(p.place, nth("causes", i), "rival-without-sign",
                  "the cause " + id + " does not make the leading sign " + p.sign,
                  "add the sign under its `makes`, or take the cause out of the problem");
    }
  }

  const Knowledge& k_;
  ToldProblems told_;
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
