// A writer that is killed in the middle of its work loses nothing that it acknowledged.

#include <sys/wait.h>

#include <csignal>

#include "tests/api/store/scratch.h"

namespace pinwright::api {
namespace {

/// In the child: appends for ever and tells each acknowledged number through the pipe.
[[noreturn]] void write_for_ever(const std::string& path, int from, int pipe_end) {
  auto store = Store::open(path);
  if (!store.ok()) _exit(1);
  for (int number = from;; ++number) {
    const auto written = (*store)->append(
        "deck-top", {number, ""}, revision(std::to_string(number + 1) + std::string(20000, 'x')));
    if (!written.ok()) _exit(2);
    const int acknowledged = written.revision->line.number;
    if (write(pipe_end, &acknowledged, sizeof acknowledged) != sizeof acknowledged) _exit(3);
  }
}

TEST(Crash, EveryAcknowledgedRevisionIsThereAfterAKill) {
  const Scratch scratch;
  const std::string path = scratch.file("store.db");
  {
    auto store = open_store(path);
    ASSERT_TRUE(store->save("deck-top", revision("1")).ok());
  }
  int latest = 1;
  for (int life = 0; life < 5; ++life) {
    int ends[2];
    ASSERT_EQ(pipe(ends), 0);
    const pid_t child = fork();
    ASSERT_GE(child, 0);
    if (child == 0) {
      close(ends[0]);
      write_for_ever(path, latest, ends[1]);
    }
    close(ends[1]);
    int acknowledged = 0;
    const int wanted = latest + 25 + 7 * life;
    while (acknowledged < wanted &&
           read(ends[0], &acknowledged, sizeof acknowledged) == sizeof acknowledged) {
    }
    kill(child, SIGKILL);
    // What it still acknowledged between the last look and its end counts as well.
    int more = 0;
    while (read(ends[0], &more, sizeof more) == sizeof more) acknowledged = more;
    close(ends[0]);
    int status = 0;
    ASSERT_EQ(waitpid(child, &status, 0), child);
    ASSERT_TRUE(WIFSIGNALED(status)) << "the writer ended by itself: " << WEXITSTATUS(status);
    ASSERT_GE(acknowledged, wanted);

    auto store = open_store(path);
    const auto lines = store->revisions("deck-top");
    ASSERT_TRUE(lines.ok());
    latest = static_cast<int>(lines->size());
    EXPECT_GE(latest, acknowledged);
    EXPECT_LE(latest, acknowledged + 1);  // one may have been written but not yet told
    for (const RevisionLine& line : *lines) {
      EXPECT_TRUE(store->read("deck-top", line.number).ok());  // the hash holds
    }
    EXPECT_EQ(Database(path, false, 1000).text("PRAGMA integrity_check"), "ok");
  }
}

}  // namespace
}  // namespace pinwright::api
