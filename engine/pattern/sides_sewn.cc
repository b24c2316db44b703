#include "engine/pattern/sides_sewn.h"

#include <algorithm>
#include <optional>

#include "engine/pattern/opened_piece.h"

namespace pinwright {
namespace {

// ---- from the halves to the whole

/// How one side's references are written in the joined block.
class Namer {
 public:
  Namer(const Block& half, const std::set<std::string>& open, Side side)
      : half_(half), open_(open), side_(side) {}

  bool opened(const std::string& piece) const { return open_.contains(piece); }
  bool folded(const std::string& piece) const {
    const Piece* p = find_piece(half_, piece);
    return p != nullptr && is_half(*p);
  }
  bool turned(const std::string& piece) const {
    const Piece* p = find_piece(half_, piece);
    return p != nullptr && (is_half(*p) || p->cut.mirrored_pair) && drawn_side(*p) != side_;
  }
  std::string piece(const std::string& id) const {
    return opened(id) && !folded(id) ? with_side(id, side_) : id;
  }
  std::string edge(const std::string& piece, const std::string& id) const {
    return opened(piece) && folded(piece) ? with_side(id, side_) : id;
  }
  RunPart part(const RunPart& p) const {
    const bool turn = opened(p.piece) && turned(p.piece);
    return {piece(p.piece), edge(p.piece, p.edge), p.reversed != turn};
  }
  std::vector<RunPart> run(const std::vector<RunPart>& parts) const {
    std::vector<RunPart> out;
    for (const RunPart& p : parts) out.push_back(part(p));
    return out;
  }
  /// A notch on one of the run's parts.
  std::string notch(const std::vector<RunPart>& parts, const std::string& id) const {
    for (const RunPart& p : parts) {
      const Piece* on = find_piece(half_, p.piece);
      const Notch* n = on == nullptr ? nullptr : find_notch(*on, id);
      if (n != nullptr && n->edge == p.edge) return edge(p.piece, id);
    }
    return id;
  }
  /// A corner away from the fold.
  CornerRef corner(const CornerRef& c) const {
    const std::string before = edge(c.piece, c.before);
    const std::string after = edge(c.piece, c.after);
    if (opened(c.piece) && turned(c.piece)) return {piece(c.piece), after, before};
    return {piece(c.piece), before, after};
  }
  bool at_fold(const CornerRef& c) const {
    if (!opened(c.piece) || !folded(c.piece)) return false;
    const std::string& fold = *find_piece(half_, c.piece)->fold;
    return c.before == fold || c.after == fold;
  }
  /// The corner at a former fold: the half that is drawn, then its mirror image, or the reverse.
  CornerRef across_fold(const CornerRef& c) const {
    const Piece& p = *find_piece(half_, c.piece);
    const Side drawn = drawn_side(p);
    if (c.after == *p.fold)
      return {c.piece, with_side(c.before, drawn), with_side(c.before, other_side(drawn))};
    return {c.piece, with_side(c.after, other_side(drawn)), with_side(c.after, drawn)};
  }
  bool any_opened(const std::vector<RunPart>& parts) const {
    return std::any_of(parts.begin(), parts.end(),
                       [&](const RunPart& p) { return opened(p.piece); });
  }

  Seam seam(const Seam& s) const {
    Seam out{with_side(s.id, side_), said(s.name), run(s.a), run(s.b), {}};
    for (const SeamSection& section : s.sections)
      out.sections.push_back(
          {notch(s.a, section.notch_a), notch(s.b, section.notch_b), section.ease_mm});
    return out;
  }
  Join join(const Join& j) const {
    Join out{with_side(j.id, side_), said(j.name), {}, j.target_rad};
    for (const CornerRef& c : j.corners) out.corners.push_back(corner(c));
    return out;
  }

 private:
  std::string said(const std::string& name) const {
    return name.empty() ? name : name + ", " + std::string(to_text(side_));
  }

  const Block& half_;
  const std::set<std::string>& open_;
  Side side_;
};

void join_seams(Block& joined, const Block& left, const Block& right, const Namer& l,
                const Namer& r) {
  for (std::size_t i = 0; i < left.seams.size(); ++i) {
    const Seam& a = left.seams[i];
    if (!l.any_opened(a.a) && !l.any_opened(a.b)) {
      joined.seams.push_back(a);
    } else if (a.a == a.b) {
      Seam one = l.seam(a);
      one.id = a.id;
      one.name = a.name;
      one.b = r.run(right.seams[i].b);
      for (SeamSection& s : one.sections) s.notch_b = r.notch(right.seams[i].b, s.notch_b);
      joined.seams.push_back(std::move(one));
    } else {
      joined.seams.push_back(l.seam(a));
      joined.seams.push_back(r.seam(right.seams[i]));
    }
  }
}

void join_joins(Block& joined, const Block& left, const Namer& l, const Namer& r) {
  for (const Join& j : left.joins) {
    bool opened = false;
    bool at_fold = false;
    for (const CornerRef& c : j.corners) {
      opened = opened || l.opened(c.piece);
      at_fold = at_fold || l.at_fold(c);
    }
    if (!opened) {
      joined.joins.push_back(j);
    } else if (!at_fold) {
      joined.joins.push_back(l.join(j));
      joined.joins.push_back(r.join(j));
    } else {
      Join one{j.id, j.name, {}, 2.0 * j.target_rad};
      for (const CornerRef& c : j.corners) {
        if (l.at_fold(c)) {
          one.corners.push_back(l.across_fold(c));
        } else {
          one.corners.push_back(l.corner(c));
          one.corners.push_back(r.corner(c));
        }
      }
      joined.joins.push_back(std::move(one));
    }
  }
}

void join_bindings(Block& joined, const Block& left, const std::set<std::string>& open,
                   const Namer& l, const Namer& r) {
  for (const Binding& b : left.bindings) {
    if (open.contains(b.piece)) {
      for (const Namer* side : {&l, &r}) {
        Binding one = b;
        one.piece = side->piece(b.piece);
        one.id = b.id + one.piece.substr(b.piece.size());
        one.opening = side->run(b.opening);
        joined.bindings.push_back(std::move(one));
      }
    } else if (b.copies == 2 && l.any_opened(b.opening)) {
      Binding one = b;
      one.opening = l.run(b.opening);
      std::reverse(one.opening.begin(), one.opening.end());
      const std::vector<RunPart> back = r.run(b.opening);
      one.opening.insert(one.opening.end(), back.begin(), back.end());
      one.copies = 1;
      joined.bindings.push_back(std::move(one));
    } else {
      joined.bindings.push_back(b);
    }
  }
}

void join_linings(Block& joined, const Block& left, const Namer& l, const Namer& r) {
  for (const Lining& one : left.linings) {
    const Lining a{l.piece(one.piece), l.piece(one.shell)};
    const Lining b{r.piece(one.piece), r.piece(one.shell)};
    joined.linings.push_back(a);
    if (!(a == b)) joined.linings.push_back(b);
  }
}

// ---- from the whole to a half

struct SidedEdge {
  std::string piece;
  std::string edge;
  Side side = Side::both;  ///< both: of a piece that serves both sides
  bool turned = false;
};

class Reader {
 public:
  Reader(const Block& opened, Side side) : opened_(opened), side_(side) {}

  SidedEdge edge(const std::string& piece, const std::string& id) const {
    const Piece* p = find_piece(opened_, piece);
    if (p == nullptr) return {piece, id};
    if (p->side != Side::both) {
      const bool strip = edge_of_role(*p, EdgeRole::opening) != nullptr;
      return {without_side(piece, p->side).value_or(piece), id, p->side,
              !strip && drawn_side(*p) != p->side};
    }
    if (!p->centre_line) return {piece, id};
    for (const Side s : {Side::left, Side::right})
      if (auto plain = without_side(id, s)) return {piece, *plain, s, drawn_side(*p) != s};
    return {piece, id};
  }
  RunPart part(const RunPart& p) const {
    const SidedEdge e = edge(p.piece, p.edge);
    return {e.piece, e.edge, p.reversed != e.turned};
  }
  std::vector<RunPart> run(const std::vector<RunPart>& parts) const {
    std::vector<RunPart> out;
    for (const RunPart& p : parts) out.push_back(part(p));
    return out;
  }
  /// The sides that a run names; both: none in particular.
  bool names(const std::vector<RunPart>& parts, Side side) const {
    return std::any_of(parts.begin(), parts.end(),
                       [&](const RunPart& p) { return edge(p.piece, p.edge).side == side; });
  }
  std::string notch(const std::vector<RunPart>& parts, const std::string& id) const {
    for (const RunPart& p : parts) {
      const Piece* on = find_piece(opened_, p.piece);
      const Notch* n = on == nullptr ? nullptr : find_notch(*on, id);
      if (n == nullptr || n->edge != p.edge || !on->centre_line) continue;
      return without_side(id, edge(p.piece, p.edge).side).value_or(id);
    }
    return id;
  }
  std::string plain(const std::string& id) const { return without_side(id, side_).value_or(id); }
  std::string said(const std::string& name) const {
    const std::string end = ", " + std::string(to_text(side_));
    return name.ends_with(end) ? name.substr(0, name.size() - end.size()) : name;
  }
  Side other() const { return other_side(side_); }
  Side side() const { return side_; }
  const Block& block() const { return opened_; }

 private:
  const Block& opened_;
  Side side_;
};

Problem mixed(const std::string& what) {
  return {"sides-mixed", what, "it joins the left side to the right where no half does",
          "say it once for each side"};
}

Result<Done> read_seams(Block& half, const Reader& read) {
  for (const Seam& s : read.block().seams) {
    const bool this_side = read.names(s.a, read.side()) || read.names(s.b, read.side());
    const bool other = read.names(s.a, read.other()) || read.names(s.b, read.other());
    if (other && !this_side) continue;
    Seam one{s.id, s.name, read.run(s.a), read.run(s.b), {}};
    for (const SeamSection& section : s.sections)
      one.sections.push_back(
          {read.notch(s.a, section.notch_a), read.notch(s.b, section.notch_b), section.ease_mm});
    if (this_side && other) {
      if (!(one.a == one.b)) return mixed("seam " + s.id);
    } else if (this_side) {
      one.id = read.plain(s.id);
      one.name = read.said(s.name);
    }
    half.seams.push_back(std::move(one));
  }
  return Done{};
}

/// The corner at a former fold as the half has it; nothing for any other corner.
std::optional<CornerRef> fold_corner(const Reader& read, const CornerRef& c) {
  const Piece* p = find_piece(read.block(), c.piece);
  if (p == nullptr || !p->centre_line) return {};
  const SidedEdge a = read.edge(c.piece, c.before);
  const SidedEdge b = read.edge(c.piece, c.after);
  if (a.edge != b.edge || a.side == b.side) return {};
  if (a.side == drawn_side(*p)) return CornerRef{c.piece, a.edge, p->centre_line->id};
  return CornerRef{c.piece, p->centre_line->id, a.edge};
}

Result<Done> read_joins(Block& half, const Reader& read) {
  for (const Join& j : read.block().joins) {
    Join one{j.id, j.name, {}, j.target_rad};
    bool this_side = false;
    bool other = false;
    bool at_fold = false;
    bool twice = false;  // the second naming of a corner that serves both sides
    for (const CornerRef& c : j.corners) at_fold = at_fold || fold_corner(read, c).has_value();
    for (const CornerRef& c : j.corners) {
      if (const auto at = fold_corner(read, c)) {
        one.corners.push_back(*at);
        continue;
      }
      const SidedEdge a = read.edge(c.piece, c.before);
      const SidedEdge b = read.edge(c.piece, c.after);
      if (a.side != b.side) return mixed("join " + j.id);
      this_side = this_side || a.side == read.side();
      other = other || a.side == read.other();
      if (a.side == read.other()) continue;
      if (a.side == Side::both && at_fold && (twice = !twice) == false) continue;
      one.corners.push_back(a.turned ? CornerRef{a.piece, b.edge, a.edge}
                                     : CornerRef{a.piece, a.edge, b.edge});
    }
    if (at_fold) {
      one.target_rad = j.target_rad / 2.0;
    } else if (this_side && other) {
      return mixed("join " + j.id);
    } else if (other) {
      continue;
    } else if (this_side) {
      one.id = read.plain(j.id);
      one.name = read.said(j.name);
    }
    half.joins.push_back(std::move(one));
  }
  return Done{};
}

Result<Done> read_bindings(Block& half, const Reader& read) {
  for (const Binding& b : read.block().bindings) {
    Binding one = b;
    const Piece* strip = find_piece(read.block(), b.piece);
    if (strip != nullptr && strip->side != Side::both) {
      if (strip->side != read.side()) continue;
      one.id = read.plain(b.id);
      one.piece = read.plain(b.piece);
      one.opening = read.run(b.opening);
    } else if (read.names(b.opening, Side::left) || read.names(b.opening, Side::right)) {
      const auto middle = b.opening.begin() + static_cast<std::ptrdiff_t>(b.opening.size() / 2);
      std::vector<RunPart> left(b.opening.begin(), middle);
      std::reverse(left.begin(), left.end());
      const std::vector<RunPart> right(middle, b.opening.end());
      if (b.copies != 1 || read.run(left) != read.run(right) || read.names(left, Side::right) ||
          read.names(right, Side::left))
        return mixed("binding " + b.id);
      one.opening = read.run(read.side() == Side::left ? left : right);
      one.copies = 2;
    }
    half.bindings.push_back(std::move(one));
  }
  return Done{};
}

void read_linings(Block& half, const Reader& read) {
  for (const Lining& one : read.block().linings) {
    const auto piece = read.edge(one.piece, "");
    const auto shell = read.edge(one.shell, "");
    if (piece.side == read.other() || shell.side == read.other()) continue;
    half.linings.push_back({piece.piece, shell.piece});
  }
}

}  // namespace

void sew_joined(Block& joined, const Block& left, const Block& right,
                const std::set<std::string>& open) {
  const Namer l(left, open, Side::left);
  const Namer r(right, open, Side::right);
  joined.seams.clear();
  joined.joins.clear();
  joined.bindings.clear();
  joined.linings.clear();
  join_seams(joined, left, right, l, r);
  join_joins(joined, left, l, r);
  join_bindings(joined, left, open, l, r);
  join_linings(joined, left, l, r);
}

Result<Done> sew_half(Block& half, const Block& opened, Side side) {
  const Reader read(opened, side);
  half.seams.clear();
  half.joins.clear();
  half.bindings.clear();
  half.linings.clear();
  for (const auto part : {&read_seams, &read_joins, &read_bindings}) {
    const Result<Done> done = part(half, read);
    if (!done) return done;
  }
  read_linings(half, read);
  return Done{};
}

}  // namespace pinwright
