#include "api/store/store.h"

#include <regex>

#include "api/store/digest.h"
#include "tests/api/store/scratch.h"

namespace pinwright::api {
namespace {

class StoreTest : public testing::Test {
 protected:
  void SetUp() override { store_ = open_store(scratch_.file("a/b/store.db")); }
  Scratch scratch_;
  std::unique_ptr<Store> store_;
};

TEST_F(StoreTest, SavesTheFirstRevisionWithAllThatWasGiven) {
  NewRevision fresh = revision("one", "as drafted");
  fresh.body = {R"({"block":"deck-top"})", R"([{"operation":"lengthen"}])", R"(["longer"])",
                R"({"pass":true})", R"({"mark":"1e-3"})"};
  const Written written = store_->save("deck-top", fresh);
  ASSERT_TRUE(written.ok());
  EXPECT_FALSE(written.replayed);

  const auto read = store_->read("deck-top");
  ASSERT_TRUE(read.ok());
  EXPECT_EQ(read->line.number, 1);
  EXPECT_FALSE(read->line.parent);
  EXPECT_FALSE(read->line.restores);
  EXPECT_EQ(read->line.author, "fitter 1");
  EXPECT_EQ(read->line.reason, "as drafted");
  EXPECT_EQ(read->line.name, "Deck top");
  EXPECT_EQ(read->line.kind, "knit-top");
  EXPECT_EQ(read->line.size, "M");
  EXPECT_EQ(read->body.tryon, fresh.body.tryon);
  EXPECT_EQ(read->body.steps, fresh.body.steps);
  EXPECT_EQ(read->body.notes, fresh.body.notes);
  EXPECT_EQ(read->body.proof, fresh.body.proof);
  EXPECT_EQ(read->body.geometry, fresh.body.geometry);
  EXPECT_EQ(read->line.hash, sha256_hex(fresh.body.geometry));
  EXPECT_EQ(read->line.etag(), written.revision->line.etag());
  EXPECT_TRUE(
      std::regex_match(read->line.time, std::regex(R"(\d{4}-\d\d-\d\dT\d\d:\d\d:\d\d\.\d{3}Z)")));
}

TEST_F(StoreTest, RefusesTheSameIdTwiceAndKeepsTheFirst) {
  ASSERT_TRUE(store_->save("deck-top", revision("one")).ok());
  const Written second = store_->save("deck-top", revision("two"));
  EXPECT_EQ(code(second), "block-exists");
  ASSERT_TRUE(second.current);
  EXPECT_EQ(second.current->number, 1);
  EXPECT_EQ(store_->read("deck-top")->body.geometry, R"({"mark":"one"})");
  EXPECT_EQ(store_->revisions("deck-top")->size(), 1U);
}

TEST_F(StoreTest, AppendsToTheRevisionThatWasSeen) {
  const auto first = store_->save("deck-top", revision("one"));
  const auto second = store_->append("deck-top", {1, ""}, revision("two"));
  ASSERT_TRUE(second.ok());
  EXPECT_EQ(second.revision->line.number, 2);
  EXPECT_EQ(second.revision->line.parent, 1);
  const auto third =
      store_->append("deck-top", {0, second.revision->line.etag()}, revision("three"));
  ASSERT_TRUE(third.ok());
  EXPECT_EQ(third.revision->line.number, 3);

  const auto stale = store_->append("deck-top", {0, first.revision->line.etag()}, revision("four"));
  EXPECT_EQ(code(stale), "revision-stale");
  ASSERT_TRUE(stale.current);
  EXPECT_EQ(stale.current->etag(), third.revision->line.etag());
  EXPECT_EQ(code(store_->append("deck-top", {2, ""}, revision("four"))), "revision-stale");
  // Number and ETag must both fit when both are named.
  EXPECT_EQ(code(store_->append("deck-top", {3, "3-0000000000000000"}, revision("four"))),
            "revision-stale");
  EXPECT_EQ(store_->revisions("deck-top")->size(), 3U);
}

TEST_F(StoreTest, AsksForTheBase) {
  ASSERT_TRUE(store_->save("deck-top", revision("one")).ok());
  EXPECT_EQ(code(store_->append("deck-top", {}, revision("two"))), "base-missing");
  EXPECT_EQ(code(store_->append("purser-top", {1, ""}, revision("two"))), "block-unknown");
}

TEST_F(StoreTest, RestoresAsANewRevisionWithAnEtagOfItsOwn) {
  const auto first = store_->save("deck-top", revision("one"));
  ASSERT_TRUE(store_->append("deck-top", {1, ""}, revision("two")).ok());
  EXPECT_EQ(code(store_->restore("deck-top", 1, {1, ""}, "fitter 1", "back")), "revision-stale");
  const auto back = store_->restore("deck-top", 1, {2, ""}, "fitter 2", "the second gaped");
  ASSERT_TRUE(back.ok());
  EXPECT_EQ(back.revision->line.number, 3);
  EXPECT_EQ(back.revision->line.parent, 2);
  EXPECT_EQ(back.revision->line.restores, 1);
  EXPECT_EQ(back.revision->line.author, "fitter 2");
  EXPECT_EQ(back.revision->body.geometry, first.revision->body.geometry);
  EXPECT_EQ(back.revision->line.hash, first.revision->line.hash);
  EXPECT_NE(back.revision->line.etag(), first.revision->line.etag());
  EXPECT_EQ(code(store_->restore("deck-top", 9, {}, "fitter 2", "x")), "revision-unknown");
  EXPECT_EQ(code(store_->restore("deck-top", 0, {}, "fitter 2", "x")), "revision-unknown");
  EXPECT_EQ(code(store_->restore("purser-top", 1, {}, "fitter 2", "x")), "block-unknown");
  EXPECT_EQ(store_->revisions("deck-top")->size(), 3U);
}

TEST_F(StoreTest, ListsTheLatestOfEachBlockAndAllRevisionsOfOne) {
  ASSERT_TRUE(store_->save("purser-blouse", revision("p")).ok());
  ASSERT_TRUE(store_->save("deck-top", revision("one")).ok());
  ASSERT_TRUE(store_->append("deck-top", {1, ""}, revision("two", "front neck taken in")).ok());
  const auto blocks = store_->blocks();
  ASSERT_TRUE(blocks.ok());
  ASSERT_EQ(blocks->size(), 2U);
  EXPECT_EQ(blocks->at(0).block, "deck-top");
  EXPECT_EQ(blocks->at(0).number, 2);
  EXPECT_EQ(blocks->at(0).reason, "front neck taken in");
  EXPECT_EQ(blocks->at(1).block, "purser-blouse");
  const auto revisions = store_->revisions("deck-top");
  ASSERT_EQ(revisions->size(), 2U);
  EXPECT_EQ(revisions->at(0).number, 1);
  EXPECT_EQ(revisions->at(1).number, 2);
  EXPECT_EQ(code(store_->revisions("none")), "block-unknown");
  EXPECT_EQ(code(store_->read("none")), "block-unknown");
  EXPECT_EQ(code(store_->read("deck-top", 3)), "revision-unknown");
  EXPECT_EQ(store_->read("deck-top", 1)->body.geometry, R"({"mark":"one"})");
}

TEST_F(StoreTest, ARepeatedRequestIsAnsweredAsBeforeAndWritesNothing) {
  const RequestKey save{"key-1", "save deck-top one"};
  ASSERT_TRUE(store_->save("deck-top", revision("one"), save).ok());
  const RequestKey apply{"key-2", "apply two"};
  const auto second = store_->append("deck-top", {1, ""}, revision("two"), apply);
  ASSERT_TRUE(second.ok());
  // Its base is stale by now: the answer is nevertheless the one given before.
  const auto again = store_->append("deck-top", {1, ""}, revision("two"), apply);
  ASSERT_TRUE(again.ok());
  EXPECT_TRUE(again.replayed);
  EXPECT_EQ(again.revision->line.etag(), second.revision->line.etag());
  EXPECT_EQ(again.revision->line.time, second.revision->line.time);
  const auto saved_again = store_->save("deck-top", revision("one"), save);
  ASSERT_TRUE(saved_again.ok());
  EXPECT_EQ(saved_again.revision->line.number, 1);
  EXPECT_EQ(store_->revisions("deck-top")->size(), 2U);

  const auto other = store_->append("deck-top", {2, ""}, revision("three"), {"key-2", "other"});
  EXPECT_EQ(code(other), "request-key-reused");
  EXPECT_EQ(store_->revisions("deck-top")->size(), 2U);

  EXPECT_EQ(store_->answered(apply)->value().line.number, 2);
  EXPECT_FALSE(store_->answered({"key-3", "new"})->has_value());
  EXPECT_EQ(code(store_->answered({"key-2", "other"})), "request-key-reused");
  EXPECT_EQ(code(store_->save("x", revision("x"), {std::string(201, 'k'), ""})),
            "request-key-too-long");
}

TEST_F(StoreTest, AFailedRequestIsNotRemembered) {
  const RequestKey key{"key-1", "apply"};
  EXPECT_FALSE(store_->append("deck-top", {1, ""}, revision("two"), key).ok());
  ASSERT_TRUE(store_->save("deck-top", revision("one")).ok());
  EXPECT_TRUE(store_->append("deck-top", {1, ""}, revision("two"), key).ok());
}

TEST_F(StoreTest, KeepsWhatWasWrittenWhenItIsOpenedAgain) {
  ASSERT_TRUE(store_->save("deck-top", revision("one")).ok());
  ASSERT_TRUE(store_->append("deck-top", {1, ""}, revision("two"), {"k", "r"}).ok());
  store_.reset();
  store_ = open_store(scratch_.file("a/b/store.db"));
  EXPECT_EQ(store_->read("deck-top")->line.number, 2);
  EXPECT_TRUE(store_->append("deck-top", {1, ""}, revision("two"), {"k", "r"}).replayed);
}

TEST_F(StoreTest, TextIsKeptByteForByte) {
  const std::string name = "Decktop \xC3\xA5 \"quoted\"; DROP TABLE revisions; --";
  NewRevision fresh = revision("one");
  fresh.reason = name;
  ASSERT_TRUE(store_->save("deck-top", fresh).ok());
  EXPECT_EQ(store_->read("deck-top")->line.reason, name);
  EXPECT_EQ(code(store_->read("' OR 1=1 --")), "block-unknown");
}

TEST(Digest, GivesThePublishedValues) {
  // FIPS 180-4, example values of NIST for SHA-256: "abc" and the empty message.
  EXPECT_EQ(sha256_hex("abc"), "ba7816bf8f01cfea414140de5dae2223b00361a396177a9cb410ff61f20015ad");
  EXPECT_EQ(sha256_hex(""), "e3b0c44298fc1c149afbf4c8996fb92427ae41e4649b934ca495991b7852b855");
}

}  // namespace
}  // namespace pinwright::api
