// pinwright knowledge score FILE...

#include "knowledge/scoring/score.h"

#include "api/cli/commands.h"
#include "api/cli/say.h"
#include "api/cli/session.h"
#include "knowledge/load.h"

namespace pinwright::api::cli {

namespace {

Json to_json(const knowledge::Score& s) {
  return {{"tryons", s.tryons},
          {"cause_first", s.first_share()},
          {"cause_in_three", s.three_share()},
          {"findings", s.wanted},
          {"findings_read", s.read_share()},
          {"findings_true", s.true_share()}};
}

Json to_json(const knowledge::Scored& s, const knowledge::DescribedTryOn& t) {
  return {{"id", s.id},
          {"words", t.words},
          {"missed", s.missed},
          {"beside", s.invented},
          {"accepted", t.causes},
          {"causes", s.causes},
          {"refused", s.refused}, {"cause_first", s.first},
          {"cause_in_three", s.among_three}};
}

}  // namespace

int run_knowledge_score(const Options& options) {
  const auto loaded = knowledge::load(knowledge_folders(options));
  if (!loaded) return finish(options, loaded.problems());
  const knowledge::Listener listener(*loaded);
  Reply reply;
  reply.body["files"] = Json::array();
  Problems problems;
  for (const std::string& file : options.tryons) {
    const auto described = knowledge::read_described(*loaded, file);
    if (!described) {
      problems.insert(problems.end(), described.problems().begin(), described.problems().end());
      continue;
    }
    std::vector<knowledge::Scored> all;
    Json wrong = Json::array();
    for (const auto& tryon : *described) {
      auto scored = knowledge::score_one(*loaded, listener, tryon);
      if (!scored) {
        problems.insert(problems.end(), scored.problems().begin(), scored.problems().end());
        continue;
      }
      const bool right = scored->first && scored->missed.empty() && scored->invented.empty();
      if (options.show && !right) wrong.push_back(to_json(*scored, tryon));
      all.push_back(std::move(scored).value());
    }
    Json line = to_json(knowledge::sum(all));
    line["file"] = file;
    if (options.show) line["wrong"] = std::move(wrong);
    reply.body["files"].push_back(std::move(line));
  }
  if (!problems.empty()) return finish(options, problems);
  return finish(options, reply, say_score);
}

}  // namespace pinwright::api::cli
