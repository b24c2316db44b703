#pragma once
// Problems of the knowledge, each at the line of the very field.

#include <string>
#include <string_view>
#include <utility>
#include <vector>

#include "engine/base/nearest_word.h"
#include "engine/base/result.h"
#include "knowledge/model.h"
#include "knowledge/yaml_tree.h"

namespace pinwright::knowledge {

inline std::string at(const Place& place) { return at_line(place.file, place.line); }

class ToldProblems {
 public:
  /// `field` empty: of the entry as a whole.
  void say(const Place& place, const std::string& field, std::string code, std::string what,
           std::string mend) {
    problems_.push_back({std::move(code), at(field.empty() ? place : place.of(field)),
                         std::move(what), std::move(mend)});
  }
  void add(Problem problem) { problems_.push_back(std::move(problem)); }
  void add(const Problems& more) { problems_.insert(problems_.end(), more.begin(), more.end()); }
  Problems take() { return std::move(problems_); }

 private:
  Problems problems_;
};

/// "did you mean x?", by the ids (or whatever `id` gives) of `all`.
template <class Range, class Id>
std::string offer(const Range& all, const std::string& wrong, Id id) {
  std::vector<std::string_view> names;
  for (const auto& one : all) names.push_back(id(one));
  const std::string near = nearest_word(wrong, names);
  return near.empty() ? "use one that is defined" : "did you mean " + near + "?";
}
template <class Range>
std::string offer_id(const Range& all, const std::string& wrong) {
  return offer(all, wrong, [](const auto& x) -> std::string_view { return x.id; });
}

}  // namespace pinwright::knowledge
