#include "api/cli/table.h"

#include <gtest/gtest.h>

namespace pinwright::api::cli {
namespace {

TEST(Table, WidthCountsCodePoints) {
  EXPECT_EQ(width("\xC3\xA5\xE2\x89\xA4x"), 3U);
  EXPECT_EQ(width(""), 0U);
}

TEST(Table, WrapKeepsWordsAndCutsLongOnes) {
  EXPECT_EQ(wrap("the neckline gapes", 12), (std::vector<std::string>{"the neckline", "gapes"}));
  EXPECT_EQ(wrap("abcdefgh ij", 3), (std::vector<std::string>{"abc", "def", "gh", "ij"}));
  EXPECT_EQ(wrap("", 5), std::vector<std::string>{""});
  EXPECT_EQ(wrap("\xC3\xA5\xC3\xA5\xC3\xA5", 2),
            (std::vector<std::string>{"\xC3\xA5\xC3\xA5", "\xC3\xA5"}));
  EXPECT_EQ(wrap("a\nb", 5), (std::vector<std::string>{"a", "b"}));
}

TEST(Table, ColumnsLineUpAndNumbersStandRight) {
  Table table({{"seam"}, {"a", Table::Align::right}});
  table.add({"side", "9.0 mm"});
  table.add({"shoulder", "120.0 mm"});
  EXPECT_EQ(table.text(),
            "seam             a\n"
            "--------  --------\n"
            "side        9.0 mm\n"
            "shoulder  120.0 mm\n");
}

TEST(Table, LongTextIsWrappedTo80Columns) {
  Table table({{"reason"}, {"n", Table::Align::right}});
  std::string text;
  for (int i = 0; i < 40; ++i) text += "words ";
  table.add({text, "1"});
  std::size_t lines = 0;
  std::string line;
  for (const char c : table.text()) {
    if (c != '\n') {
      line += c;
      continue;
    }
    EXPECT_LE(width(line), kColumns);
    line.clear();
    ++lines;
  }
  EXPECT_GE(lines, 5U);
}

}  // namespace
}  // namespace pinwright::api::cli
