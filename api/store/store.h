#pragma once
// Blocks and their revisions in one SQLite file (WAL, synchronous FULL).
//
// Thread safety: every call may be made from any thread; other processes may use the same file.
// One connection writes, guarded by a mutex; readers have connections of their own from a small
// pool and never wait for the writer. What a call acknowledged is on the disk.
//
// A call that fails changes nothing. Problems: those of sql_problem.h, and where stated below.

#include <memory>
#include <mutex>
#include <optional>
#include <string>
#include <vector>

#include "api/store/database.h"
#include "api/store/revision.h"
#include "engine/base/result.h"

namespace pinwright::api {

struct StoreOptions {
  int busy_ms = 5000;  ///< how long a write waits for another process
};

/// A request that may be repeated. With an empty key nothing is remembered.
struct RequestKey {
  std::string key;      ///< chosen by the caller, 1 to 200 bytes
  std::string request;  ///< the whole request as text; compared by its SHA-256
};

/// The revision on which the caller's work is based. At least one of them is given.
struct Base {
  int number = 0;    ///< 0: not said
  std::string etag;  ///< empty: not said
};

/// What came of a write: a revision, or problems.
struct Written {
  std::optional<Revision> revision;
  bool replayed = false;  ///< the same request was answered before; nothing was written now
  /// With "revision-stale" and "block-exists": the revision that is current.
  std::optional<RevisionLine> current;
  Problems problems;
  bool ok() const { return revision.has_value(); }
};

class Store {
 public:
  /// Opens the file, makes it and its folders when missing, and brings it up to date. Problems
  /// also: "store-newer", "store-foreign" (migrate.h).
  static Result<std::unique_ptr<Store>> open(const std::string& path, const StoreOptions& = {});
  ~Store();

  const std::string& path() const { return path_; }

  /// Writes revision 1. "block-exists"; "request-key-reused" (same key, another request).
  Written save(const std::string& block, const NewRevision& revision, const RequestKey& key = {});

  /// Writes the revision after `base`. "block-unknown"; "revision-stale" when the base is not the
  /// current one (checked and written in one transaction); "base-missing"; "request-key-reused".
  Written append(const std::string& block, const Base& base, const NewRevision& revision,
                 const RequestKey& key = {});

  /// Writes a revision equal to revision `number` in all but author, reason and time.
  /// "block-unknown", "revision-unknown"; "revision-stale" when a base is given and not current;
  /// "request-key-reused".
  Written restore(const std::string& block, int number, const Base& base, const std::string& author,
                  const std::string& reason, const RequestKey& key = {});

  /// What the request was answered with before; nothing when it is new. "request-key-reused".
  Result<std::optional<Revision>> answered(const RequestKey& key);

  /// The latest revision of every block, by id.
  Result<std::vector<RevisionLine>> blocks();
  /// All revisions of a block, first to last. "block-unknown".
  Result<std::vector<RevisionLine>> revisions(const std::string& block);
  /// Revision `number`, or the latest with 0. "block-unknown", "revision-unknown",
  /// "revision-damaged" (the geometry does not have the hash it was written with).
  Result<Revision> read(const std::string& block, int number = 0);

 private:
  class Reader;
  Store(std::string path, const StoreOptions& options, std::unique_ptr<Database> writer);
  template <class Work>
  Written write(Work&& work);
  template <class T, class Work>
  Result<T> look(Work&& work);

  std::string path_;
  StoreOptions options_;
  std::mutex writing_;
  std::unique_ptr<Database> writer_;
  std::mutex pooling_;
  std::vector<std::unique_ptr<Database>> pool_;
};

}  // namespace pinwright::api
