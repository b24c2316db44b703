#include "knowledge/model.h"

namespace pinwright::knowledge {
namespace {

template <class T>
const T* find_by_id(const std::vector<T>& all, const std::string& id) {
  for (const auto& one : all)
    if (one.id == id) return &one;
  return nullptr;
}

}  // namespace

const Sign* find_sign(const Knowledge& k, const std::string& id) { return find_by_id(k.signs, id); }
const Cause* find_cause(const Knowledge& k, const std::string& id) {
  return find_by_id(k.causes, id);
}
const Zone* find_zone(const Knowledge& k, const std::string& id) { return find_by_id(k.zones, id); }

}  // namespace pinwright::knowledge
