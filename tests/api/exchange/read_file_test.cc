#include "api/exchange/read_file.h"

#include <gtest/gtest.h>
#include <sys/resource.h>

#include <filesystem>
#include <fstream>

#include "api/exchange/exchange.h"

namespace pinwright::api {
namespace {

class ReadFile : public ::testing::Test {
 protected:
  void SetUp() override {
    folder_ =
        std::filesystem::temp_directory_path() / ("pinwright-read-" + std::to_string(::getpid()));
    std::filesystem::create_directories(folder_);
  }
  void TearDown() override { std::filesystem::remove_all(folder_); }
  std::string path(const std::string& name) const { return (folder_ / name).string(); }
  std::filesystem::path folder_;
};

TEST_F(ReadFile, GivesEveryByte) {
  const std::string text("a\0b\r\n\xFF", 6);
  std::ofstream(path("x"), std::ios::binary) << text;
  const auto read = read_file_limited(path("x"), 6);
  ASSERT_TRUE(read.ok());
  EXPECT_EQ(read.value(), text);
  EXPECT_EQ(read_file_limited(path("x"), 5).problems()[0].code, "too-large");
}

TEST_F(ReadFile, RefusesAHundredMegabytesBySizeAlone) {
  std::ofstream(path("big")) << "{";
  std::filesystem::resize_file(path("big"), 100u << 20);
  rusage before{};
  getrusage(RUSAGE_SELF, &before);
  const auto read = read_block_file(path("big"));
  rusage after{};
  getrusage(RUSAGE_SELF, &after);
  ASSERT_FALSE(read.ok());
  EXPECT_EQ(read.problems()[0].code, "too-large");
  EXPECT_EQ(read.problems()[0].place, path("big"));
  // the resident peak (KiB) must not grow by anything like the file
  EXPECT_LT(after.ru_maxrss - before.ru_maxrss, 16 * 1024);
}

TEST_F(ReadFile, StopsAtTheLimitWhenTheSizeSaysNothing) {
  // files of /proc tell a size of 0
  const auto read = read_file_limited("/proc/self/maps", 10);
  ASSERT_FALSE(read.ok());
  EXPECT_EQ(read.problems()[0].code, "too-large");
}

TEST_F(ReadFile, RefusesWhatIsNoFile) {
  EXPECT_EQ(read_file_limited(path("none"), 10).problems()[0].code, "file-missing");
  EXPECT_EQ(read_file_limited(folder_.string(), 10).problems()[0].code, "file-not-regular");
  EXPECT_EQ(read_file_limited("/dev/zero", 10).problems()[0].code, "file-not-regular");
  EXPECT_EQ(read_file_limited("", 10).problems()[0].code, "file-missing");
}

}  // namespace
}  // namespace pinwright::api
