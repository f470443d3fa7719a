// bench-import: how fast a till's file becomes sales history, checked before it is timed.
//
//     bench-import [--rows N] [--keep] [FILE]
//
// Without FILE it writes N rows (1,000,000) of invented transactions to a temporary file, imports it and compares every
// total by good and day with what was written; a wrong answer ends it with 1. With FILE, which must have the columns of
// data/houses/ropewalk/sales.csv, the items found in it are taken as the goods. Prints rows a second, bytes a second
// and the largest memory the process had.
#include "sales/import.h"

#include <charconv>
#include <chrono>
#include <cstdio>
#include <filesystem>
#include <fstream>
#include <iostream>
#include <map>
#include <random>
#include <set>
#include <string>
#include <string_view>
#include <sys/resource.h>

namespace {

using namespace piewright; // a program, not a header

using Totals = std::map<std::pair<GoodId, Date>, std::int64_t>;

struct Written {
    std::map<GoodId, std::string> goods;
    Totals totals;
    std::size_t rows = 0;
    std::size_t left = 0;
};

/// Two years of a busy shop: twelve goods, some quoted, returns, and one row in a thousand that is no good of ours.
Written write(const std::filesystem::path& file, std::size_t rows) {
    constexpr std::size_t kGoods = 12;
    constexpr std::size_t kDays = 620;
    Written written;
    std::vector<std::string> names;
    for (std::size_t g = 0; g < kGoods; ++g) {
        names.push_back("Pie no. " + std::to_string(g) + (g % 3 == 0 ? ", large" : ""));
        written.goods[GoodId("pie-" + std::to_string(g))] = names.back();
    }
    std::ofstream out(file, std::ios::binary);
    out << "when,item,quantity,ticket,price\n";
    std::mt19937_64 engine(1);
    const Date first(std::chrono::year(2025) / 1 / 1);
    std::string text;
    for (std::size_t i = 0; i < rows; ++i) {
        const Date date = first + Days(static_cast<int>(i * kDays / rows));
        const auto chance = engine();
        const std::size_t good = chance % kGoods;
        const int minute = static_cast<int>(600 + (chance >> 8U) % 600);
        int pieces = 1 + static_cast<int>((chance >> 24U) % 4);
        if ((chance >> 32U) % 200 == 0) pieces = -1;
        const bool ours = (chance >> 40U) % 1000 != 0;
        text += toText(date) + ' ' + toText(ClockTime(Minutes(minute))) + ":00,";
        text += !ours ? "Large tea" : good % 3 == 0 ? '"' + names[good] + '"' : names[good];
        text += ',' + std::to_string(pieces) + ',' + std::to_string(i / 2) + ",4.90\n";
        if (ours)
            written.totals[{GoodId("pie-" + std::to_string(good)), date}] += pieces;
        else
            ++written.left;
        if (text.size() > 1U << 20U) {
            out << text;
            text.clear();
        }
    }
    out << text;
    written.rows = rows;
    return written;
}

/// How many good-days differ from what was written.
std::size_t wrong(const Written& written, const sales::Imported& imported) {
    std::size_t differ = 0;
    std::size_t days = 0;
    for (const auto& [good, sold] : imported.history.sold) days += sold.size();
    if (days != written.totals.size()) ++differ;
    for (const auto& [at, total] : written.totals) {
        const auto good = imported.history.sold.find(at.first);
        if (good == imported.history.sold.end() || !good->second.contains(at.second) ||
            good->second.at(at.second).total != std::max<std::int64_t>(0, total))
            ++differ;
    }
    if (imported.report.rows != written.rows || imported.report.taken != written.rows - written.left) ++differ;
    return differ;
}

/// The items of a file as goods of their own.
std::map<GoodId, std::string> itemsOf(const std::filesystem::path& file) {
    std::map<GoodId, std::string> goods;
    std::ifstream in(file, std::ios::binary);
    std::set<std::string> items;
    (void)csv::read(in, {}, [&](const csv::Row& row) {
        if (row.fields.size() > 2) items.emplace(row.fields[2]);
        return items.size() < 1000;
    });
    for (const std::string& item : items) goods[GoodId(item)] = item;
    return goods;
}

double peakMegabytes() {
    rusage usage{};
    getrusage(RUSAGE_SELF, &usage);
    return static_cast<double>(usage.ru_maxrss) / 1024; // kilobytes on Linux
}

} // namespace

int main(int argc, char** argv) {
    std::size_t rows = 1'000'000;
    bool keep = false;
    std::filesystem::path file;
    for (int i = 1; i < argc; ++i) {
        const std::string_view word(argv[i]);
        if (word == "--keep") {
            keep = true;
        } else if (word == "--rows" && i + 1 < argc) {
            const std::string_view count(argv[++i]);
            const auto [end, error] = std::from_chars(count.data(), count.data() + count.size(), rows);
            if (error != std::errc{} || end != count.data() + count.size() || rows == 0) return 2;
        } else if (!word.starts_with("--")) {
            file = word;
        } else {
            std::cerr << "bench-import [--rows N] [--keep] [FILE]\n";
            return 2;
        }
    }
    const bool given = !file.empty();
    Written written;
    if (given) {
        written.goods = itemsOf(file);
    } else {
        file = std::filesystem::temp_directory_path() / "piewright-bench-import.csv";
        written = write(file, rows);
    }
    const double before = peakMegabytes();
    std::error_code ignored;
    const auto bytes = static_cast<double>(std::filesystem::file_size(file, ignored));

    const auto start = std::chrono::steady_clock::now();
    const auto imported = sales::importFile(file, {}, {}, written.goods);
    const double seconds = std::chrono::duration<double>(std::chrono::steady_clock::now() - start).count();
    if (!given && !keep) std::filesystem::remove(file, ignored);
    if (!imported) {
        std::cerr << toText(imported.problems().findings);
        return static_cast<int>(imported.problems().fault);
    }
    if (!given) {
        if (const std::size_t differ = wrong(written, *imported); differ > 0) {
            std::cerr << "wrong: " << differ << " good-days or counts differ from what was written\n";
            return 1;
        }
    }
    const auto count = static_cast<double>(imported->report.rows);
    std::printf("%.0f rows (%.1f MB) in %.3f s: %.2f million rows/s, %.0f MB/s\n", count, bytes / 1e6, seconds,
                count / seconds / 1e6, bytes / seconds / 1e6);
    std::printf("%zu taken, %zu goods, %zu open dates; memory %.0f MB before, %.0f MB at most\n",
                imported->report.taken, imported->history.sold.size(), imported->history.openDates.size(), before,
                peakMegabytes());
    return 0;
}
