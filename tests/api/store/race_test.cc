#include <atomic>
#include <barrier>
#include <set>
#include <thread>
#include <vector>

#include "tests/api/store/scratch.h"

namespace pinwright::api {
namespace {

// Each round two writers hold the same revision; exactly one of them may win.
void race(Store& a, Store& b) {
  constexpr int kRounds = 40;
  ASSERT_TRUE(a.save("deck-top", revision("0")).ok());
  std::vector<Written> from_a(kRounds);
  std::vector<Written> from_b(kRounds);
  std::barrier start(2);
  const auto run = [&start](Store& store, const char* who, std::vector<Written>& answers) {
    for (int round = 0; round < kRounds; ++round) {
      start.arrive_and_wait();
      answers[static_cast<std::size_t>(round)] =
          store.append("deck-top", {round + 1, ""}, revision(who + std::to_string(round)));
      start.arrive_and_wait();
    }
  };
  std::thread first(run, std::ref(a), "a", std::ref(from_a));
  std::thread second(run, std::ref(b), "b", std::ref(from_b));
  first.join();
  second.join();

  for (std::size_t round = 0; round < kRounds; ++round) {
    const bool a_won = from_a[round].ok();
    ASSERT_NE(a_won, from_b[round].ok()) << "round " << round;
    const Written& winner = a_won ? from_a[round] : from_b[round];
    const Written& loser = a_won ? from_b[round] : from_a[round];
    EXPECT_EQ(code(loser), "revision-stale");
    ASSERT_TRUE(loser.current);
    EXPECT_EQ(loser.current->etag(), winner.revision->line.etag());
    const auto kept = a.read("deck-top", static_cast<int>(round) + 2);
    ASSERT_TRUE(kept.ok());
    EXPECT_EQ(kept->body.geometry, winner.revision->body.geometry);
  }
  EXPECT_EQ(a.revisions("deck-top")->size(), kRounds + 1U);
}

TEST(Race, OfTwoThreadsOnOneStoreExactlyOneWins) {
  const Scratch scratch;
  auto store = open_store(scratch.file("store.db"));
  race(*store, *store);
}

TEST(Race, OfTwoOpenedStoresExactlyOneWins) {
  const Scratch scratch;
  auto a = open_store(scratch.file("store.db"));
  auto b = open_store(scratch.file("store.db"));
  race(*a, *b);
}

TEST(Race, ReadersSeeWholeRevisionsWhileOneWrites) {
  const Scratch scratch;
  auto store = open_store(scratch.file("store.db"));
  ASSERT_TRUE(store->save("deck-top", revision("1")).ok());
  std::atomic<bool> done = false;
  std::atomic<int> reads = 0;
  std::atomic<int> wrong = 0;
  const auto read = [&] {
    int seen = 0;
    while (!done) {
      const auto latest = store->read("deck-top");
      const auto lines = store->revisions("deck-top");
      if (!latest.ok() || !lines.ok() || latest->line.number < seen ||
          latest->body.geometry != R"({"mark":")" + std::to_string(latest->line.number) + R"("})" ||
          lines->size() < static_cast<std::size_t>(latest->line.number)) {
        ++wrong;
      }
      if (latest.ok()) seen = latest->line.number;
      ++reads;
    }
  };
  std::thread one(read);
  std::thread two(read);
  for (int number = 1; number < 60 || reads < 20; ++number) {
    ASSERT_TRUE(store->append("deck-top", {number, ""}, revision(std::to_string(number + 1))).ok());
  }
  done = true;
  one.join();
  two.join();
  EXPECT_EQ(wrong, 0);
}

TEST(Race, ManyThreadsMayOpenANewFileAtOnce) {
  const Scratch scratch;
  std::vector<std::string> codes(8);
  std::vector<std::thread> threads;
  threads.reserve(codes.size());
  for (std::size_t i = 0; i < codes.size(); ++i) {
    threads.emplace_back([&, i] {
      auto store = Store::open(scratch.file("store.db"));
      codes[i] = store.ok() ? code((*store)->save("top-" + std::to_string(i), revision("one")))
                            : store.problems().front().what;
    });
  }
  for (std::thread& thread : threads) thread.join();
  for (const std::string& problem : codes) EXPECT_EQ(problem, "");
  EXPECT_EQ(open_store(scratch.file("store.db"))->blocks()->size(), codes.size());
}

}  // namespace
}  // namespace pinwright::api
