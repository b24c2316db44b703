#pragma once
// From a file's tree to the model, entry by entry.

#include <string>

#include "knowledge/model.h"
#include "knowledge/yaml_tree.h"

namespace pinwright::knowledge {

/// Everything that stands in one file. A field that is missing or of another sort keeps its
/// default: check_schema has said so already.
Knowledge read_entries(const YamlNode& tree, const std::string& file);

/// "HERR32: large arm" -> key "HERR32", where "large arm"; without ": " all of it is the key.
Source read_source(const std::string& text);

}  // namespace pinwright::knowledge
