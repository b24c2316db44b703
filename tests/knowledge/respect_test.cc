// Every text that a user may read, for words we do not use of bodies: the pattern is wrong for this
// body, never the body wrong for the pattern.

#include <gtest/gtest.h>

#include <cctype>
#include <filesystem>
#include <fstream>
#include <iterator>
#include <set>

#include "tests/knowledge/shipped.h"

namespace pinwright::knowledge {
namespace {

const std::set<std::string>& unused() {
  static const std::set<std::string> kWords = {
      "overweight", "underweight",  "fat",         "fats",         "fatty",      "obese",
      "obesity",    "plump",        "chubby",      "skinny",       "scrawny",    "slimming",
      "slimmer",    "flaw",         "flaws",       "flawed",       "defect",     "defects",
      "defective",  "abnormal",     "abnormality", "deformed",     "deformity",  "ugly",
      "unsightly",  "unflattering", "flattering",  "hideous",      "matronly",   "dowager",
      "dowagers",   "hunchback",    "hunched",     "hump",         "disfigured", "diet",
      "flab",       "flabby",       "misshapen",   "imperfection", "cripple"};
  return kWords;
}
const char* const kRuns[] = {
    "figure fault",   "figure flaw",     "figure problem", "problem area",   "problem figure",
    "problem body",   "body problem",    "too fat",        "wrong with her", "wrong with the body",
    "wrong with you", "love handle",     "her weight",     "his weight",     "your weight",
    "body weight",    "wearer s weight", "lose weight",    "lost weight",    "losing weight",
    "gain weight",    "gained weight",   "put on weight",  "weight loss",    "weight gain"};

std::string plain(const std::string& text) {
  std::string out = " ";
  for (const char c : text) {
    const auto byte = static_cast<unsigned char>(c);
    if (std::isalnum(byte))
      out += static_cast<char>(std::tolower(byte));
    else if (out.back() != ' ')
      out += ' ';
  }
  return out + " ";
}

std::string offence(const std::string& text) {
  const std::string said = plain(text);
  for (const auto& word : unused())
    if (said.find(" " + word + " ") != std::string::npos) return word;
  for (const char* run : kRuns)
    if (said.find(std::string(" ") + run) != std::string::npos) return run;
  return "";
}

void expect_clean(const std::string& text, const std::string& where) {
  EXPECT_EQ(offence(text), "") << where << ": " << text;
}

TEST(Respect, TheScanFindsWhatItLooksFor) {
  EXPECT_EQ(offence("Hides figure faults"), "figure fault");
  EXPECT_EQ(offence("A Fat arm"), "fat");
  EXPECT_EQ(offence("Has she gained weight?"), "gained weight");
  EXPECT_EQ(offence("fuller than the pattern allows; fatigue; the cloth drops with its weight"),
            "");
}

// The words by which people tell a thing (phrases, classes) are theirs and not scanned: whoever
// says it so must be understood.
TEST(Respect, NoTextOfTheKnowledgeSpeaksIllOfABody) {
  const Knowledge& k = testing::shipped();
  for (const auto& s : k.signs) {
    expect_clean(s.name, s.id);
    expect_clean(s.ask, s.id);
  }
  for (const auto& c : k.causes) {
    expect_clean(c.name, c.id);
    expect_clean(c.what, c.id);
    expect_clean(c.check, c.id);
    for (const auto& r : c.remedies) {
      expect_clean(r.name, r.id);
      expect_clean(r.suits, r.id);
      expect_clean(r.beyond, r.id);
      for (const auto& f : r.follow) expect_clean(f, r.id);
      for (const auto& step : r.steps) expect_clean(step.text, r.id);
    }
  }
  for (const auto& p : k.problems) expect_clean(p.name, p.id);
  for (const auto& z : k.zones) expect_clean(z.name, z.id);
  for (const auto& f : k.features) expect_clean(f.name, f.id);
  for (const auto& m : k.measured) expect_clean(m.text, m.id);
}

TEST(Respect, IdsDoNotEither) {
  const Knowledge& k = testing::shipped();
  for (const auto& s : k.signs) expect_clean(s.id, s.id);
  for (const auto& c : k.causes) {
    expect_clean(c.id, c.id);
    for (const auto& r : c.remedies) expect_clean(r.id, r.id);
  }
  for (const auto& p : k.problems) expect_clean(p.id, p.id);
  for (const auto& p : k.postures) expect_clean(p.id, p.id);
}

}  // namespace
}  // namespace pinwright::knowledge
