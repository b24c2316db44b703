// Any bytes as a told try-on: refused with problems, or findings whose words stand in the text.
#include <cstdlib>

#include "knowledge/load.h"
#include "knowledge/words/listener.h"

extern "C" int LLVMFuzzerTestOneInput(const unsigned char* data, std::size_t size) {
  using namespace pinwright;
  static const knowledge::Knowledge k = [] {
    Result<knowledge::Knowledge> loaded = knowledge::load({PINWRIGHT_SOURCE_DIR "/knowledge/data"});
    if (!loaded) std::abort();
    return std::move(*loaded);
  }();
  static const knowledge::Listener listener(k);
  const std::string_view text(reinterpret_cast<const char*>(data), size);
  const Result<knowledge::Understood> heard = listener.hear(text, "knit-top");
  if (!heard) {
    if (heard.problems().empty()) std::abort();
    return 0;
  }
  for (const Finding& f : heard->findings)
    if (text.find(f.words) == std::string_view::npos) std::abort();
  return 0;
}
