#include "api/store/migrate.h"

#include <sqlite3.h>

#include "tests/api/store/scratch.h"

namespace pinwright::api {
namespace {

TEST(Migrate, BringsAnOlderFileUpToDateAndKeepsItsRevisions) {
  const Scratch scratch;
  const std::string path = scratch.file("store.db");
  {
    Database old(path, true, 1000);
    ASSERT_TRUE(migrate(old, path, 1).empty());
    EXPECT_EQ(old.number("PRAGMA user_version"), 1);
    EXPECT_EQ(old.number("SELECT count(*) FROM sqlite_schema WHERE name = 'requests'"), 0);
    old.exec(
        "INSERT INTO blocks VALUES ('deck-top', 't');"
        "INSERT INTO revisions (block, number, author, reason, time, name, kind, size, hash, "
        "tryon, "
        "steps, notes, proof, geometry) VALUES ('deck-top', 1, 'fitter 1', 'old', 't', 'n', "
        "'knit-top', 'M', '44136fa355b3678a1146ad16f7e8649e94fb4fc21fe77e8310c060f61caaff8a', "
        "'null', '[]', '[]', 'null', '{}')");
  }
  auto store = open_store(path);
  ASSERT_NE(store, nullptr);
  EXPECT_EQ(store->read("deck-top")->line.reason, "old");
  EXPECT_TRUE(store->append("deck-top", {1, ""}, revision("two"), {"k", "r"}).ok());
  Database raw(path, false, 1000);
  EXPECT_EQ(raw.number("PRAGMA user_version"), newest_schema_version());
  EXPECT_EQ(raw.text("PRAGMA journal_mode"), "wal");
}

TEST(Migrate, ATornMigrationLeavesTheFormerVersion) {
  const Scratch scratch;
  const std::string path = scratch.file("store.db");
  Database db(path, true, 1000);
  ASSERT_TRUE(migrate(db, path, 1).empty());
  db.exec("CREATE TABLE requests (x)");  // the second version cannot make its table
  EXPECT_THROW((void)migrate(db, path), SqlFailure);
  EXPECT_EQ(db.number("PRAGMA user_version"), 1);
  db.exec("DROP TABLE requests");
  EXPECT_TRUE(migrate(db, path).empty());
  EXPECT_EQ(db.number("PRAGMA user_version"), newest_schema_version());
}

TEST(Migrate, LeavesAFileOfALaterProgramAsItIs) {
  const Scratch scratch;
  const std::string path = scratch.file("store.db");
  {
    Database later(path, true, 1000);
    later.exec("CREATE TABLE later (x); PRAGMA user_version = 99");
  }
  const auto store = Store::open(path);
  EXPECT_EQ(code(store), "store-newer");
  Database raw(path, false, 1000);
  EXPECT_EQ(raw.number("SELECT count(*) FROM sqlite_schema"), 1);
  EXPECT_EQ(raw.number("PRAGMA user_version"), 99);
}

TEST(Migrate, RefusesADatabaseOfSomethingElse) {
  const Scratch scratch;
  const std::string path = scratch.file("store.db");
  {
    Database other(path, true, 1000);
    other.exec("CREATE TABLE stock (yards)");
  }
  EXPECT_EQ(code(Store::open(path)), "store-foreign");
}

}  // namespace
}  // namespace pinwright::api
