// make-sales: invented till sales for the demo house, from a seed. No shop sold these.
//
//     make-sales --seed 1907 --from 2024-11-26 --days 730 > data/houses/ropewalk/sales.csv
//
// Customers come by weekday, season, a slow growth and a busy-day factor that is common to all goods; each takes a
// basket of pies and what goes with them. One line is what was sold of an item within a quarter-hour, and one each
// return;
// --each writes every customer's lines with the ticket's number instead. Whole numbers throughout: the same seed gives
// the same bytes on every machine.
#include "units/civil.h"

#include <algorithm>
#include <array>
#include <charconv>
#include <cstdint>
#include <iostream>
#include <map>
#include <optional>
#include <random>
#include <string>
#include <string_view>
#include <tuple>
#include <vector>

namespace {

using piewright::Date;
using piewright::Days;

// The till's items; the first four are pies.
constexpr std::array<std::string_view, 10> kItems{"Beef & Onion Pie",
                                                  "Chicken & Leek Pie",
                                                  "Cheese & Potato Pie",
                                                  "Large Beef Pie",
                                                  "Mash",
                                                  "Parsley Sauce",
                                                  "Gravy",
                                                  "Mushy Peas",
                                                  "Stewed Hake",
                                                  "Set Hake"};
constexpr std::size_t kPies = 4;
constexpr std::size_t kMash = 4;
constexpr std::size_t kStewedHake = 8;
constexpr std::size_t kSetHake = 9;
constexpr int kThousand = 1000;

constexpr std::array<int, kPies> kPieShare{450, 250, 150, 150}; // per thousand pies
constexpr std::array<int, 4> kSideShare{550, 350, 250, 200};    // mash, sauce, gravy, peas per thousand pies
constexpr std::array<int, 5> kPiesInBasket{60, 560, 270, 70,
                                           40}; // of 0, 1, 2, 3, 4 per thousand baskets: 1.47 on average
constexpr std::array<int, 7> kPiesByWeekday{0, 0, 305, 350, 390, 610, 830}; // Sunday first
constexpr std::array<int, 7> kStewedByWeekday{0, 0, 20, 24, 0, 41, 35};
constexpr std::array<int, 7> kSetByWeekday{0, 0, 16, 17, 18, 31, 28};
constexpr std::array<int, 12> kSeason{1060, 1050, 1020, 980,  940,  900,
                                      890,  880,  960,  1020, 1080, 1120}; // mid-month, per thousand
constexpr std::int64_t kYear = 365;
constexpr int kGrowthAYear = 60;      // per thousand; the amounts above are those of two years after the first day
constexpr int kBusySpread = 110;      // standard deviation of a day's factor, per thousand
constexpr int kTasteSpread = 120;     // of each pie's share on a day
constexpr int kRefund = 3;            // per thousand baskets
constexpr std::size_t kMostLines = 5; // of a basket

/// Customers by quarter-hour from 10:00 to 20:00: lunch, then tea.
constexpr std::array<int, 40> kArrivals{20,  22,  24,  28,  40, 52, 64, 80, 118, 142, 150, 138, 116, 92,
                                        70,  54,  44,  38,  34, 32, 32, 34, 38,  44,  54,  66,  80,  96,
                                        108, 116, 118, 110, 96, 80, 64, 50, 44,  40,  34,  26};

/// Whole-number chance. std::mt19937_64 gives the same numbers everywhere; the standard's distributions do not.
class Chance {
  public:
    explicit Chance(std::uint64_t seed) : engine_(seed) {}
    /// 0 to n - 1; n up to 2^31.
    int below(int n) { return static_cast<int>(((engine_() >> 32U) * static_cast<std::uint64_t>(n)) >> 32U); }
    bool inThousand(int share) { return below(kThousand) < share; }
    /// Mean 0, standard deviation `spread`: twelve even draws (Irwin-Hall), never beyond six deviations.
    int around0(int spread) {
        std::int64_t sum = -6'000;
        for (int i = 0; i < 12; ++i) sum += below(kThousand + 1);
        return static_cast<int>(sum * spread / kThousand);
    }
    template <std::size_t N> std::size_t pick(const std::array<int, N>& weights) {
        int total = 0;
        for (const int weight : weights) total += weight;
        int at = below(total);
        std::size_t i = 0;
        while (at >= weights.at(i)) at -= weights.at(i++);
        return i;
    }

  private:
    std::mt19937_64 engine_;
};

int squareRoot(int n) {
    int root = 0;
    while ((root + 1) * (root + 1) <= n) ++root;
    return root;
}

struct Hours {
    int from = 0; // minutes; equal to `to` when shut
    int to = 0;
    int busier = kThousand;
};

Hours hoursOn(Date date) {
    const auto ymd = date.ymd();
    const auto month = static_cast<unsigned>(ymd.month());
    const auto day = static_cast<unsigned>(ymd.day());
    const unsigned weekday = date.weekday().c_encoding();
    if (weekday <= 1) return {};
    if ((month == 12 && (day == 25 || day == 26)) || (month == 1 && day == 1)) return {};
    if (month == 8 && day >= 10 && day <= 23) return {}; // the shop's holiday
    if (month == 12 && day == 24) return {600, 900, 1250};
    if (weekday == 5) return {660, 1200, kThousand};
    if (weekday == 6) return {630, 1140, kThousand};
    return {660, 1140, kThousand};
}

/// The year's season, straight from mid-month to mid-month.
int seasonOn(Date date) {
    const auto ymd = date.ymd();
    const auto month = static_cast<int>(static_cast<unsigned>(ymd.month())) - 1;
    const auto day = static_cast<int>(static_cast<unsigned>(ymd.day()));
    const int other = day < 15 ? (month + 11) % 12 : (month + 1) % 12;
    const int away = day < 15 ? 15 - day : day - 15;
    return (kSeason.at(static_cast<std::size_t>(month)) * (30 - away) +
            kSeason.at(static_cast<std::size_t>(other)) * away) /
           30;
}

struct Line {
    int minute = 0;
    int ticket = 0;
    std::size_t item = 0;
    int pieces = 0;
};

class Shop {
  public:
    Shop(std::uint64_t seed, Date first) : chance_(seed), first_(first) {}

    std::vector<Line> sellOn(Date date) {
        const Hours hours = hoursOn(date);
        std::vector<Line> lines;
        if (hours.from == hours.to) return lines;
        const std::size_t weekday = date.weekday().c_encoding();
        const std::int64_t days = (date - first_).count() - 730;
        const int busy = std::clamp(kThousand + chance_.around0(kBusySpread), 650, 1400);
        const auto scaled = [&](int usual) {
            std::int64_t n =
                std::int64_t{usual} * busy / kThousand * hours.busier / kThousand * seasonOn(date) / kThousand;
            n = n * (kYear * kThousand + kGrowthAYear * days) / (kYear * kThousand);
            return static_cast<int>(n);
        };
        // Pies to baskets: 1.47 in each on average.
        const int usual = scaled(kPiesByWeekday.at(weekday)) * 100 / 147;
        const int baskets = std::max(1, usual + chance_.around0(squareRoot(usual)));
        std::array<int, kPies> taste = kPieShare;
        for (int& share : taste) share = share * (kThousand + chance_.around0(kTasteSpread)) / kThousand;
        const int stewed = scaled(kStewedByWeekday.at(weekday)) * kThousand / usual;
        const int set = scaled(kSetByWeekday.at(weekday)) * kThousand / usual;

        std::array<int, 40> arrivals{};
        for (std::size_t q = 0; q < arrivals.size(); ++q) {
            const int from = 600 + 15 * static_cast<int>(q);
            if (from >= hours.from && from < hours.to) arrivals.at(q) = kArrivals.at(q);
        }
        std::vector<int> minutes;
        for (int b = 0; b < baskets; ++b) {
            const int quarter = static_cast<int>(chance_.pick(arrivals));
            minutes.push_back(600 + 15 * quarter + chance_.below(15));
        }
        std::sort(minutes.begin(), minutes.end());
        for (const int minute : minutes) basket(lines, minute, hours.to, taste, stewed, set);
        return lines;
    }

  private:
    void basket(std::vector<Line>& lines, int minute, int closing, const std::array<int, kPies>& taste, int stewed,
                int set) {
        std::array<int, kItems.size()> pieces{};
        const auto pies = static_cast<int>(chance_.pick(kPiesInBasket));
        for (int p = 0; p < pies; ++p) {
            ++pieces.at(chance_.pick(taste));
            for (std::size_t side = 0; side < kSideShare.size(); ++side)
                if (chance_.inThousand(kSideShare.at(side))) ++pieces.at(kMash + side);
        }
        if (chance_.inThousand(stewed)) ++pieces.at(kStewedHake);
        if (chance_.inThousand(set)) ++pieces.at(kSetHake);
        // A basket of nothing was a customer for a side dish.
        if (std::all_of(pieces.begin(), pieces.end(), [](int n) { return n == 0; }))
            ++pieces.at(kMash + chance_.pick(kSideShare));
        ++ticket_;
        std::size_t written = 0;
        std::size_t firstItem = kItems.size();
        for (std::size_t item = 0; item < kItems.size() && written < kMostLines; ++item) {
            if (pieces.at(item) == 0) continue;
            lines.push_back({minute, ticket_, item, pieces.at(item)});
            firstItem = std::min(firstItem, item);
            ++written;
        }
        if (!chance_.inThousand(kRefund)) return;
        ++ticket_;
        lines.push_back({std::min(closing - 1, minute + 3 + chance_.below(10)), ticket_, firstItem, -1});
    }

    Chance chance_;
    Date first_;
    int ticket_ = 0;
};

std::string clock(int minute) { return piewright::toText(piewright::ClockTime(piewright::Minutes(minute))); }

void writeEach(std::string& out, const std::string& date, std::vector<Line> lines) {
    std::sort(lines.begin(), lines.end(), [](const Line& a, const Line& b) {
        return std::tie(a.minute, a.ticket, a.item) < std::tie(b.minute, b.ticket, b.item);
    });
    for (const Line& line : lines)
        out += date + ',' + clock(line.minute) + ',' + std::string(kItems.at(line.item)) + ',' +
               std::to_string(line.pieces) + ',' + std::to_string(line.ticket) + '\n';
}

void writeQuarters(std::string& out, const std::string& date, const std::vector<Line>& lines) {
    std::map<std::pair<int, std::size_t>, std::pair<int, int>> sums; // quarter and item: sold, returned
    for (const Line& line : lines) {
        auto& [sold, returned] = sums[{line.minute / 15, line.item}];
        (line.pieces > 0 ? sold : returned) += line.pieces;
    }
    for (const auto& [at, pieces] : sums) {
        for (const int n : {pieces.first, pieces.second})
            if (n != 0)
                out += date + ',' + clock(at.first * 15) + ',' + std::string(kItems.at(at.second)) + ',' +
                       std::to_string(n) + '\n';
    }
}

struct Options {
    std::uint64_t seed = 1907;
    Date from;
    int days = 0;
    bool each = false;
};

template <class Number> bool parse(std::string_view text, Number& number) {
    const auto [end, error] = std::from_chars(text.data(), text.data() + text.size(), number);
    return error == std::errc{} && end == text.data() + text.size();
}

std::optional<Options> parse(const std::vector<std::string_view>& words) {
    Options options;
    std::optional<Date> from;
    for (std::size_t i = 0; i < words.size(); ++i) {
        if (words[i] == "--each") {
            options.each = true;
            continue;
        }
        if (i + 1 == words.size()) return std::nullopt;
        const std::string_view value = words[i + 1];
        if (words[i] == "--seed") {
            if (!parse(value, options.seed)) return std::nullopt;
        } else if (words[i] == "--from") {
            from = piewright::parseDate(value);
            if (!from) return std::nullopt;
        } else if (words[i] == "--days") {
            if (!parse(value, options.days) || options.days > 36'525) return std::nullopt;
        } else {
            return std::nullopt;
        }
        ++i;
    }
    if (!from || options.days < 1) return std::nullopt;
    options.from = *from;
    return options;
}

} // namespace

int main(int argc, char** argv) {
    const auto options = parse(std::vector<std::string_view>(argv + 1, argv + argc));
    if (!options) {
        std::cerr << "make-sales --seed N --from YYYY-MM-DD --days N [--each]\n"
                     "Writes invented till sales for the demo house to standard output.\n";
        return 2;
    }
    Shop shop(options->seed, options->from);
    std::cout << (options->each ? "date,time,item,quantity,ticket\n" : "date,time,item,quantity\n");
    for (int i = 0; i < options->days; ++i) {
        const Date date = options->from + Days(i);
        std::string out;
        if (options->each)
            writeEach(out, toText(date), shop.sellOn(date));
        else
            writeQuarters(out, toText(date), shop.sellOn(date));
        std::cout << out;
    }
    std::cout.flush();
    return std::cout ? 0 : 3;
}
