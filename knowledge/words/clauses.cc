#include "knowledge/words/clauses.h"

#include <algorithm>
#include <set>

namespace pinwright::knowledge {
namespace {

constexpr std::size_t kLongestClause = 64;

/// The token's notion says something of a finding.
bool means(const Reading& reading, std::size_t token) {
  const std::optional<std::size_t> notion = reading.words[token].notion;
  if (!notion) return false;
  const Notion::Kind kind = reading.notions[*notion].kind;
  return kind != Notion::Kind::noise && kind != Notion::Kind::hedge;
}

struct Cut {
  Joint joint = Joint::comma;
  bool alternative = false;
  bool excepted = false;
  std::size_t words = 1;  ///< how many tokens the cut takes
};

/// "apart from", "except for": how many tokens, 0 for none.
std::size_t excepts_at(const std::vector<Token>& tokens, std::size_t i) {
  const auto is = [&](std::size_t k, std::string_view text) {
    return k < tokens.size() && tokens[k].kind == Token::Kind::word && tokens[k].text == text;
  };
  if (is(i, "except") || is(i, "excepting") || is(i, "bar")) return is(i + 1, "for") ? 2 : 1;
  if ((is(i, "apart") || is(i, "aside")) && is(i + 1, "from")) return 2;
  if (is(i, "other") && is(i + 1, "than")) return 2;
  if (is(i, "save") && is(i + 1, "for")) return 2;
  if (is(i, "with") && is(i + 1, "the") && is(i + 2, "exception") && is(i + 3, "of")) return 4;
  if (is(i, "but") && is(i + 1, "for")) return 2;
  return 0;
}

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
                                                 "whereas", "however", "yet"};
  if (but.contains(token.text)) return Cut{Joint::but};
  return std::nullopt;
}

class Reader {
 public:
  Reader(std::string_view text, const Lexicon& lexicon, const Notions& notions,
         const SpellingMender& spelling, const Stemmer& stemmer)
      : lexicon_(lexicon), stemmer_(stemmer) {
    reading_.text = text;
    reading_.tokens = tokens(text);
    spelling.mend(reading_.tokens, stemmer);
    reading_.words.resize(reading_.tokens.size());
    claim_numbers(true);
    claim_notions(notions.find(reading_.tokens, stemmer));
    claim_numbers(false);
    order_numbers();
  }

  Reading read() {
    split();
    for (std::size_t c = 0; c < reading_.clauses.size(); ++c) drop_answer(c);
    mark_foreign();
    for (Clause& clause : reading_.clauses) {
      if (clause.foreign) continue;
      find_runs(clause);
      find_places(clause);
    }
    mark_tests();
    mark_measuring();
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
      if (const std::size_t words = excepts_at(reading_.tokens, i);
          words > 0 && !inside_a_group(i)) {
        cut = Cut{Joint::but, false, true, words};
      } else if (!cut && main_clause_of_exception(clause, i)) {
        close(clause, i, {Joint::comma}, i, sentence);
      }
      reading_.words[i].load = load_of_token(i);
      if (is_filler(i)) {
        reading_.words[i].filler = true;
        if (!reading_.words[i].notion) reading_.words[i].load = Load::light;
      }
      if (other_side_denied(i)) close(clause, i, {Joint::but}, i, sentence);
      if (!cut) {
        if (i - clause.first < kLongestClause || inside_a_group(i)) continue;
        close(clause, i, {Joint::comma}, i, sentence);
        continue;
      }
      const bool nor = reading_.tokens[i].text == "nor";  // it also denies: it opens its clause
      reading_.words[i].separator = !nor;
      close(clause, i, *cut, nor ? i : i + cut->words, sentence);
      for (; cut->words > 1; --cut->words) {
        ++i;
        reading_.words[i].load = Load::noise;
        reading_.words[i].separator = true;
      }
    }
    close(clause, reading_.tokens.size(), {}, reading_.tokens.size(), sentence);
  }

  /// "on the left, not on the right" without its comma.
  bool other_side_denied(std::size_t i) const {
    if (reading_.tokens[i].text != "not" || i == 0 || !reading_.words[i - 1].notion) return false;
    return reading_.notions[*reading_.words[i - 1].notion].kind == Notion::Kind::side;
  }

  /// "Apart from the neckline it fits": where the exception opens the sentence, what it is taken
  /// from begins at its pronoun.
  bool main_clause_of_exception(const Clause& clause, std::size_t i) const {
    if (!clause.excepted || i <= clause.first) return false;
    const bool opens =
        reading_.clauses.empty() || reading_.clauses.back().sentence != clause.sentence;
    static const std::set<std::string_view> words = {"it", "everything", "all", "they", "i"};
    return opens && words.contains(reading_.tokens[i].text) &&
           reading_.tokens[i - 1].text != "of" && reading_.tokens[i - 1].text != "from";
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
    follows.excepted = cut.excepted;
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
      const bool noise = reading_.words[i].notion && !means(reading_, i);
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

  /// "right in the middle", "well past", "a good inch": not that it is right or well or good.
  bool is_filler(std::size_t i) const {
    static const std::set<std::string_view> where = {
        "in",      "at",     "under",  "over",   "above",   "below", "through", "up",      "down",
        "across",  "into",   "to",     "round",  "around",  "by",    "where",   "on",      "from",
        "past",    "behind", "off",    "after",  "before",  "along", "beside",  "between", "next",
        "against", "away",   "beyond", "inside", "outside", "out",   "onto",    "near"};
    static const std::set<std::string_view> before = {"just", "not", "is",    "are",   "looks",
                                                      "fits", "all", "about", "quite", "seems"};
    static const std::set<std::string_view> degree = {"short", "long", "low",  "high", "wide",
                                                      "too",   "big",  "deep", "small"};
    const std::string& word = reading_.tokens[i].text;
    const std::string_view next =
        i + 1 < reading_.tokens.size() ? std::string_view(reading_.tokens[i + 1].text) : "";
    const std::string_view last = i > 0 ? std::string_view(reading_.tokens[i - 1].text) : "";
    if (word == "right") {
      if (begins_line_or_sentence(i) && next == ",") return true;
      if (before.contains(last)) return false;
      return where.contains(next) || (i + 1 < reading_.tokens.size() && names_side_of(i + 1));
    }
    if (word == "well") return where.contains(next) || degree.contains(next);
    if (word == "great") return degree.contains(next);
    return word == "good" && last == "a";
  }

  /// "right shoulder", "right hand": a side, not that it is right.
  bool names_side_of(std::size_t i) const {
    const std::string& word = reading_.tokens[i].text;
    return word == "side" || word == "hand" || word == "one" || word == "arm" || word == "hip" ||
           lexicon_.place_of_stem(reading_.tokens[i].stem) == PlaceWord::place;
  }

  bool begins_line_or_sentence(std::size_t i) const {
    return i == 0 || reading_.tokens[i - 1].kind == Token::Kind::mark;
  }

  void find_runs(Clause& clause) {
    for (std::size_t i = clause.first; i < clause.last; ++i) {
      if (reading_.words[i].filler) continue;
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
      if (other.contains(i) || reading_.words[i].number || no_place(i)) continue;
      reading_.words[i].place = lexicon_.place_of_stem(reading_.tokens[i].stem);
    }
    for (const Run& run : clause.runs) {
      const PlaceWord place = lexicon_.place_of_term(run.id);
      for (std::size_t i : run.tokens) {
        if (place != PlaceWord::none && !no_place(i)) {
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

  /// The arm of "arms raised" is no place of the garment; the elbow of "elbow bent" is.
  bool no_place(std::size_t i) const { return in_posture(i) && reading_.tokens[i].stem == "arm"; }

  void mark_measuring() {
    static const std::set<std::string_view> stems = {"pinch", "pin", "tuck"};
    for (const SaidNumber& said : reading_.numbers) {
      if (!said.has_unit) continue;
      for (std::size_t back = 1; back <= 3 && back <= said.first; ++back) {
        const std::size_t i = said.first - back;
        if (stems.contains(reading_.tokens[i].stem)) reading_.words[i].measuring = true;
      }
    }
  }

  /// A sentence with two small words of other languages and more of them than English ones.
  void mark_foreign() {
    for (std::size_t c = 0; c < reading_.clauses.size();) {
      std::size_t last = c;
      std::size_t foreign = 0;
      std::size_t english = 0;
      for (; last < reading_.clauses.size() &&
             reading_.clauses[last].sentence == reading_.clauses[c].sentence;
           ++last) {
        for (std::size_t i = reading_.clauses[last].first; i < reading_.clauses[last].last; ++i) {
          if (is_foreign(reading_.tokens[i].text)) ++foreign;
          if (is_plainly_english(reading_.tokens[i].text)) ++english;
        }
      }
      for (; c < last; ++c) reading_.clauses[c].foreign = foreign >= 2 && foreign > english;
    }
  }

  /// A clause is told of a test when it, or one before it in the sentence, says that something was
  /// pinned, lifted, let out or put under to see what comes of it. A posture is no test.
  void mark_tests() {
    for (std::size_t c = 0; c < reading_.clauses.size(); ++c) {
      Clause& clause = reading_.clauses[c];
      clause.test = tells_test(clause);
      clause.tried = clause.test || tells_doing(clause);
      if (c == 0 || reading_.clauses[c - 1].sentence != clause.sentence) continue;
      if (clause.joint == Joint::but) continue;
      clause.test = clause.test || reading_.clauses[c - 1].test;
      clause.tried = clause.tried || reading_.clauses[c - 1].tried;
    }
  }

  bool tells_test(const Clause& clause) {
    static const std::set<std::string_view> when = {"when", "if",    "once",     "after", "by",
                                                    "with", "while", "whenever", "soon",  "until"};
    bool asked = false;
    for (std::size_t i = clause.first; i < clause.last; ++i) {
      const Token& token = reading_.tokens[i];
      asked = asked || when.contains(token.text);
      const bool ing = token.text.size() > 5 && token.text.ends_with("ing");
      if ((!asked && !(ing && i == clause.first)) || in_posture(i)) continue;
      if (!is_test_stem(token.stem)) continue;
      // "with open sleeves", "by the fold": only what somebody does is a test.
      const bool done = ing || (i > clause.first && someone(i - 1)) || token.text.ends_with("ed") ||
                        token.text == "let" || token.text == "pad";
      if (!done) continue;
      reading_.words[i].doing = true;
      return true;
    }
    return false;
  }

  /// "Pinch the tips", "we let go the seam", but not "I can pinch 2 cm".
  bool tells_doing(const Clause& clause) {
    bool begins = clause.joint != Joint::with;  // not "does not gape or PULL"
    for (std::size_t i = clause.first; i < clause.last; ++i) {
      const Token& token = reading_.tokens[i];
      if (token.kind == Token::Kind::word && is_test_stem(token.stem) && !in_posture(i) &&
          ((i > clause.first && someone(i - 1)) || (begins && !token.text.ends_with("s")))) {
        reading_.words[i].doing = true;
        return true;
      }
      begins = begins && reading_.words[i].load != Load::content && token.text != "can" &&
               token.text != "could" && token.text != "the" && token.text != "a";
    }
    return false;
  }

  bool someone(std::size_t i) const {
    static const std::set<std::string_view> words = {
        "i", "you", "we", "she", "he", "they", "to", "just", "someone", "mum", "friend"};
    return words.contains(reading_.tokens[i].text);
  }

  const Lexicon& lexicon_;
  const Stemmer& stemmer_;
  Reading reading_;
};

}  // namespace

Reading cut_clauses(std::string_view text, const Lexicon& lexicon, const Notions& notions,
                    const SpellingMender& spelling, const Stemmer& stemmer) {
  return Reader(text, lexicon, notions, spelling, stemmer).read();
}

bool has_content(const Reading& reading, std::size_t token) {
  const Word& word = reading.words[token];
  if (word.separator || word.load == Load::noise) return false;
  if (reading.tokens[token].kind == Token::Kind::mark) return false;
  if (word.number) return true;
  return word.load == Load::content || means(reading, token);
}

}  // namespace pinwright::knowledge
