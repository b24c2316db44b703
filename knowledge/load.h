#pragma once
#include <string>
#include <vector>

#include "engine/base/result.h"
#include "knowledge/model.h"

namespace pinwright::knowledge {

/// Reads every *.yaml of the folders (by name, not of folders within; a path of one file is a
/// folder of that file), later folders over earlier ones: an entry with the same id replaces, and
/// Knowledge::replaced says which. Each file is validated against the schema
/// (schema_check.h), and the whole is proved sound (soundness.h): ids unique within a folder,
/// zones, signs, operations and options known, every amount of the dimension that its operation
/// takes, probabilities in range, every cause with a sign and at least a source, every sign
/// reachable and with words, every problem with two causes. All problems in one pass, at most 500,
/// with "file:line" as place; those of a folder or file that cannot be read: "folder-missing",
/// "folder-unreadable", "folder-empty", "file-unreadable" and the codes of yaml_tree.h; when some
/// file could not be read as YAML, the proof of the whole waits until it can.
Result<Knowledge> load(const std::vector<std::string>& folders);

}  // namespace pinwright::knowledge
