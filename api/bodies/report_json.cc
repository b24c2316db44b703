#include "api/bodies/report_json.h"

#include <algorithm>
#include <cmath>

namespace pinwright::api {
namespace {

double share(std::size_t part, std::size_t whole) {
  return whole == 0 ? 0.0 : static_cast<double>(part) / static_cast<double>(whole);
}

double hundredth(double mm) { return std::round(mm * 100.0) / 100.0 + 0.0; }

Json body_to_json(const BodyOutcome& body) {
  Json measures = Json::array();
  for (const Misfit& misfit : body.misfits) {
    Json line = {{"measure", misfit.measure},
                 {"before_mm", hundredth(misfit.before_mm)},
                 {"after_mm", hundredth(misfit.after_mm)}};
    if (!misfit.why.empty()) line["why"] = misfit.why;
    measures.push_back(std::move(line));
  }
  Json out = {{"body", body.body},
              {"size", body.size},
              {"fits_before", body.fits_before()},
              {"fits_after", body.fits_after()},
              {"proved", body.proved},
              {"operations", body.operations},
              {"measures", std::move(measures)}};
  if (!body.refused.empty()) out["refused"] = problems_to_json(body.refused);
  return out;
}

}  // namespace

Json to_json(const TrialReport& report, bool list) {
  const std::size_t n = report.bodies.size();
  Json out = {{"kind", report.kind},
              {"fabric", report.fabric.id},
              {"within_mm", kFitsMm},
              {"bodies", n},
              {"before", {{"bodies", report.before}, {"share", share(report.before, n)}}},
              {"after", {{"bodies", report.after}, {"share", share(report.after, n)}}},
              {"unproved", report.unproved},
              {"refused", report.refused}};
  out["measures"] = Json::array();
  for (const MeasureShare& m : report.measures) {
    out["measures"].push_back({{"measure", m.measure},
                               {"bodies", m.bodies},
                               {"before", share(m.before, m.bodies)},
                               {"after", share(m.after, m.bodies)}});
  }
  out["sizes"] = Json::array();
  for (const DraftedSize& size : report.sizes.sizes) {
    out["sizes"].push_back({{"size", size.label}, {"bodies", size.bodies}});
  }
  for (const SizeRefusal& size : report.sizes.refused) {
    out["sizes"].push_back({{"size", size.label}, {"refused", problems_to_json(size.problems)}});
  }
  std::vector<std::pair<std::string, std::size_t>> left(report.left_over.begin(),
                                                        report.left_over.end());
  std::stable_sort(left.begin(), left.end(),
                   [](const auto& a, const auto& b) { return a.second > b.second; });
  out["left_over"] = Json::array();
  for (const auto& [what, count] : left) {
    out["left_over"].push_back({{"what", what}, {"bodies", count}});
  }
  out["seconds"] = hundredth(report.seconds);
  if (list) {
    out["list"] = Json::array();
    for (const BodyOutcome& body : report.bodies) out["list"].push_back(body_to_json(body));
  }
  return out;
}

}  // namespace pinwright::api
