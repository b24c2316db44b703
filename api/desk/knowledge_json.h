#pragma once
// The knowledge as it is listed: short lines, and whole entries.

#include <optional>
#include <string>

#include "api/exchange/json.h"
#include "engine/alteration/catalogue.h"
#include "knowledge/model.h"

namespace pinwright::api {

/// {kinds, problems, signs, causes, zones, operations}: how many there are of each, and their ids.
Json knowledge_overview(const knowledge::Knowledge& k);

/// problems: {id, name, sign, causes, kinds}. signs: {id, name, zone, counts, of, sided, ask,
/// cost}. causes: {id, name, kind, what, check, remedies: [ids]}. zones: {id, name, kinds}.
/// operations: {id, name, does, amount, positive, least, most, options}.
/// Nothing for any other section.
std::optional<Json> knowledge_section(const knowledge::Knowledge& k, std::string_view section);

/// {id, entries: [...]}: every whole entry with this id, phrases and sources included, each with a
/// field `entry` that names its kind (a problem often bears the id of its leading sign). Nothing
/// when there is none.
std::optional<Json> knowledge_entries(const knowledge::Knowledge& k, std::string_view id);

/// [{key, where, title}]: title from the list of publications; null when it is not one.
Json sources_to_json(const knowledge::Knowledge& k, const std::vector<knowledge::Source>& sources);

/// Ids of all entries, for offering the nearest one.
std::vector<std::string> knowledge_ids(const knowledge::Knowledge& k);

}  // namespace pinwright::api
