// What is said not to be so.

#include <gtest/gtest.h>

#include "tests/knowledge/words/sentences.h"

namespace pinwright::knowledge {
namespace {

TEST(Negation, InSentences) {
  test::expect_told({
      {"The neckline doesn't gape any more",
       {"front-neckline-gapes not \"neckline doesn't gape\""}},
      {"The bust is fine",
       {"bust-too-tight not \"bust is fine\"", "bust-too-loose not \"bust is fine\""}},
      {"The bust is not fine", {"? The bust is not fine"}},
      {"The top is not long enough", {"top-too-short \"top is not long enough\""}},
      {"The top is no longer too long", {"top-too-long not \"top is no longer too long\""}},
      {"neither the neckline nor the armhole gapes",
       {"front-neckline-gapes not \"neither the neckline\"",
        "front-armhole-gapes not \"nor the armhole gapes\""}},
      {"The neckline gapes, not the armhole",
       {"front-neckline-gapes \"neckline gapes\"", "front-armhole-gapes not \"not the armhole\""}},
      {"It does not gape or pull at the neckline",
       {"front-neckline-gapes not \"not gape\"",
        "neckline-too-tight not \"pull at the neckline\""}},
      {"no gaping and no pulling at the neckline",
       {"front-neckline-gapes not \"no gaping\"",
        "neckline-too-tight not \"no pulling at the neckline\""}},
      {"The neckline is not without gaping",
       {"front-neckline-gapes \"neckline is not without gaping\""}},
      {"bust won't close", {"bust-too-tight \"bust won't close\""}},
      {"not enough room at the bust", {"bust-too-tight \"not enough room at the bust\""}},
      {"No, the neckline does not gape.", {"front-neckline-gapes not \"neckline does not gape\""}},
      {"No it does not gape at the neckline",
       {"front-neckline-gapes not \"not gape at the neckline\""}},
      {"There is no gaping at the neckline but the bust is too tight.",
       {"front-neckline-gapes not \"no gaping at the neckline\"",
        "bust-too-tight \"bust is too tight\""}},
      {"the gaping at the neckline is gone",
       {"front-neckline-gapes not \"gaping at the neckline is gone\""}},
      {"The bust isn't tight and the neckline isn't gaping",
       {"bust-too-tight not \"bust isn't tight\"",
        "front-neckline-gapes not \"neckline isn't gaping\""}},
      {"without gaping at the neckline",
       {"front-neckline-gapes not \"without gaping at the neckline\""}},
      {"The armhole gapes but not on the left",
       {"front-armhole-gapes right \"armhole gapes\"",
        "front-armhole-gapes not left \"not on the left\""}},
      {"the armhole is hardly tight", {"armhole-too-tight not \"armhole is hardly tight\""}},
      {"The neckline gapes no more", {"front-neckline-gapes not \"neckline gapes no more\""}},
      {"The top is not too long", {"top-too-long not \"top is not too long\""}},
      {"The top is not too long, but too short",
       {"top-too-long not \"top is not too long\"", "top-too-short \"too short\""}},
      {"everything else is fine", {"? everything else is fine"}},
      {"the armhole gapes on the left not on the right",
       {"front-armhole-gapes left \"armhole gapes on the left\"",
        "front-armhole-gapes not right \"not on the right\""}},
      {"The neckline never gapes", {"front-neckline-gapes not \"neckline never gapes\""}},
  });
}

}  // namespace
}  // namespace pinwright::knowledge
