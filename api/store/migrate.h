#pragma once
// The shape of the database and how an older one is brought up to it.

#include "api/store/database.h"
#include "engine/base/result.h"

namespace pinwright::api {

/// The version this program writes (PRAGMA user_version).
int newest_schema_version();

/// Brings the database from its user_version to `target`, each version in a transaction of its own,
/// safe when two programs do it at once. "store-newer" when the file was written by a later
/// program: it is left as it is. "store-foreign" when the file holds tables of something else.
/// Throws SqlFailure. Tests pass an older target.
Problems migrate(Database& db, const std::string& path, int target = newest_schema_version());

}  // namespace pinwright::api
