// Inside this room: the losses of a formula as one affine map between what goes in and what comes out, in milligrams.
#pragma once

#include "book/formula.h"

#include <algorithm>
#include <ranges>

namespace piewright::formula {

/// A mass of so many milligrams, never below nothing. The reader bounds every amount, but a long chain of formulas that
/// each lose nearly all could still multiply past the counter; ten thousand tonnes is where we stop counting.
inline Mass boundedMass(double milligrams) { return Mass::nearest(std::clamp(milligrams, 0.0, 1e13)); }

/// Milligrams in for milligrams out of `batches` equal batches: the losses undone, last first.
inline double exactInput(const book::Formula& formula, double out, int batches) {
    double mass = out;
    for (const book::Loss& loss : formula.losses | std::views::reverse) {
        if (loss.fixed)
            mass += static_cast<double>(loss.fixed->raw()) * batches;
        else
            mass /= 1.0 - asFraction(loss.share);
    }
    return mass;
}

/// Milligrams out of one batch for milligrams in; below nothing when the fixed losses are more than there is.
inline double exactOutput(const book::Formula& formula, double in) {
    double mass = in;
    for (const book::Loss& loss : formula.losses) {
        if (loss.fixed)
            mass -= static_cast<double>(loss.fixed->raw());
        else
            mass *= 1.0 - asFraction(loss.share);
    }
    return mass;
}

} // namespace piewright::formula
