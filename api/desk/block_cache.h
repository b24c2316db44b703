#pragma once
// Blocks as they were parsed last. Revisions never change, so an entry is never wrong.

#include <deque>
#include <memory>
#include <mutex>
#include <string>
#include <utility>

#include "engine/pattern/block.h"

namespace pinwright::api {

/// The latest used blocks by key (block id and ETag). Any thread.
class BlockCache {
 public:
  explicit BlockCache(std::size_t most = 64) : most_(most) {}
  /// nullptr when it is not here.
  std::shared_ptr<const Block> find(const std::string& key);
  void keep(const std::string& key, std::shared_ptr<const Block> block);

 private:
  std::size_t most_;
  std::mutex mutex_;
  std::deque<std::pair<std::string, std::shared_ptr<const Block>>> entries_;  ///< latest first
};

}  // namespace pinwright::api
