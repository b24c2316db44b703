// The worked example of DEVELOPERS.md, word for word: it loads over the shipped knowledge, and what
// the page says of it is so.

#include <gtest/gtest.h>
#include <unistd.h>

#include <filesystem>
#include <fstream>
#include <iterator>

#include "knowledge/alike.h"
#include "knowledge/load.h"
#include "knowledge/understand.h"
#include "tests/knowledge/shipped.h"
#include "tests/knowledge/skerry_blocks.h"

namespace pinwright::knowledge {
namespace {

namespace fs = std::filesystem;

/// The first yaml block below the heading.
std::string example() {
  std::ifstream in(std::string(PINWRIGHT_SOURCE_DIR) + "/DEVELOPERS.md");
  const std::string page{std::istreambuf_iterator<char>(in), std::istreambuf_iterator<char>()};
  const std::string fence = "```yaml\n";
  const std::size_t heading = page.find("## Add a fit problem\n");
  const std::size_t from = page.find(fence, heading);
  if (heading == std::string::npos || from == std::string::npos) return "";
  return page.substr(from + fence.size(), page.find("\n```", from) + 1 - from - fence.size());
}

const Knowledge& with_example() {
  static const Knowledge* const kKnowledge = [] {
    std::string folder = (fs::temp_directory_path() / "pinwright-page-XXXXXX").string();
    EXPECT_NE(::mkdtemp(folder.data()), nullptr);
    std::ofstream(folder + "/harness.yaml") << example();
    auto loaded = load({std::string(PINWRIGHT_SOURCE_DIR) + "/knowledge/data", folder});
    for (const auto& p : loaded.problems()) ADD_FAILURE() << p.place << " " << p.what;
    if (loaded)
      for (const auto& p : remarks(*loaded))
        if (p.place.starts_with(folder)) ADD_FAILURE() << p.place << " " << p.what;
    fs::remove_all(folder);
    return new Knowledge(loaded.ok() ? std::move(loaded).value() : Knowledge{});
  }();
  return *kKnowledge;
}

TEST(DevelopersPage, TheExampleIsThereAndLoads) {
  ASSERT_FALSE(example().empty());
  EXPECT_NE(find_sign(with_example(), "hem-pulls-out-of-harness"), nullptr);
  EXPECT_NE(find_cause(with_example(), "top-short-under-harness"), nullptr);
  EXPECT_TRUE(with_example().replaced.empty());
}

TEST(DevelopersPage, ItsWordsAreUnderstood) {
  for (const char* words :
       {"the hem comes out of the harness by 5 cm", "the hem pulls out of the harness by 5 cm",
        "hem won't stay under the harness, 5 cm"}) {
    const auto read = understand(with_example(), words, "knit-top");
    ASSERT_TRUE(read.ok()) << words;
    ASSERT_EQ(read->findings.size(), 1u) << words;
    EXPECT_EQ(read->findings[0].sign, "hem-pulls-out-of-harness") << words;
    ASSERT_TRUE(read->findings[0].amount.has_value()) << words;
    EXPECT_DOUBLE_EQ(read->findings[0].amount->mm, 50.0) << words;
  }
}

TEST(DevelopersPage, BothCausesTheQuestionAndTheAmount) {
  TryOn tryon;
  const auto read =
      understand(with_example(), "the hem comes out of the harness by 5 cm", "knit-top");
  ASSERT_TRUE(read.ok());
  tryon.findings = read->findings;
  const auto a = advise(with_example(), testing::knit_top(), tryon, {});
  ASSERT_TRUE(a.ok());
  EXPECT_GT(testing::probability(*a, "top-short-under-harness"), 0.2);
  EXPECT_GT(testing::probability(*a, "harness-worn-low"), 0.2);
  ASSERT_TRUE(a->question.has_value());
  EXPECT_EQ(a->question->sign, "harness-sits-on-hips");
  const Proposal* p = testing::proposal(*a, "lengthen-for-harness");
  ASSERT_NE(p, nullptr);
  EXPECT_DOUBLE_EQ(p->steps[0].step.amount, 50.0);
}

}  // namespace
}  // namespace pinwright::knowledge
