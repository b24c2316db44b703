#include "knowledge/words/text.h"

#include <algorithm>
#include <array>
#include <cstdlib>
#include <optional>
#include <utility>

#include "knowledge/words/spelling.h"
#include "knowledge/words/utf8.h"

namespace pinwright::knowledge {
namespace {

constexpr std::size_t kMostBytes = 64 * 1024;

bool digit(char32_t c) { return c >= U'0' && c <= U'9'; }
bool space(char32_t c) {
  return c == U' ' || c == U'\t' || c == U'\r' || c == U'\u00a0' || c == U'\u2009' ||
         c == U'\u202f' || c == U'\u3000' || c == U'\ufeff';
}
bool apostrophe(char32_t c) { return c == U'\'' || c == U'\u2019' || c == U'\u2018'; }

double fraction_of(char32_t c) {
  switch (c) {
    case U'¼':
      return 0.25;
    case U'½':
      return 0.5;
    case U'¾':
      return 0.75;
    case U'⅓':
      return 1.0 / 3.0;
    case U'⅔':
      return 2.0 / 3.0;
    case U'⅛':
      return 0.125;
    case U'⅜':
      return 0.375;
    case U'⅝':
      return 0.625;
    case U'⅞':
      return 0.875;
    default:
      return 0.0;
  }
}

/// Marks that mean something later, folded to one byte each; 0 for what is part of a word.
char mark_of(char32_t c) {
  switch (c) {
    case U'\u2013':
    case U'\u2014':
    case U'\u2015':
      return '~';  // dashes
    case U'\u2212':
    case U'\u2010':
    case U'\u2011':
      return '-';
    case U'\u2033':
    case U'\u201d':
      return '"';
    case U'\u201c':
    case U'\u00ab':
    case U'\u00bb':
    case U'\u201e':
      return '`';
    case U'\u2032':
      return '\'';
    case U'\u2026':
      return '.';
    case U'\u2044':
      return '/';
    case U'\u2022':
    case U'\u00b7':
      return ';';
    case U'\n':
    case U'\u2028':
    case U'\u2029':
    case U'\u0085':
      return '\n';
    default:
      break;
  }
  if (c >= 128) return 0;
  const char byte = static_cast<char>(c);
  const bool word = (byte >= 'a' && byte <= 'z') || (byte >= 'A' && byte <= 'Z') || digit(c);
  return word ? '\0' : byte;
}

struct Char {
  char32_t value = 0;
  std::size_t begin = 0;
  std::size_t end = 0;
};

using Pair = std::pair<std::string_view, std::string_view>;

/// Contractions that are written without their apostrophe.
constexpr auto kBare = std::to_array<Pair>({
    {"arent", "are"},
    {"cannot", "can"},
    {"cant", "can"},
    {"couldnt", "could"},
    {"didnt", "did"},
    {"doesnt", "does"},
    {"dont", "do"},
    {"hasnt", "has"},
    {"havent", "have"},
    {"isnt", "is"},
    {"shouldnt", "should"},
    {"wasnt", "was"},
    {"werent", "were"},
    {"wont", "will"},
    {"wouldnt", "would"},
});

class Cutter {
 public:
  explicit Cutter(std::string_view text) : text_(text) {
    for (std::size_t at = 0; at < text.size();) {
      const std::size_t begin = at;
      const char32_t c = next_code_point(text, at).value_or(U' ');
      chars_.push_back({c, begin, at});
    }
  }

  std::vector<Token> cut() {
    while (at_ < chars_.size()) {
      const char32_t c = chars_[at_].value;
      if (space(c)) {
        ++at_;
      } else if (digit(c) || leading_dot()) {
        number();
      } else if (fraction_of(c) > 0.0) {
        push(Token::Kind::number, at_, at_ + 1, "");
        out_.back().value = fraction_of(c);
        out_.back().fraction = true;
        ++at_;
      } else if (const char mark = mark_of(c); mark != '\0') {
        this->mark(mark);
      } else {
        word();
      }
    }
    return std::move(out_);
  }

 private:
  char32_t peek(std::size_t i) const { return i < chars_.size() ? chars_[i].value : U' '; }

  bool letter(std::size_t i) const {
    const char32_t c = peek(i);
    return !space(c) && !digit(c) && !apostrophe(c) && fraction_of(c) == 0.0 && mark_of(c) == '\0';
  }

  bool leading_dot() const {
    return peek(at_) == U'.' && digit(peek(at_ + 1)) && (at_ == 0 || !digit(peek(at_ - 1)));
  }

  void push(Token::Kind kind, std::size_t first, std::size_t last, std::string text) {
    Token token;
    token.kind = kind;
    token.begin = chars_[first].begin;
    token.end = chars_[last - 1].end;
    token.glued = first > 0 && !space(chars_[first - 1].value) && chars_[first - 1].value != U'\n';
    token.text = std::move(text);
    out_.push_back(std::move(token));
  }

  void push_word(std::size_t first, std::size_t last, std::string_view text) {
    push(Token::Kind::word, first, last, one_spelling(std::string(text)));
    out_.back().stem = stemmer_.stem(out_.back().text);
  }

  /// Past digits with one kind of separator between them; how many runs of digits there were.
  std::size_t runs_of_digits(std::size_t& i, char32_t separator) const {
    std::size_t runs = 0;
    while (digit(peek(i))) {
      while (digit(peek(i))) ++i;
      ++runs;
      if (peek(i) != separator || !digit(peek(i + 1))) break;
      ++i;
    }
    return runs;
  }

  /// Dates, times and percentages: words of their own. False when it is none of them.
  bool figure_word() {
    for (const char32_t separator : {U'.', U'/', U'-', U':'}) {
      std::size_t end = at_;
      const std::size_t runs = runs_of_digits(end, separator);
      if (runs < 3 && !(separator == U':' && runs == 2)) continue;
      push_word(at_, end, text_.substr(chars_[at_].begin, chars_[end - 1].end - chars_[at_].begin));
      at_ = end;
      return true;
    }
    return false;
  }

  void number() {
    if (figure_word()) return;
    const std::size_t first = at_;
    std::string digits;
    while (digit(peek(at_))) digits += static_cast<char>(peek(at_++));
    const char32_t point = peek(at_);
    if ((point == U'.' || point == U',') && digit(peek(at_ + 1))) {
      std::size_t end = at_ + 1;
      std::string rest;
      while (digit(peek(end))) rest += static_cast<char>(peek(end++));
      const bool thousands = point == U',' && rest.size() == 3 && !digits.empty();
      digits += (thousands ? "" : ".") + rest;
      at_ = end;
    }
    std::size_t end = at_;
    while (space(peek(end)) && end < chars_.size()) ++end;
    if (peek(end) == U'%') {
      push_word(first, end + 1, digits + "%");
      at_ = end + 1;
      return;
    }
    push(Token::Kind::number, first, at_, "");
    out_.back().value = std::strtod(digits.c_str(), nullptr);
  }

  void mark(char mark) {
    const bool after_digit = at_ > 0 && (digit(peek(at_ - 1)) || fraction_of(peek(at_ - 1)) > 0.0);
    if (mark == '`') {
      ++quotes_;
    } else if (mark == '\'' && peek(at_ + 1) == peek(at_) && after_digit) {
      push(Token::Kind::mark, at_, at_ + 2, "\"");  // two primes are inches
      ++at_;
    } else if (mark == '"') {
      const bool closes = quotes_ > 0;
      if (after_digit && (!closes || another_quote())) {
        push(Token::Kind::mark, at_, at_ + 1, "\"");
      } else {
        quotes_ += closes ? -1 : 1;
      }
    } else if (mark == '-' && at_ > 0 && letter(at_ - 1) && letter(at_ + 1)) {
      // a hyphen inside a word only parts it
    } else if (mark == '-' && peek(at_ + 1) == U'-') {
      push(Token::Kind::mark, at_, at_ + 1, "~");
    } else if (mark != '\'') {
      push(Token::Kind::mark, at_, at_ + 1, std::string(1, mark));
    }
    ++at_;
  }

  /// Whether a quotation mark follows before the line ends, within the next few words.
  bool another_quote() const {
    for (std::size_t i = at_ + 1; i < std::min(chars_.size(), at_ + 200); ++i) {
      if (peek(i) == U'\n') return false;
      if (peek(i) == U'"' || peek(i) == U'\u201d') return true;
    }
    return false;
  }

  void word() {
    const std::size_t first = at_;
    while (letter(at_)) ++at_;
    const std::size_t stem_end = at_;
    std::string text =
        lower(text_.substr(chars_[first].begin, chars_[stem_end - 1].end - chars_[first].begin));
    std::string tail;
    if (apostrophe(peek(at_)) && at_ < chars_.size() && letter(at_ + 1)) {
      std::size_t end = at_ + 1;
      while (letter(end) && end < chars_.size()) ++end;
      tail =
          lower(text_.substr(chars_[at_ + 1].begin, chars_[end - 1].end - chars_[at_ + 1].begin));
      at_ = end;
    }
    if (tail == "t" && text.size() > 1 && text.back() == 'n') {
      text.pop_back();
      negated(first, text == "wo" ? "will" : text == "ca" ? "can" : text);
      return;
    }
    for (const auto& [bare, verb] : kBare) {
      if (bare == text && tail.empty()) return negated(first, verb);
    }
    push_word(first, at_, text);
    const bool dropped = tail.empty() || tail == "s" || tail == "m" || tail == "ve" ||
                         tail == "re" || tail == "ll" || tail == "d";
    if (!dropped) push_word(first, at_, tail);
  }

  void negated(std::size_t first, std::string_view verb) {
    push_word(first, at_, verb);
    push_word(first, at_, "not");
  }

  std::string_view text_;
  Stemmer stemmer_;
  std::vector<Char> chars_;
  std::vector<Token> out_;
  std::size_t at_ = 0;
  int quotes_ = 0;
};

}  // namespace

Problems check_text(std::string_view text) {
  if (text.size() > kMostBytes) {
    return {{"words-too-long", "words",
             "The text has " + std::to_string(text.size()) + " bytes; 65536 are read.",
             "Tell what was seen in fewer words, or one region of the body at a time."}};
  }
  bool says_something = false;
  for (std::size_t at = 0; at < text.size();) {
    const std::size_t begin = at;
    const std::optional<char32_t> c = next_code_point(text, at);
    const bool control = c && (*c < 32 || *c == 127) && *c != U'\n' && *c != U'\r' && *c != U'\t';
    if (!c || control) {
      return {{"words-not-text", "words, byte " + std::to_string(begin),
               c ? "There is a control character in the text." : "The text is not valid UTF-8.",
               "Send plain text in UTF-8."}};
    }
    says_something = says_something || (!space(*c) && mark_of(*c) == '\0');
  }
  if (says_something) return {};
  return {{"words-empty", "words", "There is no word in the text.",
           "Say what was seen, for instance: the front neckline gapes by 2 cm."}};
}

std::vector<Token> tokens(std::string_view text) { return Cutter(text).cut(); }

}  // namespace pinwright::knowledge
