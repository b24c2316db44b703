#pragma once
// Where a file departs from the schema, in a fitter's words and at the line of the very field.

#include <string>

#include "engine/base/result.h"
#include "knowledge/yaml_tree.h"

namespace pinwright::knowledge {

/// Walks the schema beside the tree, so that it can say what the validator's texts do not: which
/// entry it is ("sign front-neckline-gapes"), which field was meant, what may stand there. Knows
/// the keywords that schema/knowledge.schema.json uses; whether the file is valid is for
/// check_schema to say. All of code "schema".
Problems say_departures(const YamlNode& tree, const std::string& file);

}  // namespace pinwright::knowledge
