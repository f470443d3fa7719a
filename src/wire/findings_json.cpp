#include "wire/findings_json.h"

namespace piewright::wire {

using nlohmann::json;

std::string dumped(const json& value) {
    constexpr int kIndent = 2;
    return value.dump(kIndent, ' ', false, json::error_handler_t::replace) + '\n';
}

json findingsJson(const std::vector<Finding>& findings) {
    json list = json::array();
    for (const Finding& finding : findings)
        list.push_back({{"file", finding.place.file},
                        {"line", finding.place.line},
                        {"column", finding.place.column},
                        {"key", finding.place.key},
                        {"saw", finding.saw},
                        {"want", finding.want},
                        {"hint", finding.hint},
                        {"severity", finding.severity == Severity::Error ? "error" : "warning"}});
    return list;
}

} // namespace piewright::wire
