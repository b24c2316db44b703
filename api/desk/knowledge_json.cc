#include "api/desk/knowledge_json.h"

#include <algorithm>
#include <filesystem>

namespace pinwright::api {

namespace {

using knowledge::Cause;
using knowledge::Counts;
using knowledge::FitProblem;
using knowledge::Knowledge;
using knowledge::Remedy;
using knowledge::RemedyStep;
using knowledge::Sign;
using knowledge::Zone;

std::string_view counts_text(Counts counts) {
  switch (counts) {
    case Counts::girth:
      return "girth";
    case Counts::distance:
      return "distance";
    case Counts::none:
      break;
  }
  return "none";
}

std::string_view amount_text(AmountKind kind) {
  switch (kind) {
    case AmountKind::half:
      return "half";
    case AmountKind::whole:
      return "whole";
    case AmountKind::distance:
      return "distance";
    case AmountKind::ratio:
      return "ratio";
    case AmountKind::none:
      break;
  }
  return "none";
}

template <class T>
Json ids(const std::vector<T>& entries) {
  Json out = Json::array();
  for (const T& entry : entries) out.push_back(entry.id);
  return out;
}

std::string from(const knowledge::Place& place) {
  return place.file + ":" + std::to_string(place.line);
}

Json problem_line(const FitProblem& p) {
  return {{"id", p.id},         {"name", p.name},   {"sign", p.sign},
          {"causes", p.causes}, {"kinds", p.kinds}, {"from", from(p.place)}};
}

Json sign_line(const Sign& s) {
  return {{"id", s.id},
          {"name", s.name},
          {"zone", s.zone},
          {"counts", counts_text(s.counts)},
          {"of", s.counts == Counts::none ? Json() : Json(to_text(s.default_of))},
          {"sided", s.sided},
          {"ask", s.ask},
          {"cost", s.cost},
          {"from", from(s.place)}};
}

Json cause_line(const Cause& c) {
  return {{"id", c.id},           {"name", c.name},   {"kind", to_text(c.kind)},
          {"what", c.what},       {"check", c.check}, {"remedies", ids(c.remedies)},
          {"from", from(c.place)}};
}

Json zone_line(const Zone& z) {
  return {{"id", z.id}, {"name", z.name}, {"kinds", z.kinds}, {"from", from(z.place)}};
}

Json operation_line(const OperationInfo& operation) {
  Json options = Json::object();
  for (const OptionInfo& option : operation.options) {
    options[std::string(option.key)] = {{"values", option.values}, {"required", option.required}};
  }
  return {{"id", operation.id},
          {"name", operation.name},
          {"does", operation.does},
          {"amount", amount_text(operation.amount)},
          {"positive", operation.positive},
          {"least", operation.least},
          {"most", operation.most},
          {"options", std::move(options)}};
}

Json operation_lines() {
  Json out = Json::array();
  for (const OperationInfo& operation : operation_catalogue()) {
    out.push_back(operation_line(operation));
  }
  return out;
}

template <class T, class Line>
Json lines(const std::vector<T>& entries, Line line) {
  Json out = Json::array();
  for (const T& entry : entries) out.push_back(line(entry));
  return out;
}

Json remedy_entry(const Knowledge& k, const Remedy& remedy) {
  const auto step = [](const RemedyStep& s) {
    Json out{{"operation", s.operation}};
    for (const auto& [key, value] : s.options) out[key] = value;
    out["amount"] = s.amount.empty() ? Json() : Json(s.amount);
    out["of"] = s.of ? Json(to_text(*s.of)) : Json();
    out["text"] = s.text;
    return out;
  };
  return {{"id", remedy.id},
          {"name", remedy.name},
          {"kinds", remedy.kinds},
          {"suits", remedy.suits},
          {"steps", lines(remedy.steps, step)},
          {"usual_mm", remedy.usual_mm ? Json(*remedy.usual_mm) : Json()},
          {"smallest_mm", remedy.smallest_mm ? Json(*remedy.smallest_mm) : Json()},
          {"largest_mm", remedy.largest_mm ? Json(*remedy.largest_mm) : Json()},
          {"beyond", remedy.beyond.empty() ? Json() : Json(remedy.beyond)},
          {"follow", remedy.follow},
          {"sources", sources_to_json(k, remedy.sources)}};
}

Json sign_entry(const Knowledge& k, const Sign& s) {
  Json out{{"entry", "sign"}};
  out.update(sign_line(s));
  out["leak"] = s.leak;
  out["phrases"] = s.phrases;
  out["denied_by"] = s.denied_by;
  Json made_by = Json::array();
  for (const Cause& c : k.causes) {
    for (const knowledge::Makes& makes : c.makes) {
      if (makes.sign == s.id) made_by.push_back({{"cause", c.id}, {"strength", makes.strength}});
    }
  }
  out["made_by"] = std::move(made_by);
  out["sources"] = sources_to_json(k, s.sources);
  return out;
}

Json cause_entry(const Knowledge& k, const Cause& c) {
  Json out{{"entry", "cause"}, {"id", c.id},       {"name", c.name},   {"kind", to_text(c.kind)},
           {"what", c.what},   {"check", c.check}, {"prior", c.prior}, {"from", from(c.place)}};
  Json priors = Json::object();
  for (const auto& [kind, prior] : c.prior_by_kind) priors[kind] = prior;
  out["prior_by_kind"] = std::move(priors);
  out["makes"] = lines(c.makes, [](const knowledge::Makes& m) {
    return Json{{"sign", m.sign}, {"strength", m.strength}, {"ground", m.ground}};
  });
  out["remedies"] = lines(c.remedies, [&k](const Remedy& r) { return remedy_entry(k, r); });
  out["sources"] = sources_to_json(k, c.sources);
  return out;
}

template <class T>
const T* find(const std::vector<T>& entries, std::string_view id) {
  const auto found =
      std::find_if(entries.begin(), entries.end(), [id](const T& entry) { return entry.id == id; });
  return found == entries.end() ? nullptr : &*found;
}

Json entry(const char* kind, Json line) {
  Json out{{"entry", kind}};
  out.update(line);
  return out;
}

/// The file is the "folder" itself, or lies right in it.
bool is_of(const knowledge::Place& place, const std::string& folder) {
  return place.file == folder || std::filesystem::path(place.file).parent_path() ==
                                     std::filesystem::path(folder + "/").parent_path();
}

/// Ids of what came from files of the folder, under the plural of the sort.
void came_from(const Knowledge& k, const std::string& folder, Json& counts, Json& entries) {
  const auto add = [&](const char* sorts, const auto& all, auto id) {
    Json mine = Json::array();
    for (const auto& one : all) {
      if (is_of(one.place, folder)) mine.push_back(id(one));
    }
    counts[sorts] = mine.size();
    if (!mine.empty()) entries[sorts] = std::move(mine);
  };
  const auto by_id = [](const auto& one) { return one.id; };
  add("problems", k.problems, by_id);
  add("signs", k.signs, by_id);
  add("causes", k.causes, by_id);
  add("zones", k.zones, by_id);
  add("features", k.features, by_id);
  add("words", k.words, by_id);
  add("publications", k.publications, [](const auto& p) { return p.key; });
}

Json layers_of(const Knowledge& k) {
  Json layers = Json::array();
  for (const std::string& folder : k.folders) {
    Json layer{{"folder", folder}, {"counts", Json::object()}};
    Json entries = Json::object();
    came_from(k, folder, layer["counts"], entries);
    if (!layers.empty()) layer["entries"] = std::move(entries);
    layer["replaces"] = Json::array();
    for (const auto& r : k.replaced)
      if (is_of(r.is, folder))
        layer["replaces"].push_back(
            {{"entry", r.sort}, {"id", r.id}, {"was", from(r.was)}, {"is", from(r.is)}});
    layers.push_back(std::move(layer));
  }
  return layers;
}

}  // namespace

Json knowledge_counts(const Knowledge& k) {
  return {{"counts",
           {{"problems", k.problems.size()},
            {"signs", k.signs.size()},
            {"causes", k.causes.size()},
            {"zones", k.zones.size()}}},
          {"layers", layers_of(k)}};
}

Json sources_to_json(const Knowledge& k, const std::vector<knowledge::Source>& sources) {
  return lines(sources, [&k](const knowledge::Source& source) {
    Json title;
    for (const knowledge::Publication& publication : k.publications) {
      if (publication.key == source.key) title = publication.title;
    }
    return Json{{"key", source.key}, {"where", source.where}, {"title", title}};
  });
}

Json knowledge_overview(const Knowledge& k) {
  Json operations = Json::array();
  for (const OperationInfo& operation : operation_catalogue()) operations.push_back(operation.id);
  return {{"kinds", k.kinds},      {"problems", ids(k.problems)},
          {"signs", ids(k.signs)}, {"causes", ids(k.causes)},
          {"zones", ids(k.zones)}, {"operations", std::move(operations)},
          {"layers", layers_of(k)}};
}

std::optional<Json> knowledge_section(const Knowledge& k, std::string_view section) {
  Json out;
  if (section == "problems") {
    out = lines(k.problems, problem_line);
  } else if (section == "signs") {
    out = lines(k.signs, sign_line);
  } else if (section == "causes") {
    out = lines(k.causes, cause_line);
  } else if (section == "zones") {
    out = lines(k.zones, zone_line);
  } else if (section == "operations") {
    out = operation_lines();
  } else if (section == "layers") {
    out = layers_of(k);
  } else {
    return std::nullopt;
  }
  return Json{{std::string(section), std::move(out)}};
}

std::optional<Json> knowledge_entries(const Knowledge& k, std::string_view id) {
  Json entries = Json::array();
  if (const auto* problem = find(k.problems, id)) {
    entries.push_back(entry("problem", problem_line(*problem)));
  }
  if (const auto* sign = find(k.signs, id)) entries.push_back(sign_entry(k, *sign));
  if (const auto* cause = find(k.causes, id)) entries.push_back(cause_entry(k, *cause));
  for (const Cause& cause : k.causes) {
    const auto* remedy = find(cause.remedies, id);
    if (remedy == nullptr) continue;
    entries.push_back(entry("remedy", {{"cause", cause.id}}));
    entries.back().update(remedy_entry(k, *remedy));
  }
  if (const auto* zone = find(k.zones, id)) entries.push_back(entry("zone", zone_line(*zone)));
  if (const auto* operation = find_operation(id)) {
    entries.push_back(entry("operation", operation_line(*operation)));
  }
  if (entries.empty()) return std::nullopt;
  return Json{{"id", id}, {"entries", std::move(entries)}};
}

std::vector<std::string> knowledge_ids(const Knowledge& k) {
  std::vector<std::string> all;
  for (const FitProblem& problem : k.problems) all.push_back(problem.id);
  for (const Sign& sign : k.signs) all.push_back(sign.id);
  for (const Cause& cause : k.causes) {
    all.push_back(cause.id);
    for (const Remedy& remedy : cause.remedies) all.push_back(remedy.id);
  }
  for (const Zone& zone : k.zones) all.push_back(zone.id);
  for (const OperationInfo& operation : operation_catalogue()) all.emplace_back(operation.id);
  return all;
}

}  // namespace pinwright::api
