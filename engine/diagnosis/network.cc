#include "engine/diagnosis/network.h"

#include <set>
#include <utility>

namespace pinwright {
namespace {

template <class Node>
void check_ids(const std::vector<Node>& nodes, const std::string& kind, Problems& problems) {
  std::set<std::string_view> ids;
  for (const Node& node : nodes) {
    if (ids.insert(node.id).second) continue;
    problems.push_back({"id-twice", kind + " " + node.id, "The id stands on two nodes.",
                        "Give every " + kind + " an id of its own."});
  }
}

void check_range(bool sound, const std::string& place, const std::string& what,
                 const std::string& range, Problems& problems) {
  if (sound) return;
  problems.push_back({"probability-range", place,
                      "The " + what + " is no probability " + range + ".",
                      "Write a number " + range + "."});
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
    check_range(cause.prior > 0.0 && cause.prior < 1.0, "cause " + cause.id, "prior",
                "above 0 and below 1", problems);
  }
  for (const SignNode& sign : network.signs) {
    check_range(sign.leak >= 0.0 && sign.leak < 1.0, "sign " + sign.id, "leak", "from 0 to below 1",
                problems);
  }
  std::set<std::pair<std::size_t, std::size_t>> seen;
  for (std::size_t i = 0; i < network.links.size(); ++i) {
    const Link& link = network.links[i];
    const std::string place = "link " + std::to_string(i);
    check_range(link.strength > 0.0 && link.strength <= 1.0, place, "strength",
                "above 0 and at most 1", problems);
    if (link.cause >= network.causes.size() || link.sign >= network.signs.size()) {
      problems.push_back({"link-index", place, "The link names a node that is not there.",
                          "Link causes and signs of this network."});
    } else if (!seen.emplace(link.cause, link.sign).second) {
      problems.push_back({"link-twice", place,
                          "Cause " + network.causes[link.cause].id + " and sign " +
                              network.signs[link.sign].id + " are linked twice.",
                          "Keep one link and its strength."});
    }
  }
  return problems;
}

}  // namespace pinwright
