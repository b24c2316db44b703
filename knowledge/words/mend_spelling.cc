#include "knowledge/words/mend_spelling.h"

#include <algorithm>
#include <array>
#include <utility>

#include "knowledge/words/function_words.h"
#include "knowledge/words/phrases.h"

namespace pinwright::knowledge {
namespace {

constexpr std::size_t kShortestMended = 4;  ///< shorter words are too near to each other
constexpr std::size_t kLongestMended = 24;
constexpr std::size_t kTwoSlips = 7;
constexpr std::size_t kMostLooked = 256;

bool plain_letters(std::string_view word) {
  return std::all_of(word.begin(), word.end(), [](char c) { return c >= 'a' && c <= 'z'; });
}

/// What "to" before it means: too.
bool is_degree(std::string_view word) {
  static const std::set<std::string_view> words = {"tight", "loose",   "low",    "high", "long",
                                                   "short", "wide",    "narrow", "big",  "small",
                                                   "deep",  "shallow", "baggy",  "snug", "large"};
  return words.contains(word);
}

}  // namespace

std::size_t slip_distance(std::string_view a, std::string_view b, std::size_t most) {
  const std::size_t longer = std::max(a.size(), b.size());
  if (longer - std::min(a.size(), b.size()) > most || longer > 64) return most + 1;
  std::array<std::array<std::size_t, 65>, 3> rows{};
  for (std::size_t j = 0; j <= b.size(); ++j) rows[0][j] = j;
  for (std::size_t i = 1; i <= a.size(); ++i) {
    auto& row = rows[i % 3];
    const auto& above = rows[(i + 2) % 3];
    const auto& before = rows[(i + 1) % 3];
    row[0] = i;
    std::size_t least = row[0];
    for (std::size_t j = 1; j <= b.size(); ++j) {
      const std::size_t cost = a[i - 1] == b[j - 1] ? 0 : 1;
      row[j] = std::min({above[j] + 1, row[j - 1] + 1, above[j - 1] + cost});
      if (i > 1 && j > 1 && a[i - 1] == b[j - 2] && a[i - 2] == b[j - 1]) {
        row[j] = std::min(row[j], before[j - 2] + 1);
      }
      least = std::min(least, row[j]);
    }
    if (least > most) return most + 1;
  }
  return std::min(rows[a.size() % 3][b.size()], most + 1);
}

SpellingMender::SpellingMender(const Knowledge& k, const Stemmer& stemmer,
                               std::shared_ptr<const Dictionary> dictionary)
    : dictionary_(std::move(dictionary)) {
  for (const Sign& sign : k.signs) {
    learn(sign.name, stemmer);
    learn(sign.ask, stemmer);
    for (const auto* phrases : {&sign.phrases, &sign.denied_by}) {
      for (const std::string& text : *phrases) {
        const Result<Phrase> phrase = parse_phrase(text);
        if (!phrase) continue;
        for (const PhraseItem& item : phrase->items) {
          if (item.kind == PhraseItem::Kind::word) learn(item.text, stemmer);
        }
      }
    }
  }
  for (const WordClass& words : k.words) {
    for (const std::string& member : words.words) learn(member, stemmer);
  }
  for (const Zone& zone : k.zones) learn(zone.name, stemmer);
  by_length_.resize(kLongestMended + 1);
  for (const auto& [word, uses] : uses_) {
    if (word.size() >= kShortestMended && word.size() <= kLongestMended && plain_letters(word)) {
      by_length_[word.size()].push_back({word, uses});
    }
  }
}

void SpellingMender::learn(std::string_view text, const Stemmer& stemmer) {
  for (const Token& token : tokens(text)) {
    if (token.kind != Token::Kind::word) continue;
    stems_.insert(token.stem);
    ++uses_[token.text];
    if (token.text.size() < kShortestMended || !plain_letters(token.text)) continue;
    const bool silent = token.text.back() == 'e';
    const std::string base = silent ? token.text.substr(0, token.text.size() - 1) : token.text;
    for (const std::string& form : {token.text + "s", base + "ed", base + "ing"}) {
      if (stemmer.stem(form) == token.stem) uses_.emplace(form, 0);
    }
  }
}

bool SpellingMender::is_known(const Token& token) const {
  return stems_.contains(token.stem) || uses_.contains(token.text) ||
         load_of(token.text) != Load::content || dictionary_->is_word(token.text);
}

std::optional<std::string> SpellingMender::nearest(std::string_view word) const {
  const std::size_t most = word.size() >= kTwoSlips ? 2 : 1;
  const Known* best = nullptr;
  std::size_t best_rank = 0;
  for (std::size_t n = word.size() - std::min(word.size(), most);
       n <= std::min(kLongestMended, word.size() + most); ++n) {
    for (const Known& known : by_length_[n]) {
      const std::size_t distance = slip_distance(word, known.word, most);
      if (distance > most) continue;
      const bool first = known.word.front() == word.front();
      if (!first && distance > 1) continue;
      const std::size_t rank = 2 * distance + (first ? 0 : 1);
      if (best == nullptr || rank < best_rank || (rank == best_rank && known.uses > best->uses)) {
        best = &known;
        best_rank = rank;
      }
    }
  }
  if (best == nullptr) return std::nullopt;
  return best->word;
}

void SpellingMender::mend(std::vector<Token>& tokens, const Stemmer& stemmer) const {
  std::map<std::string, std::optional<std::string>, std::less<>> seen;
  for (std::size_t i = 0; i < tokens.size(); ++i) {
    Token& token = tokens[i];
    if (token.kind != Token::Kind::word) continue;
    if (token.text == "to" && i + 1 < tokens.size() && is_degree(tokens[i + 1].text)) {
      token.text = "too";
      token.stem = stemmer.stem(token.text);
      continue;
    }
    if (token.text.size() < kShortestMended || token.text.size() > kLongestMended ||
        !plain_letters(token.text)) {
      continue;
    }
    auto known = seen.find(token.text);
    if (known == seen.end()) {
      if (seen.size() >= kMostLooked) continue;
      std::optional<std::string> other;
      if (!is_known(token)) other = nearest(token.text);
      known = seen.emplace(token.text, std::move(other)).first;
    }
    if (!known->second) continue;
    token.text = one_spelling(*known->second);
    token.stem = stemmer.stem(token.text);
  }
}

}  // namespace pinwright::knowledge
