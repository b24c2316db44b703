#include "knowledge/words/notions.h"

#include <algorithm>
#include <array>
#include <utility>

#include "knowledge/words/function_words.h"

namespace pinwright::knowledge {
namespace {

using Pair = std::pair<std::string_view, std::string_view>;

constexpr auto kNegations = std::to_array<std::string_view>({"not",
                                                             "no",
                                                             "never",
                                                             "neither",
                                                             "nor",
                                                             "none",
                                                             "nothing",
                                                             "without",
                                                             "hardly",
                                                             "scarcely",
                                                             "barely",
                                                             "no longer",
                                                             "not any",
                                                             "hardly any",
                                                             "no sign of",
                                                             "not a sign of",
                                                             "not a hint of",
                                                             "not a trace of",
                                                             "not in the least",
                                                             "not at all",
                                                             "anything but"});
constexpr auto kGone = std::to_array<std::string_view>(
    {"gone", "vanish", "disappear", "go away", "no more", "is not a problem", "is no problem",
     "not an issue", "is not an issue", "no longer a problem", "sorted out"});
constexpr auto kNoise = std::to_array<std::string_view>({"not only",
                                                         "not just",
                                                         "not just that",
                                                         "any more",
                                                         "any longer",
                                                         "at all",
                                                         "left over",
                                                         "not to mention",
                                                         "no matter",
                                                         "no idea",
                                                         "no doubt",
                                                         "no question",
                                                         "whether or not",
                                                         "not sure why",
                                                         "do not know why",
                                                         "not sure what",
                                                         "do not know what",
                                                         "no wonder",
                                                         "why not",
                                                         "can not work out why",
                                                         "can not figure out why",
                                                         "not as well"});

/// Words by which what is said is less sure, and how sure it stays (by our own judgement).
using Hedge = std::pair<std::string_view, double>;
constexpr auto kHedges = std::to_array<Hedge>({
    {"a bit", 0.9},
    {"a little", 0.9},
    {"a touch", 0.9},
    {"a tad", 0.9},
    {"tad", 0.9},
    {"slightly", 0.9},
    {"slight", 0.9},
    {"somewhat", 0.9},
    {"sort of", 0.85},
    {"kind of", 0.85},
    {"seem to", 0.9},
    {"appear to", 0.9},
    {"I think", 0.8},
    {"I guess", 0.75},
    {"I suppose", 0.75},
    {"I believe", 0.8},
    {"I suspect", 0.75},
    {"I feel like", 0.8},
    {"probably", 0.8},
    {"apparently", 0.8},
    {"likely", 0.8},
    {"maybe", 0.65},
    {"perhaps", 0.65},
    {"possibly", 0.6},
    {"might be", 0.65},
    {"could be", 0.65},
    {"may be", 0.65},
    {"might", 0.65},
    {"not sure", 0.55},
    {"not certain", 0.55},
    {"not sure if", 0.55},
    {"not sure whether", 0.55},
    {"not quite sure", 0.55},
    {"not quite sure if", 0.55},
    {"not entirely sure", 0.55},
    {"not certain if", 0.55},
    {"not certain whether", 0.55},
    {"unsure", 0.55},
    {"unsure if", 0.55},
    {"unsure whether", 0.55},
    {"do not know if", 0.55},
    {"do not know whether", 0.55},
    {"can not tell if", 0.55},
    {"can not tell whether", 0.55},
    {"hard to tell", 0.6},
    {"hard to tell if", 0.6},
    {"hard to say", 0.6},
    {"wonder if", 0.6},
    {"wonder whether", 0.6},
    {"wondering if", 0.6},
    {"if I am not mistaken", 0.8},
    {"unless I imagine it", 0.7},
    {"imagining it", 0.7},
});

constexpr auto kHalf = std::to_array<std::string_view>(
    {"each", "each side", "each half", "either side", "per side", "per half", "apiece",
     "on the half", "half pattern", "on the half pattern", "on each", "on each side",
     "on either side"});
constexpr auto kWhole = std::to_array<std::string_view>(
    {"in all", "altogether", "all together", "total", "in total", "total of", "all round",
     "all around", "all the way round", "all the way around", "overall", "on the whole",
     "whole garment", "on the whole garment", "in the round", "combined"});

constexpr auto kFold = std::to_array<std::string_view>(
    {"pinch", "pinch out", "pinned fold", "pin fold", "pin a fold", "fold of", "pin", "pin out",
     "pin a fold of", "pinned fold of", "tuck of", "pin a tuck", "pinch of", "deep fold"});
constexpr auto kCloth = std::to_array<std::string_view>(
    {"of cloth",        "of fabric",     "of material",  "cloth",          "take up",
     "take out",        "take in",       "fold take up", "excess",         "extra",
     "spare",           "surplus",       "of excess",    "of spare cloth", "of excess fabric",
     "of extra fabric", "excess fabric", "spare cloth",  "extra fabric",   "excess cloth",
     "spare fabric",    "extra cloth"});
constexpr auto kGap = std::to_array<std::string_view>({"gap", "gap of", "open up"});
constexpr auto kLetOut =
    std::to_array<std::string_view>({"let out", "unpick", "release", "let out by", "let it out"});

/// Posture told in other words, and the words.
constexpr auto kPostures = std::to_array<Pair>({
    {"standing", "standing"},
    {"standing", "stand still"},
    {"standing", "stand up"},
    {"standing", "stand straight"},
    {"standing", "stand upright"},
    {"sitting", "sitting"},
    {"sitting", "sit down"},
    {"sitting", "seated"},
    {"walking", "walking"},
    {"leaning forward", "lean forward"},
    {"leaning forward", "lean over"},
    {"leaning forward", "leaning"},
    {"leaning forward", "bend forward"},
    {"leaning forward", "bend over"},
    {"leaning forward", "bend down"},
    {"arms forward", "arm forward"},
    {"arms forward", "reach forward"},
    {"arms forward", "reaching"},
    {"arms forward", "arm stretched forward"},
    {"arms forward", "arm in front"},
    {"arms forward", "stretch arm forward"},
    {"arms forward", "bring arm forward"},
    {"arms forward", "move arm forward"},
    {"arm raised", "arm raised"},
    {"arm raised", "raise arm"},
    {"arm raised", "lift arm"},
    {"arm raised", "arm lifted"},
    {"arm raised", "arm up"},
    {"arm raised", "arm overhead"},
    {"arm raised", "arm above head"},
    {"arm raised", "arm over head"},
    {"arm raised", "reach up"},
    {"arm raised", "hold arm up"},
    {"arm raised", "put arm up"},
    {"arms down", "arm down"},
    {"arms down", "arm hanging"},
    {"arms down", "arm hang"},
    {"arms down", "arm at side"},
    {"arms down", "arm by side"},
    {"arms down", "arm relaxed"},
    {"elbow bent", "bend elbow"},
    {"elbow bent", "elbow bent"},
    {"elbow bent", "bend arm"},
    {"elbow bent", "arm bent"},
});

Notion made(Notion::Kind kind) {
  Notion notion;
  notion.kind = kind;
  return notion;
}

Notion made(Side side) {
  Notion notion = made(Notion::Kind::side);
  notion.side = side;
  return notion;
}

Notion made(Of of) {
  Notion notion = made(Notion::Kind::of);
  notion.of = of;
  return notion;
}

Notion made(Taken taken) {
  Notion notion = made(Notion::Kind::taken);
  notion.taken = taken;
  return notion;
}

Notion made_hedge(double sure) {
  Notion notion = made(Notion::Kind::hedge);
  notion.sure = sure;
  return notion;
}

Notion made_posture(std::string posture) {
  Notion notion = made(Notion::Kind::posture);
  notion.posture = std::move(posture);
  return notion;
}

bool word(const std::vector<Token>& tokens, std::size_t i, std::string_view text) {
  return i < tokens.size() && tokens[i].kind == Token::Kind::word && tokens[i].text == text;
}

/// "right" is a side unless it is "just right", "right at", "all right", "not right".
bool right_is_a_side(const std::vector<Token>& tokens, std::size_t i) {
  if (i > 0 && tokens[i - 1].kind == Token::Kind::word) {
    const std::string_view before = tokens[i - 1].text;
    for (const std::string_view other : {"all", "just", "quite", "not", "is", "are", "looks",
                                         "fits", "sits", "about", "seems", "almost"}) {
      if (before == other) return false;
    }
  }
  for (const std::string_view after :
       {"by",   "along", "beside", "past",    "behind", "off",  "at",     "under",
        "over", "above", "below",  "through", "up",     "down", "across", "into",
        "to",   "angle", "angles", "size",    "where",  "in",   "round",  "around"}) {
    if (word(tokens, i + 1, after)) return false;
  }
  return true;
}

/// A posture told by one word is that very form ("sitting", not "sits"), or stands after "when".
bool form_fits(const std::vector<Token>& tokens, std::size_t i, std::string_view form) {
  if (form.empty() || tokens[i].text == form) return true;
  while (i > 0 && tokens[i - 1].kind == Token::Kind::word &&
         load_of(tokens[i - 1].text) == Load::noise) {
    --i;
  }
  return i > 0 && (tokens[i - 1].text == "when" || tokens[i - 1].text == "if" ||
                   tokens[i - 1].text == "while" || tokens[i - 1].text == "as");
}

/// "side" of "side seam" belongs to the seam.
bool cut_from_seam(const std::vector<Token>& tokens, const Run& run) {
  const std::size_t last = run.tokens.back();
  return run.tokens.size() > 1 && word(tokens, last, "side") &&
         (word(tokens, last + 1, "seam") || word(tokens, last + 1, "seams"));
}

}  // namespace

Notions::Notions(const Knowledge& k, const Stemmer& stemmer) {
  for (const auto words : kNegations) add(words, made(Notion::Kind::negation), stemmer);
  for (const auto words : {"make no difference",
                           "made no difference",
                           "no difference",
                           "not make any difference",
                           "not make a difference",
                           "does not help",
                           "did not help",
                           "no help",
                           "no change",
                           "no better",
                           "not any better",
                           "still there",
                           "does nothing",
                           "did nothing",
                           "nothing change",
                           "not change anything",
                           "not change it",
                           "not change a thing",
                           "makes no odds",
                           "no effect",
                           "just the same",
                           "exactly the same as before",
                           "will not go away",
                           "does not go away",
                           "did not go away",
                           "does not go",
                           "did not go",
                           "does not shift",
                           "not budge"}) {
    add(words, made(Notion::Kind::no_effect), stemmer);
  }
  Notion once = made(Notion::Kind::negation);  // "used to gape"; not "the thread I use to sew it"
  once.exact = "used";
  add("used to", once, stemmer);
  for (const auto words : kGone) add(words, made(Notion::Kind::gone), stemmer);
  for (const auto words : kNoise) add(words, made(Notion::Kind::noise), stemmer);
  for (const auto& [words, sure] : kHedges) add(words, made_hedge(sure), stemmer);
  for (const auto words : kHalf) add(words, made(Of::half), stemmer);
  for (const auto words : kWhole) add(words, made(Of::whole), stemmer);
  for (const auto words : kFold) add(words, made(Taken::fold_depth), stemmer);
  for (const auto words : kCloth) add(words, made(Taken::cloth), stemmer);
  for (const auto words : kGap) add(words, made(Taken::gap), stemmer);
  for (const auto words : kLetOut) add(words, made(Taken::let_out), stemmer);
  for (const auto words : {"left", "left hand", "left side", "left hand side"}) {
    add(words, made(Side::left), stemmer);
  }
  for (const auto words : {"right", "right hand", "right side", "right hand side"}) {
    add(words, made(Side::right), stemmer);
  }
  for (const auto words : {"both", "left and right", "right and left"}) {
    add(words, made(Side::both), stemmer);
  }
  add("both sides", made(Notion::Kind::side_and_half), stemmer);
  for (const auto& [posture, words] : kPostures) {
    Notion notion = made_posture(std::string(posture));
    const bool alone = words.find(' ') == std::string_view::npos;
    if (alone && words != "seated") notion.exact = words;
    add(words, std::move(notion), stemmer);
  }
  constexpr std::string_view kPosture = "posture-";
  for (const WordClass& words : k.words) {
    const bool posture = words.id.starts_with(kPosture);
    if (!posture && words.id != "noise") continue;
    std::string name = posture ? words.id.substr(kPosture.size()) : "";
    std::replace(name.begin(), name.end(), '-', ' ');
    const Notion notion = posture ? made_posture(name) : made(Notion::Kind::noise);
    for (const std::string& member : words.words) add(member, notion, stemmer);
  }
}

void Notions::add(std::string_view words, Notion notion, const Stemmer& stemmer) {
  sequences_.add(words, kinds_.size(), stemmer, notion.kind != Notion::Kind::posture);
  kinds_.push_back(std::move(notion));
}

std::vector<Notion> Notions::find(const std::vector<Token>& tokens, const Stemmer& stemmer) const {
  std::vector<Notion> found;
  for (std::size_t i = 0; i < tokens.size();) {
    const Run* longest = nullptr;
    const std::vector<Run> runs = sequences_.at(tokens, i, tokens.size(), stemmer, true);
    for (const Run& run : runs) {
      if (cut_from_seam(tokens, run) || !form_fits(tokens, i, kinds_[run.id].exact)) continue;
      if (!longest || run.tokens.size() > longest->tokens.size()) longest = &run;
    }
    const bool right = longest != nullptr && word(tokens, i, "right");
    if (longest == nullptr || (right && !right_is_a_side(tokens, longest->tokens.back()))) {
      ++i;
      continue;
    }
    Notion notion = kinds_[longest->id];
    notion.tokens = longest->tokens;
    i = notion.tokens.back() + 1;
    found.push_back(std::move(notion));
  }
  return found;
}

}  // namespace pinwright::knowledge
