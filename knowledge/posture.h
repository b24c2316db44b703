#pragma once
// A wearer's posture notes as grounds for the causes that they speak of.

#include <string>
#include <vector>

#include "knowledge/model.h"
#include "knowledge/network_of.h"

namespace pinwright::knowledge {

struct PostureHeard {
  std::string note;                    ///< as it was written
  const PostureNote* entry = nullptr;  ///< nothing: the note says nothing that is known
};

/// Each note by the entry all of whose words stand in it; of several, the one with most words, then
/// the first. Case, marks, order and a plural s do not count. A note with a "no", "not" or
/// "without" is not read. The knowledge must outlive what is returned.
std::vector<PostureHeard> posture_heard(const Knowledge& k, const std::vector<std::string>& notes);

/// Raises the prior of each cause that a note speaks of to the entry's, where it is higher.
void weigh_posture(const std::vector<PostureHeard>& heard, KindNetwork& network);

}  // namespace pinwright::knowledge
