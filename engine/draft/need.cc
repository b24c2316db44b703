#include "engine/draft/need.h"

#include <algorithm>
#include <array>
#include <cmath>
#include <string>

#include "engine/base/units.h"
#include "engine/pattern/measurement.h"

namespace pinwright::drafting {
namespace {

constexpr std::array<std::string_view, 10> kKnitNeeds = {
    "bust-girth", "waist-girth",     "hip-girth",         "neck-base-girth",
    "head-girth", "shoulder-length", "across-back-width", "back-waist-length",
    "scye-depth", "upper-arm-girth"};
constexpr std::array<std::string_view, 14> kWovenNeeds = {
    "bust-girth",        "waist-girth",        "neck-base-girth",
    "shoulder-length",   "across-back-width",  "across-front-width",
    "back-waist-length", "front-waist-length", "neck-shoulder-point-to-bust-point",
    "bust-point-width",  "scye-depth",         "upper-arm-girth",
    "arm-length",        "hand-girth"};
constexpr std::array<std::string_view, 7> kKnitEase = {
    "bust-girth",      "waist-girth",       "hip-girth",         "neck-base-girth",
    "upper-arm-girth", "across-back-width", "across-front-width"};
constexpr std::array<std::string_view, 6> kWovenEase = {"bust-girth",        "waist-girth",
                                                        "neck-base-girth",   "upper-arm-girth",
                                                        "across-back-width", "across-front-width"};

std::string listed(std::span<const std::string_view> ids) {
  std::string all;
  for (const std::string_view id : ids) all += (all.empty() ? "" : ", ") + std::string(id);
  return all;
}

}  // namespace

std::span<const std::string_view> required(std::string_view kind) {
  if (kind == kKnitTop) return kKnitNeeds;
  if (kind == kWovenBodice) return kWovenNeeds;
  return {};
}

std::span<const std::string_view> ease_keys(std::string_view kind) {
  if (kind == kKnitTop) return kKnitEase;
  if (kind == kWovenBodice) return kWovenEase;
  return {};
}

Problems check_input(std::string_view kind, const DraftInput& input) {
  Problems problems = check_measurements(input.wearer.body, "/wearer/body");
  for (const std::string_view id : required(kind)) {
    if (input.wearer.body.count(std::string(id)) != 0) continue;
    const MeasurementInfo* info = find_measurement(id);
    problems.push_back(
        {"measurement-missing", "/wearer/body/" + std::string(id),
         "A " + std::string(kind) + " cannot be drafted without " + std::string(info->name) + ".",
         "Take it: " + std::string(info->meaning)});
  }
  const auto keys = ease_keys(kind);
  for (const auto& [id, mm] : input.ease) {
    const std::string place = "/ease/" + id;
    if (std::find(keys.begin(), keys.end(), id) == keys.end()) {
      problems.push_back({"ease-unknown", place, "This draft has no ease at \"" + id + "\".",
                          "Give ease at " + listed(keys) + "."});
    } else if (!std::isfinite(mm) || std::abs(mm) > kMostEaseMm) {
      problems.push_back({"ease-range", place, "The ease is not a usable amount.",
                          "Give it on the whole garment in millimetres, at most 400 either way."});
    }
  }
  for (const double stretch : {input.fabric.stretch_across, input.fabric.stretch_along}) {
    if (std::isfinite(stretch) && stretch >= 0.0 && stretch <= 5.0) continue;
    problems.push_back({"fabric-stretch", "/fabric", "The stretch of the fabric is out of range.",
                        "Give it as a fraction: 4 in that pulls to 5 in is 0.25."});
  }
  return problems;
}

double Body::operator[](std::string_view id) const {
  const auto found = known_.find(std::string(id));
  return found != known_.end() ? found->second : estimate(id);
}

double Body::estimate(std::string_view id) const {
  const Body& body = *this;
  // 20.5 degrees: shoulders commonly slope 20 to 23 degrees (common practice).
  if (id == "shoulder-drop") return body["shoulder-length"] * std::sin(radians(20.5));
  if (id == "across-front-width") return body["across-back-width"] - 15.0;
  if (id == "bust-point-width") return 0.2 * body["bust-girth"];
  if (id == "neck-shoulder-point-to-bust-point") return 125.0 + 0.155 * body["bust-girth"];
  if (id == "waist-to-hip-height") return has("hip-depth") ? body["hip-depth"] : 200.0;
  if (id == "upper-arm-length") return has("arm-length") ? 0.57 * body["arm-length"] : 330.0;
  return std::nan("");
}

}  // namespace pinwright::drafting
