#include <cctype>
#include <charconv>
#include <cmath>
#include <utility>

#include "engine/base/units.h"
#include "knowledge/expression.h"
#include "knowledge/expression_node.h"

namespace pinwright::knowledge {
namespace {

using Kind = ExpressionNode::Kind;
constexpr std::size_t kMostBytes = 300;
constexpr int kDeepest = 24;

/// Carries the first Problem out of the recursive descent; never leaves parse_expression.
struct Refused {
  Problem problem;
};

class Parser {
 public:
  Parser(std::string_view text, const FoundDimensions& found, const std::string& place)
      : text_(text), found_(found), place_(place) {}

  ExpressionNode whole_text() {
    ExpressionNode node = sum();
    skip();
    if (at_ != text_.size()) refuse("expression-syntax", "a sign or the end is wanted here");
    return node;
  }

 private:
  [[noreturn]] void refuse(std::string code, const std::string& why) const {
    throw Refused{{std::move(code), place_,
                   "in the amount \"" + std::string(text_) + "\" at character " +
                       std::to_string(at_ + 1) + ": " + why,
                   "write it as knowledge/FORMAT.md says under Amounts"}};
  }

  void skip() {
    while (at_ < text_.size() && std::isspace(static_cast<unsigned char>(text_[at_]))) ++at_;
  }
  bool take(char c) {
    skip();
    if (at_ >= text_.size() || text_[at_] != c) return false;
    ++at_;
    return true;
  }
  bool digit_here() const {
    return at_ < text_.size() && std::isdigit(static_cast<unsigned char>(text_[at_]));
  }
  static bool word_char(char c) {
    return std::isalnum(static_cast<unsigned char>(c)) || c == '_' || c == '-';
  }

  /// Letters, digits, - and _; empty when no letter stands here.
  std::string_view word() {
    skip();
    const std::size_t from = at_;
    if (at_ < text_.size() && std::isalpha(static_cast<unsigned char>(text_[at_])))
      while (at_ < text_.size() && word_char(text_[at_])) ++at_;
    return text_.substr(from, at_ - from);
  }

  double digits() {
    double value = 0.0;
    const char* begin = text_.data() + at_;
    const auto [end, error] =
        std::from_chars(begin, text_.data() + text_.size(), value, std::chars_format::fixed);
    if (error != std::errc{} || !std::isfinite(value))
      refuse("expression-syntax", "this number cannot be read");
    at_ += static_cast<std::size_t>(end - begin);
    return value;
  }

  struct Unit {
    double factor;
    Dimension dimension;
  };
  /// A unit, if one stands here; at_ stays when none does.
  std::optional<Unit> unit() {
    const std::size_t back = at_;
    if (take('%')) return Unit{0.01, Dimension::ratio};
    const std::string_view w = word();
    if (w == "mm") return Unit{1.0, Dimension::length};
    if (w == "cm") return Unit{10.0, Dimension::length};
    if (w == "in" || w == "inch" || w == "inches") return Unit{kMmPerInch, Dimension::length};
    if (!w.empty()) {
      at_ = back;
      skip();
      refuse("unit-unknown", "\"" + std::string(w) + "\" is no unit (mm, cm, in, %)");
    }
    at_ = back;
    return std::nullopt;
  }

  /// "/ 8 in" after an entire number: the rest of a fraction. Stays when it is a division.
  std::optional<double> fraction_tail() {
    const std::size_t back = at_;
    if (take('/')) {
      skip();
      if (digit_here()) {
        const double below = digits();
        skip();
        const std::size_t before_unit = at_;
        const std::string_view w = word();
        if ((w == "in" || w == "inch" || w == "inches" || w == "mm" || w == "cm") && below != 0.0) {
          at_ = before_unit;
          return below;
        }
      }
    }
    at_ = back;
    return std::nullopt;
  }

  ExpressionNode number() {
    double value = digits();
    const bool entire = value == std::floor(value);
    if (const auto below = entire ? fraction_tail() : std::nullopt) {
      value /= *below;
    } else {  // 1 1/2 in
      const std::size_t back = at_;
      skip();
      if (digit_here()) {
        const double above = digits();
        const auto under = fraction_tail();
        if (!under) {
          at_ = back;
          refuse("expression-syntax", "two numbers stand side by side");
        }
        value += above / *under;
      } else {
        at_ = back;
      }
    }
    ExpressionNode node;
    const auto u = unit();
    node.number = value * (u ? u->factor : 1.0);
    node.dimension = u ? u->dimension : Dimension::ratio;
    if (node.dimension == Dimension::length) {
      const std::size_t back = at_;
      const std::string_view w = word();
      if (w == "half") {
        node.dimension = Dimension::half;
      } else if (w == "whole") {
        node.dimension = Dimension::whole;
      } else {
        at_ = back;
      }
    }
    return node;
  }

  ExpressionNode named(const std::string& group) {
    ExpressionNode node;
    node.kind = Kind::name;
    node.group = group;
    node.uses_found = group == "found";
    if (take('.')) {
      node.name = std::string(word());
      if (node.name.empty()) refuse("expression-syntax", "a name is wanted after the dot");
    }
    std::optional<Dimension> dimension;
    if (group == "found" && node.name.empty()) {
      dimension = found_.any;
      if (!dimension)
        refuse("name-unknown",
               "`found` is not clear here: the signs of this cause take no amount or amounts of "
               "different sorts; write found.<sign>");
    } else if (group == "found") {
      const auto it = found_.of_sign.find(node.name);
      if (it != found_.of_sign.end()) dimension = it->second;
    } else if (group == "garment") {
      dimension = garment_dimension(node.name);
    } else if (group == "body" || group == "ease") {
      dimension = body_dimension(node.name);
    } else if (group == "fabric") {
      if (node.name == "stretch_across" || node.name == "stretch_along" || node.name == "recovery")
        dimension = Dimension::ratio;
    }
    if (!dimension)
      refuse("name-unknown",
             "\"" + group + (node.name.empty() ? "" : "." + node.name) + "\" is not known here");
    node.dimension = *dimension;
    return node;
  }

  ExpressionNode call(const std::string& function) {
    static const std::map<std::string, Kind> kFunctions{
        {"half", Kind::half},   {"whole", Kind::whole}, {"min", Kind::min},      {"max", Kind::max},
        {"clamp", Kind::clamp}, {"first", Kind::first}, {"length", Kind::length}};
    const auto it = kFunctions.find(function);
    if (it == kFunctions.end()) refuse("name-unknown", "there is no function " + function);
    std::vector<ExpressionNode> parts;
    do {
      parts.push_back(sum());
    } while (take(','));
    if (!take(')')) refuse("expression-syntax", "a closing ) is wanted here");
    ExpressionNode node;
    node.kind = it->second;
    const bool one = node.kind == Kind::half || node.kind == Kind::whole;
    if ((one || node.kind == Kind::length) && parts.size() != 1)
      refuse("expression-syntax", function + "() takes one part");
    if (node.kind == Kind::clamp && parts.size() != 3)
      refuse("expression-syntax", "clamp() takes three parts: the amount, least, most");
    if (one) {
      const Dimension d = parts[0].dimension;
      if (d != Dimension::half && d != Dimension::whole && d != Dimension::told)
        refuse("dimension", function + "() is of what goes round the body; this is " +
                                std::string(to_text(d)) + ", which is never divided");
      node.dimension = node.kind == Kind::half ? Dimension::half : Dimension::whole;
    } else if (node.kind == Kind::length) {
      if (parts[0].dimension != Dimension::half)
        refuse("dimension", "length() takes an amount on the half pattern: length(half(..))");
      node.dimension = Dimension::length;
    } else {
      for (const auto& p : parts) same(parts[0].dimension, p.dimension);
      node.dimension = parts[0].dimension;
    }
    return with_parts(std::move(node), std::move(parts));
  }

  static ExpressionNode with_parts(ExpressionNode node, std::vector<ExpressionNode> parts) {
    for (const auto& p : parts) node.uses_found = node.uses_found || p.uses_found;
    node.parts = std::move(parts);
    return node;
  }

  static bool girth(Dimension d) {
    return d == Dimension::half || d == Dimension::whole || d == Dimension::told;
  }

  void same(Dimension a, Dimension b) {
    if (girth(a) && girth(b) && (a != b || a == Dimension::told))
      refuse("whole-and-half", std::string(to_text(a)) + " and " + std::string(to_text(b)) +
                                   " do not mix: say half(..) or whole(..)");
    if (a != b)
      refuse("dimension",
             std::string(to_text(a)) + " and " + std::string(to_text(b)) + " do not mix");
  }

  ExpressionNode atom() {
    skip();
    if (++depth_ > kDeepest) refuse("expression-too-deep", "too many brackets");
    ExpressionNode node;
    if (take('(')) {
      node = sum();
      if (!take(')')) refuse("expression-syntax", "a closing ) is wanted here");
    } else if (take('-')) {
      ExpressionNode inner = atom();
      node.kind = Kind::negate;
      node.dimension = inner.dimension;
      std::vector<ExpressionNode> parts;
      parts.push_back(std::move(inner));
      node = with_parts(std::move(node), std::move(parts));
    } else if (digit_here()) {
      node = number();
    } else {
      const std::string w(word());
      if (w.empty()) refuse("expression-syntax", "a number or a name is wanted here");
      node = take('(') ? call(w) : named(w);
    }
    --depth_;
    return node;
  }

  ExpressionNode product() {
    ExpressionNode left = atom();
    for (;;) {
      const bool times = take('*');
      if (!times && !take('/')) return left;
      ExpressionNode right = atom();
      ExpressionNode node;
      node.kind = times ? Kind::multiply : Kind::divide;
      if (right.dimension == Dimension::ratio) {
        node.dimension = left.dimension;
      } else if (times && left.dimension == Dimension::ratio) {
        node.dimension = right.dimension;
      } else if (!times) {
        same(left.dimension, right.dimension);
        node.dimension = Dimension::ratio;
      } else {
        refuse("dimension", "one side of * must be a plain number");
      }
      std::vector<ExpressionNode> parts;
      parts.push_back(std::move(left));
      parts.push_back(std::move(right));
      left = with_parts(std::move(node), std::move(parts));
    }
  }

  ExpressionNode sum() {
    ExpressionNode left = product();
    for (;;) {
      const bool plus = take('+');
      if (!plus && !take('-')) return left;
      ExpressionNode right = product();
      same(left.dimension, right.dimension);
      ExpressionNode node;
      node.kind = plus ? Kind::add : Kind::subtract;
      node.dimension = left.dimension;
      std::vector<ExpressionNode> parts;
      parts.push_back(std::move(left));
      parts.push_back(std::move(right));
      left = with_parts(std::move(node), std::move(parts));
    }
  }

  std::string_view text_;
  const FoundDimensions& found_;
  const std::string& place_;
  std::size_t at_ = 0;
  int depth_ = 0;
};

}  // namespace

Dimension Expression::dimension() const { return root_->dimension; }
bool Expression::uses_found() const { return root_->uses_found; }

Result<Expression> parse_expression(std::string_view text, const FoundDimensions& found,
                                    const std::string& place) {
  if (text.find_first_not_of(" \t\n\r") == std::string_view::npos)
    return Problem{"expression-empty", place, "the amount is empty",
                   "write an amount or leave it out"};
  if (text.size() > kMostBytes)
    return Problem{"expression-too-long", place, "the amount is longer than 300 characters",
                   "write it shorter"};
  try {
    Parser parser(text, found, place);
    return Expression(std::make_shared<const ExpressionNode>(parser.whole_text()));
  } catch (const Refused& refused) {
    return refused.problem;
  }
}

}  // namespace pinwright::knowledge
