#include "knowledge/words/dictionary.h"

#include <sys/stat.h>

#include <hunspell/hunspell.hxx>
#include <mutex>
#include <vector>

namespace pinwright::knowledge {
namespace {

bool readable(const std::string& path) {
  struct stat info {};
  return stat(path.c_str(), &info) == 0;
}

}  // namespace

struct Dictionary::Books {
  std::once_flag read;
  std::mutex one_at_a_time;  // Hunspell's look-ups are not const
  std::vector<std::unique_ptr<Hunspell>> books;

  void open() {
    for (const char* language : {"en_US", "en_GB"}) {
      const std::string path = std::string(PINWRIGHT_DICTIONARIES "/") + language;
      if (!readable(path + ".aff") || !readable(path + ".dic")) continue;
      books.push_back(std::make_unique<Hunspell>((path + ".aff").c_str(), (path + ".dic").c_str()));
    }
  }
};

Dictionary::Dictionary() : books_(std::make_unique<Books>()) {}
Dictionary::~Dictionary() = default;
Dictionary::Dictionary(Dictionary&&) noexcept = default;
Dictionary& Dictionary::operator=(Dictionary&&) noexcept = default;

bool Dictionary::is_word(std::string_view word) const {
  if (word.empty() || word.size() > 64) return true;
  std::call_once(books_->read, [&] { books_->open(); });
  const std::lock_guard lock(books_->one_at_a_time);
  if (books_->books.empty()) return true;
  std::string text(word);
  std::string name = text;
  if (name[0] >= 'a' && name[0] <= 'z') name[0] = static_cast<char>(name[0] - 'a' + 'A');
  for (const auto& book : books_->books) {
    if (book->spell(text) || book->spell(name)) return true;
  }
  return false;
}

}  // namespace pinwright::knowledge
