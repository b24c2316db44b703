#pragma once
// Which words are ordinary English, British or American.

#include <memory>
#include <string>
#include <string_view>

namespace pinwright::knowledge {

/// Hunspell with Debian's dictionaries (hunspell-en-us, hunspell-en-gb). They are read at the first
/// question and kept; is_word() may be called from several threads.
class Dictionary {
 public:
  Dictionary();
  ~Dictionary();
  Dictionary(Dictionary&&) noexcept;
  Dictionary& operator=(Dictionary&&) noexcept;

  /// `word` in lower case; names are known too (tuesday). Without the dictionaries' files every
  /// word is taken for one, so that nothing is corrected that might be right.
  bool is_word(std::string_view word) const;

 private:
  struct Books;
  std::unique_ptr<Books> books_;
};

}  // namespace pinwright::knowledge
