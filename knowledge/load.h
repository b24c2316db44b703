#pragma once
#include <string>
#include <vector>

#include "engine/base/result.h"
#include "knowledge/model.h"

namespace pinwright::knowledge {

/// Reads every *.yaml of the folders, later ones over earlier ones (an entry with the same id
/// replaces), validates each file against the schema and proves the whole sound: ids unique, zones,
/// signs, operations and options known, every amount's expression of length (or ratio) dimension,
/// probabilities in range, every cause with a sign and at least a source, every sign reachable and
/// with words, every problem with two causes. Problems carry "file:line" as place.
Result<Knowledge> load(const std::vector<std::string>& folders);

}  // namespace pinwright::knowledge
