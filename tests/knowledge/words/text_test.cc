#include "knowledge/words/text.h"

#include <gtest/gtest.h>

#include "knowledge/words/spelling.h"

namespace pinwright::knowledge {
namespace {

std::string code_of_text(std::string_view text) {
  const Problems problems = check_text(text);
  return problems.empty() ? "" : problems.front().code;
}

std::string cut(std::string_view text) {
  std::string joined;
  for (const Token& token : tokens(text)) {
    joined += joined.empty() ? "" : " ";
    joined += token.kind == Token::Kind::number ? "#" : token.text;
  }
  return joined;
}

TEST(CheckText, RefusesWhatIsNoText) {
  EXPECT_EQ(code_of_text(""), "words-empty");
  EXPECT_EQ(code_of_text(" \n\t "), "words-empty");
  EXPECT_EQ(code_of_text("?!..."), "words-empty");
  EXPECT_EQ(code_of_text(std::string(65537, 'a')), "words-too-long");
  EXPECT_EQ(code_of_text(std::string(65536, 'a')), "");
  EXPECT_EQ(code_of_text("neckline\x01"), "words-not-text");
  EXPECT_EQ(code_of_text(std::string("neckline\0gapes", 14)), "words-not-text");
  EXPECT_EQ(code_of_text("neckline\x7f"), "words-not-text");
}

TEST(CheckText, RefusesInvalidUtf8) {
  EXPECT_EQ(code_of_text("a\xff"), "words-not-text");
  EXPECT_EQ(code_of_text("a\xc3"), "words-not-text");              // cut short
  EXPECT_EQ(code_of_text("a\xc0\xaf"), "words-not-text");          // overlong
  EXPECT_EQ(code_of_text("a\xe0\x80\xaf"), "words-not-text");      // overlong
  EXPECT_EQ(code_of_text("a\xed\xa0\x80"), "words-not-text");      // surrogate
  EXPECT_EQ(code_of_text("a\xf4\x90\x80\x80"), "words-not-text");  // above U+10FFFF
  EXPECT_EQ(code_of_text("\x80"), "words-not-text");
  EXPECT_EQ(code_of_text("décolleté ½ 😀"), "");
  EXPECT_EQ(check_text("neck\xff").front().place, "words, byte 4");
}

TEST(Tokens, ContractionsAreTwoWordsOfOnePlace) {
  const std::vector<Token> found = tokens("It doesn't gape");
  ASSERT_EQ(found.size(), 4u);
  EXPECT_EQ(found[1].text, "does");
  EXPECT_EQ(found[2].text, "not");
  EXPECT_EQ(found[1].begin, found[2].begin);
  EXPECT_EQ(found[1].end, found[2].end);
  EXPECT_EQ(cut("won’t can't isnt cannot wearer's I'd"),
            "will not can not is not can not wearer i");
}

TEST(Tokens, MarksHyphensAndQuotes) {
  EXPECT_EQ(cut("stand-off"), "stand off");
  EXPECT_EQ(cut("\"gapes\""), "gapes");
  EXPECT_EQ(cut("3/8\""), "# / # \"");
  EXPECT_EQ(cut("“armhole 2”"), "armhole #");
  EXPECT_EQ(cut("a – b -- c"), "a ~ b ~ - c");
  EXPECT_EQ(cut("12/05/2026 30% 10:30"), "12/05/2026 30% 10:30");
}

TEST(Spelling, FormsOfAWordHaveOneStem) {
  const Stemmer stemmer;
  const auto stem = [&](const char* word) { return stemmer.stem(one_spelling(lower(word))); };
  EXPECT_EQ(stem("Gaping"), stem("gapes"));
  EXPECT_EQ(stem("centre"), stem("center"));
  EXPECT_EQ(stem("centimetres"), stem("centimeters"));
  EXPECT_EQ(stem("scye"), stem("armholes"));
  EXPECT_EQ(stem("stood"), stem("stands"));
  EXPECT_EQ(stem("tighter"), stem("tightness"));
  EXPECT_NE(stem("gap"), stem("gape"));
}

}  // namespace
}  // namespace pinwright::knowledge
