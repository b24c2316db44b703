// Amounts: units, how they were taken, what they count, whose they are.

#include <gtest/gtest.h>

#include "tests/knowledge/words/sentences.h"

namespace pinwright::knowledge {
namespace {

// How much, told in a sentence of its own, goes to the finding before it that takes an amount.
TEST(Amounts, InSentencesOfTheirOwn) {
  test::expect_told({
      {"The front neckline gapes. I can pinch a lengthwise fold 1 cm deep.",
       {"front-neckline-gapes 10 whole fold \"front neckline gapes. I can pinch a lengthwise fold "
        "1 "
        "cm deep\""}},
      {"The front neckline gapes. In all 2 cm too much.",
       {"front-neckline-gapes 20 whole \"front neckline gapes. In all 2 cm too much\""}},
      {"The front armhole gapes. I can pinch a fold 1/4 inch deep on each side.",
       {"front-armhole-gapes 6.35 half fold \"front armhole gapes. I can pinch a fold 1/4 inch "
        "deep "
        "on each side\""}},
  });
}

TEST(Amounts, InSentences) {
  test::expect_told({
      {"The front neckline gapes by 2 cm",
       {"front-neckline-gapes 20 whole \"front neckline gapes by 2 cm\""}},
      {"front neckline gapes 1 1/2 inches",
       {"front-neckline-gapes 38.1 whole \"front neckline gapes 1 1/2 inches\""}},
      {"The neckline stands off 1½ in",
       {"front-neckline-gapes 38.1 whole \"neckline stands off 1½ in\""}},
      {"Armhole gapes 3/8\" on each side",
       {"front-armhole-gapes 9.525 half \"Armhole gapes 3/8\" on each side\""}},
      {"gaping at the front armhole, 15mm per side",
       {"front-armhole-gapes 15 half \"gaping at the front armhole, 15mm per side\""}},
      {"The neckline is fine but the bust is too tight by 4 cm in all",
       {"front-neckline-gapes not \"neckline is fine\"",
        "neckline-too-tight not \"neckline is fine\"",
        "bust-too-tight 40 whole \"bust is too tight by 4 cm in all\""}},
      {"The left armhole gapes 2 cm and the right 3 cm",
       {"front-armhole-gapes left 20 half \"left armhole gapes 2 cm\"",
        "front-armhole-gapes right 30 half \"right 3 cm\""}},
      {"The armhole gapes 2 cm on the left and 3 cm on the right",
       {"front-armhole-gapes left 20 half \"armhole gapes 2 cm on the left\"",
        "front-armhole-gapes right 30 half \"3 cm on the right\""}},
      {"I pinched a fold of 1 cm at the front neckline, it gapes",
       {"front-neckline-gapes 10 whole fold \"pinched a fold of 1 cm at the front neckline, it "
        "gapes\""}},
      {"The front neckline gapes, I can pinch 2 cm",
       {"front-neckline-gapes 20 whole fold \"front neckline gapes, I can pinch 2 cm\""}},
      {"Pinched 2 cm of cloth in all, the bust is too loose",
       {"bust-too-loose 20 whole cloth \"Pinched 2 cm of cloth in all, the bust is too loose\""}},
      {"The top is 3 cm too short", {"top-too-short 30 whole distance \"top is 3 cm too short\""}},
      {"The bust is 2-3 cm too tight", {"bust-too-tight 25 whole \"bust is 2-3 cm too tight\""}},
      {"The bust is too tight by 2 to 3 cm altogether",
       {"bust-too-tight 25 whole \"bust is too tight by 2 to 3 cm altogether\""}},
      {"The bust is between 2 and 3 cm too loose",
       {"bust-too-loose 25 whole \"bust is between 2 and 3 cm too loose\""}},
      {"The neckline gapes half an inch",
       {"front-neckline-gapes 12.7 whole \"neckline gapes half an inch\""}},
      {"The neckline gapes a quarter inch",
       {"front-neckline-gapes 6.35 whole \"neckline gapes a quarter inch\""}},
      {"The neckline gapes an inch and a half",
       {"front-neckline-gapes 38.1 whole \"neckline gapes an inch and a half\""}},
      {"The neckline gapes about a centimetre",
       {"front-neckline-gapes 10 whole \"neckline gapes about a centimetre\""}},
      {"The neckline gapes two centimetres on the half pattern",
       {"front-neckline-gapes 20 half \"neckline gapes two centimetres on the half pattern\""}},
      {"Sleeves are tight. Armholes gape 2 cm in.",
       {"upper-arm-too-tight \"Sleeves are tight\"",
        "front-armhole-gapes 20 half \"Armholes gape 2 cm\""}},
      {"The neckline gapes. 2 cm each side.",
       {"front-neckline-gapes 20 half \"neckline gapes. 2 cm each side\""}},
      {"The neckline gapes 1,5 cm", {"front-neckline-gapes 15 whole \"neckline gapes 1,5 cm\""}},
      {"armhole gapes 2 in at the left",
       {"front-armhole-gapes left 50.8 half \"armhole gapes 2 in at the left\""}},
      {"On the left, the armhole gapes 1 cm",
       {"front-armhole-gapes left 10 half \"left, the armhole gapes 1 cm\""}},
      {"The shoulder is too wide: let out 1 cm",
       {"shoulder-too-wide 10 whole let-out \"shoulder is too wide: let out 1 cm\""}},
      {"I took out 2 cm of cloth on each side at the bust, it was too loose",
       {"bust-too-loose 20 half cloth \"took out 2 cm of cloth on each side at the bust, it was "
        "too loose\""}},
      {"a fold takes up 4 cm at the bust, which is too loose",
       {"bust-too-loose 40 whole cloth \"fold takes up 4 cm at the bust, which is too loose\""}},
      {"The right armhole is too low by 1/2\"",
       {"armhole-too-low right 12.7 whole distance \"right armhole is too low by 1/2\"\""}},
      {"bust: too tight (by 3cm)", {"bust-too-tight 30 whole \"bust: too tight (by 3cm\""}},
      {"1. Neckline gapes 2 cm", {"front-neckline-gapes 20 whole \"Neckline gapes 2 cm\""}},
      {"The neckline gapes 2 cm and 3 cm",
       {"front-neckline-gapes 20 whole \"neckline gapes 2 cm\"", "? 3 cm"}},
      {"The neckline gapes 2 cm each side, 4 cm in all",
       {"front-neckline-gapes 20 half \"neckline gapes 2 cm each side\"", "? 4 cm in all"}},
      {"The neckline gapes 2 cm on both sides",
       {"front-neckline-gapes 20 half \"neckline gapes 2 cm on both sides\""}},
      {"bust does not close by 3 cm", {"bust-too-tight 30 whole \"bust does not close by 3 cm\""}},
      {"the shoulders are too wide by 1 cm each",
       {"shoulder-too-wide 10 whole distance \"shoulders are too wide by 1 cm each\""}},
      {"neckline gapes neckline gapes 2 cm",
       {"front-neckline-gapes 20 whole \"neckline gapes neckline gapes 2 cm\""}},
      {"NECKLINE GAPES 2CM", {"front-neckline-gapes 20 whole \"NECKLINE GAPES 2CM\""}},
      {"I'd say the neckline's gaping a bit, maybe 1.5 cm or so",
       {"front-neckline-gapes 15 whole ~ \"neckline's gaping a bit, maybe 1.5 cm\""}},
      {"The back neckline gapes 1 cm; the front is fine",
       {"back-neckline-gapes 10 whole \"back neckline gapes 1 cm\"",
        "front-neckline-gapes not \"front is fine\""}},
      {"Back neck stands away 2 cm from the body",
       {"back-neckline-gapes 20 whole \"Back neck stands away 2 cm\"", "? body"}},
      {"The front neckline gapes 1-1/2\" in all, pinched",
       {"front-neckline-gapes 38.1 whole cloth \"front neckline gapes 1-1/2\" in all, pinched\""}},
      {"The neckline gapes by 2-cm", {"front-neckline-gapes 20 whole \"neckline gapes by 2-cm\""}},
      {"The neckline gapes a good 2 cm",
       {"front-neckline-gapes 20 whole \"neckline gapes a good 2 cm\""}},
      {"The neckline gapes 3/4 of an inch",
       {"front-neckline-gapes 19.05 whole \"neckline gapes 3/4 of an inch\""}},
      {"The neckline gapes three quarters of an inch",
       {"front-neckline-gapes 19.05 whole \"neckline gapes three quarters of an inch\""}},
      {"neckline gapes a couple of centimetres",
       {"front-neckline-gapes 20 whole \"neckline gapes a couple of centimetres\""}},
      {"bust tight 2½ cms", {"bust-too-tight 25 whole \"bust tight 2½ cms\""}},
      {"bust tight two and a half centimetres",
       {"bust-too-tight 25 whole \"bust tight two and a half centimetres\""}},
      {"The neckline gapes 2 cm to 3 cm",
       {"front-neckline-gapes 25 whole \"neckline gapes 2 cm to 3 cm\""}},
      {"The neckline gapes ⅜ in", {"front-neckline-gapes 9.525 whole \"neckline gapes ⅜ in\""}},
      {"The neckline gapes ten millimetres apiece",
       {"front-neckline-gapes 10 half \"neckline gapes ten millimetres apiece\""}},
      {"The neckline gapes .5 cm", {"front-neckline-gapes 5 whole \"neckline gapes .5 cm\""}},
  });
}

}  // namespace
}  // namespace pinwright::knowledge
