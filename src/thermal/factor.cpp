#include "thermal/factor.h"

namespace piewright::thermal {

Factor::Factor(const Grid& grid, int axis)
    : n_(grid.count(axis)), stride_(grid.stride(axis)), cells_(grid.cells()), lower_(cells_), inverse_(cells_),
      upper_(cells_), line_(stride_ == 1 ? cells_ : 0) {}

/// Places in the order of elimination. The quick direction is kept turned, so that neighbours in memory belong to
/// different lines and the processor works on several at once.
template <class Do> void Factor::eachPlace(Do perform) const {
    if (stride_ == 1) {
        const std::size_t lines = cells_ / n_;
        for (std::size_t i = 0; i < n_; ++i)
            for (std::size_t j = 0; j < lines; ++j) perform(i, i + j * n_, i * lines + j, lines);
        return;
    }
    const std::size_t plane = stride_ * n_;
    for (std::size_t base = 0; base < cells_; base += plane)
        for (std::size_t i = 0; i < n_; ++i)
            for (std::size_t q = 0; q < stride_; ++q) {
                const std::size_t cell = base + i * stride_ + q;
                perform(i, cell, cell, stride_);
            }
}

void Factor::set(double weight, const Cells& volume, const Cells& join, const Cells& leaves, const Cells& perHeat) {
    eachPlace([&](std::size_t i, std::size_t cell, std::size_t at, std::size_t step) {
        const double behind = i > 0 ? join[cell - stride_] : 0;
        const double ahead = i + 1 < n_ ? join[cell] : 0;
        const double diagonal = volume[cell] + weight * perHeat[cell] * (behind + ahead + leaves[cell]);
        const double low = i > 0 ? -weight * behind * perHeat[cell - stride_] : 0;
        const double up = i + 1 < n_ ? -weight * ahead * perHeat[cell + stride_] : 0;
        const double inverse = 1 / (diagonal - (i > 0 ? low * upper_[at - step] : 0));
        lower_[at] = low;
        inverse_[at] = inverse;
        upper_[at] = up * inverse;
    });
}

void Factor::solve(const Cells& in, Cells& out) {
    if (stride_ == 1)
        acrossLines(in, out);
    else
        alongPlanes(in, out);
}

void Factor::acrossLines(const Cells& in, Cells& out) {
    const std::size_t lines = cells_ / n_;
    double* const x = line_.data();
    for (std::size_t j = 0; j < lines; ++j) x[j] = in[j * n_] * inverse_[j];
    for (std::size_t i = 1; i < n_; ++i)
        for (std::size_t j = 0; j < lines; ++j) {
            const std::size_t at = i * lines + j;
            x[at] = (in[i + j * n_] - lower_[at] * x[at - lines]) * inverse_[at];
        }
    for (std::size_t j = 0; j < lines; ++j) out[n_ - 1 + j * n_] = x[(n_ - 1) * lines + j];
    for (std::size_t i = n_ - 1; i-- > 0;)
        for (std::size_t j = 0; j < lines; ++j) {
            const std::size_t at = i * lines + j;
            x[at] -= upper_[at] * x[at + lines];
            out[i + j * n_] = x[at];
        }
}

void Factor::alongPlanes(const Cells& in, Cells& out) const {
    const std::size_t plane = stride_ * n_;
    for (std::size_t base = 0; base < cells_; base += plane) {
        for (std::size_t c = base; c < base + stride_; ++c) out[c] = in[c] * inverse_[c];
        for (std::size_t c = base + stride_; c < base + plane; ++c)
            out[c] = (in[c] - lower_[c] * out[c - stride_]) * inverse_[c];
        for (std::size_t c = base + plane - stride_; c-- > base;) out[c] -= upper_[c] * out[c + stride_];
    }
}

} // namespace piewright::thermal
