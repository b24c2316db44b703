#pragma once
// A thin RAII cover over SQLite. SqlFailure is thrown inside api/store only; every public function
// of the store turns it into a Problem at its door (sql_problem.h).

#include <cstdint>
#include <map>
#include <memory>
#include <optional>
#include <stdexcept>
#include <string>
#include <string_view>

struct sqlite3;
struct sqlite3_stmt;

namespace pinwright::api {

/// A call into SQLite that did not succeed. `code` is the extended result code.
class SqlFailure : public std::runtime_error {
 public:
  SqlFailure(int code, const std::string& message) : std::runtime_error(message), code_(code) {}
  int code() const { return code_; }

 private:
  int code_;
};

/// One run of a prepared statement: bind, step, read. Resets the statement when it goes away, so
/// that no read lock outlives it. Not copyable; lives no longer than its Database.
class Query {
 public:
  explicit Query(sqlite3_stmt* statement) : statement_(statement) {}
  ~Query();
  Query(const Query&) = delete;
  Query& operator=(const Query&) = delete;

  /// Parameters are bound in order, from the first one on. Text is copied.
  Query& bind(std::string_view text);
  Query& bind(std::int64_t number);
  Query& bind(const std::optional<std::int64_t>& number);

  /// True: a row is there to be read. False: done.
  bool step();
  /// Runs a statement that gives no rows.
  void run();

  /// REQUIRES: step() was true. Columns count from 0. NULL reads as "" or 0.
  std::string text(int column) const;
  std::int64_t number(int column) const;
  std::optional<std::int64_t> maybe_number(int column) const;

 private:
  void check(int code) const;
  sqlite3_stmt* statement_;
  int next_ = 1;
};

/// One connection with its prepared statements. Used by one thread at a time.
class Database {
 public:
  /// Opens (and with `create` makes) the file, with the busy time-out in milliseconds.
  Database(const std::string& path, bool create, int busy_ms);
  ~Database();
  Database(Database&&) noexcept;
  Database& operator=(Database&&) = delete;

  /// Runs one or several statements without parameters.
  void exec(const std::string& sql);
  /// The statement prepared from `sql`, prepared once and kept. `sql` must be a literal.
  Query query(std::string_view sql);
  /// The first column of the first row as a number.
  std::int64_t number(const std::string& sql);
  std::string text(const std::string& sql);

 private:
  struct CloseStatement {
    void operator()(sqlite3_stmt* statement) const;
  };
  using StatementPtr = std::unique_ptr<sqlite3_stmt, CloseStatement>;
  StatementPtr prepare(std::string_view sql);

  sqlite3* db_ = nullptr;
  std::map<std::string_view, StatementPtr> statements_;
};

/// BEGIN IMMEDIATE now, ROLLBACK when it goes away without commit().
class WriteTransaction {
 public:
  explicit WriteTransaction(Database& db);
  ~WriteTransaction();
  WriteTransaction(const WriteTransaction&) = delete;
  WriteTransaction& operator=(const WriteTransaction&) = delete;
  /// When it returns, what was written is on the disk (synchronous = FULL).
  void commit();

 private:
  Database& db_;
  bool open_ = true;
};

}  // namespace pinwright::api
