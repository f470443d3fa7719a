// What a file's first part says about how it writes its rows.
#include "csv/encoding.h"
#include "csv/reader.h"
#include "csv/scan.h"

#include <algorithm>
#include <array>
#include <cctype>
#include <map>
#include <optional>

namespace piewright::csv {

namespace {

constexpr std::size_t kMostPreamble = 20;
constexpr std::size_t kRowsLookedAt = 500;

bool digit(char c) { return c >= '0' && c <= '9'; }

std::string_view trimmed(std::string_view text) {
    while (!text.empty() && text.front() == ' ') text.remove_prefix(1);
    while (!text.empty() && text.back() == ' ') text.remove_suffix(1);
    return text;
}

using Rows = std::vector<std::vector<std::string>>;

/// The beginning split by one delimiter, and how well that fits.
struct Fit {
    Rows rows;
    std::size_t width = 0; // the commonest
    double agreeing = 0;   // share of rows that have it
    std::optional<Finding> problem;
};

Fit fit(std::string_view beginning, char delimiter, bool latin1) {
    Fit fit;
    std::vector<char> block(beginning.begin(), beginning.end());
    block.push_back('\0');
    char* from = block.data();
    char* const to = block.data() + beginning.size();
    const bool whole = beginning.size() < kLookedAt;
    Scan scan(delimiter, latin1);
    Scanned scanned = Scanned::End;
    while (fit.rows.size() < kRowsLookedAt && (scanned = scan.next(from, to, whole)) == Scanned::Row) {
        std::vector<std::string>& row = fit.rows.emplace_back();
        for (const std::string_view field : scan.row().fields) row.emplace_back(field);
    }
    if (scanned == Scanned::Problem) fit.problem = scan.problem();
    std::map<std::size_t, std::size_t> widths;
    for (const auto& row : fit.rows) ++widths[row.size()];
    std::size_t most = 0;
    for (const auto& [width, count] : widths) {
        if (width < 2 || count < most) continue;
        most = count;
        fit.width = width;
    }
    if (!fit.rows.empty()) fit.agreeing = static_cast<double>(most) / static_cast<double>(fit.rows.size());
    return fit;
}

/// A number, date or time: begins with a digit (perhaps after a sign or bracket).
bool isValue(std::string_view text) {
    text = trimmed(text);
    if (!text.empty() && (text.front() == '-' || text.front() == '+' || text.front() == '(')) text.remove_prefix(1);
    return !text.empty() && digit(text.front());
}

bool hasHeader(const Rows& rows, std::size_t first, std::size_t width) {
    int votes = 0;
    for (std::size_t column = 0; column < width; ++column) {
        if (column >= rows[first].size() || trimmed(rows[first][column]).empty()) continue;
        std::size_t values = 0;
        std::size_t filled = 0;
        for (std::size_t i = first + 1; i < rows.size(); ++i) {
            if (column >= rows[i].size() || trimmed(rows[i][column]).empty()) continue;
            ++filled;
            if (isValue(rows[i][column])) ++values;
        }
        if (filled > 0 && values * 10 < filled * 8) continue; // words below: the column says nothing
        votes += isValue(rows[first][column]) ? -1 : 1;
    }
    return votes > 0;
}

enum class Decimal { Unclear, Comma, Point };

/// `1,5` and `1.234,5` speak for a comma, `1.5` and `1,234.5` for a point, `1,234` and `12.11.2026` for neither.
Decimal decimalOf(std::string_view text) {
    text = trimmed(text);
    if (!text.empty() && (text.front() == '-' || text.front() == '+')) text.remove_prefix(1);
    std::size_t commas = 0;
    std::size_t points = 0;
    char lastMark = 0;
    std::size_t after = 0;
    for (const char c : text) {
        if (digit(c)) {
            ++after;
        } else if (c == ',' || c == '.') {
            ++(c == ',' ? commas : points);
            lastMark = c;
            after = 0;
        } else {
            return Decimal::Unclear;
        }
    }
    const std::size_t lasts = lastMark == ',' ? commas : points;
    const std::size_t others = lastMark == ',' ? points : commas;
    if (lastMark == 0 || after == 0 || lasts != 1) return Decimal::Unclear;
    if (others == 0 && after == 3) return Decimal::Unclear;
    return lastMark == ',' ? Decimal::Comma : Decimal::Point;
}

bool usesDecimalComma(const Rows& rows, char delimiter) {
    std::size_t comma = 0;
    std::size_t point = 0;
    std::size_t threeAfterComma = 0;
    for (const auto& row : rows) {
        for (const std::string& field : row) {
            const Decimal decimal = decimalOf(field);
            if (decimal == Decimal::Comma) ++comma;
            if (decimal == Decimal::Point) ++point;
            const std::string_view text = trimmed(field);
            const auto mark = text.find(',');
            if (decimal == Decimal::Unclear && mark != std::string_view::npos && mark + 4 == text.size() &&
                std::all_of(text.begin() + static_cast<std::ptrdiff_t>(mark) + 1, text.end(), digit) && isValue(text))
                ++threeAfterComma;
        }
    }
    if (comma != point) return comma > point;
    // `2,000` alone: where a comma isn't needed to part the fields, it is more often pieces and thousandths.
    return delimiter != ',' && (comma > 0 || threeAfterComma > 0);
}

std::optional<Problems> notText(std::string_view beginning) {
    const auto refused = [](std::string saw, std::string want) {
        return Problems::one(Fault::Input, std::move(saw), std::move(want));
    };
    if (beginning.empty()) return refused("the file is empty", "a header line and rows of sales");
    if (beginning.starts_with("\xFF\xFE") || beginning.starts_with("\xFE\xFF"))
        return refused("the file is in UTF-16", "the same table saved as \"CSV UTF-8\"");
    if (beginning.starts_with("PK\x03\x04") || beginning.starts_with("\xD0\xCF\x11\xE0"))
        return refused("the file is a spreadsheet or an archive, not text", "the table saved as CSV");
    std::size_t control = 0;
    std::size_t nul = 0;
    std::size_t nulOdd = 0;
    for (std::size_t i = 0; i < beginning.size(); ++i) {
        const char c = beginning[i];
        if (c == '\0') {
            ++nul;
            if (i % 2 == 1) ++nulOdd;
        }
        if (static_cast<unsigned char>(c) < 0x20 && c != '\t' && c != '\n' && c != '\r') ++control;
    }
    if (nul * 3 > beginning.size() && (nulOdd * 10 > nul * 9 || nulOdd * 10 < nul))
        return refused("the file is in UTF-16", "the same table saved as \"CSV UTF-8\"");
    if (nul > 0 || control * 100 > beginning.size()) return refused("the file is not text", "a CSV file");
    return std::nullopt;
}

/// `sep=;`, which some spreadsheets put on a first line of its own.
std::optional<char> statedDelimiter(std::string_view beginning) {
    if (beginning.size() < 6 || (beginning.substr(0, 4) != "sep=" && beginning.substr(0, 4) != "SEP="))
        return std::nullopt;
    if (beginning[5] != '\r' && beginning[5] != '\n') return std::nullopt;
    const char stated = beginning[4];
    return std::string_view(",;\t|").find(stated) != std::string_view::npos ? std::optional(stated) : std::nullopt;
}

} // namespace

Result<Dialect> detect(std::string_view beginning) {
    beginning = beginning.substr(0, kLookedAt);
    if (auto problem = notText(beginning)) return *problem;
    if (beginning.starts_with("\xEF\xBB\xBF")) beginning.remove_prefix(3);
    Dialect dialect;
    dialect.latin1 = !isUtf8(beginning, true);

    const std::optional<char> stated = statedDelimiter(beginning);
    std::optional<Fit> best;
    std::optional<Finding> problem;
    // In this order where two fit alike: a comma is the likeliest to stand inside a field.
    for (const char delimiter : {'\t', ';', '|', ','}) {
        if (stated && delimiter != *stated) continue;
        Fit tried = fit(beginning, delimiter, dialect.latin1);
        if (tried.problem && (!problem || delimiter == ',')) problem = tried.problem;
        if (tried.width < 2 || tried.agreeing < 0.5) continue;
        const bool better = !best || tried.agreeing > best->agreeing * 1.1 ||
                            (tried.agreeing > best->agreeing * 0.9 && tried.width > best->width);
        if (!better) continue;
        best = std::move(tried);
        dialect.delimiter = delimiter;
    }
    if (!best) {
        if (problem) return Problems{Fault::Input, {*problem}};
        return Problems::one(Fault::Input,
                             "no comma, semicolon, tab or bar parts the lines into columns of the same number",
                             "a CSV file with a header line and two columns or more");
    }

    if (stated) best->rows.erase(best->rows.begin());
    if (best->rows.empty())
        return Problems::one(Fault::Input, "the file has no rows", "a header line and rows of sales");
    while (dialect.preamble < std::min(kMostPreamble, best->rows.size() - 1) &&
           best->rows[dialect.preamble].size() != best->width)
        ++dialect.preamble;
    if (best->rows[dialect.preamble].size() != best->width) dialect.preamble = 0;
    dialect.header = hasHeader(best->rows, dialect.preamble, best->width);
    dialect.decimalComma = usesDecimalComma(best->rows, dialect.delimiter);
    if (stated) ++dialect.preamble;
    return dialect;
}

} // namespace piewright::csv
