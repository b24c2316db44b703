#include "api/desk/block_cache.h"

#include <algorithm>

namespace pinwright::api {

std::shared_ptr<const Block> BlockCache::find(const std::string& key) {
  const std::lock_guard lock(mutex_);
  const auto found = std::find_if(entries_.begin(), entries_.end(),
                                  [&key](const auto& entry) { return entry.first == key; });
  if (found == entries_.end()) return nullptr;
  std::rotate(entries_.begin(), found, found + 1);
  return entries_.front().second;
}

void BlockCache::keep(const std::string& key, std::shared_ptr<const Block> block) {
  const std::lock_guard lock(mutex_);
  entries_.emplace_front(key, std::move(block));
  if (entries_.size() > most_) entries_.pop_back();
}

}  // namespace pinwright::api
