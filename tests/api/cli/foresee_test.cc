// pinwright foresee.

#include "tests/api/cli/program.h"

namespace pinwright::api {
namespace {

TEST(CliForesee, SaysWhatToExpectAndHowToCureIt) {
  const Program pinwright;
  pinwright.save_top();
  const Ran same = pinwright({"foresee", "deck-top"});
  EXPECT_EQ(same.status, 0) << same.err;
  EXPECT_NE(same.out.find("Nothing is to be expected"), std::string::npos) << same.out;
  const std::string wearer = pinwright.write(
      "wearer.json",
      R"({"id": "deckhand-5", "body": {"upper-arm-girth": "33 cm"}, "posture": ["forward shoulders"]})");
  const Ran ran = pinwright({"foresee", "deck-top", "--wearer", wearer});
  EXPECT_EQ(ran.status, 0) << ran.err;
  EXPECT_NE(ran.out.find("Sleeve pattern is less than arm and ease: 28"), std::string::npos)
      << ran.out;
  EXPECT_NE(ran.out.find("On paper first"), std::string::npos);
  EXPECT_NE(ran.out.find("Noted: forward shoulders"), std::string::npos);
  expect_80_columns(ran.out);
  const Json told = pinwright({"foresee", "deck-top", "--wearer", wearer, "--json"}).json();
  EXPECT_EQ(told["posture"][0]["cause"], "forward-shoulder");
  EXPECT_EQ(pinwright({"foresee", "deck-top", "--wearer", pinwright.file("none")}).status, 2);
}

}  // namespace
}  // namespace pinwright::api
