#include "api/store/store.h"

#include <sqlite3.h>

#include <chrono>
#include <filesystem>
#include <thread>
#include <utility>

#include "api/store/clock.h"
#include "api/store/digest.h"
#include "api/store/migrate.h"
#include "api/store/rows.h"
#include "api/store/sql_problem.h"

namespace pinwright::api {

namespace {

constexpr std::size_t kPooledReaders = 8;
constexpr std::size_t kLongestKey = 200;
// A repeated request comes within minutes; a month leaves room for a device that was offline.
constexpr std::chrono::hours kRememberRequests{24 * 30};

Problem block_unknown(const std::string& block) {
  return {"block-unknown", "block " + block, "No block \"" + block + "\" is in the store.",
          "List the saved blocks, or save this one first."};
}

Problem revision_unknown(const std::string& block, int number, int latest) {
  return {"revision-unknown", "block " + block + ", revision " + std::to_string(number),
          "Block \"" + block + "\" has no revision " + std::to_string(number) + ".",
          "Name a revision from 1 to " + std::to_string(latest) + "."};
}

Problem key_reused(const std::string& key) {
  return {"request-key-reused", "idempotency key " + key,
          "This key was used before for another request.",
          "Take a new key for a new request; repeat a request unchanged with its old key."};
}

Written refused(Problem problem, std::optional<RevisionLine> current = std::nullopt) {
  Written written;
  written.problems.push_back(std::move(problem));
  written.current = std::move(current);
  return written;
}

/// Nothing: the base is current.
std::optional<Written> check_base(const Base& base, const RevisionLine& current) {
  const bool number_fits = base.number == 0 || base.number == current.number;
  const bool etag_fits = base.etag.empty() || base.etag == current.etag();
  if (number_fits && etag_fits) return std::nullopt;
  const std::string seen = base.number != 0 ? "revision " + std::to_string(base.number)
                                            : "the revision with ETag " + base.etag;
  return refused({"revision-stale", "block " + current.block,
                  "The work is based on " + seen + ", but the current one is revision " +
                      std::to_string(current.number) + " (" + current.reason + ").",
                  "Look at revision " + std::to_string(current.number) +
                      ", preview the change on it, and apply it to that; nothing was changed."},
                 current);
}

/// The answer given before to this key, a refusal when it was for something else, or nothing.
std::optional<Written> replay(Database& db, const RequestKey& key, const std::string& hash) {
  if (key.key.empty()) return std::nullopt;
  if (key.key.size() > kLongestKey) {
    return refused({"request-key-too-long", "idempotency key",
                    "The key has " + std::to_string(key.key.size()) + " bytes.",
                    "Use a key of at most " + std::to_string(kLongestKey) + " bytes."});
  }
  const auto answered = find_answered(db, key.key);
  if (!answered) return std::nullopt;
  if (answered->hash != hash) return refused(key_reused(key.key));
  Written written;
  written.revision = find_revision(db, answered->block, answered->number);
  written.replayed = true;
  return written;
}

Revision make_revision(const std::string& block, const std::optional<RevisionLine>& parent,
                       const NewRevision& fresh, const std::string& time) {
  Revision revision;
  RevisionLine& line = revision.line;
  line.block = block;
  line.number = parent ? parent->number + 1 : 1;
  if (parent) line.parent = parent->number;
  line.author = fresh.author;
  line.reason = fresh.reason;
  line.time = time;
  line.name = fresh.name;
  line.kind = fresh.kind;
  line.size = fresh.size;
  line.hash = sha256_hex(fresh.body.geometry);
  revision.body = fresh.body;
  return revision;
}

/// Writes the revision and remembers the request; the caller commits.
Written put(Database& db, Revision revision, const RequestKey& key, const std::string& hash,
            std::chrono::system_clock::time_point now) {
  insert_revision(db, revision);
  if (!key.key.empty()) {
    insert_answered(db, key.key, {hash, revision.line.block, revision.line.number},
                    revision.line.time);
    forget_answered(db, iso_utc(now - kRememberRequests));
  }
  Written written;
  written.revision = std::move(revision);
  return written;
}

// Two programs that open a new file at once may both want to switch it to WAL, and SQLite then
// refuses one of them without asking the busy handler.
void set_journal(Database& db) {
  for (int attempt = 0;; ++attempt) {
    try {
      if (db.text("PRAGMA journal_mode = WAL") != "wal") {
        throw SqlFailure(SQLITE_CANTOPEN, "this place cannot hold a write-ahead log");
      }
      break;
    } catch (const SqlFailure& failure) {
      if ((failure.code() & 0xff) != SQLITE_BUSY || attempt == 100) throw;
      std::this_thread::sleep_for(std::chrono::milliseconds(20));
    }
  }
  db.exec("PRAGMA synchronous = FULL");
}

}  // namespace

/// A reading connection lent from the pool.
class Store::Reader {
 public:
  explicit Reader(Store& store) : store_(store) {
    {
      const std::lock_guard lock(store_.pooling_);
      if (!store_.pool_.empty()) {
        db_ = std::move(store_.pool_.back());
        store_.pool_.pop_back();
      }
    }
    if (db_ == nullptr) {
      db_ = std::make_unique<Database>(store_.path_, false, store_.options_.busy_ms);
      db_->exec("PRAGMA query_only = ON");
    }
  }
  ~Reader() {
    const std::lock_guard lock(store_.pooling_);
    if (healthy_ && store_.pool_.size() < kPooledReaders) store_.pool_.push_back(std::move(db_));
  }
  Reader(const Reader&) = delete;
  Reader& operator=(const Reader&) = delete;

  /// All that `work` reads belongs to one moment.
  template <class Work>
  auto run(Work&& work) {
    healthy_ = false;  // until it is known that the connection is at rest again
    db_->exec("BEGIN");
    try {
      auto result = work(*db_);
      db_->exec("COMMIT");
      healthy_ = true;
      return result;
    } catch (...) {
      db_.reset();
      throw;
    }
  }

 private:
  Store& store_;
  std::unique_ptr<Database> db_;
  bool healthy_ = true;
};

Store::Store(std::string path, const StoreOptions& options, std::unique_ptr<Database> writer)
    : path_(std::move(path)), options_(options), writer_(std::move(writer)) {}

Store::~Store() = default;

Result<std::unique_ptr<Store>> Store::open(const std::string& path, const StoreOptions& options) {
  const std::filesystem::path file(path);
  if (file.has_parent_path()) {
    std::error_code failed;
    std::filesystem::create_directories(file.parent_path(), failed);
    if (failed) {
      return sql_problem(SqlFailure(SQLITE_CANTOPEN, failed.message()), path);
    }
  }
  try {
    auto writer = std::make_unique<Database>(path, true, options.busy_ms);
    if (writer->number("PRAGMA user_version") > newest_schema_version()) {
      return migrate(*writer, path);  // says what is wrong and leaves the file as it is
    }
    set_journal(*writer);
    if (Problems problems = migrate(*writer, path); !problems.empty()) return problems;
    return std::unique_ptr<Store>(new Store(path, options, std::move(writer)));
  } catch (const SqlFailure& failure) {
    return sql_problem(failure, path);
  }
}

template <class Work>
Written Store::write(Work&& work) {
  try {
    const std::lock_guard lock(writing_);
    WriteTransaction transaction(*writer_);
    Written written = work(*writer_);
    if (written.ok() && !written.replayed) transaction.commit();
    return written;
  } catch (const SqlFailure& failure) {
    return refused(sql_problem(failure, path_));
  }
}

template <class T, class Work>
Result<T> Store::look(Work&& work) {
  try {
    Reader reader(*this);
    return reader.run(std::forward<Work>(work));
  } catch (const SqlFailure& failure) {
    return sql_problem(failure, path_);
  }
}

Written Store::save(const std::string& block, const NewRevision& revision, const RequestKey& key) {
  const auto now = std::chrono::system_clock::now();
  const std::string hash = sha256_hex(key.request);
  return write([&](Database& db) -> Written {
    if (auto before = replay(db, key, hash)) return *std::move(before);
    if (auto current = latest_line(db, block)) {
      return refused({"block-exists", "block " + block,
                      "A block \"" + block + "\" is already saved (revision " +
                          std::to_string(current->number) + ").",
                      "Save it under another id, or apply a change to the saved block."},
                     current);
    }
    Revision fresh = make_revision(block, std::nullopt, revision, iso_utc(now));
    insert_block(db, block, fresh.line.time);
    return put(db, std::move(fresh), key, hash, now);
  });
}

Written Store::append(const std::string& block, const Base& base, const NewRevision& revision,
                      const RequestKey& key) {
  if (base.number == 0 && base.etag.empty()) {
    return refused({"base-missing", "block " + block,
                    "It was not said on which revision the change was previewed.",
                    "Name the revision (If-Match, or --if-revision) that you saw."});
  }
  const auto now = std::chrono::system_clock::now();
  const std::string hash = sha256_hex(key.request);
  return write([&](Database& db) -> Written {
    if (auto before = replay(db, key, hash)) return *std::move(before);
    const auto current = latest_line(db, block);
    if (!current) return refused(block_unknown(block));
    if (auto stale = check_base(base, *current)) return *std::move(stale);
    return put(db, make_revision(block, current, revision, iso_utc(now)), key, hash, now);
  });
}

Written Store::restore(const std::string& block, int number, const Base& base,
                       const std::string& author, const std::string& reason,
                       const RequestKey& key) {
  const auto now = std::chrono::system_clock::now();
  const std::string hash = sha256_hex(key.request);
  return write([&](Database& db) -> Written {
    if (auto before = replay(db, key, hash)) return *std::move(before);
    const auto current = latest_line(db, block);
    if (!current) return refused(block_unknown(block));
    if (auto stale = check_base(base, *current)) return *std::move(stale);
    const auto old = find_revision(db, block, number);
    if (!old) return refused(revision_unknown(block, number, current->number));
    const RevisionLine& line = old->line;
    Revision fresh = make_revision(
        block, current, {author, reason, line.name, line.kind, line.size, old->body}, iso_utc(now));
    fresh.line.restores = number;
    return put(db, std::move(fresh), key, hash, now);
  });
}

Result<std::optional<Revision>> Store::answered(const RequestKey& key) {
  const std::string hash = sha256_hex(key.request);
  // Within, problems are carried out by the Written.
  auto found = look<Written>(
      [&](Database& db) -> Result<Written> { return replay(db, key, hash).value_or(Written{}); });
  if (!found) return found.problems();
  if (!found->problems.empty()) return found->problems;
  return found->revision;
}

Result<std::vector<RevisionLine>> Store::blocks() {
  return look<std::vector<RevisionLine>>(
      [](Database& db) -> Result<std::vector<RevisionLine>> { return block_lines(db); });
}

Result<std::vector<RevisionLine>> Store::revisions(const std::string& block) {
  return look<std::vector<RevisionLine>>([&](Database& db) -> Result<std::vector<RevisionLine>> {
    auto lines = revision_lines(db, block);
    if (lines.empty()) return block_unknown(block);
    return lines;
  });
}

Result<Revision> Store::read(const std::string& block, int number) {
  return look<Revision>([&](Database& db) -> Result<Revision> {
    const auto latest = latest_line(db, block);
    if (!latest) return block_unknown(block);
    auto revision = find_revision(db, block, number == 0 ? latest->number : number);
    if (!revision) return revision_unknown(block, number, latest->number);
    if (sha256_hex(revision->body.geometry) != revision->line.hash) {
      return Problem{"revision-damaged",
                     "block " + block + ", revision " + std::to_string(revision->line.number),
                     "The geometry in the store is not the one that was written.",
                     "Put back the last copy of the store; other revisions may still be sound."};
    }
    return *std::move(revision);
  });
}

}  // namespace pinwright::api
