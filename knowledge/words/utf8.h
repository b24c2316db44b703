#pragma once
// Reading UTF-8 one code point at a time.

#include <optional>
#include <string_view>

namespace pinwright::knowledge {

/// The code point at `at`, which moves past it; nothing (and one byte on) where the bytes are not
/// valid UTF-8 by RFC 3629: overlong forms, surrogates, above U+10FFFF, cut short.
inline std::optional<char32_t> next_code_point(std::string_view text, std::size_t& at) {
  const auto byte = [&](std::size_t i) -> unsigned {
    return i < text.size() ? static_cast<unsigned char>(text[i]) : 0U;
  };
  const std::size_t begin = at;
  const unsigned lead = byte(at++);
  if (lead < 0x80) return static_cast<char32_t>(lead);
  const unsigned more = lead >= 0xf0 ? 3 : lead >= 0xe0 ? 2 : 1;
  if (lead < 0xc2 || lead > 0xf4) return std::nullopt;
  char32_t value = lead & (0x3fU >> more);
  for (unsigned i = 0; i < more; ++i) {
    const unsigned follow = byte(begin + 1 + i);
    if ((follow & 0xc0U) != 0x80U) return std::nullopt;
    value = (value << 6) | (follow & 0x3fU);
  }
  const bool overlong = (more == 2 && value < 0x800) || (more == 3 && value < 0x10000);
  if (overlong || value > 0x10ffff || (value >= 0xd800 && value <= 0xdfff)) return std::nullopt;
  at = begin + 1 + more;
  return value;
}

}  // namespace pinwright::knowledge
