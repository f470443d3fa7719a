// The baseline forecaster: past same weekdays at the present level, resampled whole.
#include "demand/forecast.h"
#include "demand/joint.h"
#include "demand/marginal.h"
#include "demand/past.h"

#include <algorithm>
#include <cassert>
#include <cmath>
#include <map>
#include <utility>

namespace piewright::demand {

namespace {

constexpr double kShopPieces = 200;  // weight of the shop's profile against a good's own pieces
constexpr double kEvenPieces = 20;   // weight of "every open quarter alike" in the shop's profile
constexpr double kEvenShare = 0.01;  // of a finished profile, so that no open quarter-hour is empty
constexpr double kStatedMean = 20;   // pieces, where nothing at all is known
constexpr double kUnknownSize = 1.2; // negative binomial: spread nearly as large as the mean
constexpr double kFewDays = 4;       // effective days below which the shop's idea of a good has a say
constexpr double kMostMean = 100'000;

std::string count(std::size_t n, const std::string& one) { return std::to_string(n) + ' ' + one + (n == 1 ? "" : "s"); }

std::string percent(double share) { return std::to_string(std::llround(100 * share)) + " %"; }

/// What all goods of a shop have in common on one date.
struct Common {
    ShopPast shop;
    QuarterWeights parts{};
    Profile allDays{};   // of the shop
    Profile weekday{};   // of the shop on that weekday
    double middling = 0; // mean a day of the good in the middle, 0 when none sold
};

/// Quarter-hours of a good's recent days, weighted by age; the weekday's alone, and all.
struct QuarterSums {
    QuarterWeights weekday{};
    QuarterWeights all{};
    double pieces = 0; // unweighted
};

void addQuarters(QuarterSums& sums, const std::map<Date, DaySales>& days, Date date) {
    for (auto it = days.lower_bound(date - Days(182)); it != days.end() && it->first < date; ++it) {
        const std::optional<Quarters>& quarters = it->second.byQuarter;
        if (!quarters) continue;
        const double weight = ageWeight(date - it->first);
        const bool same = it->first.weekday() == date.weekday();
        for (std::size_t q = 0; q < kQuarters; ++q) {
            const double pieces = std::max(0, (*quarters)[q]);
            sums.all[q] += weight * pieces;
            if (same) sums.weekday[q] += weight * pieces;
            sums.pieces += pieces;
        }
    }
}

Common commonOf(const History& history, Date date, std::span<const ClockSpan> open) {
    Common common{shopPast(history, date), openParts(open), {}, {}, 0};
    QuarterSums sums;
    for (const auto& [good, days] : history.sold) addQuarters(sums, days, date);
    common.allDays = smoothed(towards(even(common.parts), kEvenPieces, sums.all, common.parts), common.parts);
    common.weekday = smoothed(towards(common.allDays, kShopPieces, sums.weekday, common.parts), common.parts);

    std::vector<double> means;
    for (const auto& [good, days] : history.sold) {
        const GoodPast past = goodPast(history, common.shop, good);
        if (!past.days.empty()) means.push_back(marginalOf(past.days, past.relativeVariance).mean);
    }
    if (!means.empty()) {
        const auto middle = means.begin() + static_cast<std::ptrdiff_t>(means.size() / 2);
        std::nth_element(means.begin(), middle, means.end());
        common.middling = *middle;
    }
    return common;
}

Profile profileOf(const Common& common, const QuarterSums& own) {
    Profile profile = smoothed(towards(common.allDays, kShopPieces, own.all, common.parts), common.parts);
    // The weekday's tilt is the shop's: one good alone sells too little to show its own.
    double sum = 0;
    for (std::size_t q = 0; q < kQuarters; ++q) {
        if (common.allDays[q] > 0) profile[q] *= common.weekday[q] / common.allDays[q];
        sum += profile[q];
    }
    const Profile everywhere = even(common.parts);
    if (sum <= 0) return everywhere;
    double total = 0;
    for (std::size_t q = 0; q < kQuarters; ++q)
        total += profile[q] = (1 - kEvenShare) * profile[q] / sum + kEvenShare * everywhere[q];
    for (double& share : profile) share /= total;
    return profile;
}

CountDistribution unknown(const Common& common, std::vector<std::string>& because) {
    if (common.middling > 0) {
        because.push_back("no sales known: spread wide about a middling good of this shop, " +
                          std::to_string(std::llround(common.middling)) + " a day; enter your own most and least");
        return negativeBinomial(std::min(kMostMean, common.middling), kUnknownSize);
    }
    because.push_back("no sales known of anything: assumed " + std::to_string(std::llround(kStatedMean)) +
                      " a day, spread very wide; enter your own most and least");
    return negativeBinomial(kStatedMean, kUnknownSize);
}

GoodDemand demandOf(const History& history, const Common& common, const GoodId& good, const GoodPast& past) {
    QuarterSums own;
    if (const auto found = history.sold.find(good); found != history.sold.end())
        addQuarters(own, found->second, common.shop.date);
    const std::string weekday = longName(common.shop.date.weekday());
    std::vector<std::string> because;
    const auto daily = [&]() -> CountDistribution {
        if (past.days.empty()) return unknown(common, because);
        const Marginal marginal = marginalOf(past.days, past.relativeVariance);
        if (past.weekdayUnsold)
            because.push_back("never sold on a " + weekday + " so far: taken from " +
                              count(past.days.size(), "other day") + ", by the shop's own weekdays");
        else
            because.push_back("from " + count(past.sameWeekday, "past " + weekday) +
                              ", nearer ones counting more, and lightly " + "from " +
                              count(past.days.size() - past.sameWeekday, "day") + " of other weekdays");
        if (std::abs(past.change - 1) >= 0.05)
            because.push_back("brought to the present level of sales: " + percent(past.change) +
                              " of the last half-year's");
        const auto soldOut = static_cast<std::size_t>(
            std::count_if(past.days.begin(), past.days.end(), [](const PastDay& day) { return day.seen.atLeast; }));
        if (soldOut > 0)
            because.push_back("sold out on " + count(soldOut, "day") + ": counted as at least what was sold");
        if (marginal.neverSeen > 0.2)
            because.emplace_back("so often sold out that the true wish was seldom seen: the upper part is an estimate; "
                                 "making more for some days would show it");
        if (marginal.effectiveDays >= kFewDays) return marginal.daily;
        // With next to nothing seen, the days seen may be odd ones.
        because.push_back("only " + count(past.days.size(), "day") + " known so far: spread wide");
        const double seen = marginal.effectiveDays / (marginal.effectiveDays + 1);
        const std::array<CountDistribution, 2> parts{
            marginal.daily, negativeBinomial(std::min(kMostMean, std::max(marginal.mean, 0.5)), kUnknownSize)};
        const std::array<double, 2> shares{seen, 1 - seen};
        return mixture(parts, shares);
    }();
    const Profile profile = profileOf(common, own);
    if (own.pieces < kShopPieces)
        because.push_back(own.pieces > 0 ? "spread over the day mostly as the whole shop: only " +
                                               count(static_cast<std::size_t>(own.pieces), "piece") + " with a time"
                                         : "spread over the day as the whole shop: no times known of its own");
    return {good, daily, profile, std::move(because)};
}

class ResampledDays final : public DayDemand {
  public:
    ResampledDays(const History& history, std::span<const GoodId> goods, Date date, std::span<const ClockSpan> open)
        : date_(date) {
        const Common common = commonOf(history, date, open);
        std::vector<double> weights;
        for (std::size_t i = common.shop.firstRecent; i < common.shop.days.size(); ++i) {
            weights.push_back(dayWeight(date, common.shop.days[i]));
            weightTo_.push_back((weightTo_.empty() ? 0 : weightTo_.back()) + weights.back());
        }
        std::vector<Seen> shopDays;
        for (std::size_t i = 0; i < weights.size(); ++i) {
            const std::size_t day = i + common.shop.firstRecent;
            const double factor = common.shop.weekday[common.shop.days[day].weekday().c_encoding()];
            shopDays.push_back({common.shop.total[day] / std::max(factor, 1e-3), weights[i], false});
        }
        const Ranks shopRanks(shopDays);

        const bool shut = std::all_of(common.parts.begin(), common.parts.end(), [](double part) { return part <= 0; });
        for (const GoodId& good : goods) {
            if (shut) {
                goods_.push_back({good, CountDistribution({1.0}), Profile{}, {"shut on that date"}});
                ranks_.push_back(shopRanks);
                reach_.emplace_back();
                continue;
            }
            const GoodPast past = goodPast(history, common.shop, good);
            goods_.push_back(demandOf(history, common, good, past));
            std::vector<Seen> days(weights.size());
            for (const PastDay& day : past.days) {
                const std::size_t i = day.day - common.shop.firstRecent;
                days[i] = {day.seen.value, weights[i], day.seen.atLeast};
            }
            // A good that nothing is known of is busy when the shop is.
            const Ranks own(days);
            ranks_.push_back(own.known() ? own : shopRanks);
            std::array<double, kQuarters> reach{};
            double sum = 0;
            for (std::size_t q = 0; q < kQuarters; ++q) reach[q] = sum += goods_.back().profile[q];
            reach_.push_back(reach);
        }
    }

    [[nodiscard]] Date date() const override { return date_; }
    [[nodiscard]] const std::vector<GoodDemand>& goods() const override { return goods_; }

    [[nodiscard]] SampledDay sample(std::uint64_t seed, std::uint64_t k) const override {
        std::seed_seq mixed{static_cast<std::uint32_t>(seed), static_cast<std::uint32_t>(seed >> 32U),
                            static_cast<std::uint32_t>(k), static_cast<std::uint32_t>(k >> 32U)};
        Generator generator(mixed);
        SampledDay sampled(goods_.size(), Quarters{});
        const std::size_t day = weightTo_.empty() ? 0 : pick(weightTo_, uniform(generator));
        for (std::size_t g = 0; g < goods_.size(); ++g) {
            const double rank = ranks_[g].known() ? ranks_[g].draw(day, generator) : uniform(generator);
            const int wanted = goods_[g].daily.quantile(rank);
            for (int piece = 0; piece < wanted; ++piece) ++sampled[g][pick(reach_[g], uniform(generator))];
        }
        return sampled;
    }

  private:
    /// Place of a share in running sums: the first that exceeds it, never one of no weight.
    template <class Sums> static std::size_t pick(const Sums& runningSums, double share) {
        const auto found = std::upper_bound(runningSums.begin(), runningSums.end(), share * runningSums.back());
        return std::min(static_cast<std::size_t>(found - runningSums.begin()), runningSums.size() - 1);
    }

    Date date_;
    std::vector<GoodDemand> goods_;
    std::vector<Ranks> ranks_;
    std::vector<std::array<double, kQuarters>> reach_; // running sum of each profile
    std::vector<double> weightTo_;                     // running sum of the past days' weights
};

class SameWeekdays final : public Forecaster {
  public:
    explicit SameWeekdays(const History& history) : history_(history) {}

    [[nodiscard]] std::unique_ptr<DayDemand> forecast(std::span<const GoodId> goods, Date date,
                                                      std::span<const ClockSpan> open) const override {
        return std::make_unique<ResampledDays>(history_, goods, date, open);
    }

  private:
    History history_;
};

} // namespace

std::unique_ptr<Forecaster> sameWeekdays(const History& history) { return std::make_unique<SameWeekdays>(history); }

} // namespace piewright::demand
