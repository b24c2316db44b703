#include "knowledge/words/function_words.h"

#include <unordered_set>

namespace pinwright::knowledge {
namespace {

using Words = std::unordered_set<std::string_view>;  // only looked up in

const Words& noise() {
  static const Words words = {
      "a",      "am",     "an",    "and",   "are",   "be",     "been", "being", "can",
      "could",  "did",    "do",    "does",  "doing", "done",   "had",  "has",   "have",
      "having", "he",     "her",   "hers",  "him",   "his",    "i",    "is",    "it",
      "its",    "itself", "may",   "me",    "might", "mine",   "must", "my",    "of",
      "or",     "our",    "ours",  "shall", "she",   "should", "that", "the",   "their",
      "theirs", "them",   "these", "they",  "this",  "those",  "us",   "was",   "we",
      "were",   "which",  "who",   "whose", "will",  "would",  "you",  "your",  "yours"};
  return words;
}

const Words& light() {
  static const Words words = {
      // where and when
      "about", "above", "across", "after", "against", "all", "along", "around", "as", "at", "away",
      "because", "before", "behind", "below", "between", "by", "down", "during", "for", "from",
      "here", "how", "if", "in", "into", "near", "now", "off", "on", "once", "onto", "out", "over",
      "per", "round", "since", "so", "than", "then", "there", "through", "to", "toward", "towards",
      "under", "up", "upon", "via", "what", "when", "where", "why", "with", "within",
      // how much and how surely
      "actually", "almost", "already", "also", "always", "any", "anymore", "apparently", "approx",
      "approximately", "bit", "both", "ca", "circa", "clearly", "definitely", "especially", "even",
      "ever", "every", "fairly", "good", "just", "kind", "like", "likely", "little", "lot",
      "mainly", "maybe", "more", "most", "mostly", "much", "nearly", "obviously", "often", "one",
      "only", "overall", "particularly", "perhaps", "please", "possibly", "pretty", "probably",
      "quite", "rather", "really", "roughly", "said", "say", "says", "slight", "slightly", "some",
      "sometimes", "somewhat", "sort", "still", "such", "tad", "too", "very", "well", "whole",
      "again", "another", "likewise", "either", "each", "other", "others", "same", "whereas", "yes",
      "quarter", "half",
      // verbs of seeming and telling
      "appear", "appears", "appeared", "became", "become", "becomes", "believe", "feel", "feels",
      "feeling", "find", "found", "get", "gets", "getting", "got", "guess", "look", "looks",
      "looked", "looking", "notice", "noticed", "saw", "see", "seem", "seemed", "seems", "seen",
      "sits", "tell", "think", "told", "try", "tried"};
  return words;
}

}  // namespace

Load load_of(std::string_view word) {
  if (noise().contains(word)) return Load::noise;
  return light().contains(word) ? Load::light : Load::content;
}

bool is_pronoun(std::string_view word) {
  static const Words words = {"it",    "its",  "itself", "she",   "he",    "that",
                              "these", "they", "this",   "those", "which", "them"};
  return words.contains(word);
}

bool is_foreign(std::string_view word) {
  static const Words words = {
      "der",  "das",  "und",  "ist",    "nicht", "ein",   "eine", "einen", "dem",  "den",   "sich",
      "auf",  "mit",  "zu",   "vom",    "zum",   "beim",  "ich",  "wenn",  "aber", "sehr",  "meine",
      "mein", "hat",  "wird", "bei",    "le",    "la",    "les",  "des",   "est",  "pas",   "une",
      "du",   "au",   "aux",  "et",     "dans",  "sur",   "trop", "je",    "mon",  "qui",   "que",
      "elle", "sont", "el",   "los",    "las",   "una",   "muy",  "del",   "por",  "con",   "es",
      "il",   "lo",   "gli",  "che",    "non",   "della", "di",   "het",   "een",  "niet",  "van",
      "aan",  "mijn", "te",   "troppo", "e",     "y",     "pero", "wel",   "zit",  "steht", "ab"};
  return words.contains(word);
}

bool is_plainly_english(std::string_view word) {
  static const Words words = {
      "the",   "is",    "of",  "and",  "it",   "my", "at",  "to",   "with", "that", "but",
      "when",  "are",   "not", "i",    "this", "a",  "too", "from", "does", "have", "has",
      "there", "where", "she", "they", "for",  "on", "its", "be",   "you",  "me",   "her"};
  return words.contains(word);
}

bool is_negation(std::string_view word) {
  static const Words words = {"not",     "no",      "never",    "neither", "nor",    "none",
                              "without", "nothing", "scarcely", "hardly",  "barely", "nobody"};
  return words.contains(word);
}

bool is_test_stem(std::string_view stem) {
  static const Words stems = {
      "pin",   "pinch", "lift", "tuck",    "unpick", "releas", "hold",     "press", "tug",
      "snip",  "clip",  "pad",  "tape",    "open",   "fold",   "undo",     "slip",  "let",
      "push",  "pull",  "rais", "take",    "put",    "cut",    "slash",    "remov", "unfasten",
      "hitch", "hoist", "drop", "scrunch", "grab",   "smooth", "unbutton", "nip",   "undon"};
  return stems.contains(stem);
}

}  // namespace pinwright::knowledge
