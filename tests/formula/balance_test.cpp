// What must hold for any formula, tried on drawn ones.
#include "formula/formulas.h"
#include "formula/weigh.h"

#include <algorithm>
#include <cmath>
#include <gtest/gtest.h>
#include <rapidcheck/gtest.h>

namespace piewright::formula {
namespace {

Mass drawnMass(std::int64_t least, std::int64_t most) { return Mass::ofRaw(*rc::gen::inRange(least, most)); }
Share drawnShare(std::int64_t mostPpm) { return Share::ofRaw(*rc::gen::inRange<std::int64_t>(0, mostPpm)); }

book::Formula drawnFormula() {
    book::Formula formula = named("drawn", *rc::gen::element(book::Basis::Flour, book::Basis::Weight));
    const int lines = *rc::gen::inRange(1, 9);
    for (int i = 0; i < lines; ++i) {
        book::Line line = weightLine(StuffId("s" + std::to_string(i)), drawnMass(1, 50'000'000), drawnShare(900'000));
        line.percent = BakersPercent::ofRaw(*rc::gen::inRange<std::int64_t>(1, 2'000'000));
        formula.lines.push_back(line);
    }
    const int losses = *rc::gen::inRange(0, 4);
    for (int i = 0; i < losses; ++i)
        formula.losses.push_back(*rc::gen::arbitrary<bool>() ? fixedLost("kept", drawnMass(0, 1'000'000))
                                                             : shareLost("steam", drawnShare(900'000)));
    return formula;
}

Mass lostIn(const WeighedBatch& batch) {
    Mass sum;
    for (const LostMass& lost : batch.lost) sum += lost.mass;
    return sum;
}

RC_GTEST_PROP(Balance, WhatGoesInComesOutOrIsLost, ()) {
    const book::Formula formula = drawnFormula();
    const WeighedBatch batch = weigh(formula, drawnMass(1, 200'000'000), drawnMass(1, 100'000));
    Mass sum;
    Mass exact;
    for (const WeighedLine& line : batch.lines) {
        sum += line.weighed;
        exact += line.exact;
        RC_ASSERT(line.bought >= line.weighed);
        RC_ASSERT(line.weighed > Mass{} || line.exact == Mass{});
    }
    RC_ASSERT(sum == batch.in);
    RC_ASSERT(batch.in == batch.out + lostIn(batch));
    RC_ASSERT(batch.out >= Mass{});
    RC_ASSERT(batch.roundingError == sum - exact);
    RC_ASSERT(exact == inputFor(formula, batch.wanted));
}

RC_GTEST_PROP(Balance, OnAFineScaleTheBatchYieldsWhatWasAsked, ()) {
    const book::Formula formula = drawnFormula();
    const WeighedBatch batch = weigh(formula, drawnMass(1'000'000, 200'000'000), milligrams(1));
    // Half a milligram for the input and one for each loss; lines under 0.1 g don't arise: step 1 mg rounds none away.
    const Mass slack = Mass::ofRaw(1 + std::ssize(formula.losses));
    RC_ASSERT(batch.out - batch.wanted <= slack);
    RC_ASSERT(batch.wanted - batch.out <= slack);
}

RC_GTEST_PROP(Balance, RoundingIsAtMostHalfAStepALine, ()) {
    const book::Formula formula = drawnFormula();
    const Mass step = drawnMass(1, 100'000);
    const WeighedBatch batch = weigh(formula, drawnMass(1, 200'000'000), step);
    for (const WeighedLine& line : batch.lines) {
        const Mass error = line.weighed - line.exact;
        // A line too light for the step is off by half a gram at most, or what a tenth of a gram is too much.
        const Mass bound = std::max({Mass::ofRaw(step.raw() / 2 + 1), milligrams(500)});
        RC_ASSERT(error <= bound);
        RC_ASSERT(-error <= bound);
    }
}

RC_GTEST_PROP(Balance, OutputUndoesInput, ()) {
    const book::Formula formula = drawnFormula();
    const Mass out = drawnMass(1, 200'000'000);
    const Mass back = outputFor(formula, inputFor(formula, out));
    RC_ASSERT(back - out <= milligrams(1));
    RC_ASSERT(out - back <= milligrams(1));
}

RC_GTEST_PROP(Balance, LinesSumToTheInputAndKeepTheirProportions, ()) {
    const book::Formula formula = drawnFormula();
    const Mass in = drawnMass(0, 200'000'000);
    const std::vector<Mass> masses = lineMasses(formula, in);
    Mass sum;
    double whole = 0;
    const auto part = [&](const book::Line& line) {
        return static_cast<double>(formula.basis == book::Basis::Flour ? line.percent.raw() : line.weight.raw());
    };
    for (const book::Line& line : formula.lines) whole += part(line);
    for (std::size_t i = 0; i < masses.size(); ++i) {
        sum += masses[i];
        const double exact = static_cast<double>(in.raw()) * part(formula.lines[i]) / whole;
        RC_ASSERT(std::abs(static_cast<double>(masses[i].raw()) - exact) <= 1.001);
    }
    RC_ASSERT(sum == in);
}

double naiveInput(const book::Formula& formula, double out) {
    double in = out;
    for (std::size_t i = formula.losses.size(); i-- > 0;) {
        const book::Loss& loss = formula.losses[i];
        in = loss.fixed ? in + static_cast<double>(loss.fixed->raw()) : in / (1 - asFraction(loss.share));
    }
    return in;
}

// The naive twin of `split`: tries every number of batches.
RC_GTEST_PROP(Balance, SplitFindsWhatTryingEveryNumberFinds, ()) {
    const book::Formula formula = drawnFormula();
    const Mass least = drawnMass(1'000'000, 20'000'000);
    const Mass most = least + drawnMass(1, 20'000'000);
    RC_PRE(outputFor(formula, most) > milligrams(1'000));
    const Mass out = Mass::ofRaw(*rc::gen::inRange<std::int64_t>(1, outputFor(formula, most).raw() * 8));
    int fitting = 0;
    for (int n = 1; n <= 12 && fitting == 0; ++n) {
        const double in = naiveInput(formula, static_cast<double>(out.raw()) / n);
        // A billionth of slack: what is full to less than a milligram is full.
        if (in <= static_cast<double>(most.raw()) * (1 + 1e-9) && in >= static_cast<double>(least.raw()) * (1 - 1e-9))
            fitting = n;
    }
    const auto found = split(formula, out, least, most);
    const bool tooLittle = inputFor(formula, out) < least;
    if (fitting > 0) {
        RC_ASSERT(found.ok());
        RC_ASSERT(found->count == fitting);
        RC_ASSERT(found->each * found->count >= out);
        RC_ASSERT(found->each * found->count - out < Mass::ofRaw(found->count));
    } else if (tooLittle) {
        RC_ASSERT(found.ok());
        RC_ASSERT(found->count == 1);
        RC_ASSERT(found->each == outputFor(formula, least));
    } else {
        RC_ASSERT(!found.ok());
        const Mass next = nextThatSplits(formula, out, least, most);
        RC_ASSERT(next > out);
        RC_ASSERT(split(formula, next, least, most).ok());
    }
}

RC_GTEST_PROP(Balance, BuyingIsInProportionWhereNoLossIsFixed, ()) {
    book::Formula formula = drawnFormula();
    for (book::Loss& loss : formula.losses) loss.fixed.reset();
    book::Book book;
    add(book, formula);
    const Mass out = drawnMass(1'000, 10'000'000);
    const auto once = boughtFor(book, formula.id, out);
    const auto tenTimes = boughtFor(book, formula.id, out * 10);
    for (const auto& [stuff, mass] : once) {
        const Mass difference = tenTimes.at(stuff) - mass * 10;
        // A milligram of each rounding, grown by a preparation that loses up to 90 %.
        RC_ASSERT(difference <= milligrams(120));
        RC_ASSERT(-difference <= milligrams(120));
    }
}

} // namespace
} // namespace piewright::formula
