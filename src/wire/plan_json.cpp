#include "wire/plan_json.h"

#include "wire/document.h"
#include "wire/findings_json.h"
#include "wire/reader.h"
#include "wire/writer.h"

namespace piewright::wire {

namespace {

using nlohmann::json;

const char* toText(Fault fault) {
    switch (fault) {
    case Fault::Ours:
        return "ours";
    case Fault::Input:
        return "input";
    case Fault::World:
        return "world";
    }
    return "ours";
}

/// Why a document is no plan of a schema that we read, if so. Told alone: nothing else about it can be judged.
std::optional<Finding> wrongSchema(const json& document, const std::string& file) {
    const Place place{file, 0, 0, "schema"};
    const std::string want = std::to_string(kPlanSchema);
    if (!document.is_object()) return Finding{{file, 0, 0, {}}, "not an object", "a plan", {}};
    if (!document.contains("schema")) return Finding{place, "missing", want, "is this a plan that piewright wrote?"};
    const json& schema = document["schema"];
    if (schema.is_number_integer() && schema == kPlanSchema) return std::nullopt;
    const bool newer = schema.is_number_unsigned() && schema > kPlanSchema;
    return Finding{place,
                   schema.is_primitive() ? schema.dump(-1, ' ', true, json::error_handler_t::replace).substr(0, 60)
                                         : "not a number",
                   want, newer ? "it was written by a later piewright" : ""};
}

} // namespace

std::string toJson(const day::Plan& plan) {
    Writer writer;
    fields(writer, plan);
    return dumped(writer.object());
}

Result<day::Plan> planFromJson(std::string_view text, const std::string& file) {
    const auto document = parseDocument(text, file);
    if (!document) return document.problems();
    if (const auto finding = wrongSchema(*document, file)) return Problems{Fault::Input, {*finding}};
    Complaints complaints(file);
    day::Plan plan;
    Reader reader(*document, {}, complaints);
    fields(reader, plan);
    reader.finish();
    if (complaints.any()) return Problems{Fault::Input, std::move(complaints).take()};
    return plan;
}

std::string toJson(const Problems& problems) {
    return dumped({{"schema", kPlanSchema},
                   {"fault", toText(problems.fault)},
                   {"exit_code", static_cast<int>(problems.fault)},
                   {"findings", findingsJson(problems.findings)}});
}

} // namespace piewright::wire
