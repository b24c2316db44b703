#include "knowledge/alike.h"

#include <algorithm>
#include <array>
#include <cctype>
#include <functional>
#include <map>
#include <set>
#include <tuple>
#include <vector>

#include "knowledge/network_of.h"
#include "knowledge/told_problems.h"
#include "knowledge/told_signs.h"

namespace pinwright::knowledge {
namespace {

using Words = std::set<std::string>;
constexpr double kNearly = 0.8;  ///< share of common words from which two names are nearly alike

/// The words of a line without case, marks and the small words that carry nothing. In their order:
/// a knit pattern in a woven is not a woven pattern in a knit.
std::vector<std::string> line_of(const std::string& text) {
  static constexpr std::array<std::string_view, 16> kSmall = {
      "a",    "an", "the", "of", "at",  "is",  "are", "was",
      "were", "to", "on",  "in", "and", "its", "it",  "with"};
  std::vector<std::string> all;
  std::string word;
  for (const char c : text + " ") {
    const auto byte = static_cast<unsigned char>(c);
    if (std::isalnum(byte) || byte >= 0x80) {
      word += static_cast<char>(std::tolower(byte));
    } else if (!word.empty()) {
      if (std::find(kSmall.begin(), kSmall.end(), word) == kSmall.end()) all.push_back(word);
      word.clear();
    }
  }
  return all;
}

/// The same without their order.
Words words_of(const std::string& text) {
  const auto line = line_of(text);
  return {line.begin(), line.end()};
}

double common(const Words& a, const Words& b) {
  std::size_t both = 0;
  for (const auto& word : a) both += b.count(word);
  const std::size_t all = a.size() + b.size() - both;
  return all == 0 ? 0.0 : static_cast<double>(both) / static_cast<double>(all);
}

std::string other_at(const Place& place) { return " (" + at(place) + ")"; }

/// Calls `twins(first, later)` for entries whose key is the same; an empty key is none.
template <class T, class Key, class Twins>
void same(const std::vector<T>& all, Key key, Twins twins) {
  std::map<decltype(key(all.front())), const T*> seen;
  for (const auto& one : all) {
    auto k = key(one);
    if (k.empty()) continue;
    const auto [it, fresh] = seen.emplace(std::move(k), &one);
    if (!fresh && it->second->id != one.id) twins(*it->second, one);
  }
}

std::map<std::string, double> strengths(const Cause& c) {
  std::map<std::string, double> all;
  for (const auto& m : c.makes) all[m.sign] = m.strength;
  return all;
}

Words signs_made(const Cause& c) {
  Words all;
  for (const auto& m : c.makes) all.insert(m.sign);
  return all;
}

Words lead_and_causes(const FitProblem& p) {
  Words all(p.causes.begin(), p.causes.end());
  all.insert("sign " + p.sign);
  return all;
}

bool share_a_kind(const Remedy& a, const Remedy& b) {
  if (a.kinds.empty() || b.kinds.empty()) return true;
  return std::any_of(a.kinds.begin(), a.kinds.end(),
                     [&](const auto& kind) { return has_kind(b.kinds, kind); });
}

bool same_steps(const Remedy& a, const Remedy& b) {
  const auto key = [](const RemedyStep& s) { return std::tie(s.operation, s.options, s.amount); };
  return std::equal(a.steps.begin(), a.steps.end(), b.steps.begin(), b.steps.end(),
                    [&](const auto& x, const auto& y) {
                      // What is sewn or chosen is told apart by its words alone.
                      return key(x) == key(y) &&
                             (!x.amount.empty() || words_of(x.text) == words_of(y.text));
                    });
}

void remedies_alike(const Cause& c, ToldProblems& told) {
  for (std::size_t i = 0; i < c.remedies.size(); ++i)
    for (std::size_t j = 0; j < i; ++j) {
      const Remedy& a = c.remedies[j];
      const Remedy& b = c.remedies[i];
      if (share_a_kind(a, b) && same_steps(a, b))
        told.say(b.place, "steps", "remedies-alike",
                 "the remedies " + a.id + other_at(a.place) + " and " + b.id + " do the same",
                 "keep one of the two, or give each the block kinds it is for");
    }
}

/// The same unless both stand for the same id (told as "id-twice").
template <class T>
void nearly(const std::vector<T>& all, const std::string& sort,
            const std::function<bool(const T&, const T&)>& may, ToldProblems& told) {
  std::vector<Words> names;
  for (const auto& one : all) names.push_back(words_of(one.name));
  for (std::size_t i = 0; i < all.size(); ++i)
    for (std::size_t j = 0; j < i; ++j) {
      const double share = common(names[i], names[j]);
      if (share >= kNearly && share < 1.0 && may(all[i], all[j]))
        told.say(all[i].place, "name", "nearly-alike",
                 "the " + sort + "s " + all[j].id + other_at(all[j].place) + " and " + all[i].id +
                     " have nearly the same name",
                 "if they are one, keep one; else say in the name what tells them apart");
    }
}

}  // namespace

Problems alike(const Knowledge& k) {
  ToldProblems told;
  same(
      k.signs, [](const Sign& s) { return line_of(s.name); },
      [&](const Sign& a, const Sign& b) {
        told.say(b.place, "name", "signs-alike",
                 "the signs " + a.id + other_at(a.place) + " and " + b.id + " have the same name",
                 "keep one of the two, or name what tells them apart");
      });
  const auto causes = [&](const char* field, const std::string& how) {
    return [&told, field, how](const Cause& a, const Cause& b) {
      told.say(b.place, field, "causes-alike",
               "the causes " + a.id + other_at(a.place) + " and " + b.id + " " + how,
               "keep one of the two, or say what tells them apart");
    };
  };
  same(
      k.causes, [](const Cause& c) { return line_of(c.name); },
      causes("name", "have the same name"));
  same(
      k.causes, [](const Cause& c) { return line_of(c.what); }, causes("what", "say the same"));
  same(k.causes, strengths, causes("makes", "make the very same signs as surely"));
  for (const auto& c : k.causes) remedies_alike(c, told);
  same(k.problems, lead_and_causes, [&](const FitProblem& a, const FitProblem& b) {
    told.say(b.place, "", "problems-alike",
             "the problems " + a.id + other_at(a.place) + " and " + b.id +
                 " have the same leading sign and causes",
             "keep one of the two");
  });
  return told.take();
}

Problems remarks(const Knowledge& k) {
  ToldProblems told;
  nearly<Sign>(
      k.signs, "sign", [](const Sign& a, const Sign& b) { return a.zone == b.zone; }, told);
  nearly<Cause>(
      k.causes, "cause", [](const Cause&, const Cause&) { return true; }, told);
  same(k.causes, signs_made, [&](const Cause& a, const Cause& b) {
    if (strengths(a) != strengths(b))
      told.say(b.place, "makes", "nearly-alike",
               "the causes " + a.id + other_at(a.place) + " and " + b.id +
                   " make the same signs, only not as strongly",
               "add the sign of the check that tells them apart");
  });
  std::set<std::string> named;
  for (const auto& p : k.problems) named.insert(p.causes.begin(), p.causes.end());
  for (const auto& c : k.causes) {
    if (!named.contains(c.id))
      told.say(c.place, "id", "cause-in-no-problem", "no problem names the cause " + c.id,
               "list it under `causes` of a problem, beside its rivals");
    for (const auto& r : c.remedies) {
      const bool used = !c.prior_when.empty() || r.kinds.empty() ||
                        std::any_of(r.kinds.begin(), r.kinds.end(),
                                    [&](const auto& kind) { return prior_of(c, kind) > 0.0; });
      if (!used)
        told.say(r.place, "kinds", "remedy-never-used",
                 "the remedy " + r.id + " is for block kinds on which " + c.id + " cannot hold",
                 "mend its kinds, or the cause's prior_by_kind");
    }
  }
  for (const auto& s : k.signs)
    if (s.ask.empty() && !is_told_sign(s.id))
      told.say(s.place, "id", "sign-never-asked", "no question looks for the sign " + s.id,
               "write one under `ask`");
  return told.take();
}

}  // namespace pinwright::knowledge
