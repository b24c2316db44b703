#include "api/store/migrate.h"

#include <array>

namespace pinwright::api {

namespace {

// Version 1: blocks and their revisions. A revision is written once: no update, no delete, no
// replace (the trigger before an insert sees to the last: a REPLACE does not fire delete triggers).
constexpr const char* kRevisions = R"sql(
CREATE TABLE blocks (
  id TEXT NOT NULL PRIMARY KEY,
  created TEXT NOT NULL
) STRICT, WITHOUT ROWID;

CREATE TABLE revisions (
  key INTEGER NOT NULL PRIMARY KEY CHECK (key >= 1),
  block TEXT NOT NULL REFERENCES blocks (id),
  number INTEGER NOT NULL CHECK (number >= 1),
  parent INTEGER,
  restores INTEGER,
  author TEXT NOT NULL,
  reason TEXT NOT NULL,
  time TEXT NOT NULL,
  name TEXT NOT NULL,
  kind TEXT NOT NULL,
  size TEXT NOT NULL,
  hash TEXT NOT NULL CHECK (length(hash) = 64),
  tryon TEXT NOT NULL CHECK (json_valid(tryon)),
  steps TEXT NOT NULL CHECK (json_valid(steps)),
  notes TEXT NOT NULL CHECK (json_valid(notes)),
  proof TEXT NOT NULL CHECK (json_valid(proof)),
  geometry TEXT NOT NULL CHECK (json_valid(geometry)),
  UNIQUE (block, number),
  FOREIGN KEY (block, parent) REFERENCES revisions (block, number),
  FOREIGN KEY (block, restores) REFERENCES revisions (block, number),
  CHECK ((number = 1) = (parent IS NULL))
) STRICT;

CREATE TRIGGER revisions_never_updated BEFORE UPDATE ON revisions
BEGIN SELECT RAISE(ABORT, 'a revision is never changed'); END;
CREATE TRIGGER revisions_never_deleted BEFORE DELETE ON revisions
BEGIN SELECT RAISE(ABORT, 'a revision is never deleted'); END;
CREATE TRIGGER revisions_follow_on BEFORE INSERT ON revisions
WHEN NEW.number <> 1 + (SELECT coalesce(max(number), 0) FROM revisions WHERE block = NEW.block)
  OR EXISTS (SELECT 1 FROM revisions WHERE key = NEW.key)
BEGIN SELECT RAISE(ABORT, 'a revision follows the latest one'); END;
CREATE TRIGGER blocks_never_updated BEFORE UPDATE ON blocks
BEGIN SELECT RAISE(ABORT, 'a block keeps its id'); END;
CREATE TRIGGER blocks_never_deleted BEFORE DELETE ON blocks
BEGIN SELECT RAISE(ABORT, 'a block is never deleted'); END;
)sql";

// Version 2: keys of requests that were answered, so that a repeated one changes nothing.
constexpr const char* kRequests = R"sql(
CREATE TABLE requests (
  key TEXT NOT NULL PRIMARY KEY,
  hash TEXT NOT NULL,
  block TEXT NOT NULL,
  number INTEGER NOT NULL,
  time TEXT NOT NULL,
  FOREIGN KEY (block, number) REFERENCES revisions (block, number)
) STRICT, WITHOUT ROWID;
CREATE INDEX requests_by_time ON requests (time);
)sql";

constexpr std::array<const char*, 2> kSteps = {kRevisions, kRequests};

}  // namespace

int newest_schema_version() { return static_cast<int>(kSteps.size()); }

Problems migrate(Database& db, const std::string& path, int target) {
  const auto version = [&db] { return db.number("PRAGMA user_version"); };
  if (version() > newest_schema_version()) {
    return {{"store-newer", "store " + path,
             "The store was written by a later version of this program (schema " +
                 std::to_string(version()) + ", known up to " +
                 std::to_string(newest_schema_version()) + ").",
             "Use the later version, or name another store with --store."}};
  }
  while (version() < target) {
    WriteTransaction transaction(db);
    // Read again under the lock: another program may have been here in the meantime.
    const std::int64_t at = version();
    if (at >= target) break;
    if (at == 0 && db.number("SELECT count(*) FROM sqlite_schema") != 0) {
      return {{"store-foreign", "store " + path, "The file is a database of something else.",
               "Name another file with --store."}};
    }
    db.exec(kSteps.at(static_cast<std::size_t>(at)));
    db.exec("PRAGMA user_version = " + std::to_string(at + 1));
    transaction.commit();
  }
  return {};
}

}  // namespace pinwright::api
