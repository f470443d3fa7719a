// The import's report for people.
#include "sales/import.h"

namespace piewright::sales {

namespace {

std::string counted(std::size_t count, const std::string& one) {
    return std::to_string(count) + ' ' + one + (count == 1 ? "" : "s");
}

std::string delimiterName(char delimiter) {
    switch (delimiter) {
    case ',':
        return "comma";
    case ';':
        return "semicolon";
    case '\t':
        return "tab";
    default:
        return "bar";
    }
}

void line(std::string& text, const std::string& what, const std::string& value) {
    if (!value.empty()) text += "  " + what + std::string(what.size() < 12 ? 12 - what.size() : 1, ' ') + value + '\n';
}

} // namespace

std::string toText(const Report& report) {
    std::string text = counted(report.rows, "row") + ", " + std::to_string(report.taken) + " taken";
    if (report.first && report.last) text += ", " + toText(*report.first) + " to " + toText(*report.last);
    text += "\n\nread as\n";
    line(text, "columns",
         "parted by " + delimiterName(report.dialect.delimiter) + ", decimal " +
             (report.dialect.decimalComma ? "comma" : "point") + ", " + (report.dialect.latin1 ? "Latin-1" : "UTF-8") +
             (report.dialect.header ? "" : ", no header line"));
    line(text, "when", report.whenColumn + " (" + report.dateForm + ")");
    line(text, "time", report.timeColumn);
    line(text, "item", report.itemColumn);
    line(text, "quantity", report.quantityColumn.empty() ? "each row is one piece" : report.quantityColumn);
    line(text, "sold out", report.soldOutColumn);

    text += "\ntaken\n";
    line(text, "rows", std::to_string(report.taken));
    if (report.returns > 0) line(text, "returns", counted(report.returns, "row") + ", taken off the day's sales");
    if (report.dailyTotals > 0) line(text, "totals", counted(report.dailyTotals, "row") + " without a time of day");
    if (report.flooredDays > 0)
        line(text, "below zero",
             counted(report.flooredDays, "day") + " of a good with more returned than sold, taken as none sold");
    for (const std::string& note : report.notes) line(text, "note", note);

    if (!report.left.empty()) text += "\nleft out\n";
    for (const LeftOut& out : report.left)
        text += "  " + counted(out.rows, "row") + ": " + out.why + " (first on line " + std::to_string(out.firstLine) +
                ": " + out.example + ")\n";
    return text;
}

} // namespace piewright::sales
