#include "book/report.h"

#include "finding/suggest.h"

#include <algorithm>
#include <utility>

namespace piewright::book {

namespace {
constexpr std::size_t kMostFindings = 500;
constexpr std::size_t kMostCompared = 100'000;
} // namespace

bool Report::full() const { return findings_.size() >= kMostFindings; }

std::string Report::suggest(std::string_view seen, std::span<const std::string> known) {
    if (!suggesting()) return {};
    compared_ += known.size();
    return didYouMean(seen, known);
}

bool Report::suggesting() const { return !full() && compared_ < kMostCompared; }

void Report::add(Finding finding) {
    if (full())
        ++leftOut_;
    else
        findings_.push_back(std::move(finding));
}

void Report::error(Place place, std::string saw, std::string want, std::string hint) {
    ++errors_;
    add({std::move(place), std::move(saw), std::move(want), std::move(hint), Severity::Error});
}

void Report::take(const Problems& problems) {
    for (const Finding& finding : problems.findings) error(finding.place, finding.saw, finding.want, finding.hint);
}

void Report::warning(Place place, std::string saw, std::string want, std::string hint) {
    add({std::move(place), std::move(saw), std::move(want), std::move(hint), Severity::Warning});
}

std::vector<Finding> Report::take() {
    std::stable_sort(findings_.begin(), findings_.end(),
                     [](const Finding& a, const Finding& b) { return a.place < b.place; });
    if (leftOut_ > 0)
        findings_.push_back({{}, "and " + std::to_string(leftOut_) + " more findings, not listed", {}, {}});
    return std::move(findings_);
}

} // namespace piewright::book
