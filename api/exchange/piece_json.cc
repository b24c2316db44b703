#include "api/exchange/piece_json.h"

namespace pinwright::api {
namespace {

std::string_view to_text(AllowanceKind kind) {
  return kind == AllowanceKind::hem ? "hem" : "plain";
}

std::string text(const Json& value, const char* name) { return value.at(name).get<std::string>(); }
double number(const Json& value, const char* name) { return value.at(name).get<double>(); }

Json pair(Vec2 p) { return Json::array({p.x, p.y}); }
Vec2 pair_from(const Json& value) { return {value.at(0).get<double>(), value.at(1).get<double>()}; }

Json one(const Edge& edge) {
  Json points = Json::array();
  for (const Vec2 p : edge.curve.points) points.push_back(pair(p));
  return {{"id", edge.id},
          {"role", pinwright::to_text(edge.role)},
          {"straight", edge.straight},
          {"allowance",
           {{"width_mm", edge.allowance.width_mm}, {"kind", to_text(edge.allowance.kind)}}},
          {"points", std::move(points)}};
}

Edge edge_from(const Json& value) {
  Edge out;
  out.id = text(value, "id");
  out.role = edge_role(text(value, "role")).value_or(EdgeRole::side);
  out.straight = value.at("straight").get<bool>();
  const Json& allowance = value.at("allowance");
  out.allowance.width_mm = number(allowance, "width_mm");
  out.allowance.kind = text(allowance, "kind") == "hem" ? AllowanceKind::hem : AllowanceKind::plain;
  for (const Json& point : value.at("points")) out.curve.points.push_back(pair_from(point));
  return out;
}

Json one(const Notch& n) { return {{"id", n.id}, {"edge", n.edge}, {"at_mm", n.at_mm}}; }
Notch notch_from(const Json& v) { return {text(v, "id"), text(v, "edge"), number(v, "at_mm")}; }

Json one(const Dart& d) {
  return {{"id", d.id}, {"leg_in", d.leg_in}, {"leg_out", d.leg_out}, {"toward", d.toward}};
}
Dart dart_from(const Json& v) {
  return {text(v, "id"), text(v, "leg_in"), text(v, "leg_out"), text(v, "toward")};
}

Json one(const Landmark& l) { return {{"id", l.id}, {"at", pair(l.at)}}; }
Landmark landmark_from(const Json& v) { return {text(v, "id"), pair_from(v.at("at"))}; }

Json one(const Line& l) { return {{"id", l.id}, {"from", pair(l.from)}, {"to", pair(l.to)}}; }
Line line_from(const Json& v) {
  return {text(v, "id"), pair_from(v.at("from")), pair_from(v.at("to"))};
}

template <class Part>
Json all(const std::vector<Part>& parts) {
  Json out = Json::array();
  for (const Part& part : parts) out.push_back(one(part));
  return out;
}

template <class Part>
void all_from(const Json& list, Part (*from)(const Json&), std::vector<Part>& out) {
  for (const Json& item : list) out.push_back(from(item));
}

}  // namespace

Json to_json(const Piece& piece) {
  Json out = {{"id", piece.id},
              {"name", piece.name},
              {"cloth", piece.cloth},
              {"cut", {{"count", piece.cut.count}, {"mirrored_pair", piece.cut.mirrored_pair}}}};
  if (piece.fold) out["fold"] = *piece.fold;
  if (piece.side != Side::both) out["side"] = pinwright::to_text(piece.side);
  if (piece.centre_line) out["centre_line"] = one(*piece.centre_line);
  out["edges"] = all(piece.edges);
  out["notches"] = all(piece.notches);
  out["darts"] = all(piece.darts);
  out["landmarks"] = all(piece.landmarks);
  out["lengthen_lines"] = all(piece.lengthen_lines);
  out["grainline"] = one(piece.grainline);
  return out;
}

Piece piece_from(const Json& value) {
  Piece out;
  out.id = text(value, "id");
  out.name = text(value, "name");
  out.cloth = text(value, "cloth");
  out.cut.count = value.at("cut").at("count").get<int>();
  out.cut.mirrored_pair = value.at("cut").at("mirrored_pair").get<bool>();
  if (value.contains("fold")) out.fold = text(value, "fold");
  if (value.contains("side")) out.side = side(text(value, "side")).value_or(Side::both);
  if (value.contains("centre_line")) out.centre_line = edge_from(value.at("centre_line"));
  all_from(value.at("edges"), edge_from, out.edges);
  all_from(value.at("notches"), notch_from, out.notches);
  all_from(value.at("darts"), dart_from, out.darts);
  all_from(value.at("landmarks"), landmark_from, out.landmarks);
  all_from(value.at("lengthen_lines"), line_from, out.lengthen_lines);
  out.grainline = line_from(value.at("grainline"));
  return out;
}

}  // namespace pinwright::api
