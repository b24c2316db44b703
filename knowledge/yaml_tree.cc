#include "knowledge/yaml_tree.h"

#include <yaml-cpp/eventhandler.h>
#include <yaml-cpp/exceptions.h>
#include <yaml-cpp/mark.h>
#include <yaml-cpp/parser.h>

#include <algorithm>
#include <exception>
#include <sstream>

namespace pinwright::knowledge {
namespace {

/// Thrown inside only, to stop the parser early; never leaves read_yaml.
struct Stop {};

class TreeBuilder final : public YAML::EventHandler {
 public:
  TreeBuilder(std::string_view text, std::string file, Problems& problems)
      : text_(text), file_(std::move(file)), problems_(problems) {}

  YamlNode take() { return std::move(root_); }
  int first_line() const { return first_line_; }

  void OnDocumentStart(const YAML::Mark& mark) override { first_line_ = mark.line + 1; }
  void OnDocumentEnd() override {}
  void OnNull(const YAML::Mark& mark, YAML::anchor_t anchor) override {
    refuse_anchor(mark, anchor);
    add(node(mark, YamlNode::Kind::null));
  }
  void OnAlias(const YAML::Mark& mark, YAML::anchor_t) override {
    say(mark, "yaml-alias", "an alias stands here", "write the value out");
    add(node(mark, YamlNode::Kind::null));
  }
  void OnScalar(const YAML::Mark& mark, const std::string& tag, YAML::anchor_t anchor,
                const std::string& value) override {
    refuse_anchor(mark, anchor);
    refuse_tag(mark, tag);
    YamlNode n = node(mark, YamlNode::Kind::scalar);
    if (value.size() > kMostTextBytes) {
      say(mark, "yaml-text-too-long", "one value is longer than 4000 bytes", "write it shorter");
    } else {
      n.text = value;
    }
    n.quoted = tag == "!";
    if (n.quoted && !closes_on_its_line(mark))
      say(mark, "yaml-quote-open", "the quote opened here is not closed on this line",
          "close it; a text of several lines begins with > alone");
    add(std::move(n));
  }
  void OnSequenceStart(const YAML::Mark& mark, const std::string& tag, YAML::anchor_t anchor,
                       YAML::EmitterStyle::value) override {
    open(mark, tag, anchor, YamlNode::Kind::list);
  }
  void OnSequenceEnd() override { close(); }
  void OnMapStart(const YAML::Mark& mark, const std::string& tag, YAML::anchor_t anchor,
                  YAML::EmitterStyle::value) override {
    open(mark, tag, anchor, YamlNode::Kind::map);
  }
  void OnMapEnd() override { close(); }

 private:
  /// The parser takes what follows an open quote, to the end of the file if need be, as its text.
  bool closes_on_its_line(const YAML::Mark& mark) const {
    std::size_t from = 0;
    for (int line = 0; line < mark.line && from < text_.size(); ++line) {
      const std::size_t end = text_.find('\n', from);
      from = end == std::string_view::npos ? text_.size() : end + 1;
    }
    const std::string_view line = text_.substr(from, text_.find('\n', from) - from);
    const auto column = static_cast<std::size_t>(std::max(mark.column, 0));
    if (column >= line.size() || (line[column] != '"' && line[column] != '\'')) return true;
    const char quote = line[column];
    for (std::size_t i = column + 1; i < line.size(); ++i) {
      if (quote == '"' && line[i] == '\\')
        ++i;
      else if (line[i] == quote)
        return true;
    }
    return false;
  }

  struct Open {
    YamlNode node;
    bool has_key = false;
    std::string key;
    int key_line = 0;
  };

  static YamlNode node(const YAML::Mark& mark, YamlNode::Kind kind) {
    YamlNode n;
    n.kind = kind;
    n.line = mark.line + 1;
    return n;
  }
  void say(const YAML::Mark& mark, std::string code, std::string what, std::string mend) {
    problems_.push_back(
        {std::move(code), at_line(file_, mark.line + 1), std::move(what), std::move(mend)});
  }
  void refuse_anchor(const YAML::Mark& mark, YAML::anchor_t anchor) {
    if (anchor != YAML::NullAnchor)
      say(mark, "yaml-alias", "an anchor stands here", "write the value out where it is wanted");
  }
  void refuse_tag(const YAML::Mark& mark, const std::string& tag) {
    if (!tag.empty() && tag != "!" && tag != "?")
      say(mark, "yaml-tag", "a tag (" + tag.substr(0, 60) + ") stands here", "take the tag out");
  }
  void open(const YAML::Mark& mark, const std::string& tag, YAML::anchor_t anchor,
            YamlNode::Kind kind) {
    refuse_anchor(mark, anchor);
    refuse_tag(mark, tag);
    if (static_cast<int>(stack_.size()) >= kMostDepth) {
      say(mark, "yaml-too-deep", "lists and maps are nested more than 24 deep",
          "write it flatter; see knowledge/FORMAT.md");
      throw Stop{};
    }
    stack_.push_back({node(mark, kind), false, {}, 0});
  }
  void close() {
    YamlNode done = std::move(stack_.back().node);
    stack_.pop_back();
    add(std::move(done));
  }
  void add(YamlNode n) {
    if (++count_ > kMostNodes) {
      problems_.push_back({"yaml-too-large", at_line(file_, n.line),
                           "the file holds more than 200000 values",
                           "split it into several files"});
      throw Stop{};
    }
    if (stack_.empty()) {
      root_ = std::move(n);
      return;
    }
    Open& top = stack_.back();
    if (top.node.kind == YamlNode::Kind::list) {
      top.node.items.push_back(std::move(n));
    } else if (!top.has_key) {
      if (n.kind != YamlNode::Kind::scalar) {
        problems_.push_back({"yaml-key-not-a-word", at_line(file_, n.line),
                             "the name of an entry is not a word",
                             "put a plain word before the colon"});
      } else if (top.node.find(n.text) != nullptr) {
        problems_.push_back({"yaml-key-twice", at_line(file_, n.line),
                             "\"" + n.text.substr(0, 60) + "\" stands twice in this entry",
                             "keep one of the two"});
      }
      top.key = n.text;
      top.key_line = n.line;
      top.has_key = true;
    } else {
      n.key_line = top.key_line;
      top.node.entries.emplace_back(std::move(top.key), std::move(n));
      top.key.clear();
      top.has_key = false;
    }
  }

  std::string_view text_;
  std::string file_;
  Problems& problems_;
  std::vector<Open> stack_;
  YamlNode root_;
  int first_line_ = 1;
  std::size_t count_ = 0;
};

/// Bytes that follow the lead byte of a sequence, or -1 when it cannot lead one.
int following(unsigned char lead) {
  if (lead < 0x80) return 0;
  if (lead >= 0xC2 && lead <= 0xDF) return 1;
  if (lead >= 0xE0 && lead <= 0xEF) return 2;
  if (lead >= 0xF0 && lead <= 0xF4) return 3;
  return -1;
}

/// 1-based line on which the text stops being UTF-8 (or holds a NUL); 0 when it is sound.
int first_bad_line(std::string_view text) {
  int line = 1;
  for (std::size_t i = 0; i < text.size();) {
    const auto lead = static_cast<unsigned char>(text[i]);
    if (lead == '\n') ++line;
    const int n = following(lead);
    if (n < 0 || lead == 0 || i + static_cast<std::size_t>(n) >= text.size()) return line;
    for (int k = 1; k <= n; ++k) {
      const auto c = static_cast<unsigned char>(text[i + static_cast<std::size_t>(k)]);
      const bool first = k == 1;
      const unsigned low = first && lead == 0xE0 ? 0xA0u : first && lead == 0xF0 ? 0x90u : 0x80u;
      const unsigned high = first && lead == 0xED ? 0x9Fu : first && lead == 0xF4 ? 0x8Fu : 0xBFu;
      if (c < low || c > high) return line;
    }
    i += static_cast<std::size_t>(n) + 1;
  }
  return 0;
}

}  // namespace

YamlNode::YamlNode() = default;
YamlNode::~YamlNode() = default;
YamlNode::YamlNode(const YamlNode&) = default;
YamlNode::YamlNode(YamlNode&&) noexcept = default;
YamlNode& YamlNode::operator=(const YamlNode&) = default;
YamlNode& YamlNode::operator=(YamlNode&&) noexcept = default;

const YamlNode* YamlNode::find(std::string_view key) const {
  for (const auto& [name, value] : entries)
    if (name == key) return &value;
  return nullptr;
}

std::string at_line(const std::string& file, int line) { return file + ":" + std::to_string(line); }

bool is_utf8(std::string_view text) { return first_bad_line(text) == 0; }

Result<YamlNode> read_yaml(std::string_view text, const std::string& file) {
  if (text.size() > kMostFileBytes)
    return Problem{"file-too-large", file, "the file is over 2 MB", "split it into several files"};
  if (const int line = first_bad_line(text); line != 0)
    return Problem{"not-utf8", at_line(file, line), "the text is not UTF-8 from here on",
                   "save the file as UTF-8"};
  Problems problems;
  TreeBuilder tree(text, file, problems);
  try {
    std::istringstream in{std::string(text)};
    YAML::Parser parser(in);
    if (!parser.HandleNextDocument(tree)) {
      return Problem{"yaml-empty", at_line(file, 1), "the file holds nothing",
                     "write an entry or take the file away"};
    }
    Problems ignored;
    TreeBuilder second(text, file, ignored);
    if (parser.HandleNextDocument(second))
      problems.push_back({"yaml-more-than-one", at_line(file, second.first_line()),
                          "a second document follows after ---", "put it into a file of its own"});
  } catch (const Stop&) {
    // what was wrong is in problems already
  } catch (const YAML::Exception& e) {
    problems.push_back({"yaml-malformed", at_line(file, std::max(e.mark.line + 1, 1)),
                        "this is not YAML: " + e.msg, "mend the indentation, colon or quote here"});
  } catch (const std::exception& e) {
    problems.push_back({"yaml-malformed", at_line(file, 1),
                        std::string("this is not YAML: ") + e.what(), "mend the file"});
  }
  if (!problems.empty()) return problems;
  return tree.take();
}

}  // namespace pinwright::knowledge
