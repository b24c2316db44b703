#include "left_alone.h"

#include <algorithm>
#include <cmath>
#include <string>
#include <string_view>
#include <vector>

#include "engine/alteration/catalogue.h"

namespace pinwright {
namespace {

using enum EdgeRole;

enum class Where { front, back, sleeve, same, other };  ///< same, other: as the option piece says

struct Left {
  Where piece;
  std::vector<EdgeRole> roles;  ///< none: all of its lines
};

struct Row {
  std::string_view operation;
  std::string_view key;  ///< the row holds for this value of this option; empty: for all
  std::string_view value;
  std::vector<Left> left;
};

const std::vector<EdgeRole> kCentres = {centre_front, centre_back};
const std::vector<EdgeRole> kBottom = {hem, waist};
const std::vector<EdgeRole> kBelow = {side, hem, waist};

std::vector<EdgeRole> operator+(std::vector<EdgeRole> a, const std::vector<EdgeRole>& b) {
  a.insert(a.end(), b.begin(), b.end());
  return a;
}

// As the headers of the operations and their own tests say it.
const std::vector<Row>& rows() {
  static const std::vector<EdgeRole> sleeve_below = {underarm, sleeve_hem};
  static const std::vector<Row> all = {
      {"close-wedge", "edge", "neckline", {{Where::other, {}}, {Where::sleeve, {}}}},
      {"close-wedge", "edge", "armhole", {{Where::other, {}}, {Where::sleeve, sleeve_below}}},
      {"close-wedge", "hinge", "bust-point", {{Where::front, kCentres}}},
      {"close-wedge", "hinge", "armhole", {{Where::same, kBelow}}},
      {"lower-neckline",
       "",
       "",
       {{Where::other, {}},
        {Where::sleeve, {}},
        {Where::same, {side, hem, waist, armhole, shoulder, dart_leg}}}},
      {"widen-neckline",
       "",
       "",
       {{Where::sleeve, {}},
        {Where::front, kBelow + std::vector<EdgeRole>{armhole, centre_front}},
        {Where::back, kBelow + std::vector<EdgeRole>{armhole, centre_back}}}},
      {"swing-shoulder",
       "armhole",
       "follows",
       {{Where::sleeve, {}},
        {Where::front, kBottom + kCentres},
        {Where::back, kBottom + kCentres}}},
      {"swing-shoulder",
       "armhole",
       "stays",
       {{Where::sleeve, sleeve_below},
        {Where::front, kBelow + kCentres},
        {Where::back, kBelow + kCentres}}},
      {"move-shoulder-tip",
       "",
       "",
       {{Where::sleeve, sleeve_below},
        {Where::front, kBelow + kCentres + std::vector<EdgeRole>{neckline}},
        {Where::back, kBelow + kCentres + std::vector<EdgeRole>{neckline}}}},
      {"lower-underarm",
       "",
       "",
       {{Where::sleeve, {sleeve_hem}},
        {Where::front, kBottom + kCentres + std::vector<EdgeRole>{neckline, shoulder}},
        {Where::back, kBottom + kCentres + std::vector<EdgeRole>{neckline, shoulder}}}},
      {"let-out-side",
       "",
       "",
       {{Where::front, {neckline, shoulder, centre_front}},
        {Where::back, {neckline, shoulder, centre_back}}}},
      {"full-bust",
       "",
       "",
       {{Where::back, {}}, {Where::sleeve, {}}, {Where::front, {neckline, shoulder}}}},
      {"lengthen-over-bust", "", "", {{Where::back, {}}, {Where::sleeve, {}}}},
      {"lengthen",
       "piece",
       "body",
       {{Where::sleeve, {}},
        {Where::front, {neckline, shoulder}},
        {Where::back, {neckline, shoulder}}}},
      {"lengthen",
       "piece",
       "sleeve",
       {{Where::front, {}}, {Where::back, {}}, {Where::sleeve, {cap}}}},
      {"widen-upper-arm", "", "", {{Where::front, {}}, {Where::back, {}}}},
      {"raise-cap", "", "", {{Where::front, {}}, {Where::back, {}}}},
      {"raise-cap", "gives", "ease", {{Where::sleeve, sleeve_below}}},
      {"ease-cap", "", "", {{Where::front, {}}, {Where::back, {}}, {Where::sleeve, sleeve_below}}},
      {"turn-sleeve", "", "", {{Where::front, {}}, {Where::back, {}}}},
      {"turn-sleeve", "underarm", "stays", {{Where::sleeve, sleeve_below}}},
      {"widen-sleeve-hem", "", "", {{Where::front, {}}, {Where::back, {}}}},
      {"ease-elbow", "", "", {{Where::front, {}}, {Where::back, {}}, {Where::sleeve, {cap}}}},
      {"flare-hem",
       "",
       "",
       {{Where::sleeve, {}},
        {Where::front, {armhole, shoulder, neckline}},
        {Where::back, {armhole, shoulder, neckline}}}},
      {"scoop-edge",
       "edge",
       "armhole",
       {{Where::other, {}},
        {Where::sleeve, sleeve_below},
        {Where::same, kBelow + kCentres + std::vector<EdgeRole>{neckline, shoulder, dart_leg}}}},
      {"scoop-edge",
       "edge",
       "neckline",
       {{Where::other, {}},
        {Where::sleeve, {}},
        {Where::same, kBelow + kCentres + std::vector<EdgeRole>{armhole, shoulder, dart_leg}}}},
      {"let-out-dart",
       "",
       "",
       {{Where::other, {}},
        {Where::sleeve, {}},
        {Where::same, {armhole, neckline, shoulder, side}}}},
      {"move-bust-point",
       "",
       "",
       {{Where::back, {}},
        {Where::sleeve, {}},
        {Where::front, {neckline, shoulder, centre_front}}}},
      {"rotate-dart", "", "", {{Where::other, {}}, {Where::sleeve, {}}, {Where::same, kCentres}}},
      {"divide-dart", "", "", {{Where::other, {}}, {Where::sleeve, {}}, {Where::same, kCentres}}},
      {"ease-dart", "", "", {{Where::other, {}}, {Where::sleeve, {}}, {Where::same, kCentres}}},
      {"lengthen-dart", "", "", {{Where::other, {}}, {Where::sleeve, {}}, {Where::same, kCentres}}},
      {"shift-shoulder-seam",
       "",
       "",
       {{Where::sleeve, sleeve_below}, {Where::front, kBelow}, {Where::back, kBelow}}},
      {"shift-shoulder-seam", "from", "tip", {{Where::front, kCentres}, {Where::back, kCentres}}},
      {"shorten-chest", "", "", {{Where::back, {}}, {Where::sleeve, {}}, {Where::front, kBelow}}},
      {"lengthen-upper-back",
       "",
       "",
       {{Where::back, kBelow}, {Where::front, kBelow + std::vector<EdgeRole>{centre_front}}}},
      {"raise-back-neck",
       "",
       "",
       {{Where::front, {}},
        {Where::sleeve, {}},
        {Where::back, kBelow + std::vector<EdgeRole>{armhole}}}},
      {"move-armhole-forward",
       "",
       "",
       {{Where::sleeve, sleeve_below},
        {Where::front, kBelow + std::vector<EdgeRole>{shoulder, neckline, centre_front, dart_leg}},
        {Where::back, kBelow + std::vector<EdgeRole>{shoulder, neckline, centre_back, dart_leg}}}},
      {"widen-back", "", "", {{Where::front, {}}, {Where::back, {neckline, centre_back}}}},
      {"widen-back", "way", "armhole", {{Where::sleeve, sleeve_below}, {Where::back, kBelow}}},
      {"widen-chest", "", "", {{Where::back, {}}, {Where::front, {neckline, centre_front}}}},
      {"widen-chest",
       "way",
       "armhole",
       {{Where::sleeve, sleeve_below}, {Where::front, kBelow + std::vector<EdgeRole>{shoulder}}}},
      {"deepen-blade-dart",
       "",
       "",
       {{Where::front, {}}, {Where::sleeve, {}}, {Where::back, {centre_back}}}},
      {"deepen-blade-dart", "hinge", "armhole", {{Where::back, kBelow}}},
      {"tuck-back-waist",
       "",
       "",
       {{Where::sleeve, {}},
        {Where::front, {side, armhole, shoulder, neckline, centre_front}},
        {Where::back, {side, armhole, shoulder, neckline}}}},
      {"resize-neckline",
       "",
       "",
       {{Where::sleeve, {}},
        {Where::front, kBelow + std::vector<EdgeRole>{armhole}},
        {Where::back, kBelow + std::vector<EdgeRole>{armhole}}}},
      {"move-neck-forward",
       "",
       "",
       {{Where::sleeve, {}}, {Where::front, kBelow}, {Where::back, kBelow}}},
      {"set-binding-ratio", "", "", {{Where::front, {}}, {Where::back, {}}, {Where::sleeve, {}}}},
      {"sew", "", "", {{Where::front, {}}, {Where::back, {}}, {Where::sleeve, {}}}},
      {"choose", "", "", {{Where::front, {}}, {Where::back, {}}, {Where::sleeve, {}}}},
  };
  return all;
}

std::string value_of(const Step& step, std::string_view key) {
  const auto given = step.options.find(std::string(key));
  if (given != step.options.end()) return given->second;
  const OperationInfo* info = find_operation(step.operation);
  if (info == nullptr) return {};
  for (const OptionInfo& o : info->options)
    if (o.key == key) return std::string(o.values.front());
  return {};
}

std::string piece_of(Where where, const Step& step) {
  const std::string named = value_of(step, "piece") == "back" ? "back" : "front";
  switch (where) {
    case Where::front:
      return "front";
    case Where::back:
      return "back";
    case Where::sleeve:
      return "sleeve";
    case Where::same:
      return named;
    case Where::other:
      return named == "front" ? "back" : "front";
  }
  return {};
}

// At a corner where a line runs on over a seam, a curve may have to give so that it does: its ends
// and its length stay.
bool gave_at_a_join(const Block& block, const std::string& piece, const Edge& was, const Edge& is) {
  if (!(was.curve.start() == is.curve.start()) || !(was.curve.end() == is.curve.end()) ||
      std::abs(chord_length(was.curve) - chord_length(is.curve)) > 1e-3)
    return false;
  for (const Join& join : block.joins)
    for (const CornerRef& c : join.corners)
      if (c.piece == piece && (c.before == was.id || c.after == was.id)) return true;
  return false;
}

// A dart's mouth slides along its seam when the bust point moves.
bool beside_a_dart(const Piece& piece, const Edge& edge) {
  const std::size_t n = piece.edges.size();
  const std::size_t i = edge_index(piece, edge.id);
  return piece.edges[(i + 1) % n].role == dart_leg || piece.edges[(i + n - 1) % n].role == dart_leg;
}

}  // namespace

bool left_alone_knows(std::string_view operation) {
  return std::any_of(rows().begin(), rows().end(),
                     [&](const Row& row) { return row.operation == operation; });
}

void left_alone_faults(const Block& before, const Block& after, const Step& step, Faults& faults) {
  for (const Row& row : rows()) {
    if (row.operation != step.operation) continue;
    if (!row.key.empty() && value_of(step, row.key) != row.value) continue;
    for (const Left& left : row.left) {
      const std::string id = piece_of(left.piece, step);
      const Piece* was = find_piece(before, id);
      const Piece* is = find_piece(after, id);
      if (was == nullptr || is == nullptr) continue;
      for (const Edge& e : was->edges) {
        if (!left.roles.empty() &&
            std::find(left.roles.begin(), left.roles.end(), e.role) == left.roles.end())
          continue;
        if (step.operation == "move-bust-point" && beside_a_dart(*was, e)) continue;
        const Edge* now = find_edge(*is, e.id);
        if (now != nullptr && !(now->curve == e.curve) && !gave_at_a_join(before, id, e, *now))
          faults.push_back(step.operation + " must leave " + id + "." + e.id + " alone");
      }
    }
  }
}

void other_side_faults(const Block& before, const Block& after, Faults& faults) {
  for (const Piece& was : before.pieces) {
    const Piece* is = find_piece(after, was.id);
    if (is == nullptr || edge_of_role(was, opening) != nullptr) continue;
    for (const Edge& e : was.edges) {
      const Edge* now = find_edge(*is, e.id);
      if (now == nullptr || !(now->curve == e.curve))
        faults.push_back("the other side's " + was.id + "." + e.id + " was altered too");
    }
  }
}

}  // namespace pinwright
