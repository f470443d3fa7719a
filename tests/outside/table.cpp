#include "outside/table.h"

#include "csv/reader.h"
#include "finding/suggest.h"

#include <algorithm>
#include <fstream>
#include <set>

namespace piewright::outside {

namespace {

constexpr std::uintmax_t kLargest = 16U << 20U;
constexpr std::size_t kMostFindings = 50;

std::vector<std::string> owned(const std::vector<std::string_view>& fields) { return {fields.begin(), fields.end()}; }

std::vector<Finding> wrongColumns(const std::string& file, int line, const std::vector<std::string>& columns,
                                  std::initializer_list<std::string_view> needed) {
    std::vector<Finding> findings;
    std::set<std::string> seen;
    for (const std::string& column : columns)
        if (!seen.insert(column).second)
            findings.push_back({{file, line, 0, {}}, "two columns \"" + column + "\"", {}, {}});
    for (const std::string_view name : needed)
        if (!seen.contains(std::string(name)))
            findings.push_back({{file, line, 0, {}},
                                "no column \"" + std::string(name) + "\"",
                                "a first line that names the columns",
                                didYouMean(name, columns)});
    return findings;
}

} // namespace

const std::string& Table::at(const TableLine& line, std::string_view column) const {
    static const std::string kNone;
    const auto found = std::find(columns_.begin(), columns_.end(), column);
    if (found == columns_.end()) return kNone;
    return line.fields[static_cast<std::size_t>(found - columns_.begin())];
}

Result<Table> readTable(const std::filesystem::path& path, std::initializer_list<std::string_view> needed) {
    const std::string file = path.string();
    std::error_code error;
    const std::uintmax_t size = std::filesystem::file_size(path, error);
    if (error) return Problems::one(Fault::World, "can't be read: " + error.message(), {}, {file, 0, 0, {}});
    if (size > kLargest)
        return Problems::one(Fault::Input, "is larger than 16 MiB", "a table of cases", {file, 0, 0, {}});
    std::ifstream in(path, std::ios::binary);
    if (!in) return Problems::one(Fault::World, "can't be opened", {}, {file, 0, 0, {}});

    Table table(file, {});
    std::vector<Finding> findings;
    bool first = true;
    const auto rows = csv::read(in, csv::Dialect{}, [&](const csv::Row& row) {
        const int line = static_cast<int>(row.line);
        std::vector<std::string> fields = owned(row.fields);
        if (first) {
            first = false;
            findings = wrongColumns(file, line, fields, needed);
            table = Table(file, std::move(fields));
            return findings.empty();
        }
        if (fields.size() != table.columns().size())
            findings.push_back({{file, line, 0, {}},
                                std::to_string(fields.size()) + " fields",
                                std::to_string(table.columns().size()) + ", as in the first line",
                                {}});
        else
            table.add({line, std::move(fields)});
        return findings.size() < kMostFindings;
    });
    if (!rows) {
        Problems problems = rows.problems();
        for (Finding& finding : problems.findings) finding.place.file = file;
        problems.findings.insert(problems.findings.begin(), findings.begin(), findings.end());
        return problems;
    }
    if (first) return Problems::one(Fault::Input, "is empty", "a first line that names the columns", {file, 0, 0, {}});
    if (!findings.empty()) return Problems{Fault::Input, std::move(findings)};
    return table;
}

} // namespace piewright::outside
