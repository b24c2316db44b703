#pragma once
// The knowledge as it is listed: short lines, and whole entries.

#include <optional>
#include <string>

#include "api/exchange/json.h"
#include "engine/alteration/catalogue.h"
#include "knowledge/model.h"

namespace pinwright::api {

/// {counts: {problems, signs, causes, ...}, layers: [{folder, counts, entries?, replaces}]}: where
/// the knowledge comes from, the folders in their order. `entries` (ids by sort) is told of what is
/// laid over, not of the first folder; replaces: [{entry, id, was, is}], places as "file:line".
Json knowledge_counts(const knowledge::Knowledge& k);

/// {kinds, problems, signs, causes, zones, operations}: ids of each; and `layers`.
Json knowledge_overview(const knowledge::Knowledge& k);

/// problems: {id, name, sign, causes, kinds}. signs: {id, name, zone, counts, of, sided, ask,
/// cost}. causes: {id, name, kind, what, check, remedies: [ids]}. zones: {id, name, kinds}.
/// operations: {id, name, does, amount, positive, least, most, options}. All but operations also
/// say `from`, "file:line".
/// layers: those of knowledge_counts(). Nothing for any other section.
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
