#include "api/exchange/block_json.h"

#include "api/exchange/exchange.h"
#include "api/exchange/fabric_json.h"
#include "api/exchange/parse.h"
#include "api/exchange/piece_json.h"
#include "api/exchange/read_file.h"
#include "api/exchange/schema_check.h"
#include "api/exchange/seam_json.h"
#include "api/exchange/wearer_json.h"
#include "engine/pattern/sides.h"
#include "engine/proof/proof.h"

namespace pinwright::api {
namespace {

template <class Part>
Json all(const std::vector<Part>& parts) {
  Json out = Json::array();
  for (const Part& part : parts) out.push_back(to_json(part));
  return out;
}

template <class Part>
void all_from(const Json& list, Part (*from)(const Json&), std::vector<Part>& out) {
  for (const Json& item : list) out.push_back(from(item));
}

/// A schema cannot ask for 3 n + 1 points.
void check_point_counts(const Json& value, const std::string& prefix, Problems& problems) {
  const std::string pieces = member(prefix, "pieces");
  std::size_t i = 0;
  for (const Json& piece : value.at("pieces")) {
    const std::string edges = member(member(pieces, i++), "edges");
    std::size_t j = 0;
    const auto check = [&](const Json& edge, const std::string& at) {
      const std::size_t n = edge.at("points").size();
      const std::string place = member(at, "points");
      if (n % 3 == 1) return;
      problems.push_back({"points-count", place, "The edge has " + std::to_string(n) + " points.",
                          "A chain of cubic segments has 4, 7, 10, ... points."});
    };
    for (const Json& edge : piece.at("edges")) check(edge, member(edges, j++));
    if (piece.contains("centre_line"))
      check(piece.at("centre_line"), member(member(pieces, i - 1), "centre_line"));
  }
}

Block block_from(const Json& value, const std::string& prefix, Problems& problems) {
  Block out;
  out.id = value.at("id").get<std::string>();
  out.name = value.at("name").get<std::string>();
  out.kind = value.at("kind").get<std::string>();
  out.size = value.at("size").get<std::string>();
  out.fabric = read_fabric(value.at("fabric"), member(prefix, "fabric"), problems);
  out.drafted_for = read_wearer(value.at("drafted_for"), member(prefix, "drafted_for"), problems);
  for (const auto& item : value.at("ease_mm").items()) {
    out.ease[item.key()] = item.value().get<double>();
  }
  all_from(value.at("pieces"), piece_from, out.pieces);
  all_from(value.at("seams"), seam_from, out.seams);
  all_from(value.at("joins"), join_from, out.joins);
  all_from(value.at("bindings"), binding_from, out.bindings);
  all_from(value.at("linings"), lining_from, out.linings);
  return out;
}

}  // namespace

Json to_json(const Block& block) {
  Json ease = Json::object();
  for (const auto& [id, mm] : block.ease) ease[id] = mm;
  return {{"format", "pinwright-block"},
          {"version", is_opened(block) ? 2 : 1},
          {"unit", "mm"},
          {"id", block.id},
          {"name", block.name},
          {"kind", block.kind},
          {"size", block.size},
          {"fabric", to_json(block.fabric)},
          {"drafted_for", to_json(block.drafted_for)},
          {"ease_mm", std::move(ease)},
          {"pieces", all(block.pieces)},
          {"seams", all(block.seams)},
          {"joins", all(block.joins)},
          {"bindings", all(block.bindings)},
          {"linings", all(block.linings)}};
}

Result<Block> read_block_json(const Json& value, std::string_view prefix) {
  const std::string base(prefix);
  Problems problems = check_against_block_schema(value);
  for (Problem& p : problems) p.place = base + p.place;
  if (!problems.empty()) return problems;
  check_point_counts(value, base, problems);
  Block block = block_from(value, base, problems);
  if (!problems.empty()) return problems;
  problems = check_block(block);
  if (!problems.empty()) return problems;
  return block;
}

std::string write_block(const Block& block) { return dump(to_json(block)); }

Result<Block> read_block(std::string_view json_text) {
  auto value = parse_json(json_text);
  if (!value.ok()) return value.problems();
  return read_block_json(value.value());
}

Result<Block> read_block_file(const std::string& path) {
  auto text = read_file_limited(path, kMostBytes);
  if (!text.ok()) return text.problems();
  return read_block(text.value());
}

}  // namespace pinwright::api
