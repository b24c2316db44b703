#include "api/bodies/sizes.h"

#include <algorithm>
#include <cmath>
#include <map>

namespace pinwright::api {
namespace {

using Members = std::vector<const Wearer*>;

double of(const Wearer& wearer, const char* id) { return wearer.body.at(id); }

/// By bust class; the ends, where bodies are few, are put to the class beside them.
std::vector<Members> bust_classes(const std::vector<Wearer>& bodies) {
  std::map<long, Members> by_step;
  for (const Wearer& wearer : bodies) {
    by_step[std::lround(of(wearer, "bust-girth") / kBustStepMm)].push_back(&wearer);
  }
  std::vector<Members> classes;
  Members few;
  for (auto& [step, members] : by_step) {
    few.insert(few.end(), members.begin(), members.end());
    if (few.size() < kLeastBodies) continue;
    classes.push_back(std::move(few));
    few.clear();
  }
  if (classes.empty()) {
    classes.push_back(std::move(few));
  } else {
    classes.back().insert(classes.back().end(), few.begin(), few.end());
  }
  return classes;
}

/// Equal parts of a class in order of waist less bust.
std::vector<Members> figures(Members members) {
  std::stable_sort(members.begin(), members.end(), [](const Wearer* a, const Wearer* b) {
    return of(*a, "waist-girth") - of(*a, "bust-girth") <
           of(*b, "waist-girth") - of(*b, "bust-girth");
  });
  const std::size_t parts = std::clamp<std::size_t>(members.size() / kLeastBodies, 1, kFigures);
  std::vector<Members> all(parts);
  for (std::size_t i = 0; i < members.size(); ++i) {
    all[i * parts / members.size()].push_back(members[i]);
  }
  return all;
}

double median(std::vector<double> values) {
  std::sort(values.begin(), values.end());
  const std::size_t n = values.size();
  return n % 2 == 1 ? values[n / 2] : (values[n / 2 - 1] + values[n / 2]) / 2.0;
}

Wearer median_of(const Members& members, std::string label) {
  Wearer wearer;
  wearer.id = std::move(label);
  for (const auto& [id, mm] : members.front()->body) {
    std::vector<double> values;
    for (const Wearer* member : members) values.push_back(member->body.at(id));
    wearer.body[id] = median(std::move(values));
  }
  return wearer;
}

}  // namespace

DraftedSizes draft_sizes(const std::vector<Wearer>& bodies, std::string_view kind,
                         const Fabric& fabric) {
  DraftedSizes made;
  if (bodies.empty()) return made;
  for (const Members& bust_class : bust_classes(bodies)) {
    const std::vector<Members> parted = figures(bust_class);
    for (std::size_t f = 0; f < parted.size(); ++f) {
      DraftInput input;
      input.fabric = fabric;
      input.wearer = median_of(parted[f], "size");
      input.size = "bust " + std::to_string(std::lround(of(input.wearer, "bust-girth"))) +
                   ", figure " + std::to_string(f + 1);
      input.id = "size-" + std::to_string(made.sizes.size() + 1);
      input.wearer.id = input.id;
      Result<Block> block = draft(kind, input);
      if (block) {
        made.sizes.push_back({input.size, parted[f].size(), std::move(block).value()});
      } else {
        made.refused.push_back({input.size, block.problems()});
      }
    }
  }
  return made;
}

}  // namespace pinwright::api
