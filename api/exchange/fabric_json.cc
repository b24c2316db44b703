#include "api/exchange/fabric_json.h"

#include "api/exchange/object_reader.h"

namespace pinwright::api {

Json to_json(const Fabric& fabric) {
  return {{"id", fabric.id},
          {"name", fabric.name},
          {"kind", to_text(fabric.kind)},
          {"stretch_across", fabric.stretch_across},
          {"stretch_along", fabric.stretch_along},
          {"recovery", fabric.recovery}};
}

Fabric read_fabric(const Json& value, const std::string& place, Problems& problems) {
  ObjectReader in(value, place, problems);
  Fabric out;
  out.id = in.text("id", Need::optional, 64);
  out.name = in.text("name", Need::optional);
  out.kind = in.word<FabricKind>("kind", Need::required, fabric_kind, {"woven", "knit"})
                 .value_or(out.kind);
  out.stretch_across =
      in.number("stretch_across", Need::optional, 0.0, 5.0).value_or(out.stretch_across);
  out.stretch_along =
      in.number("stretch_along", Need::optional, 0.0, 5.0).value_or(out.stretch_along);
  out.recovery = in.number("recovery", Need::optional, 0.0, 1.0).value_or(out.recovery);
  in.refuse_rest();
  return out;
}

}  // namespace pinwright::api
