#pragma once
// The one code path: what the command line and the HTTP service both call. Requests and replies are
// JSON (fields: request.h, advice_json.h, revision_json.h and below), refusals are values.
//
// Thread safety: every call may be made from any thread. Bad input changes nothing.
//
// `key` of a write is the idempotency key, empty for none: the same request with the same key is
// answered as before and changes nothing; another request with it is refused
// ("request-key-reused").

#include <memory>
#include <mutex>
#include <optional>
#include <string>
#include <utility>
#include <vector>

#include "api/desk/block_cache.h"
#include "api/desk/outcome.h"
#include "api/store/store.h"
#include "engine/pattern/block.h"
#include "knowledge/model.h"
#include "knowledge/words/listener.h"

namespace pinwright::api {

struct ChangeRequest;

/// A block that is worked on: a revision of the store, or one read from a file.
struct Subject {
  std::shared_ptr<const Block> block;
  int revision = 0;  ///< 0: not from the store
  std::string etag;  ///< empty: not from the store
};

class Desk {
 public:
  /// Without a store everything that needs one is refused with "store-missing".
  Desk(knowledge::Knowledge knowledge, std::unique_ptr<Store> store);

  /// What is known now; stays as it is for whoever holds it, also when it is loaded anew.
  std::shared_ptr<const knowledge::Knowledge> knowledge() const;

  /// --- What is known.
  /// Loads the folders of Knowledge::folders anew: {reloaded, folders, layers, ...} as
  /// knowledge_overview() tells them. Where anything is unsound the knowledge in use is kept, and
  /// what is wrong is told after a first problem "knowledge-kept". Requests under way end with what
  /// they began with.
  Outcome reload_knowledge();
  /// `section` empty for the overview; see knowledge_json.h. "entry-unknown", nearest one offered.
  Outcome list_knowledge(const std::string& section) const;
  Outcome show_knowledge(const std::string& id) const;
  /// {"words", "kind"?} -> {findings, not_understood, style, beyond_pattern, ask_back,
  /// contradictions}.
  Outcome describe(const Json& request) const;

  /// --- Blocks and revisions.
  /// {"kind", "id", "name"?, "size"?, "wearer" | "measurements", "fabric"?, "ease"?, "save"?,
  /// "author"?, "reason"?} -> {block: {...}, proof}, or with "save": true the saved revision.
  Outcome draft(const Json& request, const std::string& key = {});
  /// A block's JSON, or {"block": {...}, "author"?, "reason"?} -> revision 1.
  Outcome save(const Json& request, const std::string& key = {});
  Outcome blocks();
  Outcome revisions(const std::string& block);
  /// Latest with 0.
  Outcome revision(const std::string& block, int number);
  /// {"revision": n, "reason", "author"?}; the base may be left empty.
  Outcome restore(const std::string& block, const Base& base, const Json& request,
                  const std::string& key = {});
  Result<Subject> subject(const std::string& block, int number = 0);
  /// A block from elsewhere: "field-..." and all of check_block (exchange.h).
  static Result<Subject> subject_from(const Json& block);

  /// --- The main job.
  /// request.h (Told), "together"? -> advice_json.h, and with it `together` (together_json.h),
  /// also where not all can be had.
  Outcome advise(const Subject& subject, const Json& request) const;
  /// {"wearer"?, "fabric"?} -> {block, revision, etag} and foresight_json.h: what a toile would
  /// show, before it is sewn. Without a wearer: the one the block was drafted for.
  Outcome foresee(const Subject& subject, const Json& request) const;
  /// request.h (ChangeRequest) -> {block, base_revision, etag, steps, notes, proof, drawing,
  /// geometry?}, and `together` where proposals were sized together. Nothing is written; a proof
  /// that fails is told (reply.pass is false). Refused: "together-conflict", "together-not-met".
  Outcome preview(const Subject& subject, const Json& request) const;
  /// The same with "reason" -> the new revision. Refused: "base-missing", "revision-stale" (with
  /// the current revision), "proof-failed", "nothing-changed".
  Outcome apply(const std::string& block, const Base& base, const Json& request,
                const std::string& key = {});
  /// -> {block, revision, etag, proof}.
  Outcome check(const Subject& subject) const;

  /// --- Drawings, as SVG text. A change between two revisions tells what each one between did.
  Result<std::string> draw(const Subject& subject) const;
  Result<std::string> draw_change(const Subject& before, const Subject& after) const;
  /// What preview() would draw.
  Result<std::string> draw_preview(const Subject& subject, const Json& request) const;

 private:
  struct Changed;
  Result<Changed> change(const Subject& subject, const ChangeRequest& request) const;
  Outcome save_block(const Block& block, const std::string& author, const std::string& reason,
                     const RequestKey& key);
  Refusal no_store() const;

  /// The knowledge and what was made ready of it; exchanged as one.
  struct Known {
    Known(knowledge::Knowledge k, std::shared_ptr<const knowledge::Dictionary> words)
        : knowledge(std::move(k)), dictionary(std::move(words)) {}
    Known(const Known&) = delete;  // the listener refers to the knowledge
    Known& operator=(const Known&) = delete;
    /// Made at the first call: it takes longer than most requests that need none.
    const knowledge::Listener& listener() const {
      std::call_once(made, [this] { ready.emplace(knowledge, dictionary); });
      return *ready;
    }
    knowledge::Knowledge knowledge;
    std::shared_ptr<const knowledge::Dictionary> dictionary;

   private:
    mutable std::once_flag made;
    mutable std::optional<knowledge::Listener> ready;
  };
  std::shared_ptr<const Known> known() const;

  std::shared_ptr<const knowledge::Dictionary> dictionary_;
  mutable std::mutex knowledge_lock_;  ///< held for the exchange of the pointer only
  std::shared_ptr<const Known> known_;
  std::mutex reload_lock_;  ///< one loading at a time
  std::unique_ptr<Store> store_;
  BlockCache cache_;
};

/// The outcome of a write as reply or refusal.
Outcome outcome_of(const Written& written);

}  // namespace pinwright::api
