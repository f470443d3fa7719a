#include "cli/sales.h"
#include "cli/verbs.h"
#include "day/make.h"
#include "demand/forecast.h"
#include "print/sheet.h"
#include "wire/plan_json.h"

#include <ostream>

namespace piewright::cli {

namespace {

Result<Date> dateToPlan(const book::Book& book, const PlanOptions& options, const demand::History& history) {
    if (!options.date.empty()) {
        if (const auto date = parseDate(options.date)) return *date;
        return Problems::one(Fault::Input, "--date: \"" + options.date + "\" is not a date",
                             "year-month-day, as in 2026-11-27");
    }
    const auto last = history.lastDate();
    const auto next = last ? nextOpen(book.house, *last) : std::nullopt;
    if (!next) return Problems::one(Fault::Input, "no open day follows the last sale", "--date, or opening hours");
    return *next;
}

} // namespace

int plan(const PlanOptions& options, const Streams& streams) {
    const auto read = book::readFolder(options.house);
    if (!read) return refuse(read.problems(), streams);
    const auto taken = takeSales(read->book, options.house, options.sales);
    if (!taken) return refuse(taken.problems(), streams);
    const auto date = dateToPlan(read->book, options, taken->history);
    if (!date) return refuse(date.problems(), streams);

    const auto forecaster = demand::sameWeekdays(taken->history);
    auto made = day::makePlan(read->book, *forecaster, {*date, options.seed, options.work});
    if (!made) return refuse(made.problems(), streams);
    for (const sales::LeftOut& left : taken->report.left)
        made->warnings.push_back("Sales file: " + std::to_string(left.rows) + " rows left out: " + left.why + ".");

    const auto write = [&](const std::filesystem::path& file, const Result<std::string>& bytes) {
        if (!bytes) return refuse(bytes.problems(), streams);
        const auto written = print::writeWhole(file, *bytes);
        return written ? 0 : refuse(written.problems(), streams);
    };
    if (!options.planFile.empty())
        if (const int code = write(options.planFile, wire::toJson(*made)); code != 0) return code;
    if (!options.pdf.empty())
        if (const int code = write(options.pdf, print::asPdf(*made)); code != 0) return code;
    streams.out << (streams.json ? wire::toJson(*made) : print::asText(*made));
    return 0;
}

} // namespace piewright::cli
