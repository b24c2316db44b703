#pragma once
// Sentences and what must be heard in them, one line a finding; see told() for the form.

#include <gtest/gtest.h>

#include <string>
#include <vector>

#include "knowledge/words/listener.h"
#include "tests/knowledge/words/small_knowledge.h"

namespace pinwright::knowledge::test {

struct Sentence {
  std::string text;
  /// Findings in order, then "? words" not understood; or "! code place" of each problem.
  std::vector<std::string> told;
};

inline std::vector<std::string> heard(const std::string& text) {
  static const Knowledge k = small_knowledge();
  static const Listener listener(k, dictionary());
  const Result<Understood> result = listener.hear(text, "");
  if (result) return told(*result);
  std::vector<std::string> lines;
  for (const Problem& problem : result.problems()) {
    EXPECT_FALSE(problem.what.empty() || problem.mend.empty());
    lines.push_back("! " + problem.code + " " + problem.place);
  }
  return lines;
}

inline void expect_told(const std::vector<Sentence>& sentences) {
  for (const Sentence& sentence : sentences)
    EXPECT_EQ(heard(sentence.text), sentence.told) << sentence.text;
}

}  // namespace pinwright::knowledge::test
