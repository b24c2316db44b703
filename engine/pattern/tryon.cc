#include "engine/pattern/tryon.h"

#include <array>
#include <span>
#include <utility>

namespace pinwright {
namespace {

template <class Value>
using Word = std::pair<Value, std::string_view>;

constexpr std::array<Word<Side>, 3> kSides = {
    {{Side::both, "both"}, {Side::left, "left"}, {Side::right, "right"}}};
constexpr std::array<Word<FindingState>, 3> kStates = {
    {{FindingState::present, "present"},
     {FindingState::absent, "absent"},
     {FindingState::not_looked_at, "not-looked-at"}}};
constexpr std::array<Word<Taken>, 6> kTaken = {{{Taken::unsaid, "unsaid"},
                                                {Taken::fold_depth, "fold-depth"},
                                                {Taken::cloth, "cloth"},
                                                {Taken::gap, "gap"},
                                                {Taken::let_out, "let-out"},
                                                {Taken::distance, "distance"}}};
constexpr std::array<Word<Of>, 2> kOf = {{{Of::whole, "whole"}, {Of::half, "half"}}};

template <class Value, std::size_t n>
std::string_view word(const std::array<Word<Value>, n>& words, Value value) {
  for (const auto& [known, text] : words) {
    if (known == value) return text;
  }
  return "";
}

template <class Value, std::size_t n>
std::optional<Value> meaning(const std::array<Word<Value>, n>& words, std::string_view text) {
  for (const auto& [value, known] : words) {
    if (known == text) return value;
  }
  return std::nullopt;
}

}  // namespace

std::string_view to_text(Side value) { return word(kSides, value); }
std::string_view to_text(FindingState value) { return word(kStates, value); }
std::string_view to_text(Taken value) { return word(kTaken, value); }
std::string_view to_text(Of value) { return word(kOf, value); }
std::optional<Side> side(std::string_view text) { return meaning(kSides, text); }
std::optional<FindingState> finding_state(std::string_view text) { return meaning(kStates, text); }
std::optional<Taken> taken(std::string_view text) { return meaning(kTaken, text); }
std::optional<Of> of(std::string_view text) { return meaning(kOf, text); }

}  // namespace pinwright
