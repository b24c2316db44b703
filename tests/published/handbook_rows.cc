#include "handbook_rows.h"

#include <algorithm>
#include <charconv>
#include <fstream>
#include <iterator>
#include <set>
#include <sstream>

#include "engine/alteration/catalogue.h"
#include "knowledge/yaml_tree.h"

namespace pinwright::knowledge::testing {
namespace {

class RowReader {
 public:
  RowReader(const Knowledge& k, const std::string& file) : k_(k), file_(file) {}

  Result<HandbookRows> read(const YamlNode& tree) {
    HandbookRows all;
    for (const auto& [key, value] : tree.entries) {
      if (key == "rows") {
        for (const YamlNode& item : value.items) all.rows.push_back(row(item));
      } else if (key == "left_out") {
        for (const YamlNode& item : value.items) all.left_out.push_back(left_out(item));
      } else {
        say(value.line, "unknown key " + key);
      }
    }
    if (!problems_.empty()) return problems_;
    return all;
  }

 private:
  void say(int line, std::string what) {
    problems_.push_back(
        {"handbook-row-unsound", at_line(file_, line), std::move(what), "write it as on top"});
  }

  double number(const YamlNode& n) {
    double value = 0.0;
    const char* end = n.text.data() + n.text.size();
    const auto [stop, error] = std::from_chars(n.text.data(), end, value);
    if (error != std::errc{} || stop != end || value <= 0.0) say(n.line, n.text + " is no amount");
    return value;
  }

  template <class Range>
  void known(const Range& range, const YamlNode& n, const std::string& sort) {
    for (const auto& entry : range)
      if (entry.id == n.text) return;
    say(n.line, "there is no " + sort + " " + n.text);
  }

  WantedAmount amount(const YamlNode& n) {
    WantedAmount a;
    for (const auto& [key, value] : n.entries) {
      if (key == "of" && (value.text == "half" || value.text == "whole")) {
        a.of = value.text == "half" ? Of::half : Of::whole;
      } else if (key == "mm" || key == "cloth_mm") {
        a.mm = number(value);
      } else {
        say(value.line, key + ": " + value.text + " is not known");
      }
    }
    if (a.mm == 0.0) say(n.line, "no amount");
    return a;
  }

  WantedStep step(const YamlNode& n) {
    WantedStep s;
    s.text = n.text;
    std::istringstream words(n.text);
    words >> s.operation;
    const OperationInfo* info = find_operation(s.operation);
    if (info == nullptr) {
      say(n.line, "there is no operation " + s.operation);
      return s;
    }
    for (std::string word; words >> word;) {
      if (word == "less") {
        s.less = true;
        continue;
      }
      const std::size_t at = word.find('=');
      if (at == std::string::npos) {
        say(n.line, word + " is not known");
        continue;
      }
      const std::string key = word.substr(0, at);
      const std::string value = word.substr(at + 1);
      const bool takes =
          std::any_of(info->options.begin(), info->options.end(), [&](const auto& o) {
            return o.key == key &&
                   std::find(o.values.begin(), o.values.end(), value) != o.values.end();
          });
      if (!takes) say(n.line, s.operation + " takes no " + word);
      s.options.emplace_back(key, value);
    }
    return s;
  }

  void source(const YamlNode& n) {
    const std::string key = n.text.substr(0, n.text.find(':'));
    if (key == "common practice" || key == "from memory") return;
    if (n.text.size() <= key.size() + 2) say(n.line, "say where in " + key);
    for (const Publication& p : k_.publications)
      if (p.key == key) return;
    say(n.line, "there is no publication " + key);
  }

  HandbookRow row(const YamlNode& n) {
    HandbookRow r;
    r.line = n.line;
    std::size_t sources = 0;
    bool titled = false;
    for (const auto& [key, value] : n.entries) {
      if (key == "id") {
        r.id = value.text;
        if (!ids_.insert(r.id).second) say(value.line, r.id + " stands twice");
      } else if (key == "row") {
        r.row = static_cast<int>(number(value));
      } else if (key == "title") {
        titled = !value.text.empty();
      } else if (key == "source") {
        for (const YamlNode& item : value.items) source(item);
        sources = value.items.size();
      } else if (key == "kind") {
        r.kind = value.text;
        if (std::find(k_.kinds.begin(), k_.kinds.end(), r.kind) == k_.kinds.end())
          say(value.line, "there is no kind " + r.kind);
      } else if (key == "style") {
        for (const YamlNode& item : value.items) {
          known(k_.features, item, "feature");
          r.style.push_back(item.text);
        }
      } else if (key == "signs") {
        r.signs = value.text;
      } else if (key == "causes") {
        for (const YamlNode& item : value.items) {
          known(k_.causes, item, "cause");
          r.causes.push_back(item.text);
        }
      } else if (key == "alteration" || key == "alternatives") {
        auto& steps = key == "alteration" ? r.alteration : r.alternatives;
        for (const YamlNode& item : value.items) steps.push_back(step(item));
      } else if (key == "found") {
        r.found = amount(value);
      } else if (key == "amount") {
        r.amount = amount(value);
      } else if (key == "measure") {
        r.measure = value.text;
      } else if (key == "least") {
        r.least = number(value);
      } else if (key == "most") {
        r.most = number(value);
      } else {
        say(value.line, "unknown key " + key);
      }
    }
    if (r.id.empty() || r.row < 1 || !titled || sources == 0 || r.kind.empty() || r.signs.empty() ||
        r.causes.empty() || r.alteration.empty())
      say(n.line, "a row lacks id, row, title, source, kind, signs, causes or alteration");
    return r;
  }

  int left_out(const YamlNode& n) {
    const YamlNode* row = n.find("row");
    const YamlNode* why = n.find("why");
    if (row == nullptr || why == nullptr || why->text.empty()) {
      say(n.line, "what is left out has a row and a reason");
      return 0;
    }
    return static_cast<int>(number(*row));
  }

  const Knowledge& k_;
  const std::string& file_;
  std::set<std::string> ids_;
  Problems problems_;
};

std::string option_of(const Step& step, const std::string& key) {
  if (const auto it = step.options.find(key); it != step.options.end()) return it->second;
  if (const OperationInfo* info = find_operation(step.operation))
    for (const OptionInfo& o : info->options)
      if (o.key == key) return std::string(o.values.front());
  return "";
}

}  // namespace

bool WantedStep::is(const ProposedStep& proposed) const {
  const Step& step = proposed.step;
  if (step.operation != operation) return false;
  for (const auto& [key, value] : options)
    if (option_of(step, key) != value) return false;
  const OperationInfo* info = find_operation(operation);
  if (info == nullptr || info->amount == AmountKind::none || !proposed.has_amount) return true;
  return less ? step.amount < 0.0 : step.amount > 0.0;
}

Result<HandbookRows> read_handbook_rows(const Knowledge& k, const std::string& file) {
  std::ifstream in(file, std::ios::binary);
  if (!in) return Problem{"file-unreadable", file, "the file cannot be read", "check the file"};
  const std::string text{std::istreambuf_iterator<char>(in), std::istreambuf_iterator<char>()};
  const auto tree = read_yaml(text, file);
  if (!tree) return tree.problems();
  return RowReader(k, file).read(*tree);
}

}  // namespace pinwright::knowledge::testing
