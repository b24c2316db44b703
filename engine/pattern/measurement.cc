#include "engine/pattern/measurement.h"

#include <algorithm>
#include <array>
#include <cmath>
#include <cstdio>
#include <string>
#include <vector>

namespace pinwright {
namespace {

// Names after ISO 8559-1:2017, from memory; meanings in our own words. The ranges are our own and
// wide on purpose: they catch a slip of unit (cm, inch) or of a digit, not an unusual body.
constexpr std::array<MeasurementInfo, 33> kKnown = {{
    {"stature", "Stature", "Height of the body without shoes, from the floor to the crown.", 900,
     2300},
    {"head-girth", "Head girth",
     "Round the largest part of the head, above the ears: what a neck opening has to pass.", 450,
     700},
    {"neck-girth", "Neck girth", "Round the neck just below the larynx, square to the neck.", 220,
     650},
    {"neck-base-girth", "Neck base girth",
     "Round the root of the neck, over the back neck point, the neck shoulder points and the front "
     "neck point.",
     260, 700},
    {"bust-girth", "Bust girth",
     "Level round the body over the bust points, breathing quietly, the tape not drawn in.", 550,
     1800},
    {"upper-chest-girth", "Upper chest girth",
     "Round the body close under the arms, above the bust.", 550, 1700},
    {"under-bust-girth", "Under-bust girth", "Level round the body just below the breasts.", 500,
     1700},
    {"waist-girth", "Waist girth", "Round the natural waist, between the ribs and the hip bones.",
     450, 1800},
    {"hip-girth", "Hip girth", "Level round the fullest part of the seat.", 600, 1900},
    {"upper-arm-girth", "Upper arm girth",
     "Round the fullest part of the upper arm, the arm hanging relaxed.", 160, 650},
    {"elbow-girth", "Elbow girth", "Round the bent elbow, over its point.", 170, 500},
    {"wrist-girth", "Wrist girth", "Round the wrist over the wrist bones.", 110, 280},
    {"hand-girth", "Hand girth",
     "Round the knuckles of the flat hand, thumb left out: what a sleeve hem has to pass.", 130,
     320},
    {"armscye-girth", "Armscye girth",
     "Round the joint of the arm, over the shoulder point and through the armpit.", 250, 750},
    {"shoulder-length", "Shoulder length",
     "Along the shoulder from the neck shoulder point to the shoulder point.", 70, 220},
    {"shoulder-drop", "Shoulder drop",
     "Height of the neck shoulder point above the shoulder point. Stands for the shoulder slope, "
     "an angle in the standard, so that every measurement here is a length: the sine of the slope "
     "is drop over shoulder length.",
     0, 120},
    {"shoulder-width", "Shoulder width",
     "Across the back from shoulder point to shoulder point, over the back neck point.", 250, 650},
    {"across-back-width", "Across back width",
     "Across the back between the back folds of the arms, half way from the shoulder point to the "
     "armpit.",
     220, 600},
    {"across-front-width", "Across front width",
     "Across the chest between the front folds of the arms, half way from the shoulder point to "
     "the armpit.",
     200, 600},
    {"bust-point-width", "Bust point width", "From bust point to bust point, straight across.", 100,
     350},
    {"neck-shoulder-point-to-bust-point", "Neck shoulder point to bust point",
     "From the neck shoulder point down over the chest to the bust point.", 160, 480},
    {"front-waist-length", "Front waist length",
     "From the neck shoulder point over the bust point to the waist.", 280, 680},
    {"centre-front-waist-length", "Centre front waist length",
     "From the front neck point down the middle to the waist.", 200, 560},
    {"back-waist-length", "Back waist length",
     "From the back neck point down the middle of the back to the waist.", 260, 600},
    {"scye-depth", "Scye depth",
     "From the back neck point straight down to the level of the armpits.", 110, 330},
    {"waist-to-hip-height", "Waist to hip height",
     "From the waist down the side to the level of the hip girth.", 100, 350},
    {"hip-depth", "Hip depth",
     "From the waist straight down to the hip level, held plumb and not over the body.", 100, 350},
    {"trunk-girth", "Trunk girth",
     "From the middle of the shoulder through the crotch and back to the shoulder.", 1000, 2300},
    {"upper-arm-length", "Upper arm length", "From the shoulder point to the point of the elbow.",
     180, 480},
    {"arm-length", "Arm length",
     "From the shoulder point over the slightly bent elbow to the wrist bone.", 350, 850},
    {"underarm-length", "Underarm length", "From the armpit fold down the inner arm to the wrist.",
     250, 700},
    {"back-neck-point-to-wrist", "Back neck point to wrist",
     "From the back neck point over the shoulder point and the bent elbow to the wrist bone.", 500,
     1150},
    {"back-neck-height", "Back neck height", "From the floor to the back neck point.", 700, 2000},
}};

/// Levenshtein's edit distance, row by row.
std::size_t edit_distance(std::string_view a, std::string_view b) {
  std::vector<std::size_t> row(b.size() + 1);
  for (std::size_t j = 0; j <= b.size(); ++j) row[j] = j;
  for (std::size_t i = 1; i <= a.size(); ++i) {
    std::size_t diagonal = row[0];
    row[0] = i;
    for (std::size_t j = 1; j <= b.size(); ++j) {
      const std::size_t change = diagonal + (a[i - 1] == b[j - 1] ? 0 : 1);
      diagonal = row[j];
      row[j] = std::min({row[j] + 1, row[j - 1] + 1, change});
    }
  }
  return row[b.size()];
}

std::string_view nearest_known(std::string_view id) {
  // A name of any length is compared by its first part only: no known id is longer than 40.
  const std::string_view head = id.substr(0, 80);
  std::string_view best = kKnown.front().id;
  std::size_t least = edit_distance(head, best);
  for (const MeasurementInfo& info : kKnown) {
    const std::size_t found = edit_distance(head, info.id);
    if (found < least) {
      least = found;
      best = info.id;
    }
  }
  return best;
}

std::string mm(double value) {
  char text[40];
  std::snprintf(text, sizeof text, "%.6g mm", value);
  return text;
}

}  // namespace

std::span<const MeasurementInfo> known_measurements() { return kKnown; }

const MeasurementInfo* find_measurement(std::string_view id) {
  for (const MeasurementInfo& info : kKnown) {
    if (info.id == id) return &info;
  }
  return nullptr;
}

Problems check_measurements(const Measurements& body, std::string_view prefix) {
  Problems problems;
  for (const auto& [id, value] : body) {
    const std::string place = std::string(prefix) + "/" + id;
    const MeasurementInfo* info = find_measurement(id);
    if (info == nullptr) {
      problems.push_back({"measurement-unknown", place,
                          "No measurement is called \"" + id.substr(0, 80) + "\".",
                          "Did you mean \"" + std::string(nearest_known(id)) + "\"?"});
      continue;
    }
    const std::string range = mm(info->least_mm) + " to " + mm(info->most_mm);
    if (!std::isfinite(value)) {
      problems.push_back({"measurement-range", place,
                          std::string(info->name) + " is not a finite number.",
                          "Give it in millimetres, " + range + "."});
    } else if (value < info->least_mm || value > info->most_mm) {
      problems.push_back({"measurement-range", place,
                          std::string(info->name) + " of " + mm(value) + " is out of range.",
                          "Measure again and give it in millimetres, " + range +
                              "; a value in centimetres or inches looks like this too."});
    }
  }
  return problems;
}

}  // namespace pinwright
