// What the names in expressions are: dimension of each measure and measurement.
#include <array>
#include <utility>

#include "engine/pattern/measurement.h"
#include "knowledge/expression.h"

namespace pinwright::knowledge {
namespace {

/// A sleeve's girth is of one sleeve: "each side" does not halve it, so it counts as a length.
bool of_one_limb(std::string_view id) {
  for (const std::string_view limb :
       {"upper-arm", "elbow", "wrist", "hand", "sleeve", "armscye", "thigh", "knee", "calf"})
    if (id.find(limb) != std::string_view::npos) return true;
  return false;
}

bool ends_with(std::string_view id, std::string_view end) {
  return id.size() >= end.size() && id.substr(id.size() - end.size()) == end;
}

}  // namespace

std::optional<Dimension> garment_dimension(std::string_view measure) {
  using enum Dimension;
  static constexpr std::array<std::pair<std::string_view, Dimension>, 30> kMeasures{{
      {"bust-girth", whole},
      {"waist-girth", whole},
      {"hem-girth", whole},
      {"upper-arm-girth", length},
      {"neckline-length", whole},
      {"armhole-length", length},
      {"cap-length", length},
      {"cap-height", length},
      {"shoulder-length", length},
      {"shoulder-slope", angle},
      {"front-length", length},
      {"back-length", length},
      {"front-neck-depth", length},
      {"across-front-width", whole},
      {"across-back-width", whole},
      {"armhole-depth", length},
      {"side-length", length},
      {"sleeve-hem-girth", length},
      {"neck-binding-length", whole},
      {"front-bust-width", whole},
      {"back-bust-width", whole},
      {"front-neckline-length", whole},
      {"back-neckline-length", whole},
      {"front-armhole-length", length},
      {"back-armhole-length", length},
      {"front-shoulder-slope", angle},
      {"back-shoulder-slope", angle},
      {"back-neck-depth", length},
      {"front-side-length", length},
      {"sleeve-length", length},
  }};
  for (const auto& [id, dimension] : kMeasures)
    if (id == measure) return dimension;
  return std::nullopt;
}

std::optional<Dimension> body_dimension(std::string_view measurement) {
  if (find_measurement(measurement) == nullptr) return std::nullopt;
  if (of_one_limb(measurement)) return Dimension::length;
  if (ends_with(measurement, "-girth") || ends_with(measurement, "-width")) return Dimension::whole;
  return Dimension::length;
}

std::optional<Dimension> dimension_of(Counts counts) {
  switch (counts) {
    case Counts::girth:
      return Dimension::told;
    case Counts::distance:
      return Dimension::length;
    case Counts::none:
      break;
  }
  return std::nullopt;
}

std::string_view to_text(Dimension dimension) {
  switch (dimension) {
    case Dimension::ratio:
      return "a plain number";
    case Dimension::length:
      return "a length";
    case Dimension::half:
      return "an amount on the half pattern";
    case Dimension::whole:
      return "an amount on the whole garment";
    case Dimension::told:
      return "a girth as told, whole or half";
    case Dimension::angle:
      return "an angle";
  }
  return "";
}

}  // namespace pinwright::knowledge
