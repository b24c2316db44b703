#include "knowledge/words/spelling.h"

#include <libstemmer.h>

#include <array>
#include <unordered_map>
#include <utility>

namespace pinwright::knowledge {
namespace {

using Pair = std::pair<std::string_view, std::string_view>;

constexpr auto kSame = std::to_array<Pair>({
    // Spellings.
    {"centre", "center"},
    {"centres", "center"},
    {"centred", "center"},
    {"colour", "color"},
    {"fibre", "fiber"},
    {"grey", "gray"},
    {"metre", "meter"},
    {"metres", "meter"},
    {"centimetre", "centimeter"},
    {"centimetres", "centimeter"},
    {"millimetre", "millimeter"},
    {"millimetres", "millimeter"},
    {"mould", "mold"},
    {"moulded", "mold"},
    {"armscye", "armhole"},
    {"armscyes", "armhole"},
    {"armseye", "armhole"},
    {"scye", "armhole"},
    {"scyes", "armhole"},
    // Irregular forms that no stemmer knows.
    {"bent", "bend"},
    {"bound", "bind"},
    {"came", "come"},
    {"drawn", "draw"},
    {"drew", "draw"},
    {"fallen", "fall"},
    {"fell", "fall"},
    {"felt", "feel"},
    {"hung", "hang"},
    {"leant", "lean"},
    {"ridden", "ride"},
    {"risen", "rise"},
    {"rode", "ride"},
    {"rose", "rise"},
    {"sank", "sink"},
    {"sat", "sit"},
    {"shrank", "shrink"},
    {"shrunk", "shrink"},
    {"slid", "slide"},
    {"stood", "stand"},
    {"stuck", "stick"},
    {"sunk", "sink"},
    {"swung", "swing"},
    {"took", "take"},
    {"taken", "take"},
    {"tore", "tear"},
    {"torn", "tear"},
    {"went", "go"},
    // Comparatives.
    {"bigger", "big"},
    {"deeper", "deep"},
    {"fuller", "full"},
    {"larger", "large"},
    {"longer", "long"},
    {"looser", "loose"},
    {"narrower", "narrow"},
    {"shorter", "short"},
    {"smaller", "small"},
    {"tighter", "tight"},
    {"wider", "wide"},
});

}  // namespace

std::string lower(std::string_view word) {
  std::string low(word);
  for (char& c : low) {
    if (c >= 'A' && c <= 'Z') c = static_cast<char>(c - 'A' + 'a');
  }
  return low;
}

std::string one_spelling(std::string word) {
  static const std::unordered_map<std::string_view, std::string_view> same(kSame.begin(),
                                                                           kSame.end());
  const auto known = same.find(word);
  return known == same.end() ? std::move(word) : std::string(known->second);
}

Stemmer::Stemmer() : stemmer_(sb_stemmer_new("english", nullptr)) {}

void Stemmer::Free::operator()(sb_stemmer* stemmer) const { sb_stemmer_delete(stemmer); }

std::string Stemmer::stem(std::string_view word) const {
  const auto* bytes = reinterpret_cast<const sb_symbol*>(word.data());
  const sb_symbol* stem = sb_stemmer_stem(stemmer_.get(), bytes, static_cast<int>(word.size()));
  if (stem == nullptr) return std::string(word);
  return {reinterpret_cast<const char*>(stem),
          static_cast<std::size_t>(sb_stemmer_length(stemmer_.get()))};
}

}  // namespace pinwright::knowledge
