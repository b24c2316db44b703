#pragma once
// SQLite's failures in words, with their mend.

#include <string>

#include "api/store/database.h"
#include "engine/base/result.h"

namespace pinwright::api {

/// Codes: "store-busy" (another program writes; try again), "store-read-only", "store-corrupt" (not
/// a database, or damaged), "store-full", "store-cannot-open", "store-broken" (anything else).
/// place = "store " + path. Words of SQLite are passed on, contents of rows never.
Problem sql_problem(const SqlFailure& failure, const std::string& path);

}  // namespace pinwright::api
