#pragma once
// A file's tree against the published JSON Schema (schema/knowledge.schema.json, draft 7).

#include <string>

#include "engine/base/result.h"
#include "knowledge/yaml_tree.h"

namespace pinwright::knowledge {

/// Every place where the tree departs from the schema: code "schema", place "file:line", the path
/// of the value and what is wrong with it in `what`. The schema is compiled into the program, so
/// that a folder of data can be read from anywhere.
Problems check_schema(const YamlNode& tree, const std::string& file);

}  // namespace pinwright::knowledge
