#pragma once
// Rows of the revisions table, read and written. All of them throw SqlFailure.

#include <optional>
#include <string>
#include <vector>

#include "api/store/database.h"
#include "api/store/revision.h"

namespace pinwright::api {

/// The latest revision of a block without its contents; nothing when there is no such block.
std::optional<RevisionLine> latest_line(Database& db, const std::string& block);
std::optional<Revision> find_revision(Database& db, const std::string& block, int number);
std::vector<RevisionLine> block_lines(Database& db);
std::vector<RevisionLine> revision_lines(Database& db, const std::string& block);
void insert_block(Database& db, const std::string& id, const std::string& time);
void insert_revision(Database& db, const Revision& revision);

/// A request that was answered.
struct Answered {
  std::string hash;
  std::string block;
  int number = 0;
};
std::optional<Answered> find_answered(Database& db, const std::string& key);
void insert_answered(Database& db, const std::string& key, const Answered& answered,
                     const std::string& time);
/// Forgets requests answered before `time`.
void forget_answered(Database& db, const std::string& time);

}  // namespace pinwright::api
