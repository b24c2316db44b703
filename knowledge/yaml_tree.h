#pragma once
// A YAML text as a plain tree in which every value knows its line.

#include <string>
#include <string_view>
#include <utility>
#include <vector>

#include "engine/base/result.h"

namespace pinwright::knowledge {

/// Limits of one file: far above what a fitter writes, far below what harms.
inline constexpr std::size_t kMostFileBytes = 2'000'000;
inline constexpr std::size_t kMostNodes = 200'000;
inline constexpr int kMostDepth = 24;
inline constexpr std::size_t kMostTextBytes = 4'000;  ///< of one value

struct YamlNode {
  enum class Kind { null, scalar, list, map };
  Kind kind = Kind::null;
  int line = 0;                 ///< 1-based
  int key_line = 0;             ///< of its name, where it is the value of a field
  bool quoted = false;          ///< a scalar in quotes is text, whatever it looks like
  std::string text;             ///< of a scalar
  std::vector<YamlNode> items;  ///< of a list
  std::vector<std::pair<std::string, YamlNode>> entries;  ///< of a map, in the order written

  // Defined where the type is complete: entries holds pairs of it.
  YamlNode();
  ~YamlNode();
  YamlNode(const YamlNode&);
  YamlNode(YamlNode&&) noexcept;
  YamlNode& operator=(const YamlNode&);
  YamlNode& operator=(YamlNode&&) noexcept;

  /// The value under a key of a map, or nullptr.
  const YamlNode* find(std::string_view key) const;
};

/// Reads one document. `file` is only for the places ("file:line"). Anchors and aliases, merge
/// keys and tags are refused: entries here are written out, and so no text can grow when read.
/// Problems: "file-too-large", "not-utf8", "yaml-malformed", "yaml-alias", "yaml-tag",
/// "yaml-quote-open", "yaml-key-twice", "yaml-key-not-a-word", "yaml-too-deep", "yaml-too-large",
/// "yaml-text-too-long", "yaml-more-than-one" (a second document), "yaml-empty".
Result<YamlNode> read_yaml(std::string_view text, const std::string& file);

/// True when the text is well-formed UTF-8 (no surrogates, no overlong forms, at most U+10FFFF).
bool is_utf8(std::string_view text);

std::string at_line(const std::string& file, int line);

}  // namespace pinwright::knowledge
