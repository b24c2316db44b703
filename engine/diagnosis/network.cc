#include "engine/diagnosis/network.h"

#include <algorithm>
#include <tuple>

namespace pinwright {
namespace {

template <class Node>
void check_ids(const std::vector<Node>& nodes, const std::string& kind, Problems& problems) {
  std::vector<std::string_view> ids;
  for (const Node& node : nodes) ids.push_back(node.id);
  std::sort(ids.begin(), ids.end());
  for (std::size_t i = 1; i < ids.size(); ++i) {
    if (ids[i] != ids[i - 1]) continue;
    problems.push_back({"id-twice", kind + " " + std::string(ids[i]), "The id stands on two nodes.",
                        "Give every " + kind + " an id of its own."});
  }
}

Problem out_of_range(const std::string& place, const std::string& what, const std::string& range) {
  return {"probability-range", place, "The " + what + " is no probability " + range + ".",
          "Write a number " + range + "."};
}

/// By link: whether an earlier one has the same ends.
std::vector<bool> told_before(const Network& network) {
  using Ends = std::tuple<std::size_t, std::size_t, std::size_t>;  // cause, sign, link
  std::vector<Ends> ends;
  for (std::size_t i = 0; i < network.links.size(); ++i) {
    ends.emplace_back(network.links[i].cause, network.links[i].sign, i);
  }
  std::sort(ends.begin(), ends.end());
  std::vector<bool> twice(network.links.size(), false);
  for (std::size_t i = 1; i < ends.size(); ++i) {
    const auto& [cause, sign, number] = ends[i];
    const auto& [cause_before, sign_before, number_before] = ends[i - 1];
    twice[number] = cause == cause_before && sign == sign_before;
  }
  return twice;
}

void check_links(const Network& network, Problems& problems) {
  const std::vector<bool> twice = told_before(network);
  for (std::size_t i = 0; i < network.links.size(); ++i) {
    const Link& link = network.links[i];
    if (!(link.strength > 0.0 && link.strength <= 1.0)) {
      problems.push_back(
          out_of_range("link " + std::to_string(i), "strength", "above 0 and at most 1"));
    }
    if (link.cause >= network.causes.size() || link.sign >= network.signs.size()) {
      problems.push_back({"link-index", "link " + std::to_string(i),
                          "The link names a node that is not there.",
                          "Link causes and signs of this network."});
    } else if (twice[i]) {
      problems.push_back({"link-twice", "link " + std::to_string(i),
                          "Cause " + network.causes[link.cause].id + " and sign " +
                              network.signs[link.sign].id + " are linked twice.",
                          "Keep one link and its strength."});
    }
  }
}

}  // namespace

std::string_view to_text(CauseKind kind) {
  switch (kind) {
    case CauseKind::body:
      return "body";
    case CauseKind::block:
      return "block";
    case CauseKind::sewing:
      return "sewing";
    case CauseKind::fabric:
      return "fabric";
  }
  return "body";
}

Problems check(const Network& network) {
  Problems problems;
  check_ids(network.causes, "cause", problems);
  check_ids(network.signs, "sign", problems);
  for (const CauseNode& cause : network.causes) {
    if (cause.prior > 0.0 && cause.prior < 1.0) continue;
    problems.push_back(out_of_range("cause " + cause.id, "prior", "above 0 and below 1"));
  }
  for (const SignNode& sign : network.signs) {
    if (sign.leak >= 0.0 && sign.leak < 1.0) continue;
    problems.push_back(out_of_range("sign " + sign.id, "leak", "from 0 to below 1"));
  }
  check_links(network, problems);
  return problems;
}

}  // namespace pinwright
