#include "knowledge/words/resemblance.h"

#include <algorithm>
#include <array>
#include <cmath>
#include <string_view>

namespace pinwright::knowledge {
namespace {

constexpr std::size_t kShortlist = 32;
constexpr double kUnknown = 1.2;    ///< weight of a word that no sign knows
constexpr double kOpposite = 0.2;   ///< what is left of a sign that says the opposite
constexpr double kLikeWord = 0.75;  ///< another word of the same class instead of the phrase's own

/// Classes (with '<') and words that say one direction or the other.
struct Opposites {
  std::array<std::string_view, 2> words;
};
constexpr std::array<Opposites, 6> kOpposites = {{
    {{"<tight <choke tight snug strain taut small squeeze pull narrow",
      "<gape <loose loose slack baggy bag sag excess gape roomy droop"}},
    {{"<too-short short shorter", "<too-long long longer"}},
    {{"<too-high <rise high higher rise", "<hang-low low lower drop"}},
    {{"<front front", "<back back"}},
    {{"narrow narrower", "wide wider broad broader"}},
    {{"forward", "backward backwards"}},
}};

bool has_feature(const std::vector<FeatureId>& features, FeatureId feature) {
  return std::find(features.begin(), features.end(), feature) != features.end();
}

bool any_of_these(const std::vector<FeatureId>& some, const std::vector<FeatureId>& others) {
  return std::any_of(some.begin(), some.end(), [&](FeatureId f) { return has_feature(others, f); });
}

}  // namespace

Resemblance::Resemblance(const Knowledge& k, const Lexicon& lexicon, const Stemmer& stemmer)
    : features_(k, lexicon, stemmer), likeness_(features_) {
  for (const Opposites& pair : kOpposites) {
    for (std::size_t side = 0; side < 2; ++side) {
      std::vector<FeatureId> known;
      std::string_view rest = pair.words[side];
      while (!rest.empty()) {
        const std::string_view word = rest.substr(0, rest.find(' '));
        rest.remove_prefix(std::min(rest.size(), word.size() + 1));
        const auto feature = word.front() == '<'
                                 ? features_.of_class_name(word.substr(1))
                                 : features_.of_stem(stemmer.stem(one_spelling(std::string(word))));
        if (feature) known.push_back(*feature);
      }
      opposites_[side].push_back(std::move(known));
    }
  }
  for (const Profile& profile : features_.profiles()) directions_.push_back(direction_of(profile));
  for (const Sign& sign : k.signs) {
    plainer_.emplace_back();
    for (std::size_t s = 0; s < k.signs.size(); ++s) {
      if (!sign.kind_of.empty() && k.signs[s].id == sign.kind_of) plainer_.back() = s;
    }
  }
}

ToldWords Resemblance::told(const Reading& reading, const std::vector<std::size_t>& tokens,
                            const std::vector<std::size_t>& lent) const {
  ToldWords out;
  std::map<std::size_t, std::size_t> at;  // word of a token
  const auto add = [&](std::size_t i, bool is_lent) {
    const auto [known, fresh] = at.emplace(i, out.words.size());
    if (!fresh) return;
    ToldWord word;
    word.token = i;
    word.lent = is_lent;
    word.place = reading.words[i].place == PlaceWord::place;
    const auto notion = reading.words[i].notion;
    word.unasked = notion && reading.notions[*notion].kind == Notion::Kind::posture;
    word.stem = features_.of_stem(reading.tokens[i].stem);
    out.words.push_back(std::move(word));
  };
  for (std::size_t i : tokens) add(i, false);
  for (std::size_t i : lent) add(i, true);
  for (const Clause& clause : reading.clauses) {
    if (clause.last <= (at.empty() ? 0 : at.begin()->first)) continue;
    for (const Run& run : clause.runs) {
      const auto feature = features_.of_class(run.id);
      if (!feature) continue;
      std::vector<std::size_t> inside;
      for (std::size_t i : run.tokens) {
        if (const auto known = at.find(i); known != at.end()) inside.push_back(known->second);
      }
      // Its light words ("stand OFF") need not be among the told ones, but one word must.
      bool whole = !inside.empty();
      for (std::size_t i : run.tokens) {
        whole = whole && (at.contains(i) || reading.words[i].load != Load::content);
      }
      if (!whole) continue;
      for (std::size_t w : inside) out.words[w].classes.push_back(*feature);
    }
  }
  return out;
}

double Resemblance::weight(const ToldWord& word) const {
  if (word.classes.empty()) return word.stem ? features_.weight(*word.stem) : kUnknown;
  double sum = 0.0;
  for (FeatureId f : word.classes) sum += features_.weight(f);
  return sum / static_cast<double>(word.classes.size());
}

Resemblance::Direction Resemblance::direction_of(const ToldWords& told) const {
  Direction out;
  for (std::size_t pair = 0; pair < kOpposites.size(); ++pair) {
    std::array<bool, 2> said{};
    for (const ToldWord& word : told.words) {
      std::array<bool, 2> here{};
      for (std::size_t side = 0; side < 2; ++side) {
        const auto& known = opposites_[side][pair];
        here[side] =
            any_of_these(word.classes, known) || (word.stem && has_feature(known, *word.stem));
      }
      if (here[0] == here[1]) continue;
      said[0] = said[0] || here[0];
      said[1] = said[1] || here[1];
    }
    out.push_back(said[0] == said[1] ? 0 : said[0] ? -1 : 1);
  }
  return out;
}

Resemblance::Direction Resemblance::direction_of(const Profile& profile) const {
  Direction out;
  for (std::size_t pair = 0; pair < kOpposites.size(); ++pair) {
    std::array<std::size_t, 2> said{};
    for (std::size_t p = 0; p < profile.phrases.size(); ++p) {
      for (std::size_t side = 0; side < 2; ++side) {
        const auto& known = opposites_[side][pair];
        const bool here =
            std::any_of(profile.phrases[p].items.begin(), profile.phrases[p].items.end(),
                        [&](const FeatureItem& item) { return any_of_these(item.own, known); });
        if (here) said[side] += p == 0 ? 1 + profile.phrases.size() / 3 : 1;
      }
    }
    const std::size_t least = 1 + profile.phrases.size() / 3;
    const bool first = said[0] >= least;
    const bool second = said[1] >= least;
    out.push_back(first == second ? 0 : first ? -1 : 1);
  }
  return out;
}

double Resemblance::best_phrase(const std::vector<FeatureId>& told, const Profile& profile) const {
  double best = 0.0;
  for (const FeaturePhrase& phrase : profile.phrases) {
    double all = 0.0;
    double said = 0.0;
    for (const FeatureItem& item : phrase.items) {
      const std::vector<FeatureId>& own = item.own.empty() ? item.like : item.own;
      double heaviest = 0.0;
      for (FeatureId f : own) heaviest = std::max(heaviest, features_.weight(f));
      all += heaviest;
      if (any_of_these(own, told)) {
        said += heaviest;
      } else if (any_of_these(item.like, told)) {
        said += kLikeWord * heaviest;
      }
    }
    if (all > 0.0) best = std::max(best, said / all);
  }
  return best;
}

double Resemblance::best_telling(const ToldWords& told, const Profile& profile) const {
  double best = 0.0;
  for (const FeaturePhrase& telling : profile.tellings) {
    double told_all = 0.0;
    double told_shared = 0.0;
    for (const ToldWord& word : told.words) {
      if (word.lent || word.unasked) continue;
      const double its = weight(word);
      told_all += its;
      double here = 0.0;
      for (const FeatureItem& item : telling.items) {
        if (word.stem && has_feature(item.own, *word.stem))
          here = 1.0;
        else if (any_of_these(item.like, word.classes))
          here = std::max(here, kLikeWord);
      }
      told_shared += its * here;
    }
    double all = 0.0;
    double shared = 0.0;
    for (const FeatureItem& item : telling.items) {
      double its = 0.0;
      for (FeatureId f : item.own) its = std::max(its, features_.weight(f));
      if (item.own.empty())
        for (FeatureId f : item.like) its = std::max(its, features_.weight(f));
      all += its;
      double here = 0.0;
      for (const ToldWord& word : told.words) {
        if (word.stem && has_feature(item.own, *word.stem))
          here = 1.0;
        else if (any_of_these(item.like, word.classes))
          here = std::max(here, kLikeWord);
      }
      shared += its * here;
    }
    if (all > 0.0 && told_all > 0.0)
      best = std::max(best, std::sqrt((told_shared / told_all) * (shared / all)));
  }
  return best;
}

Like Resemblance::compare(const ToldWords& told, const Direction& direction,
                          std::size_t sign) const {
  const Profile& profile = features_.profiles()[sign];
  Like like{sign, 0.0, {}};
  double all = 0.0;
  double shared = 0.0;
  std::size_t places = 0;
  std::size_t places_shared = 0;
  bool lent_place = false;
  bool lent_shared = false;
  double sights = 0.0;
  double sights_shared = 0.0;
  std::vector<FeatureId> features;
  for (std::size_t w = 0; w < told.words.size(); ++w) {
    const ToldWord& word = told.words[w];
    double here = 0.0;
    const auto look = [&](FeatureId f) {
      features.push_back(f);
      if (const auto known = profile.has.find(f); known != profile.has.end()) {
        here = std::max(here, known->second);
      }
    };
    for (FeatureId f : word.classes) look(f);
    if (word.stem) look(*word.stem);
    if (here > 0.0) like.words.push_back(w);
    if (word.lent) {
      lent_place = lent_place || word.place;
      lent_shared = lent_shared || (word.place && here > 0.0);
      continue;
    }
    if (word.unasked && here == 0.0) continue;
    const double its = weight(word);
    all += its;
    shared += its * here;
    if (word.place) {
      ++places;
      if (here > 0.0) ++places_shared;
    } else {
      sights += its;
      sights_shared += its * here;
    }
  }
  if (all <= 0.0 || sights_shared <= 0.0) return like;
  double structure = 1.0;
  if (places > 0) {
    if (places_shared == 0) return like;
    structure *= 0.6 + 0.4 * static_cast<double>(places_shared) / static_cast<double>(places);
  } else if (lent_place) {
    structure *= lent_shared ? 0.95 : 0.5;
  } else {
    structure *= 0.85;
  }
  for (std::size_t pair = 0; pair < direction.size(); ++pair) {
    if (direction[pair] * directions_[sign][pair] < 0) structure *= kOpposite;
  }
  if (sights_shared < 0.4 * sights) structure *= 0.6;
  like.score = structure * std::max((shared / all) * (0.35 + 0.65 * best_phrase(features, profile)),
                                    best_telling(told, profile));
  return like;
}

std::vector<FeatureId> Resemblance::query_of(const ToldWords& told) {
  std::vector<FeatureId> query;
  for (const ToldWord& word : told.words) {
    for (FeatureId f : word.classes) query.push_back(f);
    if (word.stem) query.push_back(*word.stem);
  }
  std::sort(query.begin(), query.end());
  query.erase(std::unique(query.begin(), query.end()), query.end());
  return query;
}

std::vector<Like> Resemblance::rank(const ToldWords& told, const std::vector<bool>& allowed,
                                    std::size_t most) const {
  const Direction direction = direction_of(told);
  std::vector<Like> likes;
  for (std::size_t sign : likeness_.nearest(query_of(told), kShortlist)) {
    if (!allowed[sign]) continue;
    Like like = compare(told, direction, sign);
    if (like.score > 0.0) likes.push_back(std::move(like));
  }
  std::stable_sort(likes.begin(), likes.end(),
                   [](const Like& a, const Like& b) { return a.score > b.score; });
  if (likes.size() > most) likes.resize(most);
  return likes;
}

std::vector<std::size_t> Resemblance::nearest(const ToldWords& told,
                                              const std::vector<bool>& allowed,
                                              std::size_t most) const {
  std::vector<std::size_t> found;
  for (const Like& like : rank(told, allowed, most)) found.push_back(like.sign);
  for (std::size_t sign : likeness_.nearest(query_of(told), kShortlist)) {
    const bool known = std::find(found.begin(), found.end(), sign) != found.end();
    if (found.size() < most && allowed[sign] && !known) found.push_back(sign);
  }
  return found;
}

bool Resemblance::are_kin(std::size_t a, std::size_t b) const {
  return plainer_[a] == b || plainer_[b] == a || (plainer_[a] && plainer_[a] == plainer_[b]);
}

bool Resemblance::tells_kind(const ToldWords& told, std::size_t sign) const {
  if (!plainer_[sign]) return true;
  const Direction said = direction_of(told);
  for (std::size_t pair = 0; pair < said.size(); ++pair) {
    const int own = directions_[sign][pair];
    if (own != 0 && own != directions_[*plainer_[sign]][pair] && own == said[pair]) return true;
  }
  return false;
}

}  // namespace pinwright::knowledge
