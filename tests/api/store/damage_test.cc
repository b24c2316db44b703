// Files that are damaged, locked or may not be written: problems with a mend, never a crash.

#include <sqlite3.h>
#include <sys/wait.h>

#include <fstream>

#include "tests/api/store/scratch.h"

namespace pinwright::api {
namespace {

TEST(Damage, AFileThatIsNoDatabase) {
  const Scratch scratch;
  const std::string path = scratch.file("store.db");
  std::ofstream(path) << std::string(8192, 'n');
  const auto store = Store::open(path);
  EXPECT_EQ(code(store), "store-corrupt");
  EXPECT_EQ(store.problems().front().place, "store " + path);
  EXPECT_FALSE(store.problems().front().mend.empty());
}

TEST(Damage, OverwrittenPagesAreAProblemOfTheReadNotACrash) {
  const Scratch scratch;
  const std::string path = scratch.file("store.db");
  {
    auto store = open_store(path);
    ASSERT_TRUE(store->save("deck-top", revision(std::string(60000, 'x'))).ok());
  }
  {
    std::fstream file(path, std::ios::in | std::ios::out | std::ios::binary);
    file.seekp(4096);
    file << std::string(8192, '\xA5');
  }
  auto store = Store::open(path);
  if (store.ok()) {
    const auto read = (*store)->read("deck-top");
    EXPECT_TRUE(code(read) == "store-corrupt" || code(read) == "store-broken") << code(read);
  } else {
    EXPECT_EQ(code(store), "store-corrupt");
  }
}

TEST(Damage, GeometryThatLostItsHashIsNotHandedOut) {
  const Scratch scratch;
  const std::string path = scratch.file("store.db");
  auto store = open_store(path);
  ASSERT_TRUE(store->save("deck-top", revision("one")).ok());
  ASSERT_TRUE(store->append("deck-top", {1, ""}, revision("two")).ok());
  {
    Database raw(path, false, 1000);
    raw.exec("DROP TRIGGER revisions_never_updated");
    raw.exec(R"(UPDATE revisions SET geometry = '{"mark":"forged"}' WHERE number = 1)");
  }
  EXPECT_EQ(code(store->read("deck-top", 1)), "revision-damaged");
  EXPECT_TRUE(store->read("deck-top", 2).ok());
}

TEST(Damage, AnotherWriterThatHoldsTheFileIsWaitedForThenNamed) {
  const Scratch scratch;
  const std::string path = scratch.file("store.db");
  auto store = open_store(path, 30);
  ASSERT_TRUE(store->save("deck-top", revision("one")).ok());
  Database other(path, false, 1000);
  {
    const WriteTransaction holding(other);
    EXPECT_EQ(code(store->append("deck-top", {1, ""}, revision("two"))), "store-busy");
    EXPECT_EQ(store->read("deck-top")->line.number, 1);  // readers do not wait
  }
  EXPECT_TRUE(store->append("deck-top", {1, ""}, revision("two")).ok());
}

TEST(Damage, AFolderInThePlaceOfTheFileAndAPlaceThatCannotBe) {
  const Scratch scratch;
  EXPECT_EQ(code(Store::open(scratch.folder())), "store-cannot-open");
  std::ofstream(scratch.file("plain")) << "x";
  EXPECT_EQ(code(Store::open(scratch.file("plain") + "/store.db")), "store-cannot-open");
}

TEST(Damage, AFileThatMayOnlyBeRead) {
  const Scratch scratch;
  const std::string path = scratch.file("store.db");
  {
    auto store = open_store(path);
    ASSERT_TRUE(store->save("deck-top", revision("one")).ok());
  }
  std::filesystem::permissions(path, std::filesystem::perms(0444));
  std::filesystem::permissions(scratch.folder(), std::filesystem::perms(0755));
  const pid_t child = fork();
  ASSERT_GE(child, 0);
  if (child == 0) {
    // Root may write everywhere: go on as nobody.
    if (getuid() == 0 && (setgid(65534) != 0 || setuid(65534) != 0)) _exit(9);
    auto store = Store::open(path);
    std::string problem = code(store);
    if (store.ok()) problem = code((*store)->save("other", revision("two")));
    _exit(problem == "store-read-only" || problem == "store-cannot-open" ? 0 : 1);
  }
  int status = 0;
  waitpid(child, &status, 0);
  ASSERT_TRUE(WIFEXITED(status));
  if (getuid() == 0) {
    EXPECT_EQ(WEXITSTATUS(status), 0);
  }
  std::filesystem::permissions(scratch.folder(), std::filesystem::perms(0700));
  EXPECT_EQ(open_store(path)->blocks()->size(), 1U);
}

}  // namespace
}  // namespace pinwright::api
