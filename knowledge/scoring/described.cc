#include "knowledge/scoring/described.h"

#include <charconv>
#include <fstream>
#include <iterator>
#include <set>

#include "engine/base/nearest_word.h"
#include "knowledge/yaml_tree.h"

namespace pinwright::knowledge {
namespace {

class DescribedReader {
 public:
  DescribedReader(const Knowledge& k, const std::string& file) : k_(k), file_(file) {}

  Result<std::vector<DescribedTryOn>> read(const YamlNode& tree) {
    const YamlNode* list = tree.find("tryons");
    if (list == nullptr || list->kind != YamlNode::Kind::list) {
      return Problem{"tryon-unsound", file_, "there is no list `tryons`",
                     "write the try-ons as a list under tryons:"};
    }
    std::vector<DescribedTryOn> all;
    for (const YamlNode& node : list->items) all.push_back(one(node));
    if (!problems_.empty()) return problems_;
    return all;
  }

 private:
  void say(int line, std::string code, std::string what, std::string mend) {
    problems_.push_back({std::move(code), at_line(file_, line), std::move(what), std::move(mend)});
  }

  static std::string text(const YamlNode& n, std::string_view key) {
    const YamlNode* value = n.find(key);
    return value == nullptr ? "" : value->text;
  }

  static std::vector<std::string> texts(const YamlNode& n, std::string_view key) {
    std::vector<std::string> all;
    if (const YamlNode* list = n.find(key))
      for (const YamlNode& item : list->items) all.push_back(item.text);
    return all;
  }

  template <class Range>
  void known(const Range& range, const std::string& id, int line, const std::string& sort) {
    std::vector<std::string_view> ids;
    for (const auto& entry : range) {
      if (entry.id == id) return;
      ids.push_back(entry.id);
    }
    const std::string near = nearest_word(id, ids);
    say(line, sort + "-unknown", "there is no " + sort + " " + id,
        near.empty() ? "use one that is defined" : "did you mean " + near + "?");
  }

  DescribedTryOn one(const YamlNode& n) {
    DescribedTryOn t;
    t.place = {file_, n.line};
    t.id = text(n, "id");
    t.kind = text(n, "kind");
    t.style = texts(n, "style");
    t.words = text(n, "words");
    t.causes = texts(n, "causes");
    if (t.id.empty() || t.words.empty() || t.causes.empty())
      say(n.line, "tryon-unsound", "a try-on lacks its id, words or causes", "write all three");
    if (!t.id.empty() && !ids_.insert(t.id).second)
      say(n.line, "id-twice", "the try-on " + t.id + " stands twice", "rename one");
    if (std::find(k_.kinds.begin(), k_.kinds.end(), t.kind) == k_.kinds.end())
      say(n.line, "kind-unknown", "there is no block kind " + t.kind,
          "use knit-top or woven-bodice");
    for (const std::string& f : t.style) known(k_.features, f, n.line, "feature");
    for (const std::string& c : t.causes) known(k_.causes, c, n.line, "cause");
    if (const YamlNode* list = n.find("findings"))
      for (const YamlNode& f : list->items) t.findings.push_back(finding(f));
    return t;
  }

  WantedFinding finding(const YamlNode& n) {
    WantedFinding f;
    f.place = {file_, n.line};
    f.sign = text(n, "sign");
    f.absent = text(n, "absent") == "true";
    const std::string mm = text(n, "mm");
    double value = 0.0;
    const auto [stop, error] = std::from_chars(mm.data(), mm.data() + mm.size(), value);
    if (!mm.empty() && (error != std::errc{} || stop != mm.data() + mm.size()))
      say(n.line, "tryon-unsound", "mm: " + mm + " is no number", "write millimetres");
    if (!mm.empty()) f.mm = value;
    const std::string of = text(n, "of");
    if (!of.empty()) f.of = of == "half" ? Of::half : Of::whole;
    known(k_.signs, f.sign, n.line, "sign");
    return f;
  }

  const Knowledge& k_;
  const std::string& file_;
  std::set<std::string> ids_;
  Problems problems_;
};

}  // namespace

std::uint32_t fnv1a(std::string_view text) {
  std::uint32_t hash = 2166136261u;
  for (const char c : text) hash = (hash ^ static_cast<unsigned char>(c)) * 16777619u;
  return hash;
}

bool in_used_half(std::string_view id) { return fnv1a(id) % 2 == 0; }

Result<std::vector<DescribedTryOn>> read_described(const Knowledge& k, const std::string& file) {
  std::ifstream in(file, std::ios::binary);
  const std::string text{std::istreambuf_iterator<char>(in), std::istreambuf_iterator<char>()};
  if (!in.good() && !in.eof())
    return Problem{"file-unreadable", file, "the file cannot be read", "check the file"};
  const auto tree = read_yaml(text, file);
  if (!tree) return tree.problems();
  return DescribedReader(k, file).read(*tree);
}

}  // namespace pinwright::knowledge
