#include "knowledge/words/amounts.h"

#include <cmath>
#include <map>
#include <optional>
#include <string>

#include "engine/base/units.h"
#include "knowledge/words/function_words.h"

namespace pinwright::knowledge {
namespace {

using Table = std::map<std::string_view, double>;

const Table& units() {
  static const Table table = {{"mm", 1.0},
                              {"mms", 1.0},
                              {"millimeter", 1.0},
                              {"millimeters", 1.0},
                              {"cm", 10.0},
                              {"cms", 10.0},
                              {"centimeter", 10.0},
                              {"centimeters", 10.0},
                              {"m", 1000.0},
                              {"meter", 1000.0},
                              {"meters", 1000.0},
                              {"in", kMmPerInch},
                              {"ins", kMmPerInch},
                              {"inch", kMmPerInch},
                              {"inches", kMmPerInch},
                              {"\"", kMmPerInch},
                              {"ft", 12.0 * kMmPerInch},
                              {"foot", 12.0 * kMmPerInch},
                              {"feet", 12.0 * kMmPerInch},
                              {"yard", 36.0 * kMmPerInch},
                              {"yards", 36.0 * kMmPerInch}};
  return table;
}

const Table& number_words() {
  static const Table table = {
      {"one", 1.0},     {"two", 2.0},     {"three", 3.0},    {"four", 4.0},    {"five", 5.0},
      {"six", 6.0},     {"seven", 7.0},   {"eight", 8.0},    {"nine", 9.0},    {"ten", 10.0},
      {"eleven", 11.0}, {"twelve", 12.0}, {"fifteen", 15.0}, {"twenty", 20.0}, {"thirty", 30.0},
      {"forty", 40.0},  {"fifty", 50.0}};
  return table;
}

const Table& parts() {
  static const Table table = {{"half", 0.5},          {"halves", 0.5},    {"third", 1.0 / 3.0},
                              {"thirds", 1.0 / 3.0},  {"quarter", 0.25},  {"quarters", 0.25},
                              {"eighth", 0.125},      {"eighths", 0.125}, {"sixteenth", 0.0625},
                              {"sixteenths", 0.0625}, {"tenth", 0.1},     {"tenths", 0.1}};
  return table;
}

std::optional<double> look_up(const Table& table, std::string_view word) {
  const auto found = table.find(word);
  if (found == table.end()) return std::nullopt;
  return found->second;
}

struct Quantity {
  double value = 0.0;
  std::size_t next = 0;
  bool in_words = false;
  bool needs_unit = false;  ///< "a" or "an" is a number only before a unit
};

struct Unit {
  double mm = 1.0;
  std::size_t next = 0;
};

class Finder {
 public:
  Finder(std::string_view text, const std::vector<Token>& tokens) : text_(text), tokens_(tokens) {}

  std::vector<SaidNumber> find() {
    std::vector<SaidNumber> found;
    for (std::size_t i = 0; i < tokens_.size();) {
      const std::optional<SaidNumber> number = at(i);
      if (number) found.push_back(*number);
      i = number ? number->last : i + 1;
    }
    return found;
  }

 private:
  bool word(std::size_t i, std::string_view text) const {
    return i < tokens_.size() && tokens_[i].kind == Token::Kind::word && tokens_[i].text == text;
  }
  bool mark(std::size_t i, std::string_view text) const {
    return i < tokens_.size() && tokens_[i].kind == Token::Kind::mark && tokens_[i].text == text;
  }
  bool number(std::size_t i) const {
    return i < tokens_.size() && tokens_[i].kind == Token::Kind::number;
  }
  bool glued(std::size_t i) const { return i < tokens_.size() && tokens_[i].glued; }
  bool is_word(std::size_t i) const {
    return i < tokens_.size() && tokens_[i].kind == Token::Kind::word;
  }

  /// A number with all that hangs on it: sign, range, unit, "and a half".
  std::optional<SaidNumber> at(std::size_t first) const {
    const bool dash = mark(first, "-") && !glued(first) && number(first + 1) && glued(first + 1);
    const bool negative = dash || word(first, "minus");
    const std::optional<Quantity> one = quantity(negative ? first + 1 : first);
    if (!one || part_of_word(first, one->next)) return std::nullopt;
    std::optional<Unit> its_unit = unit(one->next);
    if (one->needs_unit && !its_unit) return std::nullopt;
    SaidNumber said{first, one->next, its_unit.has_value(), one->in_words, one->value};
    if (its_unit) {
      said.last = its_unit->next;
      if (const std::optional<Quantity> more = and_part(said.last)) {
        said.value += more->value;
        said.last = more->next;
      }
      said.value *= its_unit->mm;
    }
    extend_to_range(first, *one, its_unit, said);
    if (negative) said.value = -said.value;
    return said;
  }

  /// B3, 2nd, 3x: the number is part of a word.
  bool part_of_word(std::size_t first, std::size_t next) const {
    if (!number(first)) return false;
    if (tokens_[first].glued && first > 0 && is_word(first - 1)) return true;
    return is_word(next) && glued(next) && !unit(next);
  }

  void extend_to_range(std::size_t first, const Quantity& one, const std::optional<Unit>& its_unit,
                       SaidNumber& said) const {
    const bool between = first > 0 && word(first - 1, "between") && word(said.last, "and");
    const bool joined = between || mark(said.last, "-") || mark(said.last, "~") ||
                        word(said.last, "to") || word(said.last, "or");
    if (!joined) return;
    const std::optional<Quantity> two = quantity(said.last + 1);
    if (!two || two->needs_unit || !(two->value > one.value)) return;
    const std::optional<Unit> unit_two = unit(two->next);
    if (its_unit && !unit_two) return;
    const double mm_one = unit_two ? (its_unit ? said.value : one.value * unit_two->mm) : one.value;
    const double mm_two = unit_two ? two->value * unit_two->mm : two->value;
    said.value = (mm_one + mm_two) / 2.0;
    said.least = mm_one;
    said.most = mm_two;
    said.has_unit = unit_two.has_value();
    said.last = unit_two ? unit_two->next : two->next;
  }

  std::optional<Quantity> quantity(std::size_t i) const {
    if (number(i)) return figures(i);
    return is_word(i) ? in_words(i) : std::nullopt;
  }

  /// D / E with nothing between, below 1 when `proper`.
  std::optional<Quantity> ratio(std::size_t i, bool proper) const {
    if (!number(i) || !mark(i + 1, "/") || !number(i + 2) || !glued(i + 1) || !glued(i + 2)) {
      return std::nullopt;
    }
    const double top = tokens_[i].value;
    const double bottom = tokens_[i + 2].value;
    if (!(bottom > 0.0) || (proper && !(top < bottom))) return std::nullopt;
    return Quantity{top / bottom, i + 3};
  }

  Quantity figures(std::size_t i) const {
    const double value = tokens_[i].value;
    if (tokens_[i].fraction) return {value, past_of_an(i + 1)};
    if (auto plain = ratio(i, false)) {
      plain->next = past_of_an(plain->next);
      return *plain;
    }
    if (number(i + 1) && tokens_[i + 1].fraction) return {value + tokens_[i + 1].value, i + 2};
    const bool whole = std::floor(value) == value;
    const bool hyphen = mark(i + 1, "-") && glued(i + 1) && glued(i + 2);
    if (const auto part = ratio(hyphen ? i + 2 : i + 1, true); part && whole) {
      return {value + part->value, part->next};
    }
    if (const auto part = and_part(i + 1)) return {value + part->value, part->next};
    return {value, i + 1};
  }

  /// "and a half", "and three quarters", "and 1/2".
  std::optional<Quantity> and_part(std::size_t i) const {
    if (!word(i, "and")) return std::nullopt;
    if (number(i + 1)) {
      if (tokens_[i + 1].fraction) return Quantity{tokens_[i + 1].value, i + 2};
      return ratio(i + 1, true);
    }
    return part(i + 1, false);
  }

  /// "half", "a quarter", "three eighths"; "of an" and "an" after it are passed when asked.
  std::optional<Quantity> part(std::size_t i, bool pass_article) const {
    double times = 1.0;
    std::size_t next = i;
    if (word(i, "a") || word(i, "an")) {
      ++next;
    } else if (is_word(i)) {
      if (const auto many = look_up(number_words(), tokens_[i].text)) {
        times = *many;
        ++next;
      }
    }
    if (!is_word(next)) return std::nullopt;
    const std::optional<double> share = look_up(parts(), tokens_[next].text);
    if (!share) return std::nullopt;
    ++next;
    return Quantity{times * *share, pass_article ? past_of_an(next) : next, true};
  }

  /// Past "of an" or "an" where a unit follows.
  std::size_t past_of_an(std::size_t i) const {
    std::size_t past = i;
    if (word(past, "of")) ++past;
    if (word(past, "a") || word(past, "an")) ++past;
    return past > i && unit(past) ? past : i;
  }

  std::optional<Quantity> in_words(std::size_t i) const {
    if (const auto share = part(i, true)) return share;
    if ((word(i, "a") && word(i + 1, "couple"))) {
      return Quantity{2.0, word(i + 2, "of") ? i + 3 : i + 2, true, true};
    }
    if (word(i, "a") || word(i, "an")) {
      const bool good = word(i + 1, "good") || word(i + 1, "full") || word(i + 1, "whole");
      return Quantity{1.0, good ? i + 2 : i + 1, true, true};
    }
    const std::optional<double> value = look_up(number_words(), tokens_[i].text);
    if (!value) return std::nullopt;
    if (const auto more = and_part(i + 1)) return Quantity{*value + more->value, more->next, true};
    return Quantity{*value, i + 1, true};
  }

  std::optional<Unit> unit(std::size_t i) const {
    if (mark(i, "-") && glued(i) && is_word(i + 1) && glued(i + 1)) ++i;  // 2-cm
    if (i >= tokens_.size() || tokens_[i].kind == Token::Kind::number) return std::nullopt;
    const std::optional<double> mm = look_up(units(), tokens_[i].text);
    if (!mm) return std::nullopt;
    if (tokens_[i].text == "in" && preposition(i)) return std::nullopt;
    return Unit{*mm, past_abbreviation(i)};
  }

  /// "in the front", "in my size", "in all": not inches.
  bool preposition(std::size_t i) const {
    if (glued(i) || !is_word(i + 1)) return false;
    static const Table not_after = {{"all", 0},    {"total", 0}, {"front", 0}, {"back", 0},
                                    {"length", 0}, {"width", 0}, {"size", 0},  {"places", 0}};
    const std::string_view next = tokens_[i + 1].text;
    const bool verb = next == "is" || next == "are" || next == "of";
    return (load_of(next) == Load::noise && !verb && next != "and" && next != "or") ||
           not_after.contains(next);
  }

  /// "in." within a sentence: the point belongs to the abbreviation.
  std::size_t past_abbreviation(std::size_t i) const {
    if (tokens_[i].text.size() > 3 || !mark(i + 1, ".") || !glued(i + 1)) return i + 1;
    if (i + 2 >= tokens_.size()) return i + 1;
    const char next = text_[tokens_[i + 2].begin];
    return next >= 'a' && next <= 'z' ? i + 2 : i + 1;
  }

  std::string_view text_;
  const std::vector<Token>& tokens_;
};

}  // namespace

std::vector<SaidNumber> find_numbers(std::string_view text, const std::vector<Token>& tokens) {
  return Finder(text, tokens).find();
}

}  // namespace pinwright::knowledge
