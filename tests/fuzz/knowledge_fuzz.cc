// Any bytes as a file of knowledge: loaded, or refused with problems that name the file.
#include <unistd.h>

#include <cstdlib>
#include <filesystem>
#include <fstream>

#include "knowledge/load.h"

extern "C" int LLVMFuzzerTestOneInput(const unsigned char* data, std::size_t size) {
  using namespace pinwright;
  const std::filesystem::path folder =
      std::filesystem::temp_directory_path() / ("pinwright-fuzz-" + std::to_string(getpid()));
  std::filesystem::create_directories(folder);
  std::ofstream(folder / "any.yaml", std::ios::binary)
      .write(reinterpret_cast<const char*>(data), static_cast<std::streamsize>(size));
  const Result<knowledge::Knowledge> loaded = knowledge::load({folder.string()});
  if (!loaded && loaded.problems().empty()) std::abort();
  return 0;
}
