// The page that says what is covered names only what exists, and every problem of the publications
// that the rows hold has its lines there.
#include <gtest/gtest.h>

#include <fstream>
#include <iterator>
#include <set>
#include <string>

#include "tests/knowledge/shipped.h"

namespace pinwright::knowledge {
namespace {

std::string page() {
  std::ifstream in(std::string(PINWRIGHT_SOURCE_DIR) + "/knowledge/COVERAGE.md", std::ios::binary);
  return {std::istreambuf_iterator<char>(in), std::istreambuf_iterator<char>()};
}

/// What stands between back ticks and looks like an id: no slash, no dot.
std::set<std::string> named(const std::string& text) {
  std::set<std::string> ids;
  for (std::size_t at = text.find('`'); at != std::string::npos;) {
    const std::size_t end = text.find('`', at + 1);
    if (end == std::string::npos) break;
    const std::string word = text.substr(at + 1, end - at - 1);
    if (word.find_first_of("/.") == std::string::npos) ids.insert(word);
    at = text.find('`', end + 1);
  }
  return ids;
}

TEST(CoveragePage, NamesOnlyWhatExists) {
  const Knowledge& k = testing::shipped();
  std::set<std::string> known;
  for (const FitProblem& p : k.problems) known.insert(p.id);
  for (const Sign& s : k.signs) known.insert(s.id);
  for (const Cause& c : k.causes) {
    known.insert(c.id);
    for (const Remedy& r : c.remedies) known.insert(r.id);
  }
  const std::set<std::string> ids = named(page());
  EXPECT_GE(ids.size(), 100u);
  for (const std::string& id : ids) EXPECT_TRUE(known.contains(id)) << id;
}

TEST(CoveragePage, CoversProblemsOfEveryRegion) {
  const std::set<std::string> ids = named(page());
  std::size_t problems = 0;
  for (const FitProblem& p : testing::shipped().problems) problems += ids.contains(p.id) ? 1 : 0;
  EXPECT_GE(problems, 80u);
}

// A publication named on the page is one of the knowledge, or named for a conflict alone.
TEST(CoveragePage, NamesPublicationsThatAreListed) {
  const std::string text = page();
  std::set<std::string> keys;
  for (const Publication& p : testing::shipped().publications) keys.insert(p.key);
  for (std::size_t at = text.find("| read: "); at != std::string::npos;
       at = text.find("| read: ", at + 1)) {
    const std::size_t from = at + 8;
    const std::size_t end = text.find_first_of(" ,;|", from);
    EXPECT_TRUE(keys.contains(text.substr(from, end - from))) << text.substr(from, end - from);
  }
}

}  // namespace
}  // namespace pinwright::knowledge
