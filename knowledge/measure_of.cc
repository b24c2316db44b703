#include "knowledge/measure_of.h"

#include <algorithm>
#include <array>
#include <string_view>

#include "engine/alteration/catalogue.h"
#include "engine/pattern/measures.h"

namespace pinwright::knowledge {
namespace {

/// One operation with the options that matter, "key=value".
struct Row {
  std::string_view operation;
  std::array<std::string_view, 2> options{};
  std::string_view measure{};  ///< empty: no finished measure counts it
  std::array<std::string_view, 7> carries{};
};

// An operation stands here once for each measure that it can be for.
constexpr auto kRows = std::to_array<Row>({
    {"close-wedge",
     {"edge=neckline", "piece=front"},
     "front-neckline-length",
     {"neckline-length", "front-neck-depth"}},
    {"close-wedge",
     {"edge=neckline", "piece=back"},
     "back-neckline-length",
     {"neckline-length", "back-neck-depth"}},
    {"close-wedge", {"edge=armhole", "piece=front"}, "front-armhole-length"},
    {"close-wedge", {"edge=armhole", "piece=back"}, "back-armhole-length"},
    // A neckline drawn elsewhere is longer or shorter there; what gaped or cut in still does.
    {"lower-neckline",
     {"piece=front"},
     "front-neck-depth",
     {"neckline-length", "front-neckline-length", "front-length"}},
    {"lower-neckline",
     {"piece=back"},
     "back-neck-depth",
     {"neckline-length", "back-neckline-length", "back-length"}},
    {"raise-back-neck",
     {},
     "back-neck-depth",
     {"neckline-length", "back-neckline-length", "back-length"}},
    // The shoulder's tip and the neckline's centre stay where they are.
    {"widen-neckline",
     {},
     "back-neckline-length",
     {"shoulder-length", "front-neck-depth", "back-neck-depth"}},
    {"resize-neckline",
     {},
     "neckline-length",
     {"front-neckline-length", "back-neckline-length", "shoulder-length", "front-length",
      "back-length", "front-neck-depth", "back-neck-depth"}},
    {"move-neck-forward"},
    {"swing-shoulder", {}, "shoulder-slope", {"front-armhole-length", "back-armhole-length"}},
    {"shift-shoulder-seam"},
    {"move-shoulder-tip",
     {},
     "shoulder-length",
     {"front-armhole-length", "back-armhole-length", "across-front-width", "across-back-width"}},
    {"move-armhole-forward"},
    {"lower-underarm",
     {},
     "armhole-depth",
     {"front-armhole-length", "back-armhole-length", "cap-height"}},
    {"widen-back", {}, "across-back-width", {"back-armhole-length"}},
    {"widen-chest", {}, "across-front-width", {"front-armhole-length"}},
    {"scoop-edge", {"edge=armhole", "piece=front"}, "across-front-width", {"front-armhole-length"}},
    {"scoop-edge", {"edge=armhole", "piece=back"}, "across-back-width", {"back-armhole-length"}},
    {"scoop-edge", {"edge=neckline", "piece=front"}, "front-neckline-length"},
    {"scoop-edge", {"edge=neckline", "piece=back"}, "back-neckline-length"},
    {"let-out-side", {"level=all"}, "bust-girth"},
    {"let-out-side", {"level=bust"}, "bust-girth"},
    {"let-out-side", {"level=waist"}, "waist-girth"},
    {"let-out-side", {"level=hem"}, "hem-girth"},
    {"flare-hem", {}, "hem-girth"},
    {"let-out-dart", {}, "waist-girth"},
    {"full-bust", {}, "front-bust-width"},
    {"lengthen-over-bust", {}, "front-length"},
    // Lengths above or below others on the same centre line: no measure counts them alone.
    {"shorten-chest"},
    {"lengthen-upper-back"},
    {"tuck-back-waist"},
    {"lengthen", {"piece=body"}, "back-length", {"front-length"}},
    {"lengthen", {"piece=sleeve"}, "sleeve-length"},
    {"widen-upper-arm", {}, "upper-arm-girth"},
    {"widen-sleeve-hem", {}, "sleeve-hem-girth"},
    {"raise-cap", {}, "cap-height"},
    {"ease-cap"},
    {"turn-sleeve"},
    {"ease-elbow"},
    {"move-bust-point"},
    {"rotate-dart"},
    {"divide-dart"},
    {"ease-dart"},
    {"lengthen-dart"},
    {"deepen-blade-dart"},
    {"set-binding-ratio"},
});

/// The option as said, or the catalogue's default.
std::string_view option_of(const Step& step, std::string_view key) {
  const auto said = step.options.find(std::string(key));
  if (said != step.options.end()) return said->second;
  const OperationInfo* info = find_operation(step.operation);
  if (info == nullptr) return {};
  for (const OptionInfo& o : info->options)
    if (o.key == key && !o.required && !o.values.empty()) return o.values.front();
  return {};
}

const Row* row_of(const Step& step) {
  const auto fits = [&step](std::string_view option) {
    const std::size_t at = option.find('=');
    return option.empty() || option_of(step, option.substr(0, at)) == option.substr(at + 1);
  };
  const auto* const row = std::find_if(kRows.begin(), kRows.end(), [&](const Row& r) {
    return r.operation == step.operation && fits(r.options[0]) && fits(r.options[1]);
  });
  return row == kRows.end() ? nullptr : row;
}

}  // namespace

std::string measure_of(const Block& block, const Step& step) {
  const Row* row = row_of(step);
  if (row == nullptr || row->measure.empty()) return {};
  std::string id(row->measure);
  if (step.side != Side::both) id += "-" + std::string(to_text(step.side));
  for (const GarmentMeasure& m : measures(block))
    if (m.id == id) return id;
  return {};
}

bool knows_measure_of(const Step& step) { return row_of(step) != nullptr; }

bool carries(const Step& step, std::string_view measure) {
  const Row* row = row_of(step);
  if (row == nullptr || measure.empty()) return false;
  for (const std::string_view side : {"-left", "-right"})
    if (measure.ends_with(side)) measure.remove_suffix(side.size());
  return std::find(row->carries.begin(), row->carries.end(), measure) != row->carries.end();
}

}  // namespace pinwright::knowledge
