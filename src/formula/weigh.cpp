#include "formula/weigh.h"

#include "formula/affine.h"

#include <algorithm>
#include <cassert>

namespace piewright::formula {

namespace {

// Part of a line in the batch: only its proportion to the other lines' means anything.
std::int64_t part(const book::Formula& formula, const book::Line& line) {
    return formula.basis == book::Basis::Flour ? line.percent.raw() : line.weight.raw();
}

Mass onTheScale(Mass exact, Mass step) {
    if (exact <= Mass{}) return Mass{};
    const Mass rounded = roundedTo(exact, step);
    if (rounded > Mass{}) return rounded;
    constexpr Mass kTenthOfGram = milligrams(100);
    const Mass fine = exact < grams(10) ? kTenthOfGram : grams(1);
    return std::max(roundedTo(exact, fine), kTenthOfGram);
}

[[maybe_unused]] bool balances(const WeighedBatch& batch) {
    Mass in;
    for (const WeighedLine& line : batch.lines) in += line.weighed;
    Mass leaves = batch.out;
    for (const LostMass& lost : batch.lost) leaves += lost.mass;
    return in == batch.in && leaves == batch.in && batch.out >= Mass{};
}

} // namespace

std::vector<Mass> lineMasses(const book::Formula& formula, Mass in) {
    std::int64_t whole = 0;
    for (const book::Line& line : formula.lines) whole += part(formula, line);
    assert(whole > 0);
    std::vector<Mass> masses;
    masses.reserve(formula.lines.size());
    // Rounding the running total, not each line, keeps the sum exact and each line within a milligram.
    std::int64_t soFar = 0;
    Mass given;
    for (const book::Line& line : formula.lines) {
        soFar += part(formula, line);
        const Mass upTo = soFar == whole ? in : scaled(in, static_cast<double>(soFar) / static_cast<double>(whole));
        masses.push_back(upTo - given);
        given = upTo;
    }
    return masses;
}

Mass beforePreparation(Mass prepared, Share loss) {
    assert(loss >= Share{} && loss < kWhole);
    if (loss == Share{}) return prepared;
    return boundedMass(static_cast<double>(prepared.raw()) / (1.0 - asFraction(loss)));
}

Mass writtenInput(const book::Formula& formula) {
    Mass sum;
    for (const book::Line& line : formula.lines) sum += line.weight;
    return sum;
}

Mass inputFor(const book::Formula& formula, Mass out, int batches) {
    assert(batches > 0);
    if (out <= Mass{}) return Mass{};
    return boundedMass(exactInput(formula, static_cast<double>(out.raw()), batches));
}

Mass outputFor(const book::Formula& formula, Mass in) {
    return boundedMass(exactOutput(formula, static_cast<double>(in.raw())));
}

WeighedBatch weigh(const book::Formula& formula, Mass out, Mass step) {
    assert(out > Mass{} && step > Mass{});
    WeighedBatch batch;
    batch.formula = formula.id;
    batch.wanted = out;
    const std::vector<Mass> exact = lineMasses(formula, inputFor(formula, out));
    for (std::size_t i = 0; i < exact.size(); ++i) {
        const book::Line& line = formula.lines[i];
        const Mass weighed = onTheScale(exact[i], step);
        batch.lines.push_back({line.of, exact[i], weighed, beforePreparation(weighed, line.prepLoss), line.prepName});
        batch.in += weighed;
        batch.roundingError += weighed - exact[i];
    }
    Mass left = batch.in;
    for (const book::Loss& loss : formula.losses) {
        const Mass lost = loss.fixed ? std::min(*loss.fixed, left) : scaled(left, asFraction(loss.share));
        batch.lost.push_back({loss.at, lost});
        left -= lost;
    }
    batch.out = left;
    assert(balances(batch));
    return batch;
}

} // namespace piewright::formula
