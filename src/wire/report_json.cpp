#include "wire/report_json.h"

#include "wire/findings_json.h"
#include "wire/writer.h"

namespace piewright::wire {

namespace {

using nlohmann::json;

constexpr int kReportSchema = 1;

json lineOrNull(const std::optional<Date>& date) { return date ? json(toText(*date)) : json(nullptr); }

} // namespace

std::string bookReport(const book::Book& book, const std::vector<Finding>& warnings) {
    return dumped({{"schema", kReportSchema},
                   {"house", book.house.name},
                   {"place", book.house.place},
                   {"rule_book", book.rules.name},
                   {"stuffs", book.stuffs.size()},
                   {"suppliers", book.suppliers.size()},
                   {"formulas", book.formulas.size()},
                   {"tins", book.tins.size()},
                   {"goods", book.goods.size()},
                   {"gear", book.gear.size()},
                   {"hands", book.hands.size()},
                   {"routes", book.routes.size()},
                   {"findings", findingsJson(warnings)}});
}

std::string toJson(const sales::Report& report) {
    json left = json::array();
    for (const sales::LeftOut& out : report.left)
        left.push_back({{"why", out.why}, {"rows", out.rows}, {"first_line", out.firstLine}, {"example", out.example}});
    return dumped({{"schema", kReportSchema},
                   {"delimiter", std::string(1, report.dialect.delimiter)},
                   {"decimal_comma", report.dialect.decimalComma},
                   {"encoding", report.dialect.latin1 ? "ISO-8859-1" : "UTF-8"},
                   {"date_form", report.dateForm},
                   {"when_column", report.whenColumn},
                   {"time_column", report.timeColumn},
                   {"item_column", report.itemColumn},
                   {"quantity_column", report.quantityColumn},
                   {"sold_out_column", report.soldOutColumn},
                   {"rows", report.rows},
                   {"taken", report.taken},
                   {"returns", report.returns},
                   {"daily_totals", report.dailyTotals},
                   {"floored_days", report.flooredDays},
                   {"first", lineOrNull(report.first)},
                   {"last", lineOrNull(report.last)},
                   {"left", std::move(left)}});
}

std::string toJson(const day::WeighedOut& weighed) {
    Writer writer;
    writer.schema(kReportSchema);
    writer.text("what", weighed.what);
    writer.list("pieces", weighed.pieces);
    writer.list("cards", weighed.cards);
    writer.list("needed", weighed.needed);
    return dumped(writer.object());
}

std::string writtenReport(std::string_view file) {
    return dumped({{"schema", kReportSchema}, {"written", std::string(file)}});
}

} // namespace piewright::wire
