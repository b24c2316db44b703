// What was written cannot be changed even by somebody who opens the file with SQL.

#include <sqlite3.h>

#include "tests/api/store/scratch.h"

namespace pinwright::api {
namespace {

class ImmutableTest : public testing::TestWithParam<const char*> {};

TEST_P(ImmutableTest, RawSqlIsRefusedAndNothingChanges) {
  const Scratch scratch;
  const std::string path = scratch.file("store.db");
  auto store = open_store(path);
  ASSERT_TRUE(store->save("deck-top", revision("one")).ok());
  ASSERT_TRUE(store->append("deck-top", {1, ""}, revision("two")).ok());
  Database raw(path, false, 1000);
  EXPECT_THROW(raw.exec(GetParam()), SqlFailure);
  EXPECT_EQ(store->read("deck-top", 1)->body.geometry, R"({"mark":"one"})");
  EXPECT_EQ(store->read("deck-top", 2)->body.geometry, R"({"mark":"two"})");
  EXPECT_EQ(store->revisions("deck-top")->size(), 2U);
  EXPECT_EQ(raw.text("PRAGMA integrity_check"), "ok");
}

constexpr const char* kColumns =
    "INSERT INTO revisions (block, number, parent, author, reason, time, name, kind, size, hash, "
    "tryon, steps, notes, proof, geometry) ";

const std::string kReplace =
    "INSERT OR REPLACE INTO revisions SELECT key, block, number, parent, restores, 'thief', "
    "reason, "
    "time, name, kind, size, hash, tryon, steps, notes, proof, geometry FROM revisions";
const std::string kSameNumber =
    std::string(kColumns) +
    "SELECT block, number, parent, author, reason, time, name, kind, size, hash, tryon, steps, "
    "notes, proof, geometry FROM revisions WHERE number = 2";
const std::string kGap =
    std::string(kColumns) +
    "SELECT block, 4, 2, author, reason, time, name, kind, size, hash, tryon, steps, notes, proof, "
    "geometry FROM revisions WHERE number = 2";
const std::string kNoJson =
    std::string(kColumns) +
    "SELECT block, 3, 2, author, reason, time, name, kind, size, hash, tryon, steps, notes, proof, "
    "'{' FROM revisions WHERE number = 2";

INSTANTIATE_TEST_SUITE_P(Statements, ImmutableTest,
                         testing::Values("UPDATE revisions SET geometry = '{}' WHERE number = 1",
                                         "UPDATE revisions SET author = 'thief'",
                                         "DELETE FROM revisions",
                                         "DELETE FROM revisions WHERE number = 2",
                                         "DELETE FROM blocks", "UPDATE blocks SET id = 'other'",
                                         kReplace.c_str(), kSameNumber.c_str(), kGap.c_str(),
                                         kNoJson.c_str()));

}  // namespace
}  // namespace pinwright::api
