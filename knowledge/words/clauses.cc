#include "knowledge/words/clauses.h"

#include <algorithm>
#include <set>

namespace pinwright::knowledge {
namespace {

constexpr std::size_t kLongestClause = 64;

struct Cut {
  Joint joint = Joint::comma;
  bool alternative = false;
};

/// What a token does between clauses; nothing for words within one.
std::optional<Cut> cut_at(const Token& token, const Token* next) {
  if (token.kind == Token::Kind::mark) {
    const char mark = token.text.front();
    if (mark == '.' || mark == ';' || mark == '!' || mark == '?' || mark == '\n') {
      return Cut{Joint::stop};
    }
    if (mark == '&' || mark == '+') return Cut{Joint::with};
    if (mark == '-' && token.glued && next && next->glued) return std::nullopt;
    if (std::string_view(",:()[]{}~|-").find(mark) != std::string_view::npos) return Cut{};
    return std::nullopt;
  }
  if (token.kind != Token::Kind::word) return std::nullopt;
  if (token.text == "and") return Cut{Joint::with};
  if (token.text == "or" || token.text == "nor") return Cut{Joint::with, true};
  static const std::set<std::string_view> but = {"but",     "while",   "although", "though",
                                                 "whereas", "however", "yet",      "except"};
  if (but.contains(token.text)) return Cut{Joint::but};
  return std::nullopt;
}

class Reader {
 public:
  Reader(std::string_view text, const Lexicon& lexicon, const Notions& notions,
         const Stemmer& stemmer)
      : lexicon_(lexicon), stemmer_(stemmer) {
    reading_.text = text;
    reading_.tokens = tokens(text);
    reading_.words.resize(reading_.tokens.size());
    claim_numbers(true);
    claim_notions(notions.find(reading_.tokens, stemmer));
    claim_numbers(false);
    order_numbers();
  }

  Reading read() {
    split();
    for (std::size_t c = 0; c < reading_.clauses.size(); ++c) drop_answer(c);
    for (Clause& clause : reading_.clauses) {
      find_runs(clause);
      find_places(clause);
    }
    return std::move(reading_);
  }

 private:
  /// First those with units, then - where no notion stands - the bare ones.
  void claim_numbers(bool with_unit) {
    for (const SaidNumber& said : find_numbers(reading_.text, reading_.tokens)) {
      bool open = said.has_unit == with_unit;
      for (std::size_t i = said.first; i < said.last; ++i) {
        open = open && !reading_.words[i].notion && !reading_.words[i].number;
      }
      const bool pronoun = said.in_words && said.value == 1.0 && said.last == said.first + 1;
      if (!open || (!with_unit && pronoun)) continue;
      for (std::size_t i = said.first; i < said.last; ++i) {
        reading_.words[i].number = reading_.numbers.size();
      }
      reading_.numbers.push_back(said);
    }
  }

  void order_numbers() {
    std::sort(reading_.numbers.begin(), reading_.numbers.end(),
              [](const SaidNumber& a, const SaidNumber& b) { return a.first < b.first; });
    for (std::size_t n = 0; n < reading_.numbers.size(); ++n) {
      for (std::size_t i = reading_.numbers[n].first; i < reading_.numbers[n].last; ++i) {
        reading_.words[i].number = n;
      }
    }
  }

  void claim_notions(std::vector<Notion> found) {
    for (Notion& notion : found) {
      const bool open = std::none_of(notion.tokens.begin(), notion.tokens.end(),
                                     [&](auto i) { return reading_.words[i].number.has_value(); });
      if (!open) continue;
      for (std::size_t i : notion.tokens) reading_.words[i].notion = reading_.notions.size();
      reading_.notions.push_back(std::move(notion));
    }
  }

  bool inside_a_group(std::size_t i) const {
    const Word& word = reading_.words[i];
    if (word.number) return true;
    return word.notion && reading_.notions[*word.notion].tokens.size() > 1;
  }

  void split() {
    Clause clause;
    std::size_t sentence = 0;
    for (std::size_t i = 0; i < reading_.tokens.size(); ++i) {
      const Token* next = i + 1 < reading_.tokens.size() ? &reading_.tokens[i + 1] : nullptr;
      std::optional<Cut> cut = inside_a_group(i) ? std::nullopt : cut_at(reading_.tokens[i], next);
      if (cut && abbreviation(i)) cut.reset();
      reading_.words[i].load = load_of_token(i);
      if (other_side_denied(i)) close(clause, i, {Joint::but}, i, sentence);
      if (!cut) {
        if (i - clause.first < kLongestClause || inside_a_group(i)) continue;
        close(clause, i, {Joint::comma}, i, sentence);
        continue;
      }
      const bool nor = reading_.tokens[i].text == "nor";  // it also denies: it opens its clause
      reading_.words[i].separator = !nor;
      close(clause, i, *cut, nor ? i : i + 1, sentence);
    }
    close(clause, reading_.tokens.size(), {}, reading_.tokens.size(), sentence);
  }

  /// "on the left, not on the right" without its comma.
  bool other_side_denied(std::size_t i) const {
    if (reading_.tokens[i].text != "not" || i == 0 || !reading_.words[i - 1].notion) return false;
    return reading_.notions[*reading_.words[i - 1].notion].kind == Notion::Kind::side;
  }

  /// Ends the clause before token `at` and begins the next at `next`.
  void close(Clause& clause, std::size_t at, Cut cut, std::size_t next, std::size_t& sentence) {
    clause.last = at;
    clause.sentence = sentence;
    const bool empty = clause.first == clause.last;
    if (!empty) reading_.clauses.push_back(clause);
    Clause follows;
    follows.first = next;
    follows.joint = cut.joint;
    follows.alternative = cut.alternative;
    if (cut.joint == Joint::stop) {
      ++sentence;
    } else if (empty) {  // ", and": the stronger of the two stays
      if (clause.joint == Joint::stop) follows.joint = clause.joint;
      if (clause.joint == Joint::but) follows.joint = clause.joint;
    }
    clause = follows;
  }

  /// "approx." and the number of a list item ("1. ") end no sentence.
  bool abbreviation(std::size_t i) const {
    const Token& token = reading_.tokens[i];
    if (token.kind != Token::Kind::mark || token.text != "." || !token.glued || i == 0)
      return false;
    const std::string_view before = reading_.tokens[i - 1].text;
    return before == "approx" || before == "ca";
  }

  /// "No, it gapes", "no it does not": an answer to something, not a negation.
  void drop_answer(std::size_t c) {
    const Clause& clause = reading_.clauses[c];
    const std::size_t i = clause.first;
    if (reading_.tokens[i].text != "no" || !reading_.words[i].notion) return;
    if (reading_.notions[*reading_.words[i].notion].tokens.size() > 1) return;
    const bool alone = i + 1 == clause.last && c + 1 < reading_.clauses.size();
    const bool goes_on = i + 1 < clause.last && (is_pronoun(reading_.tokens[i + 1].text) ||
                                                 reading_.tokens[i + 1].text == "the" ||
                                                 reading_.tokens[i + 1].text == "there");
    if (!alone && !goes_on) return;
    reading_.notions[*reading_.words[i].notion].kind = Notion::Kind::noise;
    reading_.words[i].load = Load::light;
  }

  bool begins_line(std::size_t i) const { return i == 0 || reading_.tokens[i - 1].text == "\n"; }

  Load load_of_token(std::size_t i) const {
    const Token& token = reading_.tokens[i];
    if (token.kind == Token::Kind::mark) return Load::noise;
    if (token.kind == Token::Kind::word) {
      const bool noise = reading_.words[i].notion &&
                         reading_.notions[*reading_.words[i].notion].kind == Notion::Kind::noise;
      return noise ? std::max(Load::light, load_of(token.text)) : load_of(token.text);
    }
    if (i + 1 >= reading_.tokens.size()) return Load::content;
    const bool item = (begins_line(i) && reading_.tokens[i + 1].text == ".") ||
                      (reading_.tokens[i + 1].text == ")" && !in_bracket(i));
    return item ? Load::noise : Load::content;
  }

  bool in_bracket(std::size_t i) const {
    for (std::size_t back = 0; i > 0 && back < kLongestClause; ++back) {
      const std::string& text = reading_.tokens[--i].text;
      if (text == "(") return true;
      if (text == ")" || text == "\n") return false;
    }
    return false;
  }

  void find_runs(Clause& clause) {
    for (std::size_t i = clause.first; i < clause.last; ++i) {
      if (reading_.words[i].number && reading_.numbers[*reading_.words[i].number].has_unit)
        continue;
      for (Run& run : lexicon_.sequences().at(reading_.tokens, i, clause.last, stemmer_)) {
        clause.runs.push_back(std::move(run));
      }
    }
  }

  void find_places(Clause& clause) {
    std::set<std::size_t> other;  // inside a run of several words that names no place
    for (const Run& run : clause.runs) {
      const PlaceWord place = lexicon_.place_of_term(run.id);
      if (place == PlaceWord::none && run.tokens.size() > 1) {
        other.insert(run.tokens.begin(), run.tokens.end());
      }
    }
    for (std::size_t i = clause.first; i < clause.last; ++i) {
      if (other.contains(i) || reading_.words[i].number || in_posture(i)) continue;
      reading_.words[i].place = lexicon_.place_of_stem(reading_.tokens[i].stem);
    }
    for (const Run& run : clause.runs) {
      const PlaceWord place = lexicon_.place_of_term(run.id);
      for (std::size_t i : run.tokens) {
        if (place != PlaceWord::none && !in_posture(i)) {
          reading_.words[i].place = std::max(reading_.words[i].place, place);
        }
      }
    }
    clause.only_place = true;
    for (std::size_t i = clause.first; i < clause.last; ++i) {
      const Word& word = reading_.words[i];
      clause.has_place = clause.has_place || word.place == PlaceWord::place;
      if (word.place != PlaceWord::none || word.notion || !has_content(reading_, i)) continue;
      if (word.number && reading_.numbers[*word.number].has_unit) continue;
      clause.only_place = false;
    }
    clause.only_place = clause.only_place && clause.has_place;
  }

  bool in_posture(std::size_t i) const {
    const Word& word = reading_.words[i];
    return word.notion && reading_.notions[*word.notion].kind == Notion::Kind::posture;
  }

  const Lexicon& lexicon_;
  const Stemmer& stemmer_;
  Reading reading_;
};

}  // namespace

Reading cut_clauses(std::string_view text, const Lexicon& lexicon, const Notions& notions,
                    const Stemmer& stemmer) {
  return Reader(text, lexicon, notions, stemmer).read();
}

bool has_content(const Reading& reading, std::size_t token) {
  const Word& word = reading.words[token];
  if (word.separator || word.load == Load::noise) return false;
  if (reading.tokens[token].kind == Token::Kind::mark) return false;
  if (word.number) return true;
  const bool means = word.notion && reading.notions[*word.notion].kind != Notion::Kind::noise;
  return word.load == Load::content || means;
}

}  // namespace pinwright::knowledge
