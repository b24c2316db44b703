#include "engine/pattern/piece.h"

#include <array>
#include <cmath>
#include <numbers>
#include <utility>

namespace pinwright {
namespace {

constexpr std::array<std::pair<EdgeRole, std::string_view>, 15> kRoles = {{
    {EdgeRole::neckline, "neckline"},
    {EdgeRole::shoulder, "shoulder"},
    {EdgeRole::armhole, "armhole"},
    {EdgeRole::side, "side"},
    {EdgeRole::waist, "waist"},
    {EdgeRole::hem, "hem"},
    {EdgeRole::centre_front, "centre-front"},
    {EdgeRole::centre_back, "centre-back"},
    {EdgeRole::dart_leg, "dart-leg"},
    {EdgeRole::cap, "cap"},
    {EdgeRole::underarm, "underarm"},
    {EdgeRole::sleeve_hem, "sleeve-hem"},
    {EdgeRole::opening, "opening"},
    {EdgeRole::folded, "folded"},
    {EdgeRole::join, "join"},
}};

template <class List>
std::size_t index_of(const List& list, std::string_view id) {
  for (std::size_t i = 0; i < list.size(); ++i) {
    if (list[i].id == id) return i;
  }
  return kNowhere;
}

}  // namespace

std::string_view to_text(EdgeRole role) {
  for (const auto& [known, text] : kRoles) {
    if (known == role) return text;
  }
  return "";
}

std::optional<EdgeRole> edge_role(std::string_view text) {
  for (const auto& [role, known] : kRoles) {
    if (known == text) return role;
  }
  return std::nullopt;
}

std::size_t edge_index(const Piece& piece, std::string_view id) {
  return index_of(piece.edges, id);
}
std::size_t notch_index(const Piece& piece, std::string_view id) {
  return index_of(piece.notches, id);
}
std::size_t landmark_index(const Piece& piece, std::string_view id) {
  return index_of(piece.landmarks, id);
}

const Edge* edge_of_role(const Piece& piece, EdgeRole role) {
  for (const Edge& edge : piece.edges) {
    if (edge.role == role) return &edge;
  }
  return nullptr;
}

const Edge* find_edge(const Piece& piece, std::string_view id) {
  const std::size_t i = edge_index(piece, id);
  return i == kNowhere ? nullptr : &piece.edges[i];
}

Edge* find_edge(Piece& piece, std::string_view id) {
  const std::size_t i = edge_index(piece, id);
  return i == kNowhere ? nullptr : &piece.edges[i];
}

const Notch* find_notch(const Piece& piece, std::string_view id) {
  const std::size_t i = notch_index(piece, id);
  return i == kNowhere ? nullptr : &piece.notches[i];
}

const Landmark* find_landmark(const Piece& piece, std::string_view id) {
  const std::size_t i = landmark_index(piece, id);
  return i == kNowhere ? nullptr : &piece.landmarks[i];
}

const Dart* dart_toward(const Piece& piece, std::string_view landmark) {
  for (const Dart& dart : piece.darts) {
    if (dart.toward == landmark) return &dart;
  }
  return nullptr;
}

double dart_intake(const Piece& piece, const Dart& dart) {
  const Edge* in = find_edge(piece, dart.leg_in);
  const Edge* out = find_edge(piece, dart.leg_out);
  if (in == nullptr || out == nullptr) return 0.0;
  return distance(in->curve.start(), out->curve.end());
}

double dart_angle(const Piece& piece, const Dart& dart) {
  const Edge* in = find_edge(piece, dart.leg_in);
  const Edge* out = find_edge(piece, dart.leg_out);
  if (in == nullptr || out == nullptr) return 0.0;
  const Vec2 tip = in->curve.end();
  return std::abs(turn(in->curve.start() - tip, out->curve.end() - tip));
}

double corner_angle(const Piece& piece, std::size_t i) {
  const Edge& before = piece.edges[i];
  const Edge& after = piece.edges[(i + 1) % piece.edges.size()];
  return std::numbers::pi - turn(end_tangent(before.curve), start_tangent(after.curve));
}

}  // namespace pinwright
