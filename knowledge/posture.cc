#include "knowledge/posture.h"

#include <algorithm>
#include <cctype>
#include <set>

namespace pinwright::knowledge {
namespace {

std::set<std::string> words_in(const std::string& text) {
  std::set<std::string> all;
  std::string word;
  for (const char c : text + " ") {
    const auto byte = static_cast<unsigned char>(c);
    if (std::isalnum(byte)) {
      word += static_cast<char>(std::tolower(byte));
    } else if (!word.empty()) {
      if (word.size() > 3 && word.back() == 's') word.pop_back();
      all.insert(word);
      word.clear();
    }
  }
  return all;
}

bool denies(const std::set<std::string>& words) {
  return words.contains("no") || words.contains("not") || words.contains("without");
}

}  // namespace

std::vector<PostureHeard> posture_heard(const Knowledge& k, const std::vector<std::string>& notes) {
  std::vector<PostureHeard> all;
  for (const auto& note : notes) {
    PostureHeard heard{note, nullptr};
    const auto said = words_in(note);
    std::size_t most = 0;
    for (const auto& entry : k.postures)
      for (const auto& phrase : entry.words) {
        const auto wanted = words_in(phrase);
        if (wanted.size() > most && !denies(said) &&
            std::includes(said.begin(), said.end(), wanted.begin(), wanted.end())) {
          most = wanted.size();
          heard.entry = &entry;
        }
      }
    all.push_back(std::move(heard));
  }
  return all;
}

void weigh_posture(const std::vector<PostureHeard>& heard, KindNetwork& network) {
  for (const auto& h : heard) {
    if (h.entry == nullptr) continue;
    for (std::size_t i = 0; i < network.causes.size(); ++i)
      if (network.causes[i]->id == h.entry->cause) {
        double& prior = network.network.causes[i].prior;
        prior = std::max(prior, h.entry->prior);
      }
  }
}

}  // namespace pinwright::knowledge
