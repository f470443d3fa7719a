#include "formula/affine.h"
#include "formula/weigh.h"
#include "units/text.h"

#include <algorithm>
#include <cmath>
#include <limits>

namespace piewright::formula {

namespace {

constexpr int kMostBatches = 10'000;
// Slack that is below a milligram for any vessel, so that exactly full batches are not split once more by a rounding.
constexpr double kSlack = 1e-9;
// Stands for a vessel without a most: more than any formula is made of.
constexpr Mass kBoundless = Mass::ofRaw(std::numeric_limits<std::int64_t>::max());

double milligramsOf(Mass mass) { return static_cast<double>(mass.raw()); }

double inputOfEach(const book::Formula& formula, Mass out, int count) {
    return exactInput(formula, milligramsOf(out) / count, 1);
}

bool under(double in, Mass least) { return in < milligramsOf(least) * (1 - kSlack); }

Mass equalPart(Mass out, int count) { return Mass::ofRaw((out.raw() + count - 1) / count); }

/// The fewest batches that no vessel is too small for; nothing if there is no such number.
std::optional<int> fewest(const book::Formula& formula, Mass out, Mass most) {
    const double each = exactOutput(formula, milligramsOf(most));
    if (each < 1) return std::nullopt;
    const double count = std::max(1.0, std::ceil(milligramsOf(out) / each - kSlack));
    if (count > kMostBatches) return std::nullopt;
    return static_cast<int>(count);
}

Problems noVessel(const book::Formula& formula, Mass out, Mass most) {
    const std::string what = handText(out) + " of " + formula.name;
    if (exactOutput(formula, milligramsOf(most)) < 1)
        return Problems::one(Fault::Input,
                             what + ": a batch of " + handText(most) +
                                 ", the most its vessel takes, is all lost on the way",
                             "a larger vessel or smaller fixed losses");
    return Problems::one(Fault::Input,
                         what + " is more than " + std::to_string(kMostBatches) + " batches of " + handText(most),
                         "a larger vessel, or less of it");
}

Problems inGap(const book::Formula& formula, Mass out, int count, Mass least, Mass most) {
    const auto batches = [](int n) { return std::to_string(n) + (n == 1 ? " batch" : " batches"); };
    const auto input = [&](int n) { return handText(boundedMass(inputOfEach(formula, out, n))); };
    return Problems::one(Fault::Input,
                         handText(out) + " of " + formula.name +
                             " fits no number of equal batches: " + batches(count - 1) + " of " + input(count - 1) +
                             " would be over the vessel's most of " + handText(most) + ", " + batches(count) + " of " +
                             input(count) + " under its least of " + handText(least),
                         "at most " + handText(outputFor(formula, most) * (count - 1)) + " or at least " +
                             handText(outputFor(formula, least) * count) + " of it, or another vessel");
}

} // namespace

Result<BatchSplit> split(const book::Formula& formula, Mass out, std::optional<Mass> least, std::optional<Mass> most) {
    if (out <= Mass{}) return BatchSplit{};
    const Mass lower = least.value_or(Mass{});
    const Mass upper = most.value_or(kBoundless);
    if (lower > upper)
        return Problems::one(Fault::Input,
                             "the least a vessel takes of " + formula.name + ", " + handText(lower) +
                                 ", is over its most of " + handText(upper),
                             "a least up to the most");
    const std::optional<int> count = fewest(formula, out, upper);
    if (!count) return noVessel(formula, out, upper);
    if (!under(inputOfEach(formula, out, *count), lower)) return BatchSplit{*count, equalPart(out, *count)};
    if (*count == 1) return BatchSplit{1, outputFor(formula, lower)};
    return inGap(formula, out, *count, lower, upper);
}

Mass nextThatSplits(const book::Formula& formula, Mass out, std::optional<Mass> least, std::optional<Mass> most) {
    const Mass lower = least.value_or(Mass{});
    const std::optional<int> count = fewest(formula, out, most.value_or(kBoundless));
    if (out <= Mass{} || !count || *count == 1 || !under(inputOfEach(formula, out, *count), lower)) return out;
    // One milligram up where the nearest was down, so that each batch is not short of the least by a rounding.
    const auto each = static_cast<std::int64_t>(std::ceil(exactOutput(formula, milligramsOf(lower)) - kSlack));
    return Mass::ofRaw(each) * *count;
}

} // namespace piewright::formula
