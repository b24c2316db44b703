#include "knowledge/words/garment_words.h"

#include <algorithm>
#include <array>
#include <set>
#include <utility>

namespace pinwright::knowledge {
namespace {

constexpr std::string_view kStyle = "style-";
constexpr std::string_view kBeyond = "beyond-";
constexpr std::size_t kNearBefore = 3;  ///< words between a "no" and what it denies

using Text = std::pair<std::string_view, std::string_view>;
constexpr std::array<Text, 4> kNotes = {{
    {"pain",
     "Pain is not a matter for a pattern. Let the garment be easy there for now, and have the pain "
     "looked at by a doctor."},
    {"swelling",
     "Swelling is not a matter for a pattern. Please have it looked at by a doctor before anything "
     "is cut to it; it may change again."},
    {"numbness",
     "Numbness or tingling is not a matter for a pattern. Do not wear what presses there, and if "
     "it stays ask a doctor."},
    {"sudden",
     "A sudden change of one side is not a matter for a pattern. Please ask a doctor first, and "
     "measure again afterwards."},
}};

/// A "no" shortly before the run, in its clause, and not one of its own words.
bool denied(const Reading& reading, const Clause& clause, const Run& run) {
  std::size_t words = 0;
  for (std::size_t i = run.tokens.front(); i > clause.first && words < kNearBefore;) {
    --i;
    const Word& word = reading.words[i];
    if (word.notion && reading.notions[*word.notion].kind == Notion::Kind::negation) return true;
    if (word.load == Load::content) ++words;
  }
  return false;
}

bool rules_out(const Knowledge& k, const std::string& told, const std::string& other) {
  return std::any_of(k.features.begin(), k.features.end(), [&](const Feature& feature) {
    const auto rules = [&](const std::string& a, const std::string& b) {
      return feature.id == a &&
             std::find(feature.without.begin(), feature.without.end(), b) != feature.without.end();
    };
    return rules(told, other) || rules(other, told);
  });
}

void count_as_understood(Draft& draft, const Run& run) {
  for (std::size_t i : run.tokens) draft.reading.words[i].taken = true;
}

bool speaks_of_one_side(const Reading& reading, std::size_t sentence) {
  static const std::set<std::string_view> body = {"side", "shoulder", "arm",  "breast", "boob",
                                                  "hip",  "leg",      "bust", "neck"};
  for (const Notion& notion : reading.notions) {
    if (notion.kind != Notion::Kind::side || notion.side == Side::both) continue;
    for (const Clause& clause : reading.clauses) {
      const std::size_t i = notion.tokens.front();
      if (clause.sentence == sentence && i >= clause.first && i < clause.last) return true;
    }
  }
  for (const Clause& clause : reading.clauses) {
    if (clause.sentence != sentence) continue;
    for (std::size_t i = clause.first; i + 1 < clause.last; ++i) {
      if (reading.tokens[i].text == "one" && body.contains(reading.tokens[i + 1].stem)) return true;
    }
  }
  return false;
}

}  // namespace

GarmentWords::GarmentWords(const Knowledge& k, const Stemmer& stemmer) {
  for (const WordClass& words : k.words) {
    const bool style = words.id.starts_with(kStyle);
    if (!style && !words.id.starts_with(kBeyond)) continue;
    auto& names = style ? features_ : whats_;
    for (const std::string& member : words.words) {
      (style ? styles_ : beyond_).add(member, names.size(), stemmer, true);
    }
    names.push_back(words.id.substr(style ? kStyle.size() : kBeyond.size()));
  }
}

std::vector<std::string> GarmentWords::style(Draft& draft, const Stemmer& stemmer) const {
  std::set<std::string> told;
  const Reading& reading = draft.reading;
  for (const Clause& clause : reading.clauses) {
    for (std::size_t i = clause.first; i < clause.last; ++i) {
      for (const Run& run : styles_.at(reading.tokens, i, clause.last, stemmer)) {
        if (denied(reading, clause, run)) continue;
        const bool ruled_out = std::any_of(told.begin(), told.end(), [&](const std::string& other) {
          return rules_out(draft.k, other, features_[run.id]);
        });
        if (ruled_out) continue;  // "sleeveless, but it looks like cap sleeves"
        told.insert(features_[run.id]);
        count_as_understood(draft, run);
      }
    }
  }
  return {told.begin(), told.end()};
}

std::vector<ScopeNote> GarmentWords::beyond_pattern(Draft& draft, const Stemmer& stemmer) const {
  std::vector<ScopeNote> notes;
  std::set<std::string> told;
  const Reading& reading = draft.reading;
  for (const Clause& clause : reading.clauses) {
    for (std::size_t i = clause.first; i < clause.last; ++i) {
      for (const Run& run : beyond_.at(reading.tokens, i, clause.last, stemmer)) {
        const std::string& what = whats_[run.id];
        if (denied(reading, clause, run)) continue;
        if (what == "sudden" && !speaks_of_one_side(reading, clause.sentence)) continue;
        const auto* note = std::find_if(kNotes.begin(), kNotes.end(),
                                        [&](const Text& text) { return text.first == what; });
        if (note == kNotes.end() || !told.insert(what).second) continue;
        const std::size_t begin = reading.tokens[run.tokens.front()].begin;
        const std::size_t end = reading.tokens[run.tokens.back()].end;
        notes.push_back({std::string(reading.text.substr(begin, end - begin)), begin,
                         std::string(note->second)});
        count_as_understood(draft, run);
      }
    }
  }
  return notes;
}

}  // namespace pinwright::knowledge
