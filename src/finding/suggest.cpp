#include "finding/suggest.h"

#include <algorithm>
#include <array>
#include <cctype>
#include <vector>

namespace piewright {

namespace {

// A name longer than this is no slip of the finger, and hostile input must not cost a quadratic table.
constexpr std::size_t kLongestName = 64;

std::string lowered(std::string_view text) {
    std::string lower(text);
    for (char& c : lower) c = static_cast<char>(std::tolower(static_cast<unsigned char>(c)));
    return lower;
}

} // namespace

std::size_t editDistance(std::string_view a, std::string_view b) {
    std::vector<std::size_t> before(b.size() + 1);
    std::vector<std::size_t> row(b.size() + 1);
    std::vector<std::size_t> next(b.size() + 1);
    for (std::size_t j = 0; j <= b.size(); ++j) row[j] = j;
    for (std::size_t i = 1; i <= a.size(); ++i) {
        next[0] = i;
        for (std::size_t j = 1; j <= b.size(); ++j) {
            const std::size_t change = row[j - 1] + (a[i - 1] == b[j - 1] ? 0 : 1);
            next[j] = std::min({row[j] + 1, next[j - 1] + 1, change});
            if (i > 1 && j > 1 && a[i - 1] == b[j - 2] && a[i - 2] == b[j - 1])
                next[j] = std::min(next[j], before[j - 2] + 1);
        }
        std::swap(before, row);
        std::swap(row, next);
    }
    return row[b.size()];
}

std::optional<std::string> nearestName(std::string_view seen, std::span<const std::string> known) {
    if (seen.size() > kLongestName) return std::nullopt;
    const std::string wanted = lowered(seen);
    std::optional<std::string> best;
    std::size_t bestDistance = 0;
    for (const std::string& name : known) {
        if (name.size() > kLongestName) continue;
        const std::size_t distance = editDistance(wanted, lowered(name));
        const std::size_t nearEnough = std::max<std::size_t>(1, std::max(seen.size(), name.size()) / 3);
        if (distance <= nearEnough && (!best || distance < bestDistance)) {
            best = name;
            bestDistance = distance;
        }
    }
    return best;
}

std::string didYouMean(std::string_view seen, std::span<const std::string> known) {
    const auto name = nearestName(seen, known);
    return name ? "did you mean \"" + *name + "\"?" : std::string{};
}

} // namespace piewright
