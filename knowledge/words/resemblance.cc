#include "knowledge/words/resemblance.h"

#include <algorithm>
#include <array>
#include <bit>
#include <cmath>
#include <cstdint>
#include <functional>
#include <string_view>
#include <utility>

namespace pinwright::knowledge {
namespace {

constexpr std::size_t kShortlist = 96;
constexpr double kUnknown = 1.2;       ///< weight of a word that no sign knows
constexpr double kOpposite = 0.2;      ///< what is left of a sign that says the opposite
constexpr std::size_t kRarest = 14;    ///< features that the shortlist is asked for
constexpr std::size_t kCompared = 24;  ///< likeliest signs that are compared phrase by phrase
constexpr std::size_t kMostWords = 64;
constexpr std::size_t kBest = 8;       ///< phrases and tellings of a sign that count together
constexpr double kBestCount = 1.5;     ///< what their mean counts against the best one
constexpr double kLikelihood = 0.5;    ///< what the likelihood counts against it
constexpr double kOwn = 0.7;           ///< how much of the likelihood is the sign's own
constexpr double kPlaceMissing = 0.8;  ///< what is left where the sign knows none of the places
constexpr double kNoPlace = 0.75;      ///< and once more
constexpr double kNotSaid = 0.6;       ///< what is left where the sign's own words have a "not"
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

/// The clause of this token, or the number of clauses.
std::size_t clause_of(const Reading& reading, std::size_t token) {
  const auto after =
      std::upper_bound(reading.clauses.begin(), reading.clauses.end(), token,
                       [](std::size_t i, const Clause& clause) { return i < clause.last; });
  const bool inside = after != reading.clauses.end() && token >= after->first;
  return inside ? static_cast<std::size_t>(after - reading.clauses.begin())
                : reading.clauses.size();
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
    if (out.words.size() >= kMostWords) return;
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
  const std::size_t here =
      tokens.empty() ? reading.clauses.size() : clause_of(reading, tokens.front());
  if (here < reading.clauses.size()) {
    auto notion = std::lower_bound(
        reading.notions.begin(), reading.notions.end(), reading.clauses[here].first,
        [](const Notion& one, std::size_t i) { return one.tokens.front() < i; });
    for (; notion != reading.notions.end() && notion->tokens.front() < tokens.back(); ++notion) {
      const bool open = !reading.words[notion->tokens.front()].taken;
      if (open && notion->kind == Notion::Kind::negation) out.negated = !out.negated;
    }
  }
  for (std::size_t i : tokens) add(i, false);
  for (std::size_t i : lent) add(i, true);
  std::size_t last = reading.clauses.size();
  for (const auto& [token, word] : at) {
    const std::size_t c = clause_of(reading, token);
    if (c == last || c == reading.clauses.size()) continue;
    last = c;
    for (const Run& run : reading.clauses[c].runs) {
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
      for (std::size_t w : inside) {
        const std::size_t i = out.words[w].token;
        const bool counts = reading.words[i].load == Load::content || i == run.tokens.front();
        if (counts) out.words[w].classes.push_back(*feature);
      }
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

/// The told words made ready to be held against many signs. Of more than 64 the first count.
struct Resemblance::Asked {
  using Words = std::uint64_t;  ///< a bit a word
  const ToldWords* told = nullptr;
  Direction direction;
  std::vector<Words> as_stem;  ///< by feature: the words that have it as stem, as class
  std::vector<Words> as_class;
  Words own = 0;  ///< not lent
  Words unasked = 0;
  std::vector<double> weights;  ///< by word
  double all = 0.0;             ///< their sum over the words of the stretch itself
};

Resemblance::Asked Resemblance::asked_of(const ToldWords& told) const {
  Asked asked;
  asked.told = &told;
  asked.direction = direction_of(told);
  asked.as_stem.resize(features_.size());
  asked.as_class.resize(features_.size());
  Asked::Words bit = 1;
  for (const ToldWord& word : told.words) {
    for (FeatureId f : word.classes) asked.as_class[f] |= bit;
    if (word.stem) asked.as_stem[*word.stem] |= bit;
    if (!word.lent) asked.own |= bit;
    if (word.unasked) asked.unasked |= bit;
    asked.weights.push_back(weight(word));
    if (!word.lent && !word.unasked) asked.all += asked.weights.back();
    bit <<= 1;
  }
  return asked;
}

/// Per word the mean over what it can be taken for.
double Resemblance::likelihood(const Asked& asked, const Profile& profile) const {
  double sum = 0.0;
  for (const ToldWord& word : asked.told->words) {
    const double ways = static_cast<double>(word.classes.size() + (word.stem ? 1U : 0U));
    const auto add = [&](FeatureId f) {
      const double usual = features_.usual_share(f);
      if (!(usual > 0.0)) return;
      const auto known = profile.shares.find(f);
      const double own = known == profile.shares.end() ? 0.0 : known->second;
      sum += std::log((kOwn * own + (1.0 - kOwn) * usual) / usual) / ways;
    };
    for (FeatureId f : word.classes) add(f);
    if (word.stem) add(*word.stem);
  }
  return sum;
}

double Resemblance::likeness(const Asked& asked, const FeaturePhrase& phrase) const {
  double said = 0.0;
  Asked::Words stems = 0;
  Asked::Words classes = 0;
  for (const FeatureItem& item : phrase.items) {
    Asked::Words own = 0;
    Asked::Words like = 0;
    for (FeatureId f : item.own) {
      stems |= asked.as_stem[f];
      classes |= asked.as_class[f];
      own |= asked.as_stem[f] | asked.as_class[f];
    }
    for (FeatureId f : item.like) {
      classes |= asked.as_class[f];
      like |= asked.as_class[f];
    }
    if (item.own.empty()) std::swap(own, like);
    said += own != 0 ? item.weight : like != 0 ? kLikeWord * item.weight : 0.0;
  }
  if (!(said > 0.0)) return 0.0;
  double has = 0.0;
  double told = asked.all;
  for (Asked::Words left = (stems | classes) & asked.own; left != 0; left &= left - 1) {
    const auto w = static_cast<std::size_t>(std::countr_zero(left));
    const Asked::Words bit = Asked::Words{1} << w;
    has += ((stems & bit) != 0 ? 1.0 : kLikeWord) * asked.weights[w];
    if ((asked.unasked & bit) != 0) told += asked.weights[w];
  }
  double like = told > 0.0 ? std::sqrt(said / phrase.weight * has / told) : 0.0;
  if (phrase.negated && !asked.told->negated) like *= kNotSaid;
  return like;
}

double Resemblance::structure(const Asked& asked, std::size_t sign) const {
  const Profile& profile = features_.profiles()[sign];
  const auto has = [&](const ToldWord& word) {
    return (word.stem && profile.has.contains(*word.stem)) ||
           std::any_of(word.classes.begin(), word.classes.end(),
                       [&](FeatureId f) { return profile.has.contains(f); });
  };
  double places = 0.0;
  double shared = 0.0;
  bool lent = false;
  bool lent_shared = false;
  bool sight = false;
  for (const ToldWord& word : asked.told->words) {
    const bool here = has(word);
    if (!word.place) {
      sight = sight || (here && !word.lent);
    } else if (word.lent) {
      lent = true;
      lent_shared = lent_shared || here;
    } else {
      places += 1.0;
      if (here) shared += 1.0;
    }
  }
  if (!sight) return 0.0;
  double left = places > 0.0 ? kPlaceMissing + (1.0 - kPlaceMissing) * shared / places : 1.0;
  if (places > 0.0 && !(shared > 0.0)) left *= kNoPlace;
  if (!(places > 0.0) && lent && !lent_shared) left *= kNoPlace;
  for (std::size_t pair = 0; pair < asked.direction.size(); ++pair) {
    if (asked.direction[pair] * directions_[sign][pair] < 0) left *= kOpposite;
  }
  return left;
}

/// The score without the likelihood, which wants all candidates.
Like Resemblance::compare(const Asked& asked, std::size_t sign) const {
  const Profile& profile = features_.profiles()[sign];
  Like like{sign, 0.0, 0.0, asked.told->negated, {}};
  std::vector<double> likes;
  double best = 0.0;
  for (const FeaturePhrase& phrase : profile.phrases) {
    const double one = likeness(asked, phrase);
    if (one > 0.0) likes.push_back(one);
    if (one <= best) continue;
    best = one;
    like.absent = asked.told->negated && !phrase.negated;
  }
  const std::size_t most = std::min(kBest, likes.size());
  std::partial_sort(likes.begin(), likes.begin() + static_cast<std::ptrdiff_t>(most), likes.end(),
                    std::greater<>());
  double sum = 0.0;
  for (std::size_t n = 0; n < most; ++n) sum += likes[n];
  like.best = best;
  like.score = best + kBestCount * sum / static_cast<double>(kBest);
  for (std::size_t w = 0; w < asked.told->words.size(); ++w) {
    const ToldWord& word = asked.told->words[w];
    const bool shared = (word.stem && profile.has.contains(*word.stem)) ||
                        std::any_of(word.classes.begin(), word.classes.end(),
                                    [&](FeatureId f) { return profile.has.contains(f); });
    if (shared) like.words.push_back(w);
  }
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

std::vector<std::size_t> Resemblance::shortlist(const ToldWords& told) const {
  std::vector<FeatureId> query = query_of(told);
  std::stable_sort(query.begin(), query.end(), [&](FeatureId a, FeatureId b) {
    return features_.weight(a) > features_.weight(b);
  });
  if (query.size() > kRarest) query.resize(kRarest);
  return likeness_.nearest(query, kShortlist);
}

const std::vector<std::size_t>& Shortlists::of_sentence(std::size_t sentence) {
  const auto [known, fresh] = made_.try_emplace(sentence);
  if (!fresh) return known->second;
  const auto first = std::lower_bound(
      reading_.clauses.begin(), reading_.clauses.end(), sentence,
      [](const Clause& clause, std::size_t number) { return clause.sentence < number; });
  std::vector<std::size_t> words;
  for (auto clause = first; clause != reading_.clauses.end() && clause->sentence == sentence;
       ++clause) {
    for (std::size_t i = clause->first; i < clause->last; ++i) {
      if (reading_.tokens[i].kind == Token::Kind::word && reading_.words[i].load != Load::noise) {
        words.push_back(i);
      }
    }
  }
  known->second = resemblance_.shortlist(resemblance_.told(reading_, words, {}));
  return known->second;
}

std::vector<Like> Resemblance::rank(const ToldWords& told,
                                    const std::vector<std::size_t>& shortlist,
                                    const std::vector<bool>& allowed, std::size_t most) const {
  const Asked asked = asked_of(told);
  std::vector<std::pair<double, std::size_t>> likely;
  for (std::size_t sign : shortlist) {
    if (!allowed[sign]) continue;
    const double one = likelihood(asked, features_.profiles()[sign]);
    if (one > 0.0) likely.emplace_back(one, sign);
  }
  const std::size_t compared = std::min(kCompared, likely.size());
  std::partial_sort(likely.begin(), likely.begin() + static_cast<std::ptrdiff_t>(compared),
                    likely.end(), [](const auto& a, const auto& b) {
                      return a.first != b.first ? a.first > b.first : a.second < b.second;
                    });
  std::vector<Like> likes;
  for (std::size_t n = 0; n < compared; ++n) {
    const double left = structure(asked, likely[n].second);
    if (left <= 0.0) continue;
    Like like = compare(asked, likely[n].second);
    like.score += kLikelihood * likely[n].first / likely.front().first;
    like.score *= left / (1.0 + kBestCount + kLikelihood);
    likes.push_back(std::move(like));
  }
  std::erase_if(likes, [](const Like& like) { return like.score <= 0.0; });
  std::stable_sort(likes.begin(), likes.end(),
                   [](const Like& a, const Like& b) { return a.score > b.score; });
  if (likes.size() > most) likes.resize(most);
  return likes;
}

std::vector<std::size_t> Resemblance::nearest(const ToldWords& told,
                                              const std::vector<std::size_t>& shortlist,
                                              const std::vector<bool>& allowed,
                                              std::size_t most) const {
  std::vector<std::size_t> found;
  for (const Like& like : rank(told, shortlist, allowed, most)) found.push_back(like.sign);
  const std::vector<FeatureId> words = query_of(told);
  for (std::size_t sign : shortlist) {
    if (found.size() >= most) break;
    const auto& has = features_.profiles()[sign].has;
    const bool shares =
        std::any_of(words.begin(), words.end(), [&](FeatureId f) { return has.contains(f); });
    const bool known = std::find(found.begin(), found.end(), sign) != found.end();
    if (shares && allowed[sign] && !known) found.push_back(sign);
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
