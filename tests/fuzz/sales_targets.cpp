#include "csv/encoding.h"
#include "fuzz/targets.h"
#include "sales/import.h"

#include <algorithm>
#include <cstdio>
#include <cstdlib>
#include <sstream>
#include <string_view>
#include <vector>

namespace piewright::fuzz {

namespace {

/// Not an assert: it must hold in every build.
void promised(bool kept, const char* promise) {
    if (kept) return;
    std::fprintf(stderr, "broken: %s\n", promise);
    std::abort();
}

using Rows = std::vector<std::vector<std::string>>;

Rows rowsOf(std::string_view beginning, const std::string& rest, const csv::Dialect& dialect) {
    std::istringstream in(rest);
    Rows rows;
    const auto read = csv::read(beginning, in, dialect, [&](const csv::Row& row) {
        promised(row.line >= 1 && !row.fields.empty() && row.fields.size() <= csv::kMostFields,
                 "a row has a line and fields");
        rows.emplace_back(row.fields.begin(), row.fields.end());
        for (const std::string& field : rows.back()) promised(csv::isUtf8(field), "fields are UTF-8");
        return true;
    });
    if (!read) promised(!read.problems().findings.empty(), "a problem says what it is");
    return rows;
}

const std::map<GoodId, std::string> kGoods{{GoodId("beef-pie"), "Beef pie"}, {GoodId("mash"), "Mash"}};

} // namespace

void importOf(const std::string& bytes) {
    csv::Dialect plain;
    const Rows whole = rowsOf({}, bytes, plain);
    const std::size_t half = bytes.size() / 2;
    promised(rowsOf(std::string_view(bytes).substr(0, half), bytes.substr(half), plain) == whole,
             "where a beginning is cut makes no difference");

    std::istringstream in(bytes);
    const sales::Mapping mapping{{{"Pie", GoodId("beef-pie")}}, {"Tea"}};
    const auto imported = sales::importStream(in, "fuzz.csv", {}, mapping, kGoods);
    if (!imported) {
        promised(!toText(imported.problems().findings).empty(), "a problem says what it is");
        return;
    }
    const sales::Report& report = imported->report;
    std::size_t left = 0;
    for (const sales::LeftOut& out : report.left) left += out.rows;
    promised(report.rows == report.taken + left, "every row is taken or left");
    promised(report.left.size() <= 101, "reasons are bounded");
    promised(csv::isUtf8(toText(report)), "the report is UTF-8");
    for (const auto& [good, days] : imported->history.sold) {
        for (const auto& [date, day] : days) {
            promised(imported->history.openDates.contains(date), "sales are on open dates");
            promised(day.total >= 0, "totals are not negative");
            if (!day.byQuarter) continue;
            std::int64_t sum = 0;
            for (const int pieces : *day.byQuarter) {
                promised(pieces >= 0, "quarter-hours are not negative");
                sum += pieces;
            }
            promised(sum == day.total, "quarter-hours sum to the day");
        }
    }
}

void mappingOf(const std::string& bytes) {
    const std::set<GoodId> known{GoodId("beef-pie"), GoodId("mash")};
    const auto mapping = sales::readMapping("fuzz.toml", bytes, known);
    if (!mapping) {
        promised(!toText(mapping.problems().findings).empty(), "a problem says what it is");
        return;
    }
    for (const auto& [word, good] : mapping->goods) promised(known.contains(good), "only known goods are mapped to");
}

} // namespace piewright::fuzz
