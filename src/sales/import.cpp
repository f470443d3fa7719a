#include "sales/import.h"

#include "finding/suggest.h"
#include "sales/columns.h"
#include "sales/fold.h"
#include "sales/items.h"
#include "sales/left.h"
#include "sales/pieces.h"
#include "sales/tally.h"
#include "sales/when.h"

#include <algorithm>
#include <fstream>
#include <sstream>
#include <system_error>
#include <utility>

namespace piewright::sales {

namespace {

constexpr const char* kPartOfAPiece = "a part of a piece";
constexpr std::string_view kNotMapped = "item not mapped: ";

Problems inFile(Problems problems, const std::string& file) {
    for (Finding& finding : problems.findings) finding.place.file = file;
    return problems;
}

Sample sampleOf(const std::string& beginning, const csv::Dialect& dialect) {
    Sample sample;
    std::istringstream in(beginning);
    std::size_t rows = 0;
    // A row cut off by the end, or a quote that it leaves open, is no part of the sample.
    const auto ignored = csv::read(in, dialect, [&](const csv::Row& row) {
        if (rows++ < dialect.preamble) return true;
        std::vector<std::string> fields(row.fields.begin(), row.fields.end());
        if (dialect.header && rows == dialect.preamble + 1)
            sample.header = std::move(fields);
        else
            sample.rows.push_back(std::move(fields));
        return true;
    });
    if (beginning.size() >= csv::kLookedAt && ignored.ok() && sample.rows.size() > 1) sample.rows.pop_back();
    return sample;
}

/// Takes a file's rows one by one.
class Importer {
  public:
    Importer(const Columns& columns, const csv::Dialect& dialect, const Found& found, Items& items)
        : columns_(columns), dialect_(dialect), found_(found), items_(items), tally_(items.goods().size()) {}

    /// False when no more can be taken.
    bool take(const csv::Row& row);

    Result<Imported> finish(Report report);

  private:
    [[nodiscard]] static std::string_view field(const csv::Row& row, std::size_t column) {
        return trimmed(row.fields[column]);
    }
    /// Date and minute; what is wrong with them, or nothing.
    const char* readWhen(const csv::Row& row, Sale& sale);
    const char* readSoldOut(const csv::Row& row, Sale& sale);
    const char* toShopsZone(int offset, Sale& sale);
    void suggest(std::vector<LeftOut>& left) const;
    void left(const std::string& why, const csv::Row& row) { left_.add(why, row); }

    const Columns& columns_;
    const csv::Dialect& dialect_;
    const Found& found_;
    Items& items_;
    Tally tally_;
    LeftRows left_;
    std::size_t seen_ = 0; // preamble and header too
    std::size_t rows_ = 0;
    std::size_t offsetsAsTheyStand_ = 0;
    std::optional<Problems> stopped_;
    std::optional<Instant> lastUtc_; // of the last time moved between zones, and what it became
    Date lastDate_;
    int lastMinute_ = 0;
};

/// `sale` has the minute as written, `offset` minutes ahead of UTC.
const char* Importer::toShopsZone(int offset, Sale& sale) {
    const auto date = tally_.certain(sale.date);
    if (!columns_.zone || !date) {
        ++offsetsAsTheyStand_;
        return nullptr;
    }
    const Instant utc(date->days().time_since_epoch() + Minutes(sale.minute - offset));
    // Zones differ by whole quarter-hours, so a quarter-hour moves as one.
    const auto quarter =
        std::chrono::floor<std::chrono::duration<std::int64_t, std::ratio<900>>>(utc.time_since_epoch());
    const Instant start(std::chrono::duration_cast<Seconds>(quarter));
    if (!lastUtc_ || *lastUtc_ != start) {
        lastUtc_ = start;
        lastDate_ = columns_.zone->dateOf(start);
        lastMinute_ = static_cast<int>(columns_.zone->clockOf(start).sinceMidnight().count());
    }
    sale.date = tally_.dateOf(lastDate_);
    if (sale.date == Tally::kNoDate) return "no such date";
    sale.minute = lastMinute_ + static_cast<int>(std::chrono::floor<Minutes>(utc - start).count());
    return nullptr;
}

const char* Importer::readWhen(const csv::Row& row, Sale& sale) {
    WhenText when = splitWhen(row.fields[found_.when]);
    if (when.date.empty()) return "no date";
    sale.date = tally_.dateOf(when.date);
    if (sale.date == Tally::kNoDate) return "no such date";
    if (found_.time) {
        if (*found_.time >= row.fields.size()) return "fewer fields than columns";
        when.time = field(row, *found_.time);
        // A time's own column may hold a date as well.
        if (when.time.size() > 9) {
            const WhenText both = splitWhen(when.time);
            if (!both.time.empty()) when.time = both.time;
        }
    }
    if (when.time.empty()) return nullptr;
    const auto time = parseTimeText(when.time);
    if (!time) return "no such time of day";
    sale.minute = time->minute;
    return time->offsetMinutes ? toShopsZone(*time->offsetMinutes, sale) : nullptr;
}

const char* Importer::readSoldOut(const csv::Row& row, Sale& sale) {
    if (!found_.soldOut || *found_.soldOut >= row.fields.size()) return nullptr;
    const std::string_view text = field(row, *found_.soldOut);
    if (text.empty()) return nullptr;
    if (const auto yes = parseYesNo(text)) {
        sale.soldOut = *yes;
        sale.soldOutMinute = *yes ? sale.minute : -1;
        return nullptr;
    }
    const WhenText when = splitWhen(text);
    const auto time = parseTimeText(when.time.empty() ? when.date : when.time);
    if (!time) return "sold out, but neither yes, no nor a time";
    sale.soldOut = true;
    sale.soldOutMinute = time->minute;
    return nullptr;
}

bool Importer::take(const csv::Row& row) {
    if (seen_++ < dialect_.preamble + (dialect_.header ? 1 : 0)) return true;
    ++rows_;
    if (std::max(found_.when, found_.item) >= row.fields.size() ||
        (found_.quantity && *found_.quantity >= row.fields.size())) {
        left("fewer fields than columns", row);
        return true;
    }
    Sale sale;
    if (const char* const wrong = readWhen(row, sale)) {
        left(wrong, row);
        return true;
    }
    int count = 1;
    if (found_.quantity) {
        const std::string_view text = field(row, *found_.quantity);
        const Pieces pieces = parsePieces(text, dialect_.decimalComma);
        const char* wrong = nullptr;
        switch (pieces.kind) {
        case Pieces::Kind::Whole:
            break;
        case Pieces::Kind::Part:
            wrong = kPartOfAPiece;
            break;
        case Pieces::Kind::Absurd:
            wrong = "more than 100,000 pieces in one row";
            break;
        case Pieces::Kind::NotANumber:
            wrong = text.empty() ? "no quantity" : "the quantity is no number";
            break;
        }
        if (wrong != nullptr) {
            left(wrong, row);
            return true;
        }
        count = pieces.count;
    }
    const std::string_view item = row.fields[found_.item];
    sale.good = items_.find(item);
    if (sale.good < 0) {
        // Not ours, but the shop was open.
        if (count != 0) tally_.open(sale.date);
        if (sale.good == Items::kIgnored)
            left("set aside by the mapping", row);
        else
            left(trimmed(item).empty() ? "no item" : std::string(kNotMapped) + shown(trimmed(item)), row);
        return true;
    }
    sale.pieces = count;
    if (const char* const wrong = readSoldOut(row, sale)) {
        left(wrong, row);
        return true;
    }
    if (tally_.add(sale, row)) return true;
    stopped_ = Problems::one(Fault::Input, "more than 400,000 days of goods", "the sales of a few years in one file",
                             {{}, static_cast<int>(std::min<std::size_t>(row.line, 2'000'000'000)), 0, {}});
    return false;
}

/// Behind the commonest words that no good answers to: the nearest word that one does.
void Importer::suggest(std::vector<LeftOut>& left) const {
    constexpr std::size_t kMostSuggested = 20;
    const std::vector<std::string> known = items_.known();
    for (std::size_t i = 0; i < left.size() && i < kMostSuggested; ++i) {
        const std::string_view why = left[i].why;
        if (!why.starts_with(kNotMapped)) continue;
        std::string_view item = why.substr(kNotMapped.size());
        if (item.size() > 2) item = item.substr(1, item.size() - 2); // the quotes
        const std::string hint = didYouMean(fold(item), known);
        if (!hint.empty()) left[i].why += " (" + hint + ')';
    }
}

Result<Imported> Importer::finish(Report report) {
    if (stopped_) return *stopped_;
    report.rows = rows_;
    auto history = tally_.history(items_.goods(), columns_.dayFirst, left_, report);
    if (!history) return history.problems();
    report.left = left_.byRows();
    suggest(report.left);
    if (offsetsAsTheyStand_ > 0)
        report.notes.emplace_back("times written with Z or an offset were taken as they stand: no time zone was given");
    const auto parts = std::find_if(report.left.begin(), report.left.end(),
                                    [](const LeftOut& out) { return out.why == kPartOfAPiece; });
    if (parts != report.left.end() && parts->rows > report.taken)
        report.notes.push_back("most of column \"" + report.quantityColumn +
                               "\" is parts of pieces: is it a weight or an amount of money?");
    if (!found_.quantity) report.notes.emplace_back("no column of quantities: each row is one piece");
    if (report.shutDays > 0)
        report.notes.push_back(std::to_string(report.shutDays) +
                               " dates on which nothing at all was sold are taken as shut");
    if (report.taken > 0) return Imported{std::move(*history), std::move(report)};

    Problems problems;
    for (std::size_t i = 0; i < report.left.size() && i < 5; ++i) {
        const LeftOut& out = report.left[i];
        problems.findings.push_back({{{}, static_cast<int>(std::min<std::size_t>(out.firstLine, 2'000'000'000)), 0, {}},
                                     "no row could be taken; " + std::to_string(out.rows) + " because: " + out.why,
                                     "rows with a date and an item that is a good of the house or in the mapping",
                                     "the first is " + out.example,
                                     Severity::Error});
    }
    if (problems.findings.empty())
        problems = Problems::one(Fault::Input, "no rows of sales", "a header line and rows of sales");
    return problems;
}

} // namespace

Result<Imported> importStream(std::istream& in, const std::string& file, const Columns& columns, const Mapping& mapping,
                              const std::map<GoodId, std::string>& goods) {
    std::string beginning(csv::kLookedAt, '\0');
    in.read(beginning.data(), static_cast<std::streamsize>(beginning.size()));
    beginning.resize(static_cast<std::size_t>(in.gcount()));
    if (in.bad()) return Problems::one(Fault::World, "the file could not be read", {}, {file, 0, 0, {}});
    const auto dialect = csv::detect(beginning);
    if (!dialect) return inFile(dialect.problems(), file);

    Items items(mapping, goods);
    const Sample sample = sampleOf(beginning, *dialect);
    const auto found = findColumns(sample, columns, dialect->decimalComma, items);
    if (!found) return inFile(found.problems(), file);

    Report report;
    report.dialect = *dialect;
    const auto name = [&](const std::optional<std::size_t>& column) {
        return column ? nameOf(sample, *column) : std::string{};
    };
    report.whenColumn = nameOf(sample, found->when);
    report.timeColumn = name(found->time);
    report.itemColumn = nameOf(sample, found->item);
    report.quantityColumn = name(found->quantity);
    report.soldOutColumn = name(found->soldOut);

    Importer importer(columns, *dialect, *found, items);
    const auto read = csv::read(beginning, in, *dialect, [&](const csv::Row& row) { return importer.take(row); });
    if (!read) return inFile(read.problems(), file);
    auto imported = importer.finish(std::move(report));
    if (!imported) return inFile(imported.problems(), file);
    return imported;
}

Result<Imported> importFile(const std::filesystem::path& file, const Columns& columns, const Mapping& mapping,
                            const std::map<GoodId, std::string>& goods) {
    const auto cannot = [&](std::string why) {
        return Problems::one(Fault::World, std::move(why), "a CSV file that can be read", {file.string(), 0, 0, {}});
    };
    std::error_code error;
    if (std::filesystem::is_directory(file, error)) return cannot("a folder, not a file");
    std::ifstream in(file, std::ios::binary);
    if (!in) return cannot("cannot be opened");
    return importStream(in, file.string(), columns, mapping, goods);
}

} // namespace piewright::sales
