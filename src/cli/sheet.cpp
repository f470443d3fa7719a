#include "print/sheet.h"

#include "cli/verbs.h"
#include "wire/plan_json.h"
#include "wire/report_json.h"

#include <ostream>

namespace piewright::cli {

int sheet(const SheetOptions& options, const Streams& streams) {
    constexpr std::size_t kMostPlan = std::size_t{16} << 20;
    const auto text = readWhole(options.plan, kMostPlan);
    if (!text) return refuse(text.problems(), streams);
    const auto plan = wire::planFromJson(*text, options.plan.string());
    if (!plan) return refuse(plan.problems(), streams);

    print::Sheets which;
    if (!options.only.empty()) which = {options.only == "day", options.only == "cards", options.only == "ovens"};
    if (options.pdf.empty()) {
        streams.out << (streams.json ? wire::toJson(*plan) : print::asText(*plan, which));
        return 0;
    }
    const auto bytes = print::asPdf(*plan, which);
    if (!bytes) return refuse(bytes.problems(), streams);
    const auto written = print::writeWhole(options.pdf, *bytes);
    if (!written) return refuse(written.problems(), streams);
    if (streams.json)
        streams.out << wire::writtenReport(options.pdf.string());
    else
        streams.out << options.pdf.string() << '\n';
    return 0;
}

} // namespace piewright::cli
