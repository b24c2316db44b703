#include "knowledge/told_signs.h"

#include "knowledge/wording.h"

namespace pinwright::knowledge {
namespace {

constexpr std::string_view kPrefix = "said-";

}  // namespace

std::string told_sign_id(const std::string& cause) { return std::string(kPrefix) + cause; }

bool is_told_sign(std::string_view sign) { return sign.starts_with(kPrefix); }

void add_told_signs(Knowledge& k) {
  for (Cause& c : k.causes) {
    if (c.told_by.empty()) continue;
    const std::string id = told_sign_id(c.id);
    if (find_sign(k, id) != nullptr) continue;
    Sign s;
    s.id = id;
    s.name = "It is told: " + small_first(c.name);
    s.zone = "top";
    s.leak = kToldLeak;
    s.phrases = c.told_by;
    s.sources = {{"from memory", ""}};
    s.place = c.place;
    for (std::size_t i = 0; i < c.told_by.size(); ++i)
      s.place.fields["phrases/" + std::to_string(i)] =
          c.place.of("told_by/" + std::to_string(i)).line;
    k.signs.push_back(std::move(s));
    c.makes.push_back({id, kToldStrength, "judged from memory", c.place});
  }
  for (Telling& telling : k.tellings) {
    const std::string id = told_sign_id(telling.about);
    if (find_sign(k, telling.about) == nullptr && find_sign(k, id) != nullptr) telling.about = id;
  }
}

}  // namespace pinwright::knowledge
