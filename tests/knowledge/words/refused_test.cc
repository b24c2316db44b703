// Amounts that cannot be taken as told; the place is the words themselves.

#include <gtest/gtest.h>

#include "tests/knowledge/words/sentences.h"

namespace pinwright::knowledge {
namespace {

TEST(Refused, InSentences) {
  test::expect_told({
      {"The neckline gapes by 2", {"! amount-without-unit \"neckline gapes by 2\""}},
      {"The neckline gapes 2", {"! amount-without-unit \"neckline gapes 2\""}},
      {"The top is too long by 3", {"! amount-without-unit \"top is too long by 3\""}},
      {"The neckline gapes -2 cm", {"! amount-range \"neckline gapes -2 cm\""}},
      {"The neckline gapes 400 mm", {"! amount-range \"neckline gapes 400 mm\""}},
      {"a 400 mm pinch", {"! amount-range \"400 mm\""}},
      {"armhole gapes 2 in the front", {"! amount-without-unit \"armhole gapes 2 in the front\""}},
      {"she said \"armhole gapes 2\"", {"! amount-without-unit \"armhole gapes 2\""}},
      {"The neckline gapes 0 cm", {"! amount-range \"neckline gapes 0 cm\""}},
      {"The neckline gapes by minus 2 cm", {"! amount-range \"neckline gapes by minus 2 cm\""}},
      {"The neckline gapes 1,000 mm", {"! amount-range \"neckline gapes 1,000 mm\""}},
      {"top too long by about 3", {"! amount-without-unit \"top too long by about 3\""}},
      {"3 too long, the top", {"! amount-without-unit \"3 too long\""}},
      {"The top is too long by three", {"! amount-without-unit \"top is too long by three\""}},
  });
}

}  // namespace
}  // namespace pinwright::knowledge
