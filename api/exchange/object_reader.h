#pragma once
// Reads one JSON object field by field and notes everything that is wrong with it on the way, so
// that a request's faults are all told at once.

#include <optional>
#include <string>
#include <string_view>
#include <vector>

#include "api/exchange/json.h"

namespace pinwright::api {

enum class Need { required, optional };

/// Codes: "type-wrong", "field-missing", "field-unknown", "value-unknown", "value-range",
/// "text-size". place = the object's place + "/" + field. What cannot be read comes back as the
/// default; whether all went well is told by `problems` alone.
class ObjectReader {
 public:
  /// A value that is no object is noted and then reads as an object with every field absent.
  ObjectReader(const Json& value, std::string place, Problems& problems);

  bool is_object() const { return value_ != nullptr; }
  const std::string& place() const { return place_; }
  std::string place_of(std::string_view field) const { return member(place_, field); }

  /// The field as it stands, or nullptr (noted when required and the value is an object).
  const Json* field(std::string_view name, Need need);
  std::string text(std::string_view name, Need need, std::size_t most_bytes = 200);
  /// A finite number within [least, most].
  std::optional<double> number(std::string_view name, Need need, double least, double most);
  std::optional<bool> flag(std::string_view name, Need need);
  std::vector<std::string> texts(std::string_view name, Need need);

  /// A word of a fixed list; `known` in the order in which it is offered in the mend.
  template <class Value>
  std::optional<Value> word(std::string_view name, Need need,
                            std::optional<Value> (*meaning)(std::string_view),
                            const std::vector<std::string_view>& known) {
    const Json* here = field(name, need);
    if (here == nullptr) return std::nullopt;
    if (here->is_string()) {
      if (const auto value = meaning(here->template get_ref<const std::string&>())) return value;
    }
    note_unknown_word(name, *here, known);
    return std::nullopt;
  }

  /// Notes every field that was never asked for.
  void refuse_rest();
  /// Fields not asked for so far, in their order; they count as asked for from now on.
  std::vector<std::string> take_rest();
  void note(std::string code, std::string_view name, std::string what, std::string mend);

 private:
  void note_type(std::string_view name, const Json& here, std::string_view wanted);
  void note_unknown_word(std::string_view name, const Json& here,
                         const std::vector<std::string_view>& known);

  const Json* value_ = nullptr;
  std::string place_;
  Problems& problems_;
  std::vector<std::string> asked_;
};

/// What a value is, for a message: "\"12\"", "a list", ...; at most 60 bytes.
std::string shown(const Json& value);
/// The elements of a list, or nothing and a note when it is none or longer than `most`.
const Json* list_or_note(const Json& value, const std::string& place, std::size_t most,
                         Problems& problems);

}  // namespace pinwright::api
