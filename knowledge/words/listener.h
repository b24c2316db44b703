#pragma once
// Knowledge made ready to understand many texts.

#include <memory>
#include <string_view>

#include "knowledge/understand.h"
#include "knowledge/words/dictionary.h"

namespace pinwright::knowledge {

/// Compiles the phrases once; understand(k, ...) does so on each call. Refers to the knowledge,
/// which must outlive it. hear() may be called from several threads.
class Listener {
 public:
  /// Listeners may share a dictionary (reading it takes longer than all else); nothing: its own.
  explicit Listener(const Knowledge& k, std::shared_ptr<const Dictionary> dictionary = nullptr);
  ~Listener();
  Listener(Listener&&) noexcept;
  Listener& operator=(Listener&&) noexcept;

  /// As understand().
  Result<Understood> hear(std::string_view text, std::string_view block_kind) const;

 private:
  struct Ready;
  std::unique_ptr<Ready> ready_;
};

}  // namespace pinwright::knowledge
