#include "api/store/sql_problem.h"

#include <sqlite3.h>

namespace pinwright::api {

Problem sql_problem(const SqlFailure& failure, const std::string& path) {
  const std::string place = "store " + path;
  const std::string said = std::string(" (") + failure.what() + ")";
  switch (failure.code() & 0xff) {
    case SQLITE_BUSY:
    case SQLITE_LOCKED:
      return {"store-busy", place, "Another program holds the store" + said + ".",
              "Try again in a moment; nothing was changed."};
    case SQLITE_READONLY:
      return {
          "store-read-only", place, "The store may be read but not written" + said + ".",
          "Give write permission on the file and its folder, or name another store with --store."};
    case SQLITE_CORRUPT:
    case SQLITE_NOTADB:
      return {"store-corrupt", place, "The file is damaged or is no store" + said + ".",
              "Name the right file with --store, or put back the last copy of it; "
              "`sqlite3 FILE .recover` may save what is readable."};
    case SQLITE_FULL:
      return {"store-full", place, "The disk is full" + said + ".",
              "Free some space and repeat; nothing was changed."};
    case SQLITE_CANTOPEN:
    case SQLITE_PERM:
    case SQLITE_AUTH:
      return {"store-cannot-open", place, "The store cannot be opened" + said + ".",
              "Name a file in a folder that exists and may be written with --store."};
    default:
      return {"store-broken", place, "The store failed" + said + ".",
              "Look at the disk and the file; nothing was changed by this request."};
  }
}

}  // namespace pinwright::api
