#include "api/store/database.h"

#include <sqlite3.h>

#include <utility>

namespace pinwright::api {

namespace {

[[noreturn]] void fail(sqlite3* db, int code) {
  const int extended = db != nullptr ? sqlite3_extended_errcode(db) : code;
  const char* message = db != nullptr ? sqlite3_errmsg(db) : sqlite3_errstr(code);
  throw SqlFailure(extended, message != nullptr ? message : "unknown");
}

}  // namespace

Query::~Query() {
  sqlite3_reset(statement_);
  sqlite3_clear_bindings(statement_);
}

void Query::check(int code) const {
  if (code != SQLITE_OK) fail(sqlite3_db_handle(statement_), code);
}

Query& Query::bind(std::string_view text) {
  // A null pointer would bind NULL: an empty text stays a text.
  const char* data = text.data() != nullptr ? text.data() : "";
  check(sqlite3_bind_text64(statement_, next_++, data, text.size(), SQLITE_TRANSIENT, SQLITE_UTF8));
  return *this;
}

Query& Query::bind(std::int64_t number) {
  check(sqlite3_bind_int64(statement_, next_++, number));
  return *this;
}

Query& Query::bind(const std::optional<std::int64_t>& number) {
  if (number) return bind(*number);
  check(sqlite3_bind_null(statement_, next_++));
  return *this;
}

bool Query::step() {
  const int code = sqlite3_step(statement_);
  if (code == SQLITE_ROW) return true;
  if (code == SQLITE_DONE) return false;
  fail(sqlite3_db_handle(statement_), code);
}

void Query::run() {
  while (step()) {
  }
}

std::string Query::text(int column) const {
  const auto* data = reinterpret_cast<const char*>(sqlite3_column_text(statement_, column));
  if (data == nullptr) return {};
  return {data, static_cast<std::size_t>(sqlite3_column_bytes(statement_, column))};
}

std::int64_t Query::number(int column) const { return sqlite3_column_int64(statement_, column); }

std::optional<std::int64_t> Query::maybe_number(int column) const {
  if (sqlite3_column_type(statement_, column) == SQLITE_NULL) return std::nullopt;
  return number(column);
}

void Database::CloseStatement::operator()(sqlite3_stmt* statement) const {
  sqlite3_finalize(statement);
}

Database::Database(const std::string& path, bool create, int busy_ms) {
  // NOMUTEX: a connection is used by one thread at a time, as the store sees to.
  const int flags = SQLITE_OPEN_READWRITE | SQLITE_OPEN_NOMUTEX | (create ? SQLITE_OPEN_CREATE : 0);
  const int code = sqlite3_open_v2(path.c_str(), &db_, flags, nullptr);
  try {
    if (code != SQLITE_OK) fail(db_, code);
    sqlite3_extended_result_codes(db_, 1);
    sqlite3_busy_timeout(db_, busy_ms);
    exec("PRAGMA foreign_keys = ON;");
  } catch (...) {
    sqlite3_close_v2(db_);
    throw;
  }
}

Database::~Database() {
  statements_.clear();
  sqlite3_close_v2(db_);
}

Database::Database(Database&& other) noexcept
    : db_(std::exchange(other.db_, nullptr)), statements_(std::move(other.statements_)) {
  other.statements_.clear();
}

void Database::exec(const std::string& sql) {
  const int code = sqlite3_exec(db_, sql.c_str(), nullptr, nullptr, nullptr);
  if (code != SQLITE_OK) fail(db_, code);
}

Database::StatementPtr Database::prepare(std::string_view sql) {
  sqlite3_stmt* statement = nullptr;
  const int code = sqlite3_prepare_v3(db_, sql.data(), static_cast<int>(sql.size()),
                                      SQLITE_PREPARE_PERSISTENT, &statement, nullptr);
  if (code != SQLITE_OK) fail(db_, code);
  return StatementPtr(statement);
}

Query Database::query(std::string_view sql) {
  auto found = statements_.find(sql);
  if (found == statements_.end()) found = statements_.emplace(sql, prepare(sql)).first;
  return Query(found->second.get());
}

std::int64_t Database::number(const std::string& sql) {
  const StatementPtr statement = prepare(sql);
  Query query(statement.get());
  return query.step() ? query.number(0) : 0;
}

std::string Database::text(const std::string& sql) {
  const StatementPtr statement = prepare(sql);
  Query query(statement.get());
  return query.step() ? query.text(0) : std::string();
}

WriteTransaction::WriteTransaction(Database& db) : db_(db) { db_.exec("BEGIN IMMEDIATE"); }

WriteTransaction::~WriteTransaction() {
  if (!open_) return;
  try {
    db_.exec("ROLLBACK");
  } catch (const SqlFailure&) {  // NOLINT(bugprone-empty-catch)
    // SQLite has already rolled back by itself (disk full, I/O error): nothing is left to undo.
  }
}

void WriteTransaction::commit() {
  db_.exec("COMMIT");
  open_ = false;
}

}  // namespace pinwright::api
