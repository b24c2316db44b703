#include "api/exchange/read_file.h"

#include <filesystem>
#include <fstream>

namespace pinwright::api {
namespace {

Problem too_large(const std::string& path, const std::string& size, std::size_t most) {
  return {"too-large", path,
          "The file has " + size + " bytes; at most " + std::to_string(most) + " are read.",
          "Check that this is the right file."};
}

}  // namespace

Result<std::string> read_file_limited(const std::string& path, std::size_t most_bytes) {
  std::error_code error;
  const auto status = std::filesystem::status(path, error);
  if (error || !std::filesystem::exists(status)) {
    return Problem{"file-missing", path, "There is no such file, or it may not be looked at.",
                   "Check the path and its permissions."};
  }
  if (!std::filesystem::is_regular_file(status)) {
    return Problem{"file-not-regular", path, "This is not a file that can be read as a whole.",
                   "Give the path of a file, not of a folder or device."};
  }
  const auto size = std::filesystem::file_size(path, error);
  if (!error && size > most_bytes) return too_large(path, std::to_string(size), most_bytes);

  std::ifstream file(path, std::ios::binary);
  if (!file) {
    return Problem{"file-missing", path, "The file cannot be opened.", "Check its permissions."};
  }
  std::string text;
  char buffer[65536];
  while (file && text.size() <= most_bytes) {
    const std::size_t want = std::min(sizeof buffer, most_bytes + 1 - text.size());
    file.read(buffer, static_cast<std::streamsize>(want));
    text.append(buffer, static_cast<std::size_t>(file.gcount()));
  }
  if (text.size() > most_bytes) return too_large(path, "more than it says", most_bytes);
  if (file.bad()) {
    return Problem{"file-missing", path, "The file could not be read to its end.",
                   "Check the disk and try again."};
  }
  return text;
}

}  // namespace pinwright::api
