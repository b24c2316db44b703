#include "knowledge/words/phrases.h"

#include <algorithm>
#include <map>
#include <optional>
#include <set>
#include <utility>

#include "knowledge/words/spelling.h"

namespace pinwright::knowledge {
namespace {

Problem syntax(std::string_view phrase, const std::string& what) {
  return {
      "phrase-syntax", std::string(phrase), what,
      "Write words, <class>, ( ... ) for what may be missing, and = in front for a fixed order."};
}

/// One pass over the phrase; every mark is a step.
class Parser {
 public:
  explicit Parser(std::string_view text) : text_(text) {}

  Result<Phrase> parse() {
    while (at_ < text_.size() && !problem_) step();
    if (!problem_ && inside_) problem_ = syntax(text_, "A bracket is not closed.");
    if (problem_) return *problem_;
    const bool says = std::any_of(phrase_.items.begin(), phrase_.items.end(), [](const auto& item) {
      return item.kind != PhraseItem::Kind::gap && item.option == 0;
    });
    if (!says) {
      return Problem{"phrase-empty", std::string(text_), "Nothing in the phrase must be said.",
                     "Write at least one word outside of brackets."};
    }
    return phrase_;
  }

 private:
  void step() {
    const char c = text_[at_];
    if (c == ' ' || c == '\t' || c == '-' || c == ',') {
      ++at_;
    } else if (c == '=' && phrase_.items.empty() && !phrase_.ordered && !inside_) {
      phrase_.ordered = true;
      ++at_;
    } else if (c == '(' || c == ')') {
      bracket(c == '(');
    } else if (text_.substr(at_, 3) == "...") {
      add(PhraseItem::Kind::gap, "");
      at_ += 3;
    } else if (c == '<') {
      word_class();
    } else if (word_byte(c)) {
      word();
    } else {
      problem_ = syntax(text_, std::string("The mark '") + c + "' means nothing here.");
    }
  }

  void bracket(bool opens) {
    if (opens == inside_) {
      problem_ = syntax(text_, opens ? "A bracket stands inside a bracket."
                                     : "A bracket closes that was not opened.");
    }
    inside_ = opens;
    if (opens) ++options_;
    ++at_;
  }

  void word_class() {
    const std::size_t end = text_.find('>', at_);
    const std::string_view id =
        end == std::string_view::npos ? "" : text_.substr(at_ + 1, end - at_ - 1);
    if (id.empty() || id.find_first_of(" <(") != std::string_view::npos) {
      problem_ = syntax(text_, "A class is written <id>, with '>' at its end.");
      return;
    }
    add(PhraseItem::Kind::word_class, std::string(id));
    at_ = end + 1;
  }

  void word() {
    const std::size_t begin = at_;
    while (at_ < text_.size() && word_byte(text_[at_])) ++at_;
    add(PhraseItem::Kind::word, lower(text_.substr(begin, at_ - begin)));
  }

  static bool word_byte(char c) {
    return (c >= 'a' && c <= 'z') || (c >= 'A' && c <= 'Z') || (c >= '0' && c <= '9') ||
           c == '\'' || static_cast<unsigned char>(c) >= 0x80;
  }

  void add(PhraseItem::Kind kind, std::string text) {
    phrase_.items.push_back({kind, std::move(text), inside_ ? options_ : 0});
  }

  std::string_view text_;
  std::size_t at_ = 0;
  bool inside_ = false;
  int options_ = 0;
  Phrase phrase_;
  std::optional<Problem> problem_;
};

std::string at(const Place& place) {
  return place.file.empty() ? "knowledge" : place.file + ":" + std::to_string(place.line);
}

/// What makes two phrases the same: their items (as a set when order does not count).
std::string key(const Phrase& phrase) {
  std::vector<std::string> parts;
  for (const PhraseItem& item : phrase.items) {
    const std::string mark = item.kind == PhraseItem::Kind::word_class ? "<" : "";
    parts.push_back(mark + item.text + (item.option > 0 ? "?" : ""));
  }
  if (!phrase.ordered) std::sort(parts.begin(), parts.end());
  std::string joined = phrase.ordered ? "=" : "";
  for (const std::string& part : parts) joined += " " + part;
  return joined;
}

class Checker {
 public:
  explicit Checker(const Knowledge& k) : k_(k) {
    for (const WordClass& words : k.words) classes_.insert(words.id);
  }

  Problems check() {
    for (const WordClass& words : k_.words) {
      if (!words.words.empty()) continue;
      problems_.push_back({"class-empty", at(words.place.of("words")),
                           "Class " + words.id + " has no words.", "List its words, or drop it."});
    }
    for (const Sign& sign : k_.signs) {
      for (std::size_t i = 0; i < sign.phrases.size(); ++i)
        check_phrase(sign, sign.phrases[i], true,
                     at(sign.place.of("phrases/" + std::to_string(i))));
      for (std::size_t i = 0; i < sign.denied_by.size(); ++i)
        check_phrase(sign, sign.denied_by[i], false,
                     at(sign.place.of("denied_by/" + std::to_string(i))));
    }
    return std::move(problems_);
  }

 private:
  void check_phrase(const Sign& sign, const std::string& text, bool claims,
                    const std::string& place) {
    const Result<Phrase> phrase = parse_phrase(text);
    if (!phrase) {
      for (Problem problem : phrase.problems()) {
        problem.what = "Sign " + sign.id + ", phrase \"" + text + "\": " + problem.what;
        problem.place = place;
        problems_.push_back(std::move(problem));
      }
      return;
    }
    for (const PhraseItem& item : phrase->items) {
      if (item.kind != PhraseItem::Kind::word_class || classes_.contains(item.text)) continue;
      problems_.push_back(
          {"phrase-class-unknown", place,
           "Sign " + sign.id + ", phrase \"" + text + "\": there is no class <" + item.text + ">.",
           "Name a class of the words files, or add this one there."});
    }
    if (!claims) return;
    const auto [first, fresh] = claimed_.emplace(key(*phrase), sign.id);
    if (fresh || first->second == sign.id) return;
    problems_.push_back(
        {"phrase-twice", place,
         "Phrase \"" + text + "\" stands with sign " + sign.id + " and with " + first->second + ".",
         "Let one sign have it, or add the word that tells them apart."});
  }

  const Knowledge& k_;
  std::set<std::string> classes_;
  std::map<std::string, std::string> claimed_;
  Problems problems_;
};

}  // namespace

Result<Phrase> parse_phrase(std::string_view text) { return Parser(text).parse(); }

Problems check_phrases(const Knowledge& k) { return Checker(k).check(); }

}  // namespace pinwright::knowledge
