#include "knowledge/words/sequences.h"

#include "knowledge/words/function_words.h"

namespace pinwright::knowledge {
namespace {

bool side_word(std::string_view word) {
  return word == "both" || word == "left" || word == "right" || word == "one";
}

}  // namespace

void Sequences::add(std::string_view words, std::size_t id, const Stemmer& stemmer,
                    bool keep_noise) {
  std::vector<std::string> kept;
  std::vector<std::string> all;
  std::string joined;
  bool all_content = true;
  for (const Token& token : tokens(words)) {
    if (token.kind != Token::Kind::word) continue;
    all.push_back(token.stem);
    joined += token.text;
    all_content = all_content && load_of(token.text) == Load::content;
    if (keep_noise || load_of(token.text) != Load::noise) kept.push_back(token.stem);
  }
  if (kept.empty()) kept = all;
  if (kept.empty()) return;
  entries_[kept.front()].push_back({id, {kept.begin() + 1, kept.end()}});
  if (all.size() > 1 && all_content) entries_[stemmer.stem(joined)].push_back({id, {}});
}

std::vector<Run> Sequences::at(const std::vector<Token>& tokens, std::size_t first,
                               std::size_t last, const Stemmer& stemmer, bool skip_sides) const {
  std::vector<Run> found;
  if (tokens[first].kind != Token::Kind::word) return found;
  find(tokens[first].stem, {first}, last, tokens, skip_sides, found);
  const std::size_t next = first + 1;
  if (next < last && tokens[next].kind == Token::Kind::word && tokens[next].text.size() < 32 &&
      tokens[first].text.size() < 32 && load_of(tokens[first].text) == Load::content) {
    const std::string joined = stemmer.stem(tokens[first].text + tokens[next].text);
    find(joined, {first, next}, last, tokens, skip_sides, found);
  }
  return found;
}

void Sequences::find(const std::string& stem, std::vector<std::size_t> begun, std::size_t last,
                     const std::vector<Token>& tokens, bool skip_sides,
                     std::vector<Run>& found) const {
  const auto known = entries_.find(stem);
  if (known == entries_.end()) return;
  for (const Entry& entry : known->second) {
    Run run{entry.id, begun};
    std::size_t at = begun.back() + 1;
    for (const std::string& wanted : entry.rest) {
      while (
          at < last && tokens[at].kind == Token::Kind::word && tokens[at].stem != wanted &&
          (load_of(tokens[at].text) == Load::noise || (skip_sides && side_word(tokens[at].text)))) {
        ++at;
      }
      if (at >= last || tokens[at].kind != Token::Kind::word || tokens[at].stem != wanted) break;
      run.tokens.push_back(at++);
    }
    if (run.tokens.size() == begun.size() + entry.rest.size()) found.push_back(std::move(run));
  }
}

}  // namespace pinwright::knowledge
