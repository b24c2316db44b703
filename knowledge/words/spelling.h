#pragma once
// One spelling and one stem for all forms of a word.

#include <memory>
#include <string>
#include <string_view>

struct sb_stemmer;

namespace pinwright::knowledge {

/// ASCII letters in lower case; other bytes as they are.
std::string lower(std::string_view word);

/// British and American spellings, names of the armhole, irregular past forms (stood: stand) and
/// the comparatives that fit is told in (tighter: tight) become one word. `word` in lower case.
std::string one_spelling(std::string word);

/// Snowball English (M. F. Porter, snowballstem.org) of a word in one spelling. Not to be shared
/// between threads.
class Stemmer {
 public:
  Stemmer();
  std::string stem(std::string_view word) const;

 private:
  struct Free {
    void operator()(sb_stemmer* stemmer) const;
  };
  std::unique_ptr<sb_stemmer, Free> stemmer_;
};

}  // namespace pinwright::knowledge
